/**
 * The files beside a catalogue: pictures and documents named by the SHA-256 of their content, each written and synced
 * before the row that names it, never changed, never removed by an edit. Thumbnails are made when first asked for and
 * can always be made again.
 */
import { createHash, randomUUID } from 'node:crypto'
import {
  createReadStream,
  createWriteStream,
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { open, readFile, writeFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { Transform } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import sharp from 'sharp'
import { Refusal } from '../../src/contract/refusal.ts'
import { largestPhotograph } from '../../src/record/condition/photographs.ts'
import { pixelsAcross, type Tone, tonesOfPixels } from '../../src/sequence/tones.ts'
import { syncFile, syncFolder } from '../database/backup-files.ts'
import { filesFolder } from '../database/catalogue.ts'
import { asRefusal } from '../database/faults.ts'
import { isRaw, rawMime } from './camera-raw.ts'
import { previewIn } from './preview.ts'
import { mimeOf, phoneMime } from './sniff.ts'

export const pictureSizes = [96, 480, 1600] as const
export type PictureSize = (typeof pictureSizes)[number]

export interface Kept {
  readonly hash: string
  readonly bytes: number
  readonly mime: string
}

export interface KeptPicture extends Kept {
  /** As seen, after the camera's turning; null where the picture cannot be decoded and has no preview. */
  readonly widthPx: number | null
  readonly heightPx: number | null
}

export interface FileStore {
  /** The catalogue that these files belong to. */
  readonly catalogue: string
  readonly folder: string
  /** Where a file of this hash lies, or would lie. */
  readonly path: (hash: string) => string
  /** Keeps a copy. Refuses `disk-full`, `file-too-large`. */
  readonly add: (path: string) => Promise<Kept>
  readonly addPicture: (path: string) => Promise<KeptPicture>
  /** The picture, upright, within a square of so many pixels; null where it is missing or cannot be shown. */
  readonly picture: (hash: string, size: PictureSize | 'full') => Promise<{ type: string; bytes: Buffer } | null>
  /** How the picture reads, cell by cell; null where it is missing or cannot be read. */
  readonly tones: (hash: string) => Promise<Tone[] | null>
  /** Every file kept, by its hash. */
  readonly hashes: () => string[]
  readonly remove: (hash: string) => void
}

/** 2 GiB: the largest thing worth keeping beside a catalogue is a scan. */
const largestFile = 2 ** 31
/** More pixels than any museum camera takes, fewer than a bomb unfolds to. */
export const mostPixels = 300_000_000
/** What a browser shows as it is. SVG is not among them: it can carry scripts. */
const shown: ReadonlySet<string> = new Set(['image/jpeg', 'image/png', 'image/gif', 'image/webp', 'image/avif'])

const form = /^[0-9a-f]{64}$/

export async function hashOf(path: string): Promise<string> {
  const sum = createHash('sha256')
  for await (const chunk of createReadStream(path)) sum.update(chunk)
  return sum.digest('hex')
}

async function firstBytes(path: string): Promise<Buffer> {
  const file = await open(path, 'r')
  try {
    const { bytesRead, buffer } = await file.read(Buffer.alloc(32), 0, 32, 0)
    return buffer.subarray(0, bytesRead)
  } finally {
    await file.close()
  }
}

/** Copies while hashing, so that what is named is what was written. */
async function copyHashed(from: string, to: string): Promise<string> {
  const sum = createHash('sha256')
  const through = new Transform({
    transform(chunk: Buffer, _, next) {
      sum.update(chunk)
      next(null, chunk)
    },
  })
  await pipeline(createReadStream(from), through, createWriteStream(to, { flags: 'wx' }))
  return sum.digest('hex')
}

type Seen = string | Buffer

function upright(seen: Seen) {
  // Truncated files still show what they hold; only the first page or frame is read.
  return sharp(seen, { limitInputPixels: mostPixels, failOn: 'none', pages: 1 }).autoOrient()
}

/** The form that phones write, which may hold a preview where it can't be decoded itself. */
export async function isPhone(path: string): Promise<boolean> {
  return mimeOf(await firstBytes(path), '') === phoneMime
}

/** What of a kept file can be decoded: itself, or the preview inside a photograph that can't; null for neither. */
export async function seenOf(path: string): Promise<Seen | null> {
  try {
    // The first picture of a sensor's file is the size of a stamp.
    if (await isRaw(path)) return await previewOf(path)
    // Decoding is the proof: a header alone says too little.
    await upright(path).resize(8, 8).toBuffer()
    return path
  } catch {
    return (await isPhone(path)) ? previewOf(path) : null
  }
}

const previewOf = async (path: string): Promise<Buffer | null> =>
  statSync(path).size <= largestPhotograph ? previewIn(await readFile(path)) : null

async function thumbnail(seen: Seen, size: PictureSize): Promise<Buffer> {
  const small = upright(seen).resize(size, size, { fit: 'inside', withoutEnlargement: true })
  const { hasAlpha } = await sharp(seen, { limitInputPixels: mostPixels, pages: 1 }).metadata()
  // No metadata goes along: a camera's position is nobody's business.
  return hasAlpha ? small.png().toBuffer() : small.jpeg({ quality: 84, mozjpeg: true }).toBuffer()
}

function typeOf(bytes: Buffer): string {
  return mimeOf(bytes.subarray(0, 32), '')
}

export function openStore(file: string): FileStore {
  const folder = filesFolder(file)

  function path(hash: string): string {
    if (!form.test(hash)) throw new Refusal('bad-input', 'This is not the name of a kept file.', { field: 'hash' })
    return join(folder, hash.slice(0, 2), hash)
  }
  const thumbnailPath = (hash: string, size: PictureSize) =>
    join(folder, 'thumbnails', String(size), hash.slice(0, 2), hash)

  async function add(from: string): Promise<Kept> {
    const { size } = statSync(from)
    if (size > largestFile) {
      throw new Refusal(
        'file-too-large',
        `This file has ${Math.round(size / 1e6)} MB; at most ${Math.round(largestFile / 1e6)} MB can be kept.`,
      )
    }
    const making = join(folder, `${randomUUID()}.making`)
    try {
      mkdirSync(folder, { recursive: true })
      const hash = await copyHashed(from, making)
      const place = path(hash)
      if (!existsSync(place) || statSync(place).size !== size) {
        syncFile(making)
        mkdirSync(dirname(place), { recursive: true })
        renameSync(making, place)
        syncFolder(dirname(place))
        syncFolder(folder)
      }
      const mime = (await isRaw(place)) ? rawMime : mimeOf(await firstBytes(place), from)
      return { hash, bytes: size, mime }
    } catch (error) {
      throw asRefusal(error, file)
    } finally {
      rmSync(making, { force: true })
    }
  }

  async function makeThumbnail(hash: string, size: PictureSize, seen: Seen): Promise<Buffer> {
    const bytes = await thumbnail(seen, size)
    const place = thumbnailPath(hash, size)
    const making = `${place}.${randomUUID()}.making`
    try {
      mkdirSync(dirname(place), { recursive: true })
      await writeFile(making, bytes)
      renameSync(making, place)
    } catch {
      // It is shown all the same: a full disk or a read-only folder costs only the making next time.
      rmSync(making, { force: true })
    }
    return bytes
  }

  return {
    catalogue: file,
    folder,
    path,
    add,
    async addPicture(from) {
      const kept = await add(from)
      const none = { ...kept, widthPx: null, heightPx: null }
      try {
        const seen = await seenOf(path(kept.hash))
        if (seen === null) return none
        const { autoOrient } = await sharp(seen, { limitInputPixels: mostPixels, pages: 1 }).metadata()
        for (const size of pictureSizes) await makeThumbnail(kept.hash, size, seen)
        return { ...kept, widthPx: autoOrient.width, heightPx: autoOrient.height }
      } catch {
        return none
      }
    },
    async picture(hash, size) {
      const original = path(hash)
      if (!existsSync(original)) return null
      if (size === 'full' && shown.has(mimeOf(await firstBytes(original), ''))) {
        const bytes = await readFile(original)
        return { type: typeOf(bytes), bytes }
      }
      const wanted = size === 'full' ? 1600 : size
      const place = thumbnailPath(hash, wanted)
      try {
        const seen = existsSync(place) ? place : await seenOf(original)
        if (seen === null) return null
        const bytes = seen === place ? await readFile(place) : await makeThumbnail(hash, wanted, seen)
        return { type: typeOf(bytes), bytes }
      } catch {
        return null
      }
    },
    async tones(hash) {
      // The thumbnail says enough, and a scan of 300 megapixels would say it slowly.
      const found = await this.picture(hash, 480)
      if (found === null) return null
      const pixels = await sharp(found.bytes)
        .resize(pixelsAcross, pixelsAcross, { fit: 'fill' })
        .flatten({ background: '#ffffff' })
        .toColourspace('srgb')
        .raw()
        .toBuffer()
      return tonesOfPixels(pixels)
    },
    hashes() {
      if (!existsSync(folder)) return []
      return readdirSync(folder)
        .filter(part => /^[0-9a-f]{2}$/.test(part))
        .flatMap(part => readdirSync(join(folder, part)))
        .filter(name => form.test(name) && basename(name) === name)
        .sort()
    },
    remove(hash) {
      rmSync(path(hash), { force: true })
      for (const size of pictureSizes) rmSync(thumbnailPath(hash, size), { force: true })
    },
  }
}
