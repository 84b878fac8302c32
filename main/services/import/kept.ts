/**
 * The rows of the last preview, kept on disk in the host's own folder, so that scrolling through them reads only those
 * in view and no list twice. They answer only for the same list, corrections and answers, in the same catalogue with
 * nothing changed since; a new preview takes their place.
 */
import { createHash } from 'node:crypto'
import { closeSync, existsSync, openSync, readFileSync, readSync, renameSync, writeFileSync, writeSync } from 'node:fs'
import { join } from 'node:path'
import type { Output, Received } from '../../../src/contract/contract.ts'
import type { ReadHandle } from '../../database/handles.ts'
import type { Handles } from '../../files/handles.ts'
import { value } from '../sql.ts'

type Preview = Output<'import.preview'>
type Input = Received<'import.preview'>
type Row = Preview['rows'][number]
type Show = NonNullable<Input['show']>

export type Head = Omit<Preview, 'rows' | 'total' | 'offset'>

interface Kept {
  readonly key: string
  /** The file of rows, each one JSON text; and where each ends in it, bytes. */
  readonly rows: string
  readonly ends: readonly number[]
  readonly head: Head
  /** Which rows each choice shows, by place. */
  readonly shown: Readonly<Record<string, readonly number[]>>
}

const usualPage = 100
const together = 500

interface Place {
  readonly db: ReadHandle
  readonly handles: Handles
}

function headFile(handles: Handles): string {
  return join(handles.folder, 'kept-preview')
}

/** What the rows follow from. */
export function keyOf({ db }: Place, input: Input): string {
  const { show: _show, offset: _offset, limit: _limit, ...list } = input
  const file = value<string>(db, "SELECT file FROM pragma_database_list WHERE name = 'main'") ?? ''
  const newest = value<number>(db, 'SELECT max(seq) FROM journal') ?? 0
  return createHash('sha256')
    .update(JSON.stringify([file, newest, list]))
    .digest('hex')
}

export function pageOf<T>(rows: readonly T[], input: Input): { readonly offset: number; readonly some: readonly T[] } {
  const offset = input.offset ?? 0
  return { offset, some: rows.slice(offset, offset + (input.limit ?? usualPage)) }
}

/** Writes the rows a few hundred at a time; `shows` names the choices that show a row. */
export function keepPreview(
  { handles }: Place,
  key: string,
  head: Head,
  count: number,
  rowAt: (index: number) => { readonly row: Row; readonly shows: readonly Show[] },
): void {
  const before = readKept(handles)
  const { handle, path } = handles.create('kept-preview-rows')
  const file = openSync(path, 'w', 0o600)
  const ends: number[] = []
  const shown: Record<string, number[]> = {}
  try {
    let end = 0
    for (let from = 0; from < count; from += together) {
      const texts: Buffer[] = []
      for (let index = from; index < Math.min(count, from + together); index++) {
        const { row, shows } = rowAt(index)
        const text = Buffer.from(JSON.stringify(row))
        texts.push(text)
        end += text.length
        ends.push(end)
        for (const show of shows) {
          const places = shown[show] ?? []
          shown[show] = places
          places.push(index)
        }
      }
      writeSync(file, Buffer.concat(texts))
    }
  } finally {
    closeSync(file)
  }
  const kept: Kept = { key, rows: handle, ends, head, shown }
  // Whole or not at all, as two windows may look through two lists.
  writeFileSync(`${path}.head`, JSON.stringify(kept), { mode: 0o600 })
  renameSync(`${path}.head`, headFile(handles))
  if (before !== undefined && existsSync(join(handles.folder, before.rows))) handles.drop(before.rows)
}

function readKept(handles: Handles): Kept | undefined {
  if (!existsSync(headFile(handles))) return undefined
  return JSON.parse(readFileSync(headFile(handles), 'utf8')) as Kept // written here as exactly that
}

/** The rows asked for, where they are kept. */
export function keptPreview(place: Place, input: Input): Preview | undefined {
  const kept = readKept(place.handles)
  if (kept === undefined || kept.key !== keyOf(place, input)) return undefined
  const path = join(place.handles.folder, kept.rows)
  if (!existsSync(path)) return undefined
  const places = input.show === undefined ? kept.ends.map((_, index) => index) : (kept.shown[input.show] ?? [])
  const { offset, some } = pageOf(places, input)
  const file = openSync(path, 'r')
  try {
    const rows = some.map(index => {
      const from = kept.ends[index - 1] ?? 0
      const bytes = Buffer.alloc((kept.ends[index] ?? from) - from)
      readSync(file, bytes, 0, bytes.length, from)
      return JSON.parse(bytes.toString()) as Row // written here as exactly that
    })
    return { ...kept.head, total: places.length, offset, rows }
  } finally {
    closeSync(file)
  }
}
