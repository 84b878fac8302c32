import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Into } from '../../../src/insurance/held.ts'
import { against, bringOver, type Limit } from '../../../src/insurance/limits.ts'
import type { Piece } from '../../../src/insurance/pieces.ts'
import { inGroup, sumOfDay, sumsByDay } from '../../../src/insurance/sums.ts'
import { dayOf } from '../../../src/light/day.ts'
import type { Rate } from '../../../src/money/exchange.ts'

const first = dayOf('2031-03-10')
const hour = 3_600_000
const dayLong = 24 * hour
const rates: readonly Rate[] = [
  { id: 'r1', from: 'EUR', to: 'CHF', rate: '0.95', day: '2031-03-01' },
  { id: 'r2', from: 'EUR', to: 'CHF', rate: '0.9412', day: '2031-03-12' },
]
const into = new Into('CHF', rates)
const chf = (minor: number) => ({ minor, currency: 'CHF' })

/** From and to in hours after the first day began. */
function piece(work: string, from: number, to: number, groups: readonly string[], value: Piece['value']): Piece {
  const began = first * dayLong
  const [start, end] = [began + from * hour, began + to * hour]
  return { work, from: start, to: end, groups, slices: ['house'], value, by: null, basis: 'record', places: [] }
}

const anyPiece = fc
  .record({
    from: fc.integer({ min: -30, max: 150 }),
    hours: fc.integer({ min: 1, max: 90 }),
    groups: fc.subarray(['all', 'lender:a', 'room:b', 'crate:c'], { minLength: 1 }),
    value: fc.option(
      fc.record({ minor: fc.integer({ min: 0, max: 1e9 }), currency: fc.constantFrom('CHF', 'EUR', 'JPY') }),
      { nil: null },
    ),
  })
  .map(({ from, hours, groups, value }) => piece('', from, from + hours, groups, value))
const anyPieces = fc
  .array(anyPiece, { maxLength: 12 })
  .map(pieces => pieces.map((each, at): Piece => ({ ...each, work: `w${at}` })))

describe('sums of a day', () => {
  test('one pass over what comes and goes finds what is found anew at every moment', () => {
    fc.assert(
      fc.property(anyPieces, pieces => {
        const swept = sumsByDay(pieces, into, first, first + 5)
        for (const group of ['all', 'lender:a', 'room:b', 'crate:c'])
          for (let day = first; day <= first + 5; day++) {
            const anew = sumOfDay(pieces, group, into, day)
            const found = swept.get(group)?.find(each => each.day === day)
            if (anew.works === 0) expect(found).toBeUndefined()
            else expect(found).toEqual(anew)
          }
      }),
    )
  })

  test('their order does not matter', () => {
    fc.assert(
      fc.property(anyPieces, pieces => {
        const told = (all: readonly Piece[]) => [...sumsByDay(all, into, first, first + 5)].sort()
        expect(told(pieces.toReversed())).toEqual(told(pieces))
      }),
    )
  })

  test('what is parted into rooms for whole days adds up to the whole', () => {
    const stay = fc.record({
      day: fc.integer({ min: 0, max: 5 }),
      days: fc.integer({ min: 1, max: 4 }),
      room: fc.constantFrom('room:a', 'room:b', 'room:c'),
      minor: fc.integer({ min: 0, max: 1e9 }),
    })
    fc.assert(
      fc.property(fc.array(stay, { maxLength: 20 }), stays => {
        const pieces = stays.map(({ day, days, room, minor }, at) =>
          piece(`w${at}`, day * 24, (day + days) * 24, ['all', room], chf(minor)),
        )
        const sums = sumsByDay(pieces, into, first, first + 9)
        for (const whole of sums.get('all') ?? []) {
          const parts = ['room:a', 'room:b', 'room:c'].map(room => sums.get(room)?.find(each => each.day === whole.day))
          expect(parts.reduce((sum, part) => sum + (part?.minor ?? 0), 0)).toBe(whole.minor)
          expect(parts.reduce((sum, part) => sum + (part?.works ?? 0), 0)).toBe(whole.works)
        }
      }),
    )
  })

  test('a van that goes three times holds three loads, not all at once', () => {
    const pieces = [
      piece('w1', 8, 9, ['vehicle:v'], chf(100)),
      piece('w2', 9, 10, ['vehicle:v'], chf(300)),
      piece('w3', 11, 12, ['vehicle:v'], chf(200)),
    ]
    const [only] = sumsByDay(pieces, into, first, first).get('vehicle:v') ?? []
    expect(only).toMatchObject({ minor: 300, works: 1, at: first * dayLong + 9 * hour })
    expect(inGroup(pieces, 'vehicle:v', only?.at ?? 0).map(({ work }) => work)).toEqual(['w2'])
  })

  test('the rate of each day counts; without a rate, and without a value, it stands apart', () => {
    const pieces = [
      piece('w1', 0, 72, ['all'], { minor: 10_000, currency: 'EUR' }),
      piece('w2', 0, 72, ['all'], { minor: 500, currency: 'JPY' }),
      piece('w3', 0, 24, ['all'], null),
    ]
    const told = sumsByDay(pieces, into, first, first + 2).get('all')
    const apart = [{ minor: 500, currency: 'JPY' }]
    expect(told).toMatchObject([
      { minor: 9500, apart, works: 3, without: 1 },
      { minor: 9500, apart, works: 2, without: 0 },
      { minor: 9412, apart, works: 2, without: 0 },
    ])
    const before = sumsByDay(pieces, new Into('CHF', []), first, first).get('all')
    expect(before).toMatchObject([{ minor: 0, apart: [{ minor: 10_000, currency: 'EUR' }, apart[0]] }])
  })

  test('300 works over 90 days take less than half a second', () => {
    const pieces = Array.from({ length: 300 }, (_, at) =>
      Array.from({ length: 12 }, (_, n) =>
        piece(
          `w${at}`,
          n * 180 + (at % 24),
          (n + 1) * 180 + (at % 24),
          ['all', `lender:${at % 9}`, `room:${(at + n) % 20}`],
          {
            minor: at * 1000,
            currency: at % 3 === 0 ? 'EUR' : 'CHF',
          },
        ),
      ),
    ).flat()
    const began = performance.now()
    const sums = sumsByDay(pieces, into, first, first + 89)
    expect(sums.get('all')).toHaveLength(90)
    expect(performance.now() - began).toBeLessThan(500)
  })
})

