/**
 * One measure of a size: a number with its unit, or feet and inches, with the letter or word that stands before or
 * behind it and the same length in brackets. The rule it keeps: a letter belongs to the number it leads to, unless
 * letters have followed their numbers from the start.
 */
import { isDoubtful } from './length.ts'
import type { ReadNumber } from './number.ts'
import type { Token } from './tokens.ts'
import { type LengthUnit, lengthUnitOf, massUnitOf, plus, type Ratio } from './units.ts'
import { type AxisWord, axisOf, isAbout } from './words.ts'

/** One measure: a value, its unit if written, the letter or word that says which it is. */
export interface Dim {
  readonly value: Ratio
  /** The unit `value` counts. For 5' 4" that is inches; `compound` says that feet were written. */
  readonly unit?: LengthUnit
  readonly compound: boolean
  readonly vulgar: boolean
  readonly fault?: 'fraction' | 'thousands' | 'millimetres'
  readonly axis?: AxisWord
  /** The same measure in another unit, in brackets behind it. */
  readonly alt?: Dim
  readonly at: number
  readonly end: number
}

export interface Cut<T> {
  readonly value: T
  /** Index of the first token behind it. */
  readonly next: number
}

/** Where the letters of a size stand: before its numbers, behind them, or not said yet. */
export type Mode = 'before' | 'after' | 'free'

export function wordAt(tokens: readonly Token[], index: number): string | undefined {
  const token = tokens[index]
  return token?.kind === 'word' ? token.word : undefined
}

export function endOf(tokens: readonly Token[], next: number): number {
  return tokens[next - 1]?.end ?? 0
}

export function startsWithAxis(tokens: readonly Token[], index: number): boolean {
  const here = skipAbout(tokens, index)
  const bracket = tokens[here]?.kind === 'open' ? 1 : 0
  return axisOf(wordAt(tokens, here + bracket) ?? '') !== undefined
}

export function readDim(
  tokens: readonly Token[],
  index: number,
  mode: Mode,
): (Cut<Dim> & { readonly about: boolean }) | undefined {
  let here = skipAbout(tokens, index)
  const before = mode === 'after' ? undefined : axisBefore(tokens, here)
  if (before) here = before.next
  const valueAt = skipAbout(tokens, here)
  const about = here !== index && before === undefined ? true : valueAt !== here
  const value = readValue(tokens, valueAt)
  if (!value) return undefined
  here = value.next
  let alt = before ? altAt(tokens, here, value.value) : undefined
  if (alt) here = alt.next
  const behind = before || mode === 'before' ? undefined : axisBehind(tokens, here, mode)
  if (behind) here = behind.next
  const other = alt ? undefined : altAt(tokens, here, value.value)
  if (other) {
    alt = other
    here = other.next
  }
  const axis = before?.value ?? behind?.value
  const at = tokens[index]?.at ?? value.value.at
  const dim = {
    ...value.value,
    at,
    end: endOf(tokens, here),
    ...(axis ? { axis } : {}),
    ...(alt ? { alt: alt.value } : {}),
  }
  return { value: dim, next: here, about }
}

export function skipAbout(tokens: readonly Token[], index: number): number {
  let here = index
  while (tokens[here]?.kind === 'about' || isAbout(wordAt(tokens, here) ?? '')) here++
  return here
}

export function skipKinds(tokens: readonly Token[], index: number, kinds: readonly Token['kind'][]): number {
  let here = index
  for (let token = tokens[here]; token !== undefined && kinds.includes(token.kind); token = tokens[here]) here++
  return here
}

/** `H`, `H.`, `(H)`, `Height:`, `Höhe =` in front of a number. */
function axisBefore(tokens: readonly Token[], index: number): Cut<AxisWord> | undefined {
  const bracket = tokens[index]?.kind === 'open' ? 1 : 0
  const axis = axisOf(wordAt(tokens, index + bracket) ?? '')
  if (!axis) return undefined
  if (bracket === 1 && tokens[index + 2]?.kind !== 'close') return undefined
  const next = skipKinds(tokens, index + 1 + 2 * bracket, ['colon'])
  return tokens[skipAbout(tokens, next)]?.kind === 'number' ? { value: axis, next } : undefined
}

