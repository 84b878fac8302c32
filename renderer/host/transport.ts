/**
 * How calls reach the host: the bridge that the desktop's preload puts into the window, or HTTP on the same origin.
 * Both carry JSON text, so that a refusal reads the same everywhere. Addresses are relative, since the desktop serves
 * the same paths through its own protocol.
 */
export interface Transport {
  readonly call: (text: string) => Promise<string>
  readonly subscribe: (tell: (text: string) => void, connected: (is: boolean) => void) => () => void
  /** Gives the answer as JSON text: the handle, name and size of the file. Rejects once `stop` is aborted. */
  readonly upload: (file: File, carried: (bytes: number) => void, stop: AbortSignal) => Promise<string>
}

/** What the desktop's preload offers. */
interface Bridge {
  readonly call: (text: string) => Promise<string>
  readonly subscribe: (tell: (text: string) => void) => () => void
  /** `goesOn` is told how many bytes have been carried, and says whether to carry more. */
  readonly upload: (file: File, goesOn: (bytes: number) => boolean) => Promise<string>
}

declare global {
  interface Window {
    readonly hangwright?: Bridge
  }
}

function overBridge(bridge: Bridge): Transport {
  return {
    call: bridge.call,
    async upload(file, carried, stop) {
      const text = await bridge.upload(file, bytes => {
        carried(bytes)
        return !stop.aborted
      })
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
    upload(file, carried, stop) {
      // Of what leaves, only this tells how much has left.
      const request = new XMLHttpRequest()
      const { promise, resolve, reject } = Promise.withResolvers<string>()
      request.open('PUT', `/upload?name=${encodeURIComponent(file.name)}`)
      request.setRequestHeader('Content-Type', 'application/octet-stream')
      request.upload.onprogress = ({ loaded }) => carried(loaded)
      request.onload = () => resolve(request.responseText)
      request.onerror = () => reject(new Error('the upload has no end'))
      request.onabort = () => reject(stop.reason)
      stop.addEventListener('abort', () => request.abort(), { once: true })
      request.send(file)
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
