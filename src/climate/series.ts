/** Readings of one logger in one room, in order of time, no moment twice. */
export interface Series {
  /** Seconds since 1 January 1970, UTC. */
  readonly at: readonly number[]
  /** °C; null where it read none. */
  readonly celsius: readonly (number | null)[]
  /** Relative humidity in per cent; null where it read none. */
  readonly humidity: readonly (number | null)[]
}

/** The usual time between two readings, in seconds: the median of the steps; null where there are fewer than two. */
export function usualStep(at: readonly number[]): number | null {
  if (at.length < 2) return null
  // Counted, not sorted: a year of one a minute has half a million steps and a handful of lengths.
  const counts = new Map<number, number>()
  for (let i = 1; i < at.length; i++) {
    const step = (at[i] ?? 0) - (at[i - 1] ?? 0)
    counts.set(step, (counts.get(step) ?? 0) + 1)
  }
  let before = Math.floor((at.length - 1) / 2)
  for (const [step, count] of [...counts].sort(([a], [b]) => a - b)) {
    before -= count
    if (before < 0) return step
  }
  return null
}

/** A reading says nothing of what comes after so many usual steps: from there nobody knows. */
export const stepsHeld = 3
/** Where only one reading is there, it stands for so long, in seconds. */
export const lonely = 600

/** How long each reading stands, in seconds: until the next one, at most three usual steps; the last one usual step. */
export function standsFor(at: readonly number[]): number[] {
  const step = usualStep(at) ?? lonely
  return at.map((each, i) => Math.min((at[i + 1] ?? each + step) - each, step * stepsHeld))
}

export interface Gap {
  readonly from: number
  readonly until: number
}

/** Stretches of which nothing is known: more than three usual steps between two readings. Seconds, UTC. */
export function gapsOf(at: readonly number[]): Gap[] {
  const step = usualStep(at)
  if (step === null) return []
  const gaps: Gap[] = []
  for (let i = 1; i < at.length; i++) {
    const [from = 0, until = 0] = [at[i - 1], at[i]]
    if (until - from > step * stepsHeld) gaps.push({ from, until })
  }
  return gaps
}
