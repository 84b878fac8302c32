/** The bridge: one call, one subscription that passes the payload alone, one piece of a file. No Electron object gets through. */
import { contextBridge, ipcRenderer } from 'electron'

// The channels of shell.ts. A sandboxed preload may require nothing but electron, so they stand here again; a test compares them.
const callChannel = 'hangwright:call'
const eventChannel = 'hangwright:event'
const uploadChannel = 'hangwright:upload'

contextBridge.exposeInMainWorld('hangwright', {
  call: (text: string): Promise<string> => ipcRenderer.invoke(callChannel, text),
  subscribe(listener: (text: string) => void): () => void {
    const pass = (_event: unknown, text: string) => listener(text)
    ipcRenderer.on(eventChannel, pass)
    return () => ipcRenderer.off(eventChannel, pass)
  },
  piece: (name: string, bytes: Uint8Array, what: string, at: number, under?: string): Promise<string> =>
    ipcRenderer.invoke(uploadChannel, name, bytes, what, at, under),
})
