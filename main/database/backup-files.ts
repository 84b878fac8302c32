/** Where automatic backups lie, how they are named, and which are kept. */
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { basename, dirname, extname, join } from 'node:path'
import Database from 'better-sqlite3'
import { damaged } from './faults.ts'

export type Why = 'opening' | 'migration' | 'asked' | 'restore'

export interface Backup {
  /** The file's name in the folder of backups. */
  readonly key: string
  /** ISO 8601. */
  readonly at: string
  readonly bytes: number
  readonly why: Why
  /** The newest edit in it. */
  readonly edit: number
}

const form = /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)(\d{3})Z-(\d+)-(opening|migration|asked|restore)\.hangwright$/

/** `<name>.hangwright-backups`, beside the catalogue. */
export function backupFolder(file: string): string {
  return join(dirname(file), `${basename(file, extname(file))}.hangwright-backups`)
}

export function backupKey(at: string, edit: number, why: Why): string {
  return `${new Date(at).toISOString().replace(/[-:.]/g, '')}-${edit}-${why}.hangwright`
}

/** Newest first. Files that are not backups are left alone. */
export function listBackups(file: string): Backup[] {
  const folder = backupFolder(file)
  if (!existsSync(folder)) return []
  return readdirSync(folder)
    .flatMap(key => {
      const [, year, month, day, hour, minute, second, ms, edit, why] = form.exec(key) ?? []
      if (why === undefined) return []
      const { size } = statSync(join(folder, key))
      const at = `${year}-${month}-${day}T${hour}:${minute}:${second}.${ms}Z`
      return [{ key, at, bytes: size, why: why as Why, edit: Number(edit) }] // as the form allows
    })
    .sort((a, b) => (a.key < b.key ? 1 : -1))
}

const keptToday = 3
const keptInAll = 10

/**
 * Which automatic backups go: of those made at opening, three of today stay, the newest of each earlier day, ten in
 * all; of those made before a migration or a restore, the last five. What a person asked for is theirs to remove.
 */
export function outdated(backups: readonly Backup[], now: string): Backup[] {
  const today = now.slice(0, 10)
  const perDay = new Map<string, number>()
  let opening = 0
  let other = 0
  return backups.filter(({ at, why }) => {
    if (why === 'asked') return false
    if (why !== 'opening') return ++other > 5
    const day = at.slice(0, 10)
    const ofDay = (perDay.get(day) ?? 0) + 1
    perDay.set(day, ofDay)
    return ofDay > (day === today ? keptToday : 1) || ++opening > keptInAll
  })
}

export function prune(file: string, now: string): void {
  for (const { key } of outdated(listBackups(file), now)) rmSync(join(backupFolder(file), key), { force: true })
}

export function syncFile(path: string): void {
  const descriptor = openSync(path, 'r+')
  try {
    fsyncSync(descriptor)
  } finally {
    closeSync(descriptor)
  }
}

/** A file's name is safe only when its folder is written; Windows does so by itself and cannot open folders. */
export function syncFolder(folder: string): void {
  if (process.platform === 'win32') return
  const descriptor = openSync(folder, 'r')
  try {
    fsyncSync(descriptor)
  } finally {
    closeSync(descriptor)
  }
}

/** Makes a copy one plain file (no log beside it) and refuses it where it is not sound. */
export function sealCopy(path: string): void {
  const db = new Database(path, { fileMustExist: true, timeout: 2000 })
  try {
    db.pragma('journal_mode = DELETE')
    const verdict = db.pragma('quick_check(1)', { simple: true })
    if (verdict !== 'ok') throw damaged(path, String(verdict))
  } finally {
    db.close()
  }
  syncFile(path)
}

/** Before a migration, without waiting: opening needs it done. The copy is whole, since VACUUM INTO reads one state. */
export function backupBeforeMigration(db: Database.Database, file: string, version: number, at: string): string {
  const folder = backupFolder(file)
  mkdirSync(folder, { recursive: true })
  const edit = Number(db.prepare('SELECT coalesce(max(id), 0) FROM edit').pluck().get())
  const path = join(folder, backupKey(at, edit, 'migration'))
  const making = `${path}.${version}.making`
  try {
    rmSync(making, { force: true })
    db.prepare('VACUUM INTO ?').run(making)
    sealCopy(making)
    renameSync(making, path)
    syncFolder(folder)
  } finally {
    rmSync(making, { force: true })
  }
  return path
}
