/**
 * The last drawing that was read, kept in the host's own folder as plain numbers: choosing other layers or another unit
 * reads a large file once. A new drawing takes its place.
 */
import { closeSync, existsSync, openSync, readSync, renameSync, statSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import { type Drawing, readDxf } from '../../files/dxf/read.ts'
import type { Handles } from '../../files/handles.ts'
import type { Job } from '../service.ts'

type Head = Omit<Drawing, 'pieces'> & { readonly of: string; readonly count: number }

function keptFile(handles: Handles): string {
  return join(handles.folder, 'kept-drawing')
}

/** Reads the file of the handle, or what is kept of it. Refuses what `readDxf` refuses. */
export function drawingOf(job: Job, handle: string): Drawing {
  const path = job.handles.path(handle)
  const name = job.handles.name(handle)
  // A handle's file never changes once it is uploaded; its size is proof enough that it came whole.
  const of = `${handle} ${statSync(path).size}`
  const kept = keptDrawing(job.handles, of)
  if (kept !== null) return kept
  const drawing = readDxf(path, (done, total) => job.progress(done, total, `Reading ${name}`))
  keep(job.handles, of, drawing)
  return drawing
}

function keep(handles: Handles, of: string, { pieces, ...rest }: Drawing): void {
  const head: Head = { ...rest, of, count: pieces.count }
  const text = Buffer.from(JSON.stringify(head))
  const size = Buffer.alloc(8)
  size.writeDoubleLE(text.length)
  const path = keptFile(handles)
  const file = openSync(`${path}.making`, 'w', 0o600)
  try {
    for (const bytes of [size, text, bytesOf(pieces.xy), bytesOf(pieces.layer)]) {
      for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at, Math.min(bytes.length - at, 1 << 26))
    }
  } finally {
    closeSync(file)
  }
  renameSync(`${path}.making`, path)
}

function bytesOf(numbers: Float64Array | Uint16Array): Uint8Array {
  return new Uint8Array(numbers.buffer, numbers.byteOffset, numbers.byteLength)
}

function keptDrawing(handles: Handles, of: string): Drawing | null {
  const path = keptFile(handles)
  if (!existsSync(path)) return null
  const file = openSync(path, 'r')
  try {
    const fill = (bytes: Uint8Array) => {
      for (let at = 0; at < bytes.length; ) {
        const read = readSync(file, bytes, at, Math.min(bytes.length - at, 1 << 26), null)
        if (read === 0) throw new Error('the kept drawing ends too early')
        at += read
      }
      return bytes
    }
    const size = Buffer.from(fill(new Uint8Array(8))).readDoubleLE()
    const { of: whose, count, ...rest } = JSON.parse(Buffer.from(fill(new Uint8Array(size))).toString()) as Head // written above
    if (whose !== of) return null
    const xy = new Float64Array(count * 4)
    const layer = new Uint16Array(count)
    fill(bytesOf(xy))
    fill(bytesOf(layer))
    return { ...rest, pieces: { xy, layer, count } }
  } finally {
    closeSync(file)
  }
}
