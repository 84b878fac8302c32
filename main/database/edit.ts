/**
 * One edit: one BEGIN IMMEDIATE, everything in it journaled under one row that says what, who and when. All or nothing;
 * what journals nothing leaves no row. A transaction that another program holds is waited for without blocking.
 */
import { setTimeout as sleep } from 'node:timers/promises'
import type Database from 'better-sqlite3'
import { asRefusal, busy, isBusy } from './faults.ts'
import { records } from './tables.ts'

export interface Who {
  readonly id: string
  readonly name: string
}

export interface RowKey {
  readonly table: string
  readonly key: string
}

export interface Edited<T> {
  readonly value: T
  /** The edit's number; null where nothing was journaled. */
  readonly edit: number | null
  /** Tables with changed rows, for change notices. */
  readonly tables: readonly string[]
  /** The changed rows; null where there are too many to name. */
  readonly keys: readonly RowKey[] | null
}

export interface EditRow {
  readonly procedure: string
  readonly person: Who
  readonly at: string
  readonly undoes: number | null
  /** Asked at the end, when the edit knows what it did. */
  readonly label: () => string
  /** Since when somebody waits for this edit, by `performance.now()`; else since it begins. */
  readonly askedAt?: number | undefined
}

const namedAtMost = 2000
const patience = 10_000

function number(db: Database.Database, sql: string): number {
  return Number(db.prepare<[], number | null>(sql).pluck().get() ?? 0)
}

function recordCounts(db: Database.Database): number[] {
  return records.map(table => number(db, `SELECT max(rowid) FROM ${table}`))
}

function changedSince(db: Database.Database, first: number, last: number): { tables: string[]; keys: RowKey[] | null } {
  const range = 'FROM journal WHERE seq BETWEEN ? AND ?'
  if (last - first < namedAtMost) {
    const keys = db
      .prepare<[number, number], RowKey>(`SELECT DISTINCT tbl AS "table", key ${range} ORDER BY tbl, key`)
      .all(first, last)
    return { tables: [...new Set(keys.map(({ table }) => table))], keys }
  }
  const tables = db
    .prepare<[number, number], string>(`SELECT DISTINCT tbl ${range} ORDER BY tbl`)
    .pluck()
    .all(first, last)
  return { tables, keys: null }
}

/** Inside a transaction: marks the edit, runs `change`, writes the edit's row. */
function journaled<T>(db: Database.Database, row: EditRow, change: (id: number, first: number) => T): Edited<T> {
  const id = number(db, 'SELECT max(id) FROM edit') + 1
  const first = number(db, 'SELECT max(seq) FROM journal') + 1
  const before = recordCounts(db)
  db.prepare('UPDATE edit_now SET edit = ?').run(id)
  const value = change(id, first)
  db.prepare('UPDATE edit_now SET edit = NULL').run()
  const last = number(db, 'SELECT max(seq) FROM journal')
  const recorded = recordCounts(db).flatMap((count, index) => (count === before[index] ? [] : [records[index] ?? '']))
  if (last < first) return { value, edit: null, tables: recorded, keys: recorded.length === 0 ? [] : null }
  const label = row.label()
  if (label === '') throw new Error(`${row.procedure} changed something without saying what for people`)
  db.prepare(
    `INSERT INTO edit(id, label, procedure, person, person_name, at, undoes, first_seq, last_seq)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
  ).run(id, label, row.procedure, row.person.id, row.person.name, row.at, row.undoes, first, last)
  const { tables, keys } = changedSince(db, first, last)
  return { value, edit: id, tables: [...tables, ...recorded], keys }
}

/** Since when another program writes, as this connection has met it. */
const busySince = new WeakMap<Database.Database, number>()

/**
 * Begins as soon as no other program writes; refuses `catalogue-busy` after ten seconds. Edits that wait in one line
 * wait for the same ten seconds, not for ten each.
 */
async function begin(db: Database.Database, askedAt = performance.now()): Promise<void> {
  for (let wait = 2; ; wait = Math.min(wait * 2, 50)) {
    try {
      // Two edits of one connection take turns: while one waits here, none is open, as `change` cannot wait.
      db.exec('BEGIN IMMEDIATE')
      busySince.delete(db)
      return
    } catch (error) {
      if (!isBusy(error)) throw error
      const now = performance.now()
      const since = busySince.get(db) ?? now
      busySince.set(db, since)
      if (now > Math.max(since, askedAt) + patience) throw busy()
    }
    await sleep(wait)
  }
}

/**
 * Runs one edit. `inspect` sees the transaction before COMMIT; whatever throws rolls all of it back. Faults of the
 * machine come out as refusals.
 */
export async function runEdit<T>(
  db: Database.Database,
  file: string,
  row: EditRow,
  change: (id: number, first: number) => T,
): Promise<Edited<T>> {
  try {
    await begin(db, row.askedAt)
    const edited = journaled(db, row, change)
    if (edited.value instanceof Promise) throw new Error(`${row.procedure} cannot wait for anything inside its edit`)
    db.exec(edited.edit === null && edited.tables.length === 0 ? 'ROLLBACK' : 'COMMIT')
    return edited
  } catch (error) {
    // SQLite may have rolled back already, when the disk was full, say.
    if (db.inTransaction) db.exec('ROLLBACK')
    throw asRefusal(error, file)
  }
}
