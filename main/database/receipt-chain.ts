/**
 * The chain of receipts of loans: each carries a hash over its own figures, its works and the hash of the one before,
 * as movements do (`record-chain.ts`, which says what that proves and what not).
 */
import { createHash } from 'node:crypto'
import type Database from 'better-sqlite3'

export interface ReceiptRow {
  readonly id: string
  readonly loan: string
  readonly number: string
  readonly number_norm: string
  readonly kind: string
  readonly day: string
  readonly place: string
  readonly handed_by: string
  readonly received_by: string
  readonly note: string
  readonly corrects: string | null
  readonly struck: number
  readonly why: string
  readonly recorded_at: string
  readonly recorded_by: string
}

export interface ReceiptWorkRow {
  readonly id: string
  readonly item: string
  readonly work: string
  readonly condition: string
  readonly crate: string
}

/** SHA-256 over what stands in the rows, in the order of their columns, and the hash before; 64 hex figures. */
export function receiptHash(before: string, receipt: ReceiptRow, works: readonly ReceiptWorkRow[]): string {
  const { id, loan, number, number_norm, kind, day, place, handed_by } = receipt
  const { received_by, note, corrects, struck, why, recorded_at, recorded_by } = receipt
  const said = [id, loan, number, number_norm, kind, day, place, handed_by]
  const more = [received_by, note, corrects, struck, why, recorded_at, recorded_by]
  const named = works.map(each => [each.id, each.item, each.work, each.condition, each.crate])
  return createHash('sha256')
    .update(JSON.stringify([before, ...said, ...more, named]))
    .digest('hex')
}

/** The first receipt that does not join the one before; null where all do. */
export function brokenReceipt(db: Database.Database): { readonly number: string; readonly day: string } | null {
  const receipts = db.prepare<[], ReceiptRow & { readonly hash: string }>('SELECT * FROM loan_receipt ORDER BY rowid')
  const works = db.prepare<[string], ReceiptWorkRow>('SELECT * FROM loan_receipt_work WHERE receipt = ? ORDER BY rowid')
  let before = ''
  for (const each of receipts.iterate()) {
    if (receiptHash(before, each, works.all(each.id)) !== each.hash) return { number: each.number, day: each.day }
    before = each.hash
  }
  return null
}
