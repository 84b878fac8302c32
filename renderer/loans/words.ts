/** How loans are said: periods in days, ways in words. */
import type { LoanHead } from '../../src/contract/areas/loans.ts'
import { type OutstandingState, stateSaid } from '../../src/loan/receipts/outstanding.ts'
import { onDay } from '../light/words.ts'
import { plural } from '../record/words.ts'

export const wayWords: Readonly<Record<LoanHead['way'], string>> = { in: 'lent to us', out: 'lent by us' }

export const insurers = [
  ['', 'nobody said'],
  ['lender', 'the lender'],
  ['borrower', 'the borrower'],
  ['indemnity', 'state indemnity'],
  ['nobody', 'nobody'],
] as const

type Period = Pick<LoanHead, 'first' | 'last'>

/** `10 Mar 2031 – 20 Jul 2031`, or what of it is known. */
export function periodSaid({ first, last }: Period): string {
  if (first === '' && last === '') return 'no period agreed yet'
  if (last === '') return `from ${onDay(first)}, no end agreed yet`
  if (first === '') return `until ${onDay(last)}, no beginning agreed yet`
  return `${onDay(first)} – ${onDay(last)}`
}

interface Stands {
  readonly state: OutstandingState
  readonly since: string
  readonly days: number
  readonly late: number
}

/** `received, not back: 120 days, since 4 Mar 2031; 2 days late`. */
export function standingSaid({ state, since, days, late }: Stands): string {
  const how = since === '' || state === 'settled' ? '' : `: ${plural(days, 'day')}, since ${onDay(since)}`
  return `${stateSaid[state]}${how}${late > 0 ? `; ${plural(late, 'day')} late` : ''}`
}
