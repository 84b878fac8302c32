/**
 * One row of a list, understood as far as it goes. The rule it keeps: every filled cell stays as written; what was
 * understood stands beside it; what was not is a question; and only a row that names no work at all is refused.
 */
import type { LengthUnit, MassUnit } from '../measure/units.ts'
import { type Cell, columnLetters, type TableRow, textOf } from './cell.ts'
import { faultQuestion, readFact } from './facts.ts'
import {
  type ColumnUse,
  type FactField,
  factColumns,
  fields,
  type ListPart,
  type ListUnit,
  type NumberField,
  numberFields,
  type SideField,
  sideFields,
} from './fields.ts'
import type { ListLanguage } from './headings.ts'
import { normalNumber } from './numbers.ts'
import { plainWords, tidy } from './plain-text.ts'
import type { ListedMass, ListedNumber, ListedSize, ListedValue, RowOutcome, RowQuestion } from './reading.ts'
import { type MassRead, readMassCell, readSides, readSizeCell, type Side, type SizesRead } from './sizes.ts'
import { readValueCell, sameAmount } from './values.ts'
import { saysNothing } from './words.ts'

export interface ListContext {
  readonly headingRow: number
  readonly columns: readonly ColumnUse[]
  readonly language: ListLanguage | ''
  /** The unit that a person set for sizes without one. */
  readonly unit?: LengthUnit | undefined
  /** The unit that the list's other sizes state. */
  readonly neighboursUnit?: LengthUnit | undefined
}

export type Understand = (row: TableRow) => RowOutcome

/** Lists repeat the same sizes and weights; reading a statement is the dearest step. */
const mostKept = 5000

/** A list's rows are kept until all are read, and most say nothing of most things: they share what is empty. */
const none: readonly never[] = []

function joined<T>(some: readonly T[], more: readonly T[]): readonly T[] {
  if (more.length === 0) return some
  return some.length === 0 ? more : [...some, ...more]
}

