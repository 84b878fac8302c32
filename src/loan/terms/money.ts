/**
 * Terms of how much may be together: of a loan's works under a state's indemnity, in one vehicle, on one journey. The rule
 * it keeps: a sum that may be more is never told to be within its term.
 */

import type { DaySum } from '../../insurance/held.ts'
import type { Against } from '../../insurance/limits.ts'
import { daySaid } from '../../light/day.ts'
import { type Amount, isCurrency } from '../../money/currency.ts'
import { greatestMinor } from '../../money/read-figure.ts'
import { writeAmount } from '../../money/write.ts'
import { broken, holds, type TermTold, unknown } from './planned.ts'

/** By kind of term: the scope of the limit that it is, as sums have it. */
export const moneyScopes = { indemnity: 'all', vehicle: 'vehicle', journey: 'journey' } as const
export type MoneyTerm = keyof typeof moneyScopes

export const isMoneyTerm = (kind: string): kind is MoneyTerm => Object.hasOwn(moneyScopes, kind)

const together: Readonly<Record<MoneyTerm, string>> = {
  indemnity: 'together under a state’s indemnity',
  vehicle: 'together in one vehicle',
  journey: 'on one journey of a vehicle',
}

/** @param high minor units of the currency `choice` */
export function moneySaid(kind: MoneyTerm, high: number, choice: string): string {
  return `at most ${writeAmount({ minor: high, currency: choice })} ${together[kind]}`
}

/** What is wrong with the amount of such a term. */
export function moneyProblem(
  high: number | null,
  choice: string,
): { field: 'high' | 'choice'; message: string } | null {
  if (!isCurrency(choice)) return { field: 'choice', message: `“${choice}” is no currency by ISO 4217, such as EUR.` }
  if (high === null || !Number.isInteger(high) || high < 1 || high > greatestMinor)
    return {
      field: 'high',
      message: 'Write the amount as the agreement has it, with its currency, such as EUR 2 million.',
    }
  return null
}

/** The greatest sum of a term's works, in the currency of the term, with what it is of. */
export interface Together {
  /** "Van 1", "everything of it". */
  readonly words: string
  readonly sum: DaySum
  /** ISO date of the sum. */
  readonly day: string
  readonly against: Pick<Against, 'verdict' | 'over'>
}

const inCurrency = (minor: number, currency: string) => writeAmount({ minor, currency })
const apartSaid = (apart: readonly Amount[]) => `${apart.map(writeAmount).join(' and ')} without a rate`

/** @param found the sums of the term's works, group by group, each on its greatest day; none where nothing was together */
export function moneyTerm(kind: MoneyTerm, choice: string, found: readonly Together[] | null): TermTold {
  if (found === null) return unknown('What its works are worth together is told on the page of its loan.')
  if (found.length === 0)
    return unknown(
      kind === 'indemnity'
        ? 'None of its works is under the indemnity here yet.'
        : 'No vehicle has carried its works yet.',
    )
  const [first] = found.toSorted((a, b) => b.against.over - a.against.over || b.sum.minor - a.sum.minor)
  const open = found.find(({ against }) => against.verdict === 'unsure')
  if (first === undefined) return unknown('')
  const { words, sum, day, against } = first
  const said = `${words}: ${inCurrency(sum.minor, choice)} on ${daySaid(day)}`
  const figures = { sum: sum.minor, over: against.over, day }
  if (against.verdict === 'over') return broken(`${said}, ${inCurrency(against.over, choice)} too much.`, figures)
  if (open !== undefined) {
    const without =
      open.sum.without === 0
        ? []
        : [`${open.sum.without} ${open.sum.without === 1 ? 'work has' : 'works have'} no value`]
    const apart = open.sum.apart.length === 0 ? [] : [`${apartSaid(open.sum.apart)} is not in it`]
    return unknown(
      `${open.words}: ${inCurrency(open.sum.minor, choice)} on ${daySaid(open.day)}, but ${[...without, ...apart].join(', and ')}.`,
    )
  }
  return holds(`${said} is the most.`, figures)
}
