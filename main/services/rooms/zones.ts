/** Climate and light zones: the building's, each of some of its rooms. A room may be in one of each kind or in several. */
import type { ZoneRow } from '../../../src/contract/areas/standing.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Clash, changeFields, notFound, same } from '../change.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, value } from '../sql.ts'
import { roomName } from './called.ts'

/** In the order of the building, so that two lists of the same rooms are the same. */
function roomsIn(db: ReadHandle, zone: string): string[] {
  return rows<{ room: string }>(
    db,
    `SELECT zone_room.room FROM zone_room JOIN room ON room.id = zone_room.room
     WHERE zone_room.zone = :zone ORDER BY room.position, room.id`,
    { zone },
  ).map(({ room }) => room)
}

export function zonesOf(db: ReadHandle): ZoneRow[] {
  return rows<Omit<ZoneRow, 'rooms'>>(db, 'SELECT id, kind, name, note FROM zone ORDER BY kind, position, id').map(
    zone => ({ ...zone, rooms: roomsIn(db, zone.id) }),
  )
}

function setRooms(writing: Writing, zone: string, wanted: readonly string[], field: string): void {
  const { db } = writing
  for (const [index, room] of wanted.entries()) roomName(db, room, `${field}.${index}`)
  const now = rows<{ id: string; room: string }>(db, 'SELECT id, room FROM zone_room WHERE zone = :zone ORDER BY id', {
    zone,
  })
  for (const { id, room } of now) if (!wanted.includes(room)) removeRow(db, 'zone_room', id)
  for (const room of new Set(wanted)) {
    if (!now.some(one => one.room === room)) insert(db, 'zone_room', { id: writing.newId(), zone, room })
  }
}

export function addZone(writing: Writing, input: Received<'zone.add'>): Output<'zone.add'> {
  const { db } = writing
  const building = value<string>(db, 'SELECT id FROM building ORDER BY id LIMIT 1')
  if (building === undefined) {
    throw new Refusal('no-building', 'There is no building yet. Add a room first.')
  }
  writing.label(`Make the zone ${input.name}`)
  const id = writing.newId()
  const position = nextPosition(orderedRows(db, 'zone'))
  insert(db, 'zone', { id, building, kind: input.kind, name: input.name, note: input.note ?? '', position })
  setRooms(writing, id, input.rooms ?? [], 'rooms')
  return { id }
}

function nameOf(db: ReadHandle, id: string): string {
  const found = row<{ name: string }>(db, 'SELECT name FROM zone WHERE id = :id', { id })
  if (found === undefined) throw notFound('zone')
  return found.name
}

export function changeZone(writing: Writing, { id, changes }: Received<'zone.update'>): Output<'zone.update'> {
  const { db } = writing
  writing.label(`Change the zone ${nameOf(db, id)}`)
  const { rooms, ...facts } = changes
  const columns = { kind: 'kind', name: 'name', note: 'note' }
  const { saved, clashes } = changeFields(writing, 'zone', id, facts, columns, 'zone')
  if (rooms === undefined) return { saved, clashes }
  const theirs = roomsIn(db, id)
  if (!sameRooms(theirs, rooms.was) && !sameRooms(theirs, rooms.to)) {
    const clash: Clash = { code: 'clash', id, field: 'rooms', was: rooms.was, yours: rooms.to, theirs }
    return { saved, clashes: [...clashes, clash] }
  }
  setRooms(writing, id, rooms.to, 'changes.rooms.to')
  return { saved: [...saved, 'rooms'], clashes }
}

function sameRooms(a: readonly string[], b: readonly string[]): boolean {
  return same([...a].sort(), [...b].sort())
}

export function removeZone(writing: Writing, { id }: Received<'zone.remove'>): Output<'zone.remove'> {
  const { db } = writing
  writing.label(`Remove the zone ${nameOf(db, id)}`)
  for (const each of rows<{ id: string }>(db, 'SELECT id FROM zone_room WHERE zone = :id', { id })) {
    removeRow(db, 'zone_room', each.id)
  }
  removeRow(db, 'zone', id)
  return { done: true }
}
