/** Where readings leave their limits: since when, how long, how far; and what they are in the mean. */
import type { LimitKey, Limits } from './limits.ts'
import { type Series, standsFor } from './series.ts'

const window = 86_400

export interface Stretch {
  readonly limit: LimitKey
  /** Seconds, UTC. */
  readonly from: number
  readonly until: number
  /** The value farthest beyond; of a change, the widest span within 24 hours. */
  readonly worst: number
  /** When that was. */
  readonly worstAt: number
}

type Values = readonly (number | null)[]

/** Widest span of the values in the 24 hours that end with each reading, both ends counted; null where it reads none. */
export function changeWithin(at: readonly number[], values: Values): (number | null)[] {
  // Each keeps what can still become the greatest or the least, so that every reading is looked at twice.
  const [greatest, least]: [number[], number[]] = [[], []]
  let [firstOfGreatest, firstOfLeast] = [0, 0]
  return values.map((value, i) => {
    if (value === null) return null
    while (greatest.length > firstOfGreatest && (values[greatest.at(-1) ?? 0] ?? 0) <= value) greatest.pop()
    while (least.length > firstOfLeast && (values[least.at(-1) ?? 0] ?? 0) >= value) least.pop()
    greatest.push(i)
    least.push(i)
    const since = (at[i] ?? 0) - window
    while ((at[greatest[firstOfGreatest] ?? i] ?? since) < since) firstOfGreatest++
    while ((at[least[firstOfLeast] ?? i] ?? since) < since) firstOfLeast++
    return (values[greatest[firstOfGreatest] ?? i] ?? value) - (values[least[firstOfLeast] ?? i] ?? value)
  })
}

function stretches(
  limit: LimitKey,
  at: readonly number[],
  stands: readonly number[],
  values: Values,
  beyond: (value: number) => number,
): Stretch[] {
  type Open = { -readonly [K in keyof Stretch]: Stretch[K] }
  const found: Open[] = []
  let open: Open | null = null
  for (let i = 0; i < values.length; i++) {
    const value = values[i] ?? null
    const far = value === null ? 0 : beyond(value)
    const from = at[i] ?? 0
    if (value === null || far <= 1e-9) {
      open = null
      continue
    }
    const until = from + (stands[i] ?? 0)
    if (open === null || open.until < from) {
      open = { limit, from, until, worst: value, worstAt: from }
      found.push(open)
      continue
    }
    open.until = until
    if (far > beyond(open.worst)) {
      open.worst = value
      open.worstAt = from
    }
  }
  return found
}

/** Every stretch beyond a limit, the first one first. A stretch ends where nobody knows how it went on. */
export function outOf(series: Series, limits: Limits): Stretch[] {
  const { at, celsius, humidity } = series
  const stands = standsFor(at)
  const found: Stretch[] = []
  const band = (values: Values, low: LimitKey, high: LimitKey, change: LimitKey) => {
    const [least, most, widest] = [limits[low], limits[high], limits[change]]
    if (least !== null) found.push(...stretches(low, at, stands, values, value => least - value))
    if (most !== null) found.push(...stretches(high, at, stands, values, value => value - most))
    if (widest === null) return
    found.push(...stretches(change, at, stands, changeWithin(at, values), value => value - widest))
  }
  band(humidity, 'humidityLow', 'humidityHigh', 'humidityChange')
  band(celsius, 'celsiusLow', 'celsiusHigh', 'celsiusChange')
  return found.sort((a, b) => a.from - b.from || a.until - b.until)
}

export interface Summary {
  readonly least: number
  readonly leastAt: number
  readonly most: number
  readonly mostAt: number
  /** By the time for which each reading stands. */
  readonly mean: number
}

/** Of one quantity; null where it was never read. */
export function summaryOf(at: readonly number[], values: Values): Summary | null {
  const stands = standsFor(at)
  let [sum, time] = [0, 0]
  let [least, most]: [number | null, number | null] = [null, null]
  values.forEach((value, i) => {
    if (value === null) return
    sum += value * (stands[i] ?? 0)
    time += stands[i] ?? 0
    if (least === null || value < (values[least] ?? 0)) least = i
    if (most === null || value > (values[most] ?? 0)) most = i
  })
  if (least === null || most === null) return null
  const [low, high] = [least as number, most as number] // a callback set them
  return {
    least: values[low] ?? 0,
    leastAt: at[low] ?? 0,
    most: values[high] ?? 0,
    mostAt: at[high] ?? 0,
    mean: sum / time,
  }
}

/** Seconds for which something was read, and of those, for which it was beyond a limit. */
export function timeOut(series: Series, out: readonly Stretch[]): { readonly known: number; readonly beyond: number } {
  const known = standsFor(series.at).reduce((sum, each) => sum + each, 0)
  let [beyond, end] = [0, Number.NEGATIVE_INFINITY]
  for (const { from, until } of out) {
    beyond += Math.max(0, until - Math.max(from, end))
    end = Math.max(end, until)
  }
  return { known, beyond }
}
