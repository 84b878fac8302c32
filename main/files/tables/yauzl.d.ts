/** What this project uses of yauzl 3, which brings no types. */
declare module 'yauzl' {
  import type { Readable } from 'node:stream'

  export interface Entry {
    readonly fileName: string
    readonly compressedSize: number
    readonly uncompressedSize: number
    isEncrypted(): boolean
  }
  export interface ZipFile {
    readonly entryCount: number
    eachEntry(): AsyncIterable<Entry>
    openReadStreamPromise(entry: Entry): Promise<Readable>
    close(): void
  }
  export function openPromise(path: string, options?: { readonly autoClose?: boolean }): Promise<ZipFile>
}
