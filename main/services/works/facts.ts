/** The plain facts of works: added, changed field by field, one field of many, duplicated, removed. */
import { kindOfNumber } from '../../../src/checklist/number-kinds.ts'
import { normalNumber } from '../../../src/checklist/numbers.ts'
import { makerWords, titleWords } from '../../../src/checklist/plain-text.ts'
import { workFields } from '../../../src/contract/areas/works-shape.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { workFacts } from '../../../src/model/work-facts.ts'
import type { ReadHandle, WriteHandle } from '../../database/handles.ts'
import { type Changed, type Columns, changeFields, notFound } from '../change.ts'
import { addEntry } from '../exhibitions/entries.ts'
import type { Writing } from '../service.ts'
import { ofSet, setFactsOf } from '../sets/figures.ts'
import { insert, remove as removeRow, row, rows, update, type Value, value } from '../sql.ts'
import { firstNumber, refreshNumbers } from './figures.ts'

const columns: Columns = Object.fromEntries(Object.entries(workFacts).map(([field, { column }]) => [field, column]))

/** Words for people, by field. */
const fieldWords: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(workFacts).map(([field, { words }]) => [field, words]),
)

/** How an edit calls a work: its title, else its first number, else "a work". */
export function workName(db: ReadHandle, id: string): string {
  const found = row<{ title: string; number: string | null }>(
    db,
    `SELECT title, ${firstNumber} AS number FROM work WHERE id = :id`,
    { id },
  )
  if (found === undefined) throw notFound('work')
  return found.title !== '' ? found.title : (found.number ?? 'a work without title')
}

/** Makers sort by their last name as far as plain text tells: without years, words in normal form. */
export function sortKeys(title: string, maker: string): { sort_title: string; sort_maker: string } {
  return { sort_title: titleWords(title), sort_maker: makerWords(maker) }
}

function checkLender(db: ReadHandle, lender: unknown, field: string): void {
  if (typeof lender !== 'string') return
  if (value(db, 'SELECT id FROM party WHERE id = :lender', { lender }) === undefined) throw notFound('lender', field)
}

export function add(writing: Writing, input: Received<'work.add'>): Output<'work.add'> {
  const { db } = writing
  checkLender(db, input.lender, 'lender')
  const id = writing.newId()
  writing.label(`Add ${input.title === '' ? 'a work' : input.title}`)
  insert(db, 'work', {
    id,
    title: input.title,
    maker: input.maker ?? '',
    date_text: input.dateText ?? '',
    medium: input.medium ?? '',
    credit_line: input.creditLine ?? '',
    kind: input.kind ?? '',
    lender: input.lender ?? null,
    ...sortKeys(input.title, input.maker ?? ''),
    created_at: writing.now(),
  })
  if (input.number !== undefined) addNumberTo(writing, id, input.number.kind, input.number.text)
  const entry = input.exhibition === undefined ? null : addEntry(writing, input.exhibition, id, input.section ?? null)
  return { id, entry }
}

function afterChange(db: WriteHandle, id: string, changed: Changed): void {
  if (changed.values.title === undefined && changed.values.maker === undefined) return
  const now = row<{ title: string; maker: string }>(db, 'SELECT title, maker FROM work WHERE id = :id', { id })
  if (now !== undefined) update(db, 'work', id, sortKeys(now.title, now.maker))
}

export function change(writing: Writing, { id, changes }: Received<'work.update'>): Output<'work.update'> {
  const named = workName(writing.db, id)
  checkLender(writing.db, changes.lender?.to, 'changes.lender.to')
  const fields = Object.keys(changes).map(field => fieldWords[field] ?? field)
  writing.label(`Change ${fields.join(', ')} of ${named}`)
  const changed = changeFields(writing, 'work', id, changes, columns, 'work')
  afterChange(writing.db, id, changed)
  return { saved: changed.saved, clashes: changed.clashes }
}

export function changeMany(writing: Writing, input: Received<'work.updateMany'>): Output<'work.updateMany'> {
  const { field } = input
  // The field's own schema decides, as in a single update; an error names the value.
  const to = workFields[field].safeParse(input.to)
  if (!to.success)
    throw new Refusal('bad-input', `to: ${to.error.issues[0]?.message ?? 'not as expected'}.`, { field: 'to' })
  if (field === 'lender') checkLender(writing.db, to.data, 'to')
  writing.label(`Set ${fieldWords[field] ?? field} of ${input.works.length} works`)
  const saved: string[] = []
  const clashes: Changed['clashes'] = []
  for (const { id, was } of input.works) {
    const changed = changeFields(writing, 'work', id, { [field]: { was, to: to.data } }, columns, 'work')
    afterChange(writing.db, id, changed)
    if (changed.saved.length > 0) saved.push(id)
    clashes.push(...changed.clashes)
  }
  return { saved, clashes }
}

