/** Rows as they are or were: what a table's row is called, what belongs to a record, what an addition wrote. */
import { dictionary } from '../../../src/dictionary/dictionary.ts'
import type { StoredTable } from '../../../src/dictionary/rows.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type Entry, entriesOf, type Json, type Row, removedFromAny } from '../../database/history.ts'
import { schemaOf } from '../../database/schema.ts'
import { quoted } from '../../database/tables.ts'

export interface Kept {
  readonly table: string
  readonly key: string
}

/** Columns that people know a row by, the best first. */
const names = ['title', 'name', 'word', 'text', 'label', 'number'] as const

/** A row now, or as it was when it was removed; null where neither is known. */
export function rowOf(db: ReadHandle, { table, key }: Kept, entries?: readonly Entry[]): Row | null {
  const now = db.prepare(`SELECT * FROM ${quoted(table)} WHERE id = ?`).get(key) as Row | undefined // one row
  if (now !== undefined) return now
  const gone = (entries ?? entriesOf(db, table, key)).findLast(({ kind }) => kind === 'removed')
  return gone === undefined ? null : beforeOf(gone)
}

const beforeOf = ({ fields }: Entry): Row =>
  Object.fromEntries(Object.entries(fields).map(([column, [before]]) => [column, before]))

/** The schema once a question, with what refers to what. */
export class Rows {
  private readonly db: ReadHandle
  private readonly tables: ReadonlyMap<string, StoredTable>
  private readonly called = new Map<string, string>()

  constructor(db: ReadHandle) {
    this.db = db
    this.tables = new Map(schemaOf(db).map(table => [table.name, table]))
  }

  known(table: string): boolean {
    return this.tables.has(table)
  }

  /** The table whose key a column holds; '' where it holds none. */
  refers(table: string, column: string): string {
    return this.tables.get(table)?.columns.find(({ name }) => name === column)?.refers ?? ''
  }

  /** What people know a row by: its own name, else that of the record it belongs to; '' where nobody named either. */
  name(kept: Kept, deep = 3): string {
    const known = this.called.get(`${kept.table} ${kept.key}`)
    if (known !== undefined) return known
    const row = this.known(kept.table) ? rowOf(this.db, kept) : null
    const own = names.map(column => row?.[column]).find(value => typeof value === 'string' && value !== '')
    const within = dictionary[kept.table]?.within ?? ''
    const around = row === null ? null : row[within]
    const name =
      typeof own === 'string'
        ? own
        : typeof around === 'string' && deep > 0
          ? this.name({ table: this.refers(kept.table, within), key: around }, deep - 1)
          : ''
    this.called.set(`${kept.table} ${kept.key}`, name)
    return name
  }

  /** The record and everything that is or was a part of it, at any depth. */
  belonging(record: Kept): readonly Kept[] {
    const all: Kept[] = [record]
    let parents = new Map([[record.table, [record.key]]])
    while (parents.size > 0) {
      const next = new Map<string, string[]>()
      for (const { name, columns } of this.tables.values()) {
        const within = dictionary[name]?.within ?? ''
        const column = columns.find(one => one.name === within)
        if (column === undefined) continue
        // A document names the record alone: keys are one for the whole catalogue.
        const owners = column.refers === '' ? [...parents.values()].flat() : (parents.get(column.refers) ?? [])
        const keys = owners.length === 0 ? [] : this.within(name, within, owners)
        if (keys.length > 0) next.set(name, keys)
        all.push(...keys.map(key => ({ table: name, key })))
      }
      parents = next
    }
    return all
  }

  private within(table: string, column: string, owners: readonly string[]): string[] {
    const now = this.db
      .prepare(
        `SELECT id FROM ${quoted(table)} WHERE ${quoted(column)} IN (SELECT value FROM json_each(?)) ORDER BY id`,
      )
      .pluck()
      .all(JSON.stringify(owners)) as string[] // the select list
    return [...new Set([...now, ...removedFromAny(this.db, table, owners)])]
  }
}

/**
 * What an addition wrote, told backwards from what the row is now or was at its end: `later` are the entries of the
 * same row after it, oldest first.
 */
export function writtenBy(later: readonly Entry[], last: Row | null): Row {
  const row: Record<string, Json> = { ...last }
  // Removed and added again, it is what it was at the first end.
  const end = later.findIndex(({ kind }) => kind !== 'changed')
  const until = end === -1 ? later : later.slice(0, end)
  const ended = later[end]
  if (ended?.kind === 'removed') Object.assign(row, beforeOf(ended))
  for (const { fields } of [...until].reverse()) {
    for (const [column, [before]] of Object.entries(fields)) row[column] = before
  }
  return row
}
