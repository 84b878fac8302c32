/** One work on one day, gathered from every record of it: place, condition, damage, loans, light, names. */
import type { LentOnDay } from '../../../src/contract/areas/on-day.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { dayOf } from '../../../src/light/day.ts'
import { inForce as receiptsInForce } from '../../../src/loan/receipts/receipt.ts'
import { termKinds } from '../../../src/loan/terms/term.ts'
import { overall, signaturesInForce } from '../../../src/record/condition/report.ts'
import { closedAt, inForce as wordsInForce } from '../../../src/record/damage/damage.ts'
import { aroundWords, placesAround } from '../../../src/record/nested.ts'
import { contentHash } from '../../database/condition-chain.ts'
import type { ReadHandle } from '../../database/handles.ts'
import type { Json, Row } from '../../database/history.ts'
import { notFound } from '../change.ts'
import { dateAt, endOf } from '../days.ts'
import { asOf, takenSince } from '../history/as-of.ts'
import { receivedUntil } from '../light/ledger.ts'
import { type StoredTerm, termColumns, withWord } from '../loans/term-rows.ts'
import { amountOf } from '../loans/works.ts'
import { receiptOf } from '../receipts/read.ts'
import { receiptsOf } from '../receipts/rows.ts'
import type { Reading } from '../service.ts'
import { row, rows, value } from '../sql.ts'
import { findingsOf, type ReportRow, reportColumns, signaturesOf } from './condition/rows.ts'
import { wordsOf } from './damage/rows.ts'
import { namer } from './places.ts'
import { standingCrates, standingOf } from './standing.ts'

type Told = Output<'work.onDay'>

export function onDay({ db, now }: Reading, input: Received<'work.onDay'>): Told {
  const { work } = input
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  const today = dateAt(now())
  const day = input.day ?? today
  const end = endOf(day)
  return {
    day,
    today,
    stood: stoodOf(db, work, end),
    examined: examinedOf(db, work, end),
    damage: damageOf(db, work, end),
    loans: loansOf(db, work, day, end),
    light: receivedUntil(db, work, dayOf(day), now()),
  }
}

function stoodOf(db: ReadHandle, work: string, at: string): Told['stood'] {
  const stood = standingOf(db, 'work', work, at)
  if (stood === undefined) return null
  const name = namer(db)
  const said = row<{ words: string; spot: string; people: string; condition: string; recordedBy: string }>(
    db,
    `SELECT place_words AS words, spot, people, condition, recorded_by AS recordedBy FROM movement WHERE id = :movement`,
    { movement: stood.movement },
  )
  const { words: recorded = '', spot = '', people = '', condition = '', recordedBy = '' } = said ?? {}
  const words = aroundWords(placesAround(stood.place, standingCrates(db, at)), each => name(each) ?? recorded)
  return { movement: stood.movement, words, spot, since: stood.at, people, condition, recordedBy }
}

function examinedOf(db: ReadHandle, work: string, end: string): Told['examined'] {
  // A report that another complete one sets right no longer says how the work was.
  const report = row<ReportRow & { readonly completeAt: string }>(
    db,
    `SELECT ${reportColumns} FROM condition_report AS report
     JOIN condition_seal AS seal ON seal.report = report.id
     WHERE report.work = :work AND report.examined_at <= :end AND NOT EXISTS
      (SELECT 1 FROM condition_report AS later JOIN condition_seal ON condition_seal.report = later.id
       WHERE later.corrects = report.id)
     ORDER BY report.examined_at DESC, report.id DESC LIMIT 1`,
    { work, end },
  )
  if (report === undefined) return null
  const findings = findingsOf(db, report.id)
  const signed = signaturesInForce(signaturesOf(db, report.id), contentHash(db, report.id))
  const { id, kind, examinedAt, place, completeAt } = report
  return {
    ...{ report: id, kind, examinedAt, place, completeAt },
    findings: findings.length,
    overall: overall(findings),
    signedBy: signed.map(({ role, name }) => ({ role, name })),
  }
}

function damageOf(db: ReadHandle, work: string, end: string): Told['damage'] {
  const found = rows<Told['damage'][number]>(
    db,
    `SELECT damage.id, damage.reference, damage.found_at AS foundAt, damage.how,
      iif(damaged.id = :work, '', coalesce(nullif(damaged.title, ''), 'untitled')) AS whose
     FROM damage JOIN work AS damaged ON damaged.id = damage.work
     WHERE (damaged.id = :work OR damaged.parent = :work OR damaged.id = (SELECT parent FROM work WHERE id = :work))
      AND damage.found_at <= :end
     ORDER BY damage.found_at, damage.id`,
    { work, end },
  )
  return found.filter(({ id }) => closedAt(wordsInForce(wordsOf(db, id)).filter(({ at }) => at <= end)) === null)
}

