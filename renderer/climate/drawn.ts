/** The lines of a chart: readings reduced to the columns of the screen, as the text of a path. */

import { type Blocks, blocksOf, indexFrom, type ReducedColumn, reduced } from '../../src/climate/reduce.ts'
import type { Series } from '../../src/climate/series.ts'

export interface Line {
  readonly logger: string
  readonly at: Float64Array
  readonly celsius: Float64Array
  readonly humidity: Float64Array
  /** Of each of the two, for drawing it in the columns of a screen. */
  readonly blocks: { readonly celsius: Blocks; readonly humidity: Blocks }
  /** Farther apart than this, two readings have no line between them; seconds. */
  readonly joins: number
}

export function lineOf(logger: string, series: Series, joins: number): Line {
  const plain = (values: readonly (number | null)[]) => Float64Array.from(values, value => value ?? Number.NaN)
  const at = Float64Array.from(series.at)
  const [celsius, humidity] = [plain(series.celsius), plain(series.humidity)]
  const blocks = { celsius: blocksOf(at, celsius), humidity: blocksOf(at, humidity) }
  return { logger, at, celsius, humidity, blocks, joins }
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

/** In tenths of a pixel, which the eye does not tell apart; not below 0. Whole numbers become text soonest. */
function tenths(pixels: number): string {
  const all = Math.round(pixels * 10)
  const whole = Math.trunc(all / 10)
  return all === whole * 10 ? String(whole) : `${whole}.${all - whole * 10}`
}

/** Between columns a line goes from the last reading of one to the first of the next, within one from least to greatest. */
export function pathOf(line: Line, of: 'celsius' | 'humidity', { from, until, width, y }: Frame): string {
  const columns = Math.max(1, Math.round(width))
  const perSecond = width / (until - from)
  const x = (moment: number) => tenths((moment - from) * perSecond)
  const parts: string[] = []
  let before: ReducedColumn | null = null
  for (const one of reduced(line.at, line[of], from, until, columns, line.blocks[of])) {
    const joined = before !== null && one.from - before.until <= line.joins
    parts.push(joined ? 'L' : 'M', x(one.from), ' ', tenths(y(one.first)))
    if (one.most > one.least) parts.push('V', tenths(y(one.least)), 'V', tenths(y(one.most)))
    // One reading alone is a dot as wide as the pen.
    else if (!joined) parts.push('h.5')
    parts.push('L', x(one.until), ' ', tenths(y(one.last)))
    before = one
  }
  return parts.join('')
}

/** The index of the reading nearest to a moment; -1 where there is none. `at` is in order. */
export function nearest(at: Float64Array, moment: number): number {
  const after = indexFrom(at, moment)
  const before = after - 1
  if (after >= at.length) return at.length - 1
  return before >= 0 && moment - (at[before] ?? 0) < (at[after] ?? 0) - moment ? before : after
}
