/**
 * Opens what an import is given, file or pasted text, and finds its sheet, headings and columns: what the person said
 * goes first, then what is remembered of this lender's lists.
 */
import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type ListShape, type RememberedColumn, recognise } from '../../../src/checklist/recognise.ts'
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { openPastedText } from '../../files/tables/csv.ts'
import { openTable } from '../../files/tables/open.ts'
import type { Table, Watch } from '../../files/tables/table.ts'
import { notFound } from '../change.ts'
import { openExhibition } from '../exhibitions/open.ts'
import { plainName } from '../parties.ts'
import type { Job } from '../service.ts'
import { row, value } from '../sql.ts'

export type ListInput = Received<'import.accept'>

export interface Source {
  readonly name: string
  readonly hash: string
  readonly table: Table
  readonly sheet: number
  readonly shape: ListShape
  /** How many columns the headings of each sheet tell. */
  readonly sheetScores: readonly number[]
}

export interface Lender {
  /** Null for one that is not there yet. */
  readonly id: string | null
  readonly name: string
}

/** Refuses whatever the file is not, `unknown-sheet`. */
export async function openSource(job: Job, input: ListInput, lender: Lender | null): Promise<Source> {
  if ((input.handle === undefined) === (input.text === undefined)) {
    throw new Refusal('one-source', 'Give either a file or a pasted table.', {
      field: input.handle === undefined ? 'handle' : 'text',
    })
  }
  const watch = watchOf(job)
  const { table, name, hash } = await openGiven(job, input, watch)
  const remembered = rememberedFor(job.db, lender?.id ?? null)
  const choices = { headingRow: input.headingRow, mapping: input.mapping, remembered }
  const shapes = table.sheets.map(sheet => recognise(sheet.top, choices))
  const sheet = chooseSheet(table, shapes, input.sheet)
  const shape = shapes[sheet]
  if (shape === undefined || (table.sheets[sheet]?.top.length ?? 0) === 0) {
    throw new Refusal('empty-file', 'There is nothing on this sheet. Choose another sheet or another file.', {
      field: 'sheet',
    })
  }
  return { name, hash, table, sheet, shape, sheetScores: shapes.map(one => one.recognised) }
}

export function watchOf(job: Job): Watch {
  return {
    signal: job.signal,
    progress: (done, total) => job.progress(done, total, 'Reading the list'),
  }
}

async function openGiven(job: Job, input: ListInput, watch: Watch) {
  const choices = { encoding: input.encoding, separator: input.separator }
  if (input.handle === undefined) {
    const text = input.text ?? ''
    const hash = createHash('sha256').update(text).digest('hex')
    return { table: await openPastedText(text, watch, choices), name: 'a pasted table', hash }
  }
  const path = job.handles.path(input.handle)
  const name = job.handles.name(input.handle)
  const table = await openTable(path, name, watch, choices)
  const hash = createHash('sha256')
  // The type of a stream's chunks is any; without an encoding they are buffers.
  for await (const bytes of createReadStream(path) as AsyncIterable<Buffer>) hash.update(bytes)
  return { table, name, hash: hash.digest('hex') }
}

function chooseSheet(table: Table, shapes: readonly ListShape[], wanted: string | undefined): number {
  if (wanted !== undefined && table.kind === 'xlsx') {
    const found = table.sheets.findIndex(sheet => sheet.name === wanted)
    if (found >= 0) return found
    const names = table.sheets.map(sheet => `“${sheet.name}”`).join(', ')
    throw new Refusal('unknown-sheet', `The workbook has no sheet “${wanted}”. It has ${names}.`, { field: 'sheet' })
  }
  let best = 0
  const worth = (index: number) => (shapes[index]?.recognised ?? 0) - (table.sheets[index]?.hidden === true ? 0.5 : 0)
  for (let index = 1; index < shapes.length; index++) if (worth(index) > worth(best)) best = index
  return best
}

export const noColumns =
  'No row with headings was found, so nothing tells which column is which. Name the row of the headings, or say for each column what it is.'

export function columnsTold(shape: ListShape): boolean {
  return shape.columns.some(({ field }) => field !== null && field !== 'ignore' && field !== 'other')
}

/** Refuses `no-headings` where nothing tells which column is which. */
export function checkColumns(shape: ListShape): void {
  if (!columnsTold(shape)) throw new Refusal('no-headings', noColumns, { field: 'headingRow' })
}

export function rememberedFor(db: ReadHandle, lender: string | null): readonly RememberedColumn[] {
  const kept = value<string>(db, 'SELECT mapping FROM import_mapping WHERE id = :id', { id: lender ?? '' })
  // Written by this program as exactly that.
  return kept === undefined ? [] : (JSON.parse(kept) as RememberedColumn[])
}

/** The lender that the person named for the whole list. Refuses `not-found`. */
export function lenderOf(db: ReadHandle, input: ListInput): Lender | null {
  if (input.lender !== undefined) {
    const name = value<string>(db, 'SELECT name FROM party WHERE id = :id', { id: input.lender })
    if (name === undefined) throw notFound('lender', 'lender')
    return { id: input.lender, name }
  }
  return input.lenderName === undefined ? null : lenderNamed(db, input.lenderName)
}

export function lenderNamed(db: ReadHandle, name: string): Lender {
  const found = row<{ id: string; name: string }>(
    db,
    "SELECT id, name FROM party WHERE name_norm = :norm ORDER BY kind = 'lender' DESC, id LIMIT 1",
    { norm: plainName(name) },
  )
  return found ?? { id: null, name }
}

export interface Show {
  /** Null for one to be made. */
  readonly id: string | null
  readonly title: string
}

/** Refuses `not-found`, `exhibition-closed`. */
export function showOf(db: ReadHandle, input: ListInput): Show | null {
  if (input.exhibition !== undefined) return { id: input.exhibition, title: openExhibition(db, input.exhibition) }
  const title = input.exhibitionTitle
  if (title === undefined) return null
  const found = value<string>(db, 'SELECT id FROM exhibition WHERE title = :title ORDER BY position LIMIT 1', { title })
  if (found === undefined) return { id: null, title }
  return { id: found, title: openExhibition(db, found, 'exhibitionTitle') }
}
