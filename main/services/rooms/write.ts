/** Rooms and walls, changed. Walls run between shared corners, which are drawn from what is measured. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Columns, changeFields, jsonColumn, notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { moveBefore, nextPosition, orderedRows } from '../order.ts'
import { keepDrawn, measureCorner, measureSide } from '../plan/survey.ts'
import { sidesOf } from '../plan/survey-read.ts'
import type { Writing } from '../service.ts'
import { insert, remove as removeRow, row, rows, update, value } from '../sql.ts'
import { checkBehind } from './behind.ts'
import { drawRoom } from './draw.ts'
import { clearRoom, dropWall, refuseIfUsed } from './drop.ts'
import { wallsOf } from './read.ts'

type NewWall = Received<'wall.add'>['wall']

export function setBuilding(writing: Writing, { name }: Received<'room.setBuilding'>): Output<'room.setBuilding'> {
  writing.label(`Name the building ${name}`)
  return { id: buildingOf(writing, name) }
}

/** The one building; made where there is none yet. */
export function buildingOf(writing: Writing, name?: string): string {
  const known = value<string>(writing.db, 'SELECT id FROM building ORDER BY id LIMIT 1')
  if (known !== undefined) {
    if (name !== undefined) update(writing.db, 'building', known, { name })
    return known
  }
  const id = writing.newId()
  insert(writing.db, 'building', { id, name: name ?? '' })
  return id
}

export function addRoom(writing: Writing, input: Received<'room.add'>): Output<'room.add'> {
  const { db } = writing
  const room = writing.newId()
  writing.label(`Add ${input.name}`)
  insert(db, 'room', {
    id: room,
    building: buildingOf(writing),
    name: input.name,
    number: input.number ?? '',
    position: nextPosition(orderedRows(db, 'room')),
    height: input.height,
    floor_note: '',
    at_x: input.place?.at[0] ?? null,
    at_y: input.place?.at[1] ?? null,
    turn: input.place?.turn ?? 0,
    storey: input.place?.storey ?? '',
  })
  const walls = input.walls.map((wall, index) =>
    insertWall(writing, room, input.height, { wallType: input.wallType, ...wall }, index + 1),
  )
  drawRoom(writing, room)
  if (input.how === 'drawn') keepDrawn(writing, room)
  return { id: room, walls }
}

/** A wall with its face and the corner at its right end; `drawRoom` gives the corners their places. */
function insertWall(
  writing: Writing,
  room: string,
  height: number,
  wall: Omit<NewWall, 'wallType'> & { readonly wallType?: NewWall['wallType'] | undefined },
  position: number,
): string {
  const { db } = writing
  const corner = writing.newId()
  const angle = wall.angle === undefined ? 90 : wall.angle
  insert(db, 'corner', { id: corner, room, position, x: 0, y: 0, angle, angle_text: '' })
  const id = writing.newId()
  insert(db, 'wall', {
    id,
    room,
    position,
    from_corner: corner,
    to_corner: corner,
    name: wall.name ?? `wall ${position}`,
    length: wall.length,
    length_text: wall.lengthText ?? '',
    height,
    height_text: '',
    wall_type: wall.wallType ?? 'other',
    measured_at: writing.now(),
    measured_by: writing.person?.name ?? '',
    datum_note: '',
  })
  insert(db, 'face', { id: writing.newId(), wall: id, side: 'a', name: '' })
  return id
}

function roomName(db: ReadHandle, id: string, field = 'id'): string {
  const name = value<string>(db, 'SELECT name FROM room WHERE id = :id', { id })
  if (name === undefined) throw notFound('room', field)
  return name
}

