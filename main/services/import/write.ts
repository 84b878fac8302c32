/** Writes a plan into the catalogue, inside one edit: lenders, exhibition, sections, works, entries, questions. */

import type { FactField } from '../../../src/checklist/fields.ts'
import { factColumns, numberFields } from '../../../src/checklist/fields.ts'
import { newWork } from '../../../src/checklist/match.ts'
import { sortKeyOfNormal } from '../../../src/checklist/numbers.ts'
import type { RowQuestion } from '../../../src/checklist/reading.ts'
import { hangingSize, inForce, type SizeFact } from '../../../src/model/in-force.ts'
import { plainName } from '../parties.ts'
import type { Writing } from '../service.ts'
import { insert, update, type Value, value } from '../sql.ts'
import { sortKeys } from '../works/facts.ts'
import { refreshMass, refreshNumbers, refreshSize } from '../works/figures.ts'
import { makeQueue, type Queue, type Shape } from './bulk.ts'
import type { PlannedRow, PlannedWork } from './plan.ts'
import { makeShow } from './show.ts'
import type { Lender, Show } from './source.ts'
import {
  dropQuestions,
  listedText,
  type Origin,
  replaceListed,
  storeListed,
  storeMass,
  storeNumber,
  storeQuestion,
  storeSize,
} from './store.ts'

export interface Written {
  readonly run: string
  readonly exhibition: string | null
}

export interface RunFacts {
  readonly name: string
  readonly hash: string
  readonly mapping: string
  readonly lender: Lender | null
  readonly show: Show | null
  readonly counts: { readonly added: number; readonly updated: number; readonly unchanged: number }
}

const factFields = Object.keys(factColumns) as FactField[] // Object.keys forgets the literal names
const emptyFact = Object.fromEntries(
  factFields.map(field => [field, field === 'lightLimit' || field === 'uvLimit' ? null : '']),
) as Record<FactField, Value> // fromEntries forgets the keys

const workShape: Shape = {
  table: 'work',
  columns: [
    'id',
    ...factFields.map(field => factColumns[field]),
    'lender',
    'sort_title',
    'sort_maker',
    'sort_number',
    'numbers',
    'hang_height',
    'hang_width',
    'hang_depth',
    'hang_diameter',
    'hang_part',
    'hang_source',
    'hang_at',
    'mass',
    'mass_source',
    'created_at',
  ],
}

const orderOfNumbers = ['permanent', 'lender', 'loan', 'entry']

export function writePlan(
  writing: Writing,
  plan: readonly PlannedRow[],
  facts: RunFacts,
  each: (done: number) => void,
): Written {
  const { db } = writing
  const at = writing.now()
  const by = writing.person?.name ?? ''
  const parties = new Map<string, string>()
  const spelled = new Map<string, string>()

  function party(lender: Lender | null): string | null {
    if (lender === null) return null
    if (lender.id !== null) return lender.id
    const known = spelled.get(lender.name)
    if (known !== undefined) return known
    const norm = plainName(lender.name)
    const there = parties.get(norm)
    const id = there ?? writing.newId()
    if (there === undefined)
      insert(db, 'party', { id, kind: 'lender', name: lender.name, name_norm: norm, contact: '', credit_line: '' })
    parties.set(norm, id)
    spelled.set(lender.name, id)
    return id
  }

  const queue = makeQueue(db, workShape)
  const show = facts.show === null ? null : makeShow(writing, facts.show, queue)
  const origin: Origin = { run: writing.newId(), source: facts.name, by, at }
  insert(db, 'import_run', {
    id: origin.run,
    name: facts.name,
    hash: facts.hash,
    lender: party(facts.lender),
    exhibition: show?.exhibition ?? null,
    mapping: facts.mapping,
    ...facts.counts,
    at,
    by,
  })
  const added = new Map<number, string>()
  const asked: { work: string; row: number; question: RowQuestion }[] = []
  for (const [index, planned] of plan.entries()) {
    if (index % 500 === 0) each(index)
    if (planned.kind !== 'work') continue
    const lender = party(planned.lender)
    const work =
      planned.work === null
        ? addWork(writing, planned, lender, origin, queue)
        : changeWork(writing, planned, lender, origin, added, queue)
    if (planned.work === null) added.set(planned.reading.row, work)
    if (show !== null && planned.enters) show.enter(work, planned)
    else if (show !== null && planned.merge !== null) show.change(work, planned.merge.entry)
    for (const question of planned.questions) asked.push({ work, row: planned.reading.row, question })
  }
  // Last, since a question may name a work that a later row brought in.
  for (const { work, row, question } of asked) storeQuestion(writing, work, row, named(question, added), origin, queue)
  queue.flush()
  return { run: origin.run, exhibition: show?.exhibition ?? null }
}