/** Copies the rows of a part of a work to another work, under new ids. */
function copyRows(writing: Writing, table: string, from: string, to: string): void {
  for (const each of rows<Record<string, Value>>(writing.db, `SELECT * FROM ${table} WHERE work = :from ORDER BY id`, {
    from,
  })) {
    insert(writing.db, table, { ...each, id: writing.newId(), work: to })
  }
}

function copyOf(writing: Writing, stored: Readonly<Record<string, Value>>, more: Record<string, Value>): string {
  const { n: _, ...facts } = stored
  const id = writing.newId()
  insert(writing.db, 'work', {
    ...facts,
    ...more,
    id,
    picture: null,
    numbers: '',
    sort_number: '',
    created_at: writing.now(),
  })
  for (const table of ['work_size', 'work_mass', 'work_back']) copyRows(writing, table, String(stored.id), id)
  return id
}

export function duplicate(writing: Writing, input: Received<'work.duplicate'>): Output<'work.duplicate'> {
  const { db } = writing
  const stored = row<Record<string, Value>>(db, 'SELECT * FROM work WHERE id = :id', { id: input.id })
  if (stored === undefined) throw notFound('work')
  writing.label(`Duplicate ${workName(db, input.id)}`)
  // A copy of a part is no part; a copy of a set has parts of its own.
  const id = copyOf(writing, stored, { parent: null, part_order: null })
  for (const part of rows<Record<string, Value>>(db, `SELECT * FROM work ${ofSet}`, { set: input.id })) {
    copyOf(writing, part, { parent: id })
  }
  const entry = input.exhibition === undefined ? null : addEntry(writing, input.exhibition, id, null)
  return { id, entry }
}

export function remove(writing: Writing, { id }: Received<'work.remove'>): Output<'work.remove'> {
  const named = workName(writing.db, id)
  const shows = rows<{ title: string }>(
    writing.db,
    'SELECT exhibition.title FROM entry JOIN exhibition ON exhibition.id = entry.exhibition WHERE entry.work = :id',
    { id },
  )
  if (shows.length > 0) {
    throw new Refusal(
      'still-in-a-show',
      `${named} stands in ${shows.map(show => show.title).join(', ')}. Take it out of the show first.`,
      { field: 'id' },
    )
  }
  refusePartOfSet(writing.db, id, 'id')
  if (setFactsOf(writing.db, id) !== undefined) {
    throw new Refusal('still-a-set', `${named} is a set. Take it apart first: its parts are works of their own.`, {
      field: 'id',
    })
  }
  writing.label(`Remove ${named} from the catalogue`)
  removeWork(writing, id)
  return { done: true }
}

/** Refuses `still-in-a-loan`: an agreement names the work. */
function refuseLent(db: ReadHandle, work: string): void {
  const lent = rows<{ number: string }>(
    db,
    'SELECT loan.number FROM loan_work JOIN loan ON loan.id = loan_work.loan WHERE loan_work.work = :work',
    { work },
  )
  if (lent.length === 0) return
  const numbers = lent.map(({ number }) => number).join(', ')
  const sentence = `${workName(db, work)} is in ${lent.length === 1 ? 'loan' : 'loans'} ${numbers}. Take it out of there first.`
  throw new Refusal('still-in-a-loan', sentence, { field: 'id' })
}

/** What keeps a work in the catalogue, by the table that names it, each sentence around its name. */
const recordedIn = [
  ['moved', 'The record says where', ' was'],
  ['light_reading', 'The record says what light', ' received'],
  ['damage', 'There is a record of damage of', ''],
  ['condition_report', 'A condition report, which can be taken away while it is an unsigned draft, is of', ''],
] as const

/** Refuses `recorded`: what was recorded of a work is never removed, so the work it speaks of stays. */
export function refuseRecorded(db: ReadHandle, work: string, field: string): void {
  for (const [table, before, after] of recordedIn) {
    if (value(db, `SELECT id FROM ${table} WHERE work = :work LIMIT 1`, { work }) === undefined) continue
    const sentence = `${before} ${workName(db, work)}${after}, so it stays in the catalogue.`
    throw new Refusal('recorded', sentence, { field })
  }
}

/** Refuses `part-of-set`: a part is in shows and on walls through its set. */
export function refusePartOfSet(db: ReadHandle, work: string, field: string): void {
  const set = value<string | null>(db, 'SELECT parent FROM work WHERE id = :work', { work }) ?? null
  if (set === null) return
  throw new Refusal(
    'part-of-set',
    `${workName(db, work)} is a part of ${workName(db, set)}. Ask for the set, or take it apart first.`,
    { field, details: { set } },
  )
}

