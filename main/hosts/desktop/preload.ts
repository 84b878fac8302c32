/** The bridge: one call, one subscription that passes the payload alone, one upload. No Electron object gets through. */
import { contextBridge, ipcRenderer } from 'electron'

// The channels of shell.ts. A sandboxed preload may require nothing but electron, so they stand here again; a test compares them.
const callChannel = 'hangwright:call'
const eventChannel = 'hangwright:event'
const uploadChannel = 'hangwright:upload'
const piece = 4 * 1024 * 1024

contextBridge.exposeInMainWorld('hangwright', {
  call: (text: string): Promise<string> => ipcRenderer.invoke(callChannel, text),
  subscribe(listener: (text: string) => void): () => void {
    const pass = (_event: unknown, text: string) => listener(text)
    ipcRenderer.on(eventChannel, pass)
    return () => ipcRenderer.off(eventChannel, pass)
  },
  // In pieces, so that a file of any size takes no more memory than one.
  async upload(file: File, goesOn: (bytes: number) => boolean): Promise<string> {
    let handle: string | undefined
    let answer = ''
    for (let at = 0; at === 0 || at < file.size; at += piece) {
      const bytes = new Uint8Array(await file.slice(at, at + piece).arrayBuffer())
      const end = Math.min(at + piece, file.size)
      const what = goesOn(at) ? (end < file.size ? 'more' : 'last') : 'stop'
      answer = await ipcRenderer.invoke(uploadChannel, file.name, bytes, what, handle)
      const said = JSON.parse(answer)
      if (!said.ok || what === 'stop') return answer
      handle = said.value.handle
    }
    return answer
  },
})
