/** Writes a plan into the catalogue, inside one edit: lenders, exhibition, sections, works, entries, questions. */

import type { FactField } from '../../../src/checklist/fields.ts'
import { factColumns, numberFields } from '../../../src/checklist/fields.ts'
import { newWork } from '../../../src/checklist/match.ts'
import { sortKeyOfNormal } from '../../../src/checklist/numbers.ts'
import type { ListedNumber, ListedSize, RowQuestion } from '../../../src/checklist/reading.ts'
import { type HangingSize, hangingSize, type SizeFact } from '../../../src/model/in-force.ts'
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
  importValueShape,
  listedRow,
  listedText,
  massRow,
  numberRow,
  type Origin,
  replaceListed,
  sizeRow,
  storeListed,
  storeMass,
  storeNumber,
  storeQuestion,
  storeSize,
  storeValue,
  valueRow,
  workMassShape,
  workNumberShape,
  workSizeShape,
  workValueShape,
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

const orderOfNumbers = ['permanent', 'lender', 'loan', 'entry', 'exhibition', 'former']

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
  const adding: Added[] = []
  const asked: { work: string; row: number; question: RowQuestion }[] = []
  for (const planned of plan) {
    if (planned.kind !== 'work') continue
    const lender = party(planned.lender)
    const work = planned.work === null ? writing.newId() : changeWork(writing, planned, lender, origin, added, queue)
    if (planned.work === null) {
      added.set(planned.reading.row, work)
      adding.push({ id: work, planned, lender })
    }
    if (show !== null && planned.enters) show.enter(work, planned)
    else if (show !== null && planned.merge !== null) show.change(work, planned.merge.entry)
    for (const question of planned.questions) asked.push({ work, row: planned.reading.row, question })
  }
  // Last, since a question may name a work that a later row brought in.
  for (const { work, row, question } of asked) storeQuestion(writing, work, row, named(question, added), origin, queue)
  addWorks(writing, adding, origin, queue, share => each(Math.floor(share * plan.length)))
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

/** A work that the list brings in, under the id it gets. */
interface Added {
  readonly id: string
  readonly planned: PlannedWork
  readonly lender: string | null
}

/** How many works are taken between two looks at whether it was cancelled. */
const lookEvery = 500

/** Table by table, each row made as it goes in: kept together, they would be half a million. */
function addWorks(
  writing: Writing,
  adding: readonly Added[],
  origin: Origin,
  queue: Queue,
  each: (share: number) => void,
): void {
  const tables: readonly {
    readonly shape: Shape
    readonly count: (work: Added) => number
    readonly rows: (work: Added, put: (row: readonly Value[]) => void) => void
  }[] = [
    { shape: workShape, count: () => 1, rows: (work, put) => put(workRow(work, origin)) },
    {
      shape: workNumberShape,
      count: ({ planned }) => planned.reading.numbers.length,
      rows({ id, planned, lender }, put) {
        for (const number of inOrder(planned.reading.numbers))
          put(numberRow(writing.newId(), id, number, lender, origin.by))
      },
    },
    {
      shape: workSizeShape,
      count: ({ planned }) => planned.reading.sizes.length,
      rows({ id, planned }, put) {
        for (const size of planned.reading.sizes) put(sizeRow(writing.newId(), id, size, origin))
      },
    },
    {
      shape: workMassShape,
      count: ({ planned }) => planned.reading.masses.length,
      rows({ id, planned }, put) {
        for (const mass of planned.reading.masses) put(massRow(writing.newId(), id, mass, origin))
      },
    },
    {
      shape: workValueShape,
      count: ({ planned }) => (planned.reading.value === null ? 0 : 1),
      rows({ id, planned }, put) {
        const { value: worth } = planned.reading
        if (worth !== null) put(valueRow(writing.newId(), id, worth, origin))
      },
    },
    {
      shape: importValueShape,
      count: () => 1,
      rows({ id, planned, lender }, put) {
        put(listedRow(writing.newId(), id, listedText(planned.reading, lender, planned.status), origin))
      },
    },
  ]
  for (const [index, { shape, count, rows }] of tables.entries()) {
    function* made(): Generator<readonly Value[]> {
      let some: (readonly Value[])[] = []
      for (let at = 0; at < adding.length; at++) {
        const work = adding[at]
        if (work !== undefined) rows(work, row => some.push(row))
        if (at % lookEvery < lookEvery - 1 && at < adding.length - 1) continue
        each((index + at / adding.length) / tables.length)
        yield* some
        some = []
      }
    }
    const length = adding.reduce((sum, work) => sum + count(work), 0)
    queue.ahead(shape, { length, [Symbol.iterator]: made })
  }
}

function inOrder(numbers: readonly ListedNumber[]): readonly ListedNumber[] {
  if (numbers.length < 2) return numbers
  return numbers.toSorted(
    (a, b) => orderOfNumbers.indexOf(numberFields[a.field]) - orderOfNumbers.indexOf(numberFields[b.field]),
  )
}

/** Lists repeat their sizes, and the reading hands the same one on for the same words. */
const hung = new WeakMap<ListedSize, HangingSize<SizeFact> | null>()

function hangingOf(sizes: readonly ListedSize[], at: string): HangingSize<SizeFact> | undefined {
  const fact = (size: ListedSize): SizeFact => ({ ...size, kind: 'listed', at, chosen: false })
  const [only, more] = sizes
  if (only === undefined || more !== undefined) return hangingSize(sizes.map(fact))
  let found = hung.get(only)
  if (found === undefined) {
    found = hangingSize([fact(only)]) ?? null
    hung.set(only, found)
  }
  return found ?? undefined
}

function workRow({ id, planned, lender }: Added, origin: Origin): readonly Value[] {
  const { facts, sizes, masses } = planned.reading
  const hanging = hangingOf(sizes, origin.at)
  // All were listed at one time, and of those the last one counts.
  const mass = masses.at(-1)
  const numbers = inOrder(planned.reading.numbers)
  const row: Value[] = [id]
  for (const field of factFields) row.push(facts[field] ?? emptyFact[field])
  row.push(
    lender,
    planned.words.title,
    planned.words.maker,
    numbers[0] === undefined ? '' : sortKeyOfNormal(numbers[0].norm),
    numberWords(numbers),
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
  )
  return row
}

function numberWords(numbers: readonly ListedNumber[]): string {
  const [only, more] = numbers
  if (only !== undefined && more === undefined) return only.text === only.norm ? only.text : `${only.text} ${only.norm}`
  return [...new Set(numbers.flatMap(number => [number.text, number.norm]))].join(' ')
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
  for (const number of merge.numbers) storeNumber(writing, named, number, lender, origin.by)
  if (merge.numbers.length > 0) refreshNumbers(db, named)
  for (const size of merge.sizes) storeSize(writing, named, size, origin)
  if (merge.sizes.length > 0) refreshSize(db, named)
  for (const mass of merge.masses) storeMass(writing, named, mass, origin)
  if (merge.masses.length > 0) refreshMass(db, named)
  if (merge.value !== null) storeValue(writing, named, merge.value, origin)
  if (merge.says || planned.enters) replaceListed(writing, named, listedText(reading, lender, planned.status), origin)
  const fields = new Set<string>(merge.questions.map(question => question.field))
  if (merge.sizes.length > 0) fields.add('size')
  if (merge.masses.length > 0) fields.add('mass')
  if (merge.value !== null) fields.add('value')
  for (const change of merge.facts) fields.add(change.field)
  for (const field of fields) dropQuestions(writing, named, field, origin)
  return named
}
