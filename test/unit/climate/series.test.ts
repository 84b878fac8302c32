import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Limits } from '../../../src/climate/limits.ts'
import { changeWithin, outOf, summaryOf, timeOut } from '../../../src/climate/out.ts'
import { packed, unpacked } from '../../../src/climate/pack.ts'
import { blocksOf, reduced } from '../../../src/climate/reduce.ts'
import { gapsOf, type Series, standsFor, usualStep } from '../../../src/climate/series.ts'

const hundredths = fc.option(
  fc.integer({ min: 0, max: 10_000 }).map(each => each / 100),
  { nil: null },
)
const series: fc.Arbitrary<Series> = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 40_000 }), hundredths, hundredths), { maxLength: 120 })
  .map(rows => {
    let moment = 1_900_000_000
    return {
      at: rows.map(([step]) => (moment += step)),
      celsius: rows.map(([, celsius]) => celsius),
      humidity: rows.map(([, , humidity]) => humidity),
    }
  })

const none: Limits = {
  ...{ humidityLow: null, humidityHigh: null, humidityChange: null },
  ...{ celsiusLow: null, celsiusHigh: null, celsiusChange: null },
}

/** A reading every so many minutes, the humidity given. */
function every(minutes: number, humidity: readonly number[]): Series {
  const at = humidity.map((_, i) => 1_900_000_000 + i * minutes * 60)
  return { at, humidity, celsius: humidity.map(() => 20) }
}

describe('packed', () => {
  test('comes back as it was, whatever it is', () => {
    fc.assert(fc.property(series, each => void expect(unpacked(packed(each))).toEqual(each)))
  })

  test('days from several files come back in order', () => {
    fc.assert(
      fc.property(series, fc.array(fc.boolean(), { minLength: 120, maxLength: 120 }), (each, first) => {
        const part = (own: boolean): Series => {
          const pick = <T>(values: readonly T[]) => values.filter((_, i) => (first[i] ?? false) === own)
          return { at: pick(each.at), celsius: pick(each.celsius), humidity: pick(each.humidity) }
        }
        const days = [...packed(part(true)), ...packed(part(false))].sort((a, b) => a.day - b.day)
        expect(unpacked(days)).toEqual(each)
      }),
    )
  })

  test('a year of a reading every five minutes takes less than 600 000 characters', () => {
    const count = 365 * 288
    const turn = (i: number, period: number) => Math.sin((2 * Math.PI * i) / period)
    // A season, a day, and the last figure of a sensor that trembles.
    const tremble = (i: number) => ((i * 2_654_435_761) % 97) / 970
    const humidity = Array.from({ length: count }, (_, i) =>
      Number((50 + 5 * turn(i, count) + 2 * turn(i, 288) + tremble(i)).toFixed(1)),
    )
    const celsius = humidity.map((_, i) => Number((20 + 2 * turn(i, count) + turn(i, 288) + tremble(i + 7)).toFixed(1)))
    const at = humidity.map((_, i) => 1_924_992_000 + i * 300)
    const days = packed({ at, celsius, humidity })
    const size = days.reduce((sum, day) => sum + day.seconds.length + day.celsius.length + day.humidity.length, 0)
    expect(size).toBeLessThan(600_000)
    expect(unpacked(days).humidity).toEqual(humidity)
  })
})

