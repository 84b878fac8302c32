/**
 * Finds the headings of a list and what each column is. The rule it keeps: what a person said about a column goes
 * first, then what was remembered of this lender's lists, then the heading, then the contents; what nobody knows stays
 * unnamed and is kept as written.
 */

import { ownHeading } from '../sheets/checklist-columns.ts'
import { type TableRow, textOf } from './cell.ts'
import type { ColumnUse, Field, ListPart, ListUnit } from './fields.ts'
import { type HeadingField, type ListLanguage, type ReadHeading, readGroupHeading, readHeading } from './headings.ts'
import { plainWords } from './plain-text.ts'

/** One column as a person takes it: its number from 1, or its heading. */
export interface GivenColumn {
  readonly column: number | string
  readonly field: Field
  readonly unit?: ListUnit | undefined
  readonly part?: ListPart | undefined
}

export interface RememberedColumn {
  readonly heading: string
  readonly field: Field
  readonly unit: ListUnit | null
  readonly part: ListPart | null
}

export interface ListShape {
  /** The number of the row that holds the headings; 0 where there are none. */
  readonly headingRow: number
  readonly columns: readonly ColumnUse[]
  readonly language: ListLanguage | ''
  /** How many columns the headings tell. */
  readonly recognised: number
}

export interface ShapeChoices {
  readonly headingRow?: number | undefined
  readonly mapping?: readonly GivenColumn[] | undefined
  readonly remembered?: readonly RememberedColumn[] | undefined
}

interface Headings {
  readonly row: number
  readonly texts: readonly string[]
  readonly read: readonly ReadHeading[]
  readonly score: number
  /** How many different things it names, and how many of its words say nothing. */
  readonly different: number
  readonly unknown: number
}

/** Fields that several columns may fill together; of any other, the first column counts. */
const joined: ReadonlySet<HeadingField> = new Set([
  'note',
  'handling',
  'loanTerms',
  'inscriptions',
  'description',
  'distinguishing',
  'other',
  'ignore',
])

/** Finds headings and columns in the first rows of a sheet. */
export function recognise(top: readonly TableRow[], choices: ShapeChoices = {}): ListShape {
  const known = knownHeadings(choices)
  const headings = findHeadings(top, choices.headingRow, known)
  const data = top.filter(row => row.row > headings.row)
  const width = Math.max(headings.texts.length, ...data.map(row => row.cells.length))
  const said = saidUses(width, headings.texts, choices)
  // What a person said of one column no other column takes from it, wherever it stands.
  const taken = new Set([...said.values()].map(use => keyOf(use.field ?? 'ignore', use.part)))
  const columns: ColumnUse[] = []
  for (let column = 0; column < width; column++) {
    const heading = headings.texts[column] ?? ''
    const use = said.get(column) ?? readUse(column, heading, headings.read[column], data, taken)
    if (use.field !== null) taken.add(keyOf(use.field, use.part))
    columns.push(use)
  }
  return {
    headingRow: headings.row,
    columns,
    language: languageOf(headings.read),
    recognised: headings.read.filter((read, i) => read.field !== null || known.has(wordsOf(headings.texts[i]))).length,
  }
}

const sized: ReadonlySet<string> = new Set(['height', 'width', 'depth', 'diameter', 'size'])

function keyOf(field: HeadingField, part: ListPart | null): string {
  return sized.has(field) ? `${field} ${part ?? ''}` : field
}

/** A heading as two of them are compared; one of marks alone, like "#", is itself. */
function wordsOf(heading: string | undefined): string {
  return heading === undefined ? '' : plainWords(heading) || heading.trim()
}

/** Headings that a person named, now or for an earlier list, each with what it counts as when a heading row is sought. */
function knownHeadings(choices: ShapeChoices): ReadonlyMap<string, string> {
  const known = new Map<string, string>()
  const given = choices.mapping?.flatMap(one =>
    typeof one.column === 'string' ? [{ ...one, heading: one.column }] : [],
  )
  for (const { heading, field, part } of [...(choices.remembered ?? []), ...(given ?? [])]) {
    const words = wordsOf(heading)
    if (words !== '') known.set(words, joined.has(field) ? `${field} ${words}` : keyOf(field, part ?? null))
  }
  return known
}

