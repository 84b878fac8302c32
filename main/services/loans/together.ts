/** What works of a loan are worth together, against a term of it: in the sums that every list of sums is made of. */
import type { LoanTerm } from '../../../src/contract/areas/loans.ts'
import { groupParts } from '../../../src/insurance/groups.ts'
import type { DaySum } from '../../../src/insurance/held.ts'
import { type Against, against } from '../../../src/insurance/limits.ts'
import { dateOf } from '../../../src/light/day.ts'
import { isMoneyTerm, type Together } from '../../../src/loan/terms/money.ts'
import { type Gathered, gather } from '../insured/gather.ts'
import { sumsOf } from '../insured/told.ts'
import type { Reading } from '../service.ts'

type Seen = readonly [DaySum, Against]

const rank = { over: 2, unsure: 1, within: 0 } as const

/** The day that speaks most against the term: most over it, else not sure, else of the greatest sum. */
const worst = (a: Seen, b: Seen): number =>
  rank[b[1].verdict] - rank[a[1].verdict] || b[1].over - a[1].over || b[0].minor - a[0].minor || a[0].day - b[0].day

/** Null for terms of anything but money. Works come from the loan's own list, over its days and what is on record. */
export function togetherOf(
  reading: Pick<Reading, 'db' | 'now'>,
  loan: string,
  { id, kind, choice }: LoanTerm,
): readonly Together[] | null {
  if (!isMoneyTerm(kind)) return null
  const gathered: Gathered = gather(reading, { loan, currency: choice })
  const { limits, into, places } = gathered
  const own = limits.filter(limit => limit.id === id)
  return [...sumsOf(gathered)].flatMap(([group, sums]): Together[] => {
    const seen = sums.flatMap((sum): Seen[] => against(own, group, sum, into).map(each => [sum, each]))
    const [first] = seen.sort(worst)
    if (first === undefined) return []
    const whole = groupParts(group).kind === 'all' ? 'All of it' : places.groupWords(group.split('/')[0] ?? '').words
    const [sum, { verdict, over }] = first
    return [{ words: whole, sum, day: dateOf(sum.day), against: { verdict, over } }]
  })
}