describe('beyond limits', () => {
  test('since when, how long, the worst', () => {
    const found = outOf(every(60, [50, 61, 66, 59, 39]), { ...none, humidityLow: 40, humidityHigh: 60 })
    const start = 1_900_000_000
    expect(found).toEqual([
      { limit: 'humidityHigh', from: start + 3600, until: start + 3 * 3600, worst: 66, worstAt: start + 7200 },
      { limit: 'humidityLow', from: start + 4 * 3600, until: start + 5 * 3600, worst: 39, worstAt: start + 4 * 3600 },
    ])
  })

  test('a gap ends a stretch: what nobody read is not said', () => {
    const at = [0, 300, 600, 90_000, 90_300]
    const gapped: Series = { at, humidity: [70, 70, 70, 70, 70], celsius: at.map(() => null) }
    expect(outOf(gapped, { ...none, humidityHigh: 60 }).map(({ from, until }) => [from, until])).toEqual([
      [0, 1500],
      [90_000, 90_600],
    ])
    expect(gapsOf(at)).toEqual([{ from: 600, until: 90_000 }])
  })

  test('the scan counts the same time as the intervals of the readings that are beyond', () => {
    fc.assert(
      fc.property(series, fc.integer({ min: 1, max: 99 }), (each, limit) => {
        const stands = standsFor(each.at)
        const intervals = each.humidity.reduce<number>(
          (sum, value, i) => sum + (value !== null && value > limit + 1e-9 ? (stands[i] ?? 0) : 0),
          0,
        )
        const out = outOf(each, { ...none, humidityHigh: limit })
        expect(timeOut(each, out).beyond).toBeCloseTo(intervals, 6)
        for (const { worst } of out) expect(worst).toBeGreaterThan(limit)
      }),
    )
  })

  test('the span within 24 hours is that of looking at every pair', () => {
    fc.assert(
      fc.property(series, ({ at, humidity }) => {
        const slow = humidity.map((value, i) => {
          if (value === null) return null
          const inside = humidity.filter(
            (each, j): each is number => each !== null && j <= i && (at[j] ?? 0) >= (at[i] ?? 0) - 86_400,
          )
          return Math.max(...inside) - Math.min(...inside)
        })
        expect(changeWithin(at, humidity)).toEqual(slow)
      }),
    )
  })
})

test('the usual step is the median of the steps, put in order', () => {
  fc.assert(
    fc.property(series, ({ at }) => {
      const steps = at.slice(1).map((each, i) => each - (at[i] ?? each))
      const middle = steps.toSorted((a, b) => a - b)[Math.floor(steps.length / 2)]
      expect(usualStep(at)).toBe(middle ?? null)
    }),
  )
})

test('the mean is by time: an hour of 40 and three of 60 are 55', () => {
  const found = summaryOf([0, 3600, 7200, 10_800], [40, 60, 60, 60])
  expect(found).toMatchObject({ least: 40, leastAt: 0, most: 60, mostAt: 3600, mean: 55 })
  expect(summaryOf([0], [null])).toBeNull()
})

test('a line reduced by its blocks is the line reduced reading by reading, from wherever to wherever', () => {
  const value = fc.oneof({ weight: 6, arbitrary: fc.integer({ min: -200, max: 900 }) }, fc.constant(Number.NaN))
  const line = fc.array(fc.tuple(fc.integer({ min: 0, max: 900 }), value), { minLength: 1, maxLength: 500 })
  fc.assert(
    fc.property(line, fc.nat(1000), fc.nat(1000), fc.integer({ min: 1, max: 60 }), (steps, start, share, columns) => {
      let now = 1_900_000_000
      const at = steps.map(([step]) => (now += step))
      const values = steps.map(([, one]) => one)
      const long = now - 1_900_000_000 + 60
      const from = 1_900_000_000 + Math.round((start / 1000) * long) - 30
      const until = from + 1 + Math.round((share / 1000) * long)
      const plain = reduced(at, values, from, until, columns)
      expect(reduced(at, values, from, until, columns, blocksOf(at, values))).toEqual(plain)
    }),
  )
})

test('a reduced line keeps the least and the greatest of every column and loses no reading', () => {
  fc.assert(
    fc.property(series, fc.integer({ min: 1, max: 40 }), ({ at, humidity }, columns) => {
      const values = humidity.map(each => each ?? Number.NaN)
      const [from, until] = [1_900_000_000, (at.at(-1) ?? 1_900_000_000) + 1]
      const found = reduced(at, values, from, until, columns)
      const column = (moment: number) => Math.floor(((moment - from) * columns) / (until - from))
      for (const one of found) {
        const own = values.filter(
          (value, i) => !Number.isNaN(value) && (at[i] ?? 0) >= one.from && (at[i] ?? 0) <= one.until,
        )
        expect([one.least, one.most, one.first, one.last]).toEqual([
          Math.min(...own),
          Math.max(...own),
          own[0],
          own.at(-1),
        ])
        expect(Math.abs(column(one.from) - one.column)).toBeLessThanOrEqual(1)
      }
      const known = values.filter(value => !Number.isNaN(value))
      if (known.length > 0) {
        expect(Math.max(...found.map(one => one.most))).toBe(Math.max(...known))
        expect(Math.min(...found.map(one => one.least))).toBe(Math.min(...known))
      }
    }),
  )
})
