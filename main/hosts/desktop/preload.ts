/** The bridge: one call, one subscription that passes the payload alone, one upload. No Electron object gets through. */
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
  upload: async (file: File): Promise<string> =>
    ipcRenderer.invoke(uploadChannel, file.name, new Uint8Array(await file.arrayBuffer())),
})
