import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { piecesOf } from '../../../src/insurance/pieces.ts'
import { type Known, type Move, staysOf } from '../../../src/insurance/stays.ts'
import { type Lent, type Valued, valueOn, valueSpans } from '../../../src/insurance/value.ts'
import { dayOf } from '../../../src/light/day.ts'
import { placesAround } from '../../../src/record/nested.ts'

const today = dayOf('2031-03-14')
const hour = 3_600_000
const at = (day: number, hours = 0) => (today + day) * 24 * hour + hours * hour
const move = (day: number, place: string, hours = 0): Move => ({ at: at(day, hours), place })
const known = (more: Partial<Known>): Known => ({ moves: [], carried: new Map(), shows: [], loans: [], ...more })
const loan = (first: number | null, last: number | null, minor: number | null = null): Lent => ({
  loan: `l${first}`,
  first: first === null ? null : today + first,
  last: last === null ? null : today + last,
  value: minor === null ? null : { minor, currency: 'CHF' },
  bearer: 'unsaid',
  slices: [],
})
const told = (stays: ReturnType<typeof staysOf>) =>
  stays.map(({ from, to, places, basis }) => [(from - at(0)) / hour, (to - at(0)) / hour, places.join(' in '), basis])

describe('where a work is', () => {
  test('as recorded, through the crate and the van that carry it', () => {
    const carried = new Map([
      ['crate', [move(-9, 'van'), move(-5, 'room')]],
      ['van', [move(-9, 'street'), move(-6, 'yard')]],
    ])
    expect(told(staysOf(known({ moves: [move(-8, 'crate'), move(-4, 'wall')], carried }), today, today))).toEqual([
      [-192, -144, 'crate in van in street', 'record'],
      [-144, -120, 'crate in van in yard', 'record'],
      [-120, -96, 'crate in room', 'record'],
      [-96, 24, 'wall', 'record'],
    ])
  })

  test('from tomorrow as planned: in its show, then where it stands', () => {
    const shows = [{ first: today + 3, last: today + 5, place: 'north' }]
    expect(told(staysOf(known({ moves: [move(-1, 'store')], shows }), today, today + 9))).toEqual([
      [-24, 24, 'store', 'record'],
      [24, 72, 'store', 'plan'],
      [72, 144, 'north', 'plan'],
      [144, 240, 'store', 'plan'],
    ])
  })

  test('gone when its last loan has ended, and expected somewhere while one lasts', () => {
    expect(told(staysOf(known({ loans: [loan(2, 4)] }), today, today + 9))).toEqual([[48, 120, '', 'plan']])
    const back = known({ moves: [move(-1, 'store')], loans: [loan(-9, 2)] })
    expect(told(staysOf(back, today, today + 9)).at(-1)).toEqual([24, 72, 'store', 'plan'])
    const open = known({ moves: [move(-1, 'store')], loans: [loan(-9, 2), loan(5, null)] })
    expect(told(staysOf(open, today, today + 9)).at(-1)?.[1]).toBe(240)
  })

  test('in a show on no wall it is counted, its place untold', () => {
    const shows = [{ first: today, last: today + 1, place: null }]
    expect(told(staysOf(known({ moves: [move(-1, 'store')], shows }), today, today + 1))).toEqual([
      [-24, 24, 'store', 'record'],
      [24, 48, '', 'plan'],
    ])
  })

  test('a day past says only what was recorded by its end, and a clock set back loses no movement', () => {
    expect(told(staysOf(known({ moves: [move(-5, 'a'), move(-2, 'b')] }), today, today - 3))).toEqual([
      [-120, -48, 'a', 'record'],
    ])
    const backwards = known({ moves: [move(-1, 'a', 3), move(-1, 'b', 2)] })
    expect(told(staysOf(backwards, today, today))).toEqual([[-21, 24, 'b', 'record']])
  })

  const path = fc
    .array(
      fc.record({
        hours: fc.integer({ min: -200, max: 20 }),
        place: fc.constantFrom('c1', 'c2', 'v', 'room', 'store'),
      }),
      {
        maxLength: 5,
      },
    )
    .map(moves => moves.map(({ hours, place }) => move(0, place, hours)).sort((a, b) => a.at - b.at))
  test('stays follow one another, and at any moment say what the record says then', () => {
    fc.assert(
      fc.property(path, path, path, path, fc.integer({ min: -220, max: 23 }), (moves, c1, c2, v, hours) => {
        const carried = new Map([
          ['c1', c1],
          ['c2', c2],
          ['v', v],
        ])
        const stays = staysOf(known({ moves, carried }), today, today)
        for (const [n, stay] of stays.entries())
          expect(stay.from < stay.to && stay.to <= (stays[n + 1]?.from ?? Infinity)).toBe(true)
        const moment = at(0, hours)
        const standing = new Map(
          [...carried].flatMap(([key, all]) => {
            const stood = all.findLast(each => each.at <= moment)
            return stood === undefined ? [] : [[key, stood] as const]
          }),
        )
        const place = moves.findLast(each => each.at <= moment)?.place
        expect(stays.find(stay => stay.from <= moment && moment < stay.to)?.places).toEqual(
          place === undefined ? undefined : placesAround(place, standing),
        )
      }),
    )
  })
})

