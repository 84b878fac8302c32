/**
 * Cataloging Cultural Objects (CCO), 3.2.1.2.1: height × width × depth, the second unit in brackets, inches as whole
 * numbers or fractions. Its example is `198 x 233 x 82 cm (78 x 91 3/4 x 32 1/4 inches)`, in quarters of an inch.
 */
import { expect, test } from 'vitest'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import { formatLength } from '../../../src/measure/format.ts'

const EXAMPLE = '198 x 233 x 82 cm (78 x 91 3/4 x 32 1/4 inches)'

test('the example reads as height, width and depth, both units agreeing', () => {
  const read = readDimensions(EXAMPLE)
  expect(read.questions).toEqual([])
  expect(read.parts).toMatchObject([
    { height: 1980, width: 2330, depth: 820, unit: 'cm', unitStated: true, raw: EXAMPLE },
  ])
})

test('its inches alone read as printed', () => {
  const read = readDimensions('78 x 91 3/4 x 32 1/4 inches')
  expect(read.parts).toMatchObject([{ height: 1981.2, width: 2330.45, depth: 819.15 }])
})

test('to the nearest 1/16 in its centimetres are 77 15/16, 91 3/4 and 32 5/16', () => {
  const inches = [1980, 2330, 820].map(mm => formatLength(mm, { unit: 'in', fraction: 16, bare: true }))
  expect(inches).toEqual(['77 15/16', '91 3/4', '32 5/16'])
})
