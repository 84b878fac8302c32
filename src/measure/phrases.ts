/**
 * Phrases of a statement that are no sizes: a weight, letters without figures, a count of pieces. The rule it keeps: each
 * begins at its own token and says where it ends, so that nothing is read twice.
 */
import type { Item } from './grammar.ts'
import { type Cut, endOf, skipKinds, wordAt } from './measures.ts'
import type { Token } from './tokens.ts'
import { type MassUnit, massUnitOf, plus, type Ratio, toKilograms } from './units.ts'
import { type AxisWord, axisOf, countedOf, isOnePiece, isWeightWord, numberWord } from './words.ts'

export function readMass(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const start = isWeightWord(wordAt(tokens, index) ?? '') ? skipKinds(tokens, index + 1, ['colon', 'about']) : index
  const first = massAt(tokens, start)
  if (!first) return undefined
  const ounces = first.value.unit === 'lb' ? massAt(tokens, first.next) : undefined
  const both = ounces?.value.unit === 'oz' ? ounces : undefined
  const next = both?.next ?? first.next
  const { value, unit } = first.value
  const kg = both
    ? toKilograms(plus({ num: value.num * 16, den: value.den }, both.value.value), 'oz')
    : toKilograms(value, unit)
  return {
    value: { kind: 'mass', kg, unit, at: tokens[start]?.at ?? 0, end: endOf(tokens, next) },
    next,
  }
}

function massAt(
  tokens: readonly Token[],
  index: number,
): Cut<{ readonly value: Ratio; readonly unit: MassUnit }> | undefined {
  const number = tokens[index]
  const unit = massUnitOf(wordAt(tokens, index + 1) ?? '')
  if (number?.kind !== 'number' || number.number.badFraction || unit === undefined) return undefined
  return { value: { value: number.number, unit }, next: index + 2 }
}

/** Letters without figures: h x w x d, H × B. */
export function readOrder(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const axes: AxisWord[] = []
  let here = index
  for (;;) {
    const axis = axisOf(wordAt(tokens, here) ?? '')
    if (!axis || axes.length === 4) break
    axes.push(axis)
    here++
    if (tokens[here]?.kind !== 'times' || !axisOf(wordAt(tokens, here + 1) ?? '')) break
    here++
  }
  if (axes.length < 2) return undefined
  return { value: { kind: 'order', axes, at: tokens[index]?.at ?? 0, end: endOf(tokens, here) }, next: here }
}

/** 4 panels, two parts, set of 3, 3-teilig. */
export function readCount(tokens: readonly Token[], index: number): Cut<Item> | undefined {
  const token = tokens[index]
  if (token === undefined) return undefined
  const made = (count: number, single: boolean, next: number): Cut<Item> => ({
    value: { kind: 'count', count, single, at: token.at, end: endOf(tokens, next) },
    next,
  })
  if (wordAt(tokens, index) === 'set' && wordAt(tokens, index + 1) === 'of') {
    const count = countAt(tokens[index + 2])
    return count === undefined ? undefined : made(count, false, index + 3)
  }
  const count = countAt(token)
  if (count === undefined) return undefined
  const noun = tokens[index + 1]?.kind === 'dash' ? index + 2 : index + 1
  const word = wordAt(tokens, noun) ?? ''
  if (countedOf(word) !== undefined || word === 'teilig' || word === 'teiliges')
    return made(count, isOnePiece(word), noun + 1)
  // "diptych" and its like count by themselves.
  return token.kind === 'word' && /^(?:pair|(?:dipt|tript)yc?[hq])/.test(token.word)
    ? made(count, false, index + 1)
    : undefined
}

function countAt(token: Token | undefined): number | undefined {
  if (token?.kind === 'word') return numberWord(token.word)
  if (token?.kind !== 'number') return undefined
  const { num, den } = token.number
  return den === 1 && num >= 1 && num <= 500 ? num : undefined
}
