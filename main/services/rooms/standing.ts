/** What stands on the floor: the building's, or a show's alone. A closed show keeps what it had. */
import type { StandingRow } from '../../../src/contract/areas/standing.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { placedByWall } from '../../../src/plan/by-wall.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Clash, type Columns, changeFields, notFound, same, yesNoColumn } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { nextPosition, orderedRows } from '../order.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update, value } from '../sql.ts'
import { roomName } from './called.ts'
import { wallsOf } from './read.ts'
import { tracksOf } from './tracks.ts'
import { zonesOf } from './zones.ts'

interface Stored extends Omit<StandingRow, 'at' | 'round'> {
  readonly x: number
  readonly y: number
  readonly round: number
}

const select = `SELECT standing.id, standing.room, standing.exhibition, standing.kind, standing.name, standing.x, standing.y,
  standing.turn, standing.width, standing.depth, standing.height, standing.bottom, standing.round, standing.note
  FROM standing JOIN room ON room.id = standing.room`

function asThing({ x, y, round, ...rest }: Stored): StandingRow {
  return { ...rest, at: [x, y], round: round === 1 }
}

/** The building's things and those of a show, room by room in the order they came. */
export function thingsOf(db: ReadHandle, exhibition: string | null): StandingRow[] {
  return rows<Stored>(
    db,
    `${select} WHERE standing.exhibition IS NULL OR standing.exhibition = :exhibition
     ORDER BY room.position, room.id, standing.position, standing.id`,
    { exhibition },
  ).map(asThing)
}

export function list({ db }: Reading, { exhibition }: Received<'standing.list'>): Output<'standing.list'> {
  if (exhibition !== null && value(db, 'SELECT 1 FROM exhibition WHERE id = :exhibition', { exhibition }) === undefined)
    throw notFound('exhibition', 'exhibition')
  return { things: thingsOf(db, exhibition), tracks: tracksOf(db), zones: zonesOf(db) }
}

function middleOf(db: ReadHandle, input: Received<'standing.add'>): readonly [number, number] {
  const { at, byWall, room, turn = 0, width, depth, round = false } = input
  if (at !== undefined && byWall !== undefined) {
    throw new Refusal('place-twice', 'Give its middle or its distances from a wall, not both.', { field: 'byWall' })
  }
  if (at !== undefined) return at
  if (byWall === undefined) {
    throw new Refusal('place-missing', 'Say where it stands: its middle, or from a wall and along it.', { field: 'at' })
  }
  const wall = wallsOf(db, room).find(({ id }) => id === byWall.wall)
  if (wall === undefined) throw notFound('wall of this room', 'byWall.wall')
  return placedByWall({ turn, width, depth, round }, wall, byWall)
}

export function add(writing: Writing, input: Received<'standing.add'>): Output<'standing.add'> {
  const { db } = writing
  const room = roomName(db, input.room)
  if (input.exhibition !== null) openExhibition(db, input.exhibition)
  const [x, y] = middleOf(db, input)
  writing.label(`Put a ${input.kind} into ${room}`)
  const id = writing.newId()
  insert(db, 'standing', {
    id,
    room: input.room,
    exhibition: input.exhibition,
    kind: input.kind,
    name: input.name ?? '',
    x,
    y,
    turn: input.turn ?? 0,
    width: input.width,
    depth: input.depth,
    height: input.height ?? null,
    bottom: input.bottom ?? 0,
    round: input.round === true ? 1 : 0,
    note: input.note ?? '',
    position: nextPosition(orderedRows(db, 'standing', 'room = :room', { room: input.room })),
  })
  return { id }
}

const columns: Columns = {
  kind: 'kind',
  name: 'name',
  exhibition: 'exhibition',
  room: 'room',
  turn: 'turn',
  width: 'width',
  depth: 'depth',
  height: 'height',
  bottom: 'bottom',
  round: yesNoColumn('round'),
  note: 'note',
}

/** The thing as it stands. Refuses one of a closed show. */
function openThing(db: ReadHandle, id: string): StandingRow {
  const stored = row<Stored>(db, `${select} WHERE standing.id = :id`, { id })
  if (stored === undefined) throw notFound('thing in a room')
  if (stored.exhibition !== null) openExhibition(db, stored.exhibition, 'id')
  return asThing(stored)
}

export function change(writing: Writing, { id, changes }: Received<'standing.update'>): Output<'standing.update'> {
  const { db } = writing
  const before = openThing(db, id)
  const { at, ...facts } = changes
  if (facts.room !== undefined) roomName(db, facts.room.to, 'changes.room.to')
  if (facts.exhibition?.to != null) openExhibition(db, facts.exhibition.to, 'changes.exhibition.to')
  writing.label(`${at === undefined ? 'Change' : 'Move'} a ${before.kind} in ${roomName(db, before.room)}`)
  const { saved, clashes } = changeFields(writing, 'standing', id, facts, columns, 'thing in a room')
  return { saved, clashes: [...clashes, ...putAt(writing, before, at, saved)] }
}

/** Both coordinates go through or neither. */
function putAt(
  { db }: Writing,
  { id, at: theirs }: StandingRow,
  at: Received<'standing.update'>['changes']['at'],
  saved: string[],
): Clash[] {
  if (at === undefined) return []
  if (!same(theirs, at.was) && !same(theirs, at.to)) {
    return [{ code: 'clash', id, field: 'at', was: at.was, yours: at.to, theirs }]
  }
  saved.push('at')
  update(db, 'standing', id, { x: at.to[0], y: at.to[1] })
  return []
}

export function remove(writing: Writing, { id }: Received<'standing.remove'>): Output<'standing.remove'> {
  const { kind, room } = openThing(writing.db, id)
  writing.label(`Take a ${kind} out of ${roomName(writing.db, room)}`)
  removeRow(writing.db, 'standing', id)
  return { done: true }
}
