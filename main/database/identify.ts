/**
 * Looks at a file before SQLite opens it for writing, and refuses what is not ours, newer, damaged, read-only or on a
 * network share. It reads the bytes itself: SQLite would fold a left-over log into the file when it closes it.
 */
import { accessSync, closeSync, constants, existsSync, fstatSync, openSync, readSync, rmSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'
import { asRefusal, damaged, isDamage, readOnly } from './faults.ts'
import { applicationId } from './migrate.ts'
import { networkShare } from './network.ts'

/** Above this a whole check takes too long for opening; `check` and every backup do it. */
const checkedWhole = 32 * 1024 * 1024

interface Header {
  readonly pageSize: number
  readonly pages: number
  readonly version: number
  readonly application: number
}

function notOurs(file: string, what: string): Refusal {
  return new Refusal('not-a-catalogue', `This file is not a catalogue of Hangwright: ${what}. It was left as it is.`, {
    details: { file },
  })
}

/** The file format's page 1, "Database Header": sqlite.org/fileformat2.html section 1.3. */
function parseHeader(page: Buffer): Header {
  const size = page.readUInt16BE(16)
  return {
    pageSize: size === 1 ? 65536 : size,
    pages: page.readUInt32BE(28),
    version: page.readUInt32BE(60),
    application: page.readUInt32BE(68),
  }
}

function readAt(descriptor: number, length: number, position: number): Buffer {
  const bytes = Buffer.alloc(length)
  return bytes.subarray(0, readSync(descriptor, bytes, 0, length, position))
}

/** Page 1 as the write-ahead log last has it; undefined where the log has none. sqlite.org/fileformat2.html section 4. */
function headerInLog(file: string): Header | undefined {
  if (!existsSync(`${file}-wal`)) return undefined
  const log = openSync(`${file}-wal`, 'r')
  try {
    const head = readAt(log, 32, 0)
    if (head.length < 32) return undefined
    const pageSize = head.readUInt32BE(8)
    let found: Header | undefined
    let waiting: Header | undefined
    for (let at = 32; ; at += 24 + pageSize) {
      const frame = readAt(log, 24 + 100, at)
      // Frames with another salt are left over from an earlier round of the log.
      if (frame.length < 124 || !frame.subarray(8, 16).equals(head.subarray(16, 24))) return found
      if (frame.readUInt32BE(0) === 1) waiting = parseHeader(frame.subarray(24))
      // A frame that says the size of the file ends a commit.
      if (frame.readUInt32BE(4) !== 0) found = waiting ?? found
    }
  } finally {
    closeSync(log)
  }
}

function readHeader(file: string): Header {
  let descriptor: number
  try {
    descriptor = openSync(file, 'r')
  } catch (error) {
    throw asRefusal(error, file)
  }
  try {
    const { size } = fstatSync(descriptor)
    if (size === 0) throw notOurs(file, 'it is empty')
    const first = readAt(descriptor, 100, 0)
    if (first.toString('latin1', 0, 16) !== 'SQLite format 3\0' || first.length < 100) {
      throw notOurs(file, 'it is of another kind')
    }
    const header = parseHeader(first)
    if (header.application !== applicationId) throw notOurs(file, 'it belongs to another program')
    const inLog = headerInLog(file)
    if (inLog === undefined && header.pages > 0 && size < header.pages * header.pageSize) {
      throw damaged(file, `${header.pages * header.pageSize - size} bytes are missing at its end`)
    }
    return inLog ?? header
  } finally {
    closeSync(descriptor)
  }
}

function checkRights(file: string): void {
  try {
    accessSync(file, constants.R_OK | constants.W_OK)
    accessSync(dirname(file), constants.W_OK)
  } catch {
    throw readOnly(file)
  }
}

/** Reads it through a connection that cannot write and leaves nothing behind. */
function checkContent(file: string): void {
  const sides = [`${file}-wal`, `${file}-shm`].filter(side => !existsSync(side))
  const whole = statSync(file).size <= checkedWhole
  let sound = false
  try {
    const db = new Database(file, { readonly: true, fileMustExist: true, timeout: 2000 })
    try {
      db.prepare('SELECT count(*) FROM sqlite_schema').get()
      db.prepare('SELECT max(id) FROM edit').get()
      db.prepare('SELECT max(seq) FROM journal').get()
      const verdict = whole ? db.pragma('quick_check(1)', { simple: true }) : 'ok'
      if (verdict !== 'ok') throw damaged(file, String(verdict))
      sound = true
    } finally {
      db.close()
    }
  } catch (error) {
    if (error instanceof Database.SqliteError && error.code === 'SQLITE_ERROR')
      throw damaged(file, 'tables are missing')
    throw isDamage(error) ? damaged(file, 'its pages contradict each other') : asRefusal(error, file)
  } finally {
    if (!sound) for (const side of sides) rmSync(side, { force: true })
  }
}

export function refuseNetworkShare(file: string): void {
  const share = networkShare(dirname(file))
  if (share !== null) {
    throw new Refusal(
      'network-share',
      `This folder is on a network share (${share}), where a catalogue cannot be kept safe. Copy it to a disk of this machine.`,
      { details: { file, share } },
    )
  }
}

/** Returns the version of the catalogue, or refuses with the file untouched. */
export function identify(file: string, newest: number): number {
  if (!existsSync(file)) {
    throw new Refusal('missing-catalogue', 'There is no file of this name. It may have been moved or renamed.', {
      details: { file },
    })
  }
  if (!statSync(file).isFile()) throw notOurs(file, 'it is a folder')
  refuseNetworkShare(file)
  const { version } = readHeader(file)
  if (version > newest) {
    throw new Refusal(
      'newer-catalogue',
      'This catalogue was last opened by a newer Hangwright. It was left as it is. Open it with that version.',
      { details: { file, version, newest } },
    )
  }
  if (version === 0) throw notOurs(file, 'it was never finished')
  checkRights(file)
  checkContent(file)
  return version
}
