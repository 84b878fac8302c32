/**
 * A measure as it is typed: the letters of two corners and a length, or of one and an angle: `AC 10516`, `b-d 4,2 m`,
 * `C 91,5°`. Letters in either case, with or without a dash; the figure may be typed apart.
 */

import { parseLength } from '../measure/length.ts'
import type { LengthUnit } from '../measure/units.ts'
import { readCorner } from '../model/corner.ts'
import { cornerAt, cornerLetter } from './survey.ts'

export interface TypedEnds {
  readonly from: number
  /** Null: the angle at the one corner. */
  readonly to: number | null
}

type Problem = { readonly ok: false; readonly message: string }
export type EndsRead = { readonly ok: true; readonly ends: TypedEnds; readonly rest: string } | Problem

/** @param count corners of the room. */
export function readEnds(text: string, count: number): EndsRead {
  const typed = text.trim()
  const last = cornerLetter(count - 1)
  const found = /^([a-z]+)(?:\s*[-–—,]\s*([a-z]+)|\s+([a-z]{1,2})(?![a-z]))?/i.exec(typed)
  if (found === null) return refused(typed, `Name the corners by their letters, A to ${last}.`)
  const letters = [found[1] ?? '', found[2] ?? found[3]].filter(one => one !== undefined)
  const [first = '', second] = letters
  // Two letters without a dash are two corners, as long as no corner has two letters.
  const pair = second === undefined && first.length === 2 && count <= 26
  const parts = pair ? [...first] : letters
  const places = parts.map(one => cornerAt(one))
  const wrong = parts.findIndex((_, at) => (places[at] ?? count) >= count || places[at] === null)
  if (wrong >= 0) return refused(parts[wrong] ?? typed, `The corners of this room are A to ${last}.`)
  const [from = 0, to = null] = places.map(place => place ?? 0)
  if (to === from) return refused(typed, 'A length runs between two corners.')
  return { ok: true, ends: { from, to }, rest: typed.slice(found[0].length).trim() }
}

function refused(piece: string, sentence: string): Problem {
  return { ok: false, message: piece === '' ? sentence : `“${piece}”: ${sentence}` }
}

export type ValueRead = { readonly ok: true; readonly value: number } | Problem

/** A length, or degrees where `ends` is one corner. */
export function readValue(text: string, ends: TypedEnds, unit: LengthUnit): ValueRead {
  if (ends.to === null) {
    const read = readCorner(text)
    return read.ok ? { ok: true, value: read.degrees } : read
  }
  const read = parseLength(text.trim(), unit)
  if (!read.ok) return read
  return read.mm > 0 ? { ok: true, value: read.mm } : { ok: false, message: 'A length is more than nothing.' }
}
