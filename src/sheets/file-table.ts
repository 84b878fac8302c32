/** What the tables of whole files share: how figures, times and days are written, and what a table of nothing says. */
import type { ChangeStyle } from '../dictionary/change-said.ts'
import { print } from '../hang/printing.ts'
import type { SheetUnit } from './checklist-columns.ts'
import type { Cell, SheetColumn, TableSheet } from './columns.ts'
import type { Units } from './figures.ts'
import { printedCells } from './lengths-columns.ts'

/** How figures, times and days are written. */
export interface FileStyle extends Units, ChangeStyle {
  readonly table: SheetUnit
  /** Of a day as the catalogue keeps it. */
  readonly day: (day: string) => string
}

/** A table of the file; its columns that no row fills are left out when it is put together. */
export function table(
  name: string,
  columns: readonly SheetColumn[],
  rows: readonly (readonly Cell[])[],
  more: { readonly lines?: readonly string[]; readonly none?: string; readonly grouped?: boolean } = {},
): TableSheet {
  const { lines = [], none = '', grouped = false } = more
  return {
    name,
    title: name,
    lines: [...lines, ...(rows.length === 0 && none !== '' ? [none] : [])],
    // A table of nothing says so in words; headings over nothing say no more.
    columns: rows.length === 0 ? [] : columns,
    rows,
    ...(grouped ? { grouped: true } : {}),
  }
}

/** The cells of several lengths in a row; of one that nobody took an empty one. */
export function lengths(values: readonly (number | null)[], style: FileStyle): readonly Cell[] {
  return values.flatMap(mm => printedCells(mm === null ? null : print(mm, style.steps), style.table, style.steps))
}
