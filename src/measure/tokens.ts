/**
 * Cuts a dimension statement into tokens: numbers, words, marks. The rule it keeps: one pass from left to right, every
 * character belongs to at most one token, and a token knows its place in the text as it was written.
 */
import { readMark } from './length.ts'
import { isBlank, type ReadNumber, readNumber } from './number.ts'
import { type LengthUnit, lengthUnitOf, massUnitOf } from './units.ts'
import { axisOf } from './words.ts'

interface Place {
  readonly at: number
  readonly end: number
}

export type Token =
  | ({ readonly kind: 'number'; readonly number: ReadNumber } & Place)
  /** A word in small letters without its full stop. `glued`: it follows a figure without a space. */
  | ({ readonly kind: 'word'; readonly word: string; readonly glued: boolean } & Place)
  | ({ readonly kind: 'mark'; readonly unit: Extract<LengthUnit, 'in' | 'ft'> } & Place)
  | ({ readonly kind: 'break'; readonly strong: boolean; readonly char: string } & Place)
  | ({ readonly kind: 'times' | 'open' | 'close' | 'colon' | 'dash' | 'about' | 'other' } & Place)

const LETTER = /^[\p{L}\p{M}]$/u
const ORDER = /^[hwdbtlp](?:x[hwdbtlp]){1,2}$/
const SYMBOLS: Readonly<Record<string, 'times' | 'open' | 'close' | 'colon' | 'dash' | 'about'>> = {
  '×': 'times',
  '✕': 'times',
  '✖': 'times',
  '⨯': 'times',
  '⨉': 'times',
  '*': 'times',
  '╳': 'times',
  '(': 'open',
  '[': 'open',
  '{': 'open',
  ')': 'close',
  ']': 'close',
  '}': 'close',
  ':': 'colon',
  '=': 'colon',
  '-': 'dash',
  '–': 'dash',
  '—': 'dash',
  '−': 'dash',
  '‐': 'dash',
  '‑': 'dash',
  '~': 'about',
  '≈': 'about',
  '±': 'about',
  '∼': 'about',
  '≃': 'about',
}
const BREAKS: Readonly<Record<string, boolean>> = {
  ';': true,
  '\n': true,
  '\r': true,
  '\u2028': true,
  '|': true,
  '/': true,
  '•': true,
  ',': false,
  '&': false,
  '+': false,
}

export function tokenise(text: string): readonly Token[] {
  const tokens: Token[] = []
  let at = 0
  while (at < text.length) {
    const char = text[at] ?? ''
    if (isBlank(char)) {
      at++
      continue
    }
    const number = readNumber(text, at)
    if (number) {
      tokens.push({ kind: 'number', number, at, end: number.end })
      at = number.end
      continue
    }
    if (char === 'Ø' || char === 'ø' || char === '⌀' || char === '∅') {
      tokens.push({ kind: 'word', word: 'ø', glued: false, at, end: at + 1 })
      at++
      continue
    }
    if (LETTER.test(char)) {
      at = readWord(text, at, tokens)
      continue
    }
    const mark = readMark(text, at)
    const symbol = SYMBOLS[char]
    const strong = BREAKS[char]
    if (mark) tokens.push({ kind: 'mark', unit: mark.unit, at, end: mark.end })
    else if (symbol) tokens.push({ kind: symbol, at, end: at + 1 })
    else if (strong !== undefined) tokens.push({ kind: 'break', strong, char, at, end: at + 1 })
    else if (char !== '.') tokens.push({ kind: 'other', at, end: at + 1 })
    at = mark ? mark.end : at + 1
  }
  return tokens.filter((token, index) => !isLineEndInSize(tokens, token, index))
}

/** A line that ends in a cross, or the next that begins with one: the size goes on. */
function isLineEndInSize(tokens: readonly Token[], token: Token, index: number): boolean {
  if (token.kind !== 'break' || !/^[\n\r\u2028]$/.test(token.char)) return false
  return tokens[index - 1]?.kind === 'times' || tokens[index + 1]?.kind === 'times'
}

/** Adds the word at `at`, parted where an x is glued to it, and gives the place after it. */
function readWord(text: string, at: number, tokens: Token[]): number {
  let end = at
  while (LETTER.test(text[end] ?? '')) end++
  const before = tokens.at(-1)
  const glued = before?.kind === 'number' && before.end === at
  // A4 and its kin are names of paper, no figures.
  const paper = /^[aA]$/.test(text.slice(at, end)) ? /^\d{1,2}(?!\d|[.,]\d)/.exec(text.slice(end, end + 4)) : null
  if (paper) {
    tokens.push({ kind: 'word', word: `a${paper[0]}`, glued: false, at, end: end + paper[0].length })
    return end + paper[0].length
  }
  const words = text.slice(at, end).split(/(?=[xXхХ])|(?<=[xXхХ])/)
  const whole = plain(text.slice(at, end))
  const split = words.length > 1 && (ORDER.test(whole) || words.every(isSizePiece))
  if (split || isCross(whole)) {
    let here = at
    for (const word of words) {
      tokens.push(
        isCross(plain(word))
          ? { kind: 'times', at: here, end: here + word.length }
          : { kind: 'word', word: plain(word), glued, at: here, end: here + word.length },
      )
      here += word.length
    }
    return stop(text, end, tokens)
  }
  if (isTimesWord(whole, before, text, end)) tokens.push({ kind: 'times', at, end })
  else tokens.push({ kind: 'word', word: whole, glued, at, end })
  return stop(text, end, tokens)
}

/** Passes the full stop of `in.`, `H.`, `approx.`; before a capital letter it also ends what was said: `cm. Framed`. */
function stop(text: string, end: number, tokens: Token[]): number {
  if (text[end] !== '.') return end
  const last = tokens.at(-1)
  if (
    last?.kind === 'word' &&
    lengthUnitOf(last.word) !== undefined &&
    /^\.\s+\p{Lu}\p{L}/u.test(text.slice(end, end + 12))
  ) {
    tokens.push({ kind: 'break', strong: true, char: '.', at: end, end: end + 1 })
  }
  return end + 1
}

function isTimesWord(word: string, before: Token | undefined, text: string, end: number): boolean {
  if (!/^(?:by|sur|mal|par|auf)$/.test(word)) return false
  return before !== undefined && before.kind !== 'break' && /^[\s.]*[\d.,¼½¾⅛⅜⅝⅞hwbl(]/i.test(text.slice(end, end + 8))
}

function isSizePiece(word: string): boolean {
  const small = plain(word)
  return (
    isCross(small) ||
    axisOf(small) !== undefined ||
    lengthUnitOf(small) !== undefined ||
    massUnitOf(small) !== undefined
  )
}

function isCross(word: string): boolean {
  return word === 'x' || word === 'х'
}

function plain(word: string): string {
  return word.normalize('NFC').toLowerCase()
}
