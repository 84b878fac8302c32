/** What lists left to settle: read a page at a time, answered one by one; and what lists said and how they were taken. */
import { answerQuestion, withSidesOf } from '../../../src/checklist/answer.ts'
import { type FactField, factColumns } from '../../../src/checklist/fields.ts'
import { type LetterQuestion, letterText } from '../../../src/checklist/letter.ts'
import type { AnswerOption, ListedSize, QuestionKind, RowQuestion } from '../../../src/checklist/reading.ts'
import { fieldLabel } from '../../../src/checklist/understand.ts'
import { sameAmount } from '../../../src/checklist/values.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import type { Reading, Writing } from '../service.ts'
import { row, rows, update, type Value, value } from '../sql.ts'
import { sortKeys, workName } from '../works/facts.ts'
import { numberOrder, refreshMass, refreshNumbers, refreshSize } from '../works/figures.ts'
import { currentMasses, currentSizes, currentValues } from './current.ts'
import { joinWorks } from './join.ts'
import { listedOf, listField } from './known.ts'
import { rememberedFor } from './source.ts'
import { storeMass, storeNumber, storeSize, storeValue } from './store.ts'

interface StoredQuestion {
  readonly id: string
  readonly run: string
  readonly list: string
  readonly work: string
  readonly title: string
  readonly maker: string
  readonly number: string
  readonly row: number
  readonly column: string
  readonly field: string
  readonly text: string
  readonly question: string
  readonly kind: QuestionKind
  readonly options: string
  readonly answer: string | null
  readonly answeredBy: string | null
  readonly answeredAt: string | null
  readonly askedAt: string | null
  readonly askedBy: string | null
}

const questionColumns = `question.id, question.run, import_run.name AS list, question.work, work.title, work.maker,
  coalesce((SELECT text FROM work_number WHERE work = question.work ORDER BY ${numberOrder}, id LIMIT 1), '') AS number,
  question.row, question.column_name AS column, question.field, question.raw AS text, question.question, question.kind,
  question.options, question.answer, question.answered_by AS answeredBy, question.answered_at AS answeredAt,
  question.asked_at AS askedAt, question.asked_by AS askedBy`
const questionTables = `import_question AS question JOIN import_run ON import_run.id = question.run JOIN work ON work.id = question.work`

function optionsOf(stored: string): readonly AnswerOption[] {
  // Written by this program as exactly that.
  return JSON.parse(stored) as AnswerOption[]
}

export function questions({ db }: Reading, input: Received<'import.questions'>): Output<'import.questions'> {
  const where: string[] = []
  const given: Record<string, Value> = {}
  if (input.answered !== true) where.push('question.answer IS NULL')
  if (input.asked === true) where.push('question.asked_at IS NOT NULL')
  if (input.work !== undefined) {
    where.push('question.work = :work')
    given.work = input.work
  }
  if (input.run !== undefined) {
    where.push('question.run = :run')
    given.run = input.run
  }
  if (input.exhibition !== undefined) {
    where.push('question.work IN (SELECT work FROM entry WHERE exhibition = :exhibition)')
    given.exhibition = input.exhibition
  }
  const condition = where.length === 0 ? '1' : where.join(' AND ')
  const offset = input.offset ?? 0
  const total = value<number>(db, `SELECT count(*) FROM ${questionTables} WHERE ${condition}`, given) ?? 0
  const found = rows<StoredQuestion>(
    db,
    `SELECT ${questionColumns} FROM ${questionTables} WHERE ${condition}
     ORDER BY question.run DESC, question.row, question.id LIMIT :limit OFFSET :offset`,
    { ...given, limit: input.limit ?? 100, offset },
  )
  return {
    total,
    offset,
    questions: found.map(one => ({
      ...one,
      options: optionsOf(one.options).map(({ answer, label }) => ({ answer, label })),
    })),
  }
}

