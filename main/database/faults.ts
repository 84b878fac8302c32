/** Turns the faults of the machine (no room, no right, another writer, a damaged file) into refusals with a code. */
import Database from 'better-sqlite3'
import { Refusal } from '../../src/contract/refusal.ts'

function codeOf(error: unknown): string {
  if (error instanceof Database.SqliteError) return error.code
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code
  return ''
}

export function isBusy(error: unknown): boolean {
  const code = codeOf(error)
  return code.startsWith('SQLITE_BUSY') || code === 'SQLITE_LOCKED'
}

export function isConstraint(error: unknown): boolean {
  return codeOf(error).startsWith('SQLITE_CONSTRAINT')
}

export function isDamage(error: unknown): boolean {
  const code = codeOf(error)
  return code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB'
}

export function busy(): Refusal {
  return new Refusal(
    'catalogue-busy',
    'Another program has been writing to this catalogue for 10 seconds. Nothing was changed. Wait for it to finish, or close it, and try again.',
  )
}

export function damaged(file: string, what: string): Refusal {
  return new Refusal(
    'damaged-catalogue',
    `This catalogue is damaged (${what}). It was left as it is. Restore a backup, or open a copy kept elsewhere.`,
    { details: { file, what } },
  )
}

export function readOnly(file: string): Refusal {
  return new Refusal(
    'read-only-catalogue',
    'This catalogue, or the folder it is in, cannot be written to. Copy it to a folder of your own, or have its rights changed.',
    { details: { file } },
  )
}

export function diskFull(file: string): Refusal {
  return new Refusal('disk-full', 'The disk is full. Nothing was changed. Make room and try again.', {
    details: { file },
  })
}

/** The refusal for a fault of the machine, or the error itself where it is none. */
export function asRefusal(error: unknown, file: string): unknown {
  if (error instanceof Refusal) return error
  const code = codeOf(error)
  if (isBusy(error)) return busy()
  if (code === 'SQLITE_FULL' || code === 'SQLITE_IOERR_SHMSIZE' || code === 'ENOSPC' || code === 'EDQUOT')
    return diskFull(file)
  if (code.startsWith('SQLITE_READONLY') || code === 'EACCES' || code === 'EPERM' || code === 'EROFS')
    return readOnly(file)
  if (isDamage(error))
    return damaged(
      file,
      code === 'SQLITE_NOTADB' ? 'its pages are not a database’s' : 'its pages contradict each other',
    )
  if (code.startsWith('SQLITE_IOERR')) {
    return new Refusal(
      'disk-fault',
      'The disk did not read or write as it should. Nothing was changed. Check the disk, then open the catalogue again.',
      { details: { file, code } },
    )
  }
  return error
}
