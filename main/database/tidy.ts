/** Removes, when a person asks, the kept files that neither the catalogue, its journal nor a kept backup names. */
import { statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { openStore } from '../files/store.ts'
import type { BackupWork } from './backup.ts'
import { backupFolder, listBackups } from './backup-files.ts'
import { asRefusal } from './faults.ts'
import { namedAnywhere } from './named-files.ts'

/** A file this young may have been kept for a row that is about to be written. */
const sparedFor = 60 * 60 * 1000

function namedIn(path: string): Set<string> {
  const db = new Database(path, { fileMustExist: true, timeout: 2000 })
  try {
    return namedAnywhere(db)
  } catch (error) {
    // What cannot be read may name anything: then nothing goes.
    throw asRefusal(error, path)
  } finally {
    db.close()
  }
}

/** `now` in milliseconds. Returns how many files went and their bytes. */
export async function tidyFiles(
  file: string,
  now: number,
  work: BackupWork = {},
): Promise<{ removed: number; bytes: number }> {
  const paths = [file, ...listBackups(file).map(({ key }) => join(backupFolder(file), key))]
  const named = new Set<string>()
  for (const [index, path] of paths.entries()) {
    work.signal?.throwIfAborted()
    work.progress?.(index, paths.length, 'Looking what is needed')
    for (const hash of namedIn(path)) named.add(hash)
  }
  const store = openStore(file)
  let removed = 0
  let bytes = 0
  for (const hash of store.hashes().filter(each => !named.has(each))) {
    work.signal?.throwIfAborted()
    const { size, mtimeMs } = statSync(store.path(hash))
    if (now - mtimeMs < sparedFor) continue
    store.remove(hash)
    removed++
    bytes += size
  }
  return { removed, bytes }
}