/** `H`, `(H)`, `high`, `in diameter`, `de haut` behind a number. */
function axisBehind(tokens: readonly Token[], index: number, mode: Mode): Cut<AxisWord> | undefined {
  if (tokens[index]?.kind === 'open') {
    const axis = axisOf(wordAt(tokens, index + 1) ?? '')
    if (!axis || tokens[index + 2]?.kind !== 'close') return undefined
    // 50 x 70 cm (b) 40 x 60 cm: a letter that leads to the next number, unless that has one of its own behind it.
    const follower = mode === 'free' ? readValue(tokens, index + 3) : undefined
    const own = follower && tokens[follower.next]?.kind === 'open' && axisOf(wordAt(tokens, follower.next + 1) ?? '')
    return follower && !own ? undefined : { value: axis, next: index + 3 }
  }
  const joined = /^(?:in|de|of|im)$/.test(wordAt(tokens, index) ?? '') ? index + 1 : index
  const axis = axisOf(wordAt(tokens, joined) ?? '')
  if (!axis) return undefined
  const follower = tokens[joined + 1]
  // 60 cm Ø 45: the letter belongs to the number behind it, unless letters have followed their numbers all along.
  const token = tokens[joined]
  const leads = (follower?.kind === 'number' || follower?.kind === 'colon') && mode === 'free'
  return leads && !(token?.kind === 'word' && token.glued) && !firstOfMany(tokens, joined)
    ? undefined
    : { value: axis, next: joined + 1 }
}

/** Whether letters follow numbers from here: 120 H 90 L 4 P ends with a letter. */
function firstOfMany(tokens: readonly Token[], index: number): boolean {
  let here = index
  while (axisOf(wordAt(tokens, here) ?? '') && tokens[here + 1]?.kind === 'number') {
    here = readValue(tokens, here + 1)?.next ?? tokens.length
  }
  return axisOf(wordAt(tokens, here) ?? '') !== undefined
}

/** A single length in another unit, in brackets: 24 in (61 cm). */
function altAt(tokens: readonly Token[], index: number, main: Dim): Cut<Dim> | undefined {
  if (tokens[index]?.kind !== 'open' || main.unit === undefined) return undefined
  const value = readValue(tokens, index + 1)
  if (!value || value.value.unit === undefined || value.value.unit === main.unit) return undefined
  return tokens[value.next]?.kind === 'close' ? { value: value.value, next: value.next + 1 } : undefined
}

/** A number with its unit, or feet and inches. */
export function readValue(tokens: readonly Token[], index: number): Cut<Dim> | undefined {
  const token = tokens[index]
  if (token?.kind !== 'number') return undefined
  const number = token.number
  const unit = unitAt(tokens, index + 1)
  if (massUnitOf(wordAt(tokens, index + 1) ?? '') !== undefined) return undefined
  const fault = faultOf(number, unit)
  const base = { at: token.at, ...(fault === undefined ? {} : { fault }) }
  if (unit !== 'ft') {
    const next = unit === undefined ? index + 1 : index + 2
    const dim = { ...base, value: number, compound: false, vulgar: number.vulgar, end: endOf(tokens, next) }
    return { value: unit === undefined ? dim : { ...dim, unit }, next }
  }
  const dash = tokens[index + 2]?.kind === 'dash' ? 1 : 0
  const inches = tokens[index + 2 + dash]
  const inchUnit = unitAt(tokens, index + 3 + dash)
  // After a foot mark the inch mark may be missing, but not where the number has its own foot mark.
  const marked = tokens[index + 1]?.kind === 'mark'
  if (
    inches?.kind === 'number' &&
    (inchUnit === 'in' || (marked && inchUnit === undefined && inches.number.num < inches.number.den * 12))
  ) {
    const next = index + (inchUnit === 'in' ? 4 : 3) + dash
    const value = plus({ num: number.num * 12, den: number.den }, inches.number)
    const inchFault = fault ?? faultOf(inches.number, 'in')
    const dim = {
      at: token.at,
      value,
      unit: 'in',
      compound: true,
      vulgar: inches.number.vulgar,
      end: endOf(tokens, next),
    } as const
    return { value: inchFault === undefined ? dim : { ...dim, fault: inchFault }, next }
  }
  const next = index + 2
  // A foot mark alone is as good as feet and inches; the word may serve for all measures: 4 x 6 ft.
  return {
    value: { ...base, value: number, unit, compound: marked, vulgar: number.vulgar, end: endOf(tokens, next) },
    next,
  }
}

function faultOf(number: ReadNumber, unit: LengthUnit | undefined): Dim['fault'] {
  if (number.badFraction) return 'fraction'
  if (number.doubt === 'millimetres') return 'millimetres'
  return isDoubtful(number, unit) ? number.doubt : undefined
}

function unitAt(tokens: readonly Token[], index: number): LengthUnit | undefined {
  const token = tokens[index]
  if (token?.kind === 'mark') return token.unit
  return token?.kind === 'word' ? lengthUnitOf(token.word) : undefined
}
