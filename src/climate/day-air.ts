/** A day of one logger's readings, unpacked once and small enough to be kept: whether a day can be beyond is told by its reach. */
import { numbersOf, type PackedDay, perUnit, secondsOfDay } from './pack.ts'
import { usualStep } from './series.ts'

export const quantities = ['humidity', 'celsius'] as const
export type Quantity = (typeof quantities)[number]

/** The least and the greatest that was read, °C or per cent, and when, in seconds UTC. */
export interface Reach {
  readonly least: number
  readonly leastAt: number
  readonly most: number
  readonly mostAt: number
}

export interface DayAir {
  /** Days since 1 January 1970, UTC. */
  readonly day: number
  /** Moments of the readings, seconds UTC, in order. */
  readonly at: Float64Array
  /** °C and per cent; NaN where it read none. */
  readonly values: Readonly<Record<Quantity, Float32Array>>
  /** Null where it read none all day. */
  readonly reach: Readonly<Record<Quantity, Reach | null>>
  /** The usual time between two readings, in seconds; null where there is one alone. */
  readonly step: number | null
}

/** Of the readings from index `from` up to `to`; null where none has a value. */
export function reachOf(at: Float64Array, values: Float32Array, from = 0, to = at.length): Reach | null {
  let [least, most] = [-1, -1]
  for (let i = from; i < to; i++) {
    const value = values[i] ?? Number.NaN
    if (Number.isNaN(value)) continue
    if (least < 0 || value < (values[least] ?? 0)) least = i
    if (most < 0 || value > (values[most] ?? 0)) most = i
  }
  if (least < 0) return null
  return {
    least: hundredth(values[least] ?? 0),
    leastAt: at[least] ?? 0,
    most: hundredth(values[most] ?? 0),
    mostAt: at[most] ?? 0,
  }
}

/** Floats of 32 bits hold hundredths of such figures to far less than half of one. */
const hundredth = (value: number) => Math.round(value * perUnit) / perUnit

function dayAir(day: number, at: Float64Array, values: DayAir['values']): DayAir {
  return {
    day,
    at,
    values,
    reach: { humidity: reachOf(at, values.humidity), celsius: reachOf(at, values.celsius) },
    step: usualStep(Array.from(at)),
  }
}

/** A stored day as it is looked through. */
export function dayAirOf({ day, seconds, celsius, humidity }: Omit<PackedDay, 'count'>): DayAir {
  const at = Float64Array.from(numbersOf(seconds), second => day * secondsOfDay + (second ?? 0))
  const plain = (text: string) =>
    Float32Array.from(numbersOf(text), value => (value === null ? Number.NaN : value / perUnit))
  return dayAir(day, at, { humidity: plain(humidity), celsius: plain(celsius) })
}

function sameDay(one: DayAir, other: DayAir): DayAir {
  const all = [one, other].flatMap(part => Array.from(part.at, (at, i) => ({ at, part, i })))
  all.sort((a, b) => a.at - b.at)
  const values = (of: Quantity) => Float32Array.from(all, ({ part, i }) => part.values[of][i] ?? Number.NaN)
  return dayAir(
    one.day,
    Float64Array.from(all, ({ at }) => at),
    { humidity: values('humidity'), celsius: values('celsius') },
  )
}

/** Days in order, of which one may come in several parts, from one file and the next: each once. */
export function eachDayOnce(days: readonly DayAir[]): DayAir[] {
  const once: DayAir[] = []
  for (const day of days) {
    const before = once.at(-1)
    if (before?.day === day.day) once[once.length - 1] = sameDay(before, day)
    else once.push(day)
  }
  return once
}
