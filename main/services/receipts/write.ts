/** Receipts written into the record, and set right in it. Nothing here changes or removes a row. */

import { normalNumber } from '../../../src/checklist/numbers.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { daySaid } from '../../../src/light/day.ts'
import { kindSaid, type LoanWay, outOfOrder, type Receipt } from '../../../src/loan/receipts/receipt.ts'
import { lastLink } from '../../database/chain.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { type ReceiptRow, type ReceiptWorkRow, receiptHash } from '../../database/receipt-chain.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import { openLoan } from '../loans/loan.ts'
import { signed } from '../record/record.ts'
import type { Writing } from '../service.ts'
import { insert, row, value } from '../sql.ts'
import { workName } from '../works/facts.ts'
import { numberToCome, receiptOf } from './read.ts'
import { receiptsOf } from './rows.ts'

type Named = Received<'receipt.add'>['works'][number]

interface Entry {
  readonly loan: string
  readonly kind: Receipt['kind']
  readonly day: string
  readonly number: string | undefined
  readonly place: string
  readonly handedBy: string
  readonly receivedBy: string
  readonly note: string
  readonly works: readonly Named[]
  readonly corrects: string | null
  readonly struck: boolean
  readonly why: string
  readonly by: string
}

/** Refuses `number-taken`: a number names one receipt, whatever became of it. */
function freeNumber(db: ReadHandle, number: string): string {
  const norm = normalNumber(number)
  if (norm === '') {
    throw new Refusal('bad-input', `${number} has no letter and no figure. Give the receipt a number.`, {
      field: 'number',
    })
  }
  const taken = row<{ id: string; number: string; day: string }>(
    db,
    'SELECT id, number, day FROM loan_receipt WHERE number_norm = :norm',
    { norm },
  )
  if (taken === undefined) return norm
  const sentence = `There is a receipt ${taken.number} already, of ${daySaid(taken.day)}. A number is given once; take the next.`
  throw new Refusal('number-taken', sentence, { field: 'number', details: { receipt: taken.id } })
}

function notInFuture(day: string, today: string): void {
  if (day <= today) return
  const sentence = `Today is ${daySaid(today)}: a receipt of ${daySaid(day)} has not been yet. Record it when it is signed.`
  throw new Refusal('in-the-future', sentence, { field: 'day' })
}

/** The works with their lines of the agreement. Refuses one that is not in the loan, or named twice. */
function itemsOf(
  db: ReadHandle,
  loan: string,
  works: readonly Named[],
): readonly (Named & { readonly item: string })[] {
  const there = new Set<string>()
  return works.map((named, at) => {
    const field = `works.${at}.work`
    const { work } = named
    const item = value<string>(db, 'SELECT id FROM loan_work WHERE loan = :loan AND work = :work', { loan, work })
    if (item === undefined) {
      if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', field)
      const sentence = `${workName(db, work)} is not in this loan. Put it into the loan first.`
      throw new Refusal('not-in-the-loan', sentence, { field })
    }
    if (there.has(work)) {
      throw new Refusal('bad-input', `${workName(db, work)} is named twice. Name it once.`, { field })
    }
    there.add(work)
    return { ...named, item }
  })
}

/** Refuses `out-of-order`: what was sent before it came, received twice. */
function inOrder(db: ReadHandle, { loan, ...entry }: Entry, id: string): void {
  const way = value<LoanWay>(db, 'SELECT way FROM loan WHERE id = :loan', { loan }) ?? 'in'
  const works = entry.works.map(({ work }) => work)
  const all: readonly Receipt[] = [...receiptsOf(db, loan), { ...entry, id, works }]
  const wrong = outOfOrder(way, all)
  if (wrong === null) return
  const { work, receipt, before } = wrong
  const name = workName(db, work)
  const said = `${kindSaid[way][receipt.kind]} on ${daySaid(receipt.day)}`
  const field = receipt.id === id ? 'works' : 'day'
  const sentence =
    before === null
      ? `${name} would be ${said}, and there is no receipt that it was ${kindSaid[way][way === 'in' ? 'received' : 'sent']} before. Record that one first, with its own day.`
      : `${name} would be ${said}, right after it was ${kindSaid[way][before.kind]} on ${daySaid(before.day)}. Put the day right, or correct the other receipt.`
  const other = [receipt.id, before?.id].find(each => each !== undefined && each !== id)
  throw new Refusal('out-of-order', sentence, {
    field,
    ...(other === undefined ? {} : { details: { receipt: other } }),
  })
}

