/**
 * What was measured of a wall that is cut or joined. The length of the whole stays as a length between its outer corners,
 * with who, when and as it was typed; joined again, it is the wall's own.
 */

import type { StoredWall } from '../rooms/wall-facts.ts'
import type { Writing } from '../service.ts'
import { insert, remove, rows, update } from '../sql.ts'

interface Row {
  readonly id: string
  readonly value: number
  readonly text: string
  readonly how: string
  readonly used: number
  readonly at: string
  readonly by: string
}

const sideRows = (writing: Writing, wall: string) =>
  rows<Row>(writing.db, 'SELECT id, value, text, how, used, at, by FROM survey WHERE wall = :wall ORDER BY at, id', {
    wall,
  })

/** @param wall as it was before the cut. */
export function splitMeasures(writing: Writing, wall: StoredWall): void {
  const { db, newId } = writing
  const outer = { from_corner: wall.from_corner ?? '', to_corner: wall.to_corner ?? '' }
  const known = sideRows(writing, wall.id)
  for (const one of known) update(db, 'survey', one.id, { kind: 'diagonal', wall: null, ...outer })
  if (known.length > 0) return
  const { room, length, length_text: text, measured_at: at, measured_by: by } = wall
  const told = { value: Number(length), text: text ?? '', at: at ?? '', by: by ?? '' }
  insert(db, 'survey', {
    id: newId(),
    room,
    kind: 'diagonal',
    wall: null,
    ...outer,
    how: 'measured',
    used: 1,
    note: '',
    ...told,
  })
}

/** What was measured of the parts alone makes the whole; a whole that says otherwise counts no more. */
export function joinMeasures(writing: Writing, left: StoredWall, right: StoredWall, length: number): void {
  const { db, newId } = writing
  const parts = [...sideRows(writing, left.id), ...sideRows(writing, right.id)]
  const taped = parts.some(({ how, used }) => how === 'measured' && used === 1)
  for (const one of parts) remove(db, 'survey', one.id)
  const whole = rows<Row>(
    db,
    `SELECT id, value, text, how, used, at, by FROM survey WHERE kind = 'diagonal'
     AND ((from_corner = :a AND to_corner = :b) OR (from_corner = :b AND to_corner = :a)) ORDER BY at, id`,
    { a: left.from_corner ?? '', b: right.to_corner ?? '' },
  )
  for (const one of whole) {
    const used = Math.abs(one.value - length) <= 0.05 ? one.used : 0
    update(db, 'survey', one.id, { kind: 'side', wall: left.id, from_corner: null, to_corner: null, used })
  }
  const last = whole.findLast(({ value, used }) => used === 1 && Math.abs(value - length) <= 0.05)
  if (last !== undefined) {
    update(db, 'wall', left.id, { length_text: last.text, measured_at: last.at, measured_by: last.by })
  } else if (taped || whole.length > 0) {
    const told = {
      value: length,
      text: '',
      how: 'measured',
      used: 1,
      at: writing.now(),
      by: writing.person?.name ?? '',
      note: '',
    }
    insert(db, 'survey', {
      id: newId(),
      room: left.room,
      kind: 'side',
      wall: left.id,
      from_corner: null,
      to_corner: null,
      ...told,
    })
  }
}
