/** What is under a pointer on the plan: a work before a wall, a wall before a room. */
import type { PlanWallRow } from '../contract/areas/plan.ts'
import type { Point } from '../drawing/room-plan.ts'
import type { DrawnRoom } from './drawn-room.ts'
import { within } from './outline-shape.ts'
import { nicheDepth, onFace, UNMEASURED } from './poche.ts'
import type { PartitionFace } from './stands-drawn.ts'
import { nearestOn } from './within.ts'

export interface Hit {
  readonly room: DrawnRoom
  readonly wall: PlanWallRow | null
  /** The side of a partition. */
  readonly face: PartitionFace | null
  readonly work: PlanWallRow['works'][number] | null
}

/** Depth that a work is drawn with where nobody measured it, mm; of the drawing alone. */
export const FLAT = 30

/** @param reach how near a wall's face still counts, mm on the plan */
export function hitOn(rooms: readonly DrawnRoom[], at: Point, reach: number): Hit | null {
  let best: { readonly hit: Hit; readonly away: number } | null = null
  for (const room of rooms) {
    const { left, top, right, bottom } = room.lines.box
    if (at[0] < left - reach || at[0] > right + reach || at[1] < top - reach || at[1] > bottom + reach) continue
    for (const face of room.faces) {
      const work = face.works.find(each => within(workOn(face, each), at))
      if (work !== undefined) return { room, wall: null, face, work }
      // Pressed within its thickness, the nearer side is meant.
      const { away } = nearestOn(face.from, face.to, at)
      const near = isBehind(face, at) ? Math.max(reach, face.thickness) : reach
      if (away <= near && (best === null || away < best.away))
        best = { hit: { room, wall: null, face, work: null }, away }
    }
    for (const wall of room.walls) {
      const work = wall.works.find(each => within(workOn(wall, each), at))
      if (work !== undefined) return { room, wall, face: null, work }
      const { away } = nearestOn(wall.from, wall.to, at)
      const behind = isBehind(wall, at)
      const near = behind ? Math.max(reach, wall.thickness ?? UNMEASURED) : reach
      if (away <= near && (best === null || away < best.away))
        best = { hit: { room, wall, face: null, work: null }, away }
    }
  }
  if (best !== null) return best.hit
  const room = [...rooms].reverse().find(each => within(each.corners, at))
  return room === undefined ? null : { room, wall: null, face: null, work: null }
}

function isBehind({ from, to }: Pick<PlanWallRow, 'from' | 'to'>, [x, y]: Point): boolean {
  return (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]) < 0
}

/** A work as it stands out of its wall, or out of the back of the niche that it hangs in. */
export function workOn(
  wall: Pick<PlanWallRow, 'from' | 'to' | 'length' | 'thickness' | 'openings'>,
  work: PlanWallRow['works'][number],
): readonly Point[] {
  const width = work.width ?? 300
  const niche = work.niche === null ? undefined : wall.openings.find(({ id }) => id === work.niche)
  const behind = niche === undefined ? 0 : nicheDepth(niche, wall.thickness ?? UNMEASURED)
  return onFace(wall, work.x - width / 2, width, work.depth ?? FLAT, behind)
}