/** The columns that a person named, now or for an earlier list of this lender. */
function saidUses(width: number, texts: readonly string[], choices: ShapeChoices): ReadonlyMap<number, ColumnUse> {
  const said = new Map<number, ColumnUse>()
  const times = new Map<string, number>()
  for (let column = 0; column < width; column++) {
    const heading = texts[column] ?? ''
    const nth = times.get(wordsOf(heading)) ?? 0
    times.set(wordsOf(heading), nth + 1)
    const use = saidUse(column, heading, nth, choices)
    if (use !== undefined) said.set(column, use)
  }
  return said
}

/** @param nth how many columns before this one have the same heading: a list may have two "Dimensions" */
function saidUse(column: number, heading: string, nth: number, choices: ShapeChoices): ColumnUse | undefined {
  const words = wordsOf(heading)
  const given = choices.mapping?.find(one =>
    typeof one.column === 'number' ? one.column === column + 1 : words !== '' && wordsOf(one.column) === words,
  )
  if (given !== undefined) {
    const read = readHeading(heading)
    return {
      column,
      heading,
      field: given.field,
      unit: given.unit ?? read.unit,
      part: given.part ?? read.part,
      by: 'given',
    }
  }
  const same = words === '' ? [] : (choices.remembered ?? []).filter(one => wordsOf(one.heading) === words)
  const kept = same[nth] ?? same.at(-1)
  return kept === undefined
    ? undefined
    : { column, heading, field: kept.field, unit: kept.unit, part: kept.part, by: 'remembered' }
}

function readUse(
  column: number,
  heading: string,
  read: ReadHeading | undefined,
  data: readonly TableRow[],
  taken: ReadonlySet<string>,
): ColumnUse {
  const unknown = { column, heading, field: null, unit: read?.unit ?? null, part: read?.part ?? null, by: '' } as const
  if (read === undefined || read.field === null) return unknown
  const { unit, part } = read
  if (read.field === 'number') {
    const running = isRunning(data.filter(isFull).map(row => textOf(row.cells[column])))
    const field = running && !taken.has('running') ? 'running' : 'lenderNumber'
    return taken.has(field) ? unknown : { column, heading, field, unit, part, by: 'contents' }
  }
  if (taken.has(keyOf(read.field, part)) && !joined.has(read.field)) return unknown
  return { column, heading, field: read.field, unit, part, by: 'heading' }
}

/** Lines between the works (sections, totals) hold little and say nothing of a column. */
function isFull(row: TableRow): boolean {
  return row.cells.filter(cell => textOf(cell).trim() !== '').length >= 2
}

/** A bare "No." counts the rows if its figures are whole and go up from row to row by one, nearly always. */
export function isRunning(texts: readonly string[]): boolean {
  const filled = texts.map(text => text.trim()).filter(text => /\d/.test(text))
  if (filled.length === 0) return true
  const numbers = filled.map(text => (/^\d{1,6}[.)]?$/.test(text) ? Number.parseInt(text, 10) : undefined))
  if (numbers.some(number => number === undefined)) return false
  let steps = 0
  for (let i = 1; i < numbers.length; i++) if ((numbers[i] ?? 0) - (numbers[i - 1] ?? 0) === 1) steps++
  const start = numbers[0] ?? 0
  return steps >= (numbers.length - 1) * 0.8 && (numbers.length > 2 || start <= 2)
}

function languageOf(read: readonly ReadHeading[]): ListLanguage | '' {
  const counts = { en: 0, fr: 0, de: 0 }
  for (const one of read) if (one.language !== null) counts[one.language]++
  const [best, next] = (['en', 'fr', 'de'] as const).toSorted((a, b) => counts[b] - counts[a])
  return best === undefined || next === undefined || counts[best] === counts[next] ? '' : best
}

const none: Headings = { row: 0, texts: [], read: [], score: 0, different: 0, unknown: 0 }

function findHeadings(
  top: readonly TableRow[],
  chosen: number | undefined,
  known: ReadonlyMap<string, string>,
): Headings {
  if (chosen === 0) return none
  let best = none
  for (const [index, row] of top.entries()) {
    if (chosen !== undefined && row.row !== chosen) continue
    const single = headingsOf(row.row, textsOf(row), known)
    const above = top[index - 1]
    const pair = above === undefined ? null : withAbove(above, row, known)
    const found = pair !== null && pair.score > single.score ? pair : single
    if (found.score > best.score) best = found
    if (chosen !== undefined) return found
  }
  return best.score >= 2 || isWholeHeading(best, top) || isTopHeading(best, top) ? best : none
}

