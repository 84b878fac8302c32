/**
 * The columns of the checklist as a table, in both directions: what is written, and what our own headings mean when
 * such a table is read again. The rule it keeps: every column that is written comes back as the same field, part and
 * unit, so that a checklist read again is unchanged.
 */
import type { Field, ListPart, ListUnit } from '../checklist/fields.ts'
import type { SheetColumn } from './columns.ts'

/** The unit of a sheet: centimetres are read on screens; tape and table take millimetres or inches. */
export type SheetUnit = 'mm' | 'in'

/** How a length stands in a cell: millimetres as they are, inches with two decimals at least. */
export const lengthFormats: Readonly<Record<SheetUnit, string>> = { mm: '#,##0.###', in: '0.00##' }

const partWords: Readonly<Record<ListPart, string>> = {
  framed: 'Framed',
  overall: 'Overall',
  mount: 'Mount',
  support: 'Support',
  sheet: 'Sheet',
  plate: 'Plate',
  image: 'Image',
  sight: 'Sight',
  base: 'Base',
}

export const sides = ['height', 'width', 'depth', 'diameter'] as const
export type Side = (typeof sides)[number]

/** Parts in the order in which their columns stand. */
export const columnParts = Object.keys(partWords) as ListPart[] // Object.keys forgets the literal names

interface Plain {
  readonly key: string
  readonly heading: string
  readonly field: Field
  readonly width: number
}

const before = [
  { key: 'running', heading: 'No.', field: 'running', width: 5 },
  { key: 'picture', heading: 'Picture', field: 'ignore', width: 11 },
  { key: 'permanent', heading: 'Permanent number', field: 'permanent', width: 12 },
  { key: 'lenderNumber', heading: 'Lender’s number', field: 'lenderNumber', width: 12 },
  { key: 'loan', heading: 'Loan number', field: 'loan', width: 11 },
  { key: 'entryNumber', heading: 'Entry number', field: 'entryNumber', width: 10 },
  { key: 'exhibitionNumber', heading: 'Exhibition number', field: 'exhibitionNumber', width: 10 },
  { key: 'formerNumber', heading: 'Former number', field: 'formerNumber', width: 11 },
  { key: 'maker', heading: 'Maker', field: 'maker', width: 18 },
  { key: 'title', heading: 'Title', field: 'title', width: 24 },
  { key: 'date', heading: 'Date', field: 'date', width: 9 },
  { key: 'medium', heading: 'Medium', field: 'medium', width: 18 },
] as const satisfies readonly Plain[]

const after = [
  { key: 'method', heading: 'How it hangs', field: 'method', width: 10 },
  { key: 'lender', heading: 'Lender', field: 'lender', width: 16 },
  { key: 'credit', heading: 'Credit line', field: 'credit', width: 20 },
  { key: 'value', heading: 'Value', field: 'value', width: 14 },
  { key: 'kind', heading: 'Kind of work', field: 'kind', width: 10 },
  { key: 'objectName', heading: 'Name of the object', field: 'objectName', width: 12 },
  { key: 'titleTranslation', heading: 'Title in translation', field: 'titleTranslation', width: 18 },
  { key: 'titleLanguage', heading: 'Language of the title', field: 'titleLanguage', width: 9 },
  { key: 'inscriptions', heading: 'Inscriptions and marks', field: 'inscriptions', width: 18 },
  { key: 'subject', heading: 'Subject', field: 'subject', width: 16 },
  { key: 'description', heading: 'Description', field: 'description', width: 20 },
  { key: 'placeOfOrigin', heading: 'Place of origin', field: 'placeOfOrigin', width: 14 },
  { key: 'distinguishing', heading: 'Distinguishing features', field: 'distinguishing', width: 18 },
  { key: 'department', heading: 'Owner’s department', field: 'department', width: 14 },
  { key: 'section', heading: 'Section', field: 'section', width: 14 },
  { key: 'place', heading: 'Room and wall', field: 'place', width: 14 },
  { key: 'status', heading: 'Status', field: 'status', width: 9 },
  { key: 'sensitivity', heading: 'Sensitivity to light', field: 'sensitivity', width: 10 },
  { key: 'lightLimit', heading: 'Light limit (lx)', field: 'lightLimit', width: 7 },
  { key: 'uvLimit', heading: 'UV limit (µW/lm)', field: 'uvLimit', width: 9 },
  { key: 'glazing', heading: 'Glazing', field: 'glazing', width: 9 },
  { key: 'handling', heading: 'Handling', field: 'handling', width: 18 },
  { key: 'loanTerms', heading: 'Loan terms', field: 'loanTerms', width: 18 },
  { key: 'notBeside', heading: 'Not beside', field: 'notBeside', width: 14 },
  { key: 'note', heading: 'Note', field: 'note', width: 18 },
] as const satisfies readonly Plain[]

/** Columns that are there whatever a work measures. */
export type PlainKey = (typeof before)[number]['key'] | (typeof after)[number]['key']

const numbered: Readonly<Record<string, string>> = { lightLimit: '#,##0', uvLimit: '#,##0' }

function plain(column: Plain): SheetColumn {
  return { ...column, part: null, unit: null, format: numbered[column.key] ?? null }
}

/** `framed.height` and, in inches, `framed.height.fraction` beside it for the tape. */
export function sizeKey(part: ListPart, side: Side, fraction = false): string {
  return `${part}.${side}${fraction ? '.fraction' : ''}`
}

function sizeColumns(part: ListPart, side: Side, unit: SheetUnit): readonly SheetColumn[] {
  const heading = `${partWords[part]} ${side} (${unit})`
  const number: SheetColumn = {
    key: sizeKey(part, side),
    heading,
    field: side,
    part,
    unit,
    width: 9,
    format: lengthFormats[unit],
  }
  if (unit === 'mm') return [number]
  const fraction: SheetColumn = {
    key: sizeKey(part, side, true),
    heading: `${partWords[part]} ${side}, by the tape (in)`,
    field: 'ignore',
    part: null,
    unit: null,
    width: 9,
    format: null,
  }
  return [number, fraction]
}

export function massColumn(unit: SheetUnit): SheetColumn {
  const mass = unit === 'mm' ? 'kg' : 'lb'
  return { key: 'mass', heading: `Weight (${mass})`, field: 'mass', part: null, unit: mass, width: 8, format: '0.0##' }
}

/** The columns of a checklist whose works have these measures. */
export function checklistColumns(
  unit: SheetUnit,
  measured: readonly { readonly part: ListPart; readonly side: Side }[],
): readonly SheetColumn[] {
  const there = new Set(measured.map(each => sizeKey(each.part, each.side)))
  const sized = columnParts.flatMap(part =>
    sides.flatMap(side => (there.has(sizeKey(part, side)) ? sizeColumns(part, side, unit) : [])),
  )
  return [...before.map(plain), ...sized, massColumn(unit), ...after.map(plain)]
}

export interface OwnHeading {
  readonly field: Field
  readonly part: ListPart | null
  readonly unit: ListUnit | null
}

const own: ReadonlyMap<string, OwnHeading> = new Map(
  (['mm', 'in'] as const)
    .flatMap(unit =>
      checklistColumns(
        unit,
        columnParts.flatMap(part => sides.map(side => ({ part, side }))),
      ),
    )
    .map(({ heading, field, part, unit }) => [heading, { field, part, unit }]),
)

/** What one of our own headings says; null for any other. */
export function ownHeading(heading: string): OwnHeading | null {
  return own.get(heading.trim()) ?? null
}