describe('what a work is worth', () => {
  const own: Valued[] = [
    { id: 'v1', day: today - 300, value: { minor: 100, currency: 'EUR' } },
    { id: 'v2', day: today + 2, value: { minor: 200, currency: 'EUR' } },
  ]
  test('the loan’s value on its days, else its own newest', () => {
    const loans = [loan(1, 3, 900), loan(-9, -1)]
    const spans = valueSpans(loans, own, today, today + 5, 'house')
    expect(spans.map(({ first, last, value, by }) => [first - today, last - today, value?.minor, by?.kind])).toEqual([
      [0, 0, 100, 'own'],
      [1, 1, 900, 'loan'],
      [2, 3, 900, 'loan'],
      [4, 5, 200, 'own'],
    ])
    expect(valueOn([], own, today - 301, 'house')).toEqual({ value: null, by: null, slices: ['house'] })
  })

  test('of two loans on one day the one that began last, of two valuations the one entered last', () => {
    expect(valueOn([loan(-1, 9, 5), loan(null, 9, 4)], own, today, 'house').by?.id).toBe('l-1')
    expect(
      valueOn([], [...own, { id: 'v3', day: today - 300, value: { minor: 1, currency: 'EUR' } }], today, 'house').by
        ?.id,
    ).toBe('v3')
  })

  test('spans are whole and say what each of their days says', () => {
    const some = fc.integer({ min: -5, max: 12 })
    const loans = fc.array(
      fc.tuple(fc.option(some), fc.nat(6), fc.option(fc.nat(9))).map(([a, n, m]) => loan(a, a === null ? n : a + n, m)),
    )
    const values = fc.array(
      fc
        .tuple(some, fc.nat(99))
        .map(([day, n]) => ({ id: `v${n}`, day: today + day, value: { minor: n, currency: 'EUR' } })),
    )
    fc.assert(
      fc.property(loans, values, (lent, valued) => {
        const spans = valueSpans(lent, valued, today, today + 9, 'house')
        const days = spans.flatMap(({ first, last, ...said }) =>
          Array.from({ length: last - first + 1 }, (_, n) => ({ day: first + n, said })),
        )
        expect(days.map(({ day }) => day)).toEqual(Array.from({ length: 10 }, (_, n) => today + n))
        for (const { day, said } of days) expect(said).toEqual(valueOn(lent, valued, day, 'house'))
      }),
    )
  })
})

test('pieces are stays cut by values; a stay in no group is left out', () => {
  const stays = staysOf(known({ moves: [move(-1, 'store'), move(0, 'away', 12)] }), today, today + 1)
  const values = valueSpans(
    [],
    [{ id: 'v', day: today, value: { minor: 7, currency: 'EUR' } }],
    today - 1,
    today + 1,
    'house',
  )
  const pieces = piecesOf('w', stays, values, ([place]) => (place === 'away' ? [] : ['all']))
  expect(pieces.map(({ from, to, value }) => [(from - at(0)) / hour, (to - at(0)) / hour, value?.minor])).toEqual([
    [-24, 0, undefined],
    [0, 12, 7],
  ])
})
