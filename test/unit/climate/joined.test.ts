/** Stretches beyond a limit that lie close together, told as one: against joining minute by minute. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { joined } from '../../../src/climate/joined.ts'
import { outOf, timeOut } from '../../../src/climate/out.ts'
import { gapsOf, type Series } from '../../../src/climate/series.ts'

const limits = {
  ...{ humidityLow: 40, humidityHigh: 60, humidityChange: null },
  ...{ celsiusLow: null, celsiusHigh: null, celsiusChange: null },
}
const start = 1_900_000_000

/** A minute's logger about its limits, some readings lost, some without humidity. */
const series: fc.Arbitrary<Series> = fc
  .array(
    fc.tuple(
      fc.constantFrom(1, 1, 1, 1, 1, 1, 1, 2, 9),
      fc.option(fc.constantFrom(39, 41, 59, 61, 66), { nil: null, freq: 12 }),
    ),
    { minLength: 4, maxLength: 150 },
  )
  .map(rows => {
    let moment = start
    return {
      at: rows.map(([steps]) => (moment += steps * 60)),
      humidity: rows.map(([, value]) => value),
      celsius: rows.map(() => 20),
    }
  })

test('nothing is lost: the time beyond, the worst and the number of times stay', () => {
  fc.assert(
    fc.property(series, fc.integer({ min: 0, max: 8 }), (of, minutes) => {
      const apart = outOf(of, limits)
      const found = joined(of, apart, minutes * 60)
      expect(found.reduce((sum, { times }) => sum + times, 0)).toBe(apart.length)
      expect(found.reduce((sum, { beyond }) => sum + beyond, 0)).toBe(timeOut(of, apart).beyond)
      for (const one of found) {
        const within = apart.filter(
          each => each.limit === one.limit && each.from >= one.from && each.until <= one.until,
        )
        expect(within).toHaveLength(one.times)
        const worst = within.map(each => each.worst)
        expect(one.worst).toBe(one.limit === 'humidityLow' ? Math.min(...worst) : Math.max(...worst))
        expect(within.some(each => each.worstAt === one.worstAt && each.worst === one.worst)).toBe(true)
      }
    }),
  )
})

test('minute by minute: filled where a short while between two is known throughout', () => {
  fc.assert(
    fc.property(series, fc.integer({ min: 0, max: 8 }), (of, minutes) => {
      for (const limit of ['humidityLow', 'humidityHigh'] as const) {
        const apart = outOf(of, limits).filter(each => each.limit === limit)
        const length = ((of.at.at(-1) ?? start) - start) / 60 + 40
        const beyond = Array.from({ length }, (_, i) =>
          apart.some(({ from, until }) => from <= start + i * 60 && start + i * 60 < until),
        )
        const gaps = gapsOf(of.at)
        const known = Array.from({ length }, (_, i) => {
          const moment = start + i * 60
          const reading = of.at.findLastIndex(at => at <= moment)
          const unread = gaps.some(({ from, until }) => moment >= from + 180 && moment < until)
          return !unread && (of.humidity[reading] ?? null) !== null
        })
        const filled = [...beyond]
        for (let i = 0, last = -1; i < length; i++) {
          if (!beyond[i]) continue
          const between = i - last - 1
          if (last >= 0 && between > 0 && between <= minutes && known.slice(last + 1, i).every(Boolean))
            filled.fill(true, last, i)
          last = i
        }
        // Two that touch are one stretch only where the scan before made them one.
        const runs = filled.filter((each, i) => each && !filled[i - 1]).length
        const touching = apart.filter(({ until }) => apart.some(({ from }) => from === until)).length
        const found = joined(of, apart, minutes * 60)
        expect(touching).toBe(0)
        expect(found).toHaveLength(runs)
      }
    }),
  )
})

test('a value that trembles about its limit for a night is one stretch, beyond half of it', () => {
  const at = Array.from({ length: 144 }, (_, i) => start + i * 300)
  const of: Series = { at, humidity: at.map((_, i) => (i % 2 === 0 ? 60.1 : 59.9)), celsius: at.map(() => 20) }
  const found = joined(of, outOf(of, limits), 600)
  expect(found).toEqual([
    {
      limit: 'humidityHigh',
      from: start,
      until: start + 143 * 300,
      worst: 60.1,
      worstAt: start,
      times: 72,
      beyond: 72 * 300,
    },
  ])
})
