/**
 * Opens zip files from outside within limits: each wanted entry is inflated up to a limit, declared or not, before
 * anything else sees it; and packs entries, stored as they are, for a reader that wants a zip file.
 */
import { crc32 } from 'node:zlib'
import { type Entry, openPromise, type ZipFile } from 'yauzl'
import { Refusal } from '../../../src/contract/refusal.ts'
import { checkSignal, type Limits } from './table.ts'

export interface OpenZip {
  readonly names: readonly string[]
  /** The entry, inflated; undefined where there is none of that name. Counts towards the limit of all together. */
  readonly read: (name: string, signal: AbortSignal) => Promise<Buffer | undefined>
  readonly close: () => void
}

export function damaged(): Refusal {
  return new Refusal(
    'damaged-file',
    'The workbook is damaged or was not copied whole. Get it again, or open it in a spreadsheet program and save it anew.',
    { field: 'handle' },
  )
}

function bomb(limits: Limits): Refusal {
  return new Refusal(
    'too-large-inside',
    `Unpacked, the workbook would be larger than the ${Math.round(limits.entry / 1e6)} MB a list may have. Copy the list into a new workbook and save that.`,
    { field: 'handle' },
  )
}

/** Refuses `damaged-file`, `too-large-inside`. */
export async function openZip(path: string, limits: Limits): Promise<OpenZip> {
  let zip: ZipFile
  const entries = new Map<string, Entry>()
  try {
    zip = await openPromise(path, { autoClose: false })
  } catch {
    throw damaged()
  }
  try {
    if (zip.entryCount > limits.entries) throw bomb(limits)
    for await (const entry of zip.eachEntry()) {
      // Two entries of one name: which one counts differs from reader to reader.
      if (entries.has(entry.fileName)) throw damaged()
      entries.set(entry.fileName, entry)
    }
  } catch (error) {
    zip.close()
    throw error instanceof Refusal ? error : damaged()
  }
  let inflated = 0
  return {
    names: [...entries.keys()],
    close: () => zip.close(),
    async read(name, signal) {
      const entry = entries.get(name)
      if (entry === undefined) return undefined
      if (entry.uncompressedSize > limits.entry || inflated + entry.uncompressedSize > limits.inflated)
        throw bomb(limits)
      const chunks: Buffer[] = []
      let size = 0
      try {
        const stream = await zip.openReadStreamPromise(entry)
        for await (const chunk of stream as AsyncIterable<Buffer>) {
          checkSignal(signal)
          size += chunk.length
          if (size > limits.entry) throw bomb(limits)
          chunks.push(chunk)
        }
      } catch (error) {
        throw error instanceof Refusal ? error : damaged()
      }
      inflated += size
      return Buffer.concat(chunks)
    },
  }
}

/** Packs entries without compression, in the order given. */
export function packStored(entries: readonly (readonly [string, Buffer])[]): Buffer {
  const pieces: Buffer[] = []
  const directory: Buffer[] = []
  let offset = 0
  for (const [name, content] of entries) {
    const bytes = Buffer.from(name)
    const header = Buffer.alloc(30)
    header.writeUInt32LE(0x04034b50, 0)
    header.writeUInt16LE(20, 4)
    // Names are UTF-8.
    header.writeUInt16LE(0x0800, 6)
    header.writeUInt32LE(crc32(content), 14)
    header.writeUInt32LE(content.length, 18)
    header.writeUInt32LE(content.length, 22)
    header.writeUInt16LE(bytes.length, 26)
    const central = Buffer.alloc(46)
    central.writeUInt32LE(0x02014b50, 0)
    central.writeUInt16LE(20, 4)
    header.copy(central, 6, 4, 30)
    central.writeUInt32LE(offset, 42)
    pieces.push(header, bytes, content)
    directory.push(central, bytes)
    offset += header.length + bytes.length + content.length
  }
  const central = Buffer.concat(directory)
  const end = Buffer.alloc(22)
  end.writeUInt32LE(0x06054b50, 0)
  end.writeUInt16LE(entries.length, 8)
  end.writeUInt16LE(entries.length, 10)
  end.writeUInt32LE(central.length, 12)
  end.writeUInt32LE(offset, 16)
  return Buffer.concat([...pieces, central, end])
}
