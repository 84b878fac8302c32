/** What a show has standing in the rooms, copied for another show: partitions with what is fixed on them, and furniture. */
import type { Writing } from '../service.ts'
import { insert, rows, update, type Value } from '../sql.ts'

type Row = Record<string, Value> & { id: string }

/** Copies them; gives the copy of each thing standing, of each side of a partition and each hole in it. */
export function copyStands(writing: Writing, from: string, to: string): ReadonlyMap<string, string> {
  const { db, newId } = writing
  const copies = new Map<string, string>()
  for (const thing of rowsOf(writing, 'standing', 'exhibition', from)) {
    const copy = newId()
    insert(db, 'standing', { ...thing, id: copy, exhibition: to })
    copies.set(thing.id, copy)
  }
  for (const wall of rowsOf(writing, 'wall', 'exhibition', from)) {
    const id = newId()
    const [begins, ends] = [wall.from_corner, wall.to_corner].map(corner => {
      const [known] = rowsOf(writing, 'corner', 'id', String(corner))
      const copy = newId()
      insert(db, 'corner', { ...known, id: copy })
      return copy
    })
    insert(db, 'wall', { ...wall, id, exhibition: to, from_corner: begins ?? '', to_corner: ends ?? '' })
    for (const face of rowsOf(writing, 'face', 'wall', wall.id)) {
      const copy = newId()
      insert(db, 'face', { ...face, id: copy, wall: id })
      copies.set(face.id, copy)
    }
    // A hole in a partition is nobody else's.
    for (const opening of rowsOf(writing, 'opening', 'wall', wall.id)) {
      const copy = newId()
      insert(db, 'opening', { ...opening, id: copy, wall: id, other: null })
      copies.set(opening.id, copy)
    }
    for (const fixture of rowsOf(writing, 'keep_clear', 'wall', wall.id)) {
      insert(db, 'keep_clear', { ...fixture, id: newId(), wall: id })
    }
  }
  return copies
}

/** Copied rows that name a face of a copied partition name its copy. */
export function onCopied(
  { db }: Writing,
  copies: ReadonlyMap<string, string>,
  copied: ReadonlyMap<string, string>,
  table: 'placement' | 'face_plan',
): void {
  for (const id of copied.values()) {
    const [row] = rows<{ face: string }>(db, `SELECT face FROM ${table} WHERE id = :id`, { id })
    const face = row === undefined ? undefined : copies.get(row.face)
    if (face !== undefined) update(db, table, id, { face })
  }
}

function rowsOf({ db }: Writing, table: string, column: string, key: string): Row[] {
  return rows<Row>(db, `SELECT * FROM ${table} WHERE ${column} = :key ORDER BY id`, { key })
}
