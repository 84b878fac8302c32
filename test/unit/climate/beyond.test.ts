/** The air of a room while a work was in it: days looked through only where they must be tell what all readings do. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { airHeld, daysRead, secondsOf, united } from '../../../src/climate/beyond.ts'
import { dayAirOf, eachDayOnce } from '../../../src/climate/day-air.ts'
import { outOf, timeOut } from '../../../src/climate/out.ts'
import { packed } from '../../../src/climate/pack.ts'
import { type Series, usualStep } from '../../../src/climate/series.ts'

const start = 1_900_000_000
const none = {
  ...{ humidityLow: null, humidityHigh: null, humidityChange: null },
  ...{ celsiusLow: null, celsiusHigh: null, celsiusChange: null },
}
const percent = fc.integer({ min: 3000, max: 7000 }).map(each => each / 100)

/** A logger of ten minutes over days, some of whose readings are lost, now and then for hours. */
const series: fc.Arbitrary<Series> = fc
  .array(fc.tuple(fc.constantFrom(1, 1, 1, 1, 1, 1, 2, 40), fc.option(percent, { nil: null, freq: 20 })), {
    minLength: 3,
    maxLength: 500,
  })
  .map(rows => {
    let moment = start
    return {
      at: rows.map(([steps]) => (moment += steps * 600)),
      humidity: rows.map(([, value]) => value),
      celsius: rows.map(() => 20),
    }
  })
const whole = [{ from: start, until: start + 1e8 }]
/** A day whose usual step is another one is told by its own logger; these have ten minutes throughout. */
const isRegular = (of: Series) =>
  usualStep(of.at) === 600 && packed(of).every(day => [null, 600].includes(dayAirOf(day).step))
const daysOf = (of: Series) => packed(of).map(dayAirOf)

test('time beyond, the least and the greatest are those of the whole series', () => {
  fc.assert(
    fc.property(series, percent, percent, (of, a, b) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b) + 0.01]
      fc.pre(isRegular(of))
      const held = airHeld([daysOf(of)], whole, 'humidity', { low, high })
      const out = outOf(of, { ...none, humidityLow: low, humidityHigh: high })
      expect(secondsOf(held.beyond)).toBeCloseTo(timeOut(of, out).beyond, 6)
      const known = of.humidity.filter(each => each !== null)
      expect(held.reach?.least ?? null).toBe(known.length === 0 ? null : Math.min(...known))
      expect(held.reach?.most ?? null).toBe(known.length === 0 ? null : Math.max(...known))
      expect(of.humidity[of.at.indexOf(held.reach?.mostAt ?? 0)]).toBe(held.reach?.most)
    }),
  )
})

test('cut into spans, it is told as reading by reading', () => {
  const cuts = fc.array(fc.integer({ min: 0, max: 400_000 }), { minLength: 2, maxLength: 8 })
  fc.assert(
    fc.property(series, percent, cuts, (of, high, marks) => {
      fc.pre(isRegular(of))
      const sorted = marks.sort((a, b) => a - b).map(each => start + each)
      const spans = united(
        sorted.flatMap((from, i) =>
          i % 2 === 0 && i + 1 < sorted.length ? [{ from, until: sorted[i + 1] ?? from }] : [],
        ),
      )
      const held = airHeld([daysOf(of)], spans, 'humidity', { low: null, high })
      let seconds = 0
      const seen: number[] = []
      of.at.forEach((at, i) => {
        const [value, span] = [of.humidity[i] ?? null, spans.find(each => each.from <= at && at < each.until)]
        if (value === null || span === undefined) return
        seen.push(value)
        const stands = Math.min(of.at[i + 1] ?? at + 600, at + 1800, span.until)
        if (value > high) seconds += stands - at
      })
      expect(secondsOf(held.beyond)).toBeCloseTo(seconds, 6)
      expect(held.reach?.most ?? null).toBe(seen.length === 0 ? null : Math.max(...seen))
      const days = daysRead([daysOf(of)], spans, 'humidity', moment => Math.floor((moment + 7200) / 86_400))
      const slow = of.at.filter(
        (at, i) => of.humidity[i] !== null && spans.some(span => span.from <= at && at < span.until),
      )
      expect([...days].sort()).toEqual([...new Set(slow.map(at => Math.floor((at + 7200) / 86_400)))].sort())
    }),
  )
})

test('a day in two files is one day, and two loggers that are beyond at once count once', () => {
  fc.assert(
    fc.property(series, percent, fc.array(fc.boolean(), { minLength: 500, maxLength: 500 }), (of, high, first) => {
      const part = (own: boolean): Series => {
        const pick = <T>(values: readonly T[]) => values.filter((_, i) => (first[i] ?? false) === own)
        return { at: pick(of.at), celsius: pick(of.celsius), humidity: pick(of.humidity) }
      }
      const parts = [...daysOf(part(true)), ...daysOf(part(false))].sort((a, b) => a.day - b.day)
      const merged = eachDayOnce(parts)
      expect(merged).toEqual(daysOf(of))
      const band = { low: null, high }
      const once = airHeld([merged], whole, 'humidity', band)
      expect(airHeld([merged, merged], whole, 'humidity', band)).toEqual(once)
    }),
  )
})
