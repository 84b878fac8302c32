/**
 * How far and for how long the air of a room was beyond two limits while something stood in it. A day whose reach is
 * within them is not looked through, so that a year costs what its bad days do.
 */
import { type DayAir, type Quantity, type Reach, reachOf } from './day-air.ts'
import { indexFrom } from './reduce.ts'
import { lonely, stepsHeld } from './series.ts'

/** Seconds UTC; `until` is the first moment after it. */
export interface AirSpan {
  readonly from: number
  readonly until: number
}

export interface AirHeld {
  /** Null where nothing was read. */
  readonly reach: Reach | null
  /** Stretches of time beyond, in order, none touching another. */
  readonly beyond: readonly AirSpan[]
}

export interface Band {
  readonly low: number | null
  readonly high: number | null
}

/** Spans that overlap or touch as one, in order. */
export function united(spans: readonly AirSpan[]): AirSpan[] {
  const kept: AirSpan[] = []
  for (const span of spans.toSorted((a, b) => a.from - b.from)) {
    const before = kept.at(-1)
    if (before === undefined || before.until < span.from) kept.push(span)
    else kept[kept.length - 1] = { from: before.from, until: Math.max(before.until, span.until) }
  }
  return kept
}

export const secondsOf = (spans: readonly AirSpan[]) => spans.reduce((sum, { from, until }) => sum + until - from, 0)

/** The wider of two reaches. */
export function wider(a: Reach | null, b: Reach | null): Reach | null {
  if (a === null || b === null) return a ?? b
  const [low, high] = [a.least <= b.least ? a : b, a.most >= b.most ? a : b]
  return { least: low.least, leastAt: low.leastAt, most: high.most, mostAt: high.mostAt }
}

/** A reading counts where it was taken within a span, and stands until the next one, three usual steps or the span's end. */
function ofLogger(days: readonly DayAir[], spans: readonly AirSpan[], of: Quantity, { low, high }: Band): AirHeld {
  const steps = days.flatMap(({ step }) => (step === null ? [] : [step])).sort((a, b) => a - b)
  const held = (steps[Math.floor(steps.length / 2)] ?? lonely) * stepsHeld
  const last = steps.length === 0 ? lonely : held / stepsHeld
  let reach: Reach | null = null
  const beyond: AirSpan[] = []
  const isOut = (value: number) => (low !== null && low - value > slack) || (high !== null && value - high > slack)
  days.forEach((day, n) => {
    const { at, reach: whole } = day
    if (whole[of] === null) return
    const values = day.values[of]
    for (const span of spans) {
      const [from, to] = [indexFrom(at, span.from), indexFrom(at, span.until)]
      if (from === to) continue
      const own = from === 0 && to === at.length ? whole[of] : reachOf(at, values, from, to)
      reach = wider(reach, own)
      if (own === null || !(isOut(own.least) || isOut(own.most))) continue
      for (let i = from; i < to; i++) {
        if (!isOut(values[i] ?? Number.NaN)) continue
        const moment = at[i] ?? 0
        const next = at[i + 1] ?? days[n + 1]?.at[0] ?? moment + last
        beyond.push({ from: moment, until: Math.min(next, moment + held, span.until) })
      }
    }
  })
  return { reach, beyond }
}

/** Less than a hundredth is the way numbers are kept, no reading. */
const slack = 1e-4

/** Of all loggers of a room; `days` of each in order, each day once. */
export function airHeld(
  loggers: readonly (readonly DayAir[])[],
  spans: readonly AirSpan[],
  of: Quantity,
  band: Band,
): AirHeld {
  const each = loggers.map(days => ofLogger(days, spans, of, band))
  return {
    reach: each.reduce<Reach | null>((reach, one) => wider(reach, one.reach), null),
    beyond: united(each.flatMap(one => one.beyond)),
  }
}

/** Days of a calendar on which something was read within the spans. */
export function daysRead(
  loggers: readonly (readonly DayAir[])[],
  spans: readonly AirSpan[],
  of: Quantity,
  dayOf: (moment: number) => number,
): Set<number> {
  const read = new Set<number>()
  for (const { at, values, reach } of loggers.flat()) {
    if (reach[of] === null) continue
    for (const { from, until } of spans) {
      let [first, last] = [indexFrom(at, from), indexFrom(at, until) - 1]
      while (first <= last && Number.isNaN(values[of][first])) first++
      while (last > first && Number.isNaN(values[of][last])) last--
      if (first > last) continue
      // A day of UTC lies in two days of a clock at most.
      read.add(dayOf(at[first] ?? 0)).add(dayOf(at[last] ?? 0))
    }
  }
  return read
}
