/**
 * How calls reach the host: the bridge that the desktop's preload puts into the window, or HTTP on the same origin.
 * Both carry JSON text, so that a refusal reads the same everywhere. Addresses are relative, since the desktop serves
 * the same paths through its own protocol.
 */
export interface Transport {
  readonly call: (text: string) => Promise<string>
  readonly subscribe: (tell: (text: string) => void, connected: (is: boolean) => void) => () => void
  /** Gives the answer as JSON text: the handle, name and size of the file. */
  readonly upload: (file: File) => Promise<string>
}

/** What the desktop's preload offers. */
interface Bridge {
  readonly call: (text: string) => Promise<string>
  readonly subscribe: (tell: (text: string) => void) => () => void
  readonly upload: (file: File) => Promise<string>
}

declare global {
  interface Window {
    readonly hangwright?: Bridge
  }
}

function overBridge(bridge: Bridge): Transport {
  return { call: bridge.call, upload: bridge.upload, subscribe: tell => bridge.subscribe(tell) }
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
    async upload(file) {
      const response = await fetch(`/upload?name=${encodeURIComponent(file.name)}`, {
        method: 'PUT',
        headers: { 'Content-Type': 'application/octet-stream' },
        body: file,
      })
      return response.text()
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
