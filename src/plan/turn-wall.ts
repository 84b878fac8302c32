/**
 * A wall of a room turned about one of its ends or its middle: its line turns, and the two neighbours grow or shrink
 * along their own lines until they meet it. With the corners a at its left and b at its right and the pivot p from the
 * left end of its length l, turned clockwise on the page by d: a becomes a − d, b becomes b + d, the wall before grows by
 * p sin d / sin(a − d), the one after by (p − l) sin d / sin(b + d). Plane trigonometry; mm and degrees.
 */
import type { Point } from '../drawing/room-plan.ts'
import { cornerBounds } from '../model/corner.ts'
import { type BendWall, type Bent, follows, goneAway, rounded, withNeighbours } from './bend.ts'

export const pivots = ['left', 'middle', 'right'] as const
export type Pivot = (typeof pivots)[number]

/** From the left end of a wall of that length, mm. */
export function pivotOf(length: number, about: Pivot | number): number {
  return typeof about === 'number' ? about : { left: 0, middle: length / 2, right: length }[about]
}

/**
 * @param about a point of its line, by name or by mm from its left end; it may lie beyond the ends
 * @param by clockwise on the page, degrees
 */
export function turnWall(walls: readonly BendWall[], index: number, about: Pivot | number, by: number): Bent {
  const count = walls.length
  const found = withNeighbours(walls, index)
  if (!found.ok) return found
  const { before, own, after } = found
  const [left, right] = [rounded(before.angle - by, 1e6), rounded(own.angle + by, 1e6)]
  for (const [angle, wall] of [
    [left, before],
    [right, after],
  ] as const) {
    if (angle <= cornerBounds.least || angle >= cornerBounds.most)
      return { ok: false, problem: `The corner with ${wall.name} would be ${rounded(angle, 10)}°. Turn it less far.` }
  }
  const [d, a, b] = [(by * Math.PI) / 180, (left * Math.PI) / 180, (right * Math.PI) / 180]
  const step = follows(Math.sin(a), before) ?? follows(Math.sin(b), after)
  if (step !== null) return { ok: false, problem: step }
  const p = pivotOf(own.length, about)
  const grow = {
    before: (p * Math.sin(d)) / Math.sin(a),
    after: ((p - own.length) * Math.sin(d)) / Math.sin(b),
  }
  // Its two corners as the wall saw them: 0, 0 and l, 0 before it turned.
  const [was, now] = [(before.angle * Math.PI) / 180 - Math.PI, Math.PI - (own.angle * Math.PI) / 180]
  const from: Point = [grow.before * Math.cos(was), grow.before * Math.sin(was)]
  const to: Point = [own.length - grow.after * Math.cos(now), -grow.after * Math.sin(now)]
  const run = (to[0] - from[0]) * Math.cos(d) + (to[1] - from[1]) * Math.sin(d)
  const lengths = walls.map((wall, at) => {
    const more = at === index ? run - own.length : wall === before ? grow.before : wall === after ? grow.after : 0
    return rounded(wall.length + more, 1e3)
  })
  const gone = goneAway(walls, lengths)
  if (gone !== null) return { ok: false, problem: gone }
  const angles = walls.map((wall, at) => (at === index ? right : wall === before ? left : wall.angle))
  const end = (index + 1) % count
  const moved = [...(p === 0 ? [] : [index]), ...(p === own.length ? [] : [end])]
  const origin: Point = index === 0 ? from : index === count - 1 ? [-grow.after, 0] : [0, 0]
  return { ok: true, lengths, angles, moved, origin, turn: index === 0 ? by : 0 }
}
