/** Rows that an import writes for one work: numbers, sizes, masses, what the list said, questions. */
import { numberFields } from '../../../src/checklist/fields.ts'
import type { Value } from '../../../src/checklist/merge.ts'
import type { ListedMass, ListedNumber, ListedSize, RowQuestion, RowReading } from '../../../src/checklist/reading.ts'
import type { Writing } from '../service.ts'
import { insert, run } from '../sql.ts'
import { listField } from './known.ts'

/** What goes with each value: where it comes from, who brought it in, when. */
export interface Origin {
  readonly run: string
  readonly source: string
  readonly by: string
  readonly at: string
}

export function storeNumber(writing: Writing, work: string, number: ListedNumber, lender: string | null): void {
  const kind = numberFields[number.field]
  insert(writing.db, 'work_number', {
    id: writing.newId(),
    work,
    kind,
    text: number.text,
    norm: number.norm,
    // A permanent number is one wherever it is written; the others are somebody's.
    party: kind === 'permanent' ? null : lender,
  })
}

export function storeSize(writing: Writing, work: string, size: ListedSize, origin: Omit<Origin, 'run'>): void {
  insert(writing.db, 'work_size', {
    id: writing.newId(),
    work,
    part: size.part,
    label: size.label,
    height: size.height,
    width: size.width,
    depth: size.depth,
    diameter: size.diameter,
    count: size.count,
    unit: size.unit,
    raw: size.raw,
    kind: 'listed',
    source: origin.source,
    by: origin.by,
    at: origin.at,
    approximate: size.approximate ? 1 : 0,
    chosen: 0,
  })
}

export function storeMass(writing: Writing, work: string, mass: ListedMass, origin: Omit<Origin, 'run'>): void {
  insert(writing.db, 'work_mass', {
    id: writing.newId(),
    work,
    kg: mass.kg,
    raw: mass.raw,
    kind: 'listed',
    source: origin.source,
    by: origin.by,
    at: origin.at,
    approximate: mass.approximate ? 1 : 0,
    chosen: 0,
  })
}

/** What the list said about the work, as written, and what was read from it where that is something else. */
export function listedText(reading: RowReading, lender: string | null, status: string | undefined): string {
  const facts: Record<string, Value> = {}
  for (const [field, value] of Object.entries(reading.facts)) if (value !== reading.raw[field]) facts[field] = value
  if (status !== undefined) facts.status = status
  return JSON.stringify({ raw: reading.raw, facts, lender })
}

export function storeListed(writing: Writing, work: string, text: string, origin: Origin): void {
  insert(writing.db, 'import_value', {
    id: writing.newId(),
    work,
    field: listField,
    value: text,
    run: origin.run,
    at: origin.at,
  })
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
): void {
  insert(writing.db, 'import_question', {
    id: writing.newId(),
    run: origin.run,
    work,
    row,
    column_name: question.column,
    field: question.field,
    raw: question.raw,
    question: question.question,
    kind: question.kind,
    options: JSON.stringify(question.options),
  })
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
