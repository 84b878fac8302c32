/**
 * Many new rows at once, inside an edit. The rule it keeps: what is there afterwards – rows, journal, text index,
 * indexes – is what putting them in one by one leaves, entry for entry; only the way there is shorter. For hundreds of
 * thousands of rows the triggers and the indexes cost three times the rows themselves: here they stand aside inside the
 * transaction, the same entries are written by one statement a table, and an index that more than doubles is sorted
 * anew. What throws takes all of it back, triggers and indexes too, as they are part of the transaction.
 */
import type Database from 'better-sqlite3'
import { journaledTables, literal, quoted } from './tables.ts'
import { journalTriggers, textColumns, textTriggers } from './triggers.ts'

export interface NewRows {
  readonly table: string
  readonly columns: readonly string[]
  readonly rows: readonly (readonly (string | number | null)[])[]
}

/** Below this, changing the schema back and forth costs more than it spares. */
export const fewRows = 1000

interface Made {
  readonly name: string
  readonly sql: string
}

function last(db: Database.Database, table: string): number {
  return (
    db
      .prepare<[], number | null>(`SELECT max(rowid) FROM ${quoted(table)}`)
      .pluck()
      .get() ?? 0
  )
}

/** Indexes of a table that a statement made; those of its keys stay. */
function indexes(db: Database.Database, table: string): Made[] {
  return db
    .prepare<[string], Made>(
      `SELECT name, sql FROM sqlite_schema WHERE type = 'index' AND tbl_name = ? AND sql IS NOT NULL ORDER BY rowid`,
    )
    .all(table)
}

/** A column with one value throughout stands in the statement itself: a third of an import's values are such. */
function put(db: Database.Database, { table, columns, rows }: NewRows): void {
  const [first = []] = rows
  const same = columns.map((_, i) => rows.length > 1 && rows.every(row => row[i] === first[i]))
  const places = columns.map((_, i) => (same[i] === true ? constant(first[i] ?? null) : '?')).join(', ')
  const names = columns.map(quoted).join(', ')
  const statement = db.prepare<unknown[]>(`INSERT INTO ${quoted(table)} (${names}) VALUES (${places})`)
  const differing = columns.flatMap((_, i) => (same[i] === true ? [] : [i]))
  const given = differing.map((): string | number | null => null)
  for (const row of rows) {
    for (const [place, i] of differing.entries()) given[place] = row[i] ?? null
    statement.run(given)
  }
}

function constant(value: string | number | null): string {
  return typeof value === 'string' ? literal(value) : String(value ?? 'NULL')
}

/** Puts the rows in, table by table in the order given. Needs an edit under way, as every write does. */
export function insertMany(db: Database.Database, batches: readonly NewRows[]): void {
  const count = batches.reduce((sum, { rows }) => sum + rows.length, 0)
  if (count < fewRows) {
    for (const batch of batches) put(db, batch)
    return
  }
  const edit = db.prepare<[], number | null>('SELECT edit FROM edit_now').pluck().get() ?? null
  if (edit === null) throw new Error('change outside an edit')
  const shapes = new Map(journaledTables(db).map(shape => [shape.name, shape]))
  const aside: Made[] = []
  function stand(kind: 'TRIGGER' | 'INDEX', made: readonly Made[]): void {
    for (const one of made) {
      db.exec(`DROP ${kind} ${quoted(one.name)}`)
      aside.push(one)
    }
  }
  if (last(db, 'journal') < count) stand('INDEX', indexes(db, 'journal'))
  for (const batch of batches) {
    const { table, rows } = batch
    const shape = shapes.get(table)
    if (shape === undefined) throw new Error(`${table} has no journal, so its rows cannot be put in by the many`)
    const before = last(db, table)
    stand(
      'TRIGGER',
      journalTriggers(shape).filter(({ name }) => name === `journal_${table}_i`),
    )
    if (table === 'work')
      stand(
        'TRIGGER',
        textTriggers().filter(({ name }) => name === 'text_work_i'),
      )
    if (before < rows.length) stand('INDEX', indexes(db, table))
    put(db, batch)
    db.prepare(
      `INSERT INTO journal(edit, tbl, key, op, data) SELECT ?, ${literal(table)}, id, 'i', NULL FROM ${quoted(table)} WHERE rowid > ? ORDER BY rowid`,
    ).run(edit, before)
    if (table === 'work') {
      const columns = textColumns.join(', ')
      db.prepare(`INSERT INTO work_fts(rowid, ${columns}) SELECT n, ${columns} FROM work WHERE n > ? ORDER BY n`).run(
        before,
      )
    }
  }
  for (const { sql } of aside) db.exec(sql)
}
