/**
 * A room once more, beside the first: walls with what is fixed on them and what was measured, the ceiling's tracks and what
 * of the building stands on the floor. What a show hung or stood there stays in the first, and a door leads where it led,
 * through a hole of its own.
 */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { boxOf, toBuilding } from '../../../src/plan/place.ts'
import { notFound } from '../change.ts'
import { moveBefore, nextPosition, orderedRows } from '../order.ts'
import type { Writing } from '../service.ts'
import { insert, row, rows, type Value } from '../sql.ts'

type Row = Record<string, Value> & { readonly id: string }

/** Between the room and its copy, mm; of the drawing alone. */
const APART = 600

export function copyRoom(writing: Writing, { id, name }: Received<'room.copy'>): Output<'room.copy'> {
  const { db, newId } = writing
  const room = row<Row>(db, 'SELECT * FROM room WHERE id = :id', { id })
  if (room === undefined) throw notFound('room')
  const called = name ?? `${room.name}, copy`
  writing.label(`Copy ${room.name} as ${called}`)
  const copy = newId()
  const ordered = orderedRows(db, 'room')
  insert(db, 'room', {
    ...room,
    ...beside(writing, room),
    id: copy,
    name: called,
    number: '',
    position: nextPosition(ordered),
  })
  const next = ordered[ordered.findIndex(one => one.id === id) + 1]
  if (next !== undefined) moveBefore(db, 'room', ordered, [copy], next.id)

  const of = (table: string, where = 'room = :id') =>
    rows<Row>(db, `SELECT * FROM ${table} WHERE ${where} ORDER BY id`, { id })
  const walls = of('wall', 'room = :id AND exhibition IS NULL')
  const ends = new Set(walls.flatMap(wall => [wall.from_corner, wall.to_corner]))
  const corners = new Map<Value, string>()
  for (const corner of of('corner').filter(one => ends.has(one.id))) {
    corners.set(corner.id, newId())
    insert(db, 'corner', { ...corner, id: corners.get(corner.id) ?? '', room: copy })
  }
  const cornerOf = (corner: Value | undefined) => corners.get(corner ?? null) ?? null
  const copied = new Map<Value, string>()
  for (const wall of walls) {
    const part = newId()
    copied.set(wall.id, part)
    const between = { from_corner: cornerOf(wall.from_corner), to_corner: cornerOf(wall.to_corner) }
    // Another room's wall is the other side of one wall only.
    insert(db, 'wall', { ...wall, ...between, id: part, room: copy, backs: null })
    insert(db, 'face', { id: newId(), wall: part, side: 'a', name: '' })
    copyOn(writing, 'opening', wall.id, { wall: part, other: null })
    copyOn(writing, 'keep_clear', wall.id, { wall: part })
  }
  for (const measure of of('survey')) {
    const [wall, from, to] = [measure.wall, measure.from_corner, measure.to_corner]
    const ends = { from_corner: cornerOf(from), to_corner: cornerOf(to) }
    insert(db, 'survey', { ...measure, ...ends, wall: copied.get(wall ?? null) ?? null, id: newId(), room: copy })
  }
  for (const thing of of('standing', 'room = :id AND exhibition IS NULL')) {
    insert(db, 'standing', { ...thing, id: newId(), room: copy })
  }
  for (const track of of('track')) insert(db, 'track', { ...track, id: newId(), room: copy })
  return { id: copy }
}

function copyOn(
  { db, newId }: Writing,
  table: 'opening' | 'keep_clear',
  wall: string,
  as: Readonly<Record<string, Value>>,
) {
  for (const one of rows<Row>(db, `SELECT * FROM ${table} WHERE wall = :wall ORDER BY id`, { wall })) {
    insert(db, table, { ...one, ...as, id: newId() })
  }
}

/** To the right of a room that has its place in the building; one without a place leaves its copy without one. */
function beside({ db }: Writing, room: Row): { readonly at_x: Value; readonly at_y: Value } {
  const { at_x: x, at_y: y, turn } = room
  if (typeof x !== 'number' || typeof y !== 'number') return { at_x: null, at_y: null }
  const corners = rows<{ x: number; y: number }>(db, 'SELECT x, y FROM corner WHERE room = :id', { id: room.id })
  const box = boxOf(corners.map(corner => toBuilding({ at: [x, y], turn: Number(turn) }, [corner.x, corner.y])))
  return { at_x: box === null ? x : x + (box.right - box.left) + APART, at_y: y }
}
