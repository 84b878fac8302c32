/**
 * The chains of damage: each record of a damage carries a hash over its own columns and the hash of the one before, and
 * so does each word on them. Who alters, inserts or takes out one past the triggers has to make every later one anew;
 * `check` finds the first that does not join. It proves neither who wrote it, nor that nobody made the whole chain anew.
 */
import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'

export interface DamageRow {
  readonly id: string
  readonly reference: string
  readonly work: string
  readonly found_at: string
  readonly reported_at: string
  readonly reporter: string
  readonly how: string
  readonly circumstances: string
  readonly report: string | null
  readonly recorded_at: string
  readonly recorded_by: string
}

export interface DamageWordRow {
  readonly id: string
  readonly damage: string
  readonly kind: string
  readonly at: string
  readonly whom: string
  readonly how: string
  readonly said: string
  readonly report: string | null
  readonly strikes: string | null
  readonly recorded_at: string
  readonly recorded_by: string
}

/** In this order; a column that a later migration adds enters the hash only of rows that say something in it. */
const columns = {
  damage: [
    ...(['id', 'reference', 'work', 'found_at', 'reported_at', 'reporter'] as const),
    ...(['how', 'circumstances', 'report', 'recorded_at', 'recorded_by'] as const),
  ],
  damage_word: [
    ...(['id', 'damage', 'kind', 'at', 'whom', 'how'] as const),
    ...(['said', 'report', 'strikes', 'recorded_at', 'recorded_by'] as const),
  ],
} as const
type Chained = keyof typeof columns
interface RowOf {
  readonly damage: DamageRow
  readonly damage_word: DamageWordRow
}

/** SHA-256 over the hash before and what stands in the row; 64 hex figures. */
export function damageHash<T extends Chained>(table: T, before: string, row: RowOf[T]): string {
  const said: Readonly<Record<string, unknown>> = { ...row }
  return createHash('sha256')
    .update(JSON.stringify([before, ...columns[table].map(column => said[column])]))
    .digest('hex')
}

function firstBroken<T extends Chained>(db: Database.Database, table: T): RowOf[T] | null {
  let before = ''
  const rows = db.prepare<[], RowOf[T] & { readonly hash: string }>(`SELECT * FROM ${table} ORDER BY rowid`)
  for (const row of rows.iterate()) {
    if (damageHash(table, before, row) !== row.hash) return row
    before = row.hash
  }
  return null
}

/** The reference of the first record that does not join, or of the first word on one; null where all do. */
export function brokenDamage(db: Database.Database): { readonly reference: string } | null {
  const record = firstBroken(db, 'damage')
  if (record !== null) return { reference: record.reference }
  const word = firstBroken(db, 'damage_word')
  if (word === null) return null
  const reference = db.prepare<[string], string>('SELECT reference FROM damage WHERE id = ?').pluck().get(word.damage)
  return { reference: reference ?? '' }
}
