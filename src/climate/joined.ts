/**
 * Stretches beyond a limit with less between them than the house says, told as one: a value that trembles about a limit
 * leaves it hundreds of times. How long it was beyond stays what it was. Over what nobody read nothing is joined.
 */
import type { Stretch } from './out.ts'
import { indexFrom } from './reduce.ts'
import { type Series, standsFor } from './series.ts'

export interface JoinedStretch extends Stretch {
  /** How many stretches it was; 1 where nothing was joined. */
  readonly times: number
  /** Seconds beyond, without those between. */
  readonly beyond: number
}

const far = ({ limit, worst }: Stretch) => (limit.endsWith('Low') ? -worst : worst)

/** `out`: stretches of the series, the first one first; `longest`: seconds between two that are one. */
export function joined(series: Series, out: readonly Stretch[], longest: number): JoinedStretch[] {
  const { at } = series
  const stands = standsFor(at)
  const read = (limit: string, from: number, until: number) => {
    const values = limit.startsWith('humidity') ? series.humidity : series.celsius
    let known = from
    for (let i = indexFrom(at, from); (at[i] ?? until) < until; i++) {
      if (at[i] !== known || (values[i] ?? null) === null) return false
      known += stands[i] ?? 0
    }
    return known === until
  }
  const last = new Map<string, number>()
  const kept: JoinedStretch[] = []
  for (const each of out) {
    const own = { ...each, times: 1, beyond: each.until - each.from }
    const place = last.get(each.limit)
    const before = place === undefined ? undefined : kept[place]
    if (before !== undefined && place !== undefined && each.from - before.until <= longest) {
      if (read(each.limit, before.until, each.from)) {
        const worst = far(each) > far(before) ? each : before
        kept[place] = {
          ...own,
          from: before.from,
          worst: worst.worst,
          worstAt: worst.worstAt,
          times: before.times + 1,
          beyond: before.beyond + own.beyond,
        }
        continue
      }
    }
    last.set(each.limit, kept.length)
    kept.push(own)
  }
  return kept
}
