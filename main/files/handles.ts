/**
 * Handles stand for files that people give or take: a name inside one folder of the host, never a path. The folder is
 * made new for each run of a host and removed when it stops.
 */
import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { Refusal } from '../../src/contract/refusal.ts'

export interface Handles {
  /** The file behind a handle. Refuses `unknown-handle`. */
  readonly path: (handle: string) => string
  /** The name that the person knows the file by. */
  readonly name: (handle: string) => string
  readonly bytes: (handle: string) => number
  /** A handle for a file to be written now; `path` is where. */
  readonly create: (name: string) => { readonly handle: string; readonly path: string }
}

const form = /^[0-9a-f]{16}-[0-9a-zA-Z._-]{1,80}$/

/** Keeps letters, figures, dot and dash: a handle must be safe in an address and on any file system. */
function plain(name: string): string {
  const kept = name
    .normalize('NFKD')
    .replace(/[^0-9a-zA-Z._-]+/g, '-')
    .replace(/^[.-]+/, '')
    .slice(-80)
  return kept === '' ? 'file' : kept
}

export function openHandles(folder: string): Handles {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  function path(handle: string): string {
    const file = join(folder, handle)
    if (!form.test(handle) || !existsSync(file)) {
      throw new Refusal('unknown-handle', 'This file is not here any more. Give it again.', { field: 'handle' })
    }
    return file
  }
  return {
    path,
    name: handle => handle.slice(17),
    bytes: handle => statSync(path(handle)).size,
    create(name) {
      const handle = `${randomBytes(8).toString('hex')}-${plain(name)}`
      return { handle, path: join(folder, handle) }
    },
  }
}