export function makeUnderstanding(list: ListContext): Understand {
  const kept = new Map<string, SizesRead>()
  const weighed = new Map<string, MassRead>()
  const named = list.columns.map(use => ({
    ...use,
    name: use.heading === '' ? columnLetters(use.column) : use.heading,
    key: rawKey(use, use.heading === '' ? columnLetters(use.column) : use.heading),
  }))
  const titleColumn = list.columns.find(use => use.field === 'title')?.column
  const sectionKnown = list.columns.some(use => use.field === 'section')
  const headingWords = list.columns.map(use => plainWords(use.heading))

  function readSize(text: string, column: string, part: ListPart | null, unit: ListUnit | null): SizesRead {
    const key = `${column}\n${text}`
    const known = kept.get(key)
    if (known !== undefined) return known
    const read = readSizeCell(text, {
      field: part === null ? 'size' : `size ${part}`,
      column,
      part,
      options: options(lengthUnit(unit) ?? list.unit),
    })
    if (kept.size >= mostKept) kept.clear()
    kept.set(key, read)
    return read
  }

  function readMass(text: string, column: string, unit: ListUnit | null): MassRead {
    const key = `${column}\n${text}`
    const read = weighed.get(key) ?? readMassCell(text, massUnit(unit), column)
    if (weighed.size >= mostKept) weighed.clear()
    weighed.set(key, read)
    return read
  }

  function options(defaultUnit: LengthUnit | undefined) {
    return {
      ...(defaultUnit === undefined ? {} : { defaultUnit }),
      ...(list.language === '' ? {} : { language: list.language }),
      ...(list.neighboursUnit === undefined ? {} : { neighboursUnit: list.neighboursUnit }),
    }
  }

  return row => {
    const other = lineOfAnotherKind(row, titleColumn, sectionKnown, headingWords, list.columns)
    if (other !== undefined) return other
    const raw: Record<string, string> = {}
    let numbers: readonly ListedNumber[] = none
    const facts: { [F in FactField]?: string | number } = {}
    let sizes: readonly ListedSize[] = none
    let masses: readonly ListedMass[] = none
    let value: ListedValue | null = null
    let questions: readonly RowQuestion[] = none
    let remarks: readonly string[] = none
    let sides: Map<string, { part: ListPart | null; column: string; sides: Side[] }> | undefined
    const plain = { running: '', lender: '', section: '', status: '' }

    function take(read: SizesRead): void {
      sizes = joined(sizes, read.sizes)
      masses = joined(masses, read.masses)
      questions = joined(questions, read.questions)
      for (const size of read.sizes) remarks = joined(remarks, size.remarks)
    }

    for (const use of named) {
      const cell: Cell | undefined = row.cells[use.column]
      if (cell === undefined || cell === '') continue
      const text = tidy(textOf(cell))
      if (text === '' || use.field === 'ignore') continue
      const { field, key } = use
      raw[key] = raw[key] === undefined ? text : `${raw[key]}; ${text}`
      const faulty = typeof cell !== 'string' && cell.kind === 'fault'
      if (field === null || field === 'other') continue
      if (isNumberField(field)) {
        const read = readNumber(field, cell, text, use.name)
        if (read?.number !== undefined) numbers = joined(numbers, [read.number])
        if (read?.question !== undefined) questions = joined(questions, [read.question])
      } else if (field === 'size') {
        if (faulty) questions = joined(questions, [faultQuestion(field, use.name, text)])
        else take(readSize(sizeText(cell, text), use.name, use.part, use.unit))
      } else if (isSide(field)) {
        if (saysNothing(text)) continue
        sides ??= new Map()
        const group = sides.get(use.part ?? '') ?? { part: use.part, column: use.name, sides: [] }
        group.sides.push({ side: field, text, unit: lengthUnit(use.unit) })
        sides.set(use.part ?? '', group)
      } else if (field === 'mass') {
        if (saysNothing(text)) continue
        const read = readMass(text, use.name, use.unit)
        if (read.mass !== undefined) masses = joined(masses, [read.mass])
        if (read.question !== undefined) questions = joined(questions, [read.question])
      } else if (field === 'value') {
        if (saysNothing(text)) continue
        const read = readValueCell(cell, { column: use.name, language: list.language })
        if (read.question !== undefined) questions = joined(questions, [read.question])
        if (read.value === undefined) continue
        if (value === null) value = read.value
        else if (!sameAmount(value, read.value))
          remarks = joined(remarks, [`The list gives another value too: ${use.name}, ${text}. The first is taken.`])
      } else if (isFact(field)) {
        const read = readFact(field, cell, use.name)
        if (read.value !== undefined) facts[field] = joinedValue(facts[field], read.value)
        if (read.question !== undefined) questions = joined(questions, [read.question])
        if (read.remark !== undefined) remarks = joined(remarks, [read.remark])
      } else if (field === 'running' || field === 'lender' || field === 'section' || field === 'status') {
        if (!faulty) plain[field] = text
      }
    }
    for (const group of sides?.values() ?? none) {
      const field = group.part === null ? 'size' : `size ${group.part}`
      // The size in one cell says it already where a list gives both.
      if (sizes.some(size => size.part === (group.part ?? 'overall'))) {
        remarks = joined(
          remarks,
          differing(
            sizes,
            readSides(group.sides, { field, column: group.column, part: group.part, options: options(list.unit) }),
          ),
        )
      } else
        take(readSides(group.sides, { field, column: group.column, part: group.part, options: options(list.unit) }))
    }
    if (Object.keys(raw).length === 0) return { kind: 'skip', row: row.row }
    if ((facts.title ?? '') === '' && (facts.maker ?? '') === '' && numbers.length === 0) {
      const reason = 'It gives no title, no maker and no number, so nothing says which work it is.'
      return { kind: 'refused', row: row.row, column: '', reason }
    }
    return {
      kind: 'work',
      reading: { row: row.row, raw, numbers, ...plain, facts, sizes, masses, value, questions, remarks },
    }
  }
}

function rawKey(use: ColumnUse, name: string): string {
  if (use.field === null || use.field === 'other') return `column ${name}`
  return use.part === null ? use.field : `${use.field} ${use.part}`
}

function joinedValue(before: string | number | undefined, value: string | number): string | number {
  return typeof before === 'string' && before !== '' && typeof value === 'string' ? `${before}\n${value}` : value
}

