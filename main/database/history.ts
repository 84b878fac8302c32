/** Reads the journal: what undo and redo would do, the list of edits, every change of one record. */
import type { ReadHandle } from './handles.ts'

/** Taken back: an undo of it stands that was not itself taken back by a redo. Undo of undo goes no deeper. */
export const takenBack = `EXISTS (SELECT 1 FROM edit AS u WHERE u.undoes = e.id
  AND NOT EXISTS (SELECT 1 FROM edit AS r WHERE r.undoes = u.id))`

/** Edits from before the last migration stay: their entries speak of other columns. */
const floor = '(SELECT coalesce(max(last_edit), 0) FROM schema_step)'

const undoable = `SELECT e.id, e.label FROM edit AS e
  WHERE e.person = :person AND e.undoes IS NULL AND e.id > ${floor} AND NOT ${takenBack} ORDER BY e.id DESC LIMIT 1`

/** The newest undo of mine that stands, unless I have done something newer since. `label` is what was undone. */
const redoable = `SELECT e.id, was.label FROM edit AS e JOIN edit AS was ON was.id = e.undoes
  WHERE e.person = :person AND e.undoes IS NOT NULL AND was.undoes IS NULL AND e.id > ${floor}
  AND NOT EXISTS (SELECT 1 FROM edit AS r WHERE r.undoes = e.id)
  AND e.id > coalesce((SELECT e.id FROM edit AS e WHERE e.person = :person AND e.undoes IS NULL
    AND NOT ${takenBack} ORDER BY e.id DESC LIMIT 1), 0)
  ORDER BY e.id DESC LIMIT 1`

export interface Target {
  readonly id: number
  readonly label: string
}

export function targetOf(db: ReadHandle, way: 'undo' | 'redo', person: string): Target | undefined {
  return db.prepare(way === 'undo' ? undoable : redoable).get({ person }) as Target | undefined // the select list
}

/** How many entries taking back (or doing again) would replay; 0 where there is nothing. Cheap: two index look-ups. */
export function entriesToTakeBack(db: ReadHandle, way: 'undo' | 'redo', person: string): number {
  const target = targetOf(db, way, person)
  if (target === undefined) return 0
  const { entries } = db
    .prepare('SELECT last_seq - first_seq + 1 AS entries FROM edit WHERE id = :id')
    .get({ id: target.id }) as { entries: number } // the select list
  return entries
}

export interface UndoState {
  /** What would be undone and redone, in words; null where there is nothing. */
  readonly undo: string | null
  readonly redo: string | null
  /** The newest edit's number. */
  readonly last: number
}

export function undoStateOf(db: ReadHandle, person: string): UndoState {
  const last = db.prepare('SELECT coalesce(max(id), 0) AS last FROM edit').get() as { last: number } // the select list
  return {
    undo: targetOf(db, 'undo', person)?.label ?? null,
    redo: targetOf(db, 'redo', person)?.label ?? null,
    last: last.last,
  }
}

export interface EditLine {
  readonly edit: number
  readonly label: string
  readonly person: string
  readonly at: string
  readonly takenBack: boolean
}

/** Newest first, a page at a time. Undos and redos are edits of their own. */
export function editsOf(
  db: ReadHandle,
  { offset, limit }: { readonly offset: number; readonly limit: number },
): { total: number; edits: EditLine[] } {
  const { total } = db.prepare('SELECT count(*) AS total FROM edit').get() as { total: number } // the select list
  const found = db
    .prepare(
      `SELECT e.id AS edit, e.label, e.person_name AS person, e.at, ${takenBack} AS takenBack FROM edit AS e
       ORDER BY e.id DESC LIMIT :limit OFFSET :offset`,
    )
    .all({ limit, offset }) as (Omit<EditLine, 'takenBack'> & { takenBack: number })[] // the select list
  return { total, edits: found.map(line => ({ ...line, takenBack: line.takenBack === 1 })) }
}

type Json = string | number | boolean | null | Json[] | { [key: string]: Json }

export interface Change {
  readonly at: string
  readonly person: string
  readonly label: string
  readonly kind: 'added' | 'changed' | 'removed'
  /** Before and after, by column. Of an addition nothing: what it wrote is the row, or the next change's "before". */
  readonly fields: Record<string, [Json, Json]>
}

interface Entry {
  readonly op: 'i' | 'u' | 'd'
  readonly data: string | null
  readonly at: string
  readonly person: string
  readonly label: string
}

const kinds = { i: 'added', u: 'changed', d: 'removed' } as const

function fieldsOf({ op, data }: Entry): Record<string, [Json, Json]> {
  if (data === null) return {}
  // The journal's triggers wrote it.
  if (op === 'u') return JSON.parse(data) as Record<string, [Json, Json]>
  const row = JSON.parse(data) as Record<string, Json>
  return Object.fromEntries(Object.entries(row).map(([column, value]) => [column, [value, null]]))
}

/** Every change of one record, oldest first. An unknown record has none. */
export function historyOf(db: ReadHandle, table: string, key: string): Change[] {
  const entries = db
    .prepare(
      `SELECT j.op, j.data, e.at, e.person_name AS person, e.label FROM journal AS j JOIN edit AS e ON e.id = j.edit
       WHERE j.tbl = :table AND j.key = :key ORDER BY j.seq`,
    )
    .all({ table, key }) as Entry[] // the select list
  return entries.map(entry => ({
    at: entry.at,
    person: entry.person,
    label: entry.label,
    kind: kinds[entry.op],
    fields: fieldsOf(entry),
  }))
}
