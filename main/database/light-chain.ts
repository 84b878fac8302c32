/** The chain of readings of light, as movements have theirs (`record-chain.ts`, which says what it proves and what not). */
import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'

export interface ReadingRow {
  readonly id: string
  readonly work: string
  readonly at: string
  readonly points: string
  readonly lux: number
  readonly uv: number | null
  readonly meter: string
  readonly note: string
  readonly strikes: string | null
  readonly recorded_at: string
  readonly recorded_by: string
  readonly uv_area: number | null
}

/** In this order; a column that a later migration adds enters the hash only of rows that say something in it. */
const columns = [
  ...(['id', 'work', 'at', 'points', 'lux', 'uv', 'meter', 'note', 'strikes'] as const),
  ...(['recorded_at', 'recorded_by', 'uv_area'] as const),
]

/** SHA-256 over the hash before and what stands in the row; 64 hex figures. */
export function readingHash(before: string, reading: ReadingRow): string {
  const said = JSON.stringify([before, ...columns.map(column => reading[column])])
  return createHash('sha256').update(said).digest('hex')
}

type Chained = ReadingRow & { readonly hash: string }

function* links(db: Database.Database): Generator<readonly [Chained, string]> {
  let before = ''
  for (const reading of db.prepare<[], Chained>('SELECT * FROM light_reading ORDER BY rowid').all()) {
    before = readingHash(before, reading)
    yield [reading, before]
  }
}

/** The first reading that does not join the one before, with its work; null where all do. */
export function brokenReading(db: Database.Database): { readonly at: string; readonly title: string } | null {
  for (const [{ at, work, hash }, wanted] of links(db)) {
    if (hash === wanted) continue
    const title = db.prepare('SELECT title FROM work WHERE id = ?').pluck().get(work)
    return { at, title: typeof title === 'string' && title !== '' ? title : 'an untitled work' }
  }
  return null
}

/** Gives their hash to readings that came before there was a chain. */
export function chainReadings(db: Database.Database): void {
  const set = db.prepare('UPDATE light_reading SET hash = ? WHERE id = ?')
  for (const [{ id }, hash] of links(db)) set.run(hash, id)
}