/** A list of one column: its only heading is known and stands in the first row. */
function isWholeHeading(found: Headings, top: readonly TableRow[]): boolean {
  const filled = found.texts.filter(text => text !== '')
  return found.score > 0 && filled.length === 1 && found.row === top[0]?.row
}

/** The first row of a list says two things or more, and as many as it leaves unsaid. */
function isTopHeading({ row, different, unknown }: Headings, top: readonly TableRow[]): boolean {
  return row === top[0]?.row && different >= 2 && unknown <= different
}

function textsOf(row: TableRow): readonly string[] {
  return row.cells.map(cell => (typeof cell === 'string' && cell.length <= 120 ? cell.trim() : ''))
}

function headingsOf(row: number, texts: readonly string[], known: ReadonlyMap<string, string>): Headings {
  const filled = texts.filter(text => text !== '')
  // Our own checklist, as it was written: its headings mean exactly what they meant then.
  const ours = filled.length >= 8 && filled.every(text => ownHeading(text) !== null)
  return scored(row, texts, texts.map(ours ? readOwn : readOrNothing), known)
}

function readOwn(text: string): ReadHeading {
  const own = ownHeading(text)
  return own === null ? nothing : { ...own, language: null }
}

const nothing: ReadHeading = { field: null, unit: null, part: null, language: null }

function readOrNothing(text: string): ReadHeading {
  return text === '' ? nothing : readHeading(text)
}

function scored(
  row: number,
  texts: readonly string[],
  read: readonly ReadHeading[],
  known: ReadonlyMap<string, string>,
): Headings {
  const told = read.map(
    (one, i) => known.get(wordsOf(texts[i])) ?? (one.field === null ? null : keyOf(one.field, one.part)),
  )
  const different = new Set(told.filter(each => each !== null))
  const unknown = texts.filter((text, i) => text !== '' && told[i] === null).length
  // Rows of works hold a word or two that could be a heading, beside many that could not.
  return { row, texts, read, score: different.size - unknown * 0.2, different: different.size, unknown }
}

/** Headings in two rows: "Framed (cm)" spans H, W, D below it, and the others stand in either row. */
function withAbove(above: TableRow, row: TableRow, known: ReadonlyMap<string, string>): Headings {
  const upper = textsOf(above)
  const lower = textsOf(row)
  const width = Math.max(upper.length, lower.length)
  const texts: string[] = []
  const read: ReadHeading[] = []
  let spanned = ''
  for (let column = 0; column < width; column++) {
    const over = upper[column] ?? ''
    const under = lower[column] ?? ''
    const ends = above.merged?.some(([first, last]) => column > first && column <= last)
    if (over !== '') spanned = over
    else if (above.merged !== undefined && ends !== true) spanned = ''
    if (under === '') {
      texts.push(over)
      read.push(readOrNothing(over))
      continue
    }
    const own = readHeading(under)
    const group = spanned === '' || spanned === under ? nothing : readGroupHeading(spanned)
    const joins = sized.has(own.field ?? '') && (group.part !== null || group.unit !== null)
    texts.push(joins ? `${spanned} ${under}` : under)
    read.push(joins ? { ...own, part: own.part ?? group.part, unit: own.unit ?? group.unit } : own)
  }
  return scored(row.row, texts, read, known)
}

/** So many headings are remembered of one lender, the newest first. */
const mostRemembered = 500

/**
 * What to remember of a lender's list: every column with a heading whose use is known, then what earlier lists of the
 * lender had and this one does not. What contents told is told anew by those of the next list.
 */
export function toRemember(
  columns: readonly ColumnUse[],
  before: readonly RememberedColumn[] = [],
): readonly RememberedColumn[] {
  const now = columns.flatMap(({ heading, field, unit, part, by }) =>
    heading === '' || field === null || by === 'contents' ? [] : [{ heading, field, unit, part }],
  )
  const here = new Set(columns.map(({ heading }) => wordsOf(heading)))
  return [...now, ...before.filter(({ heading }) => !here.has(wordsOf(heading)))].slice(0, mostRemembered)
}
