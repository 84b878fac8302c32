/**
 * Sums of money: per currency as they are, and together in one currency by dated rates. The rule it keeps: every step
 * is exact, and what is told together is rounded once, half to even.
 */
import type { Amount } from './currency.ts'
import { halfEven, nought, plus, times } from './exact.ts'
import { factorOf, type Rate, rateOn } from './exchange.ts'

export interface Together {
  /** In the currency asked for: its own amounts and those a rate leads to, rounded once. */
  readonly sum: Amount
  /** Sums in other currencies that no rate of that day leads from, in the order of their codes. */
  readonly apart: readonly Amount[]
  /** Rates that were used. */
  readonly rates: readonly Rate[]
}

/** One amount a currency, in the order of their codes; nothing is converted. Throws a RangeError beyond 2^53. */
export function perCurrency(amounts: Iterable<Amount>): Amount[] {
  const sums = new Map<string, bigint>()
  for (const { minor, currency } of amounts) sums.set(currency, (sums.get(currency) ?? 0n) + BigInt(minor))
  return [...sums]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([currency, num]) => ({ minor: halfEven({ num, den: 1n }), currency }))
}

/** Amounts together in `currency` by the rates valid on `day`. */
export function together(amounts: Iterable<Amount>, currency: string, rates: readonly Rate[], day: string): Together {
  let exact = nought
  const apart: Amount[] = []
  const used: Rate[] = []
  for (const amount of perCurrency(amounts)) {
    const own = { num: BigInt(amount.minor), den: 1n }
    if (amount.currency === currency) {
      exact = plus(exact, own)
      continue
    }
    const rate = rateOn(rates, amount.currency, currency, day)
    if (rate === undefined) {
      apart.push(amount)
      continue
    }
    used.push(rate)
    exact = plus(exact, times(own, factorOf(rate, amount.currency)))
  }
  return { sum: { minor: halfEven(exact), currency }, apart, rates: used }
}
