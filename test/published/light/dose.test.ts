/** Doses of light as others have worked them, each with its source. */
import { describe, expect, test } from 'vitest'
import { spentOf } from '../../../src/light/budget.ts'
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
    const show = { exhibition: 'x', title: '', hours, face: 'f', planned: new Map([['f', 50]]) }
    const days = litDays([show], [], [], start)
    expect(spentOf(days, 150_000, start).ends).toBe(start + 300)
    expect(spentOf(days.slice(0, 300), 150_000, start).ends).toBeNull()
  })

  // Worked here by hand, no source: 50 × 9.5 × 6 × 14, and 47, 68 and 50 lx for 5, 3 and 6 weeks.
  test('a lamp that was knocked shows in what was read, not in what was planned', () => {
    const hours = { first: start, last: start + 14 * 7 - 1, weekdays: 0b111111, hours: 9.5 }
    expect(received(50, hours)).toBeCloseTo(39_900)
    const read = [
      { from: start, lux: 47 },
      { from: start + 35, lux: 68 },
      { from: start + 56, lux: 50 },
    ]
    expect(received(50, hours, read)).toBeCloseTo(42_123)
  })
})

// NIST SP 811, appendix B.8: footcandle to lux, 1.076 391 E+01.
test('a footcandle is 10.76391 lx', () => expect(FOOTCANDLE).toBeCloseTo(10.76391, 5))
