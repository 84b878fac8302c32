/**
 * What taking a list would do, row by row, worked out without writing anything: the preview shows it, and accepting
 * writes exactly it.
 */
import { answerQuestion, askLender, withSidesOf } from '../../../src/checklist/answer.ts'
import { numberFields } from '../../../src/checklist/fields.ts'
import type { ListLanguage } from '../../../src/checklist/headings.ts'
import { matchRow, newWork, printOf, type RowWords, rowKey, wordsReader } from '../../../src/checklist/match.ts'
import { type Merge, mergeRow } from '../../../src/checklist/merge.ts'
import type { ListedSize, RowOutcome, RowQuestion, RowReading } from '../../../src/checklist/reading.ts'
import { statusOf } from '../../../src/checklist/words.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { plainName } from '../parties.ts'
import { currentWork } from './current.ts'
import { type Known, loadKnown } from './known.ts'
import { type Lender, lenderNamed, type Show } from './source.ts'

export interface PlannedWork {
  readonly kind: 'work'
  readonly reading: RowReading
  readonly lender: Lender | null
  readonly section: string
  readonly status: string | undefined
  /** Its title and maker in normal form. */
  readonly words: RowWords
  /** The work it belongs to: its id, or `row 5` for what an earlier row adds; null for one to be added. */
  readonly work: string | null
  /** What changes in it; null for one to be added. */
  readonly merge: Merge | null
  /** Whether it comes into the show by this. */
  readonly enters: boolean
  readonly questions: readonly RowQuestion[]
  readonly outcome: 'add' | 'update' | 'unchanged'
}

export type PlannedRow =
  | PlannedWork
  | { readonly kind: 'section'; readonly row: number; readonly title: string }
  | { readonly kind: 'refused'; readonly row: number; readonly column: string; readonly reason: string }

export interface ListPlan {
  readonly rows: readonly PlannedRow[]
  readonly known: Known
}

export interface Answers {
  /** @param question the words of one question, where a row may have several about a field */
  readonly of: (row: number, field: string, question?: string) => string | undefined
}

export interface PlanChoices {
  readonly lender: Lender | null
  readonly show: Show | null
  readonly language: ListLanguage | ''
  readonly answers: Answers
  /** ISO 8601; values are held against what is in force on it. */
  readonly today: string
}

/** Ids of lenders that are not there yet, by their name, so that their rows still belong together. */
function lenderKey(lender: Lender | null): string | null {
  return lender === null ? null : (lender.id ?? `new ${plainName(lender.name)}`)
}

