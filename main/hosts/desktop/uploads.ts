/** Files that a window hands over, piece by piece: appended as they come, taken away again where it stops or fails. */
import { appendFileSync, writeFileSync } from 'node:fs'
import { uploadLimit } from '../../../src/contract/limits.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Host } from '../host.ts'
import { isOurs, type Sender } from './shell.ts'

const no = (refusal: Refusal) => JSON.stringify({ ok: false, refusal: refusal.toJson() })

/**
 * Answers each piece as JSON text: the handle, the name, the bytes so far. Given: the name, the bytes, `more`, `last`
 * or `stop`, and from the second piece on the handle that the first was answered with.
 */
export function createUploads(host: Host, windows: ReadonlySet<number>) {
  const growing = new Set<string>()

  function begun(name: string): string {
    const { handle, path } = host.handles.create(name)
    writeFileSync(path, '', { mode: 0o600 })
    return handle
  }

  function grow(name: string, bytes: Uint8Array, what: string, under: unknown): string {
    if (under !== undefined && !growing.has(String(under))) {
      throw new Refusal('unknown-handle', 'This file is not here any more. Give it again.')
    }
    const handle = under === undefined ? begun(name) : String(under)
    const drop = () => {
      growing.delete(handle)
      host.handles.drop(handle)
    }
    try {
      const before = host.handles.bytes(handle)
      if (before + bytes.byteLength > uploadLimit) throw new Refusal('too-large', 'A file may have 512 MB at most.')
      if (what !== 'stop') appendFileSync(host.handles.path(handle), bytes)
    } catch (error) {
      drop()
      throw error
    }
    const value = { handle, name: host.handles.name(handle), bytes: host.handles.bytes(handle) }
    if (what === 'more') growing.add(handle)
    else if (what === 'stop') drop()
    else growing.delete(handle)
    return JSON.stringify({ ok: true, value })
  }

  return (event: Sender, [name, bytes, what, under]: readonly unknown[]): string => {
    if (!isOurs(event, windows) || typeof name !== 'string' || !(bytes instanceof Uint8Array)) {
      return no(new Refusal('foreign-sender', 'Only the program’s own window may give files.'))
    }
    try {
      return grow(name, bytes, String(what), under)
    } catch (error) {
      if (error instanceof Refusal) return no(error)
      throw error
    }
  }
}
