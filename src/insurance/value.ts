/**
 * What a work is worth on a day and who bears its loss: the value agreed in a loan on the days of that loan, else its own newest valuation. The
 * rule it keeps: a work without a value is told as such, never counted as nought.
 */
import type { Day } from '../light/day.ts'
import type { Amount } from '../money/currency.ts'
import type { Bearer } from './bearer.ts'

/** A work in a loan. Null where the agreement leaves a day open. */
export interface Lent {
  readonly loan: string
  readonly first: Day | null
  readonly last: Day | null
  readonly value: Amount | null
  readonly bearer: Bearer
  /** Terms of the loan that set limits to what is together, as slices of `groups.ts`. */
  readonly slices: readonly string[]
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
  /** Who bears it, then the terms it is under. */
  readonly slices: readonly string[]
}

const covers = (lent: Lent, day: Day) =>
  (lent.first === null || lent.first <= day) && (lent.last === null || day <= lent.last)

/** Whether a loan's days cover it, with a value or without. */
export function isLent(loans: readonly Lent[], day: Day): boolean {
  return loans.some(lent => covers(lent, day))
}

/** Of loans the one that began last, of those that began alike the later in the list. */
function latest(loans: readonly Lent[]): Lent | undefined {
  let found: Lent | undefined
  for (const each of loans)
    if (found === undefined || (each.first ?? -Infinity) >= (found.first ?? -Infinity)) found = each
  return found
}

/**
 * Of several loans on one day the one that began last counts, for the value and for who bears it each among those that
 * say it; of several valuations of a day the one entered last.
 * @param unlent who bears it on days of no loan
 */
export function valueOn(
  loans: readonly Lent[],
  own: readonly Valued[],
  day: Day,
  unlent: Bearer,
): Omit<ValueSpan, 'first' | 'last'> {
  const covering = loans.filter(each => covers(each, day))
  const bearer =
    covering.length === 0 ? unlent : (latest(covering.filter(each => each.bearer !== 'unsaid'))?.bearer ?? 'unsaid')
  const borne = { slices: [bearer, ...new Set(covering.flatMap(each => each.slices))] }
  const lent = latest(covering.filter(each => each.value !== null))
  if (lent !== undefined) return { value: lent.value, by: { kind: 'loan', id: lent.loan }, ...borne }
  let valued: Valued | undefined
  for (const each of own) if (each.day <= day && (valued === undefined || each.day >= valued.day)) valued = each
  return valued === undefined
    ? { value: null, by: null, ...borne }
    : { value: valued.value, by: { kind: 'own', id: valued.id }, ...borne }
}

/** The days from `first` to `last`, cut where the value, or who bears it, changes. */
export function valueSpans(
  loans: readonly Lent[],
  own: readonly Valued[],
  first: Day,
  last: Day,
  unlent: Bearer,
): ValueSpan[] {
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
    ...valueOn(loans, own, start, unlent),
  }))
}
