/**
 * How thick a wall is by its drawing: from the line of a room to the next line beside it, outside the room. Looked for
 * from several places along the wall, so that a door or a pier in one of them does not answer for the whole.
 */
import type { Point } from '../drawing/room-plan.ts'
import { lineGrid } from './line-grid.ts'
import { crossingOf, type Network } from './network.ts'

/** Millimetres from a wall's line to the one that runs beside it, out of the room; null where there is none. */
export type Facing = (from: Point, to: Point) => number | null

/** Shares of the wall's length that are looked out from. */
const places = [0.1, 0.25, 0.4, 0.6, 0.75, 0.9] as const
/** Thinner than this is one line drawn twice, or a skirting. */
const thinnest = 20
/** Two lines run beside one another within 2°. */
const beside = Math.cos((2 * Math.PI) / 180)

export function thicknessFinder(
  { x, y, edges }: Network,
  { thickest, join }: { readonly thickest: number; readonly join: number },
): Facing {
  const grid = lineGrid(1500, 1)
  const at = (node: number): Point => [x[node] ?? 0, y[node] ?? 0]
  for (const [line, [a, b]] of edges.entries()) grid.add(line, ...at(a), ...at(b))

  function outFrom(foot: Point, out: Point, along: Point): number | null {
    const begin: Point = [foot[0] + out[0] * Math.max(thinnest, join), foot[1] + out[1] * Math.max(thinnest, join)]
    const end: Point = [foot[0] + out[0] * thickest, foot[1] + out[1] * thickest]
    let nearest: { readonly far: number; readonly line: number } | null = null
    grid.along(...begin, ...end, line => {
      const [a, b] = edges[line] ?? [0, 0]
      const crossing = crossingOf(begin, end, at(a), at(b))
      if (crossing === null) return
      const far = Math.hypot(crossing.x - foot[0], crossing.y - foot[1])
      if (nearest === null || far < nearest.far) nearest = { far, line }
    })
    // Written by the callback, which the compiler does not follow.
    const hit = nearest as { readonly far: number; readonly line: number } | null
    if (hit === null) return null
    const [a, b] = edges[hit.line] ?? [0, 0]
    const [dx, dy] = [(x[b] ?? 0) - (x[a] ?? 0), (y[b] ?? 0) - (y[a] ?? 0)]
    return Math.abs(dx * along[0] + dy * along[1]) >= beside * Math.hypot(dx, dy) ? hit.far : null
  }

  return (from, to) => {
    const run = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (run === 0) return null
    const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
    // The room lies to the right of the way, the wall to the left.
    const out: Point = [along[1], -along[0]]
    const seen = places
      .map(share => outFrom([from[0] + along[0] * run * share, from[1] + along[1] * run * share], out, along))
      .filter(far => far !== null)
      .sort((a, b) => a - b)
    if (seen.length < places.length / 3) return null
    const middle = seen[Math.floor(seen.length / 2)]
    return middle === undefined ? null : Math.round(middle * 10) / 10
  }
}
