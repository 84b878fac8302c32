/**
 * A light level as typed: 50, 50 lx, 1 000 lux, 7,5, 5 fc. The rule it keeps: what may have thousands or decimals is a
 * problem, since a limit read a thousand times too low or too high does harm either way.
 */
import type { Problem, ProblemCode } from './length.ts'
import { readNumber, skipBlanks } from './number.ts'

export type LuxResult = { readonly ok: true; readonly lux: number } | Problem

/** The contract takes no more; full sun is about a tenth of it. From memory. */
const BRIGHTEST = 1e6

/** One lumen a square foot, in lux: a foot is 0.3048 m exactly (NIST SP 811, B.8, gives 10.76391). */
export const FOOTCANDLE = 1 / 0.3048 ** 2

/** Reads one level in lux, or in footcandles where they are named. It can't be negative; a unit is not needed. */
export function parseLux(text: string): LuxResult {
  const last = text.trimEnd().length
  const start = skipBlanks(text, 0)
  const whole = text.slice(start, last)
  if (whole === '') return fail('empty', '', 0, 'Type a light level, such as 50 lx.')
  const read = readNumber(text, start)
  if (read === undefined) return fail('not-a-number', whole, start, `“${whole}” is no number of lux. Write it like 50.`)
  const piece = text.slice(read.at, read.end)
  if (read.doubt !== undefined) {
    return fail(
      'ambiguous-number',
      piece,
      read.at,
      `“${piece}” may have thousands or decimals. Write it without a mark.`,
    )
  }
  const after = skipBlanks(text, read.end)
  const left = text.slice(after, last)
  const footcandles = /^(?:fc|ft-?c|foot-?candles?)$/i.test(left)
  if (!footcandles && !/^(?:lx|lux)?$/i.test(left))
    return fail('left-over', left, after, `“${left}” does not belong to a light level.`)
  const lux = (read.num / read.den) * (footcandles ? FOOTCANDLE : 1)
  if (lux > BRIGHTEST) return fail('out-of-range', piece, read.at, 'A light level can be 1 000 000 lx at most.')
  return { ok: true, lux }
}

function fail(problem: ProblemCode, piece: string, at: number, message: string): Problem {
  return { ok: false, problem, piece, at, message }
}
