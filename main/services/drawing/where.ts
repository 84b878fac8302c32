/**
 * Where what is taken from a drawing comes to stand: beside the rooms taken from the same drawing before, as it is drawn
 * there; or, where no room tells, at the building's 0, 0 or to the right of what stands on the storey already.
 */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { cornersOf } from '../../../src/plan/drawn-room.ts'
import { overlap } from '../../../src/plan/overlap.ts'
import { boxOf } from '../../../src/plan/place.ts'
import { cornerOf } from '../../../src/plan/room-from-outline.ts'
import { shiftOfDrawing } from '../../../src/plan/same-drawing.ts'
import type { Proposal } from './proposal.ts'

/** Between the building as it stands and what is taken beside it, mm; from memory. */
const apart = 2000

/**
 * @param chosen the places of the outlines that are taken
 * @param rooms those of the storey that have a place
 */
export function shiftFor(
  { found, outlines }: Proposal,
  chosen: readonly number[],
  rooms: readonly PlanRoomRow[],
): Point {
  const [left, top] = cornerOf(found)
  const box = boxOf(rooms.flatMap(cornersOf))
  if (box === null) return [-left, -top]
  const drawn = found.map(({ walls }, at) => ({
    name: outlines[at]?.name ?? '',
    corners: walls.map(wall => wall.from),
  }))
  const there = rooms.map(room => ({ name: room.name, corners: cornersOf(room) }))
  const shift = shiftOfDrawing(drawn, there)
  const aside: Point = [box.right + apart - left, box.top - top]
  if (shift === null) return aside
  // A room that is taken once more, or stands in another's way there, was not meant to lie on it.
  const free = chosen.every(at => {
    const corners = (drawn[at]?.corners ?? []).map(([x, y]): Point => [x + shift[0], y + shift[1]])
    return !there.some(room => overlap(corners, room.corners))
  })
  return free ? shift : aside
}
