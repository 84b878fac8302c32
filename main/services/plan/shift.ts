/** A wall moved parallel. What is on the walls keeps its distance from their left ends, as when lengths are typed. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { shiftWall } from '../../../src/plan/shift-wall.ts'
import { notFound } from '../change.ts'
import { takeAxes } from '../rooms/new-axes.ts'
import { wallsOf } from '../rooms/read.ts'
import { changeWall } from '../rooms/write.ts'
import type { Writing } from '../service.ts'
import { row } from '../sql.ts'

interface Stored {
  readonly room: string
  readonly called: string
}

export function shift(writing: Writing, { id, by }: Received<'wall.shift'>): Output<'wall.shift'> {
  const { db } = writing
  const stored = row<Stored>(
    db,
    `SELECT wall.room, room.name || ' ' || wall.name AS called
     FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :id AND wall.exhibition IS NULL`,
    { id },
  )
  if (stored === undefined) throw notFound('wall')
  const walls = wallsOf(db, stored.room)
  // An angle nobody measured is the one that is drawn.
  const index = walls.findIndex(wall => wall.id === id)
  const shifted = shiftWall(
    walls.map((wall, at) => ({
      ...wall,
      angle: wall.angle ?? drawnAngle(wall, walls[(at + 1) % walls.length] ?? wall),
    })),
    index,
    by,
  )
  if (!shifted.ok) throw new Refusal('no-room', shifted.problem, { field: 'by' })
  for (const [at, wall] of walls.entries()) {
    const to = shifted.lengths[at] ?? wall.length
    if (to === wall.length) continue
    changeWall(writing, {
      id: wall.id,
      changes: { length: { was: wall.length, to }, lengthText: { was: wall.lengthText, to: '' } },
    })
  }
  takeAxes(writing, stored.room, { at: shifted.origin, turn: 0 })
  writing.label(`Move ${stored.called} ${by < 0 ? 'into the room' : 'outwards'} by ${Math.round(Math.abs(by))} mm`)
  return { done: true }
}

type Ends = { readonly from: readonly [number, number]; readonly to: readonly [number, number] }

function drawnAngle(wall: Ends, next: Ends): number {
  const heading = ({ from, to }: Ends) => (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  return (((180 - heading(next) + heading(wall)) % 360) + 360) % 360
}
