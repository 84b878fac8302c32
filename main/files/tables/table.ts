/**
 * A table from outside, whatever file it came in: sheets, the first rows of each for finding the headings, and all
 * rows as a stream. Readers hand on what stands there and interpret nothing; limits keep memory bounded.
 */
import type { TableRow } from '../../../src/checklist/cell.ts'
import { Refusal } from '../../../src/contract/refusal.ts'

export interface TableSheet {
  readonly name: string
  readonly hidden: boolean
  /** The first rows, as many as headings may be looked for in. */
  readonly top: readonly TableRow[]
}

export interface Table {
  readonly kind: 'csv' | 'xlsx' | 'text'
  readonly encoding: string
  readonly separator: string
  readonly sheets: readonly TableSheet[]
  /** All rows of a sheet, some at a time; asks `signal` and tells its progress on the way. */
  readonly rows: (sheet: number, watch: Watch) => AsyncIterable<readonly TableRow[]>
  /** What was left out or cleaned on the way, in sentences; whole once the rows are read. */
  readonly remarks: () => readonly string[]
}

export interface Watch {
  readonly signal: AbortSignal
  /** Bytes or rows done, of so many (null while unknown). */
  readonly progress: (done: number, total: number | null) => void
}

export interface Limits {
  readonly bytes: number
  /** All entries of a workbook together, inflated; and one of them. */
  readonly inflated: number
  readonly entry: number
  readonly entries: number
  readonly rows: number
  readonly columns: number
  /** Cells with something in them. */
  readonly cells: number
  readonly cellLength: number
}

/** A checklist of 70,000 works with 20 columns must pass; what is far beyond any checklist must not. */
export const limits: Limits = {
  bytes: 300e6,
  inflated: 400e6,
  entry: 256e6,
  entries: 5000,
  rows: 500_000,
  columns: 500,
  cells: 2_000_000,
  cellLength: 32_767,
}

/** How many rows from the top headings are looked for in. */
export const topRows = 200

export function checkSignal(signal: AbortSignal): void {
  if (signal.aborted) throw new Refusal('cancelled', 'The reading of the list was cancelled. Nothing was changed.')
}

export function tooManyRows(limit: Limits): Refusal {
  return new Refusal(
    'too-many-rows',
    `The list has more than ${limit.rows.toLocaleString('en')} rows. Split it into several files.`,
    { field: 'handle' },
  )
}

export function tooManyColumns(limit: Limits, row: number): Refusal {
  return new Refusal(
    'too-many-columns',
    `Row ${row} fills more than ${limit.columns} columns, so this is not a checklist as we know it. Delete the columns that are not needed and save it again.`,
    { field: 'handle', details: { row } },
  )
}

export function cellTooLong(limit: Limits, row: number): Refusal {
  return new Refusal(
    'cell-too-long',
    `A cell in row ${row} is longer than ${limit.cellLength.toLocaleString('en')} characters. If it begins with a quotation mark that is never closed, close it or take it away.`,
    { field: 'handle', details: { row } },
  )
}

/** Row numbers for a sentence: a few of them, then how many more. */
export function someRows(rows: readonly number[], count: number): string {
  const named = rows.slice(0, 5).join(', ')
  const word = count === 1 ? 'row' : 'rows'
  return count > 5 ? `${word} ${named} and ${count - 5} more` : `${word} ${named}`
}
