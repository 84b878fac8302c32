/**
 * Reads a table from text: a .csv, .tsv or .txt file in any encoding that spreadsheets write, or a table pasted from
 * the clipboard. A file is streamed twice, once to know its encoding and once for its rows, so that memory stays
 * bounded by one batch of rows.
 */
import { closeSync, createReadStream, openSync, readSync, statSync } from 'node:fs'
import type { TableRow } from '../../../src/checklist/cell.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { hasControls, makeCleaner } from './cleaner.ts'
import { decoderOf, type Encoding, encodingOfStart, likeliestEncoding } from './encodings.ts'
import { type Fault, makeRecordCutter } from './records.ts'
import { findSeparator, type Separator } from './separator.ts'
import {
  cellTooLong,
  checkSignal,
  type Limits,
  type Table,
  tooManyColumns,
  tooManyRows,
  topRows,
  limits as usualLimits,
  type Watch,
} from './table.ts'

export interface TextChoices {
  readonly encoding?: Encoding | undefined
  readonly separator?: Separator | undefined
  readonly limits?: Limits
}

const chunkBytes = 1 << 18
const batchRows = 1000

interface Chunk {
  readonly text: string
  /** Bytes read so far. */
  readonly done: number
}

/** A file of text. Refuses `empty-file`, `too-large`; while reading `too-many-rows`, `too-many-columns`, `cell-too-long`, `quote-not-closed`, `cancelled`. */
export async function openTextFile(path: string, watch: Watch, choices: TextChoices = {}): Promise<Table> {
  const limits = choices.limits ?? usualLimits
  const bytes = statSync(path).size
  if (bytes > limits.bytes) {
    throw new Refusal(
      'too-large',
      `The file has ${Math.round(bytes / 1e6)} MB, more than the ${Math.round(limits.bytes / 1e6)} MB a list may have. Split it into several files.`,
      { field: 'handle' },
    )
  }
  const encoding = choices.encoding ?? (await findEncoding(path, watch))
  return openText('csv', () => fileChunks(path, encoding), bytes, encoding, watch, choices)
}

/** A table pasted as text. */
export async function openPastedText(text: string, watch: Watch, choices: TextChoices = {}): Promise<Table> {
  async function* chunks(): AsyncGenerator<Chunk> {
    for (let at = 0; at < text.length; at += chunkBytes) {
      yield { text: text.slice(at, at + chunkBytes), done: Math.min(at + chunkBytes, text.length) }
    }
  }
  return openText('text', chunks, text.length, 'utf-8', watch, choices)
}

async function openText(
  kind: 'csv' | 'text',
  chunks: () => AsyncGenerator<Chunk>,
  total: number,
  encoding: Encoding,
  watch: Watch,
  choices: TextChoices,
): Promise<Table> {
  const limits = choices.limits ?? usualLimits
  const first = await firstText(chunks)
  if (first.trim() === '') {
    throw new Refusal('empty-file', 'There is nothing in this list. Choose the file that holds the checklist.', {
      field: kind === 'csv' ? 'handle' : 'text',
    })
  }
  const told = /^sep=(.)\r?\n?/i.exec(first)
  const toldSign = told?.[1]
  const separator =
    choices.separator ??
    (toldSign === ',' || toldSign === ';' || toldSign === '\t'
      ? toldSign
      : findSeparator(first, kind === 'csv' ? ',' : '\t'))
  let remarks: readonly string[] = []

  async function* rows(watching: Watch): AsyncGenerator<readonly TableRow[]> {
    const cleaner = makeCleaner()
    const cutter = makeRecordCutter(separator, limits.columns * 2 + limits.cellLength * 4)
    let row = 0
    let dirty = false
    let skip = told === null ? 0 : told[0].length

    function* batches(text: string, last: boolean): Generator<readonly TableRow[]> {
      const { records, fault } = cutter.cut(text, last)
      let batch: TableRow[] = []
      for (const record of records) {
        row++
        if (row > limits.rows) throw tooManyRows(limits)
        batch.push({ row, cells: tidyRecord(record) })
        if (batch.length < batchRows) continue
        yield batch
        batch = []
      }
      if (batch.length > 0) yield batch
      if (fault !== null) throw refusalOf(fault, limits, row)
    }

    function tidyRecord(record: string[]): readonly string[] {
      let length = record.length
      while (length > 0 && record[length - 1] === '') length--
      if (length > limits.columns) throw tooManyColumns(limits, row)
      const cells = length === record.length ? record : record.slice(0, length)
      for (let i = 0; i < cells.length; i++) {
        const cell = cells[i] ?? ''
        if (cell.length > limits.cellLength) throw cellTooLong(limits, row)
        if (dirty) cells[i] = cleaner.clean(cell, row)
      }
      return cells
    }

    try {
      for await (const chunk of chunks()) {
        checkSignal(watching.signal)
        const text = skip > 0 ? chunk.text.slice(skip) : chunk.text
        skip = Math.max(0, skip - chunk.text.length)
        if (text === '') continue
        dirty ||= hasControls(text) || text.includes('\ufffd')
        yield* batches(text, false)
        watching.progress(chunk.done, total)
      }
      yield* batches('', true)
    } finally {
      remarks = cleaner.remarks()
    }
  }

  const top: TableRow[] = []
  for await (const batch of rows({ signal: watch.signal, progress: () => undefined })) {
    top.push(...batch.slice(0, topRows - top.length))
    if (top.length >= topRows) break
  }
  return {
    kind,
    encoding,
    separator,
    sheets: [{ name: '', hidden: false, top }],
    rows: (_sheet, watching) => rows(watching),
    remarks: () => remarks,
  }
}

