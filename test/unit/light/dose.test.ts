/** Light received: by counting weekdays of whole periods against day by day, and what a work's places say of its light. */
import { describe, expect, test } from 'vitest'
import { above, perLumen, spentOf, violetOf } from '../../../src/light/budget.ts'
import { dateOf, dayOf, weekdayOf } from '../../../src/light/day.ts'
import { byShow, litDays, meanLevel, spansOf } from '../../../src/light/dose.ts'
import { type HoursLit, litOn, overfull } from '../../../src/light/hours.ts'
import { randomFrom } from '../database/random-edits.ts'

const start = dayOf('2031-04-01') // a Tuesday
const open = (more: Partial<HoursLit> = {}): HoursLit => ({
  kind: 'open',
  first: start,
  last: start + 27,
  weekdays: 127,
  hours: 8,
  lux: null,
  ...more,
})
const show = (hours: readonly HoursLit[], planned: readonly (readonly [string, number])[] = [['north', 50]]) => ({
  exhibition: 'x',
  title: 'Low Water',
  hours,
  face: 'north',
  planned: new Map(planned),
  uses: null,
})
const sum = (days: readonly { readonly luxHours: number }[]) => days.reduce((all, day) => all + day.luxHours, 0)

/** How often weekdays fall into a period, without walking it. */
function countOf(first: number, last: number, weekdays: number): number {
  const weeks = Math.floor((last - first + 1) / 7)
  const rest = (last - first + 1) % 7
  const bit = (weekday: number) => ((weekdays >> (weekday % 7)) & 1) as number // a bit
  let count = 0
  for (let each = 0; each < 7; each++) count += weeks * bit(each)
  for (let each = 0; each < rest; each++) count += bit(weekdayOf(first) + each)
  return count
}

test('a day is a day, also when the clocks change', () => {
  expect(dateOf(dayOf('2031-03-30'))).toBe('2031-03-30')
  expect(dayOf('2031-03-31') - dayOf('2031-03-30')).toBe(1)
  expect(weekdayOf(dayOf('2026-11-28'))).toBe(5)
  expect(weekdayOf(-4)).toBe(6)
  const days = litDays([show([open({ first: dayOf('2031-03-29'), last: dayOf('2031-03-31') })])], [], [], start)
  expect(days.map(day => day.luxHours)).toEqual([400, 400, 400])
})

test('period by period comes to the same as day by day', () => {
  const random = randomFrom(29)
  const whole = (to: number) => Math.floor(random() * to)
  for (let count = 0; count < 300; count++) {
    const rows = Array.from({ length: 1 + whole(4) }, (): HoursLit => {
      const first = start + whole(200)
      const kind = (['open', 'cleaning', 'event'] as const)[whole(3)] ?? 'open'
      const lux = whole(3) === 0 ? whole(300) : null
      return open({ kind, first, last: first + whole(400), weekdays: 1 + whole(127), hours: whole(9), lux })
    })
    const byPeriod = rows.reduce(
      (all, row) => all + countOf(row.first, row.last, row.weekdays) * row.hours * (row.lux ?? 50),
      0,
    )
    const days = litDays([show(rows)], [], [], start)
    expect(sum(days)).toBeCloseTo(byPeriod, 6)
    expect(sum(spansOf(days))).toBeCloseTo(byPeriod, 6)
  }
})

describe('where a work was', () => {
  test('a closed day is not open, yet it may be cleaned', () => {
    const closed = open({ kind: 'closed', first: start + 1, last: start + 1, hours: 0 })
    const cleaning = open({ kind: 'cleaning', hours: 1 })
    expect(litOn([open(), closed, cleaning], start + 1)).toEqual([cleaning])
    expect(sum(litDays([show([open(), closed])], [], [], start))).toBe(27 * 400)
  })

  test('in the store it is dark, before its first movement and after today the plan counts', () => {
    const record = [
      { from: start + 7, kind: 'elsewhere' as const, place: 'store' },
      { from: start + 14, kind: 'face' as const, place: 'south' },
    ]
    const planned = [
      ['north', 50],
      ['south', 100],
    ] as const
    const days = litDays([show([open()], planned)], record, [], start + 20)
    // A week on the north wall, one in the store, a week on the south wall until today, a week to come as planned.
    expect(sum(days)).toBe(7 * 400 + 7 * 800 + 7 * 400)
    expect(spansOf(days).map(span => span.place)).toEqual(['north', 'south', 'north'])
  })

  test('a level that nobody read or planned is unknown, never nothing', () => {
    const days = litDays([show([open(), open({ kind: 'cleaning', hours: 1, lux: 200 })], [])], [], [], start + 27)
    expect(spentOf(days, null, start + 27)).toMatchObject({ ever: 28 * 200, unknownHours: 28 * 8 })
    expect(days[0]).toMatchObject({ basis: 'unknown', lux: null })
  })

  test('a reading counts from its day, and no longer once the work was moved', () => {
    const read = [{ from: start + 7, lux: 80, uv: null }]
    expect(sum(litDays([show([open()])], [], read, start + 27))).toBe(7 * 400 + 21 * 640)
    const moved = [
      { from: start, kind: 'face' as const, place: 'north' },
      { from: start + 14, kind: 'face' as const, place: 'south' },
    ]
    const days = litDays([show([open()])], moved, read, start + 27)
    expect(sum(days)).toBe(7 * 400 + 7 * 640)
    expect(days.at(-1)).toMatchObject({ basis: 'unknown', place: 'south' })
  })

  test('two shows on one day count it once, for the wall that the work is on', () => {
    const other = { ...show([open({ hours: 24 })]), exhibition: 'y', face: 'south' }
    const record = [{ from: start, kind: 'face' as const, place: 'north' }]
    const days = litDays([other, show([open()])], record, [], start + 27)
    expect(days).toHaveLength(28)
    expect(new Set(days.map(day => day.exhibition))).toEqual(new Set(['x']))
  })
})

