/**
 * What of a loan is outstanding, work by work: not received or sent yet, here or with the other side, on its way, not
 * acknowledged; since which day, how many days, and how far past the end of the loan. Days are of the calendar alone.
 */
import { dayOf } from '../../light/day.ts'
import { inForce, type LoanWay, nextKinds, type Receipt, type ReceiptKind, receiptKinds } from './receipt.ts'

/**
 * `to come`, `to go`: no receipt yet. `here`: received and not back. `under way`: sent and not acknowledged. `there`:
 * acknowledged by a borrower and not back. `settled`: nothing is outstanding.
 */
export const outstandingStates = ['to come', 'to go', 'here', 'under way', 'there', 'settled'] as const
export type OutstandingState = (typeof outstandingStates)[number]

export const stateSaid: Readonly<Record<OutstandingState, string>> = {
  'to come': 'not received yet',
  'to go': 'not sent yet',
  here: 'received, not back',
  'under way': 'sent, not acknowledged',
  there: 'with the borrower, not back',
  settled: 'settled',
}

export interface LoanPeriod {
  readonly way: LoanWay
  /** Days; '' where none is agreed. */
  readonly first: string
  readonly last: string
  /** The day on which the loan was closed; '' while it is open. */
  readonly closed: string
}

export interface Standing {
  readonly state: OutstandingState
  /** The day of the receipt that says so, or on which the loan begins; '' where neither is known. */
  readonly since: string
  /** Days from then until today; 0 where that day is not known or not over. */
  readonly days: number
  /** Days past the last of the loan; 0 while that is not over or not agreed. */
  readonly late: number
  /** The receipt that says so; null where there is none. */
  readonly receipt: string | null
  /** What a receipt of it can be for next. */
  readonly next: readonly ReceiptKind[]
}

/** Whole days from one day to another, 0 where either is '' or the second comes first. */
export function daysBetween(from: string, to: string): number {
  return from === '' || to === '' ? 0 : Math.max(0, dayOf(to) - dayOf(from))
}

/** Where each work of a loan stands today. Of a closed loan a work that never came or went is not outstanding. */
export function standings(
  loan: LoanPeriod,
  works: readonly string[],
  receipts: readonly Receipt[],
  today: string,
): ReadonlyMap<string, Standing> {
  const last = new Map<string, Receipt>()
  for (const receipt of inForce(receipts)) for (const work of receipt.works) last.set(work, receipt)
  return new Map(works.map(work => [work, standing(loan, last.get(work), today)]))
}

function standing(loan: LoanPeriod, receipt: Receipt | undefined, today: string): Standing {
  const state = stateOf(loan, receipt)
  const said = { receipt: receipt?.id ?? null, next: nextKinds(loan.way, receipt?.kind ?? null) }
  if (state === 'settled') return { state, since: receipt?.day ?? '', days: 0, late: 0, ...said }
  const since = receipt?.day ?? loan.first
  return { state, since, days: daysBetween(since, today), late: daysBetween(loan.last, today), ...said }
}

function stateOf({ way, closed }: LoanPeriod, receipt: Receipt | undefined): OutstandingState {
  if (receipt === undefined) return closed !== '' ? 'settled' : way === 'in' ? 'to come' : 'to go'
  if (receipt.kind === 'sent') return 'under way'
  if (way === 'in') return receipt.kind === 'received' ? 'here' : 'settled'
  return receipt.kind === 'acknowledged' ? 'there' : 'settled'
}

/** What is not due yet is not outstanding: a work to come before the loan begins, or of a loan without a beginning. */
export function isOutstanding({ state, since }: Pick<Standing, 'state' | 'since'>, today: string): boolean {
  if (state === 'settled') return false
  return (state !== 'to come' && state !== 'to go') || (since !== '' && since <= today)
}

/**
 * What the next receipt of a loan is most likely for: what usually follows for most works that are outstanding, or for
 * all where none is. Of two that follow as many the one that comes first in a loan.
 */
export function kindToCome(works: readonly Pick<Standing, 'state' | 'next'>[]): ReceiptKind {
  const open = works.filter(({ state }) => state !== 'settled')
  const usual = (open.length > 0 ? open : works).map(({ next }) => next[0])
  const count = (kind: ReceiptKind) => usual.filter(each => each === kind).length
  return receiptKinds.reduce((best, kind) => (count(kind) > count(best) ? kind : best))
}
