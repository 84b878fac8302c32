/**
 * Masses as typed and as printed: 14 kg, 500 g, 30 lb, 2 lb 3 oz. The rule it keeps: kilograms inside, and a pound is
 * 0.45359237 kg exactly (NIST SP 811, from memory). What can't be read is a problem that shows the piece.
 */
import { decimal, THIN_SPACE } from './format.ts'
import type { Problem, ProblemCode } from './length.ts'
import { isDigit, type ReadNumber, readNumber, skipBlanks } from './number.ts'
import { fromKilograms, type MassUnit, massUnitOf, plus, toKilograms } from './units.ts'

export interface ReadMass {
  readonly ok: true
  readonly kg: number
  readonly unit: MassUnit
  /** The unit was not written: it is the default one. */
  readonly inferred: boolean
}

export type MassResult = ReadMass | Problem

const HEAVIEST_KG = 1e5

/** Reads one mass in kilograms. It can't be negative. */
export function parseMass(text: string, defaultUnit?: MassUnit): MassResult {
  if (text.length > 200) return fail('too-long', text.slice(0, 40), 0, 'That is too long for a weight.')
  const start = skipBlanks(text, 0)
  const last = text.trimEnd().length
  if (start >= last) return fail('empty', '', 0, 'Type a weight, such as 14 kg or 30 lb.')
  const first = readNumber(text, start)
  const rest = text.slice(start, last)
  if (!first) return fail('not-a-number', rest, start, `“${rest}” does not start with a number.`)
  const bad = faultOf(text, first)
  if (bad) return bad
  const word = readMassUnit(text, first.end)
  if (word === undefined) {
    const after = skipBlanks(text, first.end)
    const left = text.slice(after, last)
    if (left !== '') return fail('left-over', left, after, `“${left}” does not belong to a weight.`)
    if (defaultUnit === undefined) return fail('no-unit', rest, start, `“${rest}” has no unit. Add kg, g, lb or oz.`)
    return finished(toKilograms(first, defaultUnit), defaultUnit, true, rest, start)
  }
  if (word.unit === undefined) {
    return fail('unknown-unit', word.piece, word.at, `“${word.piece}” is no unit known here. Use kg, g, lb or oz.`)
  }
  const after = skipBlanks(text, word.end)
  if (after >= last) return finished(toKilograms(first, word.unit), word.unit, false, rest, start)
  const ounces = word.unit === 'lb' ? readNumber(text, after) : undefined
  const ounceWord = ounces === undefined ? undefined : readMassUnit(text, ounces.end)
  if (ounces && ounceWord?.unit === 'oz' && skipBlanks(text, ounceWord.end) >= last) {
    const fault = faultOf(text, ounces)
    if (fault) return fault
    const total = plus({ num: first.num * 16, den: first.den }, ounces)
    return finished(toKilograms(total, 'oz'), 'lb', false, rest, start)
  }
  const left = text.slice(after, last)
  return fail('left-over', left, after, `“${left}” does not belong to a weight.`)
}

export interface MassFormat {
  readonly unit: MassUnit
  /** Most decimals; 2 for kg and lb, 0 for g, 1 for oz if not said. */
  readonly decimals?: 0 | 1 | 2 | 3 | 4 | 5 | 6
  readonly thousands?: string
  readonly bare?: boolean
}

/** A mass of `kg` kilograms as it is printed. A value that is not finite gives an empty text. */
export function formatMass(kg: number, format: MassFormat): string {
  if (!Number.isFinite(kg)) return ''
  const decimals = format.decimals ?? { kg: 2, g: 0, lb: 2, oz: 1 }[format.unit]
  const text = decimal(fromKilograms(kg, format.unit), decimals, format.thousands ?? THIN_SPACE)
  return format.bare === true ? text : `${text} ${format.unit}`
}

function readMassUnit(text: string, from: number) {
  const at = skipBlanks(text, from)
  let end = at
  while (/^[\p{L}\p{M}]$/u.test(text[end] ?? '')) end++
  if (end === at) return undefined
  const piece = text.slice(at, end)
  return { unit: massUnitOf(piece.normalize('NFC').toLowerCase()), at, end: text[end] === '.' ? end + 1 : end, piece }
}

function faultOf(text: string, value: ReadNumber): Problem | undefined {
  const piece = text.slice(value.at, value.end)
  if (value.badFraction) return fail('bad-fraction', piece, value.at, `“${piece}” is no fraction. Write it like 2 1/2.`)
  if (value.doubt === 'thousands') {
    return fail(
      'ambiguous-number',
      piece,
      value.at,
      `“${piece}” may have thousands or decimals. Write it with a point or without a mark.`,
    )
  }
  return isDigit(text[value.end]) ? fail('left-over', piece, value.at, `“${piece}” was not understood.`) : undefined
}

function finished(kg: number, unit: MassUnit, inferred: boolean, piece: string, at: number): MassResult {
  return kg > HEAVIEST_KG
    ? fail('out-of-range', piece, at, 'A weight can be 100 000 kg at most.')
    : { ok: true, kg, unit, inferred }
}

function fail(problem: ProblemCode, piece: string, at: number, message: string): Problem {
  return { ok: false, problem, piece, at, message }
}
