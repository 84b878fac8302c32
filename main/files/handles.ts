/**
 * Handles stand for files that people give or take: a name inside one folder of the host, never a path. The folder is
 * made new for each run of a host and removed when it stops. Beside each file lies the name that the person knows it by.
 */
import { randomBytes } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { Refusal } from '../../src/contract/refusal.ts'
import { savedName } from './names.ts'

export interface Handles {
  /** Where they all are. No handle begins with `kept-`, so what a host keeps there for itself has such a name. */
  readonly folder: string
  /** The file behind a handle. Refuses `unknown-handle`. */
  readonly path: (handle: string) => string
  /** The name that the person knows the file by, safe to save it under. Refuses `unknown-handle`. */
  readonly name: (handle: string) => string
  readonly bytes: (handle: string) => number
  /** A handle for a file to be written now; `path` is where. */
  readonly create: (name: string) => { readonly handle: string; readonly path: string }
  /** Takes the file away, whether it was written or not. */
  readonly drop: (handle: string) => void
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
  // No handle begins like this, so a name can't be asked for as a file. On disk, since workers make handles too.
  const nameFile = (handle: string) => join(folder, `name-${handle}`)

  function known(handle: string): string {
    if (!form.test(handle) || !existsSync(nameFile(handle))) throw unknown()
    return handle
  }
  function path(handle: string): string {
    const file = join(folder, known(handle))
    if (!existsSync(file)) throw unknown()
    return file
  }
  return {
    folder,
    path,
    name: handle => readFileSync(nameFile(known(handle)), 'utf8'),
    bytes: handle => statSync(path(handle)).size,
    create(name) {
      const handle = `${randomBytes(8).toString('hex')}-${plain(name)}`
      writeFileSync(nameFile(handle), savedName(name), { mode: 0o600 })
      return { handle, path: join(folder, handle) }
    },
    drop(handle) {
      const named = nameFile(known(handle))
      rmSync(join(folder, handle), { force: true })
      rmSync(named)
    },
  }
}

function unknown(): Refusal {
  return new Refusal('unknown-handle', 'This file is not here any more. Give it again.', { field: 'handle' })
}
