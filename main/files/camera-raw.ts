/**
 * Whether a file is what a camera's sensor said, before it is a picture: no decoder here reads it, but it holds a
 * preview. Told by its content. Sources: TIFF 6.0, section 2 (directories); ISO 12234-2 (a small picture first, the
 * sensor's behind it in SubIFDs, tag 330); the tag 50706 of the open form .dng. First bytes of other forms: from memory.
 */
import { open } from 'node:fs/promises'

const starts: readonly { readonly at: number; readonly bytes: string }[] = [
  { at: 0, bytes: 'IIRO' },
  { at: 0, bytes: 'IIRS' },
  { at: 0, bytes: 'MMOR' },
  { at: 0, bytes: 'IIU\0' },
  { at: 0, bytes: 'FUJIFILMCCD-RAW' },
  { at: 4, bytes: 'ftypcrx ' },
  { at: 8, bytes: 'CR\x02' },
]

/** What kept ones are called; no registered type covers them all. */
export const rawMime = 'image/x-camera-raw'

/** Tags of a first directory. */
const newSubfileType = 254
const subIfds = 330
const dngVersion = 50706

export async function isRaw(path: string): Promise<boolean> {
  const file = await open(path, 'r')
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(16), 0, 16, 0)
    const first = buffer.subarray(0, bytesRead)
    const text = first.toString('latin1')
    if (starts.some(({ at, bytes }) => text.startsWith(bytes, at))) return true
    if (!text.startsWith('II*\0') && !text.startsWith('MM\0*')) return false
    const little = text.startsWith('II')
    const short = (bytes: Buffer, at: number) => (little ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at))
    const long = (bytes: Buffer, at: number) => (little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at))
    if (first.length < 8) return false
    const at = long(first, 4)
    const count = await file.read(Buffer.alloc(2), 0, 2, at)
    if (count.bytesRead < 2) return false
    const length = short(count.buffer, 0) * 12
    const directory = await file.read(Buffer.alloc(length), 0, length, at + 2)
    const tags = new Map<number, number>()
    for (let entry = 0; entry + 12 <= directory.bytesRead; entry += 12) {
      tags.set(short(directory.buffer, entry), long(directory.buffer, entry + 8))
    }
    return tags.has(dngVersion) || (tags.has(subIfds) && ((tags.get(newSubfileType) ?? 0) & 1) === 1)
  } finally {
    await file.close()
  }
}
