/**
 * The figure of an amount as typed: 1'200'000.–, 1,200,000, 45.000,50, 12,00,000. The rule it keeps: a mark that may
 * part thousands or decimals is asked about, where the currency's own decimals do not settle it.
 */

export type ReadFigure =
  | { readonly minor: number }
  | { readonly wrong: 'none' | 'two-ways' | 'decimals' | 'groups' | 'great' }

/** What the contract takes: at two decimals a million million, and a hundred of them are still exact. */
export const greatestMinor = 1e14

/** `1'200'000`, `1 200 000`, in figures of three from the right; with commas also 12,00,000 (as in South Asia). */
function whole(text: string): string | undefined {
  if (/^\d+$/u.test(text)) return text
  const three = /^\d{1,3}(?:([',. ])\d{3})(?:\1\d{3})*$/u
  const two = /^\d{1,2}(?:,\d{2})+,\d{3}$/u
  return three.test(text) || two.test(text) ? text.replace(/[',. ]/gu, '') : undefined
}

/**
 * Reads digits with their marks into minor units of a currency of `exponent` decimals, exactly.
 * @param millions the power of ten of a word behind it: 6 for “million”, else 0
 */
export function readFigure(text: string, exponent: number, millions = 0): ReadFigure {
  const plain = text
    .trim()
    .replace(/[\u00a0\u2000-\u200a\u202f\t]/gu, ' ')
    .replace(/[’ʼ´`]/gu, "'")
    .replace(/[.,]\s?(?:[-–—]{1,2}|=)$/u, '')
  if (!/^\d[\d', .]*$/u.test(plain) || !/\d$/u.test(plain)) return { wrong: 'none' }
  const marks = plain.replace(/[\d' ]/gu, '')
  const last = marks.at(-1)
  // The last mark parts decimals where it stands once and behind all others; else every mark parts thousands.
  const single = last !== undefined && marks.indexOf(last) === marks.length - 1
  const [before, after] = single
    ? [plain.slice(0, plain.lastIndexOf(last)), plain.slice(plain.lastIndexOf(last) + 1)]
    : [plain, '']
  const places = exponent + millions
  if (single && /^\d{3}$/u.test(after) && marks.length === 1 && /^[1-9]\d{0,2}$/u.test(before)) {
    if (places >= 3) return { wrong: 'two-ways' }
    return minorOf(before + after, '', places)
  }
  const front = whole(before)
  if (front === undefined || !/^\d*$/u.test(after)) return { wrong: 'groups' }
  return after.length > places ? { wrong: 'decimals' } : minorOf(front, after, places)
}

function minorOf(front: string, after: string, places: number): ReadFigure {
  const minor = BigInt(front + after.padEnd(places, '0'))
  return minor > BigInt(greatestMinor) ? { wrong: 'great' } : { minor: Number(minor) }
}
