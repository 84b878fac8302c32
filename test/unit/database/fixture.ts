/** A catalogue in a folder of its own, with a clock and ids that a test decides. */
import { createHash } from 'node:crypto'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { onTestFinished } from 'vitest'
import type { CatalogueClock } from '../../../main/database/catalogue.ts'
import { journaledTables } from '../../../main/database/tables.ts'
import { Refusal } from '../../../src/contract/refusal.ts'

export const ann = { id: 'ann', name: 'Ann' }
export const bo = { id: 'bo', name: 'Bo' }

export function testClock(prefix = 'id'): CatalogueClock {
  let seconds = 0
  let ids = 0
  return {
    now: () => new Date(Date.UTC(2031, 2, 1) + 1000 * seconds++).toISOString(),
    newId: () => `${prefix}${(ids++).toString(36).padStart(6, '0')}`,
  }
}

export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** A second look at the file, past our own code. */
export function look<T>(file: string, use: (db: Database.Database) => T): T {
  const db = new Database(file, { fileMustExist: true, timeout: 2000 })
  try {
    db.pragma('foreign_keys = ON')
    return use(db)
  } finally {
    db.close()
  }
}

/** All journaled tables, row by row, as text. */
export function dump(db: Database.Database): string {
  return journaledTables(db)
    .map(({ name }) => `${name}: ${JSON.stringify(db.prepare(`SELECT * FROM ${name} ORDER BY id`).raw().all())}`)
    .join('\n')
}

/** Throws where the text index and the works differ. */
export function checkText(db: Database.Database): void {
  db.prepare(`INSERT INTO work_fts(work_fts, rank) VALUES ('integrity-check', 1)`).run()
}

export function fingerprint(file: string): string {
  return createHash('sha256').update(readFileSync(file)).digest('hex')
}

export async function refusalOf(attempt: () => unknown): Promise<Refusal> {
  try {
    await attempt()
  } catch (error) {
    if (error instanceof Refusal) return error
    throw error
  }
  throw new Error('It was not refused')
}
