/** Who bears the loss of works, sums of what each bears, and what a vehicle carries on one journey. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Bearer, bearerOf, bearers } from '../../../src/insurance/bearer.ts'
import { groupParts, sliced } from '../../../src/insurance/groups.ts'
import { Into } from '../../../src/insurance/held.ts'
import { journeysOf } from '../../../src/insurance/journeys.ts'
import type { Limit } from '../../../src/insurance/limits.ts'
import type { Piece } from '../../../src/insurance/pieces.ts'
import { sumOfDay, sumsByDay } from '../../../src/insurance/sums.ts'
import { type Lent, valueOn } from '../../../src/insurance/value.ts'
import { dayOf } from '../../../src/light/day.ts'

const first = dayOf('2031-03-10')
const hour = 3_600_000
const began = first * 24 * hour
const into = new Into('CHF', [])
const limit = (scope: Limit['scope'], slice = ''): Limit => ({
  ...{ id: `${scope} ${slice}`, scope, subject: '', slice },
  ...{ amount: { minor: 1000, currency: 'CHF' }, first: null, last: null },
})

/** From and to in hours after the first day began. */
function piece(
  work: string,
  from: number,
  to: number,
  groups: readonly string[],
  minor: number,
  slices = ['house'],
): Piece {
  return {
    ...{ work, from: began + from * hour, to: began + to * hour, groups, slices },
    ...{ value: { minor, currency: 'CHF' }, by: null, basis: 'record', places: [] },
  }
}

describe('who bears the loss', () => {
  test.each([
    ['in', 'borrower', false, 'house'],
    ['in', 'lender', true, 'lender'],
    ['out', 'lender', false, 'house'],
    ['out', 'borrower', false, 'borrower'],
    ['in', '', true, 'indemnity'],
    ['in', '', false, 'unsaid'],
    ['out', 'nobody', true, 'nobody'],
    ['in', 'indemnity', false, 'indemnity'],
  ] as const)('lent %s, insured by “%s”, under an indemnity %s: %s', (way, by, indemnified, bearer) =>
    expect(bearerOf(way, by, indemnified)).toBe(bearer),
  )

  const lent = (from: number, bearer: Bearer, slices: string[] = []): Lent => {
    return { loan: 'l', first: first + from, last: first + 9, value: null, bearer, slices }
  }
  test('the loan that began last and says it; its own house on days of no loan; terms of all loans that are on', () => {
    expect(
      valueOn(
        [lent(0, 'lender'), lent(1, 'indemnity', ['term-a']), lent(2, 'unsaid', ['term-b'])],
        [],
        first + 3,
        'house',
      ).slices,
    ).toEqual(['indemnity', 'term-a', 'term-b'])
    expect(valueOn([lent(0, 'lender')], [], first - 1, 'house').slices).toEqual(['house'])
    expect(valueOn([lent(0, 'unsaid')], [], first, 'house').slices).toEqual(['unsaid'])
  })
})

describe('sums of what each bears', () => {
  const stay = fc.record({
    ...{ day: fc.integer({ min: 0, max: 5 }), days: fc.integer({ min: 1, max: 4 }), minor: fc.nat(1e9) },
    ...{ bearer: fc.constantFrom(...bearers), room: fc.constantFrom('room:a', 'vehicle:v') },
  })
  test('add up to the whole, and agree with the sum looked up anew', () => {
    fc.assert(
      fc.property(fc.array(stay, { maxLength: 20 }), stays => {
        const limits = [limit('vehicle', 'indemnity')]
        const pieces = stays.map(({ day, days, minor, bearer, room }, at) =>
          piece(`w${at}`, day * 24, (day + days) * 24, sliced(['all', room], [bearer], limits), minor, [bearer]),
        )
        const sums = sumsByDay(pieces, into, first, first + 9)
        const on = (group: string, day: number) => sums.get(group)?.find(each => each.day === day)?.minor ?? 0
        for (let day = first; day < first + 9; day++) {
          expect(bearers.reduce((sum, each) => sum + on(`all/${each}`, day), 0)).toBe(on('all', day))
          expect(on('vehicle:v/indemnity', day)).toBe(sumOfDay(pieces, 'vehicle:v/indemnity', into, day).minor)
          const byHand = stays
            .filter(each => each.bearer === 'indemnity' && each.room === 'vehicle:v')
            .filter(each => first + each.day <= day && day < first + each.day + each.days)
          expect(on('vehicle:v/indemnity', day)).toBe(byHand.reduce((sum, each) => sum + each.minor, 0))
        }
        // Nobody asked for these.
        expect(
          [...sums.keys()].filter(group => groupParts(group).kind === 'room' && groupParts(group).slice !== ''),
        ).toEqual([])
      }),
    )
  })
})

describe('one journey of a vehicle', () => {
  const journey = [limit('journey')]
  const vehicle = (work: string, from: number, to: number, minor: number) =>
    piece(work, from, to, ['all', 'vehicle:v'], minor)
  const greatest = (pieces: readonly Piece[], group = 'journey:v', limits = journey) =>
    sumsByDay([...pieces, ...journeysOf(pieces, limits)], into, first, first).get(group)?.[0]?.minor

  test('counts what was set down on the way; emptied, it begins anew', () => {
    // 100 and 300 meet, 300 and 50 meet, 100 and 50 never do; 200 goes after it was empty.
    const round = [
      vehicle('w1', 8, 10, 100),
      vehicle('w2', 9, 12, 300),
      vehicle('w3', 11, 13, 50),
      vehicle('w4', 14, 15, 200),
    ]
    expect(greatest(round)).toBe(450)
    expect(greatest(round, 'vehicle:v')).toBe(400)
    expect(greatest(round, 'journey:v', [])).toBeUndefined()
  })

  test('counts a work that gets out and in again once, and only for whom it is asked', () => {
    const twice = [vehicle('w1', 8, 9, 100), vehicle('w2', 8, 12, 10), vehicle('w1', 10, 11, 100)]
    expect(greatest(twice)).toBe(110)
    const borne = [piece('w1', 8, 9, ['vehicle:v'], 7, ['indemnity']), piece('w2', 8, 12, ['vehicle:v'], 10, ['house'])]
    const asked = [limit('journey', 'indemnity')]
    expect([greatest(borne, 'journey:v/indemnity', asked), greatest(borne, 'journey:v', asked)]).toEqual([7, undefined])
  })

  test('is the sum of all that was in it between two moments at which it was empty', () => {
    const load = fc.record({ from: fc.nat(20), hours: fc.integer({ min: 1, max: 4 }), minor: fc.nat(1e6) })
    fc.assert(
      fc.property(fc.array(load, { maxLength: 8 }), loads => {
        const pieces = loads.map(({ from, hours, minor }, at) =>
          vehicle(`w${at}`, from, Math.min(24, from + hours), minor),
        )
        // By another route: hour by hour, a tally that is wiped whenever nothing is in the vehicle.
        let [most, tally, aboard] = [0, new Set<number>(), false]
        for (let now = 0; now < 24; now++) {
          const inside = loads.flatMap(({ from, hours }, at) => (from <= now && now < from + hours ? [at] : []))
          if (inside.length === 0) aboard = false
          else {
            if (!aboard) tally = new Set()
            aboard = true
            for (const at of inside) tally.add(at)
            most = Math.max(
              most,
              [...tally].reduce((sum, at) => sum + (loads[at]?.minor ?? 0), 0),
            )
          }
        }
        expect(greatest(pieces) ?? 0).toBe(most)
      }),
    )
  })
})
