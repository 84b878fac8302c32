/** Terms of loans that say how much may be together: under an indemnity, in one vehicle, on one journey. */
import type { Limit } from '../../../src/insurance/limits.ts'
import { type Day, dayOf } from '../../../src/light/day.ts'
import { type MoneyTerm, moneyScopes } from '../../../src/loan/terms/money.ts'
import { termSaid } from '../../../src/loan/terms/said.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'

interface Stored {
  readonly id: string
  readonly loan: string
  readonly number: string
  readonly item: string | null
  readonly kind: MoneyTerm
  /** Minor units. */
  readonly high: number
  /** Its currency. */
  readonly choice: string
  readonly said: string
  readonly first: string
  readonly last: string
  readonly closed: string
}

export function moneyTermsOf(db: ReadHandle): Stored[] {
  return rows<Stored>(
    db,
    `SELECT loan_term.id, loan_term.loan, loan.number, loan_term.item, loan_term.kind, loan_term.high, loan_term.choice,
      loan_term.said, loan.first, loan.last, loan.closed
     FROM loan_term JOIN loan ON loan.id = loan_term.loan
     WHERE loan_term.kind IN (SELECT value FROM json_each(:kinds)) ORDER BY loan.id, loan_term.position, loan_term.id`,
    { kinds: JSON.stringify(Object.keys(moneyScopes)) },
  )
}

const dayOrNull = (text: string): Day | null => (text === '' ? null : dayOf(text))

/** Days on which a loan counts: none after it was closed. */
export function daysOf({ first, last, closed }: Pick<Stored, 'first' | 'last' | 'closed'>) {
  const until = closed !== '' && (last === '' || closed < last) ? closed : last
  return { first: dayOrNull(first), last: dayOrNull(until) }
}

/** Each as a limit of its own works, with the words it has. */
export function termLimitsOf(
  db: ReadHandle,
): { readonly limit: Limit; readonly words: string; readonly source: string }[] {
  return moneyTermsOf(db).map(({ id, number, kind, high, choice, ...term }) => ({
    limit: {
      id,
      scope: moneyScopes[kind],
      subject: '',
      slice: `term-${id}`,
      amount: { minor: high, currency: choice },
      ...daysOf(term),
    },
    words: `loan ${number}`,
    source: `loan ${number}, “${termSaid({ kind, low: null, high, choice, said: term.said }, String)}”`,
  }))
}
