/**
 * A picture of a plan under the plan: where its pixels lie in the building, and what two of its points, whose distance a
 * tape or a dimension on the picture says, make of its scale. Millimetres, x to the right and y down the page.
 */
import type { Point } from '../drawing/room-plan.ts'
import { type Place, toBuilding, toRoom } from './place.ts'

/** Its place is that of its upper left corner. */
export interface Underlay extends Place {
  /** Millimetres of the house in a pixel of the picture. */
  readonly mmPerPx: number
}

/** Smaller and larger than any scan of a house; beyond them the two points were no points of a plan. */
export const scaleBounds = { least: 0.01, most: 1000 } as const

/** The pixel that lies at a point of the building. */
export function pixelAt(underlay: Underlay, point: Point): Point {
  const [x, y] = toRoom(underlay, point)
  return [x / underlay.mmPerPx, y / underlay.mmPerPx]
}

export function pointOf(underlay: Underlay, [x, y]: Point): Point {
  return toBuilding(underlay, [x * underlay.mmPerPx, y * underlay.mmPerPx])
}

/**
 * The picture so scaled that two of its points lie `distance` apart; the first stays where it is on the plan. Null where
 * both are one point, or the scale would be none of a plan.
 *
 * @param from, to as they lie on the plan now
 */
export function scaledBy(underlay: Underlay, from: Point, to: Point, distance: number): Underlay | null {
  const now = Math.hypot(to[0] - from[0], to[1] - from[1])
  const mmPerPx = now > 0 ? (underlay.mmPerPx * distance) / now : 0
  if (!(mmPerPx >= scaleBounds.least && mmPerPx <= scaleBounds.most)) return null
  const pixel = pixelAt(underlay, from)
  const moved = pointOf({ ...underlay, mmPerPx }, pixel)
  return { ...underlay, mmPerPx, at: [underlay.at[0] + from[0] - moved[0], underlay.at[1] + from[1] - moved[1]] }
}