export function answer(writing: Writing, input: Received<'import.answer'>): Output<'import.answer'> {
  const { db } = writing
  const stored = row<StoredQuestion>(db, `SELECT ${questionColumns} FROM ${questionTables} WHERE question.id = :id`, {
    id: input.id,
  })
  if (stored === undefined) throw notFound('question')
  if (stored.answer !== null) {
    throw new Refusal('answered', `This question was answered already: ${stored.answer}.`, {
      field: 'id',
      details: { answer: stored.answer },
    })
  }
  const question: RowQuestion = {
    field: stored.field,
    column: stored.column,
    kind: stored.kind,
    raw: stored.text,
    question: stored.question,
    options: optionsOf(stored.options),
  }
  const result = answerQuestion(question, input.answer, '')
  if (!result.ok) throw new Refusal('still-unclear', result.problem, { field: 'answer' })
  const { answered } = result
  writing.label(`Settle ${fieldLabel(stored.field).toLowerCase()} of ${workName(db, stored.work)}: ${answered.said}`)
  const at = writing.now()
  const by = writing.person?.name ?? ''
  update(db, 'import_question', stored.id, { answer: answered.said, answered_by: by, answered_at: at })
  let work = stored.work
  if (answered.work != null) work = joinWorks(writing, answered.work, stored.work)
  const origin = { source: `${stored.list}, row ${stored.row}; answered: ${answered.said}`.slice(0, 500), by, at }
  const listed = currentSizes(db, work).filter(one => one.newestListed)
  const ofPart = (size: ListedSize) => listed.find(one => one.part === size.part)
  const sizes = answered.sizes
    // Sides asked about one by one: each answer keeps those before it.
    .map(size => (ofPart(size)?.raw === size.raw ? withSidesOf(size, ofPart(size)) : size))
    .filter(size => {
      const there = ofPart(size)
      return there === undefined || !sidesEqual(there, size)
    })
  for (const size of sizes) storeSize(writing, work, size, origin)
  if (sizes.length > 0) refreshSize(db, work)
  const masses = answered.masses.filter(
    mass => !currentMasses(db, work).some(one => one.newestListed && Math.abs(one.kg - mass.kg) < 0.005),
  )
  for (const mass of masses) storeMass(writing, work, mass, origin)
  if (masses.length > 0) refreshMass(db, work)
  const { value: worth } = answered
  if (worth !== undefined && !currentValues(db, work, dateAt(at)).some(one => sameAmount(one, worth)))
    storeValue(writing, work, worth, origin)
  if (answered.fact !== undefined) setFact(writing, work, answered.fact.field, answered.fact.value)
  if (answered.number !== undefined) {
    const lender = value<string | null>(db, 'SELECT lender FROM work WHERE id = :work', { work }) ?? null
    storeNumber(writing, work, answered.number, lender, writing.person?.name ?? '')
    refreshNumbers(db, work)
  }
  return { work, said: answered.said, open: openOf(db, work) }
}

/** Puts questions to the lender, or takes them back to be answered here. Those already so stay as they are. */
export function ask(writing: Writing, input: Received<'import.ask'>): Output<'import.ask'> {
  const { db } = writing
  const at = input.lender ? writing.now() : null
  const by = input.lender ? (writing.person?.name ?? '') : null
  let changed = 0
  for (const id of new Set(input.questions)) {
    const found = row<{ answer: string | null; asked: string | null }>(
      db,
      'SELECT answer, asked_at AS asked FROM import_question WHERE id = :id',
      { id },
    )
    if (found === undefined) throw notFound('question', 'questions')
    if (found.answer !== null) {
      throw new Refusal('answered', `This question was answered already: ${found.answer}.`, {
        field: 'questions',
        details: { answer: found.answer },
      })
    }
    if ((found.asked !== null) === input.lender) continue
    update(db, 'import_question', id, { asked_at: at, asked_by: by })
    changed++
  }
  const what = changed === 1 ? 'a question' : `${changed} questions`
  writing.label(input.lender ? `Ask the lender ${what}` : `Take back ${what} from the lender`)
  return { changed }
}

/** What is open with each lender, as a text for each. */
export function letters({ db }: Reading, input: Received<'import.letters'>): Output<'import.letters'> {
  const ofShow =
    input.exhibition === undefined ? '' : 'AND question.work IN (SELECT work FROM entry WHERE exhibition = :exhibition)'
  const found = rows<StoredQuestion & { lender: string | null; lenderName: string }>(
    db,
    `SELECT ${questionColumns}, party.id AS lender, coalesce(party.name, '') AS lenderName
     FROM ${questionTables} LEFT JOIN party ON party.id = coalesce(work.lender, import_run.lender)
     WHERE question.asked_at IS NOT NULL AND question.answer IS NULL ${ofShow}
     ORDER BY lenderName COLLATE NOCASE, lender, question.run, question.row, question.id`,
    input.exhibition === undefined ? {} : { exhibition: input.exhibition },
  )
  const byLender = new Map<string | null, { name: string; questions: LetterQuestion[] }>()
  for (const one of found) {
    const letter = byLender.get(one.lender) ?? { name: one.lenderName, questions: [] }
    byLender.set(one.lender, letter)
    letter.questions.push({ ...one, options: optionsOf(one.options).map(({ label }) => label) })
  }
  return {
    letters: [...byLender].map(([lender, { name, questions }]) => ({
      lender,
      name,
      questions: questions.length,
      text: letterText(name, questions),
    })),
  }
}

