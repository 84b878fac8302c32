/**
 * Limits of a policy, an indemnity or an agreement against what is together. The rule it keeps: a sum that may be more,
 * since money stands apart or a work has no value, is never told to be within its limit.
 */
import type { Day } from '../light/day.ts'
import type { Amount } from '../money/currency.ts'
import { halfEven, nought, plus, times } from '../money/exact.ts'
import type { DaySum, Into } from './held.ts'
import type { Piece } from './pieces.ts'

/**
 * `place`: one room, crate, vehicle or agreed place. `crate` and `vehicle`: each of them. `journey`: whatever a vehicle
 * carries from when it was empty until it is empty again, if never all at once.
 */
export const limitScopes = ['all', 'lender', 'place', 'crate', 'vehicle', 'journey'] as const
export type LimitScope = (typeof limitScopes)[number]

export interface Limit {
  readonly id: string
  readonly scope: LimitScope
  /** The lender or the place; empty for the other scopes. */
  readonly subject: string
  /** The part of a group that it is for, as in `groups.ts`; empty where it is for the whole. */
  readonly slice: string
  readonly amount: Amount
  readonly first: Day | null
  readonly last: Day | null
}

/** Whether it is for a group, such as `crate:c7`. */
export function isFor({ scope, subject, slice }: Limit, group: string): boolean {
  const [whole = '', of = ''] = group.split('/')
  if (of !== slice) return false
  const [kind = '', key = ''] = whole.split(':')
  if (scope === 'all' || scope === 'lender') return scope === kind && subject === key
  if (scope === 'place') return kind !== 'lender' && kind !== 'journey' && key !== '' && key === subject
  return scope === kind
}

export function isInForce({ first, last }: Limit, day: Day): boolean {
  return (first === null || first <= day) && (last === null || day <= last)
}

export type Verdict = 'within' | 'over' | 'unsure'

export interface Against {
  readonly limit: Limit
  readonly verdict: Verdict
  /** The limit in the currency of the sum; null where no rate of the day leads there. */
  readonly minor: number | null
  /** How much over it; 0 where it is not. */
  readonly over: number
}

/** Every limit of a group that is in force on the day of the sum. */
export function against(limits: readonly Limit[], group: string, sum: DaySum, into: Into): Against[] {
  return limits
    .filter(limit => isFor(limit, group) && isInForce(limit, sum.day))
    .map(limit => {
      const factor = into.factor(limit.amount.currency, sum.day)
      if (factor === null) return { limit, verdict: 'unsure', minor: null, over: 0 }
      const minor = halfEven(times({ num: BigInt(limit.amount.minor), den: 1n }, factor))
      const over = Math.max(0, sum.minor - minor)
      const open = sum.apart.length > 0 || sum.without > 0
      return { limit, verdict: over > 0 ? 'over' : open ? 'unsure' : 'within', minor, over }
    })
}

/**
 * Works that bring a sum over `minor`, of those in the group in the order in which they came: the one that crosses it and
 * all that came after. Without a value or a rate a work brings nothing over.
 */
export function bringOver(came: readonly Piece[], minor: number, into: Into, day: Day): string[] {
  let exact = nought
  const over: string[] = []
  for (const { work, value } of came) {
    const factor = value === null ? null : into.factor(value.currency, day)
    if (value === null || value.minor === 0 || factor === null) continue
    exact = plus(exact, times({ num: BigInt(value.minor), den: 1n }, factor))
    if (exact.num > BigInt(minor) * exact.den) over.push(work)
  }
  return over
}
