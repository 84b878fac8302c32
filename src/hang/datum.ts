/**
 * Which floor the level line is measured from. A line is set up at a height above one point of the floor: the wall's
 * left end, the floor's highest point or the middle of the wall; or it runs along a ramp, as high above the floor
 * everywhere. The rule it keeps: one wall, one line; every offset on its sheet is from that line.
 */
import type { Profile } from './wall.ts'
import { bends, floorAt } from './wall.ts'

export const datumWays = ['', 'high', 'middle', 'ramp'] as const
/** '' is the wall's left end, where x and the floor are 0. */
export type DatumBy = (typeof datumWays)[number]

export interface LevelLine {
  readonly by: DatumBy
  /** As it is set up: above the floor at `through`; along a ramp, above the floor everywhere. mm. */
  readonly height: number
  /** x where it is measured from; null along a ramp. */
  readonly through: number | null
  /** Height of the floor there against the floor at x = 0. */
  readonly floorThere: number
  /** Above the floor at x = 0; along a ramp, the same as `height`. */
  readonly y: number
  readonly ramp: boolean
}

interface Floored {
  readonly floor: Profile
  readonly length: number
}

/**
 * x of the floor's highest point along a wall, the leftmost of several: between measured points the floor runs
 * straight, so it is one of them or an end. mm.
 */
export function highPoint({ floor, length }: Floored): number {
  let best = 0
  for (const x of bends(floor, 0, length)) {
    if (floorAt(floor, x) > floorAt(floor, best) + 1e-9) best = x
  }
  return best
}

/** The line set up at `height` above the floor that `by` names. Derived: `y = height + floor(through)`. mm. */
export function levelLine(wall: Floored, by: DatumBy, height: number): LevelLine {
  if (by === 'ramp') return { by, height, through: null, floorThere: 0, y: height, ramp: true }
  const through = by === 'high' ? highPoint(wall) : by === 'middle' ? wall.length / 2 : 0
  const floorThere = floorAt(wall.floor, through)
  return { by, height, through, floorThere, y: height + floorThere, ramp: false }
}

/** Height of a line at x above the floor at x = 0: level, or along the ramp. */
export function lineAt(line: LevelLine, floor: Profile, x: number): number {
  return line.ramp ? line.y + floorAt(floor, x) : line.y
}

/** How it is set up, in a sentence for screen and sheet. `say` writes a length in the reader's unit. */
export function lineSaid(line: LevelLine, say: (mm: number) => string): string {
  const { by, height, through, floorThere } = line
  if (by === 'ramp') return `The line runs along the ramp, ${say(height)} above the floor everywhere.`
  const where = {
    '': 'at the left end',
    high: `at its highest point, ${say(through ?? 0)} from the left end`,
    middle: `in the middle of the wall, ${say(through ?? 0)} from the left end`,
  }[by]
  const left =
    Math.abs(floorThere) < 0.05 ? '' : ` At the left end that is ${say(height + floorThere)} above the floor.`
  return `The line is level, ${say(height)} above the floor ${where}.${left}`
}