export function planRows(
  db: ReadHandle,
  outcomes: readonly RowOutcome[],
  choices: PlanChoices,
  each: (done: number) => void,
): ListPlan {
  const known = loadKnown(db)
  const lenders = new Map<string, Lender>()
  const keys = new Map<Lender | null, string | null>()
  const wordsOf = wordsReader()
  const exhibition = choices.show?.id ?? null
  let section = ''

  function lenderOfRow(reading: RowReading): Lender | null {
    if (reading.lender === '') return choices.lender
    const name = reading.lender.slice(0, 200)
    const there = lenders.get(name)
    if (there !== undefined) return there
    const found = lenderNamed(db, name)
    lenders.set(name, found)
    return found
  }

  function planWork(given: RowReading): PlannedWork {
    const lender = lenderOfRow(given)
    const party = keys.get(lender) ?? lenderKey(lender)
    keys.set(lender, party)
    const reading = answeredReading(given, choices)
    const words = wordsOf(reading)
    const key = rowKey(words, party)
    const match = matchRow(reading, party, key, known, choices.answers.of(reading.row, 'same work'))
    const status = reading.status === '' ? undefined : statusOf(reading.status)
    const base = {
      kind: 'work',
      reading,
      lender,
      section: reading.section === '' ? section : reading.section,
      status,
      words,
    } as const
    const matched = match.work
    if (matched?.startsWith(newWork)) {
      // A person said so: this row is the same work as a row before it.
      return { ...base, work: matched, merge: null, enters: false, questions: [], outcome: 'unchanged' }
    }
    if (matched === null) {
      known.add({
        id: `${newWork}${reading.row}`,
        key,
        lender: party,
        maker: String(reading.facts.maker ?? ''),
        title: String(reading.facts.title ?? ''),
        date: String(reading.facts.date ?? ''),
        row: reading.row,
        numbers: reading.numbers.map(number => ({ ...number, kind: numberFields[number.field] })),
        raw: reading.raw,
      })
      const open = match.question === null ? reading.questions : [match.question, ...reading.questions]
      const questions = withAsked(open, reading.row, choices)
      return { ...base, work: null, merge: null, enters: choices.show !== null, questions, outcome: 'add' }
    }
    known.take(matched, reading.row)
    const print = printOf(reading.raw)
    const last = known.last(matched, print)
    const again = last !== undefined && printOf(last.raw) === print
    const current = currentWork(db, matched, exhibition, {
      measures: !again,
      values: reading.value === null ? null : choices.today,
    })
    if (current === undefined) throw new Error('A matched work is not in the catalogue')
    const sectioned = { ...reading, section: base.section }
    const asRead = again ? { ...sectioned, numbers: [], sizes: [], masses: [], questions: [] } : sectioned
    const merged = mergeRow(asRead, lender?.id ?? party, current, last, status)
    const merge = { ...merged, questions: withAsked(merged.questions, reading.row, choices) }
    const enters = choices.show !== null && current.entry === null
    const outcome = merge.changes || enters ? 'update' : 'unchanged'
    return { ...base, work: matched, merge, enters, questions: merge.questions, outcome }
  }

  const planned: PlannedRow[] = []
  for (const [index, outcome] of outcomes.entries()) {
    if (index % 500 === 0) each(index)
    if (outcome.kind === 'skip') continue
    if (outcome.kind === 'section') {
      section = outcome.title.slice(0, 500)
      planned.push(outcome)
    } else if (outcome.kind === 'refused') planned.push(outcome)
    else planned.push(planWork(outcome.reading))
  }
  return { rows: planned, known }
}

/** Those that the person puts to the lender say so. */
function withAsked(questions: readonly RowQuestion[], row: number, choices: PlanChoices): readonly RowQuestion[] {
  if (questions.length === 0) return questions
  return questions.map(one =>
    choices.answers.of(row, one.field, one.question) === askLender ? { ...one, asked: true } : one,
  )
}

/** The reading with what the person answered in the preview. Refuses `bad-answer` with the row. */
function answeredReading(reading: RowReading, choices: PlanChoices): RowReading {
  if (reading.questions.length === 0) return reading
  let read = reading
  for (const question of reading.questions) {
    const answer = choices.answers.of(reading.row, question.field, question.question)
    if (answer === undefined || answer === askLender) continue
    const result = answerQuestion(question, answer, choices.language)
    if (!result.ok) {
      throw new Refusal('bad-answer', `Row ${reading.row}: ${result.problem}`, {
        field: 'answers',
        details: { row: reading.row, field: question.field },
      })
    }
    const { sizes, masses, fact, number, value } = result.answered
    const parts = new Set(sizes.map(size => size.part))
    const same = (size: ListedSize) => size.raw === question.raw && parts.has(size.part)
    const before = read.sizes.filter(same)
    read = {
      ...read,
      sizes: [
        ...read.sizes.filter(size => !same(size)),
        ...sizes.map(size =>
          withSidesOf(
            size,
            before.find(one => one.part === size.part),
          ),
        ),
      ],
      masses: [...read.masses, ...masses],
      value: value ?? read.value,
      facts: fact === undefined ? read.facts : { ...read.facts, [fact.field]: fact.value },
      numbers: number === undefined ? read.numbers : [...read.numbers, number],
      questions: read.questions.filter(one => one !== question),
    }
  }
  return read
}
