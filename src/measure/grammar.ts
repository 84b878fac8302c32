/**
 * The grammar of dimension statements: tokens become sizes, the words that name parts, counts, masses and orders of
 * letters. The rule it keeps: it says what stands where and decides nothing; every token is consumed once, so the time
 * is bounded by the length of the text.
 */
import { type Cut, type Dim, endOf, type Mode, readDim, readValue, startsWithAxis, wordAt } from './measures.ts'
import { readPaper } from './paper.ts'
import { readCount, readMass, readOrder } from './phrases.ts'
import type { Language, Part } from './statement.ts'
import type { Token } from './tokens.ts'
import { type LengthUnit, lengthUnitOf, type MassUnit } from './units.ts'
import {
  type Axis,
  type AxisWord,
  countedOf,
  isAbout,
  isEach,
  isNoise,
  isOnePiece,
  partOf,
  saysNothing,
} from './words.ts'

interface Place {
  readonly at: number
  readonly end: number
}

export type Item =
  | ({
      readonly kind: 'size'
      readonly dims: readonly Dim[]
      readonly broken: boolean
      readonly about: boolean
      /** The name of the paper that the size was written as. */
      readonly paper?: { readonly name: string; readonly said: boolean }
    } & Place)
  | ({
      readonly kind: 'label'
      readonly part: Part
      readonly language: Language | null
      readonly weak: boolean
      readonly colon: boolean
    } & Place)
  | ({ readonly kind: 'count'; readonly count: number; readonly single: boolean } & Place)
  | ({ readonly kind: 'mass'; readonly kg: number; readonly unit: MassUnit } & Place)
  | ({ readonly kind: 'order'; readonly axes: readonly AxisWord[] } & Place)
  | ({ readonly kind: 'unit'; readonly unit: LengthUnit } & Place)
  | ({ readonly kind: 'break'; readonly strong: boolean } & Place)
  | ({ readonly kind: 'range'; readonly from: Dim; readonly to: Dim } & Place)
  | ({ readonly kind: 'each' | 'about' | 'nothing' | 'open' | 'close' | 'unread' | 'number' } & Place)

export function readItems(tokens: readonly Token[]): readonly Item[] {
  const items: Item[] = []
  let index = 0
  while (index < tokens.length) {
    const cut = readItem(tokens, index)
    if (cut.value) items.push(cut.value)
    index = Math.max(cut.next, index + 1)
  }
  return items
}

function readItem(tokens: readonly Token[], index: number): Cut<Item | undefined> {
  const token = tokens[index]
  if (token === undefined) return { value: undefined, next: index + 1 }
  const place = { at: token.at, end: token.end }
  const special =
    readNothing(tokens, index) ??
    readMass(tokens, index) ??
    readOrder(tokens, index) ??
    readCount(tokens, index) ??
    readRange(tokens, index) ??
    readSize(tokens, index) ??
    readPaper(tokens, index) ??
    readLabel(tokens, index)
  if (special) return special
  if (token.kind === 'break') return one({ kind: 'break', strong: token.strong, ...place }, index)
  if (token.kind === 'open' || token.kind === 'close' || token.kind === 'about')
    return one({ kind: token.kind, ...place }, index)
  if (token.kind === 'number') return one({ kind: 'number', ...place }, index)
  // A dash between two statements, parted by spaces, is a break; a mark or cross on its own says nothing.
  if (token.kind === 'dash') {
    const [before, after] = [tokens[index - 1], tokens[index + 1]]
    const minus = after?.kind === 'number' && after.at === token.end && before?.end !== token.at
    const bullet = before === undefined ? undefined : ({ kind: 'break', strong: true, ...place } as const)
    return one(minus ? { kind: 'unread', ...place } : bullet, index)
  }
  if (token.kind !== 'word') return one(token.kind === 'colon' ? undefined : { kind: 'unread', ...place }, index)
  // A lone c is circa only before a figure: there are C-prints.
  const lone = token.word === 'c' && tokens[index + 1]?.kind !== 'number'
  if (isAbout(token.word) && !lone) return one({ kind: 'about', ...place }, index)
  if (isEach(token.word)) return one({ kind: 'each', ...place }, index)
  // 48 h x 36 w in: the word is a unit only where nothing follows that it could lead to; a lone m only in brackets.
  const after = tokens[index + 1]?.kind
  const closes = after === undefined || after === 'break' || after === 'close'
  const preposition = token.word === 'in' && !closes
  const letter = token.word === 'm' && !(tokens[index - 1]?.kind === 'open' && after === 'close')
  const unit = preposition || letter ? undefined : lengthUnitOf(token.word)
  if (unit !== undefined) return one({ kind: 'unit', unit, ...place }, index)
  return one(
    isNoise(token.word) || countedOf(token.word) !== undefined ? undefined : { kind: 'unread', ...place },
    index,
  )
}

