/**
 * Receipts of a loan: what each is for, which count, and in which order they can have been. The rule it keeps: a receipt
 * is never taken away; one that was wrong is set right or struck by a later one, which stands in its place in time.
 */
export const receiptKinds = ['received', 'sent', 'acknowledged'] as const
/** By this house received, by this house sent out, by the other side acknowledged. */
export type ReceiptKind = (typeof receiptKinds)[number]

/** Seen from this house: works are lent to it, or by it. */
export type LoanWay = 'in' | 'out'

/** What each kind says, by the loan's way; after "works" or before "on". */
export const kindSaid: Readonly<Record<LoanWay, Readonly<Record<ReceiptKind, string>>>> = {
  in: { received: 'received by us', sent: 'sent back', acknowledged: 'acknowledged as back' },
  out: { received: 'received back by us', sent: 'sent out', acknowledged: 'acknowledged as received' },
}

export interface Receipt {
  readonly id: string
  readonly kind: ReceiptKind
  /** Such as `2031-03-02`. */
  readonly day: string
  /** The receipt that it sets right or strikes. */
  readonly corrects: string | null
  readonly struck: boolean
  /** Keys of the works that it names. */
  readonly works: readonly string[]
}

/**
 * The receipts that count, in the order in which they were: by day, and within a day as the first of each chain of
 * corrections was recorded.
 * @param receipts in the order in which they were recorded
 */
export function inForce<R extends Receipt>(receipts: readonly R[]): readonly R[] {
  const place = new Map<string, number>()
  for (const [at, { id, corrects }] of receipts.entries()) {
    place.set(id, corrects === null ? at : (place.get(corrects) ?? at))
  }
  const corrected = new Set(receipts.map(({ corrects }) => corrects))
  return receipts
    .filter(({ id, struck }) => !struck && !corrected.has(id))
    .sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0)))
}

/** What can follow what. `none`: before the first. Common practice, no source. */
const follows: Readonly<Record<LoanWay, Readonly<Record<ReceiptKind | 'none', readonly ReceiptKind[]>>>> = {
  in: {
    none: ['received'],
    received: ['sent', 'acknowledged'],
    // What could not be delivered comes back.
    sent: ['acknowledged', 'received'],
    acknowledged: ['received'],
  },
  out: {
    none: ['sent'],
    sent: ['acknowledged', 'received'],
    acknowledged: ['received'],
    received: ['sent'],
  },
}

/** What can come next after a work's last receipt; `null` where there is none. */
export const nextKinds = (way: LoanWay, last: ReceiptKind | null): readonly ReceiptKind[] =>
  follows[way][last ?? 'none']

export interface OutOfOrder<R> {
  readonly work: string
  readonly receipt: R
  /** The one before it; null where it is the first. */
  readonly before: R | null
}

/** The first receipt that cannot have followed the one before it, for any work; null where all can. */
export function outOfOrder<R extends Receipt>(way: LoanWay, receipts: readonly R[]): OutOfOrder<R> | null {
  const last = new Map<string, R>()
  for (const receipt of inForce(receipts)) {
    for (const work of receipt.works) {
      const before = last.get(work) ?? null
      if (!nextKinds(way, before?.kind ?? null).includes(receipt.kind)) return { work, receipt, before }
      last.set(work, receipt)
    }
  }
  return null
}
