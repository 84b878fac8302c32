/**
 * A wall of a room moved parallel to itself, outwards by so much: its two neighbours grow longer by d / sin of the angle
 * they meet it at, it grows by d (cot a + cot b) itself, and no angle changes. Plane trigonometry; mm and degrees.
 */
import type { Point } from '../drawing/room-plan.ts'

export interface ShiftWall {
  readonly name: string
  readonly length: number
  /** Interior angle at its right end. */
  readonly angle: number
}

export type Shifted =
  | {
      readonly ok: true
      /** Of all walls, in order. */
      readonly lengths: readonly number[]
      /** How far the room's own 0, 0 goes in its own axes, so that all the other walls stay where they are. */
      readonly origin: Point
    }
  | { readonly ok: false; readonly problem: string }

/** A neighbour this near to straight on can't follow: it would grow without end. Sine of about 6°. */
const STRAIGHT = 0.1
/** What a neighbour must keep, mm. */
const SHORTEST = 1

/** @param by outwards; below 0 into the room */
export function shiftWall(walls: readonly ShiftWall[], index: number, by: number): Shifted {
  const count = walls.length
  const [before, own, after] = [walls[(index + count - 1) % count], walls[index], walls[(index + 1) % count]]
  if (count < 3 || before === undefined || own === undefined || after === undefined)
    return { ok: false, problem: 'A wall moves in a room that closes. Add its other walls first.' }
  const [a, b] = [(before.angle * Math.PI) / 180, (own.angle * Math.PI) / 180]
  for (const [angle, wall] of [
    [a, before],
    [b, after],
  ] as const) {
    if (Math.abs(Math.sin(angle)) < STRAIGHT)
      return {
        ok: false,
        problem: `${wall.name} runs on in nearly the same line, so nothing would fill the step between them.`,
      }
  }
  const grow = { before: by / Math.sin(a), after: by / Math.sin(b), own: by * (1 / Math.tan(a) + 1 / Math.tan(b)) }
  const lengths = walls.map((wall, at) => {
    // In a triangle each neighbour is beside the wall once, so no wall grows twice.
    const more = at === index ? grow.own : wall === before ? grow.before : wall === after ? grow.after : 0
    return Math.round((wall.length + more) * 1e3) / 1e3
  })
  const gone = walls.find((_, at) => (lengths[at] ?? 0) < SHORTEST)
  if (gone !== undefined)
    return { ok: false, problem: `${gone.name} would have no length left. Move it less far, or remove that wall.` }
  const origin: Point = index === 0 ? [-by / Math.tan(a), -by] : index === count - 1 ? [-by / Math.sin(b), 0] : [0, 0]
  return { ok: true, lengths, origin }
}
