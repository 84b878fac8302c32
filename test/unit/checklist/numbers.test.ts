import { expect, test } from 'vitest'
import { nearNumber, normalNumber, numberSortKey } from '../../../src/checklist/numbers.ts'

/** The pair and the counter-example are the trade's own (common practice, no source). */
test('two spellings of one number are one, and a missing point makes another', () => {
  expect(normalNumber('1995.5.2a')).toBe(normalNumber('1995.5.2 A'))
  expect(normalNumber('1995.5.2')).not.toBe(normalNumber('1995.52'))
  expect(normalNumber('Inv. Nr. 1995.5.2')).toBe('1995.5.2')
  expect(normalNumber('N° 12')).toBe('12')
  expect(normalNumber('007')).toBe('7')
  expect(normalNumber('L\u00a02031.7.4')).toBe(normalNumber('l2031.7.4'))
  expect(normalNumber(' — ')).toBe('')
})

test('a range of items is not an item', () => {
  expect(normalNumber('1995.5.2-4')).not.toBe(normalNumber('1995.5.2.4'))
})

test('sorts as people read, run of figures by run', () => {
  const right = ['2', '10', '1995.5', '1995.5.2', '1995.5.2a', '1995.5.2b', '1995.5.10', '1995.12.1', 'L.2', 'L.11']
  expect(right.toReversed().toSorted((a, b) => (numberSortKey(a) < numberSortKey(b) ? -1 : 1))).toEqual(right)
})

test('knows a slip of one sign, but not two short running numbers', () => {
  expect(nearNumber('1995.5.2', '1995.5.3')).toBe(true)
  expect(nearNumber('1995.25.2', '1995.52.2')).toBe(true)
  expect(nearNumber('1995.5.2', '1995.5.22')).toBe(true)
  expect(nearNumber('1995.5.2', '1995.6.3')).toBe(false)
  expect(nearNumber('11', '12')).toBe(false)
})
