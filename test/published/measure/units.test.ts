/** Units against their definitions. NIST SP 811 (Guide for the Use of the SI), appendix B; values from memory. */
import { expect, test } from 'vitest'
import { parseLength } from '../../../src/measure/length.ts'
import { parseMass } from '../../../src/measure/mass.ts'
import { fromCount, SIXTEENTH, toCount } from '../../../src/measure/rounding.ts'

test.each([
  ['1 in', 25.4],
  ['1 ft', 304.8],
  ['1/16 in', 1.5875],
  ['1/8 in', 3.175],
])('%s is %d mm exactly', (text, mm) => {
  expect(parseLength(text)).toMatchObject({ ok: true, mm })
})

test('a pound is 0.45359237 kg exactly, an ounce its sixteenth', () => {
  expect(parseMass('1 lb')).toMatchObject({ kg: 0.45359237 })
  expect(parseMass('16 oz')).toMatchObject({ kg: 0.45359237 })
})

test('the largest error of rounding to 1/16 in is 0.79375 mm', () => {
  const errors = Array.from({ length: 20_001 }, (_, index) => {
    const mm = (index * 25.4) / 3200
    return Math.abs(fromCount(toCount(mm, SIXTEENTH), SIXTEENTH) - mm)
  })
  expect(Math.max(...errors)).toBeCloseTo(0.79375, 9)
})
