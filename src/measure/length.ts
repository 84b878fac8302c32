/**
 * A length as a person types it: 24 1/2, 24½", 2' 0 1/2", 62,2 cm, 1 220 mm. The rule it keeps: what can't be read
 * is a problem that shows the piece that failed, never a guess and never a throw.
 */
import { isDigit, type ReadNumber, readNumber, skipBlanks } from './number.ts'
import { type LengthUnit, lengthUnitOf, plus, type Ratio, toMillimetres } from './units.ts'

export type ProblemCode =
  | 'empty'
  | 'too-long'
  | 'not-a-number'
  | 'bad-fraction'
  | 'ambiguous-number'
  | 'no-unit'
  | 'unknown-unit'
  | 'left-over'
  | 'out-of-range'

export interface Problem {
  readonly ok: false
  readonly problem: ProblemCode
  /** The piece of the text that failed, as it was written, and where it starts. */
  readonly piece: string
  readonly at: number
  /** A sentence for people. */
  readonly message: string
}

export interface ReadLength {
  readonly ok: true
  readonly mm: number
  readonly unit: LengthUnit
  /** The unit was not written: it is the default one, or inches because of a fraction. */
  readonly inferred: boolean
}

export type LengthResult = ReadLength | Problem

const LONGEST = 200
const WIDEST_MM = 1e6

/**
 * Reads one length in millimetres, which may be negative.
 * @param defaultUnit unit of a bare number; a vulgar fraction without a unit counts inches whatever the default is.
 */
export function parseLength(text: string, defaultUnit?: LengthUnit): LengthResult {
  if (text.length > LONGEST) return problem('too-long', text.slice(0, 40), 0, 'That is too long for a length.')
  const from = skipBlanks(text, 0)
  const last = text.trimEnd().length
  if (from >= last) return problem('empty', '', 0, 'Type a length, such as 622 mm or 24 1/2 in.')
  const negative = /^[-−–]$/.test(text[from] ?? '')
  const start = negative || text[from] === '+' ? skipBlanks(text, from + 1) : from
  const first = readNumber(text, start)
  if (!first) {
    return problem(
      'not-a-number',
      text.slice(start, last),
      start,
      `“${text.slice(start, last)}” does not start with a number.`,
    )
  }
  const bad = faultOf(text, first)
  if (bad) return bad
  const unit = readUnit(text, first.end)
  const finished = (mm: number, as: LengthUnit, inferred: boolean): LengthResult =>
    Math.abs(mm) > WIDEST_MM
      ? problem('out-of-range', text.slice(from, last), from, 'A length can be 1 km at most.')
      : { ok: true, mm: mm === 0 ? 0 : negative ? -mm : mm, unit: as, inferred }

  if (unit === undefined) return bareNumber(text, first, last, defaultUnit, finished)
  if (unit.unit === undefined) {
    return problem(
      'unknown-unit',
      unit.piece,
      unit.at,
      `“${unit.piece}” is no unit known here. Use mm, cm, m, in or ft.`,
    )
  }
  if (isDoubtful(first, unit.unit)) return ambiguous(text, first)
  const after = skipBlanks(text, unit.end)
  if (after >= last) return finished(toMillimetres(first, unit.unit), unit.unit, false)
  if (unit.unit === 'ft') return feetAndInches(text, first, after, last, finished)
  return leftOver(text, after, last)
}

type Finish = (mm: number, unit: LengthUnit, inferred: boolean) => LengthResult

function bareNumber(
  text: string,
  value: ReadNumber,
  last: number,
  defaultUnit: LengthUnit | undefined,
  finish: Finish,
) {
  const after = skipBlanks(text, value.end)
  if (after < last) return leftOver(text, after, last)
  const unit = value.vulgar ? 'in' : defaultUnit
  const piece = text.slice(value.at, value.end)
  if (unit === undefined) {
    return problem('no-unit', piece, value.at, `“${piece}” has no unit. Add mm, cm, m, in or ft.`)
  }
  if (isDoubtful(value, unit)) return ambiguous(text, value)
  return finish(toMillimetres(value, unit), unit, true)
}

