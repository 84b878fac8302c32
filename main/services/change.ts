/**
 * Field by field: a change goes through where the value is still the one it was based on, and comes back as a clash
 * with both values where somebody else has changed it meanwhile. So two windows on one work lose nothing.
 */
import type * as z from 'zod'
import { Refusal } from '../../src/contract/refusal.ts'
import type { clash } from '../../src/contract/shared.ts'
import type { Writing } from './service.ts'
import { row, update, type Value } from './sql.ts'

export type Clash = z.output<typeof clash>
type Json = z.output<ReturnType<typeof z.json>>

/** How a field stands in the table. */
export interface Column {
  readonly column: string
  readonly read?: (stored: Value) => Json
  readonly write?: (value: Json) => Value
}
export type Columns = Readonly<Record<string, string | Column>>

/** Stored as JSON text. */
export function jsonColumn(column: string, empty: Json): Column {
  return {
    column,
    read: stored => (stored === null || stored === '' ? empty : JSON.parse(String(stored))),
    write: value => JSON.stringify(value),
  }
}

/** Stored as 0 or 1. */
export function yesNoColumn(column: string): Column {
  return { column, read: stored => stored === 1, write: value => (value === true ? 1 : 0) }
}

type Changes = Readonly<Record<string, { readonly was: unknown; readonly to: unknown } | undefined>>

export interface Changed {
  readonly saved: string[]
  readonly clashes: Clash[]
  /** What was written, by field. */
  readonly values: Readonly<Record<string, Json>>
}

/** Applies the changes to one row. Refuses `not-found`; a clash is part of the answer. */
export function changeFields(
  writing: Writing,
  table: string,
  id: string,
  changes: Changes,
  columns: Columns,
  what: string,
): Changed {
  const stored = row<Record<string, Value>>(writing.db, `SELECT * FROM ${table} WHERE id = :id`, { id })
  if (stored === undefined) throw notFound(what)
  const saved: string[] = []
  const clashes: Clash[] = []
  const values: Record<string, Json> = {}
  const set: Record<string, Value> = {}
  for (const [field, change] of Object.entries(changes)) {
    const named = columns[field]
    if (change === undefined || named === undefined) continue
    const column: Column = typeof named === 'string' ? { column: named } : named
    const now = stored[column.column] ?? null
    const theirs = column.read ? column.read(now) : now
    // Both come out of JSON schemas.
    const was = change.was as Json
    const to = change.to as Json
    if (same(theirs, was) || same(theirs, to)) {
      saved.push(field)
      values[field] = to
      set[column.column] = column.write ? column.write(to) : (to as Value) // plain columns hold plain values
    } else clashes.push({ code: 'clash', id, field, was, yours: to, theirs })
  }
  update(writing.db, table, id, set)
  return { saved, clashes, values }
}

export function same(a: unknown, b: unknown): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

export function notFound(what: string, field = 'id'): Refusal {
  return new Refusal('not-found', `There is no such ${what} any more.`, { field })
}
