/**
 * Outlines of a drawing taken as rooms, all of them as one edit. Their walls are marked as drawn, so that a tape's
 * measure overrides them; gaps become openings where the person says how high they are.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { type Box, boxOf } from '../../../src/plan/place.ts'
import { cornerOf, roomFromOutline } from '../../../src/plan/room-from-outline.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { plan } from '../plan/get.ts'
import { addOpening } from '../rooms/fixtures.ts'
import { addRoom } from '../rooms/write.ts'
import type { Job, Reading, Writing } from '../service.ts'
import { update, value } from '../sql.ts'
import { drawingOf } from './kept.ts'
import { type Proposal, proposalOf } from './proposal.ts'

type Input = Received<'drawing.take'>
type Taken = Output<'drawing.take'>

/** Between the building as it stands and what is taken beside it, mm; from memory. */
const apart = 2000

export async function take(job: Job, input: Input): Promise<Taken> {
  const name = job.handles.name(input.handle)
  const { handle, rooms, height: _height, wallType: _type, storey: _storey, openings: _openings, ...asked } = input
  const drawing = drawingOf(job, handle)
  const proposal = proposalOf(drawing, asked, () => job.progress(0, null, 'Looking for rooms'))
  refuseUnasked(proposal)
  for (const [at, { outline }] of rooms.entries()) {
    const found = proposal.outlines.find(each => each.key === outline)
    if (found === undefined) {
      throw new Refusal('not-found', 'There is no such outline in the drawing, read like this.', {
        field: `rooms.${at}.outline`,
      })
    }
    if (found.refused !== '') throw new Refusal('not-a-room', found.refused, { field: `rooms.${at}.outline` })
  }
  return job.write(writing => write(job, writing, input, proposal, name))
}

function refuseUnasked({ ask }: Proposal): void {
  if (ask === 'unit')
    throw new Refusal('unit-unknown', 'The drawing says no unit. Say which it is drawn in.', { field: 'unit' })
  if (ask === 'layers')
    throw new Refusal('layers-unknown', 'No layer is called walls. Say which ones are.', { field: 'layers' })
  if (ask === 'fewer layers')
    throw new Refusal('layers-too-many', 'These layers have more lines than walls do. Choose fewer.', {
      field: 'layers',
    })
}

function write(reading: Reading, writing: Writing, input: Input, { found, outlines }: Proposal, file: string): Taken {
  const storey = input.storey ?? ''
  const shift = shiftFor({ ...reading, db: writing.db }, storey, cornerOf(found))
  let holes = 0
  const rooms = input.rooms.map(({ outline, name, number }) => {
    const own = found[outlines.findIndex(each => each.key === outline)]
    if (own === undefined) throw new Error('an outline that was there a moment ago')
    const room = roomFromOutline(own)
    const { id, walls } = addRoom(writing, {
      name,
      height: input.height,
      how: 'drawn',
      ...(number === undefined ? {} : { number }),
      ...(input.wallType === undefined ? {} : { wallType: input.wallType }),
      walls: room.walls.map(({ length, angle }) => ({ length, angle })),
    })
    const [x, y] = room.at
    update(writing.db, 'room', id, { at_x: x + shift[0], at_y: y + shift[1], turn: room.turn, storey })
    for (const [at, wall] of room.walls.entries()) {
      const made = walls[at]
      if (made === undefined) continue
      if (wall.thickness !== null) update(writing.db, 'wall', made, { thickness: wall.thickness })
      if (input.openings === undefined) continue
      for (const opening of wall.openings) {
        addOpening(writing, { wall: made, ...input.openings, y: 0, ...opening })
        holes += 1
      }
    }
    return { id, name }
  })
  writing.label(
    rooms.length === 1 ? `Take ${rooms[0]?.name ?? ''} from ${file}` : `Take ${rooms.length} rooms from ${file}`,
  )
  return { rooms, openings: holes }
}

/** What is drawn comes to the building's 0, 0, or to the right of what stands on the storey already. */
function shiftFor(reading: Reading, storey: string, [left, top]: readonly [number, number]): readonly [number, number] {
  const there = standing(reading, storey)
  return there === null ? [-left, -top] : [there.right + apart - left, there.top - top]
}

function standing(reading: Reading, storey: string): Box | null {
  if (!hasPlaced(reading.db, storey)) return null
  const rooms = plan(reading, { exhibition: null }).rooms.filter(room => room.at !== null && room.storey === storey)
  return boxOf(rooms.flatMap(room => room.walls.flatMap(wall => [wall.from, wall.to])))
}

function hasPlaced(db: ReadHandle, storey: string): boolean {
  const sql = 'SELECT 1 FROM room WHERE storey = :storey AND at_x IS NOT NULL LIMIT 1'
  return value<number>(db, sql, { storey }) !== undefined
}
