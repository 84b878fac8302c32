/**
 * What a row changes in a work that is there. The rule it keeps: a field that a person changed since the last list
 * keeps its value and the difference is shown; sizes, masses and values come as new rows beside the old; a cell that is empty,
 * or says what the last list said, changes nothing.
 */
import type { Amount } from '../money/currency.ts'
import { type FactField, numberFields } from './fields.ts'
import { tidy } from './plain-text.ts'
import type { ListedMass, ListedNumber, ListedSize, ListedValue, RowQuestion, RowReading } from './reading.ts'
import { sameAmount } from './values.ts'

export type Value = string | number | null

export interface CurrentWork {
  readonly facts: { readonly [F in FactField]: Value }
  readonly lender: string | null
  readonly numbers: readonly { readonly kind: string; readonly norm: string; readonly party: string | null }[]
  readonly sizes: readonly CurrentSize[]
  readonly masses: readonly CurrentMass[]
  /** Its newest valuation until today, and what loans that are open agree. */
  readonly values: readonly Amount[]
  readonly entry: { readonly running: string; readonly section: string; readonly status: string } | null
}

export interface CurrentSize {
  readonly part: string
  /** The text it was read from. */
  readonly raw: string
  readonly height: number | null
  readonly width: number | null
  readonly depth: number | null
  readonly diameter: number | null
  readonly inForce: boolean
  readonly newestListed: boolean
}

export interface CurrentMass {
  readonly kg: number
  readonly inForce: boolean
  readonly newestListed: boolean
}

/** What the last list said about the work: as written, and what was read from it where that is another thing. */
export interface LastListed {
  readonly raw: Readonly<Record<string, string>>
  readonly facts: Readonly<Record<string, Value>>
  readonly lender: string | null
}

export interface FieldChange {
  readonly field: string
  readonly from: Value
  readonly to: Value
}

/** A difference that stays: the list says one thing, a person another. */
export interface KeptField {
  readonly field: string
  readonly list: string
  readonly yours: string
}

export interface Merge {
  readonly facts: readonly (FieldChange & { readonly field: FactField })[]
  /** The lender's id, where it changes. */
  readonly lender: string | null | undefined
  readonly numbers: readonly ListedNumber[]
  readonly sizes: readonly ListedSize[]
  readonly masses: readonly ListedMass[]
  readonly value: ListedValue | null
  /** What it was worth until then; null for nothing known. */
  readonly valued: Amount | null
  /** Fields of the entry in the show, where they change. */
  readonly entry: { readonly running?: string; readonly section?: string; readonly status?: string }
  readonly kept: readonly KeptField[]
  readonly questions: readonly RowQuestion[]
  /** Whether anything of the work itself changes. */
  readonly changes: boolean
  /** Whether what the list says is to be written down anew. */
  readonly says: boolean
}

/** Whether the house's own number is the one it has now or had once, a list does not decide. */
function alike(kind: string, listed: string): boolean {
  return kind === listed || (own.has(kind) && own.has(listed))
}

const own: ReadonlySet<string> = new Set(['permanent', 'former'])

export function mergeRow(
  reading: RowReading,
  lender: string | null,
  work: CurrentWork,
  last: LastListed | undefined,
  status: string | undefined,
): Merge {
  const kept: KeptField[] = []
  const facts: (FieldChange & { field: FactField })[] = []
  const saidBefore = (field: string) =>
    last !== undefined && last.raw[field] !== undefined && last.raw[field] === reading.raw[field]

  for (const [name, value] of Object.entries(reading.facts)) {
    const field = name as FactField // the keys of facts are its fields
    const now = work.facts[field]
    const before = last === undefined ? undefined : (last.facts[field] ?? last.raw[field])
    const verdict = compare(value, now, before)
    if (verdict === 'take') facts.push({ field, from: now, to: value })
    else if (verdict === 'keep') kept.push({ field, list: String(value), yours: now === null ? '' : String(now) })
  }

  let newLender: string | null | undefined
  if (lender !== null && lender !== work.lender) {
    const verdict = compare(lender, work.lender, last?.lender ?? undefined)
    if (verdict === 'take') newLender = lender
    else kept.push({ field: 'lender', list: reading.lender, yours: '' })
  }

  const numbers = reading.numbers.filter(
    number =>
      !saidBefore(number.field) &&
      !work.numbers.some(one => one.norm === number.norm && alike(one.kind, numberFields[number.field])),
  )
  const sizes = reading.sizes.filter(
    size => !rawSaidBefore(size.raw, reading, last) && !work.sizes.some(one => sameSize(one, size)),
  )
  const masses = reading.masses.filter(
    mass =>
      !rawSaidBefore(mass.raw, reading, last) &&
      !work.masses.some(one => (one.inForce || one.newestListed) && Math.abs(one.kg - mass.kg) < 0.005),
  )
  const { value: said } = reading
  // The heading may name another currency for the same figures.
  const saidSo = said !== null && last?.facts.value === valueSaid(said)
  const value = said !== null && !saidSo && !work.values.some(one => sameAmount(one, said)) ? said : null
  const questions = reading.questions.filter(question => !questionAskedBefore(question, reading, last))
  const entry = mergeEntry(reading, work, last, status, kept)
  const changes =
    facts.length > 0 ||
    newLender !== undefined ||
    numbers.length > 0 ||
    sizes.length > 0 ||
    masses.length > 0 ||
    value !== null ||
    questions.length > 0 ||
    Object.keys(entry).length > 0
  const differs = last === undefined || JSON.stringify(sorted(last.raw)) !== JSON.stringify(sorted(reading.raw))
  return {
    facts,
    lender: newLender,
    numbers,
    sizes,
    masses,
    value,
    valued: work.values[0] ?? null,
    entry,
    kept,
    questions,
    changes,
    says: differs && (changes || kept.length > 0),
  }
}

