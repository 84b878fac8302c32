/** Receipts as they are stored, in the order in which they were recorded, and what they say of works. */
import { type LoanPeriod, type Standing, standings } from '../../../src/loan/receipts/outstanding.ts'
import type { LoanWay, Receipt, ReceiptKind } from '../../../src/loan/receipts/receipt.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'

interface Stored extends Omit<Receipt, 'struck' | 'works'> {
  readonly loan: string
  readonly number: string
  readonly kind: ReceiptKind
  readonly struck: number
  readonly works: string
}

export interface LoanReceipt extends Receipt {
  readonly loan: string
  readonly number: string
}

/** Of one loan, or of all. */
export function receiptsOf(db: ReadHandle, loan: string | null): readonly LoanReceipt[] {
  return rows<Stored>(
    db,
    `SELECT id, loan, number, kind, day, corrects, struck,
      (SELECT json_group_array(work) FROM loan_receipt_work WHERE receipt = loan_receipt.id) AS works
     FROM loan_receipt WHERE :loan IS NULL OR loan = :loan ORDER BY rowid`,
    { loan },
  ).map(({ struck, works, ...each }) => ({
    ...each,
    struck: struck === 1,
    works: JSON.parse(works) as string[], // the keys that the query gathers
  }))
}

interface Lent extends LoanPeriod {
  readonly id: string
}

/** Where a work stands by each of the loans that it is lent to this house by. */
export function standingsOfWork(
  db: ReadHandle,
  work: string,
  today: string,
): readonly { readonly first: string; readonly last: string; readonly standing: Standing }[] {
  const loans = rows<Lent & { readonly way: LoanWay }>(
    db,
    `SELECT loan.id, loan.way, loan.first, loan.last, loan.closed FROM loan_work JOIN loan ON loan.id = loan_work.loan
     WHERE loan_work.work = :work AND loan.way = 'in'`,
    { work },
  )
  return loans.flatMap(loan => {
    const standing = standings(loan, [work], receiptsOf(db, loan.id), today).get(work)
    return standing === undefined ? [] : [{ first: loan.first, last: loan.last, standing }]
  })
}