export function changeRoom(writing: Writing, { id, changes }: Received<'room.update'>): Output<'room.update'> {
  const { db } = writing
  writing.label(`Change ${roomName(db, id)}`)
  const before = value<number>(db, 'SELECT height FROM room WHERE id = :id', { id })
  const columns = { name: 'name', number: 'number', height: 'height', labelLine: 'label_line' }
  const { saved, clashes, values } = changeFields(writing, 'room', id, changes, columns, 'room')
  if (typeof values.height === 'number') {
    // Walls that were as high as the room follow it; a wall measured by itself keeps its own.
    for (const wall of rows<{ id: string; height: number }>(db, 'SELECT id, height FROM wall WHERE room = :id', {
      id,
    })) {
      if (wall.height === before) update(db, 'wall', wall.id, { height: values.height })
    }
  }
  return { saved, clashes }
}

export function moveRoom(writing: Writing, { id, before }: Received<'room.move'>): Output<'room.move'> {
  writing.label(`Move ${roomName(writing.db, id)} in the list`)
  const ordered = orderedRows(writing.db, 'room')
  if (before !== null) roomName(writing.db, before, 'before')
  if (before !== id) moveBefore(writing.db, 'room', ordered, [id], before)
  return { done: true }
}

export function removeRoom(writing: Writing, { id }: Received<'room.remove'>): Output<'room.remove'> {
  const { db } = writing
  writing.label(`Remove ${roomName(db, id)}`)
  const walls = wallsOf(db, id)
  for (const wall of walls) refuseIfUsed(db, wall.id, 'id')
  clearRoom(writing, id)
  for (const wall of walls) dropWall(writing, wall.id)
  for (const corner of rows<{ id: string }>(db, 'SELECT id FROM corner WHERE room = :id', { id })) {
    removeRow(db, 'corner', corner.id)
  }
  removeRow(db, 'room', id)
  return { done: true }
}

export function addWall(writing: Writing, { room, after, wall }: Received<'wall.add'>): Output<'wall.add'> {
  const { db } = writing
  const stored = row<{ name: string; height: number }>(db, 'SELECT name, height FROM room WHERE id = :room', { room })
  if (stored === undefined) throw notFound('room', 'room')
  const ordered = orderedRows(db, 'wall', 'room = :room AND exhibition IS NULL', { room })
  const at = after === null ? 0 : ordered.findIndex(each => each.id === after) + 1
  if (after !== null && at === 0) throw notFound('wall of this room', 'after')
  writing.label(`Add a wall to ${stored.name}`)
  const id = insertWall(writing, room, stored.height, wall, ordered.length + 1)
  moveBefore(db, 'wall', ordered, [id], ordered[at]?.id ?? null)
  drawRoom(writing, room)
  return { id }
}

const wallColumns: Columns = {
  name: 'name',
  length: 'length',
  lengthText: 'length_text',
  height: 'height',
  heightText: 'height_text',
  wallType: 'wall_type',
  studFirst: 'stud_first',
  studSpacing: 'stud_spacing',
  backingFrom: 'backing_from',
  backingTo: 'backing_to',
  skirting: 'skirting',
  thickness: 'thickness',
  datum: 'datum',
  floor: jsonColumn('floor', []),
  datumBy: 'datum_by',
  studs: jsonColumn('studs', []),
  joints: jsonColumn('joints', []),
  ceiling: jsonColumn('ceiling', []),
  rail: jsonColumn('rail', []),
  railKgPerMetre: 'rail_rated',
  behindSeen: 'behind_seen',
}

/** The wall of an outline. A partition has ends of its own, which `partition.update` moves. */
function refusePartition(db: ReadHandle, id: string): void {
  if (value(db, 'SELECT exhibition FROM wall WHERE id = :id', { id }) == null) return
  throw new Refusal('partition', 'This is a partition, no wall of the room’s outline.', { field: 'id' })
}

/** Facts of a partition may change while its show is open; its length follows from its ends. */
function refuseEnds(db: ReadHandle, id: string, changes: Received<'wall.update'>['changes']): void {
  const show = value<string | null>(db, 'SELECT exhibition FROM wall WHERE id = :id', { id })
  if (show == null) return
  openExhibition(db, show, 'id')
  for (const field of ['length', 'lengthText', 'angle'] as const) {
    if (changes[field] === undefined) continue
    throw new Refusal('partition', 'The length of a partition follows from its two ends. Move those.', {
      field: `changes.${field}`,
    })
  }
}

