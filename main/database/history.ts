/** Reads the journal: what undo and redo would do, the list of edits, every change of one record. */
import type { ReadHandle } from './handles.ts'
import { removedFrom } from './migrations/0015-loans.ts'

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

/** Why an edit was made, as somebody said it. */
export interface Reason {
  readonly why: string
  readonly by: string
  readonly at: string
}

/** The first that was said comes first. */
export function reasonsOf(db: ReadHandle, edit: number): Reason[] {
  return db
    .prepare('SELECT why, recorded_by AS by, recorded_at AS at FROM edit_reason WHERE edit = ? ORDER BY rowid')
    .all(edit) as Reason[] // the select list
}

export interface EditLine {
  readonly edit: number
  readonly label: string
  readonly person: string
  readonly at: string
  readonly takenBack: boolean
  readonly reasons: Reason[]
}

interface Asked {
  /** Words of the label and of what was said of it, in any order; '' for all. */
  readonly find: string
  /** A name as it stands beside edits; '' for anybody. */
  readonly person: string
  /** Moments: from the first on, before the second; '' for no end. */
  readonly from: string
  readonly until: string
  readonly offset: number
  readonly limit: number
}

/** Newest first, a page at a time. Undos and redos are edits of their own. */
export function editsOf(
  db: ReadHandle,
  { find, person, from, until, offset, limit }: Asked,
): { total: number; edits: EditLine[] } {
  const words = find.split(/\s+/).filter(word => word !== '')
  const where = `WHERE (:person = '' OR e.person_name = :person)
    AND e.at >= :from AND (:until = '' OR e.at < :until)
    AND NOT EXISTS (SELECT 1 FROM json_each(:words) AS word WHERE instr(lower(e.label), lower(word.value)) = 0
      AND NOT EXISTS (SELECT 1 FROM edit_reason AS r WHERE r.edit = e.id AND instr(lower(r.why), lower(word.value)) > 0))`
  const asked = { person, from, until, words: JSON.stringify(words) }
  const { total } = db.prepare(`SELECT count(*) AS total FROM edit AS e ${where}`).get(asked) as { total: number } // the select list
  const found = db
    .prepare(
      `SELECT e.id AS edit, e.label, e.person_name AS person, e.at, ${takenBack} AS takenBack FROM edit AS e ${where}
       ORDER BY e.id DESC LIMIT :limit OFFSET :offset`,
    )
    .all({ ...asked, limit, offset }) as (Omit<EditLine, 'takenBack' | 'reasons'> & { takenBack: number })[] // the select list
  const edits = found.map(line => ({ ...line, takenBack: line.takenBack === 1, reasons: reasonsOf(db, line.edit) }))
  return { total, edits }
}

/** All who edited, by their names as they stand beside edits. */
export function peopleOf(db: ReadHandle): string[] {
  return db
    .prepare(`SELECT DISTINCT person_name FROM edit WHERE person_name <> '' ORDER BY person_name`)
    .pluck()
    .all() as string[] // the select list
}

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json }
export type Row = Readonly<Record<string, Json>>

export interface Entry {
  readonly seq: number
  readonly edit: number
  readonly at: string
  readonly person: string
  readonly label: string
  readonly table: string
  readonly key: string
  readonly kind: 'added' | 'changed' | 'removed'
  /** Of a change: each column before and after. Of a removal: the whole row before. Of an addition nothing. */
  readonly fields: Readonly<Record<string, readonly [Json, Json]>>
}

interface Stored extends Omit<Entry, 'kind' | 'fields'> {
  readonly op: 'i' | 'u' | 'd'
  readonly data: string | null
}

const kinds = { i: 'added', u: 'changed', d: 'removed' } as const

function fieldsOf({ op, data }: Stored): Entry['fields'] {
  if (data === null) return {}
  // The journal's triggers wrote it.
  if (op === 'u') return JSON.parse(data) as Record<string, [Json, Json]>
  const row = JSON.parse(data) as Row
  return Object.fromEntries(Object.entries(row).map(([column, value]) => [column, [value, null]]))
}

const asEntry = ({ op, data, ...rest }: Stored): Entry => ({
  ...rest,
  kind: kinds[op],
  fields: fieldsOf({ ...rest, op, data }),
})

const select = `SELECT j.seq, j.edit, e.at, e.person_name AS person, e.label, j.tbl AS "table", j.key, j.op, j.data
  FROM journal AS j JOIN edit AS e ON e.id = j.edit`

/** Every change of one row, oldest first. An unknown row has none. */
export function entriesOf(db: ReadHandle, table: string, key: string): Entry[] {
  const found = db.prepare(`${select} WHERE j.tbl = :table AND j.key = :key ORDER BY j.seq`).all({ table, key })
  return (found as Stored[]).map(asEntry) // the select list
}

/** What one edit changed, in its order, a page at a time; null where there is no such edit. */
export function entriesOfEdit(
  db: ReadHandle,
  edit: number,
  { offset, limit }: { readonly offset: number; readonly limit: number },
): { readonly total: number; readonly entries: Entry[] } | null {
  const range = db.prepare('SELECT first_seq AS first, last_seq AS last FROM edit WHERE id = ?').get(edit) as
    | { first: number; last: number }
    | undefined // the select list
  if (range === undefined) return null
  const found = db
    .prepare(`${select} WHERE j.seq BETWEEN :first AND :last ORDER BY j.seq LIMIT :limit OFFSET :offset`)
    .all({ ...range, limit, offset })
  return { total: range.last - range.first + 1, entries: (found as Stored[]).map(asEntry) } // the select list
}

/** The rows of a table that were a part of one of these records when they were removed. */
export function removedFromAny(db: ReadHandle, table: string, records: readonly string[]): string[] {
  return db
    .prepare(
      `SELECT DISTINCT journal.key FROM json_each(:records) AS record CROSS JOIN journal
       WHERE tbl = :table AND op = 'd' AND ${removedFrom} = record.value ORDER BY journal.key`,
    )
    .pluck()
    .all({ table, records: JSON.stringify(records) }) as string[] // the select list
}
