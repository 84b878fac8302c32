/** The lines of a chart: readings reduced to the columns of the screen, as the text of a path. */

import { indexFrom, type ReducedColumn, reduced } from '../../src/climate/reduce.ts'
import type { Series } from '../../src/climate/series.ts'

export interface Line {
  readonly logger: string
  readonly at: Float64Array
  readonly celsius: Float64Array
  readonly humidity: Float64Array
  /** Farther apart than this, two readings have no line between them; seconds. */
  readonly joins: number
}

export function lineOf(logger: string, { at, celsius, humidity }: Series, joins: number): Line {
  const plain = (values: readonly (number | null)[]) => Float64Array.from(values, value => value ?? Number.NaN)
  return { logger, at: Float64Array.from(at), celsius: plain(celsius), humidity: plain(humidity), joins }
}

/** Least and greatest of all, NaN left out; null where there is none. */
export function extentOf(values: Float64Array): readonly [number, number] | null {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const value of values) {
    if (value < least) least = value
    if (value > most) most = value
  }
  return least > most ? null : [least, most]
}

export interface Frame {
  readonly from: number
  readonly until: number
  /** Pixels. */
  readonly width: number
  readonly y: (value: number) => number
}

/** Between columns a line goes from the last reading of one to the first of the next, within one from least to greatest. */
export function pathOf(line: Line, values: Float64Array, { from, until, width, y }: Frame): string {
  const columns = Math.max(1, Math.round(width))
  const x = (moment: number) => (((moment - from) / (until - from)) * width).toFixed(1)
  let path = ''
  let before: ReducedColumn | null = null
  for (const one of reduced(line.at, values, from, until, columns)) {
    const joined = before !== null && one.from - before.until <= line.joins
    path += `${joined ? 'L' : 'M'}${x(one.from)} ${y(one.first).toFixed(1)}`
    if (one.most > one.least) path += `V${y(one.least).toFixed(1)}V${y(one.most).toFixed(1)}`
    // One reading alone is a dot as wide as the pen.
    else if (!joined) path += 'h.5'
    path += `L${x(one.until)} ${y(one.last).toFixed(1)}`
    before = one
  }
  return path
}

/** The index of the reading nearest to a moment; -1 where there is none. `at` is in order. */
export function nearest(at: Float64Array, moment: number): number {
  const after = indexFrom(at, moment)
  const before = after - 1
  if (after >= at.length) return at.length - 1
  return before >= 0 && moment - (at[before] ?? 0) < (at[after] ?? 0) - moment ? before : after
}
