/** Files that a window hands over, piece by piece: appended as they come, taken away again where it stops or fails. */
import { appendFileSync, truncateSync, writeFileSync } from 'node:fs'
import { uploadLimit } from '../../src/contract/limits.ts'
import { Refusal } from '../../src/contract/refusal.ts'
import type { Host } from './host.ts'

/** The most that one piece may carry, where it goes on with a file. */
export const pieceLimit = 8 * 1024 * 1024

export interface Piece {
  readonly name: string
  readonly bytes: Uint8Array
  /** `more` if others follow it, `last`, or `stop`: then nothing of the file stays. */
  readonly what: string
  /** The handle that the first piece was answered with. */
  readonly under?: string | undefined
  /** How many bytes of the file are before it. */
  readonly at: number
}

/** What a piece is answered with: `bytes` are those of the file so far. */
export interface Uploaded {
  readonly handle: string
  readonly name: string
  readonly bytes: number
}

export interface Uploads {
  readonly told: (handle: string) => Uploaded
  /** A file whose first piece lies there already: more of it will come. */
  readonly growsOn: (handle: string) => void
  /** Refuses `unknown-handle`, where the file is not here or ended before this piece, and `too-large`. */
  readonly grow: (piece: Piece) => Uploaded
}

export function createUploads(host: Host): Uploads {
  const growing = new Set<string>()

  function begun(name: string): string {
    const { handle, path } = host.handles.create(name)
    writeFileSync(path, '', { mode: 0o600 })
    return handle
  }

  function told(handle: string): Uploaded {
    return { handle, name: host.handles.name(handle), bytes: host.handles.bytes(handle) }
  }

  function append(handle: string, { bytes, at }: Piece): void {
    const before = host.handles.bytes(handle)
    if (at > before) throw gone()
    if (at + bytes.byteLength > uploadLimit) throw tooLarge()
    // A piece whose answer was lost on its way comes a second time.
    if (at < before) truncateSync(host.handles.path(handle), at)
    appendFileSync(host.handles.path(handle), bytes)
  }

  return {
    told,
    growsOn: handle => growing.add(handle),
    grow(piece) {
      const { name, what, under } = piece
      if (under !== undefined && !growing.has(under)) throw gone()
      const handle = under ?? begun(name)
      const drop = () => {
        growing.delete(handle)
        host.handles.drop(handle)
      }
      try {
        if (what !== 'stop') append(handle, piece)
      } catch (error) {
        drop()
        throw error
      }
      const answer = told(handle)
      if (what === 'more') growing.add(handle)
      else if (what === 'stop') drop()
      else growing.delete(handle)
      return answer
    },
  }
}

export function tooLarge(): Refusal {
  return new Refusal('too-large', 'A file may have 512 MB at most.')
}

function gone(): Refusal {
  return new Refusal('unknown-handle', 'This file is not here any more. Give it again.')
}
