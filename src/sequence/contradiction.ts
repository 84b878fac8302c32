/**
 * A set of rules that can't hold together and from which none can be left out. Rules are left out one by one; what still
 * can't hold without one does not need it (deletion-based; Chinneck and Dravnieks, "Locating minimal infeasible
 * constraint sets in linear programs", ORSA Journal on Computing 3, 1991).
 */
import { canHold } from './can-hold.ts'
import type { RuledShow } from './given-rules.ts'
import type { HangRule } from './hang-rule.ts'

export interface Contradiction {
  readonly rules: readonly string[]
  /** False where some question had no answer within its limit: one of them might be left out. */
  readonly minimal: boolean
}

export interface Checked {
  readonly contradiction: Contradiction | null
  /** False where whether all can hold was not answered within the limit. */
  readonly answered: boolean
}

/**
 * @param rules those at the end are kept in the set rather than those before
 * @param most beginnings of hangs looked at for each question
 */
export function contradictionAmong(show: RuledShow, rules: readonly HangRule[], most?: number): Checked {
  const all = canHold(show, rules, most)
  let set: readonly HangRule[] | null = all === 'no' ? rules : null
  // Where the whole is too much to answer, its parts may not be.
  if (all === 'unknown') set = linked(rules).find(part => canHold(show, part, most) === 'no') ?? pairAmong(show, rules)
  if (set === null) return { contradiction: null, answered: all !== 'unknown' }
  let minimal = true
  for (const rule of rules) {
    if (!set.includes(rule)) continue
    const without: readonly HangRule[] = set.filter(each => each !== rule)
    const answer = canHold(show, without, most)
    if (answer === 'no') set = without
    else if (answer === 'unknown') minimal = false
  }
  return { contradiction: { rules: set.map(rule => rule.id), minimal }, answered: true }
}

/** Rules that share works, directly or by others. */
function linked(rules: readonly HangRule[]): HangRule[][] {
  const parts: HangRule[][] = []
  for (const rule of rules) {
    const touching = parts.filter(part => part.some(each => each.works.some(work => rule.works.includes(work))))
    const one = new Set([...touching.flat(), rule])
    for (const part of touching) parts.splice(parts.indexOf(part), 1)
    parts.push(rules.filter(each => one.has(each)))
  }
  return parts
}

/** More rules than these are not asked about in pairs, and each pair is not asked about for long. */
const mostInPairs = 40
const mostOfPair = 500

function pairAmong(show: RuledShow, rules: readonly HangRule[]): readonly HangRule[] | null {
  if (rules.length > mostInPairs) return null
  for (const [index, one] of rules.entries()) {
    for (const other of rules.slice(index)) {
      const pair = one === other ? [one] : [one, other]
      if (canHold(show, pair, mostOfPair) === 'no') return pair
    }
  }
  return null
}