function readNumber(
  field: NumberField,
  cell: Cell,
  text: string,
  column: string,
): { readonly number?: ListedNumber; readonly question?: RowQuestion } | undefined {
  if (typeof cell !== 'string' && cell.kind !== 'number') {
    const question =
      cell.kind === 'date'
        ? `The spreadsheet made a day of this number: ${text} (${cell.day}). What is the number?`
        : faultQuestion(field, column, text).question
    return { question: { field, column, kind: 'number', raw: text, question, options: [] } }
  }
  const norm = normalNumber(text)
  if (norm === '' || saysNothing(text)) return undefined
  return { number: { field, text: text.slice(0, 100), norm: norm.slice(0, 100) } }
}

/** A date in a size cell was a fraction once; a day serial shown as a number is told by the statement's own grammar. */
function sizeText(cell: Cell, text: string): string {
  return typeof cell !== 'string' && cell.kind === 'date' && !/\p{L}/u.test(text) ? cell.day : text
}

/** What the columns of sides say otherwise than the size in one cell. */
function differing(sizes: readonly ListedSize[], read: SizesRead): readonly string[] {
  return read.sizes.flatMap(size => {
    const other = sizes.find(one => one.part === size.part)
    const apart = (a: number | null | undefined, b: number | null) => a != null && b !== null && Math.abs(a - b) > 1
    if (apart(other?.height, size.height) || apart(other?.width, size.width) || apart(other?.depth, size.depth)) {
      return [`The columns of sides say otherwise than the size in one cell: ${size.raw}.`]
    }
    return []
  })
}

/** Blank lines, headings said once more, sections and totals between the works. */
function lineOfAnotherKind(
  row: TableRow,
  titleColumn: number | undefined,
  sectionKnown: boolean,
  headingWords: readonly string[],
  columns: readonly ColumnUse[],
): RowOutcome | undefined {
  let filled = 0
  let at = -1
  for (let column = 0; column < row.cells.length; column++) {
    const cell = row.cells[column]
    if (cell === undefined || cell === '' || tidy(textOf(cell)) === '') continue
    filled++
    at = column
    // What stands between the works fills three cells at most, but for the headings said once more.
    if (filled > 3) break
  }
  if (filled === 0) return { kind: 'skip', row: row.row }
  const text = tidy(textOf(row.cells[at]))
  if (filled <= 3 && row.cells.some(cell => /^(?:total|sum|summe|gesamt|somme)\b/i.test(textOf(cell).trim()))) {
    return { kind: 'refused', row: row.row, column: '', reason: 'It is a total of the list, not a work.' }
  }
  if (filled === 1) {
    const spans = row.merged?.some(([first]) => first === at) === true
    const plain = /\p{L}/u.test(text) && text.length <= 200
    const field = columns[at]?.field
    const mayBeWork =
      at === titleColumn || field === 'maker' || (field != null && field in numberFields && !/\s/.test(text))
    if (!sectionKnown && plain && (spans || !mayBeWork) && columns.length > 1)
      return { kind: 'section', row: row.row, title: text }
  }
  if (filled >= 2) {
    const again = row.cells.every((cell, column) => {
      const words = plainWords(textOf(cell))
      return words === '' || (words === headingWords[column] && words !== '')
    })
    if (again) return { kind: 'skip', row: row.row }
  }
  return undefined
}

function isNumberField(field: string): field is NumberField {
  return Object.hasOwn(numberFields, field)
}

function isSide(field: string): field is SideField {
  return (sideFields as readonly string[]).includes(field) // the literal names are wider for the question
}

function isFact(field: string): field is FactField {
  return Object.hasOwn(factColumns, field)
}

function lengthUnit(unit: ListUnit | null): LengthUnit | undefined {
  return unit === 'mm' || unit === 'cm' || unit === 'm' || unit === 'in' || unit === 'ft' ? unit : undefined
}

function massUnit(unit: ListUnit | null): MassUnit | undefined {
  return unit === 'kg' || unit === 'g' || unit === 'lb' ? unit : undefined
}

/** What a field of a reading is called for people: `size framed` is "Size in one cell, framed". */
export function fieldLabel(field: string): string {
  const [name = '', ...part] = field.split(' ')
  if (name === 'column') return part.join(' ')
  const label = Object.hasOwn(fields, name) ? fields[name as keyof typeof fields] : name // hasOwn has just said so
  const short = label === fields.size ? 'Size' : label
  return part.length === 0 ? short : `${short}, ${part.join(' ')}`
}
