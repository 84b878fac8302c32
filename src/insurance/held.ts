/** Money of one group at one moment, added to and taken from exactly, and compared in one currency by dated rates. */
import { type Day, dateOf } from '../light/day.ts'
import type { Amount } from '../money/currency.ts'
import { type Exact, halfEven, nought, plus, times } from '../money/exact.ts'
import { factorOf, type Rate, rateOn } from '../money/exchange.ts'

/** Factors into one currency, each looked up once a day. */
export class Into {
  readonly currency: string
  private readonly rates: readonly Rate[]
  private readonly known = new Map<string, Exact | null>()
  constructor(currency: string, rates: readonly Rate[]) {
    this.currency = currency
    this.rates = rates
  }

  /** Null where no rate leads from it on that day. */
  factor(from: string, day: Day): Exact | null {
    if (from === this.currency) return { num: 1n, den: 1n }
    const key = `${from} ${day}`
    const known = this.known.get(key)
    if (known !== undefined) return known
    const rate = rateOn(this.rates, from, this.currency, dateOf(day))
    const factor = rate === undefined ? null : factorOf(rate, from)
    this.known.set(key, factor)
    return factor
  }

  /** The rate in use, to be named beside a sum. */
  rate(from: string, day: Day): Rate | undefined {
    return from === this.currency ? undefined : rateOn(this.rates, from, this.currency, dateOf(day))
  }
}

export class Held {
  private readonly sums = new Map<string, bigint>()
  works = 0
  /** Works without a value. */
  without = 0

  /** `sign` is 1 for what comes and -1 for what goes. */
  take(value: Amount | null, sign: 1 | -1): void {
    this.works += sign
    if (value === null) this.without += sign
    else this.sums.set(value.currency, (this.sums.get(value.currency) ?? 0n) + BigInt(value.minor) * BigInt(sign))
  }

  /** What rates lead to the currency asked for, exactly, and what stands apart. */
  told(into: Into, day: Day): { readonly exact: Exact; readonly apart: readonly (readonly [string, bigint])[] } {
    let exact = nought
    const apart: (readonly [string, bigint])[] = []
    for (const [currency, num] of this.sums) {
      if (num === 0n) continue
      const factor = into.factor(currency, day)
      if (factor === null) apart.push([currency, num])
      else exact = plus(exact, times({ num, den: 1n }, factor))
    }
    return { exact, apart }
  }
}

export interface DaySum {
  readonly day: Day
  /** In the currency asked for, rounded once, half to even. */
  readonly minor: number
  readonly apart: readonly Amount[]
  readonly works: number
  readonly without: number
  /** The first moment of the day at which the sum was that great. */
  readonly at: number
}

/** The greatest that a group held on a day: of the sum, of each currency apart, of works and of those without a value. */
export class Greatest {
  private exact = nought
  private readonly apart = new Map<string, bigint>()
  private works = 0
  private without = 0
  private at: number

  constructor(at: number) {
    this.at = at
  }

  see(held: Held, into: Into, day: Day, at: number): void {
    const { exact, apart } = held.told(into, day)
    if (exact.num * this.exact.den > this.exact.num * exact.den) {
      this.exact = exact
      this.at = at
    }
    for (const [currency, num] of apart) if (num > (this.apart.get(currency) ?? 0n)) this.apart.set(currency, num)
    this.works = Math.max(this.works, held.works)
    this.without = Math.max(this.without, held.without)
  }

  told(day: Day): DaySum {
    const apart = [...this.apart].sort(([a], [b]) => (a < b ? -1 : 1))
    return {
      day,
      minor: halfEven(this.exact),
      apart: apart.map(([currency, num]) => ({ currency, minor: halfEven({ num, den: 1n }) })),
      works: this.works,
      without: this.without,
      at: this.at,
    }
  }
}
