/**
 * A partition by its two ends: the middle of its thickness, from its left end as face a sees it. Room-local plan
 * coordinates, mm; x to the right, y down the page, angles in degrees clockwise on the page from the x axis.
 */
import type { Point } from '../drawing/room-plan.ts'
import { toBuilding, wholeTurn } from './place.ts'

export type Ends = readonly [Point, Point]

/** Where the other end is, by a length and an angle. */
export function endBy(from: Point, length: number, angle: number): Point {
  return toBuilding({ at: from, turn: angle }, [length, 0])
}

export function lengthOf([from, to]: Ends): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1])
}

/** 0 to 360, clockwise on the page. */
export function angleOf([from, to]: Ends): number {
  return wholeTurn((Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI)
}

/** The side of it that a point lies on; a where it lies in its middle. */
export function sideOf([[ax, ay], [bx, by]]: Ends, [x, y]: Point): 'a' | 'b' {
  return (bx - ax) * (y - ay) - (by - ay) * (x - ax) >= 0 ? 'a' : 'b'
}

/** A line beside it, so far from its middle on one of its sides; from left to right as seen from there. */
export function besideOf([from, to]: Ends, side: 'a' | 'b', away: number): Ends {
  const run = lengthOf([from, to]) || 1
  const by = side === 'a' ? away : -away
  const put = ([x, y]: Point): Point => [x - ((to[1] - from[1]) / run) * by, y + ((to[0] - from[0]) / run) * by]
  return side === 'a' ? [put(from), put(to)] : [put(to), put(from)]
}

export function movedBy([from, to]: Ends, dx: number, dy: number): Ends {
  return [
    [from[0] + dx, from[1] + dy],
    [to[0] + dx, to[1] + dy],
  ]
}

/** Turned about its middle to an angle; its length stays. */
export function turnedTo(ends: Ends, angle: number): Ends {
  const [[ax, ay], [bx, by]] = ends
  const middle: Point = [(ax + bx) / 2, (ay + by) / 2]
  const half = lengthOf(ends) / 2
  return [endBy(middle, half, angle + 180), endBy(middle, half, angle)]
}

/** Its left end stays, its length changes. */
export function lengthened(ends: Ends, length: number): Ends {
  return [ends[0], endBy(ends[0], length, angleOf(ends))]
}
