/** Lengths as columns: a number in the sheet's unit; in inches also the fraction as the tape says it, beside it. */
import type { Field, ListPart } from '../checklist/fields.ts'
import { INCH } from '../hang/physics.ts'
import { type Printed, printedText, type Steps } from '../hang/printing.ts'
import { lengthFormats, type SheetUnit } from './checklist-columns.ts'
import { type Cell, EMPTY, numberCell, type SheetColumn, textCell } from './columns.ts'

/** A plain length column of a table that the import does not read. */
export function lengthColumns(key: string, heading: string, unit: SheetUnit): readonly SheetColumn[] {
  const number: SheetColumn = {
    key,
    heading: `${heading} (${unit})`,
    ...unread,
    unit,
    width: 8,
    format: lengthFormats[unit],
  }
  if (unit === 'mm') return [number]
  return [
    { ...number, workbookOnly: true },
    { key: `${key}.fraction`, heading: `${heading}, by the tape (in)`, ...unread, unit: null, width: 10, format: null },
  ]
}

const unread: { readonly field: Field; readonly part: ListPart | null } = { field: 'ignore', part: null }

/** The cells of a length column for a printed length: the same number as on the sheets. */
export function printedCells(printed: Printed | null, unit: SheetUnit, steps: Steps): readonly Cell[] {
  if (unit === 'mm') return [numberCell(printed?.mm ?? null)]
  if (printed === null) return [EMPTY, EMPTY]
  return [numberCell(printed.inches), textCell(printedText(printed, 'in', steps))]
}

/** The cells of a length as it is known, not rounded to the sheet: what is read again must be the same. */
export function knownCells(mm: number | null, unit: SheetUnit, fraction: (mm: number) => string): readonly Cell[] {
  if (unit === 'mm') return [numberCell(mm)]
  if (mm === null) return [EMPTY, EMPTY]
  // Twelve figures take the dust off a division and lose nothing that anybody measured.
  return [numberCell(Number((mm / INCH).toPrecision(12))), textCell(fraction(mm))]
}