describe('a sum against limits', () => {
  const limit = { id: 'l', amount: chf(1000), first: null, last: null }
  const of = (scope: Limit['scope'], subject = '', more: Partial<Limit> = {}): Limit => ({
    ...limit,
    scope,
    subject,
    slice: '',
    ...more,
  })
  const sum = (minor: number, more = {}) => ({ day: first, minor, apart: [], works: 1, without: 0, at: 0, ...more })

  test.each([
    [of('all'), 'all', true],
    [of('all'), 'lender:a', false],
    [of('lender', 'a'), 'lender:a', true],
    [of('lender', 'a'), 'room:a', false],
    [of('place', 'a'), 'room:a', true],
    [of('place', 'a'), 'vehicle:a', true],
    [of('place', 'a'), 'lender:a', false],
    [of('crate'), 'crate:x', true],
    [of('vehicle'), 'crate:x', false],
    [of('vehicle'), 'journey:x', false],
    [of('journey'), 'journey:x', true],
    [of('place', 'x'), 'journey:x', false],
    // For what one bears: that part of a group, and no whole one.
    [of('all', '', { slice: 'house' }), 'all', false],
    [of('all', '', { slice: 'house' }), 'all/house', true],
    [of('all', '', { slice: 'house' }), 'all/indemnity', false],
    [of('all'), 'all/house', false],
    [of('vehicle', '', { slice: 'term-t1' }), 'vehicle:v/term-t1', true],
  ])('%o for %s: %s', (one, group, counts) => expect(against([one], group, sum(0), into)).toHaveLength(counts ? 1 : 0))

  test('tells by how much, in its own currency by the rate of the day, and only while it is in force', () => {
    expect(against([of('all')], 'all', sum(1001), into)).toMatchObject([{ verdict: 'over', over: 1 }])
    expect(against([of('all')], 'all', sum(1000), into)).toMatchObject([{ verdict: 'within', over: 0 }])
    const euros = of('all', '', { amount: { minor: 1000, currency: 'EUR' } })
    expect(against([euros], 'all', sum(1000), into)).toMatchObject([{ verdict: 'over', minor: 950, over: 50 }])
    expect(against([of('all', '', { first: first + 1 })], 'all', sum(1001), into)).toEqual([])
    expect(against([of('all', '', { last: first - 1 })], 'all', sum(1001), into)).toEqual([])
    expect(against([of('all', '', { first, last: first })], 'all', sum(1001), into)).toHaveLength(1)
  })

  test('is never told to be within one where money stands apart, a value is missing or the limit has no rate', () => {
    const apart = [{ minor: 1, currency: 'JPY' }]
    expect(against([of('all')], 'all', sum(10, { apart }), into)).toMatchObject([{ verdict: 'unsure' }])
    expect(against([of('all')], 'all', sum(10, { without: 1 }), into)).toMatchObject([{ verdict: 'unsure' }])
    const yen = of('all', '', { amount: { minor: 9999, currency: 'JPY' } })
    expect(against([yen], 'all', sum(10), into)).toMatchObject([{ verdict: 'unsure', minor: null }])
  })

  test('names the work that crosses it and all that came after', () => {
    const pieces = [
      piece('w3', 5, 24, ['all'], chf(1)),
      piece('w1', 0, 24, ['all'], chf(600)),
      piece('w4', 6, 24, ['all'], null),
      piece('w2', 2, 24, ['all'], chf(401)),
    ]
    const came = inGroup(pieces, 'all', first * dayLong + 10 * hour)
    expect(came.map(({ work }) => work)).toEqual(['w1', 'w2', 'w3', 'w4'])
    expect(bringOver(came, 1000, into, first)).toEqual(['w2', 'w3'])
    expect(bringOver(came, 1002, into, first)).toEqual([])
  })

  test('a work that only changes its room or its value came when it first came', () => {
    const pieces = [
      piece('w1', 0, 6, ['all', 'room:a'], chf(5)),
      piece('w1', 6, 9, ['all', 'room:b'], chf(5)),
      piece('w1', 9, 24, ['all', 'room:b'], chf(600)),
      piece('w2', 3, 24, ['all', 'room:b'], chf(600)),
      piece('w3', 0, 2, ['all'], chf(1)),
      piece('w3', 4, 24, ['all'], chf(1)),
    ]
    const at = first * dayLong + 10 * hour
    expect(inGroup(pieces, 'all', at).map(({ work }) => work)).toEqual(['w1', 'w2', 'w3'])
    expect(inGroup(pieces, 'room:b', at).map(({ work }) => work)).toEqual(['w2', 'w1'])
    expect(inGroup(pieces, 'room:a', at)).toEqual([])
  })
})
