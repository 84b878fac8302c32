/** Small typed access to SQLite: statements are prepared once a connection; a row's shape is the query's own. */
import type { ReadHandle, WriteHandle } from '../database/handles.ts'

export type Value = string | number | null
type Parameters = Readonly<Record<string, Value>>

const prepared = new WeakMap<object, Map<string, ReturnType<ReadHandle['prepare']>>>()

function statement(db: ReadHandle, sql: string) {
  let known = prepared.get(db)
  if (known === undefined) {
    known = new Map()
    prepared.set(db, known)
  }
  let found = known.get(sql)
  if (found === undefined) {
    found = db.prepare(sql)
    known.set(sql, found)
  }
  return found
}

/** All rows. The caller names the row's shape: it is the select list written beside it. */
export function rows<R>(db: ReadHandle, sql: string, parameters: Parameters = {}): R[] {
  return statement(db, sql).all(parameters) as R[] // the select list is the type
}

export function row<R>(db: ReadHandle, sql: string, parameters: Parameters = {}): R | undefined {
  return statement(db, sql).get(parameters) as R | undefined // the select list is the type
}

/** The first column of the first row. */
export function value<V>(db: ReadHandle, sql: string, parameters: Parameters = {}): V | undefined {
  const found = row<Record<string, V>>(db, sql, parameters)
  return found === undefined ? undefined : Object.values(found)[0]
}

const plucked = new WeakMap<object, Map<string, ReturnType<ReadHandle['prepare']>>>()

/** The first column of all rows, as whole numbers: 70,000 of them cost a few milliseconds, which rows would not. */
export function numbers(db: ReadHandle, sql: string, parameters: Parameters = {}): Int32Array {
  let known = plucked.get(db)
  if (known === undefined) {
    known = new Map()
    plucked.set(db, known)
  }
  // Kept apart from the other statements: plucking is a state of the statement.
  const found = known.get(sql) ?? db.prepare(sql).pluck()
  known.set(sql, found)
  return Int32Array.from(found.all(parameters) as number[]) // the select list is one whole number
}

/** How many rows it changed. */
export function run(db: WriteHandle, sql: string, parameters: Parameters = {}): number {
  return statement(db, sql).run(parameters).changes
}

/** Inserts one row, its columns named. */
export function insert(db: WriteHandle, table: string, columns: Parameters): void {
  const names = Object.keys(columns)
  run(db, `INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map(name => `:${name}`).join(', ')})`, columns)
}

/** Changes the named columns of one row. */
export function update(db: WriteHandle, table: string, id: string, columns: Parameters): void {
  const names = Object.keys(columns)
  if (names.length === 0) return
  run(db, `UPDATE ${table} SET ${names.map(name => `${name} = :${name}`).join(', ')} WHERE id = :id`, {
    ...columns,
    id,
  })
}

/** Removes one row; what hangs on it must have gone before, or go with it by its own rule. */
export function remove(db: WriteHandle, table: string, id: string): void {
  run(db, `DELETE FROM ${table} WHERE id = :id`, { id })
}
