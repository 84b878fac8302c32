/**
 * What to measure next: while the outline is open, what closes most of it; once it is fixed, what checks most of the
 * measures that nothing checks. A diagonal that a tape can be stretched along comes first, then a missing side, then
 * the angle of a corner.
 */
import { observe } from './adjust-model.ts'
import { product, type Rank } from './adjust-rank.ts'
import { taped } from './outline-shape.ts'
import { deviationOf, type Measure, type Point, type SurveyRules } from './survey.ts'

export interface Candidate {
  readonly kind: Measure['kind']
  readonly from: number
  readonly to: number
}

/** Less than this of a measure is checked by the others: a misreading of it would not show. From memory (Baarda). */
export const UNCHECKED = 0.1

/** Everything that could still be measured; lengths along which no tape can be stretched are left out. */
export function candidatesOf(corners: readonly Point[], measures: readonly Measure[]): readonly Measure[] {
  const count = corners.length
  const known = new Set(
    measures.flatMap(({ kind, from, to, standing }) =>
      standing === 'taken' ? [] : [kind === 'angle' ? `angle ${from}` : [from, to].sort((a, b) => a - b).join(' ')],
    ),
  )
  const found: Measure[] = []
  const add = (kind: Measure['kind'], from: number, to: number) => {
    const value = kind === 'angle' ? 90 : gap(corners, from, to)
    found.push({ key: '', kind, from, to, value, standing: 'measured' })
  }
  for (let from = 0; from < count; from += 1) {
    for (let to = from + 1; to < count; to += 1) {
      if (known.has(`${from} ${to}`)) continue
      const side = to === from + 1 || (from === 0 && to === count - 1)
      if (side) add('side', from, to)
      else if (taped(corners, from, to)) add('diagonal', from, to)
    }
    if (!known.has(`angle ${from}`)) add('angle', from, from)
  }
  return found
}

function gap(corners: readonly Point[], from: number, to: number): number {
  const [a, b] = [corners[from] ?? [0, 0], corners[to] ?? [0, 0]]
  return Math.hypot(b[0] - a[0], b[1] - a[1])
}

/** A tape is at hand and an angle gauge seldom: an angle must tell this many times as much. From memory. */
const TAPE_FIRST = 4

function best(candidates: readonly Measure[], worth: (candidate: Measure) => number): Candidate | null {
  let chosen: Measure | null = null
  let most = 1e-9
  for (const candidate of candidates) {
    const all = worth(candidate)
    const value = candidate.kind === 'angle' ? all / TAPE_FIRST : all
    if (value > most * (1 + 1e-6)) {
      most = value
      chosen = candidate
    }
  }
  return chosen === null ? null : { kind: chosen.kind, from: chosen.from, to: chosen.to }
}

/** While the outline is open: the candidate that sees most of the ways it can still move. */
export function nextToFix(candidates: readonly Measure[], rank: Rank, rules: SurveyRules): Candidate | null {
  return best(candidates, candidate => {
    const { weight } = observe(candidate, rules)
    const seen = rank.seen(candidate).reduce((sum, one) => sum + one * one, 0)
    // An angle is compared with a tape by what each sees of a movement against its own deviation.
    return seen * weight * deviationOf({ ...candidate, kind: 'diagonal' }, rules) ** 2 > SEES_NOTHING
      ? seen * weight
      : 0
  })
}

/** Less than a thousandth of a movement is not seen. */
const SEES_NOTHING = 1e-6

/** Once it is fixed: the candidate that gives most redundancy to `doubted`, the rows of measures that lack it, if any. */
export function nextToCheck(
  candidates: readonly Measure[],
  rank: Rank,
  doubted: readonly Float64Array[],
  rules: SurveyRules,
): Candidate | null {
  if (doubted.length === 0) return null
  return best(candidates, candidate => {
    const row = rank.rowOf(candidate, observe(candidate, rules).weight)
    const own = 1 + product(row, row)
    const told = doubted.reduce((sum, each) => sum + product(each, row) ** 2 / own, 0)
    return told < UNCHECKED ? 0 : told
  })
}
