/**
 * A room's corners, drawn from its measures: by the compass rule where nothing is redundant but the closure, by least
 * squares from the first diagonal on. Drawn anew whenever a measure or the order changes, so that plan and figures cannot
 * part; a corner is never moved by itself. Where the order gives the room another first wall, and so other axes, what
 * stands in it keeps its place.
 */
import type { Ends } from '../../../src/plan/partition.ts'
import { outlineOfRoom } from '../../../src/plan/room-survey.ts'
import { surveyRowsOf, surveyRulesOf } from '../plan/survey-read.ts'
import type { Writing } from '../service.ts'
import { insert, remove, rows, update } from '../sql.ts'
import { keepPlace } from './new-axes.ts'

interface Segment {
  readonly id: string
  readonly name: string
  readonly length: number
  readonly angle: number | null
  readonly to_corner: string
  readonly from_corner: string
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

const endsOf = ({ fromX, fromY, toX, toY }: Segment): Ends => [
  [fromX, fromY],
  [toX, toY],
]

/**
 * An open chain of one or two walls has a corner more than walls. A wall that is about to go is left out first, so that
 * no neighbour begins at its corner any more.
 */
export function drawRoom(writing: Writing, room: string, without: string | null = null): void {
  const { db } = writing
  const walls = rows<Segment>(
    db,
    `SELECT wall.id, wall.name, wall.length, ends.angle, wall.to_corner, wall.from_corner,
      begins.x AS fromX, begins.y AS fromY, ends.x AS toX, ends.y AS toY
     FROM wall JOIN corner AS begins ON begins.id = wall.from_corner JOIN corner AS ends ON ends.id = wall.to_corner
     WHERE wall.room = :room AND wall.exhibition IS NULL AND wall.id IS NOT :without ORDER BY wall.position, wall.id`,
    { room, without },
  )
  if (walls.length === 0) return
  const surveyed = walls.map((wall, index) => ({
    ...wall,
    from: walls.at(index - 1)?.to_corner ?? '',
    to: wall.to_corner,
  }))
  const { corners, closed } = outlineOfRoom(surveyed, surveyRowsOf(db, room), surveyRulesOf(db))
  const ends = new Set(walls.map(wall => wall.to_corner))
  // An open chain begins at the corner where no wall ends.
  let first = closed ? walls.at(-1)?.to_corner : walls.find(wall => !ends.has(wall.from_corner))?.from_corner
  if (first === undefined) {
    first = writing.newId()
    insert(db, 'corner', { id: first, room, position: 0, x: 0, y: 0, angle: null, angle_text: '' })
  }
  let from = first
  for (const [index, wall] of walls.entries()) {
    if (wall.from_corner !== from) update(db, 'wall', wall.id, { from_corner: from })
    const [x, y] = corners[(index + 1) % corners.length] ?? [0, 0]
    update(db, 'corner', wall.to_corner, { x, y, position: index + 1 })
    from = wall.to_corner
  }
  if (!closed) {
    const [x, y] = corners[0] ?? [0, 0]
    update(db, 'corner', first, { x, y, position: 0 })
  }
  keepPlace(
    writing,
    room,
    walls.map((wall, index) => ({
      was: wall.from_corner === wall.to_corner ? null : endsOf(wall),
      now: [corners[index] ?? [0, 0], corners[(index + 1) % corners.length] ?? [0, 0]],
    })),
  )
  const unused = `SELECT id FROM corner WHERE room = :room
    AND id NOT IN (SELECT from_corner FROM wall UNION SELECT to_corner FROM wall)`
  for (const corner of rows<{ id: string }>(db, unused, { room })) remove(db, 'corner', corner.id)
}
