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

type Cell = string | number | null

/** Rows of which only the count need be known ahead: they may be made as they go in, so that few are kept at a time. */
export interface RowsAhead extends Iterable<readonly Cell[]> {
  readonly length: number
}

export interface NewRows {
  readonly table: string
  readonly columns: readonly string[]
  readonly rows: RowsAhead
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

/** Rows of one statement: a statement of its own for each row costs as much as the row. */
const together = 200
/** Longest text that a statement holds for all its rows. */
const longestConstant = 40
const mostStatements = 20

/**
 * A column that holds one value for all rows of a statement stands in the statement itself: a third of an import's
 * values are such. Only values of the first rows are looked for, so that the statements stay few.
 */
function put(db: Database.Database, { table, columns, rows }: NewRows): void {
  const statements = new Map<string, { readonly run: Database.Statement<unknown[]>; readonly given: Cell[] }>()
  const names = columns.map(quoted).join(', ')
  let usual: readonly Cell[] | undefined

  function prepared(count: number, differing: readonly number[], first: readonly Cell[]) {
    const key = `${count} ${differing.join(' ')}`
    const known = statements.get(key)
    if (known !== undefined) return known
    const places = columns.map((_, i) => {
      const place = differing.indexOf(i)
      return place === -1 ? constant(first[i] ?? null) : `column${place + 1}`
    })
    const row = `(${differing.map(() => '?').join(', ')})`
    const values = Array.from({ length: count }, () => row).join(', ')
    const sql = `INSERT INTO ${quoted(table)} (${names}) SELECT ${places.join(', ')} FROM (VALUES ${values})`
    const made = {
      run: db.prepare<unknown[]>(sql),
      given: Array.from({ length: count * differing.length }, (): Cell => null),
    }
    statements.set(key, made)
    return made
  }

  function write(some: readonly (readonly Cell[])[]): void {
    const [first] = some
    if (first === undefined) return
    usual ??= first
    const differing: number[] = []
    for (let i = 0; i < columns.length; i++) {
      const value = usual[i] ?? null
      const same = i > 0 && statements.size < mostStatements && isShort(value) && some.every(row => row[i] === value)
      if (!same) differing.push(i)
    }
    const { run, given } = prepared(some.length, differing, usual)
    let at = 0
    for (const row of some) for (const i of differing) given[at++] = row[i] ?? null
    run.run(given)
  }

  let some: (readonly Cell[])[] = []
  for (const row of rows) {
    some.push(row)
    if (some.length < together) continue
    write(some)
    some = []
  }
  write(some)
}

function isShort(value: Cell): boolean {
  return typeof value !== 'string' || value.length <= longestConstant
}

function constant(value: Cell): string {
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
      // A table may come in several batches.
      if (aside.some(({ name }) => name === one.name)) continue
      db.exec(`DROP ${kind} ${quoted(one.name)}`)
      aside.push(one)
    }
  }
  if (last(db, 'journal') < count) stand('INDEX', indexes(db, 'journal'))
  for (const batch of batches) {
    const { table, rows } = batch
    if (rows.length === 0) continue
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
        textTriggers(db).filter(({ name }) => name === 'text_work_i'),
      )
    if (before < rows.length) stand('INDEX', indexes(db, table))
    put(db, batch)
    db.prepare(
      `INSERT INTO journal(edit, tbl, key, op, data) SELECT ?, ${literal(table)}, id, 'i', NULL FROM ${quoted(table)} WHERE rowid > ? ORDER BY rowid`,
    ).run(edit, before)
    if (table === 'work') {
      const columns = textColumns(db).join(', ')
      db.prepare(`INSERT INTO work_fts(rowid, ${columns}) SELECT n, ${columns} FROM work WHERE n > ? ORDER BY n`).run(
        before,
      )
    }
  }
  for (const { sql } of aside) db.exec(sql)
}