describe('a show that the record alone knows it in', () => {
  const other = { ...show([open()], [['hall', 100]]), exhibition: 'y', face: null, uses: new Set(['hall', 'room']) }
  const stood = (place: string) => [{ from: start, kind: 'face' as const, place }]

  test('lights it on its own walls and nowhere else', () => {
    expect(sum(litDays([other], stood('hall'), [], start + 27))).toBe(28 * 800)
    expect(litDays([other], stood('west'), [], start + 27)).toEqual([])
    // Nobody has carried it there yet, and no plan puts it there.
    expect(litDays([other], [], [], start)).toEqual([])
  })

  test('is no second light beside the show that it is in', () => {
    const days = litDays([show([open()], [['hall', 50]]), other], stood('hall'), [], start + 27)
    expect(sum(days)).toBe(28 * 400)
  })
})

describe('ultraviolet', () => {
  const cleaning = open({ kind: 'cleaning', hours: 1, lux: 200 })
  const read = [
    { from: start + 7, lux: 50, uv: 80 },
    { from: start + 14, lux: 60, uv: null },
  ]
  const days = litDays([show([open(), cleaning])], [], read, start + 27)

  // By hand: a week of 8 h at 50 lx and two at 60 lx, each with 80 µW/lm: 0.08 × (7 × 400 + 14 × 480) mWh/m².
  test('stands until it is read again, and other lamps have another', () => {
    const { hours, unknownHours, ever } = violetOf(days, start + 27)
    expect(ever).toBeCloseTo(0.08 * (7 * 400 + 14 * 480), 9)
    expect([hours, unknownHours]).toEqual([21 * 8, 7 * 8 + 28])
    expect(spansOf(days).map(span => span.uv)).toEqual([null, 80, 80])
  })

  test('is above a limit by the hours that were read, and unknown for the others', () => {
    expect(above(days, 'uv', 75)).toEqual({
      ...{ hours: 21 * 8, within: 0, unknownHours: 7 * 8 + 28, first: start + 7, greatest: 80 },
    })
    expect(above(days, 'uv', 80)).toMatchObject({ hours: 0, within: 21 * 8, first: null })
    expect(above(days, 'lux', 50)).toMatchObject({ hours: 14 * 8 + 28, within: 14 * 8, unknownHours: 0, first: start })
  })

  test('of a moved work is not known again', () => {
    const moved = [{ from: start + 14, kind: 'face' as const, place: 'south' }]
    expect(violetOf(litDays([show([open()])], moved, read.slice(0, 1), start + 27), start + 27).hours).toBe(7 * 8)
  })

  test('on a surface is that of each lumen at its level', () => {
    expect(perLumen(3.75, 50)).toBe(75)
    expect(perLumen(0.1, 0)).toBeNull()
  })
})

test('hours at a level of their own change the mean, and nothing else does', () => {
  const [mixed] = spansOf(litDays([show([open(), open({ kind: 'cleaning', hours: 2, lux: 100 })])], [], [], start))
  // 8 h at 50 lx and 2 h at 100 lx.
  expect(mixed && meanLevel(mixed)).toBeCloseTo(60)
  const [plain] = spansOf(litDays([show([open()])], [], [], start))
  expect(plain && meanLevel(plain)).toBeNull()
  // At a level that nobody knows there is no mean, whatever the cleaners' lamps are.
  const [dim] = spansOf(litDays([show([open(), open({ kind: 'cleaning', hours: 2, lux: 100 })], [])], [], [], start))
  expect(dim && meanLevel(dim)).toBeNull()
})

test('what each show brought is what its spans have', () => {
  const next = { ...show([open({ first: start + 40, last: start + 49 })]), exhibition: 'y', title: 'High Water' }
  const read = [{ from: start + 7, lux: 80, uv: 10 }]
  const spans = spansOf(litDays([show([open()]), next], [], read, start + 60)).map(({ first, last, ...span }) => {
    return { ...span, first: dateOf(first), last: dateOf(last) }
  })
  const shows = byShow(spans)
  expect(spans).toHaveLength(3)
  expect(shows.map(each => [each.exhibition, each.first, each.last])).toEqual([
    ['x', dateOf(start), dateOf(start + 27)],
    ['y', dateOf(start + 40), dateOf(start + 49)],
  ])
  expect(sum(shows)).toBeCloseTo(sum(spans), 6)
})

describe('a budget', () => {
  const days = litDays([show([open({ last: start + 799 })])], [], [], start)

  test('counts any 365 days, and ends on the day that passes it', () => {
    expect(spentOf(days, 365 * 400, start).ends).toBeNull()
    expect(spentOf(days, 365 * 400 - 1, start).ends).toBe(start + 364)
    expect(spentOf(days, null, start + 799)).toMatchObject({ used: 365 * 400, ever: 800 * 400, most: 365 * 400 })
  })

  test('a longer show ends it where going on as in the last weeks does', () => {
    const short = days.slice(0, 28)
    const longer = spentOf(short, 15_000, start).endsIfLonger
    const really = spentOf(days, 15_000, start).ends
    expect(longer).toBe(really)
    expect(spentOf(short, 365 * 400, start).endsIfLonger).toBeNull()
  })
})

test('a day with more than 24 hours is found', () => {
  expect(overfull([open(), open({ kind: 'event', first: start + 3, last: start + 3, hours: 17 })])).toEqual({
    day: start + 3,
    hours: 25,
  })
  expect(overfull([open({ hours: 24 })])).toBeNull()
})
