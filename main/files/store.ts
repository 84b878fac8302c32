/** provisional */
import { createHash } from 'node:crypto'
import { copyFileSync, existsSync, mkdirSync, readFileSync, renameSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { filesFolder } from '../database/catalogue.ts'

export interface Kept { readonly hash: string; readonly bytes: number; readonly mime: string }
export interface KeptPicture extends Kept { readonly widthPx: number | null; readonly heightPx: number | null }
export interface FileStore {
  readonly path: (hash: string) => string
  readonly add: (path: string) => Promise<Kept>
  readonly addPicture: (path: string) => Promise<KeptPicture>
  readonly picture: (hash: string, size: 96 | 480 | 1600 | 'full') => Promise<{ type: string; bytes: Buffer } | null>
}
export function openStore(file: string): FileStore {
  const folder = filesFolder(file)
  const path = (hash: string) => join(folder, hash.slice(0, 2), hash)
  async function add(from: string): Promise<Kept> {
    const hash = createHash('sha256').update(readFileSync(from)).digest('hex')
    mkdirSync(dirname(path(hash)), { recursive: true })
    if (!existsSync(path(hash))) { copyFileSync(from, `${path(hash)}.new`); renameSync(`${path(hash)}.new`, path(hash)) }
    return { hash, bytes: statSync(from).size, mime: 'application/octet-stream' }
  }
  return {
    path, add,
    async addPicture(from) {
      const kept = await add(from)
      try {
        const m = await sharp(from).metadata()
        return { ...kept, mime: `image/${m.format}`, widthPx: m.width, heightPx: m.height }
      } catch { return { ...kept, widthPx: null, heightPx: null } }
    },
    async picture(hash, size) {
      if (!existsSync(path(hash))) return null
      if (size === 'full') return { type: 'image/jpeg', bytes: readFileSync(path(hash)) }
      return { type: 'image/jpeg', bytes: await sharp(path(hash)).rotate().resize(size, size, { fit: 'inside' }).jpeg().toBuffer() }
    },
  }
}
