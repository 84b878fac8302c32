/** Bytes of files from the host's own page: a file whole, or piece by piece. */
import { createWriteStream } from 'node:fs'
import type { IncomingMessage } from 'node:http'
import { pipeline } from 'node:stream/promises'
import { uploadLimit } from '../../../src/contract/limits.ts'
import type { Host } from '../host.ts'
import { createUploads, pieceLimit, tooLarge, type Uploaded } from '../uploads.ts'

export interface Receiver {
  /** `named`: `name`; where pieces follow or came before, `what`, `at` and `under` as a piece has them. */
  readonly receive: (request: IncomingMessage, named: URLSearchParams) => Promise<Uploaded>
  /** Of an answer that never arrived: nobody knows the file's handle, so nothing of it stays. */
  readonly unheard: (answered: Uploaded) => void
}

export function createReceiver(host: Host): Receiver {
  const uploads = createUploads(host)

  async function first(request: IncomingMessage, name: string): Promise<string> {
    const { handle, path } = host.handles.create(name)
    let bytes = 0
    try {
      await pipeline(
        request,
        async function* (source) {
          for await (const chunk of source) {
            bytes += chunk.length
            if (bytes > uploadLimit) throw tooLarge()
            yield chunk
          }
        },
        createWriteStream(path, { mode: 0o600 }),
      )
    } catch (error) {
      host.handles.drop(handle)
      throw error
    }
    return handle
  }

  /** Held until it has come whole: a connection that breaks in a piece leaves the file as it was before. */
  async function held(request: IncomingMessage): Promise<Buffer> {
    const chunks: Buffer[] = []
    let bytes = 0
    for await (const chunk of request) {
      bytes += chunk.length
      if (bytes > pieceLimit) throw tooLarge()
      chunks.push(chunk)
    }
    return Buffer.concat(chunks)
  }

  return {
    async receive(request, named) {
      const name = named.get('name') ?? 'file'
      const what = named.get('what') ?? 'last'
      const under = named.get('under')
      if (under !== null) {
        return uploads.grow({ name, bytes: await held(request), what, at: Number(named.get('at') ?? 0), under })
      }
      const handle = await first(request, name)
      if (what === 'more') uploads.growsOn(handle)
      return uploads.told(handle)
    },
    unheard: ({ handle }) => host.handles.drop(handle),
  }
}
