/** Pieces of files from the program's own windows, answered as JSON text. */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { Host } from '../host.ts'
import { createUploads } from '../uploads.ts'
import { isOurs, type Sender } from './shell.ts'

const no = (refusal: Refusal) => JSON.stringify({ ok: false, refusal: refusal.toJson() })

/** Given, in this order: the name, the bytes, what the piece is, the bytes before it, the handle where there is one. */
export function createPieces(host: Host, windows: ReadonlySet<number>) {
  const uploads = createUploads(host)
  return (event: Sender, [name, bytes, what, at, under]: readonly unknown[]): string => {
    if (!isOurs(event, windows) || typeof name !== 'string' || !(bytes instanceof Uint8Array)) {
      return no(new Refusal('foreign-sender', 'Only the program’s own window may give files.'))
    }
    try {
      const handle = under === undefined ? undefined : String(under)
      const value = uploads.grow({ name, bytes, what: String(what), at: Number(at), under: handle })
      return JSON.stringify({ ok: true, value })
    } catch (error) {
      if (error instanceof Refusal) return no(error)
      throw error
    }
  }
}
