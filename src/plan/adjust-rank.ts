/**
 * What a set of measures fixes and what it leaves open, from its normal matrix by Cholesky with pivots: a pivot that is
 * nothing beside the first is a way the outline can still move. For each observation its row in the space of what is
 * fixed, so that redundancy and correlation are products of rows.
 */
import { type Observation, type Slope, slopeOf, unknownsOf } from './adjust-model.ts'
import { normalOf } from './adjust-solve.ts'
import type { Measure, Point } from './survey.ts'

export interface Rank {
  /** Ways that the outline can still move. */
  readonly open: number
  /** Each way, as a step of all unknowns of length 1. */
  readonly ways: readonly Float64Array[]
  /** A measure's row in the space of what is fixed: the product of two is what the one says of the other. */
  readonly rowOf: (measure: Measure, weight: number) => Float64Array
  /** By how much a measure's value changes along each open way, per mm of it. */
  readonly seen: (measure: Measure) => number[]
}

/** A pivot below this share of the first is none. */
const NOTHING = 1e-9

export function rankOf(observations: readonly Observation[], corners: readonly Point[]): Rank {
  const size = unknownsOf(corners.length)
  const slopes = observations.map(({ measure }) => slopeOf(measure, corners))
  const { cells } = normalOf(observations, slopes, size)
  const order = Array.from({ length: size }, (_, at) => at)
  const lower: Float64Array[] = []
  const left = Float64Array.from({ length: size }, (_, at) => cells[at * size + at] ?? 0)
  const first = left.reduce((most, one) => Math.max(most, one), 0)
  let fixed = 0
  while (fixed < size) {
    let best = fixed
    for (let at = fixed; at < size; at += 1) {
      if ((left[order[at] ?? 0] ?? 0) > (left[order[best] ?? 0] ?? 0)) best = at
    }
    const chosen = order[best] ?? 0
    const pivot = left[chosen] ?? 0
    if (first === 0 || pivot <= first * NOTHING) break
    order[best] = order[fixed] ?? 0
    order[fixed] = chosen
    const root = Math.sqrt(pivot)
    const column = new Float64Array(size)
    column[chosen] = root
    for (let at = fixed + 1; at < size; at += 1) {
      const unknown = order[at] ?? 0
      let cell = cells[unknown * size + chosen] ?? 0
      for (const before of lower) cell -= (before[unknown] ?? 0) * (before[chosen] ?? 0)
      const by = cell / root
      column[unknown] = by
      left[unknown] = (left[unknown] ?? 0) - by * by
    }
    lower.push(column)
    fixed += 1
  }
  const pivots = order.slice(0, fixed)
  const ways = waysOf(order.slice(fixed), pivots, lower, size)
  return {
    open: size - fixed,
    ways,
    rowOf(measure, weight) {
      const dense = spread(slopeOf(measure, corners), size)
      const row = new Float64Array(fixed)
      for (let at = 0; at < fixed; at += 1) {
        const unknown = pivots[at] ?? 0
        let cell = (dense[unknown] ?? 0) * Math.sqrt(weight)
        for (let k = 0; k < at; k += 1) cell -= (lower[k]?.[unknown] ?? 0) * (row[k] ?? 0)
        row[at] = cell / (lower[at]?.[unknown] ?? 1)
      }
      return row
    },
    seen(measure) {
      const dense = spread(slopeOf(measure, corners), size)
      return ways.map(way => product(dense, way))
    },
  }
}

function spread({ at, by }: Slope, size: number): Float64Array {
  const dense = new Float64Array(size)
  for (const [index, unknown] of at.entries()) dense[unknown] = (dense[unknown] ?? 0) + (by[index] ?? 0)
  return dense
}

export function product(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let at = 0; at < a.length; at += 1) sum += (a[at] ?? 0) * (b[at] ?? 0)
  return sum
}

/** One free unknown moves by 1, the fixed ones follow so that no measure changes; made square to one another. */
function waysOf(free: readonly number[], pivots: readonly number[], lower: readonly Float64Array[], size: number) {
  const ways: Float64Array[] = []
  for (const unknown of free) {
    const way = new Float64Array(size)
    way[unknown] = 1
    for (let at = pivots.length - 1; at >= 0; at -= 1) {
      const column = lower[at]
      const pivot = pivots[at] ?? 0
      let cell = -(column?.[unknown] ?? 0)
      for (let k = at + 1; k < pivots.length; k += 1)
        cell -= (column?.[pivots[k] ?? 0] ?? 0) * (way[pivots[k] ?? 0] ?? 0)
      way[pivot] = cell / (column?.[pivot] ?? 1)
    }
    for (const known of ways) {
      const share = product(way, known)
      for (let at = 0; at < size; at += 1) way[at] = (way[at] ?? 0) - share * (known[at] ?? 0)
    }
    const length = Math.sqrt(product(way, way))
    if (length > 1e-12) ways.push(way.map(cell => cell / length))
  }
  return ways
}