/** Removes a work with its facts and files; what it stands in is refused before, what the record says of it here. */
export function removeWork(writing: Writing, id: string): void {
  refuseLent(writing.db, id)
  refuseRecorded(writing.db, id, 'id')
  for (const table of [
    'import_question',
    'import_value',
    'picture',
    'work_back',
    'work_mass',
    'work_size',
    'work_number',
    'work_value',
  ]) {
    for (const each of rows<{ id: string }>(writing.db, `SELECT id FROM ${table} WHERE work = :id`, { id })) {
      removeRow(writing.db, table, each.id)
    }
  }
  for (const each of rows<{ id: string }>(
    writing.db,
    `SELECT id FROM document WHERE subject_kind = 'work' AND subject = :id`,
    { id },
  )) {
    removeRow(writing.db, 'document', each.id)
  }
  removeRow(writing.db, 'work', id)
}

type Said = Pick<Received<'work.addNumber'>, 'since' | 'by' | 'note'>

export function addNumberTo(writing: Writing, work: string, kind: string, text: string, said: Said = {}): string {
  const norm = normed(text, 'text')
  checkSince(said.since, 'since')
  const id = writing.newId()
  const lender = value<string | null>(writing.db, 'SELECT lender FROM work WHERE id = :work', { work }) ?? null
  insert(writing.db, 'work_number', {
    id,
    work,
    kind,
    text,
    norm,
    party: ownKinds.has(kind) ? null : lender,
    since: said.since ?? '',
    by: said.by ?? writing.person?.name ?? '',
    note: said.note ?? '',
  })
  refreshNumbers(writing.db, work)
  return id
}

export function addNumber(writing: Writing, input: Received<'work.addNumber'>): Output<'work.addNumber'> {
  writing.label(`Add number ${input.text} to ${workName(writing.db, input.work)}`)
  return { id: addNumberTo(writing, input.work, input.kind, input.text, input) }
}

export function changeNumber(
  writing: Writing,
  { id, changes }: Received<'work.changeNumber'>,
): Output<'work.changeNumber'> {
  const { db } = writing
  const stored = row<{ work: string; text: string; lender: string | null }>(
    db,
    `SELECT work, text, work.lender FROM work_number JOIN work ON work.id = work_number.work WHERE work_number.id = :id`,
    { id },
  )
  if (stored === undefined) throw notFound('number')
  const { text, kind } = changes
  const norm = text === undefined ? undefined : normed(text.to, 'changes.text.to')
  checkSince(changes.since?.to, 'changes.since.to')
  const of = `number ${stored.text} of ${workName(db, stored.work)}`
  writing.label(
    text !== undefined
      ? `Correct ${of} to ${text.to}`
      : kind !== undefined
        ? `Make ${of} the ${kindOfNumber(kind.to)}`
        : `Say more of ${of}`,
  )
  const { saved, clashes } = changeFields(writing, 'work_number', id, changes, numberColumns, 'number')
  if (norm !== undefined && saved.includes('text')) update(db, 'work_number', id, { norm })
  if (kind !== undefined && saved.includes('kind')) {
    update(db, 'work_number', id, { party: ownKinds.has(kind.to) ? null : stored.lender })
  }
  if (saved.includes('text') || saved.includes('kind')) refreshNumbers(db, stored.work)
  return { saved, clashes }
}

const numberColumns = { kind: 'kind', text: 'text', since: 'since', by: 'by', note: 'note' }

/** Numbers that the house itself gave: they belong to no lender. */
const ownKinds: ReadonlySet<string> = new Set(['permanent', 'former'])

function normed(text: string, field: string): string {
  const norm = normalNumber(text)
  if (norm === '') throw new Refusal('bad-input', 'A number needs a letter or a figure.', { field })
  return norm
}

/** Refuses a day that no calendar has, as 2031-02-30. */
function checkSince(since: string | undefined, field: string): void {
  if (since === undefined || since.length < 10) return
  if (new Date(`${since}T00:00:00Z`).toISOString().startsWith(since)) return
  throw new Refusal('bad-input', `There is no ${since} in the calendar. Write the day as 2031-03-04.`, { field })
}

export function removeNumber(writing: Writing, { id }: Received<'work.removeNumber'>): Output<'work.removeNumber'> {
  const found = row<{ work: string; text: string }>(writing.db, 'SELECT work, text FROM work_number WHERE id = :id', {
    id,
  })
  if (found === undefined) throw notFound('number')
  writing.label(`Take number ${found.text} off ${workName(writing.db, found.work)}`)
  removeRow(writing.db, 'work_number', id)
  refreshNumbers(writing.db, found.work)
  return { done: true }
}
