/**
 * Outlines of a drawing taken as rooms, all of them as one edit. Their walls are marked as drawn, so that a tape's
 * measure overrides them; gaps become openings where the person says how high they are.
 */
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { backToBack } from '../../../src/plan/back-to-back.ts'
import { sharedOf } from '../../../src/plan/one-wall.ts'
import { roomFromOutline } from '../../../src/plan/room-from-outline.ts'
import { plan } from '../plan/get.ts'
import { makeOneWall } from '../plan/share.ts'
import { addOpening, pairOpenings } from '../rooms/fixtures.ts'
import { addRoom } from '../rooms/write.ts'
import type { Job, Reading, Writing } from '../service.ts'
import { update } from '../sql.ts'
import { drawingOf } from './kept.ts'
import { type Proposal, proposalOf } from './proposal.ts'
import { shiftFor } from './where.ts'

type Input = Received<'drawing.take'>
type Taken = Output<'drawing.take'>

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

function write(reading: Reading, writing: Writing, input: Input, proposal: Proposal, file: string): Taken {
  const { found, outlines } = proposal
  const storey = input.storey ?? ''
  const chosen = input.rooms.map(({ outline }) => outlines.findIndex(each => each.key === outline))
  const shift = shiftFor(proposal, chosen, placed(writing, reading, storey))
  let holes = 0
  const rooms = input.rooms.map(({ name, number }, index) => {
    const own = found[chosen[index] ?? -1]
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
  const doorways = link(writing, placed(writing, reading, storey), new Set(rooms.map(room => room.id)))
  writing.label(
    rooms.length === 1 ? `Take ${rooms[0]?.name ?? ''} from ${file}` : `Take ${rooms.length} rooms from ${file}`,
  )
  return { rooms, openings: holes, doorways }
}

/** Of one storey, where they stand. */
function placed({ db }: Pick<Writing, 'db'>, reading: Reading, storey: string): readonly PlanRoomRow[] {
  return plan({ ...reading, db }, { exhibition: null }).rooms.filter(room => room.at !== null && room.storey === storey)
}

/** Walls that the drawing shows as one become one, and doorways lead from room to room. Gives how many doorways. */
function link(writing: Writing, rooms: readonly PlanRoomRow[], taken: ReadonlySet<string>): number {
  const mine = new Set(rooms.flatMap(room => (taken.has(room.id) ? room.walls.map(wall => wall.id) : [])))
  const pairs = backToBack(rooms).filter(({ a, b }) => mine.has(a.id) || mine.has(b.id))
  const { walls, doorways } = sharedOf(pairs)
  for (const { a, b, apart } of walls) {
    // What was measured of a room that stood here before is kept.
    const [before, after] = mine.has(a.id) ? [b, a] : [a, b]
    makeOneWall(writing, a.id, b.id, before.thickness ?? after.thickness ?? Math.round(apart * 10) / 10)
  }
  for (const [id, other] of doorways) pairOpenings(writing, { id, other })
  return doorways.length
}
