/**
 * Lengths and interior angles as functions of the corners, with their derivatives, for the adjustment. Corner 0 stands
 * at 0, 0 and the first wall runs along x: what a tape gives says nothing of place and turn. So 2n − 3 unknowns.
 */
import { deviationOf, type Measure, type Point, type SurveyRules } from './survey.ts'

/** One measure as an observation: its weight is 1/deviation², angles in radians. */
export interface Observation {
  readonly measure: Measure
  readonly value: number
  readonly weight: number
}

export function observe(measure: Measure, rules: SurveyRules): Observation {
  const unit = measure.kind === 'angle' ? Math.PI / 180 : 1
  const deviation = Math.max(deviationOf(measure, rules), 1e-6) * unit
  return { measure, value: measure.value * unit, weight: 1 / (deviation * deviation) }
}

/** Which unknown a coordinate is; −1 for the three that are held. */
export function unknownOf(corner: number, axis: 0 | 1): number {
  if (corner === 0) return -1
  if (corner === 1) return axis === 0 ? 0 : -1
  return 2 * corner - 3 + axis
}

export const unknownsOf = (corners: number): number => 2 * corners - 3

/** One row of the Jacobian: unknown and derivative, side by side. */
export interface Slope {
  readonly at: readonly number[]
  readonly by: readonly number[]
}

/** Two corners nearer than this have no direction between them. */
const TOUCHING = 1e-6

/** The value a measure would have on these corners, millimetres or radians. */
export function computed({ kind, from, to }: Measure, corners: readonly Point[]): number {
  const [ax, ay] = corners[from] ?? [0, 0]
  if (kind !== 'angle') {
    const [bx, by] = corners[to] ?? [0, 0]
    return Math.hypot(bx - ax, by - ay)
  }
  const [before, after] = beside(from, corners)
  const turn = Math.atan2(after[1] - ay, after[0] - ax) - Math.atan2(ay - before[1], ax - before[0])
  const inside = (Math.PI - turn) % (2 * Math.PI)
  return inside < 0 ? inside + 2 * Math.PI : inside
}

function beside(at: number, corners: readonly Point[]): readonly [Point, Point] {
  const count = corners.length
  return [corners[(at + count - 1) % count] ?? [0, 0], corners[(at + 1) % count] ?? [0, 0]]
}

/** Observed less computed; an angle the short way round. */
export function misfit({ measure, value }: Observation, corners: readonly Point[]): number {
  const off = value - computed(measure, corners)
  if (measure.kind !== 'angle') return off
  return off - 2 * Math.PI * Math.round(off / (2 * Math.PI))
}

export function slopeOf({ kind, from, to }: Measure, corners: readonly Point[]): Slope {
  const at: number[] = []
  const by: number[] = []
  const add = (corner: number, axis: 0 | 1, slope: number) => {
    const unknown = unknownOf(corner, axis)
    if (unknown < 0) return
    at.push(unknown)
    by.push(slope)
  }
  const count = corners.length
  const here = corners[from] ?? [0, 0]
  if (kind !== 'angle') {
    const there = corners[to] ?? [0, 0]
    const run = Math.max(Math.hypot(there[0] - here[0], there[1] - here[1]), TOUCHING)
    for (const axis of [0, 1] as const) {
      const unit = (there[axis] - here[axis]) / run
      add(from, axis, -unit)
      add(to, axis, unit)
    }
    return { at, by }
  }
  // Inside = π − (way out − way in); a heading's slope is (−dy, dx)/r² at its far end.
  const [before, after] = beside(from, corners)
  const heading = (a: Point, b: Point): Point => {
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const square = Math.max(dx * dx + dy * dy, TOUCHING)
    return [-dy / square, dx / square]
  }
  const wayIn = heading(before, here)
  const wayOut = heading(here, after)
  for (const axis of [0, 1] as const) {
    add((from + count - 1) % count, axis, -wayIn[axis])
    add(from, axis, wayIn[axis] + wayOut[axis])
    add((from + 1) % count, axis, -wayOut[axis])
  }
  return { at, by }
}
