/**
 * What is on a wall goes over to another wall in line with it, at the same absolute place: openings and what must stay
 * clear, works with their marks, holes that serve nothing, kept layouts, what shows plan for the face. Printed sheets stay
 * with the face they were printed of.
 */
import { clean } from '../../../src/geometry/clean.ts'
import type { Writing } from '../service.ts'
import { insert, rows, update, type Value } from '../sql.ts'

export interface Move {
  readonly fromWall: string
  readonly toWall: string
  readonly fromFace: string
  readonly toFace: string
  /** Added to every x, and to every height. */
  readonly x: number
  readonly y: number
  /** Whether what has its centre there goes. */
  readonly goes: (centre: number) => boolean
}

type Row = Record<string, Value> & { readonly id: string; readonly x: number }

const add = (of: Value | undefined, by: number): Value => (typeof of === 'number' ? clean(of + by) : null)

export function moveAlong(writing: Writing, move: Move): void {
  const { db } = writing
  const { fromWall, toWall, fromFace, toFace, x, y, goes } = move
  for (const table of ['opening', 'keep_clear'] as const) {
    for (const one of rows<Row>(db, `SELECT * FROM ${table} WHERE wall = :wall ORDER BY id`, { wall: fromWall })) {
      if (goes(one.x + Number(one.width) / 2))
        update(db, table, one.id, { wall: toWall, x: clean(one.x + x), y: add(one.y, y) })
    }
  }
  const gone = new Set<Value>()
  for (const one of rows<Row>(db, 'SELECT * FROM placement WHERE face = :face ORDER BY id', { face: fromFace })) {
    if (!goes(one.x)) continue
    gone.add(one.id)
    update(db, 'placement', one.id, { face: toFace, x: clean(one.x + x), y: add(one.y, y) })
  }
  // A mark is its work's; only a hole that serves nothing any more is where it is.
  for (const one of rows<Row>(db, 'SELECT * FROM mark WHERE face = :face ORDER BY id', { face: fromFace })) {
    if (one.placement === null || one.placement === undefined ? !goes(one.x) : !gone.has(one.placement)) continue
    const heights = { y: add(one.y, y), bearing_y: add(one.bearing_y, y) }
    update(db, 'mark', one.id, { face: toFace, x: clean(one.x + x), ...heights })
  }
  moveLayouts(writing, move)
}

/** A kept layout is cut or joined like its wall: by show, name and moment it is one. */
function moveLayouts(writing: Writing, { fromFace, toFace, x, y, goes }: Move): void {
  const { db } = writing
  const kept = (face: string) =>
    rows<{ id: string; exhibition: string; name: string; at: string; by: string }>(
      db,
      'SELECT id, exhibition, name, at, by FROM kept_layout WHERE face = :face ORDER BY id',
      { face },
    )
  for (const layout of kept(fromFace)) {
    const places = rows<Row>(db, 'SELECT * FROM kept_place WHERE layout = :layout ORDER BY id', { layout: layout.id })
    const going = places.filter(place => goes(place.x))
    if (going.length === 0) continue
    const { exhibition, name, at, by } = layout
    const same = kept(toFace).find(one => one.exhibition === exhibition && one.name === name && one.at === at)
    const to = same?.id ?? writing.newId()
    if (same === undefined) insert(db, 'kept_layout', { id: to, exhibition, face: toFace, name, at, by })
    for (const place of going)
      update(db, 'kept_place', place.id, { layout: to, x: clean(place.x + x), y: add(place.y, y) })
  }
}
