/**
 * A wall of a room moved parallel to itself, outwards by so much: its two neighbours grow longer by d / sin of the angle
 * they meet it at, it grows by d (cot a + cot b) itself, and no angle changes. Plane trigonometry; mm and degrees.
 */
import type { Point } from '../drawing/room-plan.ts'
import { type BendWall, type Bent, follows, goneAway, rounded, withNeighbours } from './bend.ts'

/** @param by outwards; below 0 into the room */
export function shiftWall(walls: readonly BendWall[], index: number, by: number): Bent {
  const count = walls.length
  const found = withNeighbours(walls, index)
  if (!found.ok) return found
  const { before, own, after } = found
  const [a, b] = [(before.angle * Math.PI) / 180, (own.angle * Math.PI) / 180]
  const step = follows(Math.sin(a), before) ?? follows(Math.sin(b), after)
  if (step !== null) return { ok: false, problem: step }
  const grow = { before: by / Math.sin(a), after: by / Math.sin(b), own: by * (1 / Math.tan(a) + 1 / Math.tan(b)) }
  const lengths = walls.map((wall, at) => {
    // In a triangle each neighbour is beside the wall once, so no wall grows twice.
    const more = at === index ? grow.own : wall === before ? grow.before : wall === after ? grow.after : 0
    return rounded(wall.length + more, 1e3)
  })
  const gone = goneAway(walls, lengths)
  if (gone !== null) return { ok: false, problem: gone }
  const origin: Point = index === 0 ? [-by / Math.tan(a), -by] : index === count - 1 ? [-by / Math.sin(b), 0] : [0, 0]
  const angles = walls.map(wall => wall.angle)
  return { ok: true, lengths, angles, moved: [index, (index + 1) % count], origin, turn: 0 }
}