type Term = Omit<LentOnDay['terms'][number], 'written' | 'stood' | 'word' | 'wordThen'>
type Word = LentOnDay['terms'][number]['word']

function termOf(id: string, { kind, low, high, choice, said }: Row): Term {
  const number = (value: Json | undefined) => (typeof value === 'number' ? value : null)
  return {
    id,
    kind: termKinds.find(each => each === kind) ?? 'light',
    low: number(low),
    high: number(high),
    choice: String(choice),
    said: String(said),
  }
}

function wordOf({ confirmed, confirmed_by, confirmed_on, confirmed_note }: Row): Word {
  if (confirmed !== 'kept' && confirmed !== 'not-kept') return null
  const said = { by: String(confirmed_by), on: String(confirmed_on), note: String(confirmed_note) }
  return { kept: confirmed === 'kept', ...said }
}

const sameWord = (a: Word, b: Word) =>
  a === b || (a !== null && b !== null && a.kept === b.kept && a.by === b.by && a.on === b.on && a.note === b.note)

/** Whatever of a loan was written down, changed or taken off after that day is told beside what is written today. */
function termsOf(
  db: ReadHandle,
  loan: string,
  item: string,
  day: string,
  end: string,
): Pick<LentOnDay, 'terms' | 'takenOff'> {
  const today = rows<StoredTerm>(
    db,
    `SELECT ${termColumns} FROM loan_term
     WHERE loan = :loan AND (item IS NULL OR item = :item) ORDER BY position, id`,
    { loan, item },
  ).map(withWord)
  const terms = today.map(({ item: _, confirmed, ...term }) => {
    const { row: then, next } = asOf(db, { table: 'loan_term', key: term.id }, end)
    const stood = then === null || next === null ? null : termOf(term.id, then)
    const same = JSON.stringify(stood) === JSON.stringify(term)
    // What is said of a day to come is not said yet.
    const word = confirmed !== null && confirmed.on <= day ? confirmed : null
    const wordThen = next === null ? word : then === null ? null : wordOf(then)
    return {
      ...{ ...term, written: then === null ? (next?.at ?? '') : '', stood: same ? null : stood, word },
      wordThen: sameWord(word, wordThen) ? null : { word: wordThen },
    }
  })
  const takenOff = takenSince(db, 'loan_term', loan, end)
    .filter(({ key, row: then }) => (then.item === null || then.item === item) && !today.some(({ id }) => id === key))
    .map(({ key, row: then, at, person }) => ({ ...termOf(key, then), word: wordOf(then), at, person }))
  return { terms, takenOff }
}

/** What was agreed as its value at the end of that day, where that is not what is agreed today. */
function valueThen(db: ReadHandle, item: string, value: LentOnDay['value'], end: string): LentOnDay['valueThen'] {
  const { row: stood, next } = asOf(db, { table: 'loan_work', key: item }, end)
  if (stood === null || next === null) return null
  const minor = typeof stood.value === 'number' ? stood.value : null
  const then = amountOf({ value: minor, currency: String(stood.currency) })
  return JSON.stringify(then) === JSON.stringify(value) ? null : { value: then }
}

function loansOf(db: ReadHandle, work: string, day: string, end: string): LentOnDay[] {
  type Stored = Omit<LentOnDay, 'value' | 'valueThen' | 'terms' | 'takenOff' | 'receipt'> & {
    readonly item: string
    readonly amount: number | null
    readonly currency: string
  }
  const found = rows<Stored>(
    db,
    `SELECT loan.id AS loan, loan.number, party.name AS partyName, loan.way, loan.first, loan.last,
      loan_work.id AS item, loan_work.value AS amount, loan_work.currency,
      loan_work.insured_by AS insuredBy
     FROM loan_work JOIN loan ON loan.id = loan_work.loan JOIN party ON party.id = loan.party
     WHERE loan_work.work = :work AND (loan.first = '' OR loan.first <= :day) AND (loan.last = '' OR :day <= loan.last)
      AND (loan.closed = '' OR :day <= loan.closed)
     ORDER BY loan.first, loan.id`,
    { work, day },
  )
  return found.map(({ item, amount, currency, ...loan }) => {
    const value = amountOf({ value: amount, currency })
    return {
      ...loan,
      value,
      valueThen: valueThen(db, item, value, end),
      ...termsOf(db, loan.loan, item, day, end),
      receipt: lastReceipt(db, loan.loan, work, day),
    }
  })
}

function lastReceipt(db: ReadHandle, loan: string, work: string, until: string): LentOnDay['receipt'] {
  const last = receiptsInForce(receiptsOf(db, loan)).findLast(each => each.day <= until && each.works.includes(work))
  if (last === undefined) return null
  const { id, number, kind, day, handedBy, receivedBy, recordedBy } = receiptOf(db, last.id, 'receipt')
  return { id, number, kind, day, handedBy, receivedBy, recordedBy }
}
