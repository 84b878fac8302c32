/**
 * The chain of loggers' files: each carries a hash over its own row, its days of readings and the hash of the one
 * before, as movements do (`record-chain.ts`, which says what that proves and what not). A reading that was altered
 * past the triggers is found by its file.
 */
import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'

export interface ClimateFileRow {
  readonly id: string
  readonly room: string
  readonly room_words: string
  readonly name: string
  readonly file_hash: string
  readonly logger: string
  readonly read_as: string
  readonly told: string
  readonly count: number
  readonly first: string
  readonly last: string
  readonly note: string
  readonly withdraws: string | null
  readonly recorded_at: string
  readonly recorded_by: string
}

export interface ClimateDayRow {
  readonly id: string
  readonly day: number
  readonly seconds: string
  readonly celsius: string
  readonly humidity: string
  readonly count: number
}

/** In this order; a column that a later migration adds enters the hash only of rows that say something in it. */
const ofFile = [
  ...(['id', 'room', 'room_words', 'name', 'file_hash', 'logger', 'read_as', 'told'] as const),
  ...(['count', 'first', 'last', 'note', 'withdraws', 'recorded_at', 'recorded_by'] as const),
] as const
const ofDay = ['id', 'day', 'seconds', 'celsius', 'humidity', 'count'] as const

/** SHA-256 over the hash before, what stands in the row, and its days line by line; 64 hex figures. */
export function climateHash(before: string, file: ClimateFileRow, days: Iterable<ClimateDayRow>): string {
  const sum = createHash('sha256').update(JSON.stringify([before, ...ofFile.map(column => file[column])]))
  for (const day of days) sum.update(`\n${JSON.stringify(ofDay.map(column => day[column]))}`)
  return sum.digest('hex')
}

type Chained = ClimateFileRow & { readonly hash: string }

function* links(db: Database.Database): Generator<readonly [Chained, string]> {
  const days = db.prepare<[string], ClimateDayRow>('SELECT * FROM climate_day WHERE file = ? ORDER BY rowid')
  let before = ''
  for (const file of db.prepare<[], Chained>('SELECT * FROM climate_file ORDER BY rowid').all()) {
    before = climateHash(before, file, days.iterate(file.id))
    yield [file, before]
  }
}

/** The first file that does not join the one before; null where all do. */
export function brokenClimate(db: Database.Database): { readonly name: string; readonly room: string } | null {
  for (const [{ name, room_words, hash }, wanted] of links(db)) if (hash !== wanted) return { name, room: room_words }
  return null
}

/** Gives their hash to files that came before there was a chain. */
export function chainClimate(db: Database.Database): void {
  const set = db.prepare('UPDATE climate_file SET hash = ? WHERE id = ?')
  for (const [{ id }, hash] of links(db)) set.run(hash, id)
}
