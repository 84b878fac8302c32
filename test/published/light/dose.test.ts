/** Doses of light as others have worked them, each with its source. */
import { describe, expect, test } from 'vitest'
import { above, perLumen, spentOf, violetOf } from '../../../src/light/budget.ts'
import { dayOf } from '../../../src/light/day.ts'
import { litDays, type ReadFrom } from '../../../src/light/dose.ts'
import type { HoursLit } from '../../../src/light/hours.ts'
import { FOOTCANDLE } from '../../../src/measure/lux.ts'

const start = dayOf('2031-01-06') // a Monday

function received(lux: number, hours: Omit<HoursLit, 'lux' | 'kind'>, readings: readonly ReadFrom[] = []): number {
  const show = {
    exhibition: 'x',
    title: '',
    hours: [{ kind: 'open' as const, lux: null, ...hours }],
    face: 'f',
    planned: new Map([['f', lux]]),
    uses: null,
  }
  const days = litDays([show], [], readings, hours.last)
  return spentOf(days, null, hours.last).ever
}

describe('lux-hours', () => {
  // annell.se, word list of lighting, “luxtimme”.
  test('50 lx for 8 h on 300 days are 120 000 lx h, in ten years 1 200 000', () => {
    expect(received(50, { first: start, last: start + 299, weekdays: 127, hours: 8 })).toBeCloseTo(120_000)
    expect(received(50, { first: start, last: start + 2999, weekdays: 127, hours: 8 })).toBeCloseTo(1_200_000)
  })

  // erco.com, “Illumination of light-sensitive exhibits”.
  test('50 lx for 10 h are as much as 250 lx for 2 h', () => {
    const day = { first: start, last: start, weekdays: 127 }
    expect(received(50, { ...day, hours: 10 })).toBe(500)
    expect(received(250, { ...day, hours: 2 })).toBe(500)
  })

  // aardenburg-imaging.com, 20-year light fade test: “about 40 Mlx h”; exactly 39.42.
  test('450 lx for 12 h a day are about 40 million lx h in 20 years', () => {
    const sum = received(450, { first: start, last: start + 20 * 365 - 1, weekdays: 127, hours: 12 })
    expect(sum / 1e6).toBeCloseTo(39.42, 6)
  })

  // CIE 157:2004 as summarised by sellers of the book gives 50 lx and 150 000 lx h a year: 3 000 hours at that level.
  test('a budget of 150 000 lx h at 50 lx ends after 3 000 hours', () => {
    const hours = [{ kind: 'open' as const, lux: null, first: start, last: start + 364, weekdays: 127, hours: 10 }]
    const show = { exhibition: 'x', title: '', hours, face: 'f', planned: new Map([['f', 50]]), uses: null }
    const days = litDays([show], [], [], start)
    expect(spentOf(days, 150_000, start).ends).toBe(start + 300)
    expect(spentOf(days.slice(0, 300), 150_000, start).ends).toBeNull()
  })

  // The same source: “150 000 / 50 lx = 3 000 h a year = 8.2 h a day; for 24 h on display 150 000 / 8 760 = 17 lx”.
  test('150 000 lx h a year are 8.219 h a day at 50 lx, or 17.12 lx day and night', () => {
    const year = { first: start, last: start + 364, weekdays: 127 }
    expect(received(50, { ...year, hours: 8.219178 })).toBeCloseTo(150_000, 0)
    expect(received(150_000 / 8760, { ...year, hours: 24 })).toBeCloseTo(150_000, 6)
    expect(150_000 / 8760).toBeCloseTo(17.12, 2)
  })

  // herie.pl, manual of a calculator of light damage: D = E h n t / 10⁶ Mlx h, E in lx, h hours a day, n days, t years.
  test('its product of level, hours, days and years is what day by day comes to', () => {
    for (const [lux, hours, days] of [
      [50, 8, 300],
      [200, 9.5, 365],
      [17, 24, 180],
    ] as const) {
      const sum = received(lux, { first: start, last: start + days - 1, weekdays: 127, hours })
      expect(sum / 1e6).toBeCloseTo((lux * hours * days * 1) / 1e6, 9)
    }
  })

  // The same manual: flashes bring D = d F n t / (3.6 × 10⁹) Mlx h, d in lx s a flash, F flashes a day; its example is
  // 1 000 lx s, 100 a day, 300 days: 8 333 lx h. A flash of 1 000 lx s is as much as 1 000 lx for a second (reciprocity).
  test('100 flashes of 1 000 lx s a day are 8 333 lx h in 300 days, and add to the light of the room', () => {
    const days = { first: start, last: start + 299, weekdays: 127 }
    const flashes = { kind: 'event' as const, lux: 1000, hours: 100 / 3600, ...days }
    expect(received(1000, { ...days, hours: 100 / 3600 })).toBeCloseTo(((1000 * 100 * 300) / 3.6e9) * 1e6, 6)
    expect(received(1000, { ...days, hours: 100 / 3600 })).toBeCloseTo(8333, -1)
    const open = { kind: 'open' as const, lux: null, hours: 8, ...days }
    const show = {
      exhibition: 'x',
      title: '',
      hours: [open, flashes],
      face: 'f',
      planned: new Map([['f', 50]]),
      uses: null,
    }
    const both = litDays([show], [], [], days.last)
    expect(spentOf(both, null, days.last).ever).toBeCloseTo(120_000 + 8333.333, 2)
  })

  // The same source, CIE 157:2004 as remembered (table of categories, from memory): 50 lx and 150 000 lx h, 200 lx and
  // 600 000 lx h are both 3 000 hours; 50 lx and 15 000 lx h are 300.
  test('budgets of the categories end after 3 000, 3 000 and 300 hours at their own levels', () => {
    for (const [lux, budget, hours] of [
      [50, 150_000, 3000],
      [200, 600_000, 3000],
      [50, 15_000, 300],
    ] as const) {
      const row = { kind: 'open' as const, lux: null, first: start, last: start + 364, weekdays: 127, hours: 10 }
      const show = { exhibition: 'x', title: '', hours: [row], face: 'f', planned: new Map([['f', lux]]), uses: null }
      expect(spentOf(litDays([show], [], [], start), budget, start).ends).toBe(start + hours / 10)
    }
  })

  // Worked here by hand, no source: 50 × 9.5 × 6 × 14, and 47, 68 and 50 lx for 5, 3 and 6 weeks.
  test('a lamp that was knocked shows in what was read, not in what was planned', () => {
    const hours = { first: start, last: start + 14 * 7 - 1, weekdays: 0b111111, hours: 9.5 }
    expect(received(50, hours)).toBeCloseTo(39_900)
    const read = [
      { from: start, lux: 47, uv: null },
      { from: start + 35, lux: 68, uv: null },
      { from: start + 56, lux: 50, uv: null },
    ]
    expect(received(50, hours, read)).toBeCloseTo(42_123)
  })
})

// NIST SP 811, appendix B.8: footcandle to lux, 1.076 391 E+01.
test('a footcandle is 10.76391 lx', () => expect(FOOTCANDLE).toBeCloseTo(10.76391, 5))

// Texas Association of Museums, sheet on light: ultraviolet at most 75 µW/lm. At its 50 lx that is 3.75 mW/m² by the
// units alone (1 lx = 1 lm/m²), and 30 mWh/m² in a day of 8 h.
test('75 µW/lm at 50 lx are 3.75 mW/m², 30 mWh/m² in 8 h', () => {
  expect(perLumen(3.75, 50)).toBe(75)
  const hours = [{ kind: 'open' as const, lux: null, first: start, last: start, weekdays: 127, hours: 8 }]
  const show = { exhibition: 'x', title: '', hours, face: 'f', planned: new Map<string, number>(), uses: null }
  const days = litDays([show], [], [{ from: start, lux: 50, uv: 75 }], start)
  expect(violetOf(days, start)).toEqual({ used: 30, ever: 30, most: 30, hours: 8, unknownHours: 0 })
  expect(above(days, 'uv', 75).hours).toBe(0)
  expect(above(days, 'uv', 74.9).hours).toBe(8)
})
