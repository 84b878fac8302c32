/** Walls and what stands in a room, taken out of the building with all that hangs on them. */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { openExhibition } from '../exhibitions/open.ts'
import type { Writing } from '../service.ts'
import { remove as removeRow, row, rows, value } from '../sql.ts'

/** Refuses while works of any show stand on the wall. */
export function refuseIfUsed(db: ReadHandle, wall: string, field: string): void {
  const works =
    value<number>(db, 'SELECT count(*) FROM placement JOIN face ON face.id = placement.face WHERE face.wall = :wall', {
      wall,
    }) ?? 0
  if (works > 0) {
    throw new Refusal(
      'wall-in-use',
      works === 1
        ? 'One work stands on this wall. Take it off first.'
        : `${works} works stand on this wall. Take them off first.`,
      {
        field,
      },
    )
  }
  const printed =
    value<number>(
      db,
      'SELECT count(*) FROM sheet_print JOIN face ON face.id = sheet_print.face WHERE face.wall = :wall',
      { wall },
    ) ?? 0
  if (printed > 0)
    throw new Refusal('printed', 'Sheets of this wall have been printed; it stays for the record.', { field })
}

export function dropWall(writing: Writing, wall: string): void {
  const { db } = writing
  for (const table of ['opening', 'keep_clear']) {
    for (const each of rows<{ id: string }>(db, `SELECT id FROM ${table} WHERE wall = :wall`, { wall }))
      removeRow(db, table, each.id)
  }
  for (const face of rows<{ id: string }>(db, 'SELECT id FROM face WHERE wall = :wall', { wall })) {
    for (const layout of rows<{ id: string }>(db, 'SELECT id FROM kept_layout WHERE face = :face', { face: face.id })) {
      for (const place of rows<{ id: string }>(db, 'SELECT id FROM kept_place WHERE layout = :layout', {
        layout: layout.id,
      })) {
        removeRow(db, 'kept_place', place.id)
      }
      removeRow(db, 'kept_layout', layout.id)
    }
    for (const plan of rows<{ id: string }>(db, 'SELECT id FROM face_plan WHERE face = :face', { face: face.id })) {
      removeRow(db, 'face_plan', plan.id)
    }
    // Its holes go with the wall: nobody can fill them any more.
    for (const mark of rows<{ id: string }>(db, 'SELECT id FROM mark WHERE face = :face', { face: face.id })) {
      removeRow(db, 'mark', mark.id)
    }
    removeRow(db, 'face', face.id)
  }
  removeRow(db, 'wall', wall)
}

/** A partition: the wall with its faces and what is on them, then its two corners. */
export function dropPartition(writing: Writing, id: string): void {
  const { db } = writing
  const corners = row<{ from: string; to: string }>(
    db,
    'SELECT from_corner AS "from", to_corner AS "to" FROM wall WHERE id = :id',
    { id },
  )
  dropWall(writing, id)
  for (const corner of [corners?.from ?? '', corners?.to ?? '']) removeRow(db, 'corner', corner)
}

/** What a show has standing in the rooms goes with the show. */
export function dropStands(writing: Writing, exhibition: string): void {
  for (const { id } of standsOf(writing.db, 'wall', 'exhibition = :key', exhibition)) dropPartition(writing, id)
  for (const { id } of standsOf(writing.db, 'standing', 'exhibition = :key', exhibition)) {
    removeRow(writing.db, 'standing', id)
  }
}

/** What stands in a room besides its walls goes with it; refused where works hang on it or the show is closed. */
export function clearRoom(writing: Writing, room: string): void {
  const { db } = writing
  const partitions = standsOf(db, 'wall', 'room = :key AND exhibition IS NOT NULL', room)
  const things = standsOf(db, 'standing', 'room = :key', room)
  for (const { exhibition } of [...partitions, ...things]) {
    if (exhibition !== null) openExhibition(db, exhibition, 'id')
  }
  for (const { id } of partitions) refuseIfUsed(db, id, 'id')
  for (const { id } of partitions) dropPartition(writing, id)
  for (const { id } of things) removeRow(db, 'standing', id)
  for (const table of ['track', 'zone_room']) {
    for (const { id } of rows<{ id: string }>(db, `SELECT id FROM ${table} WHERE room = :room`, { room })) {
      removeRow(db, table, id)
    }
  }
}

function standsOf(db: ReadHandle, table: 'wall' | 'standing', where: string, key: string) {
  return rows<{ id: string; exhibition: string | null }>(
    db,
    `SELECT id, exhibition FROM ${table} WHERE ${where} ORDER BY id`,
    { key },
  )
}