/** Writes one receipt with its works, joined to the one before. */
function write(writing: Writing, entry: Entry): Output<'receipt.add'> {
  const { db } = writing
  const today = dateAt(writing.now())
  const number = entry.number ?? numberToCome(db, today)
  const norm = freeNumber(db, number)
  notInFuture(entry.day, today)
  const items = itemsOf(db, entry.loan, entry.works)
  const id = writing.newId()
  inOrder(db, entry, id)
  const receipt: ReceiptRow = {
    id,
    loan: entry.loan,
    number,
    number_norm: norm,
    kind: entry.kind,
    day: entry.day,
    place: entry.place,
    handed_by: entry.handedBy,
    received_by: entry.receivedBy,
    note: entry.note,
    corrects: entry.corrects,
    struck: entry.struck ? 1 : 0,
    why: entry.why,
    recorded_at: writing.now(),
    recorded_by: entry.by,
  }
  const works = items.map(
    ({ item, work, condition = '', crate = '' }): ReceiptWorkRow => ({
      id: writing.newId(),
      item,
      work,
      condition,
      crate,
    }),
  )
  insert(db, 'loan_receipt', { ...receipt, hash: receiptHash(lastLink(db, 'loan_receipt'), receipt, works) })
  for (const each of works) insert(db, 'loan_receipt_work', { ...each, receipt: id })
  return { id, number }
}

export function add(writing: Writing, input: Received<'receipt.add'>): Output<'receipt.add'> {
  openLoan(writing.db, input.loan, 'loan')
  return write(writing, {
    loan: input.loan,
    kind: input.kind,
    day: input.day ?? dateAt(writing.now()),
    number: input.number,
    place: input.place ?? '',
    handedBy: input.handedBy ?? '',
    receivedBy: input.receivedBy ?? '',
    note: input.note ?? '',
    works: input.works,
    corrects: null,
    struck: false,
    why: '',
    by: signed(writing, input.by),
  })
}

export function correct(writing: Writing, input: Received<'receipt.correct'>): Output<'receipt.correct'> {
  const { db } = writing
  const wrong = receiptOf(db, input.receipt, 'receipt')
  openLoan(db, wrong.loan, 'receipt')
  if (wrong.correctedBy !== null || wrong.struck) {
    const sentence = wrong.struck
      ? `Receipt ${wrong.number} only says that another never was. Record the receipt anew.`
      : `Receipt ${wrong.number} was set right already. Correct the newer one instead.`
    throw new Refusal('corrected-already', sentence, {
      field: 'receipt',
      details: { receipt: wrong.correctedBy ?? wrong.id },
    })
  }
  const same = wrong.works.map(({ work, condition, crate }) => ({ work, condition, crate }))
  return write(writing, {
    loan: wrong.loan,
    kind: input.kind ?? wrong.kind,
    day: input.day ?? wrong.day,
    number: input.number,
    place: input.place ?? wrong.place,
    handedBy: input.handedBy ?? wrong.handedBy,
    receivedBy: input.receivedBy ?? wrong.receivedBy,
    note: input.note ?? wrong.note,
    works: input.works ?? same,
    corrects: wrong.id,
    struck: input.struck ?? false,
    why: input.why,
    by: signed(writing, input.by),
  })
}
