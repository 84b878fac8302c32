/**
 * The second way to say where something stands, as a tape says it: how far its nearest side is from a wall, and how far
 * its left side is from the wall's left end, both seen from inside. Square to the wall, however the thing is turned.
 */
import type { Point } from '../drawing/room-plan.ts'
import { halfAlong, type Thing } from './footprint.ts'

interface SeenWall {
  readonly from: Point
  readonly to: Point
}

export interface ByWall {
  /** From the wall's left end to the thing's left side, mm. */
  readonly along: number
  /** From the wall to the thing's nearest side, mm. */
  readonly off: number
}

/** Along the wall and into the room, of length 1. */
function axes({ from, to }: SeenWall): readonly [Point, Point] {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  return [along, [-along[1], along[0]]]
}

export function measuredByWall(thing: Thing, wall: SeenWall): ByWall {
  const [along, into] = axes(wall)
  const [dx, dy] = [thing.x - wall.from[0], thing.y - wall.from[1]]
  return {
    along: dx * along[0] + dy * along[1] - halfAlong(thing, along),
    off: dx * into[0] + dy * into[1] - halfAlong(thing, into),
  }
}

/** The middle of a thing that is measured so. */
export function placedByWall(thing: Omit<Thing, 'x' | 'y'>, wall: SeenWall, { along, off }: ByWall): Point {
  const [way, into] = axes(wall)
  const whole = { ...thing, x: 0, y: 0 }
  const [u, v] = [along + halfAlong(whole, way), off + halfAlong(whole, into)]
  const place = (axis: 0 | 1) => Math.round((wall.from[axis] + way[axis] * u + into[axis] * v) * 1e6) / 1e6
  return [place(0), place(1)]
}
