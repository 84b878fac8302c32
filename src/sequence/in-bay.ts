/**
 * The best order of given works on one bay, by branch and bound: exact. What a row of works adds is bounded from above
 * by what its first works cost already and by how near its weight can come to the middle: the extremes of the moment
 * over all orders of the rest are those by falling and by rising ratio of weight to length (Smith, "Various optimizers
 * for single-stage production", Naval Research Logistics Quarterly 3, 1956).
 */
import { allowedOn } from './allowed.ts'
import { at, leftOver, type Problem } from './problem.ts'
import { balanceScore, gainOf, lightCost, noSums, rhythmCost, type Scale, scaleOf, sumsOf } from './terms.ts'

export interface BestOrder {
  readonly order: readonly number[]
  /** What the bay adds to the quality with it. */
  readonly gain: number
  /** False where the search was ended before all orders were ruled out: the order is the best seen. */
  readonly proved: boolean
}

/**
 * Null where no order of the works is allowed there, or they do not fit.
 *
 * @param most rows and beginnings of rows looked at before it ends
 */
export function bestOrder(
  problem: Problem,
  bay: number,
  given: readonly number[],
  scale: Scale = scaleOf(problem),
  most = 200_000,
): BestOrder | null {
  const each = leftOver(problem, bay, given) / (given.length + 1)
  if (each < -1e-9) return null
  const { from, to, margin, gap, leftOf } = at(problem.bays, bay)
  const [length, middle] = [to - from, (from + to) / 2]
  const works = given.map(index => at(problem.works, index))
  const weight = works.reduce((sum, work) => sum + work.weight, 0)
  const step = works.map(work => work.width + gap + each)
  /** By falling ratio: in this order the moment is least. */
  const byRatio = works.map((_, index) => index).sort((a, b) => ratio(b) - ratio(a))
  function ratio(index: number): number {
    return at(works, index).weight / at(step, index)
  }
  const bare = gainOf({ ...noSums, balance: works.length }, problem, scale)
  const perBalance = works.length === 0 ? 0 : bare / works.length
  const perLight = gainOf({ ...noSums, light: 1 }, problem, scale)
  const perRhythm = gainOf({ ...noSums, rhythm: 1 }, problem, scale)
  const still = sumsOf(problem, scale, bay, given)
  /** Of any order: what all of them share, and the best of what an order decides. */
  const shared = gainOf({ ...noSums, uneven: still.uneven, served: still.served }, problem, scale)
  const focalMost = gainOf(
    { ...noSums, focal: focalBound(works, at(problem.bays, bay).axes.length, scale) },
    problem,
    scale,
  )

  let best: number[] | null = null
  let bestGain = Number.NEGATIVE_INFINITY
  let looked = 0
  const used = new Uint8Array(works.length)
  const row: number[] = []

  function bound(start: number, moment: number, costs: number): number {
    let [low, high] = [moment, moment]
    let x = start
    for (const index of byRatio) {
      if (used[index] === 1) continue
      const work = at(works, index)
      low += work.weight * (x + work.width / 2)
      x += at(step, index)
    }
    x = start
    for (let index = byRatio.length - 1; index >= 0; index -= 1) {
      const which = at(byRatio, index)
      if (used[which] === 1) continue
      const work = at(works, which)
      high += work.weight * (x + work.width / 2)
      x += at(step, which)
    }
    const off = weight === 0 ? 0 : Math.max(0, low / weight - middle, middle - high / weight)
    return shared + focalMost + costs + perBalance * works.length * balanceScore(off, length)
  }

  function search(start: number, moment: number, costs: number, last: number | null): void {
    if (looked >= most) return
    looked += 1
    if (row.length === works.length) {
      const order = row.map(index => at(given, index))
      if (!allowedOn(problem, bay, order)) return
      const gain = gainOf(sumsOf(problem, scale, bay, order), problem, scale)
      if (gain > bestGain + 1e-12) {
        bestGain = gain
        best = order
      }
      return
    }
    for (let index = 0; index < works.length; index += 1) {
      if (used[index] === 1) continue
      const work = at(works, index)
      const before = last === null ? null : at(problem.works, last)
      const cost =
        before === null
          ? 0
          : perLight * lightCost(before.limit, work.limit) + perRhythm * rhythmCost(before, work, scale.strong)
      used[index] = 1
      row.push(index)
      const next = { start: start + at(step, index), moment: moment + work.weight * (start + work.width / 2) }
      if (bound(next.start, next.moment, costs + cost) > bestGain + 1e-12)
        search(next.start, next.moment, costs + cost, at(given, index))
      row.pop()
      used[index] = 0
    }
  }
  search(from + margin + each, 0, 0, leftOf)
  return best === null ? null : { order: best, gain: bestGain, proved: looked < most }
}

/** The heaviest works on as many axes. */
function focalBound(works: readonly { readonly weight: number }[], axes: number, scale: Scale): number {
  if (axes === 0 || scale.heaviest === 0) return 0
  const weights = works.map(work => work.weight).sort((a, b) => b - a)
  // One work may stand on two axes.
  return (axes * (weights[0] ?? 0)) / scale.heaviest
}
