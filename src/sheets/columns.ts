/**
 * What a column of a table sheet is. The rule it keeps: a cell is a number, a text or a picture, never a number written
 * as text; the unit stands once, in the heading.
 */
import type { Field, ListPart, ListUnit } from '../checklist/fields.ts'

export type Cell =
  | { readonly kind: 'empty' }
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'text'; readonly text: string }
  /** A work's title, set in italics. */
  | { readonly kind: 'title'; readonly text: string }
  | { readonly kind: 'picture'; readonly hash: string }

export interface SheetColumn {
  readonly key: string
  readonly heading: string
  /** What the import takes such a column for. */
  readonly field: Field
  readonly part: ListPart | null
  readonly unit: ListUnit | null
  /** Width in characters of the body face. */
  readonly width: number
  /** Number format as the workbook's standard (ECMA-376 part 1, 18.8.31) writes it; null for text. */
  readonly format: string | null
  /** Left out on paper: the same stands beside it as the tape says it. */
  readonly workbookOnly?: boolean
}

/** A table sheet: what stands above it, its columns, its rows. */
export interface TableSheet {
  readonly name: string
  readonly title: string
  readonly lines: readonly string[]
  readonly columns: readonly SheetColumn[]
  readonly rows: readonly (readonly Cell[])[]
  /** Rows that follow one another with the same first cell belong together: on paper it stands once. */
  readonly grouped?: boolean
  /** Said at the foot of every sheet on paper, beside the title. */
  readonly foot?: string
}

export const EMPTY: Cell = { kind: 'empty' }
/** In a column that is ticked: what is done already. On paper its box has a tick. */
export const DONE: Cell = { kind: 'text', text: '✓' }

/** A column that a person ticks or writes into; its key begins with `tick`. */
export function isTick(column: SheetColumn): boolean {
  return column.key.startsWith('tick')
}

/** The table without the columns that no row fills; what is ticked by hand stays, and all of a table without rows. */
export function withoutEmptyColumns(sheet: TableSheet): TableSheet {
  const { columns, rows } = sheet
  const kept = columns.map(
    (column, index) => rows.length === 0 || isTick(column) || rows.some(row => row[index]?.kind !== 'empty'),
  )
  return {
    ...sheet,
    columns: columns.filter((_, index) => kept[index]),
    rows: rows.map(row => row.filter((_, index) => kept[index])),
  }
}

export function textCell(text: string): Cell {
  return text === '' ? EMPTY : { kind: 'text', text }
}

export function numberCell(value: number | null): Cell {
  return value === null || !Number.isFinite(value) ? EMPTY : { kind: 'number', value }
}