function sidesEqual(
  one: {
    readonly height: number | null
    readonly width: number | null
    readonly depth: number | null
    readonly diameter: number | null
  },
  other: typeof one,
): boolean {
  return (
    one.height === other.height &&
    one.width === other.width &&
    one.depth === other.depth &&
    one.diameter === other.diameter
  )
}

function setFact(writing: Writing, work: string, field: FactField, fact: string | number): void {
  update(writing.db, 'work', work, { [factColumns[field]]: fact })
  if (field !== 'title' && field !== 'maker') return
  const now = row<{ title: string; maker: string }>(writing.db, 'SELECT title, maker FROM work WHERE id = :work', {
    work,
  })
  if (now !== undefined) update(writing.db, 'work', work, sortKeys(now.title, now.maker))
}

function openOf(db: ReadHandle, work: string): number {
  return value<number>(db, 'SELECT count(*) FROM import_question WHERE work = :work AND answer IS NULL', { work }) ?? 0
}

/** What the last list said, beside what the catalogue says now. */
export function listed({ db }: Reading, { work }: Received<'import.listed'>): Output<'import.listed'> {
  const facts = Object.entries(factColumns).map(([field, column]) => `work.${column} AS "${field}"`)
  const now = row<Record<string, Value>>(
    db,
    `SELECT ${facts.join(', ')}, party.name AS lender FROM work LEFT JOIN party ON party.id = work.lender WHERE work.id = :work`,
    { work },
  )
  if (now === undefined) throw notFound('work', 'work')
  const last = row<{ value: string; at: string; list: string }>(
    db,
    `SELECT import_value.value, import_value.at, import_run.name AS list
     FROM import_value JOIN import_run ON import_run.id = import_value.run
     WHERE import_value.work = :work AND import_value.field = :field ORDER BY import_value.at DESC, import_value.id DESC LIMIT 1`,
    { work, field: listField },
  )
  if (last === undefined) return { list: null, at: null, values: [] }
  const { raw, facts: read } = listedOf(last.value)
  return {
    list: last.list,
    at: last.at,
    values: Object.entries(raw).map(([field, text]) => {
      const stored = Object.hasOwn(now, field) ? now[field] : undefined
      const said = String(read[field] ?? text)
      const yours = stored === undefined || String(stored ?? '') === said ? null : String(stored ?? '')
      return { field, label: fieldLabel(field), text, yours }
    }),
  }
}

export function mapping({ db }: Reading, { lender }: Received<'import.mapping'>): Output<'import.mapping'> {
  if (lender !== undefined && value(db, 'SELECT id FROM party WHERE id = :lender', { lender }) === undefined) {
    throw notFound('lender', 'lender')
  }
  const at = value<string>(db, 'SELECT at FROM import_mapping WHERE id = :id', { id: lender ?? '' }) ?? null
  return { mapping: [...rememberedFor(db, lender ?? null)], at }
}

export function runs({ db }: Reading, input: Received<'import.runs'>): Output<'import.runs'> {
  return {
    total: value<number>(db, 'SELECT count(*) FROM import_run') ?? 0,
    runs: rows(
      db,
      `SELECT run.id, run.name, coalesce(party.name, '') AS lender, coalesce(exhibition.title, '') AS exhibition,
         run.added, run.updated, run.unchanged,
         (SELECT count(*) FROM import_question WHERE import_question.run = run.id AND answer IS NULL) AS open, run.at, run.by
       FROM import_run AS run LEFT JOIN party ON party.id = run.lender LEFT JOIN exhibition ON exhibition.id = run.exhibition
       ORDER BY run.at DESC, run.id DESC LIMIT :limit OFFSET :offset`,
      { limit: input.limit ?? 100, offset: input.offset ?? 0 },
    ),
  }
}
