/**
 * A catalogue moves with everything that is its own: pictures and documents, automatic backups, itself last. On one disk
 * it is renamed; onto another it is copied, each copy held against its original, and only then taken away where it was.
 * Whatever goes wrong or is cancelled before that leaves it where it was, whole.
 */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { copyFile } from 'node:fs/promises'
import { basename, dirname, isAbsolute, join } from 'node:path'
import Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'
import { refuseNoFolder } from '../files/named-places.ts'
import { savedName } from '../files/names.ts'
import { hashOf, openStore } from '../files/store.ts'
import type { BackupWork } from './backup.ts'
import { backupFolder, syncFile, syncFolder } from './backup-files.ts'
import { filesFolder } from './catalogue.ts'
import { asRefusal, damaged, isBusy } from './faults.ts'
import { refuseNetworkShare } from './identify.ts'
import { namedInRows } from './named-files.ts'

export interface MoveOptions extends BackupWork {
  /** For tests: copies even where the disk is the same. */
  readonly copies?: boolean
}

export interface PreparedMove {
  /** How many of the files that the catalogue names are there and as they were kept. */
  readonly files: number
  /** Hashes of files that it names and that are missing or altered. */
  readonly missing: readonly string[]
  /** The catalogue must be closed here. Refuses `catalogue-in-use`. Where it throws, the catalogue is where it was. */
  readonly finish: () => Promise<void>
  /** Takes away what was copied; the catalogue is where it was. */
  readonly drop: () => void
}

/** Where a catalogue of this name stands in a folder. Refuses `bad-input`, `no-such-folder`, `file-exists`. */
export function placeIn(folder: string, name: string): string {
  if (!isAbsolute(folder)) {
    throw new Refusal('bad-input', 'Say the folder in full, from the disk or the root on.', { field: 'folder' })
  }
  refuseNoFolder(folder, 'folder')
  const file = join(folder, `${savedName(name.replace(/\.hangwright$/i, ''))}.hangwright`)
  for (const there of [file, filesFolder(file), backupFolder(file)]) {
    if (existsSync(there)) {
      throw new Refusal('file-exists', `There is something named ${basename(there)} in that folder already.`, {
        field: 'name',
      })
    }
  }
  return file
}

/** What belongs to a catalogue beside itself, where it stands and where it will. */
function foldersOf(from: string, to: string): readonly (readonly [string, string])[] {
  return [filesFolder, backupFolder].map(of => [of(from), of(to)] as const).filter(([folder]) => existsSync(folder))
}

/** Verifies every file, while the catalogue is in use; onto another disk it also copies what never changes. */
export async function prepareMove(from: string, to: string, options: MoveOptions = {}): Promise<PreparedMove> {
  refuseNetworkShare(to)
  const copies = options.copies === true || statSync(dirname(from)).dev !== statSync(dirname(to)).dev
  const verified = await verify(from, options)
  if (!copies) {
    return {
      ...verified,
      async finish() {
        closed(from).close()
        rename(from, to)
      },
      drop: () => {},
    }
  }
  const drop = () => {
    for (const made of [to, filesFolder(to), backupFolder(to)]) rmSync(made, { recursive: true, force: true })
  }
  try {
    await copyFolders(from, to, options)
  } catch (error) {
    drop()
    throw asRefusal(error, to)
  }
  return {
    ...verified,
    drop,
    async finish() {
      // Nobody else can open it until it is gone from here.
      const held = closed(from)
      try {
        held.exec('BEGIN EXCLUSIVE')
        // What was added meanwhile.
        await copyFolders(from, to, options)
        await copyVerified(from, to)
        syncFolder(dirname(to))
        held.close()
        rmSync(from)
      } catch (error) {
        drop()
        throw asRefusal(error, to)
      } finally {
        held.close()
      }
      // It has moved: what cannot be cleared away is left over, and no fault any more.
      for (const [folder] of foldersOf(from, to)) leniently(() => rmSync(folder, { recursive: true, force: true }))
      leniently(() => syncFolder(dirname(from)))
    },
  }
}

async function verify(file: string, work: BackupWork): Promise<{ files: number; missing: string[] }> {
  const store = openStore(file)
  const db = new Database(file, { fileMustExist: true, timeout: 0 })
  let hashes: string[]
  try {
    hashes = [...namedInRows(db)].sort()
  } finally {
    db.close()
  }
  const missing: string[] = []
  for (const [index, hash] of hashes.entries()) {
    work.signal?.throwIfAborted()
    work.progress?.(index, hashes.length, 'Verifying pictures and documents')
    const path = store.path(hash)
    if (!existsSync(path) || (await hashOf(path)) !== hash) missing.push(hash)
  }
  return { files: hashes.length - missing.length, missing }
}

/** A connection to a catalogue that nobody else has open, its log folded into it. */
function closed(file: string): Database.Database {
  const db = new Database(file, { fileMustExist: true, timeout: 0 })
  try {
    db.pragma('journal_mode = DELETE')
    return db
  } catch (error) {
    db.close()
    if (!isBusy(error)) throw asRefusal(error, file)
    throw new Refusal(
      'catalogue-in-use',
      'Another program, or work that is still going on, has this catalogue open. Nothing was moved. Wait for it or close it, then move the catalogue.',
    )
  }
}

/** All or nothing: the catalogue itself goes last, and what went before it comes back if it cannot. */
function rename(from: string, to: string): void {
  const moved: (readonly [string, string])[] = []
  try {
    for (const [folder, place] of [...foldersOf(from, to), [from, to] as const]) {
      renameSync(folder, place)
      moved.push([folder, place])
    }
  } catch (error) {
    for (const [folder, place] of moved.reverse()) renameSync(place, folder)
    throw asRefusal(error, to)
  }
  for (const parent of [dirname(to), dirname(from)]) leniently(() => syncFolder(parent))
}

function leniently(step: () => void): void {
  try {
    step()
  } catch {
    // The catalogue stands where it shall; a folder that could not be synced or cleared takes nothing from it.
  }
}

async function copyFolders(from: string, to: string, work: BackupWork): Promise<void> {
  const all = foldersOf(from, to).flatMap(([folder, place]) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter(entry => entry.isFile() && !entry.name.endsWith('.making'))
      .map(({ parentPath, name }) => {
        const path = join(parentPath, name)
        return [path, join(place, path.slice(folder.length))] as const
      }),
  )
  for (const [index, [path, place]] of all.entries()) {
    work.signal?.throwIfAborted()
    work.progress?.(index, all.length, 'Copying pictures, documents and backups')
    if (existsSync(place)) continue
    mkdirSync(dirname(place), { recursive: true })
    await copyVerified(path, place)
  }
}

/** Under its name only when it is whole and on the disk. */
async function copyVerified(from: string, to: string): Promise<void> {
  const making = `${to}.making`
  try {
    await copyFile(from, making)
    syncFile(making)
    if ((await hashOf(making)) !== (await hashOf(from))) throw damaged(to, 'a copied file differs from its original')
    renameSync(making, to)
  } finally {
    rmSync(making, { force: true })
  }
}
