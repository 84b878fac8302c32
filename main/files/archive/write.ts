/** Writes ZIP files of any size, entry after entry, never one of them whole in memory; and tables as CSV (RFC 4180). */
import { createWriteStream } from 'node:fs'
import { rm } from 'node:fs/promises'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { stringify } from 'csv-stringify'
import { ZipFile } from 'yazl'

export type Cell = string | number | null

export type Part =
  | { readonly name: string; readonly text: string }
  /** A file as it is on disk; what is packed already (a JPEG, say) is stored. */
  | { readonly name: string; readonly path: string }
  /** Rows are asked for as they are written. */
  | { readonly name: string; readonly headings: readonly string[]; readonly rows: Iterable<readonly Cell[]> }

/**
 * Lines end with CR LF, texts are quoted where they must be; what is empty is empty, a text of nothing is `""`. A byte
 * order mark goes before, since spreadsheet programs read another alphabet's letters wrongly without it.
 */
function csv(headings: readonly string[], rows: Iterable<readonly Cell[]>): Readable {
  const lines = stringify({ bom: true, record_delimiter: '\r\n', quoted_match: /^$/ })
  lines.write([...headings])
  // A failure on either side ends both; who reads the lines hears of it.
  pipeline(Readable.from(rows), lines).catch(() => {})
  return lines
}

/** One file with all parts, in their order. What was written is taken away again where it fails or is cancelled. */
export async function writeArchive(
  path: string,
  parts: Iterable<Part>,
  { at, signal }: { readonly at: Date; readonly signal: AbortSignal },
): Promise<void> {
  const zip = new ZipFile()
  const failed = new AbortController()
  const stop = AbortSignal.any([signal, failed.signal])
  for (const part of parts) {
    if ('path' in part) zip.addFile(part.path, part.name, { mtime: at, compress: false })
    else {
      const open = (): Readable => ('text' in part ? Readable.from([part.text]) : csv(part.headings, part.rows))
      zip.addReadStreamLazy(part.name, { mtime: at }, give => {
        const stream = open()
        stream.on('error', error => failed.abort(error))
        give(null, stream)
      })
    }
  }
  zip.on('error', error => failed.abort(error))
  zip.end()
  try {
    await pipeline(zip.outputStream, createWriteStream(path, { mode: 0o600 }), { signal: stop })
  } catch (error) {
    await rm(path, { force: true })
    stop.throwIfAborted()
    throw error
  }
}
