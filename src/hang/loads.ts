/**
 * Who carries what, and whether it holds. Holds means: share × house factor ≤ rating, and with any one fixing gone the
 * whole load ≤ the rating of what is left. An unknown mass or rating never passes.
 */
import { newtons } from './physics.ts'

export interface LoadQuestion {
  /** kg; null where nobody has weighed it. */
  readonly mass: number | null
  /** x of each fixing, any origin. */
  readonly at: readonly number[]
  /** x of the mass, same origin. */
  readonly massAt: number
  readonly sharing: 'moments' | 'even'
  /** kg of each fixing, null unknown. */
  readonly ratedKg: readonly (number | null)[]
  readonly houseFactor: number
}

export interface Share {
  readonly shareN: number
  readonly shareKg: number
  /** share × factor */
  readonly neededKg: number
  readonly ratedKg: number | null
  readonly holds: boolean | null
}

export interface Loads {
  readonly massKg: number
  readonly massN: number
  readonly houseFactor: number
  readonly rule: string
  readonly shares: readonly Share[]
  /** With the strongest gone; null with a single fixing: then nothing is left. */
  readonly oneGone: { readonly wholeKg: number; readonly leftKg: number | null; readonly holds: boolean | null } | null
  readonly holds: boolean | null
}

/** Fractions of the weight on fixings at `at`: `1/n + (xi − x̄)(xcg − x̄)/Σ(xj − x̄)²`; with two, the lever rule. */
export function sharesByMoments(at: readonly number[], massAt: number): readonly number[] {
  const n = at.length
  if (n === 0) return []
  const mean = at.reduce((sum, x) => sum + x, 0) / n
  const spread = at.reduce((sum, x) => sum + (x - mean) ** 2, 0)
  if (spread < 1e-9) return at.map(() => 1 / n)
  return at.map(x => 1 / n + ((x - mean) * (massAt - mean)) / spread)
}

/** Loads in newtons and kg-force. Null without a mass. */
export function loadsOf(question: LoadQuestion): Loads | null {
  const { mass, at, ratedKg, houseFactor } = question
  if (mass === null) return null
  const n = at.length
  const fractions = question.sharing === 'even' ? at.map(() => 1 / n) : sharesByMoments(at, question.massAt)
  const shares = fractions.map((fraction, index): Share => {
    const shareKg = mass * fraction
    const neededKg = Math.abs(shareKg) * houseFactor
    const rated = ratedKg[index] ?? null
    return {
      shareN: newtons(shareKg),
      shareKg,
      neededKg,
      ratedKg: rated,
      holds: rated === null ? null : fitsIn(neededKg, rated),
    }
  })
  const oneGone = n < 2 ? null : goneOf(mass, ratedKg.slice(0, n))
  const parts = [...shares.map(share => share.holds), ...(oneGone === null ? [] : [oneGone.holds])]
  return {
    massKg: mass,
    massN: newtons(mass),
    houseFactor,
    rule: `share × ${houseFactor} ≤ rating, and the whole ≤ the rest with one gone (framing trade, common practice)`,
    shares,
    oneGone,
    holds: parts.includes(false) ? false : parts.includes(null) ? null : true,
  }
}

function goneOf(mass: number, ratings: readonly (number | null)[]) {
  let total = 0
  let strongest = 0
  for (const rating of ratings) {
    if (rating === null) return { wholeKg: mass, leftKg: null, holds: null }
    total += rating
    strongest = Math.max(strongest, rating)
  }
  const leftKg = total - strongest
  return { wholeKg: mass, leftKg, holds: fitsIn(mass, leftKg) }
}

/** Two hooks of 30 lb for 15 lb come out exactly even: the last digit of a conversion must not fail them. */
function fitsIn(load: number, rating: number): boolean {
  return load <= rating * (1 + 1e-9)
}

/** Tilt of a work whose marks, `apart`, are out of level by `error` more than its drops are: degrees, and mm at its top corners. */
export function tilt(
  error: number,
  apart: number,
  width: number,
): { readonly degrees: number; readonly corners: number } {
  if (!(apart > 0)) return { degrees: 0, corners: 0 }
  return { degrees: (Math.atan(error / apart) * 180) / Math.PI, corners: (error * width) / apart }
}
