/** Exact fractions of whole numbers, so that money is rounded once, at the end. */

export interface Exact {
  readonly num: bigint
  /** Above nought. */
  readonly den: bigint
}

export const nought: Exact = { num: 0n, den: 1n }

function shortened(num: bigint, den: bigint): Exact {
  let [a, b] = [num < 0n ? -num : num, den]
  while (b !== 0n) [a, b] = [b, a % b]
  return a === 0n ? nought : { num: num / a, den: den / a }
}

export function plus(a: Exact, b: Exact): Exact {
  return a.den === b.den ? { num: a.num + b.num, den: a.den } : shortened(a.num * b.den + b.num * a.den, a.den * b.den)
}

export function times(a: Exact, b: Exact): Exact {
  return shortened(a.num * b.num, a.den * b.den)
}

/** A decimal such as `0.9412`, exactly; undefined for other text and for nought. */
export function exactOf(decimal: string): Exact | undefined {
  const parts = /^(?<whole>\d{1,12})(?:\.(?<part>\d{1,12}))?$/u.exec(decimal)?.groups
  if (parts === undefined) return undefined
  const { whole = '', part = '' } = parts
  const num = BigInt(whole + part)
  return num === 0n ? undefined : shortened(num, 10n ** BigInt(part.length))
}

/** One divided by it; it must not be nought. */
export function turned({ num, den }: Exact): Exact {
  return { num: den, den: num }
}

/** To the nearest whole number, a half to the even one (IEEE 754 calls it ties to even). Throws beyond 2^53. */
export function halfEven({ num, den }: Exact): number {
  const sign = num < 0n ? -1n : 1n
  const size = num * sign
  const [quotient, twice] = [size / den, (size % den) * 2n]
  const up = twice > den || (twice === den && quotient % 2n === 1n)
  const whole = Number(sign * (up ? quotient + 1n : quotient))
  if (!Number.isSafeInteger(whole)) throw new RangeError('more than can be counted exactly')
  return whole
}
