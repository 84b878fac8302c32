/** Barriers of a room as one of its walls sees them. Room-local plan coordinates, mm. */
import type { BarrierSeen } from './planned.ts'

type Point = readonly [number, number]

interface Wall {
  readonly from: Point
  readonly to: Point
  /** From where its ends are to its face: half the thickness of a partition, nothing of a room's own wall. */
  readonly face: number
}

interface Standing {
  readonly at: Point
  /** Degrees clockwise on the page. */
  readonly turn: number
  readonly width: number
  readonly depth: number
}

/**
 * Along the wall from its left end, and how far its nearest corner stands before the face; what stands wholly behind
 * is left out. A round one counts as the square around it. The room lies to the right of the way along its walls.
 */
export function barriersSeen({ from, to, face }: Wall, things: readonly Standing[]): BarrierSeen[] {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (run === 0) return []
  const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  const into: Point = [-along[1], along[0]]
  return things.flatMap(({ at, turn, width, depth }) => {
    const angle = (turn * Math.PI) / 180
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
    const corners = [-1, 1].flatMap(a =>
      [-1, 1].map((b): Point => {
        const [x, y] = [(a * width) / 2, (b * depth) / 2]
        return [at[0] + x * cos - y * sin - from[0], at[1] + x * sin + y * cos - from[1]]
      }),
    )
    const s = corners.map(([x, y]) => x * along[0] + y * along[1])
    const t = corners.map(([x, y]) => x * into[0] + y * into[1])
    if (Math.max(...t) <= face) return []
    return [{ from: Math.min(...s), to: Math.max(...s), away: Math.max(0, Math.min(...t) - face) }]
  })
}