/** An amount as what a list said is kept: its currency and minor units. */
export function valueSaid({ minor, currency }: Amount): string {
  return `${currency} ${minor}`
}

function sorted(raw: Readonly<Record<string, string>>): readonly (readonly [string, string | undefined])[] {
  return Object.keys(raw)
    .sort()
    .map(key => [key, raw[key]])
}

/** Take the list's value, keep the person's, or nothing to do. `before` is what the last list said; undefined for none. */
function compare(list: Value, now: Value, before: Value | undefined): 'same' | 'take' | 'keep' {
  if (same(list, now)) return 'same'
  if (now === null || now === '') return before !== undefined && same(list, before) ? 'keep' : 'take'
  return before !== undefined && same(before, now) ? 'take' : 'keep'
}

function same(a: Value, b: Value): boolean {
  if (typeof a === 'number' || typeof b === 'number')
    return a !== null && b !== null && a !== '' && b !== '' && Math.abs(Number(a) - Number(b)) < 1e-9
  return tidy(a ?? '') === tidy(b ?? '')
}

function sameSize(one: CurrentSize, size: ListedSize): boolean {
  if (one.part !== size.part || !(one.inForce || one.newestListed)) return false
  // What the list leaves out does not differ; half a tenth of a millimetre is no difference either.
  const close = (a: number | null, b: number | null) => b === null || (a !== null && Math.abs(a - b) < 0.05)
  return (
    close(one.height, size.height) &&
    close(one.width, size.width) &&
    close(one.depth, size.depth) &&
    close(one.diameter, size.diameter)
  )
}

/** Whether the last list held this very text among its size and weight cells. */
function rawSaidBefore(raw: string, reading: RowReading, last: LastListed | undefined): boolean {
  if (last === undefined) return false
  const measures = Object.keys(reading.raw).filter(key => /^(?:size|height|width|depth|diameter|mass)/.test(key))
  const fields = measures.filter(key => reading.raw[key] === raw || raw.includes(reading.raw[key] ?? '\n'))
  return fields.length > 0 && measures.every(key => last.raw[key] === reading.raw[key])
}

function questionAskedBefore(question: RowQuestion, reading: RowReading, last: LastListed | undefined): boolean {
  if (last === undefined) return false
  const [name = ''] = question.field.split(' ')
  const fields = Object.keys(reading.raw).filter(key =>
    name === 'size' ? /^(?:size|height|width|depth|diameter)/.test(key) : key === name,
  )
  return fields.length > 0 && fields.every(key => last.raw[key] === reading.raw[key])
}

/** A running number is ours once it is given: another one in a list is shown, not taken. */
function mergeEntry(
  reading: RowReading,
  work: CurrentWork,
  last: LastListed | undefined,
  status: string | undefined,
  kept: KeptField[],
): Merge['entry'] {
  const { entry } = work
  if (entry === null) return {}
  const change: { running?: string; section?: string; status?: string } = {}
  if (reading.running !== '' && reading.running !== entry.running) {
    if (entry.running === '') change.running = reading.running
    else kept.push({ field: 'running', list: reading.running, yours: entry.running })
  }
  const section = reading.section
  if (section !== '' && tidy(section) !== tidy(entry.section)) {
    const verdict = compare(section, entry.section, last?.raw.section)
    if (verdict === 'take') change.section = section
    else kept.push({ field: 'section', list: section, yours: entry.section })
  }
  if (status !== undefined && status !== entry.status) {
    const before = last?.facts.status ?? undefined
    const verdict = compare(status, entry.status === 'wanted' ? '' : entry.status, before)
    if (verdict === 'take') change.status = status
    else if (status !== 'wanted') kept.push({ field: 'status', list: status, yours: entry.status })
  }
  return change
}
