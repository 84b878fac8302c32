/**
 * Two condition reports of one work, finding by finding. Two are one and the same
 * 1. where a person said so (`follows`), or else
 * 2. where they have the same word and lie on one side, within `near` of one another. The nearest two are paired first; of equally
 *    near ones those with the smaller numbers.
 * A pair is `grown` where it is larger by more than `grown`, or more serious; else `same`. What stands in the later
 * report alone is `new`, in the earlier alone `not seen`. Where a size was not taken, growth cannot be told, and that
 * is said. Every finding of either report is in one line, and in one only.
 */
import { type ConditionFinding, severities } from './report.ts'
import { distanceBetween, type Extent, extentOf, type Shape } from './shape.ts'

export type Outcome = 'same' | 'grown' | 'new' | 'not seen'

export interface CompareRules {
  /** mm: a hand draws the same spot twice within so much. */
  readonly near: number
  /** mm: what is larger by no more than this was only drawn or measured otherwise. */
  readonly grown: number
}

export type Compared = Pick<
  ConditionFinding,
  'id' | 'side' | 'number' | 'term' | 'word' | 'age' | 'severity' | 'follows' | keyof Shape
>

export interface CompareLine<F extends Compared = Compared> {
  readonly outcome: Outcome
  readonly before: F | null
  readonly after: F | null
  /** Whether a person said that the two are one, or their word and place did; null where there is one only. */
  readonly by: 'said' | 'place' | null
  /** What is to be looked at by a person. */
  readonly remarks: readonly ('larger' | 'more serious' | 'called new' | 'size not taken' | 'smaller')[]
}

interface Pair<F> {
  readonly before: F
  readonly after: F
  readonly by: 'said' | 'place'
}

/** The pairs, each finding in one at most. Turned round with the two reports. */
function pairsOf<F extends Compared>(before: readonly F[], after: readonly F[], near: number): Pair<F>[] {
  const pairs: Pair<F>[] = []
  const taken = new Set<F>()
  function take(pair: Pair<F>): void {
    if (taken.has(pair.before) || taken.has(pair.after)) return
    taken.add(pair.before).add(pair.after)
    pairs.push(pair)
  }
  const all = before.flatMap(one => after.map(other => ({ before: one, after: other })))
  const low = ({ before: one, after: other }: { before: F; after: F }) => Math.min(one.number, other.number)
  const high = ({ before: one, after: other }: { before: F; after: F }) => Math.max(one.number, other.number)
  const said = all.filter(pair => pair.after.follows === pair.before.id || pair.before.follows === pair.after.id)
  for (const pair of said.sort((a, b) => low(a) - low(b) || high(a) - high(b))) take({ ...pair, by: 'said' })
  const close = all
    .filter(({ before: one, after: other }) => one.term === other.term && one.term !== '' && one.side === other.side)
    .map(pair => ({ ...pair, apart: distanceBetween(pair.before, pair.after) }))
    .filter(({ apart }) => apart <= near)
  // Two that are still alike here are 1 with 2 and 2 with 1, which share no finding: either may be first.
  close.sort((a, b) => a.apart - b.apart || low(a) - low(b) || high(a) - high(b))
  for (const pair of close) take({ before: pair.before, after: pair.after, by: 'place' })
  return pairs
}

/** The measure that two places share: along them where both are lines, else straight across; null where none was taken. */
function lengths(one: Shape, other: Shape, a: Extent, b: Extent): readonly [number, number] | null {
  if (one.form === 'outline' && other.form === 'outline') return [a.along, b.along]
  return a.reach === null || b.reach === null ? null : [a.reach, b.reach]
}

/** Larger by more than `by`: across or along, or an area by as much as its edge moved out by half that all round. */
function isLarger(before: Shape, after: Shape, by: number): boolean {
  const [a, b] = [extentOf(before), extentOf(after)]
  if (before.form === 'area' && after.form === 'area' && b.area - a.area > (a.along * by) / 2) return true
  const both = lengths(before, after, a, b)
  return both !== null && both[1] - both[0] > by
}

function lineOf<F extends Compared>({ before, after, by }: Pair<F>, rules: CompareRules): CompareLine<F> {
  const larger = isLarger(before, after, rules.grown)
  const worse = severities.indexOf(after.severity || 'slight') > severities.indexOf(before.severity || 'slight')
  const untold = lengths(before, after, extentOf(before), extentOf(after)) === null
  return {
    outcome: larger || worse ? 'grown' : 'same',
    before,
    after,
    by,
    remarks: [
      ...(larger ? (['larger'] as const) : []),
      ...(worse ? (['more serious'] as const) : []),
      ...(after.age === 'new' ? (['called new'] as const) : []),
      ...(untold ? (['size not taken'] as const) : []),
      ...(!larger && isLarger(after, before, rules.grown) ? (['smaller'] as const) : []),
    ],
  }
}

/** Lines in the order of the later report, then what is not seen any more in the order of the earlier. */
export function compareReports<F extends Compared>(
  before: readonly F[],
  after: readonly F[],
  rules: CompareRules,
): CompareLine<F>[] {
  const pairs = pairsOf(before, after, rules.near)
  const alone = (outcome: 'new' | 'not seen', one: F): CompareLine<F> => ({
    outcome,
    before: outcome === 'new' ? null : one,
    after: outcome === 'new' ? one : null,
    by: null,
    remarks: [],
  })
  return [
    ...after.map(one => {
      const pair = pairs.find(each => each.after === one)
      return pair === undefined ? alone('new', one) : lineOf(pair, rules)
    }),
    ...before.filter(one => !pairs.some(each => each.before === one)).map(one => alone('not seen', one)),
  ]
}
