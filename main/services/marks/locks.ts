/**
 * The register of locks, of a set part by part: so that nobody stands before a work with the wrong tool on the last day.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { calledOn } from '../../../src/model/face-findings.ts'
import { marksOfPlaced } from '../../../src/model/marks-of-face.ts'
import { handsOf } from '../../../src/model/marks-of-set.ts'
import type { Reading } from '../service.ts'
import { row, rows } from '../sql.ts'
import { elevationOf } from '../walls/elevation.ts'
import { plain } from './marks.ts'

export function list({ db }: Reading, { exhibition }: Received<'lock.list'>): Output<'lock.list'> {
  const faces = rows<{ face: string }>(
    db,
    `SELECT DISTINCT placement.face FROM placement JOIN face ON face.id = placement.face JOIN wall ON wall.id = face.wall
     JOIN room ON room.id = wall.room WHERE placement.exhibition = :exhibition ORDER BY room.position, wall.position, face.id`,
    { exhibition },
  )
  const locks = faces.flatMap(({ face }) => {
    const elevation = elevationOf(db, exhibition, face)
    return elevation.works.flatMap(work => {
      const hands = handsOf(work, marksOfPlaced(elevation, work, plain))
      return hands.flatMap(({ placed, marks }) => {
        if ('problem' in marks) return []
        return marks.answer.marks
          .filter(mark => mark.does === 'keeps')
          .map(mark => ({
            placement: work.placement,
            entry: work.entry,
            name: calledOn(placed),
            running: placed.running,
            number: placed.number,
            title: placed.title,
            room: elevation.room.name,
            wall: elevation.wall.name,
            called: mark.name ?? mark.side,
            x: mark.hole.x,
            y: mark.holeFromFloor,
            fixing: placed.keeper?.name ?? '',
            // As the placement says it, else the library, else the method.
            tool: placed.lockTool || placed.keeper?.tool || (marks.answer.locks[0]?.tool ?? ''),
            locked: lockedAt(db, work.placement, work.state),
          }))
      })
    })
  })
  return { locks }
}

function lockedAt(db: Reading['db'], placement: string, state: string) {
  if (state !== 'locked' && state !== 'checked') return null
  return (
    row<{ at: string; by: string }>(
      db,
      `SELECT at, "by" FROM placement_step WHERE placement = :placement AND state = 'locked' ORDER BY at DESC, id DESC LIMIT 1`,
      { placement },
    ) ?? null
  )
}
