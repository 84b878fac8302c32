/** What answers about sums share. */
import { Refusal } from '../../../src/contract/refusal.ts'
import type { DaySum } from '../../../src/insurance/held.ts'
import { dayLong } from '../../../src/insurance/stays.ts'
import { sumsByDay } from '../../../src/insurance/sums.ts'
import { type Day, dateOf } from '../../../src/light/day.ts'
import type { Gathered } from './gather.ts'

/** A day on which a group holds nothing. */
export const empty = (day: Day): DaySum => ({ day, minor: 0, apart: [], works: 0, without: 0, at: day * dayLong })

/** Refuses `too-great`: a rate of many millions makes sums that no figure here holds exactly. */
function counted<T>(count: () => T): T {
  try {
    return count()
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    const sentence = 'A sum is greater than can be counted exactly. Look at the rates of exchange and at the values.'
    throw new Refusal('too-great', sentence)
  }
}

/** Refuses `too-great`. */
export const sumsOf = ({ pieces, into, first, last }: Gathered) => counted(() => sumsByDay(pieces, into, first, last))

/** What every answer begins with. */
export const head = ({ into, currencies, today, first, last }: Gathered) => ({
  currency: into.currency,
  currencies: [...currencies],
  today: dateOf(today),
  first: dateOf(first),
  last: dateOf(last),
})

export const told = ({ minor, apart, works, without }: DaySum) => ({ minor, apart: [...apart], works, without })
