/**
 * Brings a catalogue to this program's form: numbered migrations, all in one transaction with the version inside it.
 * Foreign keys are switched off before BEGIN (inside it does nothing, and rebuilding a parent table would delete its
 * children) and checked before COMMIT. Triggers are dropped first and made anew from the tables that result.
 */
import type Database from 'better-sqlite3'
import { dropTriggers, makeTriggers } from './triggers.ts'

export interface Migration {
  readonly version: number
  /** A few words with hyphens, as in the file's name. */
  readonly name: string
  readonly sql: string
  /** What SQL cannot say, such as a hash; after it, with no trigger in the way. */
  readonly fill?: (db: Database.Database) => void
}

/** "HANG": says that a SQLite file is a catalogue of ours. */
export const applicationId = 0x48414e47

export function newestVersion(migrations: readonly Migration[]): number {
  return migrations.at(-1)?.version ?? 0
}

export function versionOf(db: Database.Database): number {
  return Number(db.pragma('user_version', { simple: true }))
}

function checkOrder(migrations: readonly Migration[]): void {
  for (const [index, { version, name }] of migrations.entries()) {
    if (version !== index + 1) throw new Error(`Migration ${name} has number ${version} in place ${index + 1}`)
  }
}

/** Runs what is missing; returns how many. Whatever throws leaves the file as it was. */
export function migrate(db: Database.Database, migrations: readonly Migration[], now: () => string): number {
  checkOrder(migrations)
  if (versionOf(db) >= newestVersion(migrations)) return 0
  db.pragma('foreign_keys = OFF')
  try {
    db.exec('BEGIN IMMEDIATE')
    // Another program may have migrated while we waited for the lock.
    const pending = migrations.filter(({ version }) => version > versionOf(db))
    if (pending.length > 0) run(db, pending, now)
    db.exec('COMMIT')
    return pending.length
  } finally {
    // An error inside a transaction may have rolled it back already.
    if (db.inTransaction) db.exec('ROLLBACK')
    db.pragma('foreign_keys = ON')
  }
}

function run(db: Database.Database, pending: readonly Migration[], now: () => string): void {
  dropTriggers(db)
  for (const { version, name, sql, fill } of pending) {
    db.exec(sql)
    fill?.(db)
    // What was done before a migration stays: its entries speak of other columns.
    db.prepare(
      'INSERT INTO schema_step(version, name, at, last_edit) VALUES (?, ?, ?, (SELECT coalesce(max(id), 0) FROM edit))',
    ).run(version, name, now())
    db.pragma(`user_version = ${version}`)
  }
  db.pragma(`application_id = ${applicationId}`)
  makeTriggers(db)
  const broken = db.prepare<[], { readonly table: string }>('SELECT "table" FROM pragma_foreign_key_check').all()
  if (broken.length > 0) {
    throw new Error(`Migration leaves ${broken.length} rows that refer to nothing, first in ${broken[0]?.table}`)
  }
}
