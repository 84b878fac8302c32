/**
 * The best hang of a small problem, proved: every hang is built work by work from the first bay on, and what can't
 * become better than the best known is not built further. What is built already costs what it costs; of the rest it is
 * taken that each work is served at its best, all bays balance, and no neighbours differ, but pairs that are turned
 * already stay turned.
 */
import { broken } from './across.ts'
import { allowedOn } from './allowed.ts'
import { at, type Hang, leftOver, type Problem } from './problem.ts'
import {
  added,
  type BaySums,
  judge,
  noSums,
  orderKeys,
  orderOf,
  quality,
  type Scale,
  scaleOf,
  sumsOf,
  termsOfSums,
} from './terms.ts'

export interface Proved {
  readonly hang: Hang
  readonly quality: number
  /** False where the search ended at its limit: nothing is proved then. */
  readonly proved: boolean
}

/**
 * @param known a hang that is allowed and leaves nothing out, to begin with; null where none is known
 * @param most beginnings of hangs looked at before it gives up
 * @returns null where no hang of all works is allowed, or none was found before it gave up
 */
export function proveBest(
  problem: Problem,
  known: Hang | null,
  most: number,
  scale: Scale = scaleOf(problem),
): Proved | null {
  const { bays, works, weights } = problem
  const free = works.flatMap((work, index) => (work.stays === null ? [index] : []))
  const keys = orderKeys(problem)
  const seen = works.map(work => Math.max(0, ...work.served.map(share => share ?? 0)))
  let best = known
  let bestQuality = known === null ? Number.NEGATIVE_INFINITY : judge(problem, known, scale).quality
  let looked = 0
  const left = new Set(free)
  const hang: number[][] = [[]]

  /** Nothing that is built on has more than this. */
  function bound(closed: BaySums, row: readonly number[], turned: number): number {
    let served = closed.served
    let light = closed.light
    let rhythm = closed.rhythm
    const here = hang.length - 1
    for (const work of row) served += at(works, work).served[here] ?? 0
    for (const work of left) served += at(seen, work)
    if (row.length > 1) {
      const inner = sumsOf({ ...problem, bays: withoutEnds(bays) }, scale, here, row)
      light += inner.light
      rhythm += inner.rhythm
    }
    const sums = {
      balance: closed.balance + row.length + left.size,
      uneven: closed.uneven,
      light,
      rhythm,
      served,
      focal: closed.focal + bays.slice(here).reduce((sum, bay) => sum + bay.axes.length, 0),
    }
    const order = orderOf({ turned, runs: scale.sections }, scale)
    return quality({ order, ...termsOfSums(sums, scale) }, weights)
  }

  function search(closed: BaySums, turned: number): void {
    if (looked >= most) return
    looked += 1
    const here = hang.length - 1
    const row = at(hang, here)
    if (bound(closed, row, turned) <= bestQuality + 1e-12) return
    for (const work of [...left]) {
      if (at(works, work).served[here] === null) continue
      row.push(work)
      if (leftOver(problem, here, row) >= -1e-6) {
        left.delete(work)
        const more = [...left].filter(other => at(keys, other) < at(keys, work)).length
        search(closed, turned + more)
        left.add(work)
      }
      row.pop()
    }
    if (!allowedOn(problem, here, row)) return
    const sums = added(closed, sumsOf(problem, scale, here, row))
    if (hang.length < bays.length) {
      hang.push([])
      search(sums, turned)
      hang.pop()
    } else if (left.size === 0 && broken(problem, hang) === null) {
      const judged = judge(problem, hang, scale)
      if (judged.quality > bestQuality + 1e-12) {
        bestQuality = judged.quality
        best = hang.map(each => [...each])
      }
    }
  }
  search(noSums, 0)
  return best === null ? null : { hang: best, quality: bestQuality, proved: looked < most }
}

function withoutEnds(bays: Problem['bays']): Problem['bays'] {
  return bays.map(bay => ({ ...bay, leftOf: null, rightOf: null, axes: [] }))
}
