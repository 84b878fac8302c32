/** Readings hour by hour or day by day: the least, the mean by time and the greatest, for tables and for paper. */
import { indexFrom } from './reduce.ts'
import { type Series, standsFor } from './series.ts'

export interface Slot {
  /** Seconds UTC. */
  readonly from: number
  readonly count: number
  readonly humidity: Figures | null
  readonly celsius: Figures | null
}

export interface Figures {
  readonly least: number
  readonly mean: number
  readonly most: number
}

/** From each edge to the next, in order; slots without a reading are left out. */
export function byTime({ at, humidity, celsius }: Series, edges: readonly number[]): Slot[] {
  const stands = standsFor(at)
  const figures = (values: Series['humidity'], from: number, to: number): Figures | null => {
    let [least, most, sum, time] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0]
    for (let i = from; i < to; i++) {
      const value = values[i] ?? null
      if (value === null) continue
      least = Math.min(least, value)
      most = Math.max(most, value)
      sum += value * (stands[i] ?? 0)
      time += stands[i] ?? 0
    }
    return time === 0 ? null : { least, mean: sum / time, most }
  }
  return edges.slice(0, -1).flatMap((edge, n): Slot[] => {
    const [from, to] = [indexFrom(at, edge), indexFrom(at, edges[n + 1] ?? edge)]
    if (from === to) return []
    return [
      { from: edge, count: to - from, humidity: figures(humidity, from, to), celsius: figures(celsius, from, to) },
    ]
  })
}
