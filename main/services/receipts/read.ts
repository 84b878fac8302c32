/** Receipts as they are told: of a loan, of a work, and what is outstanding of all loans. */

import type { OutstandingLine, ReceiptTold } from '../../../src/contract/areas/receipts.ts'
import type { Output, Received } from '../../../src/contract/contract.ts'
import { nextNumber } from '../../../src/loan/receipts/next-number.ts'
import { isOutstanding, type LoanPeriod, type Standing, standings } from '../../../src/loan/receipts/outstanding.ts'
import type { LoanWay } from '../../../src/loan/receipts/receipt.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { dateAt } from '../days.ts'
import type { Reading } from '../service.ts'
import { row, rows, value } from '../sql.ts'
import { firstNumber } from '../works/figures.ts'
import { receiptsOf } from './rows.ts'

type Told = Omit<ReceiptTold, 'struck' | 'works'> & { readonly struck: number }

const columns = `receipt.id, receipt.number, receipt.kind, receipt.day, receipt.place, receipt.handed_by AS handedBy,
  receipt.received_by AS receivedBy, receipt.note, receipt.corrects,
  (SELECT later.id FROM loan_receipt AS later WHERE later.corrects = receipt.id) AS correctedBy, receipt.struck,
  receipt.why, receipt.recorded_at AS recordedAt, receipt.recorded_by AS recordedBy`

function worksOf(db: ReadHandle, receipt: string): ReceiptTold['works'] {
  return rows(
    db,
    `SELECT named.work, coalesce(${firstNumber}, '') AS number, work.title, named.condition, named.crate
     FROM loan_receipt_work AS named JOIN work ON work.id = named.work WHERE named.receipt = :receipt ORDER BY named.rowid`,
    { receipt },
  )
}

const toldOf =
  (db: ReadHandle) =>
  <T extends Told>({ struck, ...told }: T) => ({ ...told, struck: struck === 1, works: worksOf(db, told.id) })

/** Refuses what is no receipt. */
export function receiptOf(db: ReadHandle, id: string, field: string): ReceiptTold & { readonly loan: string } {
  const found = row<Told & { readonly loan: string }>(
    db,
    `SELECT ${columns}, receipt.loan FROM loan_receipt AS receipt WHERE receipt.id = :id`,
    { id },
  )
  if (found === undefined) throw notFound('receipt', field)
  return toldOf(db)(found)
}

/** The number that a receipt of today has if nobody types another. */
export function numberToCome(db: ReadHandle, today: string): string {
  const last = value<string>(db, 'SELECT number FROM loan_receipt ORDER BY rowid DESC LIMIT 1') ?? ''
  const taken = rows<{ norm: string }>(db, 'SELECT number_norm AS norm FROM loan_receipt')
  return nextNumber(last, new Set(taken.map(({ norm }) => norm)), today)
}

const plain = ({ state, since, days, late }: Standing) => ({ state, since, days, late })

export function list({ db, now }: Reading, { loan }: Received<'receipt.list'>): Output<'receipt.list'> {
  const period = row<LoanPeriod>(db, 'SELECT way, first, last, closed FROM loan WHERE id = :loan', { loan })
  if (period === undefined) throw notFound('loan', 'loan')
  const works = rows<{ work: string }>(db, 'SELECT work FROM loan_work WHERE loan = :loan ORDER BY position, id', {
    loan,
  }).map(({ work }) => work)
  const today = dateAt(now())
  const receipts = rows<Told>(
    db,
    `SELECT ${columns} FROM loan_receipt AS receipt WHERE receipt.loan = :loan ORDER BY receipt.rowid`,
    { loan },
  ).map(toldOf(db))
  return {
    receipts,
    works: [...standings(period, works, receiptsOf(db, loan), today)].map(([work, each]) => ({
      work,
      ...plain(each),
      next: [...each.next],
    })),
    next: numberToCome(db, today),
    today,
  }
}

export function ofWork({ db }: Reading, { work }: Received<'receipt.ofWork'>): Output<'receipt.ofWork'> {
  if (value(db, 'SELECT id FROM work WHERE id = :work', { work }) === undefined) throw notFound('work', 'work')
  type Found = Told & {
    readonly loan: string
    readonly loanNumber: string
    readonly partyName: string
    readonly way: LoanWay
  }
  return {
    receipts: rows<Found>(
      db,
      `SELECT ${columns}, receipt.loan, loan.number AS loanNumber, party.name AS partyName, loan.way
       FROM loan_receipt AS receipt JOIN loan ON loan.id = receipt.loan JOIN party ON party.id = loan.party
       WHERE receipt.id IN (SELECT named.receipt FROM loan_receipt_work AS named WHERE named.work = :work)
       ORDER BY receipt.rowid`,
      { work },
    ).map(toldOf(db)),
  }
}

interface Lent extends LoanPeriod {
  readonly loan: string
  readonly loanNumber: string
  readonly partyName: string
  readonly works: readonly { readonly work: string; readonly number: string; readonly title: string }[]
}

function loansWithWorks(db: ReadHandle): Lent[] {
  type Row = Omit<Lent, 'works'> & Lent['works'][number]
  const found = rows<Row>(
    db,
    `SELECT loan.id AS loan, loan.number AS loanNumber, party.name AS partyName, loan.way, loan.first, loan.last, loan.closed,
      work.id AS work, coalesce(${firstNumber}, '') AS number, work.title
     FROM loan_work JOIN loan ON loan.id = loan_work.loan JOIN party ON party.id = loan.party
     JOIN work ON work.id = loan_work.work ORDER BY loan.id, loan_work.position, loan_work.id`,
  )
  return [...Map.groupBy(found, ({ loan }) => loan).values()].flatMap(works => {
    const [one] = works
    if (one === undefined) return []
    const { work: _, number: __, title: ___, ...loan } = one
    return [{ ...loan, works: works.map(({ work, number, title }) => ({ work, number, title })) }]
  })
}

export function outstanding({ db, now }: Reading): Output<'receipt.outstanding'> {
  const today = dateAt(now())
  const receipts = Map.groupBy(receiptsOf(db, null), ({ loan }) => loan)
  const lines = loansWithWorks(db).flatMap((lent): OutstandingLine[] => {
    const { loan, loanNumber, partyName, way, last } = lent
    const keys = lent.works.map(({ work }) => work)
    const stand = standings(lent, keys, receipts.get(loan) ?? [], today)
    return lent.works.flatMap(work => {
      const found = stand.get(work.work)
      if (found === undefined || !isOutstanding(found, today)) return []
      return [{ loan, loanNumber, partyName, way, last, ...work, ...plain(found) }]
    })
  })
  return { lines: lines.sort((a, b) => b.days - a.days || b.late - a.late), today }
}
