/**
 * Backups while the catalogue is in use, by SQLite's online backup, each checked before it counts; and their way back,
 * which first puts aside what is there. All of it is safe to run in a worker.
 */
import { copyFileSync, existsSync, linkSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'
import { refuseNoFolder } from '../files/named-places.ts'
import { hashOf, openStore } from '../files/store.ts'
import {
  backupFolder,
  backupKey,
  listBackups,
  prune,
  sealCopy,
  syncFile,
  syncFolder,
  type Why,
} from './backup-files.ts'
import { filesFolder } from './catalogue.ts'
import { asRefusal, busy, damaged, isBusy, isDamage } from './faults.ts'
import { namedInRows } from './named-files.ts'

export { type Backup, listBackups } from './backup-files.ts'

export interface BackupWork {
  readonly progress?: (done: number, total: number | null, words: string) => void
  readonly signal?: AbortSignal
}

/** Copied between two looks at the signal: about 4 MB. */
const pagesAStep = 1024

async function copyWhileInUse(db: Database.Database, to: string, work: BackupWork): Promise<void> {
  const making = `${to}.making`
  try {
    rmSync(making, { force: true })
    await db.backup(making, {
      progress({ totalPages, remainingPages }) {
        work.signal?.throwIfAborted()
        work.progress?.(totalPages - remainingPages, totalPages, 'Copying the catalogue')
        return pagesAStep
      },
    })
    work.signal?.throwIfAborted()
    sealCopy(making)
    renameSync(making, to)
    syncFolder(dirname(to))
  } finally {
    for (const side of ['', '-journal', '-wal', '-shm']) rmSync(`${making}${side}`, { force: true })
  }
}

async function reading<T>(file: string, use: (db: Database.Database) => Promise<T> | T): Promise<T> {
  const db = new Database(file, { fileMustExist: true, timeout: 0 })
  try {
    return await use(db)
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    db.close()
  }
}

function newestEdit(db: Database.Database): number {
  return Number(db.prepare('SELECT coalesce(max(id), 0) FROM edit').pluck().get())
}

/** Makes an automatic backup and removes outdated ones. Returns its key. */
export async function backupNow(file: string, why: Why, now: string, work: BackupWork = {}): Promise<string> {
  return reading(file, async db => {
    const folder = backupFolder(file)
    mkdirSync(folder, { recursive: true })
    const key = backupKey(now, newestEdit(db), why)
    await copyWhileInUse(db, join(folder, key), work)
    prune(file, now)
    return key
  })
}

/** At every opening: a backup if there was an edit since the last one. Null where there was none. */
export async function backupIfChanged(file: string, now: string, work: BackupWork = {}): Promise<string | null> {
  const edit = await reading(file, newestEdit)
  // After a restore the newest edit may be older than a backup's: what counts is another one, not a later one.
  if (edit === 0 || listBackups(file)[0]?.edit === edit) return null
  return backupNow(file, 'opening', now, work)
}

export interface BackedUp {
  readonly file: string
  readonly bytes: number
  readonly works: number
  readonly files: number
  readonly fileBytes: number
  /** Hashes of files that the catalogue names and that are missing or altered. */
  readonly missing: string[]
}

/** A copy of the catalogue with its files folder, every hash verified as copied. Refuses to replace anything, and `no-such-folder`. */
export async function backupTo(from: { readonly file: string }, to: string, work: BackupWork = {}): Promise<BackedUp> {
  const file = resolve(to)
  for (const there of [file, filesFolder(file)]) {
    if (existsSync(there)) {
      throw new Refusal('file-exists', `There is something named ${basename(there)} already. Choose another name.`, {
        field: 'file',
      })
    }
  }
  refuseNoFolder(dirname(file), 'file')
  let done = false
  try {
    await reading(from.file, db => copyWhileInUse(db, file, work))
    const copy = await reading(file, db => ({
      works: Number(db.prepare('SELECT count(*) FROM work').pluck().get()),
      hashes: [...namedInRows(db)].sort(),
    }))
    const kept = await copyFiles(from.file, file, copy.hashes, work)
    done = true
    return { file, bytes: statSync(file).size, works: copy.works, ...kept }
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    if (!done) {
      rmSync(file, { force: true })
      rmSync(filesFolder(file), { recursive: true, force: true })
    }
  }
}

async function copyFiles(from: string, to: string, hashes: readonly string[], work: BackupWork) {
  const source = openStore(from)
  const target = openStore(to)
  const missing: string[] = []
  let fileBytes = 0
  for (const [index, hash] of hashes.entries()) {
    work.signal?.throwIfAborted()
    work.progress?.(index, hashes.length, 'Copying pictures and documents')
    const there = source.path(hash)
    if (!existsSync(there) || (await hashOf(there)) !== hash) {
      missing.push(hash)
      continue
    }
    const kept = await target.add(there)
    if ((await hashOf(target.path(hash))) !== hash)
      throw damaged(target.path(hash), 'a copied file differs from its original')
    fileBytes += kept.bytes
  }
  return { files: hashes.length - missing.length, fileBytes, missing }
}

/** Folds the log into the file, which SQLite allows only while nobody else has it open; null for a damaged file. */
function newestEditAlone(file: string): number | null {
  try {
    const db = new Database(file, { fileMustExist: true, timeout: 0 })
    try {
      const edit = newestEdit(db)
      db.pragma('journal_mode = DELETE')
      return edit
    } finally {
      db.close()
    }
  } catch (error) {
    if (isBusy(error)) throw busy()
    if (isDamage(error) || (error instanceof Database.SqliteError && error.code === 'SQLITE_ERROR')) return null
    throw asRefusal(error, file)
  }
}

/**
 * Opens a copy of a backup in place of the catalogue, which must be closed here and elsewhere. What is there now is put
 * aside among the backups first, so that this too can be taken back. Returns where it was put.
 */
export async function restoreBackup(file: string, key: string, now: string): Promise<string> {
  if (!listBackups(file).some(backup => backup.key === key)) {
    throw new Refusal('not-found', 'There is no such backup any more.', { field: 'key' })
  }
  const making = `${file}.restoring`
  try {
    copyFileSync(join(backupFolder(file), key), making)
    sealCopy(making)
    const edit = existsSync(file) ? newestEditAlone(file) : null
    const aside = join(
      backupFolder(file),
      edit === null ? `${backupKey(now, 0, 'restore')}.damaged` : backupKey(now, edit, 'restore'),
    )
    if (existsSync(file)) putAside(file, aside)
    renameSync(making, file)
    syncFolder(dirname(file))
    return aside
  } catch (error) {
    throw asRefusal(error, file)
  } finally {
    rmSync(making, { force: true })
  }
}

function putAside(file: string, aside: string): void {
  try {
    linkSync(file, aside)
  } catch {
    copyFileSync(file, aside) // a disk without links
  }
  syncFile(aside)
  syncFolder(dirname(aside))
  // A damaged file's log goes with it; a sound file has none any more.
  for (const side of ['-wal', '-shm']) if (existsSync(`${file}${side}`)) renameSync(`${file}${side}`, `${aside}${side}`)
}
