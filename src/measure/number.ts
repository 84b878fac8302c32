/**
 * Reads one number as people write it: 622, 1 220, 62,2, 24 1/2, 24-1/2, 24½. The rule it keeps: a number is a
 * fraction of whole numbers, and one that can be read in two ways says so instead of choosing.
 */
import type { Ratio } from './units.ts'

export interface ReadNumber extends Ratio {
  /** Where the number starts, and the first place after it. */
  readonly at: number
  readonly end: number
  /** It has a vulgar fraction, so it most likely counts inches. */
  readonly vulgar: boolean
  /** Digits after the decimal mark. */
  readonly decimals: number
  /** Spaces or marks part its thousands. */
  readonly grouped: boolean
  /** `thousands`: a comma and three digits. `millimetres`: a point and three digits, doubtful only in millimetres. */
  readonly doubt?: 'thousands' | 'millimetres'
  /** A fraction such as 24/36 or 1/0, which no ruler has. */
  readonly badFraction?: true
}

const GLYPHS: Readonly<Record<string, Ratio>> = {
  '¼': { num: 1, den: 4 },
  '½': { num: 1, den: 2 },
  '¾': { num: 3, den: 4 },
  '⅐': { num: 1, den: 7 },
  '⅑': { num: 1, den: 9 },
  '⅒': { num: 1, den: 10 },
  '⅓': { num: 1, den: 3 },
  '⅔': { num: 2, den: 3 },
  '⅕': { num: 1, den: 5 },
  '⅖': { num: 2, den: 5 },
  '⅗': { num: 3, den: 5 },
  '⅘': { num: 4, den: 5 },
  '⅙': { num: 1, den: 6 },
  '⅚': { num: 5, den: 6 },
  '⅛': { num: 1, den: 8 },
  '⅜': { num: 3, den: 8 },
  '⅝': { num: 5, den: 8 },
  '⅞': { num: 7, den: 8 },
}

/** What a ruler or a framer's list parts an inch into. */
const DENOMINATORS: ReadonlySet<number> = new Set([2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64])

/** Spaces that stand inside a line: plain, tab, no-break, figure, thin, narrow no-break and their kin. */
export function isBlank(char: string | undefined): boolean {
  return char !== undefined && /^[ \t\u00a0\u1680\u2000-\u200b\u202f\u205f\u2060\u3000\ufeff]$/.test(char)
}

export function isDigit(char: string | undefined): boolean {
  return char !== undefined && char >= '0' && char <= '9'
}

/** The first place at or after `at` that is no blank. */
export function skipBlanks(text: string, at: number): number {
  let here = at
  while (isBlank(text[here])) here++
  return here
}

/** The number that starts exactly at `at`, without a sign; undefined where none does. */
export function readNumber(text: string, at: number): ReadNumber | undefined {
  const glyph = GLYPHS[text[at] ?? '']
  if (glyph) return { ...glyph, at, end: at + 1, vulgar: true, decimals: 0, grouped: false }
  const bareDecimal = (text[at] === '.' || text[at] === ',') && isDigit(text[at + 1])
  if (!isDigit(text[at]) && !bareDecimal) return undefined
  const alone = readFraction(text, at)
  if (alone) return { ...alone, at, vulgar: true, decimals: 0, grouped: false }
  const whole = readDecimal(text, at)
  if (whole.decimals > 0 || whole.doubt) return whole
  const part = readTrailingFraction(text, whole.end)
  if (!part) return whole
  return {
    num: whole.num * part.den + part.num,
    den: part.den,
    at,
    end: part.end,
    vulgar: true,
    decimals: 0,
    grouped: whole.grouped,
    ...(part.badFraction ? { badFraction: true } : {}),
  }
}

interface Fraction extends Ratio {
  readonly end: number
  readonly badFraction?: true
}

