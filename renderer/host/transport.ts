/**
 * How calls reach the host: the bridge that the desktop's preload puts into the window, or HTTP on the same origin.
 * Both carry JSON text, so that a refusal reads the same everywhere. Addresses are relative, since the desktop serves
 * the same paths through its own protocol.
 */
export interface Transport {
  readonly call: (text: string) => Promise<string>
  readonly subscribe: (tell: (text: string) => void, connected: (is: boolean) => void) => () => void
  /** Gives the answer as JSON text: the handle, name and bytes so far. Rejects once `stop` is aborted. */
  readonly piece: (piece: Piece, left: (bytes: number) => void, stop: AbortSignal) => Promise<string>
}

/** A piece of a file on its way: `bytes` of it, with `at` before them, `under` the handle of the first. */
export interface Piece {
  readonly name: string
  readonly bytes: Blob
  readonly what: 'more' | 'last' | 'stop'
  readonly at: number
  readonly under: string | undefined
}

/** What the desktop's preload offers. */
interface Bridge {
  readonly call: (text: string) => Promise<string>
  readonly subscribe: (tell: (text: string) => void) => () => void
  readonly piece: (name: string, bytes: Uint8Array, what: string, at: number, under?: string) => Promise<string>
}

declare global {
  interface Window {
    readonly hangwright?: Bridge
  }
}

function overBridge(bridge: Bridge): Transport {
  return {
    call: bridge.call,
    async piece({ name, bytes, what, at, under }, _left, stop) {
      const text = await bridge.piece(name, new Uint8Array(await bytes.arrayBuffer()), what, at, under)
      stop.throwIfAborted()
      return text
    },
    subscribe: tell => bridge.subscribe(tell),
  }
}

function overHttp(): Transport {
  return {
    async call(text) {
      const response = await fetch('/call', {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: text,
      })
      return response.text()
    },
    piece({ name, bytes, what, at, under }, left, stop) {
      // Of what leaves, only this tells how much has left.
      const request = new XMLHttpRequest()
      const { promise, resolve, reject } = Promise.withResolvers<string>()
      const named = new URLSearchParams({ name, what, at: String(at), ...(under === undefined ? {} : { under }) })
      request.open('PUT', `/upload?${named}`)
      request.setRequestHeader('Content-Type', 'application/octet-stream')
      request.upload.onprogress = ({ loaded }) => left(loaded)
      request.onload = () => resolve(request.responseText)
      request.onerror = () => reject(new Error('the piece has no answer'))
      request.onabort = () => reject(stop.reason)
      stop.addEventListener('abort', () => request.abort(), { once: true })
      request.send(bytes)
      return promise
    },
    subscribe(tell, connected) {
      const source = new EventSource('/events')
      source.onmessage = message => tell(String(message.data))
      source.onopen = () => connected(true)
      source.onerror = () => connected(false)
      return () => source.close()
    },
  }
}

export const transport: Transport = window.hangwright === undefined ? overHttp() : overBridge(window.hangwright)

/** The address of a stored picture at one of its sizes. */
export function pictureAddress(hash: string, size: 96 | 480 | 1600 | 'full'): string {
  return `/picture/${hash}/${size}`
}

export function downloadAddress(handle: string): string {
  return `/download/${handle}`
}
