/** A room's place, and whatever stands in the room, written down from other axes: in the building nothing moves. */
import type { Point } from '../../../src/drawing/room-plan.ts'
import { axesBy, placeByAxes, pointByAxes, turnByAxes } from '../../../src/plan/new-axes.ts'
import type { Ends } from '../../../src/plan/partition.ts'
import type { Place } from '../../../src/plan/place.ts'
import type { Writing } from '../service.ts'
import { row, rows, update } from '../sql.ts'

/** @param axes where the new axes lie in the old ones */
export function takeAxes({ db }: Writing, room: string, axes: Place): void {
  if (axes.at[0] === 0 && axes.at[1] === 0 && axes.turn === 0) return
  const put = (point: Point) => pointByAxes(axes, point)
  const place = row<{ x: number | null; y: number | null; turn: number }>(
    db,
    'SELECT at_x AS x, at_y AS y, turn FROM room WHERE id = :room',
    { room },
  )
  if (place !== undefined && place.x !== null && place.y !== null) {
    const { at, turn } = placeByAxes({ at: [place.x, place.y], turn: place.turn }, axes)
    update(db, 'room', room, { at_x: at[0], at_y: at[1], turn })
  }
  const ofPartitions = `SELECT id, x, y FROM corner WHERE id IN (
    SELECT from_corner FROM wall WHERE room = :room AND exhibition IS NOT NULL UNION
    SELECT to_corner FROM wall WHERE room = :room AND exhibition IS NOT NULL)`
  for (const { id, x, y } of rows<{ id: string; x: number; y: number }>(db, ofPartitions, { room })) {
    const [toX, toY] = put([x, y])
    update(db, 'corner', id, { x: toX, y: toY })
  }
  for (const { id, x, y, turn } of rows<{ id: string; x: number; y: number; turn: number }>(
    db,
    'SELECT id, x, y, turn FROM standing WHERE room = :room',
    { room },
  )) {
    const [toX, toY] = put([x, y])
    update(db, 'standing', id, { x: toX, y: toY, turn: turnByAxes(axes, turn) })
  }
  for (const { id, ...ends } of rows<{ id: string; from_x: number; from_y: number; to_x: number; to_y: number }>(
    db,
    'SELECT id, from_x, from_y, to_x, to_y FROM track WHERE room = :room',
    { room },
  )) {
    const [from, to] = [put([ends.from_x, ends.from_y]), put([ends.to_x, ends.to_y])]
    update(db, 'track', id, { from_x: from[0], from_y: from[1], to_x: to[0], to_y: to[1] })
  }
}

interface Drawn {
  /** As the corners lay before; null where it is new. */
  readonly was: Ends | null
  readonly now: Ends
}

/**
 * After a room was drawn anew: where another wall is the first now, its axes lie elsewhere. The first wall began at the
 * room's 0, 0, so whichever begins there is the first still.
 */
export function keepPlace(writing: Writing, room: string, walls: readonly Drawn[]): void {
  const [first] = walls
  if (first?.was != null && Math.hypot(...first.was[0]) < 1e-6) return
  const held = walls.find(({ was }) => was !== null)
  if (held?.was != null) takeAxes(writing, room, axesBy(held.was, held.now))
}
