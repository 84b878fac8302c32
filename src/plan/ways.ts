/**
 * The shortest way on foot from point to point of one room: straight where nothing stands between, else round corners
 * at a small distance. Plan coordinates, millimetres. The least a line on a drawing needs: whether a wheelchair passes
 * is for the access checks, which work with the width of who travels.
 */
import type { Point } from '../drawing/room-plan.ts'
import { crosses, turn } from './outline-shape.ts'

export type Segment = readonly [Point, Point]

/** What bars the way in a room: solid lines, and the points about which a way may bend. */
export interface RoomGround {
  readonly bars: readonly Segment[]
  readonly bends: readonly Point[]
}

export interface Way {
  readonly points: readonly Point[]
  readonly length: number
}

export function distance([ax, ay]: Point, [bx, by]: Point): number {
  return Math.hypot(bx - ax, by - ay)
}

/** Ends that touch within this leave the way free, mm; of the computation alone. */
const TOUCH = 1e-3

/** Whether one sees from point to point. */
export function isFree(from: Point, to: Point, bars: readonly Segment[]): boolean {
  return !bars.some(([a, b]) => crosses(from, to, a, b, TOUCH))
}

/**
 * Points beside the corners that a way bends round, `clear` off them: the corners of the outline that point into the
 * room, and all corners of what stands in it. Corners in order, the room or the free floor to the right of the way.
 */
export function bendsOf(corners: readonly Point[], clear: number): readonly Point[] {
  return corners.flatMap((corner, at) => {
    const before = corners[(at + corners.length - 1) % corners.length] ?? corner
    const after = corners[(at + 1) % corners.length] ?? corner
    // The free side is to the right, so a corner that turns to the left points into it.
    if (turn(before, corner, after) >= -1) return []
    const [inX, inY] = unit(before, corner)
    const [outX, outY] = unit(corner, after)
    const [x, y] = [inX - outX, inY - outY]
    const size = Math.hypot(x, y)
    return size < 1e-6 ? [] : [[corner[0] + (x / size) * clear, corner[1] + (y / size) * clear] as const]
  })
}

function unit(from: Point, to: Point): Point {
  const size = distance(from, to) || 1
  return [(to[0] - from[0]) / size, (to[1] - from[1]) / size]
}

/** The shortest way, by Dijkstra over all that see each other; null where there is none. */
export function shortestWay(from: Point, to: Point, { bars, bends }: RoomGround): Way | null {
  const nodes: readonly Point[] = [from, ...bends, to]
  const last = nodes.length - 1
  const best = nodes.map((_, at) => (at === 0 ? 0 : Infinity))
  const came = nodes.map(() => -1)
  const open = new Set(nodes.keys())
  while (open.size > 0) {
    let at = -1
    for (const one of open) if (at < 0 || (best[one] ?? Infinity) < (best[at] ?? Infinity)) at = one
    const here = nodes[at]
    const so = best[at] ?? Infinity
    if (here === undefined || so === Infinity) return null
    if (at === last) break
    open.delete(at)
    for (const one of open) {
      const there = nodes[one]
      if (there === undefined) continue
      const length = so + distance(here, there)
      if (length < (best[one] ?? Infinity) - 1e-9 && isFree(here, there, bars)) {
        best[one] = length
        came[one] = at
      }
    }
  }
  const points: Point[] = []
  for (let at = last; at >= 0; at = came[at] ?? -1) points.unshift(nodes[at] ?? to)
  return { points, length: best[last] ?? 0 }
}
