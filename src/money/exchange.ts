/**
 * Rates of exchange that a person entered, each from its day until the next. The rule it keeps: without a rate an amount
 * stands apart in its own currency; it is never taken for nought or one to one, and no rate is made of two others.
 */

import { exponentOf } from './currency.ts'
import { type Exact, exactOf, times, turned } from './exact.ts'

export interface Rate {
  readonly id: string
  /** One of `from` is `rate` of `to`: a decimal as text, such as `0.9412`. */
  readonly from: string
  readonly to: string
  readonly rate: string
  /** The first day that it is valid on, such as `2031-04-01`. */
  readonly day: string
}

/** A rate as typed with a point or a comma; undefined where it is no number above nought with 12 decimals at most. */
export function readRate(text: string): string | undefined {
  const plain = text.trim().replace(',', '.')
  return exactOf(plain) === undefined ? undefined : plain
}

/**
 * The rate between two currencies on a day: the newest not after it, whichever way round it was entered; on one day the
 * one that needs no turning, then the one entered last.
 */
export function rateOn(rates: readonly Rate[], from: string, to: string, day: string): Rate | undefined {
  let best: Rate | undefined
  for (const rate of rates) {
    const direct = rate.from === from && rate.to === to
    if (!direct && !(rate.from === to && rate.to === from)) continue
    if (rate.day > day) continue
    if (best === undefined || rate.day > best.day || (rate.day === best.day && (direct || best.from !== from)))
      best = rate
  }
  return best
}

/** Minor units of `to` that one minor unit of `from` is by a rate of the two, exactly. */
export function factorOf(rate: Rate, from: string): Exact {
  const exact = exactOf(rate.rate)
  if (exact === undefined) throw new RangeError(`${rate.rate} is no rate`)
  const [direct, to] = rate.from === from ? [exact, rate.to] : [turned(exact), rate.from]
  const shift = exponentOf(to) - exponentOf(from)
  const power = 10n ** BigInt(Math.abs(shift))
  return times(direct, shift >= 0 ? { num: power, den: 1n } : { num: 1n, den: power })
}