export function changeWall(writing: Writing, { id, changes }: Received<'wall.update'>): Output<'wall.update'> {
  const { db } = writing
  const stored = row<{ room: string; name: string; to_corner: string }>(
    db,
    "SELECT wall.room, room.name || ' ' || wall.name AS name, wall.to_corner FROM wall JOIN room ON room.id = wall.room WHERE wall.id = :id",
    { id },
  )
  if (stored === undefined) throw notFound('wall')
  refuseEnds(db, id, changes)
  writing.label(`Change ${stored.name}`)
  const { angle, ...own } = changes
  checkBehind(db, id, own)
  const before = sidesOf(db, stored.room).find(side => side.id === id)
  const changed = changeFields(writing, 'wall', id, own, wallColumns, 'wall')
  const corner = changeFields(writing, 'corner', stored.to_corner, { angle }, { angle: 'angle' }, 'corner')
  if (changed.values.thickness !== undefined) {
    // Seen from the next room it is as thick.
    const other = row<{ id: string }>(db, 'SELECT id FROM wall WHERE backs = :id', { id })
    if (other !== undefined) update(db, 'wall', other.id, { thickness: changed.values.thickness as number | null }) // its schema
  }
  if (before !== undefined && changed.values.length !== undefined) measureSide(writing, stored.room, before)
  if (before !== undefined && corner.saved.length > 0) measureCorner(writing, stored.room, before)
  if (changed.values.length !== undefined || corner.saved.length > 0) drawRoom(writing, stored.room)
  return {
    saved: [...changed.saved, ...corner.saved],
    clashes: [...changed.clashes, ...corner.clashes.map(c => ({ ...c, id }))],
  }
}

/**
 * The corner at a wall's right end, with the angle measured there, goes with the wall: an outline is its lengths and
 * angles in order. What stands on the wall and what was printed of it stays as it is.
 */
export function moveWall(writing: Writing, { id, before }: Received<'wall.move'>): Output<'wall.move'> {
  const { db } = writing
  const stored = row<{ room: string; name: string }>(db, 'SELECT room, name FROM wall WHERE id = :id', { id })
  if (stored === undefined) throw notFound('wall')
  refusePartition(db, id)
  const { room, name } = stored
  const ordered = orderedRows(db, 'wall', 'room = :room AND exhibition IS NULL', { room })
  const next = before === null ? undefined : wallsOf(db, room).find(wall => wall.id === before)
  if (before !== null && next === undefined) throw notFound('wall of this room', 'before')
  const whither = next === undefined ? 'to the end' : `before ${next.name}`
  writing.label(`Move ${roomName(db, room)} ${name} ${whither}`)
  const at = ordered.findIndex(wall => wall.id === id)
  if (before === id || (ordered[at + 1]?.id ?? null) === before) return { done: true }
  moveBefore(db, 'wall', ordered, [id], before)
  drawRoom(writing, room)
  return { done: true }
}

export function removeWall(writing: Writing, { id }: Received<'wall.remove'>): Output<'wall.remove'> {
  const { db } = writing
  const stored = row<{ room: string; name: string }>(db, 'SELECT room, name FROM wall WHERE id = :id', { id })
  if (stored === undefined) throw notFound('wall')
  refusePartition(db, id)
  refuseIfUsed(db, id, 'id')
  writing.label(`Remove ${roomName(db, stored.room)} ${stored.name}`)
  const rest = wallsOf(db, stored.room).filter(wall => wall.id !== id)
  if (rest.length === 0)
    throw new Refusal('last-wall', 'A room keeps its last wall. Remove the room instead.', { field: 'id' })
  drawRoom(writing, stored.room, id)
  dropWall(writing, id)
  drawRoom(writing, stored.room)
  return { done: true }
}
