/**
 * The composite lifting index of people who lift several things: the most stressing lift, and what each other adds by
 * being lifted too. CLI = STLI₁ + Σ FILIₙ · (1/FM₁…ₙ − 1/FM₁…ₙ₋₁), the lifts by falling stress, FM by the sum of their
 * frequencies. Waters, Putz-Anderson and Garg, DHHS (NIOSH) 94-110, pp. 26 to 28. The rule it keeps: the equation is an
 * estimate of stress, made for one person on both feet; it certifies nothing.
 */
import { frequencyMultiplier } from './niosh.ts'
import type { LiftingDuration, MeasureSystem } from './niosh-tables.ts'

/** One kind of lift of a job, in the units of its system. */
export interface JobLift {
  readonly load: number
  /** Recommended limit with FM = 1 (FIRWL), the lower of both ends. */
  readonly limit: number
  readonly perMinute: number
  /** Hands above the floor where it begins. */
  readonly verticalAtOrigin: number
}

export interface CompositeLift {
  /** Place in the question. */
  readonly at: number
  /** FILI: load over the limit without frequency. */
  readonly strengthIndex: number
  /** STLI: load over the limit at its own frequency. */
  readonly ownIndex: number
  /** What it adds to the composite index; its own index for the first. */
  readonly adds: number
}

export interface Composite {
  /** By falling stress. */
  readonly lifts: readonly CompositeLift[]
  /** Null where the equation allows no lift so often for so long, and for no lifts at all. */
  readonly index: number | null
}

/**
 * The lifts of one job over `duration`. Of lifts that begin at different heights the stricter column of the table counts,
 * since the manual does not say which (cautious choice). Of two alike the more frequent comes first (p. 57).
 */
export function compositeIndex(lifts: readonly JobLift[], duration: LiftingDuration, system: MeasureSystem): Composite {
  const ranked = lifts
    .map((lift, at) => {
      const own = frequencyMultiplier(system, lift.perMinute, duration, lift.verticalAtOrigin)
      const strengthIndex = lift.load / lift.limit
      const ownIndex = strengthIndex / own
      return { lift, at, strengthIndex, ownIndex, rank: Number(ownIndex.toPrecision(9)) }
    })
    .sort(
      (a, b) =>
        falling(a.rank, b.rank) ||
        falling(a.lift.perMinute, b.lift.perMinute) ||
        falling(a.strengthIndex, b.strengthIndex) ||
        a.at - b.at,
    )
  let perMinute = 0
  let lowest = Number.POSITIVE_INFINITY
  let before: number | null = null
  const found = ranked.map(({ lift, at, strengthIndex, ownIndex }): CompositeLift => {
    perMinute += lift.perMinute
    lowest = Math.min(lowest, lift.verticalAtOrigin)
    const together = frequencyMultiplier(system, perMinute, duration, lowest)
    const adds = before === null ? ownIndex : strengthIndex * (1 / together - 1 / before)
    before = together
    return { at, strengthIndex, ownIndex, adds }
  })
  const sum = found.reduce((total, { adds }) => total + adds, 0)
  return { lifts: found, index: found.length > 0 && Number.isFinite(sum) ? sum : null }
}

/** Infinity is as large as itself, where a difference would be no number. */
function falling(a: number, b: number): number {
  return a === b ? 0 : b - a
}
