/** Ceiling tracks: the building's, by their two ends in the room they hang in. */
import type { TrackRow } from '../../../src/contract/areas/standing.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { type Ends, lengthOf } from '../../../src/plan/partition.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { changeFields, notFound, same } from '../change.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update } from '../sql.ts'
import { roomName } from './called.ts'

interface Stored extends Omit<TrackRow, 'ends' | 'length'> {
  readonly fromX: number
  readonly fromY: number
  readonly toX: number
  readonly toY: number
}

const select = `SELECT track.id, track.room, track.name, track.from_x AS fromX, track.from_y AS fromY, track.to_x AS toX,
  track.to_y AS toY, track.height, track.note FROM track JOIN room ON room.id = track.room`

function asTrack({ fromX, fromY, toX, toY, ...rest }: Stored): TrackRow {
  const ends: TrackRow['ends'] = [
    [fromX, fromY],
    [toX, toY],
  ]
  return { ...rest, ends, length: lengthOf(ends) }
}

export function tracksOf(db: ReadHandle): TrackRow[] {
  return rows<Stored>(db, `${select} ORDER BY room.position, room.id, track.id`).map(asTrack)
}

function trackOf(db: ReadHandle, id: string): TrackRow {
  const stored = row<Stored>(db, `${select} WHERE track.id = :id`, { id })
  if (stored === undefined) throw notFound('track')
  return asTrack(stored)
}

function refuseNoLength(ends: Ends, field: string): void {
  if (lengthOf(ends) < 1) throw new Refusal('no-length', 'Its two ends are in one place.', { field })
}

const columnsOf = ([[fromX, fromY], [toX, toY]]: Ends) => ({ from_x: fromX, from_y: fromY, to_x: toX, to_y: toY })

export function addTrack(writing: Writing, input: Received<'track.add'>): Output<'track.add'> {
  const { db } = writing
  const room = roomName(db, input.room)
  refuseNoLength(input.ends, 'ends')
  writing.label(`Add a track to ${room}`)
  const id = writing.newId()
  insert(db, 'track', {
    id,
    room: input.room,
    name: input.name ?? '',
    ...columnsOf(input.ends),
    height: input.height ?? null,
    note: input.note ?? '',
  })
  return { id }
}

export function changeTrack(writing: Writing, { id, changes }: Received<'track.update'>): Output<'track.update'> {
  const { db } = writing
  const before = trackOf(db, id)
  const { ends, ...facts } = changes
  if (ends !== undefined) refuseNoLength(ends.to, 'changes.ends.to')
  writing.label(`${ends === undefined ? 'Change' : 'Move'} a track of ${roomName(db, before.room)}`)
  const columns = { name: 'name', height: 'height', note: 'note' }
  const { saved, clashes } = changeFields(writing, 'track', id, facts, columns, 'track')
  if (ends === undefined) return { saved, clashes }
  if (!same(before.ends, ends.was) && !same(before.ends, ends.to)) {
    const clash = { code: 'clash', id, field: 'ends', was: ends.was, yours: ends.to, theirs: before.ends } as const
    return { saved, clashes: [...clashes, clash] }
  }
  update(db, 'track', id, columnsOf(ends.to))
  return { saved: [...saved, 'ends'], clashes }
}

export function removeTrack(writing: Writing, { id }: Received<'track.remove'>): Output<'track.remove'> {
  writing.label(`Remove a track of ${roomName(writing.db, trackOf(writing.db, id).room)}`)
  removeRow(writing.db, 'track', id)
  return { done: true }
}