/** `1/2` after a whole number: parted by a space, a hyphen or nothing but the glyph. */
function readTrailingFraction(text: string, at: number): Fraction | undefined {
  const afterBlanks = skipBlanks(text, at)
  const hyphen = /^[-‐‑–]$/.test(text[afterBlanks] ?? '') && afterBlanks === at
  const start = hyphen ? afterBlanks + 1 : afterBlanks
  const glyph = GLYPHS[text[start] ?? '']
  if (glyph) return { ...glyph, end: start + 1 }
  return start === at ? undefined : readFraction(text, start)
}

function readFraction(text: string, at: number): Fraction | undefined {
  const top = digits(text, at, 4)
  if (top === undefined || !/^[/⁄∕]$/.test(text[top.end] ?? '')) return undefined
  const bottom = digits(text, top.end + 1, 4)
  if (bottom === undefined || isDigit(text[bottom.end])) return undefined
  // 24/36 x 40, 1/2/2024: not for a ruler to say.
  const good = top.value > 0 && top.value < bottom.value && DENOMINATORS.has(bottom.value)
  return { num: top.value, den: Math.max(1, bottom.value), end: bottom.end, ...(good ? {} : { badFraction: true }) }
}

function digits(text: string, at: number, most: number): { readonly value: number; readonly end: number } | undefined {
  let end = at
  while (isDigit(text[end]) && end - at < most) end++
  return end === at ? undefined : { value: Number(text.slice(at, end)), end }
}

function readDecimal(text: string, at: number): ReadNumber {
  let end = at
  while (isDigit(text[end])) end++
  let whole = text.slice(at, end)
  let grouped = false
  // Thousands: one to three digits, then groups of one blank or mark and three digits.
  if (whole.length >= 1 && whole.length <= 3 && whole[0] !== '0') {
    const mark = text[end]
    const parts = mark !== undefined && (isBlank(mark) || mark === '.' || mark === ',') ? groups(text, end, mark) : []
    const marked = mark === '.' || mark === ','
    const other = mark === '.' ? ',' : '.'
    const last = end + parts.length * 4
    // A single point or comma is left to be a decimal mark, unless the other one follows: 1.220,5.
    if (parts.length > 1 || (parts.length === 1 && (!marked || (text[last] === other && isDigit(text[last + 1]))))) {
      whole += parts.join('')
      end = last
      grouped = true
      if (marked) return withDecimals(text, at, end, whole, other, grouped)
    }
  }
  return withDecimals(text, at, end, whole, '.,', grouped)
}

function groups(text: string, at: number, mark: string): readonly string[] {
  const found: string[] = []
  let here = at
  while (
    text[here] === mark &&
    isDigit(text[here + 1]) &&
    isDigit(text[here + 2]) &&
    isDigit(text[here + 3]) &&
    !/^[\d/⁄∕]$/.test(text[here + 4] ?? '')
  ) {
    found.push(text.slice(here + 1, here + 4))
    here += 4
  }
  return found
}

function withDecimals(
  text: string,
  at: number,
  wholeEnd: number,
  whole: string,
  marks: string,
  grouped: boolean,
): ReadNumber {
  let end = wholeEnd
  let decimals = ''
  const mark = text[wholeEnd]
  if (mark !== undefined && marks.includes(mark) && isDigit(text[wholeEnd + 1])) {
    end = wholeEnd + 1
    while (isDigit(text[end])) end++
    decimals = text.slice(wholeEnd + 1, end)
  }
  const kept = decimals.replace(/0+$/, '').slice(0, 12)
  const three = decimals.length === 3 && !grouped && whole.length >= 1 && whole.length <= 3 && !whole.startsWith('0')
  return {
    num: Number(whole + kept),
    den: 10 ** kept.length,
    at,
    end,
    vulgar: false,
    decimals: decimals.length,
    grouped,
    ...(three ? { doubt: mark === ',' ? 'thousands' : 'millimetres' } : {}),
  }
}
