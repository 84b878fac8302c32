/** The corners that fit a set of observations, and what is told of each measure against them. */
import { computed, type Observation } from './adjust-model.ts'
import { solve, sumOf } from './adjust-solve.ts'
import { level, startsOf } from './adjust-start.ts'
import { areaOf, crossing } from './outline-shape.ts'
import type { Measure, Point } from './survey.ts'

export interface Fitted {
  readonly key: string
  /** What the fit makes of it; millimetres or degrees. */
  readonly fitted: number
  /** Measured less fitted. */
  readonly residual: number
  /** The residual over its own standard deviation; null where nothing checks the measure. */
  readonly standardised: number | null
  /** How far the others check it: 0 not at all, 1 wholly (its redundancy number). */
  readonly checked: number
}

/** Beyond this a standardised residual is no chance: one in a thousand (Baarda's usual choice). */
export const STANDS_OUT = 3.29

/** Two fits are alike when their squares differ by no more than this factor, and this sum. */
const ALIKE = 4

/** What is only taken weighs as nothing beside what was measured. */
const FAINT = 1e-4

/** Both counted: the corners where measured values settle, and where taken ones then leave what is open. */
export function fitCorners(
  count: number,
  observations: readonly Observation[],
): { readonly corners: readonly Point[]; readonly converged: boolean } {
  const firm = observations.filter(({ measure }) => measure.standing !== 'taken')
  const all = observations.map(each =>
    each.measure.standing === 'taken' ? { ...each, weight: each.weight * FAINT } : each,
  )
  const measures = observations.map(({ measure }) => measure)
  const tried = startsOf(count, measures).map(start => {
    const shaped = solve(all, start)
    const settled = solve(firm, shaped.corners)
    const corners = level(settled.corners)
    const faults = (crossing(corners) === null ? 0 : 1) + (areaOf(corners) > 0 ? 0 : 1)
    return { corners, converged: settled.converged, faults, sum: sumOf(all, settled.corners) }
  })
  const [first, ...rest] = tried
  if (first === undefined) return { corners: [], converged: false }
  return rest.reduce((best, one) => {
    // Of two that fit about alike the outline that a room can have; else the one that fits.
    if (one.faults < best.faults) return one.sum < ALIKE * best.sum + ALIKE ? one : best
    if (one.faults > best.faults) return best.sum < ALIKE * one.sum + ALIKE ? best : one
    return one.sum < best.sum - 1e-9 ? one : best
  }, first)
}

/** Millimetres that a degree at a corner makes at the end of its shorter side. */
export function perDegree(corner: number, corners: readonly Point[]): number {
  const count = corners.length
  const side = (to: number): Measure => ({
    key: '',
    kind: 'side',
    from: corner,
    to,
    value: 0,
    standing: 'taken',
  })
  const shorter = Math.min(
    computed(side((corner + 1) % count), corners),
    computed(side((corner + count - 1) % count), corners),
  )
  return (shorter * Math.PI) / 180
}
