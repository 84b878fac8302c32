/**
 * A cell as a reader of a file hands it on. Most are plain text; the others tell what the spreadsheet made of it: a
 * number, a date, the kept result of a formula, a fault. Nothing is interpreted here.
 */
export type Cell =
  | string
  | { readonly kind: 'number'; readonly text: string; readonly number: number }
  /** `text` is what the spreadsheet shows, such as `2-Jan`; `day` the date it holds, ISO 8601. */
  | { readonly kind: 'date'; readonly text: string; readonly day: string }
  /** A fault the spreadsheet shows, such as `#REF!`. */
  | { readonly kind: 'fault'; readonly text: string }

/** A row of a table with its number in the file, from 1. */
export interface TableRow {
  readonly row: number
  readonly cells: readonly Cell[]
  /** Columns (from 0) that one merged cell covers, first and last. */
  readonly merged?: readonly (readonly [number, number])[]
}

export function textOf(cell: Cell | undefined): string {
  if (cell === undefined) return ''
  return typeof cell === 'string' ? cell : cell.text
}

/** The letters of a column as spreadsheets name it, from 0: A, Z, AA. */
export function columnLetters(column: number): string {
  let letters = ''
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters
  }
  return letters
}
