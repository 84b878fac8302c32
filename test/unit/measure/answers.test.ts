/** What a person answers goes where it was asked, and nowhere else. */
import { expect, test } from 'vitest'
import { answerQuestion } from '../../../src/measure/answers.ts'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import type { ReadOptions } from '../../../src/measure/statement.ts'

function answered(text: string, label: RegExp, options: ReadOptions = {}) {
  const read = readDimensions(text, options)
  const option = read.questions[0]?.options.find(one => label.test(one.label))
  expect(option).toBeDefined()
  return option ? answerQuestion(read, 0, option, options) : read
}

test('the unit', () => {
  const read = answered('61 x 91.5', /^centimetres/)
  expect(read.questions).toEqual([])
  expect(read.parts).toMatchObject([{ height: 610, width: 915, unit: 'cm', unitStated: false }])
})

test('one of two readings, the other measure stays', () => {
  expect(answered('30 x 40 in. (76.2 x 106.1 cm)', /^40 in/).parts).toMatchObject([
    { height: 762, width: 1016, unit: 'in' },
  ])
  expect(answered('30 x 40 in. (76.2 x 106.1 cm)', /^106/).parts).toMatchObject([
    { height: 762, width: 1061, unit: 'in' },
  ])
})

test('which part a size is, and what then hangs', () => {
  const read = answered('50 x 70 cm; 60 x 80 cm', /frame$/)
  expect(read.parts).toMatchObject([{ part: 'unnamed' }, { part: 'framed', height: 600 }])
  expect(read.hanging).toEqual({ index: 1, part: 'framed' })
})

test('pieces, a weight, a date, a range', () => {
  expect(answered('4 panels, 60 x 110 cm', /^Each/).parts).toMatchObject([{ part: 'part', count: 4, height: 600 }])
  expect(answered('50 x 70 cm, 14 kg, 20 kg', /^20/).mass).toMatchObject({ kg: 20 })
  expect(answered('50-60 x 70 cm', /^60/).parts).toMatchObject([{ height: 600, width: 700 }])
  expect(answered('1/2 x 45293', /1\/2/).questions[0]?.code).toBe('one-measure')
})

test('an answer to a question that is not there changes nothing', () => {
  const read = readDimensions('50 x 70 cm')
  expect(answerQuestion(read, 0, { label: 'none', values: { height: 1 } })).toBe(read)
})
