import fc from 'fast-check'
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

const marks = fc.constantFrom('.', '-', '/', ' ', ' . ', '\u00a0', '–', '')
const run = fc.oneof(
  fc.nat(30).map(String),
  fc.nat(9999).map(String),
  fc.constantFrom('a', 'B', 'L', 'AWR', 'inv', 'no', '007', 'é', '№', '#'),
)
const written = fc.array(fc.tuple(run, marks), { maxLength: 6 }).map(parts => parts.flat().join(''))

test('the normal form of a normal form is itself, and near is near both ways', () => {
  fc.assert(
    fc.property(written, written, (a, b) => {
      const norm = normalNumber(a)
      expect(normalNumber(norm)).toBe(norm)
      expect(nearNumber(a, b)).toBe(nearNumber(b, a))
      expect(nearNumber(a, a)).toBe(false)
    }),
    { numRuns: 2000 },
  )
})

test('sorting is a total order, which a second route agrees with where both have one', () => {
  const key = (text: string) => numberSortKey(text)
  const order = (a: string, b: string) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0)
  // ECMA-402's collation by CLDR orders figures within text too. It passes over marks where letters differ and knows
  // nothing of "aa" behind "z", so that it is asked about numbers of figures and points with one small letter at most.
  const collator = new Intl.Collator('en', { numeric: true })
  const plain = fc
    .tuple(fc.array(fc.nat(3000), { minLength: 1, maxLength: 4 }), fc.constantFrom('', 'a', 'b', 'z'))
    .map(([runs, part]) => `${runs.join('.')}${part}`)
  fc.assert(
    fc.property(plain, plain, plain, (a, b, c) => {
      expect(order(a, b) + order(b, a)).toBe(0)
      if (order(a, b) <= 0 && order(b, c) <= 0) expect(order(a, c)).toBeLessThanOrEqual(0)
      expect(Math.sign(collator.compare(a, b))).toBe(order(a, b))
    }),
    { numRuns: 2000 },
  )
})