function one(value: Item | undefined, index: number): Cut<Item | undefined> {
  return { value, next: index + 1 }
}

/** The longest phrase of up to three words from `index` that `known` accepts; hyphens join words. */
function phrase<T>(
  tokens: readonly Token[],
  index: number,
  known: (phrase: string) => T | undefined,
): Cut<T> | undefined {
  let words = ''
  let best: Cut<T> | undefined
  let here = index
  for (let count = 0; count < 3; count++) {
    const word = wordAt(tokens, here)
    if (word === undefined) break
    words = count === 0 ? word : `${words} ${word}`
    here++
    const value = known(words)
    if (value !== undefined) best = { value, next: here }
    const joint = tokens[here]
    const slash = joint?.kind === 'break' && joint.char === '/'
    if ((joint?.kind === 'dash' || slash) && wordAt(tokens, here + 1) !== undefined) here++
  }
  return best
}

function readNothing(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const found = phrase(tokens, index, words => (saysNothing(words) ? true : undefined))
  return (
    found && {
      value: { kind: 'nothing', at: tokens[index]?.at ?? 0, end: endOf(tokens, found.next) },
      next: found.next,
    }
  )
}

function readLabel(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const found = phrase(tokens, index, partOf)
  if (!found) {
    const word = wordAt(tokens, index)
    const follower = tokens[index + 1]
    // "Part 1: 60 x 40 cm", "panel A": a piece of several, by its own number.
    if (word === undefined || !isOnePiece(word) || follower?.kind !== 'number' || follower.number.den !== 1)
      return undefined
    const next = tokens[index + 2]?.kind === 'colon' ? index + 3 : index + 2
    const value = { kind: 'label', part: 'part', language: null, weak: false, colon: true } as const
    return { value: { ...value, at: tokens[index]?.at ?? 0, end: follower.end }, next }
  }
  const colon = tokens[found.next]?.kind === 'colon'
  return {
    value: { kind: 'label', ...found.value, colon, at: tokens[index]?.at ?? 0, end: endOf(tokens, found.next) },
    next: colon ? found.next + 1 : found.next,
  }
}

/** 50–60 cm: a dash between two numbers that are no fraction. */
function readRange(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const from = readValue(tokens, index)
  if (!from || tokens[from.next]?.kind !== 'dash' || tokens[from.next + 1]?.kind !== 'number') return undefined
  const to = readValue(tokens, from.next + 1)
  if (!to) return undefined
  return {
    value: { kind: 'range', from: from.value, to: to.value, at: from.value.at, end: to.value.end },
    next: to.next,
  }
}

function readSize(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const first = readDim(tokens, index, 'free')
  if (!first) return undefined
  const mode: Mode = first.value.axis === undefined ? 'free' : startsWithAxis(tokens, index) ? 'before' : 'after'
  const dims = [first.value]
  let about = first.about
  let here = first.next
  let broken = false
  while (dims.length < 12) {
    if (tokens[here]?.kind === 'times') {
      const range = readRange(tokens, here + 1)
      if (range) return range
      const next = readDim(tokens, here + 1, mode)
      if (!next) {
        broken = true
        here++
        break
      }
      dims.push(next.value)
      about ||= next.about
      here = next.next
      continue
    }
    const more = mode === 'free' ? undefined : readNextByLetter(tokens, here, mode, dims)
    if (!more) break
    dims.push(more.value)
    about ||= more.about
    here = more.next
  }
  const value = { kind: 'size', dims, broken, about, at: first.value.at, end: endOf(tokens, here) } as const
  return { value, next: here }
}

/** The next measure of H 120, L 90, P 4, whatever parts them, as long as its letter is a new one. */
function readNextByLetter(tokens: readonly Token[], index: number, mode: Mode, dims: readonly Dim[]) {
  let here = index
  while (here < index + 3 && isJoint(tokens[here])) here++
  if (mode === 'before' && !startsWithAxis(tokens, here)) return undefined
  const next = readDim(tokens, here, mode)
  const axis: Axis | undefined = next?.value.axis?.axis
  return axis === undefined || dims.some(dim => dim.axis?.axis === axis) ? undefined : next
}

function isJoint(token: Token | undefined): boolean {
  if (token?.kind === 'break' || token?.kind === 'dash') return true
  return token?.kind === 'word' && /^(?:and|et|und)$/.test(token.word)
}
