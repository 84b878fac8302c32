/**
 * What a work is worth on a day: the value agreed in a loan on the days of that loan, else its own newest valuation. The
 * rule it keeps: a work without a value is told as such, never counted as nought.
 */
import type { Day } from '../light/day.ts'
import type { Amount } from '../money/currency.ts'

/** A work in a loan. Null where the agreement leaves a day open. */
export interface Lent {
  readonly loan: string
  readonly first: Day | null
  readonly last: Day | null
  readonly value: Amount | null
}

/** A valuation of the work's own, in force from its day until the next. */
export interface Valued {
  readonly id: string
  readonly day: Day
  readonly value: Amount
}

export interface ValueSpan {
  readonly first: Day
  readonly last: Day
  readonly value: Amount | null
  /** The loan or the valuation that says so; null where there is no value. */
  readonly by: { readonly kind: 'loan' | 'own'; readonly id: string } | null
}

const covers = (lent: Lent, day: Day) =>
  (lent.first === null || lent.first <= day) && (lent.last === null || day <= lent.last)

/** Whether a loan's days cover it, with a value or without. */
export function isLent(loans: readonly Lent[], day: Day): boolean {
  return loans.some(lent => covers(lent, day))
}

/** Of several loans on one day the one that began last counts; of several valuations of a day the one entered last. */
export function valueOn(loans: readonly Lent[], own: readonly Valued[], day: Day): Omit<ValueSpan, 'first' | 'last'> {
  let lent: Lent | undefined
  for (const each of loans) {
    if (each.value === null || !covers(each, day)) continue
    if (lent === undefined || (each.first ?? -Infinity) >= (lent.first ?? -Infinity)) lent = each
  }
  if (lent !== undefined) return { value: lent.value, by: { kind: 'loan', id: lent.loan } }
  let valued: Valued | undefined
  for (const each of own) if (each.day <= day && (valued === undefined || each.day >= valued.day)) valued = each
  return valued === undefined ? { value: null, by: null } : { value: valued.value, by: { kind: 'own', id: valued.id } }
}

/** The days from `first` to `last`, cut where the value changes. */
export function valueSpans(loans: readonly Lent[], own: readonly Valued[], first: Day, last: Day): ValueSpan[] {
  const turns = new Set([first])
  const turn = (day: Day | null) => {
    if (day !== null && first < day && day <= last) turns.add(day)
  }
  for (const lent of loans) {
    turn(lent.first)
    turn(lent.last === null ? null : lent.last + 1)
  }
  for (const { day } of own) turn(day)
  const starts = [...turns].sort((a, b) => a - b)
  return starts.map((start, at) => ({
    first: start,
    last: (starts[at + 1] ?? last + 1) - 1,
    ...valueOn(loans, own, start),
  }))
}
