import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type HeldNumber, numberDoubts } from '../../../src/checklist/number-doubts.ts'
import { doubtSaid } from '../../../src/checklist/number-kinds.ts'
import { normalNumber } from '../../../src/checklist/numbers.ts'

type Given = readonly [work: string, kind: HeldNumber['kind'], text: string, party?: string]

function held(given: readonly Given[]): HeldNumber[] {
  return given.map(([work, kind, text, party = null], at) => ({
    id: `n${String(at).padStart(4, '0')}`,
    work,
    kind,
    text,
    norm: normalNumber(text),
    party,
  }))
}

const found = (given: readonly Given[], twins: readonly (readonly [string, string])[] = []) =>
  numberDoubts(held(given), twins).map(({ code, numbers }) => [code, ...numbers.map(({ text }) => text)])

const year = (name: string, count: number): Given[] =>
  Array.from({ length: count }, (_, at) => [`${name}-${at}`, 'permanent', `${name}.5.${at + 1}`])

test('one number at two works is doubtful however it is written, and not where two lenders gave it', () => {
  expect(
    found([
      ['a', 'permanent', '1995.5.2a'],
      ['b', 'permanent', '1995.5.2 A'],
    ]),
  ).toEqual([['number-twice', '1995.5.2a', '1995.5.2 A']])
  expect(
    found([
      ['a', 'lender', '12', 'quay'],
      ['b', 'lender', '12', 'quay'],
    ]),
  ).toEqual([['number-twice', '12', '12']])
  expect(
    found([
      ['a', 'lender', '12', 'quay'],
      ['b', 'lender', '12', 'mill'],
    ]),
  ).toEqual([])
  expect(
    found([
      ['a', 'lender', '12'],
      ['b', 'lender', '12'],
    ]),
  ).toEqual([])
})

test('one loan, one receipt and one show number may stand for several works', () => {
  expect(
    found([
      ['a', 'loan', 'L-2031.7'],
      ['b', 'loan', 'L-2031.7'],
    ]),
  ).toEqual([])
  expect(
    found([
      ['a', 'entry', 'E 4012'],
      ['b', 'entry', 'E 4012'],
    ]),
  ).toEqual([])
  expect(
    found([
      ['a', 'exhibition', '2031.14'],
      ['b', 'permanent', '2031.14'],
    ]),
  ).toEqual([])
})

test('the same number of another kind at another work is doubtful, at the same work it is not', () => {
  expect(
    found([
      ['a', 'former', '1962.4'],
      ['b', 'permanent', '1962.4'],
    ]),
  ).toEqual([['number-kinds', '1962.4', '1962.4']])
  expect(
    found([
      ['a', 'former', '62'],
      ['b', 'permanent', '62'],
    ]),
  ).toEqual([])
  expect(
    found([
      ['a', 'lender', 'L-1.24', 'q'],
      ['a', 'loan', 'L-1.24', 'q'],
    ]),
  ).toEqual([])
})

test('of two permanent numbers one is former', () => {
  expect(
    found([
      ['a', 'permanent', '1995.5.2'],
      ['a', 'permanent', '2004.1'],
    ]),
  ).toEqual([['number-two', '1995.5.2', '2004.1']])
  expect(
    found([
      ['a', 'permanent', '1995.5.2'],
      ['a', 'former', '2004.1'],
    ]),
  ).toEqual([])
})

test('numbers that follow one another say nothing, however near', () => {
  expect(found([...year('1995', 30), ...year('1996', 30)])).toEqual([])
  expect(found([...year('1995', 3), ['x', 'permanent', '1995.6.1'], ['y', 'permanent', '1995.9.1']])).toEqual([])
  // Where many years have one work each, one that has is no exception.
  expect(found([...year('1995', 3), ...year('1985', 1), ...year('1996', 1), ...year('1955', 1)])).toEqual([])
})

test('a beginning that stands alone, one slip from one of many, is doubtful', () => {
  expect(found([...year('1995', 4), ...year('2003', 4), ['x', 'permanent', '1959.5.2']])).toEqual([
    ['number-near', '1995.5.2', '1959.5.2'],
  ])
})

test('the same figures with other marks are doubtful where nobody else writes so', () => {
  expect(found([...year('1995', 4), ['x', 'permanent', '1995.52']])).toEqual([['number-near', '1995.5.2', '1995.52']])
  expect(
    found([
      ['a', 'permanent', '1995.52'],
      ['b', 'permanent', '1995.5.2'],
    ]),
  ).toEqual([])
})

test('two works that read the same, with numbers one slip apart, may be one work written down twice', () => {
  const given: Given[] = [
    ['a', 'permanent', '1995.5.12'],
    ['b', 'permanent', '1995.5.21'],
  ]
  expect(found(given)).toEqual([])
  expect(found(given, [['a', 'b']])).toEqual([['number-near', '1995.5.12', '1995.5.21']])
})

test('says it beside either number', () => {
  const numbers = held([
    ['a', 'former', '1962.4'],
    ['b', 'permanent', '1962.4'],
  ])
  const [doubt] = numberDoubts(numbers, [])
  const said = (at: number) => doubt && numbers[at] && doubtSaid(doubt, numbers[at], work => `“${work}”`)
  expect([said(0), said(1)]).toEqual(['It is the permanent number of “b”.', 'It is the former number of “a”.'])
})

const number = fc.tuple(
  fc.constantFrom('a', 'b', 'c', 'd'),
  fc.constantFrom('permanent', 'lender', 'loan', 'former', 'exhibition'),
  fc.constantFrom('1995.5.2', '1995.5.2a', '1995.52', '1959.5.2', '1995.5.3', '1995.5.4', '1962.4', '12', 'L-1.24'),
  fc.constantFrom('q', 'm'),
) as fc.Arbitrary<Given> // four of the kinds and two lenders

test('no order of the numbers changes a doubt, and a doubt is about two numbers or more', () => {
  fc.assert(
    fc.property(fc.array(number, { maxLength: 14 }), fc.infiniteStream(fc.nat()), (given, chance) => {
      const numbers = held(given)
      const figures = (of: readonly HeldNumber[]) =>
        numberDoubts(of, [['a', 'b']])
          .map(({ code, figures }) => `${code} ${figures}`)
          .sort()
      const keyed = numbers.map(one => ({ one, by: chance.next().value }))
      const mixed = keyed.sort((a, b) => a.by - b.by).map(({ one }) => one)
      const told = figures(numbers)
      expect(figures(mixed)).toEqual(told)
      expect(new Set(told).size).toBe(told.length)
      for (const doubt of numberDoubts(numbers, [])) expect(doubt.numbers.length).toBeGreaterThan(1)
    }),
  )
})
