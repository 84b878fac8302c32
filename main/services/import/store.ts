/** Rows that an import writes for one work: numbers, sizes, masses, what the list said, questions. */
import { numberFields } from '../../../src/checklist/fields.ts'
import { type Value, valueSaid } from '../../../src/checklist/merge.ts'
import type {
  ListedMass,
  ListedNumber,
  ListedSize,
  ListedValue,
  RowQuestion,
  RowReading,
} from '../../../src/checklist/reading.ts'
import { dateAt } from '../days.ts'
import type { Writing } from '../service.ts'
import { run } from '../sql.ts'
import { insertRow, type Queue, type Shape } from './bulk.ts'
import { listField } from './known.ts'

export const workNumberShape: Shape = {
  table: 'work_number',
  columns: ['id', 'work', 'kind', 'text', 'norm', 'party', 'by'],
}

export const workSizeShape: Shape = {
  table: 'work_size',
  columns: [
    'id',
    'work',
    'part',
    'label',
    'height',
    'width',
    'depth',
    'diameter',
    'count',
    'unit',
    'raw',
    'kind',
    'source',
    'by',
    'at',
    'approximate',
    'chosen',
  ],
}

export const workMassShape: Shape = {
  table: 'work_mass',
  columns: ['id', 'work', 'kg', 'raw', 'kind', 'source', 'by', 'at', 'approximate', 'chosen'],
}

export const workValueShape: Shape = {
  table: 'work_value',
  columns: ['id', 'work', 'value', 'currency', 'day', 'source', 'by'],
}

export const importValueShape: Shape = {
  table: 'import_value',
  columns: ['id', 'work', 'field', 'value', 'run', 'at'],
}

const importQuestionShape: Shape = {
  table: 'import_question',
  columns: [
    'id',
    'run',
    'work',
    'row',
    'column_name',
    'field',
    'raw',
    'question',
    'kind',
    'options',
    'asked_at',
    'asked_by',
  ],
}

/** What goes with each value: where it comes from, who brought it in, when. */
export interface Origin {
  readonly run: string
  readonly source: string
  readonly by: string
  readonly at: string
}

export function numberRow(
  id: string,
  work: string,
  number: ListedNumber,
  lender: string | null,
  by: string,
): readonly Value[] {
  const kind = numberFields[number.field]
  const own = kind === 'permanent' || kind === 'former'
  return [id, work, kind, number.text, number.norm, own ? null : lender, by]
}

export function sizeRow(id: string, work: string, size: ListedSize, origin: Omit<Origin, 'run'>): readonly Value[] {
  return [
    id,
    work,
    size.part,
    size.label,
    size.height,
    size.width,
    size.depth,
    size.diameter,
    size.count,
    size.unit,
    size.raw,
    'listed',
    origin.source,
    origin.by,
    origin.at,
    size.approximate ? 1 : 0,
    0,
  ]
}

export function massRow(id: string, work: string, mass: ListedMass, origin: Omit<Origin, 'run'>): readonly Value[] {
  return [id, work, mass.kg, mass.raw, 'listed', origin.source, origin.by, origin.at, mass.approximate ? 1 : 0, 0]
}

/** In force from the day on which the list was taken in. */
export function valueRow(id: string, work: string, value: ListedValue, origin: Omit<Origin, 'run'>): readonly Value[] {
  return [id, work, value.minor, value.currency, dateAt(origin.at), origin.source, origin.by]
}

export function listedRow(id: string, work: string, text: string, origin: Origin): readonly Value[] {
  return [id, work, listField, text, origin.run, origin.at]
}

export function storeNumber(
  writing: Writing,
  work: string,
  number: ListedNumber,
  lender: string | null,
  by: string,
): void {
  insertRow(writing.db, workNumberShape, numberRow(writing.newId(), work, number, lender, by))
}

export function storeSize(writing: Writing, work: string, size: ListedSize, origin: Omit<Origin, 'run'>): void {
  insertRow(writing.db, workSizeShape, sizeRow(writing.newId(), work, size, origin))
}

export function storeMass(writing: Writing, work: string, mass: ListedMass, origin: Omit<Origin, 'run'>): void {
  insertRow(writing.db, workMassShape, massRow(writing.newId(), work, mass, origin))
}

export function storeValue(writing: Writing, work: string, value: ListedValue, origin: Omit<Origin, 'run'>): void {
  insertRow(writing.db, workValueShape, valueRow(writing.newId(), work, value, origin))
}

/** What the list said about the work, as written, and what was read from it where that is something else. */
export function listedText(reading: RowReading, lender: string | null, status: string | undefined): string {
  const { raw } = reading
  const facts: Record<string, Value> = {}
  for (const field in reading.facts) {
    const value = reading.facts[field as keyof typeof reading.facts] // the names of its own fields
    if (value !== undefined && value !== raw[field]) facts[field] = value
  }
  if (status !== undefined) facts.status = status
  if (reading.value !== null) facts.value = valueSaid(reading.value)
  return JSON.stringify({ raw, facts, lender })
}

/** With a queue, the row is written when that is flushed; without, at once. */
export function storeListed(writing: Writing, work: string, text: string, origin: Origin, queue?: Queue): void {
  const values = listedRow(writing.newId(), work, text, origin)
  if (queue === undefined) insertRow(writing.db, importValueShape, values)
  else queue.put(importValueShape, values)
}

/** The new list takes the place of the last one; the journal keeps what that said. */
export function replaceListed(writing: Writing, work: string, text: string, origin: Origin): void {
  const changed = run(
    writing.db,
    `UPDATE import_value SET value = :text, run = :run, at = :at
     WHERE id = (SELECT id FROM import_value WHERE work = :work AND field = :field ORDER BY at DESC, id DESC LIMIT 1)`,
    { text, run: origin.run, at: origin.at, work, field: listField },
  )
  if (changed === 0) storeListed(writing, work, text, origin)
}

export function storeQuestion(
  writing: Writing,
  work: string,
  row: number,
  question: RowQuestion,
  origin: Origin,
  queue: Queue,
): void {
  queue.put(importQuestionShape, [
    writing.newId(),
    origin.run,
    work,
    row,
    question.column,
    question.field,
    question.raw,
    question.question,
    question.kind,
    JSON.stringify(question.options),
    question.asked === true ? origin.at : null,
    question.asked === true ? origin.by : null,
  ])
}

/** Questions about a field that a newer list says something else about need no answer any more. */
export function dropQuestions(writing: Writing, work: string, field: string, origin: Origin): void {
  run(
    writing.db,
    `UPDATE import_question SET answer = 'the list says something else now', answered_by = :by, answered_at = :at
     WHERE work = :work AND field = :field AND answer IS NULL`,
    { work, field, by: origin.by, at: origin.at },
  )
}