function refusalOf(fault: Fault, limits: Limits, row: number): Refusal {
  if (fault === 'record-too-long') return cellTooLong(limits, row + 1)
  return new Refusal(
    'quote-not-closed',
    `A quotation mark opens a cell in row ${row + 1} and is never closed, so the rest of the list would run into it. Close it or take it away, and save the list again.`,
    { field: 'handle', details: { row: row + 1 } },
  )
}

async function firstText(chunks: () => AsyncGenerator<Chunk>): Promise<string> {
  for await (const chunk of chunks()) {
    if (chunk.text !== '') return chunk.text
  }
  return ''
}

async function* fileChunks(path: string, encoding: Encoding): AsyncGenerator<Chunk> {
  const decoder = decoderOf(encoding)
  let done = 0
  // The type of a stream's chunks is any; without an encoding they are buffers.
  for await (const bytes of createReadStream(path, { highWaterMark: chunkBytes }) as AsyncIterable<Buffer>) {
    done += bytes.length
    yield { text: decoder.decode(bytes, false), done }
  }
  const rest = decoder.decode(new Uint8Array(), true)
  if (rest !== '') yield { text: rest, done }
}

/** Decides by the mark at the start, then by whether all of it is UTF-8, then by the words. Refuses `not-a-table`. */
async function findEncoding(path: string, watch: Watch): Promise<Encoding> {
  const marked = encodingOfStart(firstBytes(path, 4096))
  if (marked !== undefined) return marked
  const utf8 = new TextDecoder('utf-8', { fatal: true })
  const stretches: Uint8Array[] = []
  let kept = 0
  let valid = true
  for await (const bytes of createReadStream(path, { highWaterMark: chunkBytes }) as AsyncIterable<Buffer>) {
    checkSignal(watch.signal)
    if (valid) {
      try {
        utf8.decode(bytes, { stream: true })
      } catch {
        valid = false
      }
    }
    for (let i = 0; i < bytes.length && kept < 20_000; i++) {
      if ((bytes[i] ?? 0) < 0x80) continue
      // From one plain sign before to one after a run of others, a little more for its words.
      const from = Math.max(0, i - 4)
      let to = i
      while (to < bytes.length && (bytes[to] ?? 0) >= 0x80) to++
      stretches.push(Uint8Array.from(bytes.subarray(from, Math.min(bytes.length, to + 4))))
      kept += to + 4 - from
      i = to
    }
    if (!valid && kept >= 20_000) break
  }
  if (valid) {
    try {
      utf8.decode()
      return 'utf-8'
    } catch {
      // Ends within a character: not UTF-8.
    }
  }
  return likeliestEncoding(stretches)
}

export function firstBytes(path: string, count: number): Buffer {
  const file = openSync(path, 'r')
  try {
    const bytes = Buffer.alloc(count)
    return bytes.subarray(0, readSync(file, bytes, 0, count, 0))
  } finally {
    closeSync(file)
  }
}