/** Options that named a work by its row name it by its id now. */
function named(question: RowQuestion, added: ReadonlyMap<number, string>): RowQuestion {
  if (question.kind !== 'same work') return question
  return {
    ...question,
    options: question.options.map(option =>
      option.work?.startsWith(newWork) ? { ...option, work: idOfRow(option.work, added) } : option,
    ),
  }
}

function idOfRow(work: string, added: ReadonlyMap<number, string>): string {
  const id = added.get(Number(work.slice(newWork.length)))
  if (id === undefined) throw new Error(`No work was added for ${work}`)
  return id
}

function addWork(writing: Writing, planned: PlannedWork, lender: string | null, origin: Origin, queue: Queue): string {
  const { reading } = planned
  const id = writing.newId()
  const sizes = reading.sizes.map((size): SizeFact => ({ ...size, kind: 'listed', at: origin.at, chosen: false }))
  const hanging = hangingSize(sizes)
  const mass = inForce(reading.masses.map(one => ({ ...one, kind: 'listed' as const, at: origin.at, chosen: false })))
  const numbers = reading.numbers.toSorted(
    (a, b) => orderOfNumbers.indexOf(numberFields[a.field]) - orderOfNumbers.indexOf(numberFields[b.field]),
  )
  const { sort_title, sort_maker } = sortKeys(String(reading.facts.title ?? ''), String(reading.facts.maker ?? ''))
  queue.put(workShape, [
    id,
    ...factFields.map(field => reading.facts[field] ?? emptyFact[field]),
    lender,
    sort_title,
    sort_maker,
    numbers[0] === undefined ? '' : sortKeyOfNormal(numbers[0].norm),
    [...new Set(numbers.flatMap(number => [number.text, number.norm]))].join(' '),
    hanging?.height ?? null,
    hanging?.width ?? null,
    hanging?.depth ?? null,
    hanging?.diameter ?? null,
    hanging?.part ?? '',
    hanging === undefined ? '' : 'listed',
    hanging === undefined ? '' : origin.at,
    mass?.kg ?? null,
    mass === undefined ? '' : 'listed',
    origin.at,
  ])
  for (const number of numbers) storeNumber(writing, id, number, lender, queue)
  for (const size of reading.sizes) storeSize(writing, id, size, origin, queue)
  for (const one of reading.masses) storeMass(writing, id, one, origin, queue)
  storeListed(writing, id, listedText(reading, lender, planned.status), origin, queue)
  return id
}

function changeWork(
  writing: Writing,
  planned: PlannedWork,
  lender: string | null,
  origin: Origin,
  added: ReadonlyMap<number, string>,
  queue: Queue,
): string {
  const { db } = writing
  const { reading, merge } = planned
  const named = planned.work ?? ''
  if (merge === null) {
    const id = named.startsWith(newWork) ? idOfRow(named, added) : named
    storeListed(writing, id, listedText(reading, lender, planned.status), origin, queue)
    return id
  }
  const columns: Record<string, Value> = {}
  for (const change of merge.facts) columns[factColumns[change.field]] = change.to
  if (merge.lender !== undefined) columns.lender = lender
  update(db, 'work', named, columns)
  if (columns.title !== undefined || columns.maker !== undefined) {
    const title = value<string>(db, 'SELECT title FROM work WHERE id = :named', { named }) ?? ''
    const maker = value<string>(db, 'SELECT maker FROM work WHERE id = :named', { named }) ?? ''
    update(db, 'work', named, sortKeys(title, maker))
  }
  for (const number of merge.numbers) storeNumber(writing, named, number, lender)
  if (merge.numbers.length > 0) refreshNumbers(db, named)
  for (const size of merge.sizes) storeSize(writing, named, size, origin)
  if (merge.sizes.length > 0) refreshSize(db, named)
  for (const mass of merge.masses) storeMass(writing, named, mass, origin)
  if (merge.masses.length > 0) refreshMass(db, named)
  if (merge.says || planned.enters) replaceListed(writing, named, listedText(reading, lender, planned.status), origin)
  const fields = new Set<string>(merge.questions.map(question => question.field))
  if (merge.sizes.length > 0) fields.add('size')
  if (merge.masses.length > 0) fields.add('mass')
  for (const change of merge.facts) fields.add(change.field)
  for (const field of fields) dropQuestions(writing, named, field, origin)
  return named
}
