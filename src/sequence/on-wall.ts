/**
 * What one wall has of a hang's quality: what each term loses on it, in points, and what would make the whole better.
 * The losses of all walls and of what stays add up to what the hang lacks to be perfect, where no work is left out.
 */
import { pointsBetween } from './next-best.ts'
import { at, centresIn, type Hang, leftOver, noRules, type Problem } from './problem.ts'
import {
  asMet,
  balanceScore,
  type Centres,
  judge,
  orderKeys,
  type Scale,
  scaleOf,
  sumsOf,
  type TermValues,
  termsOfSums,
} from './terms.ts'

export interface OnBay {
  readonly bay: number
  readonly works: readonly number[]
  /** Σ widths on it, and what an even hang would put there, mm. */
  readonly width: number
  readonly share: number
  /** Left over beside works and what stays free, mm. */
  readonly left: number
  /** Centre of visual weight from the middle of the bay, mm; to the right is positive. 0 without works. */
  readonly off: number
  readonly balance: number
  /** Mean share of the least served viewers, 0 to 1; null without works. */
  readonly served: number | null
  readonly axes: readonly { readonly x: number; readonly work: number | null }[]
}

/**
 * What is on one bay, in figures.
 *
 * @param centres where works stand, if not in equal gaps
 */
export function onBay(
  problem: Problem,
  hang: Hang,
  bay: number,
  scale: Scale = scaleOf(problem),
  centres?: Centres,
): OnBay {
  const { from, to, axes } = at(problem.bays, bay)
  const works = at(hang, bay)
  const left = leftOver(problem, bay, works)
  const stands = centres?.[bay] ?? centresIn(problem, bay, works)
  let [weight, moment] = [0, 0]
  const spans = works.map((index, place) => {
    const work = at(problem.works, index)
    const centre = at(stands, place)
    weight += work.weight
    moment += work.weight * centre
    return { index, from: centre - work.width / 2, to: centre + work.width / 2 }
  })
  const off = weight > 0 ? moment / weight - (from + to) / 2 : 0
  const served = works.map(index => at(problem.works, index).served[bay] ?? 0)
  return {
    bay,
    works,
    width: works.reduce((sum, index) => sum + at(problem.works, index).width, 0),
    share: scale.fill * (to - from),
    left,
    off,
    balance: balanceScore(off, to - from),
    served: served.length === 0 ? null : served.reduce((sum, one) => sum + one, 0) / served.length,
    axes: axes.map(axis => ({ x: axis, work: spans.find(one => one.from <= axis && axis <= one.to)?.index ?? null })),
  }
}

/** Points that a wall loses, by term. A pair out of order is half the loss of either work's wall. */
export function lostOn(
  problem: Problem,
  hang: Hang,
  face: string,
  scale: Scale = scaleOf(problem),
  centres?: Centres,
): TermValues {
  const full = { order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 }
  if (scale.free === 0) return pointsBetween(problem, full, full)
  let [balance, evenness, light, sight, rhythm] = [0, 0, 0, 0, 0]
  for (const [bay, { face: own, axes }] of problem.bays.entries()) {
    if (own !== face) continue
    const works = at(hang, bay)
    const sums = sumsOf(problem, scale, bay, works, centres?.[bay])
    const none = termsOfSums({ ...sums, served: 0, focal: 0 }, scale)
    light += 1 - none.light
    rhythm += 1 - none.rhythm
    evenness += 1 - none.evenness
    balance += (works.length - sums.balance) / scale.free
    const unserved = (works.length - sums.served) / scale.free
    sight += scale.axes === 0 ? unserved : 0.75 * unserved + (0.25 * (axes.length - sums.focal)) / scale.axes
  }
  const lost = { order: orderLost(problem, hang, face, scale), balance, evenness, light, sight, rhythm }
  return pointsBetween(problem, lost, { order: 0, balance: 0, evenness: 0, light: 0, sight: 0, rhythm: 0 })
}

/** Of the order term: turned pairs, half to either wall, and sections that begin a second time here. */
function orderLost(problem: Problem, hang: Hang, face: string, scale: Scale): number {
  const met = asMet(problem, hang)
  const keys = orderKeys(problem)
  const own = new Set(hang.flatMap((works, bay) => (at(problem.bays, bay).face === face ? works : [])))
  let [turned, again] = [0, 0]
  const begun = new Set<number>()
  for (const [place, work] of met.entries()) {
    const { section } = at(problem.works, work)
    const before = met[place - 1]
    if (before === undefined || at(problem.works, before).section !== section) {
      if (begun.has(section) && own.has(work)) again += 1
      begun.add(section)
    }
    if (!own.has(work)) continue
    for (const [other, index] of met.entries()) {
      const wrong = other < place ? at(keys, index) > at(keys, work) : at(keys, index) < at(keys, work)
      if (wrong) turned += 0.5
    }
  }
  const pairs = scale.ordered === 0 ? 0 : turned / scale.ordered
  const breaks = scale.all > scale.sections ? again / (scale.all - scale.sections) : 0
  return 0.5 * pairs + 0.5 * breaks
}

export interface Dropped {
  readonly work: number
  /** Points that the hang of all others is better by. */
  readonly gain: number
}

/**
 * What each work of a wall is worth left out of the show, the best first. Others stay on their bays, in their order; and
 * where they stand, if `centres` says where that is.
 */
export function dropsOn(problem: Problem, hang: Hang, face: string, centres?: Centres): readonly Dropped[] {
  const { quality } = judge(problem, hang, scaleOf(problem), centres)
  return hang
    .flatMap((works, bay) => (at(problem.bays, bay).face === face ? works : []))
    .map(work => {
      const less = withoutWork(problem, hang, work)
      const rest = centres?.map((row, bay) => row.filter((_, place) => at(hang, bay)[place] !== work))
      const { quality: then } = judge(less.problem, less.hang, scaleOf(less.problem), rest)
      return { work, gain: 100 * (then - quality) }
    })
    .sort((a, b) => b.gain - a.gain)
}

/** The same show without a work: what is judged, no rule is kept. */
export function withoutWork(
  problem: Problem,
  hang: Hang,
  work: number,
): { readonly problem: Problem; readonly hang: Hang } {
  const shift = (index: number) => (index > work ? index - 1 : index)
  const neighbour = (index: number | null) => (index === null || index === work ? null : shift(index))
  return {
    problem: {
      ...problem,
      works: problem.works.filter((_, index) => index !== work),
      bays: problem.bays.map(bay => ({ ...bay, leftOf: neighbour(bay.leftOf), rightOf: neighbour(bay.rightOf) })),
      rules: noRules,
    },
    hang: hang.map(works => works.filter(index => index !== work).map(shift)),
  }
}

/** Whether a work fits beside those that hang on some bay of a wall, where it may hang. Rules between works are not asked. */
export function fitsOn(problem: Problem, hang: Hang, face: string, work: number): boolean {
  const served = at(problem.works, work).served
  return problem.bays.some(
    (bay, index) =>
      bay.face === face && served[index] !== null && leftOver(problem, index, [...at(hang, index), work]) >= 0,
  )
}
