/** The catalogues opened lately on this machine, newest first, with who sat at each last: a small file of the user's. */
import { createHash } from 'node:crypto'
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { join, resolve } from 'node:path'
import * as z from 'zod'
import { syncFile } from './backup-files.ts'

const recent = z.strictObject({
  key: z.string(),
  file: z.string(),
  openedAt: z.string(),
  person: z.string().optional(),
})
const list = z.array(recent)

export interface Recent {
  readonly key: string
  readonly file: string
  /** ISO 8601. */
  readonly openedAt: string
  readonly person?: string | undefined
}

const kept = 20

function listFile(data: string): string {
  return join(data, 'recent.json')
}

/** A list that is missing or cannot be read is empty: nothing of the user's work hangs on it. */
export function recentCatalogues(data: string): Recent[] {
  try {
    return list.parse(JSON.parse(readFileSync(listFile(data), 'utf8')))
  } catch {
    return []
  }
}

/** Puts a catalogue on top. Without a person, the one who sat at it last stays. */
export function rememberCatalogue(data: string, given: string, openedAt: string, person?: string): void {
  const file = resolve(given)
  const before = recentCatalogues(data)
  const who = person ?? before.find(each => each.file === file)?.person
  const key = createHash('sha256').update(file).digest('hex').slice(0, 16)
  const top: Recent = { key, file, openedAt, ...(who === undefined ? {} : { person: who }) }
  write(data, [top, ...before.filter(each => each.file !== file)].slice(0, kept))
}

export function forgetCatalogue(data: string, key: string): void {
  write(
    data,
    recentCatalogues(data).filter(each => each.key !== key),
  )
}

/** Whole or not at all: two programs may write it, and a machine may stop. */
function write(data: string, recents: readonly Recent[]): void {
  mkdirSync(data, { recursive: true })
  const making = `${listFile(data)}.${process.pid}.making`
  try {
    writeFileSync(making, `${JSON.stringify(recents, null, 2)}\n`)
    syncFile(making)
    renameSync(making, listFile(data))
  } finally {
    rmSync(making, { force: true })
  }
}