/** The inches of 5' 4 1/2", 5'-4 1/2" or 5 ft 4, in which the inch mark may be missing. */
function feetAndInches(text: string, feet: Ratio, at: number, last: number, finish: Finish): LengthResult {
  const start = text[at] === '-' || text[at] === ',' ? skipBlanks(text, at + 1) : at
  const inches = readNumber(text, start)
  if (!inches) return leftOver(text, at, last)
  const bad = faultOf(text, inches)
  if (bad) return bad
  if (isDoubtful(inches, 'in')) return ambiguous(text, inches)
  const unit = readUnit(text, inches.end)
  const end = unit === undefined ? skipBlanks(text, inches.end) : skipBlanks(text, unit.end)
  if (unit !== undefined && unit.unit !== 'in') return leftOver(text, unit.at, last)
  if (end < last) return leftOver(text, end, last)
  if (inches.num >= inches.den * 12) {
    const piece = text.slice(inches.at, inches.end)
    return problem('left-over', piece, inches.at, `After feet, inches go up to 12, and “${piece}” is more.`)
  }
  return finish(toMillimetres(plus({ num: feet.num * 12, den: feet.den }, inches), 'in'), 'ft', false)
}

/** The unit after a number: a foot or inch mark, or a word. `unit` is missing where the word is no unit. */
export function readUnit(
  text: string,
  from: number,
):
  | { readonly unit: LengthUnit | undefined; readonly at: number; readonly end: number; readonly piece: string }
  | undefined {
  const at = skipBlanks(text, from)
  const mark = readMark(text, at)
  if (mark) return { ...mark, at, piece: text.slice(at, mark.end) }
  let end = at
  while (/^[\p{L}\p{M}]$/u.test(text[end] ?? '')) end++
  if (end === at) return undefined
  const piece = text.slice(at, end)
  const unit = lengthUnitOf(piece.normalize('NFC').toLowerCase())
  return { unit, at, end: unit !== undefined && text[end] === '.' ? end + 1 : end, piece }
}

/** A foot or inch mark: straight, curly, prime, acute, or two single ones for inches. */
export function readMark(text: string, at: number): { readonly unit: 'in' | 'ft'; readonly end: number } | undefined {
  const char = text[at] ?? ''
  if (/^["“”„‟″〃]$/.test(char)) return { unit: 'in', end: at + 1 }
  if (!/^['‘’‛′´`ʹ]$/.test(char)) return undefined
  const twice = /^['‘’‛′´`ʹ]$/.test(text[at + 1] ?? '')
  return twice ? { unit: 'in', end: at + 2 } : { unit: 'ft', end: at + 1 }
}

/** Whether the thousands and the decimal reading of a number both make sense in `unit`. */
export function isDoubtful(value: ReadNumber, unit: LengthUnit | undefined): boolean {
  if (value.doubt === undefined) return false
  // 1,220 m and 24,375 in would be longer than any wall.
  if (value.doubt === 'thousands') return unit === 'mm' || unit === 'cm' || unit === undefined
  return unit === 'mm'
}

function faultOf(text: string, value: ReadNumber): Problem | undefined {
  const piece = text.slice(value.at, value.end)
  if (value.badFraction) {
    return problem('bad-fraction', piece, value.at, `“${piece}” is no fraction of a ruler. Write it like 24 1/2.`)
  }
  return isDigit(text[value.end]) ? leftOver(text, value.end, text.trimEnd().length) : undefined
}

function ambiguous(text: string, value: ReadNumber): Problem {
  const piece = text.slice(value.at, value.end)
  const whole = piece.replace(/[.,]/, '')
  const decimal = String(value.num / value.den)
  return problem(
    'ambiguous-number',
    piece,
    value.at,
    `“${piece}” may mean ${whole} or ${decimal}. Write the one you mean.`,
  )
}

function leftOver(text: string, at: number, last: number): Problem {
  const piece = text.slice(at, last)
  return problem('left-over', piece, at, `The length was read up to “${piece}”, which does not belong to a length.`)
}

function problem(code: ProblemCode, piece: string, at: number, message: string): Problem {
  return { ok: false, problem: code, piece, at, message }
}
