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
}

/** A table sheet: what stands above it, its columns, its rows. */
export interface TableSheet {
  readonly name: string
  readonly title: string
  readonly lines: readonly string[]
  readonly columns: readonly SheetColumn[]
  readonly rows: readonly (readonly Cell[])[]
}

export const EMPTY: Cell = { kind: 'empty' }

export function textCell(text: string): Cell {
  return text === '' ? EMPTY : { kind: 'text', text }
}

export function numberCell(value: number | null): Cell {
  return value === null || !Number.isFinite(value) ? EMPTY : { kind: 'number', value }
}
