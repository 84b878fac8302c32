/**
 * The best hang that keeps the checklist's order: works in a row, cut into as many runs as there are bays, by dynamic
 * programming over bays and works. Exact: no other cut of the same order is better by the terms. Works for which no
 * room is left are left out, as few as can be. What rules hold between bays is no matter of one pass: see `in-order-kept`.
 */
import { allowedOn } from './allowed.ts'
import { at, type Hang, hasRules, type Problem } from './problem.ts'
import { RowWorth } from './row-worth.ts'
import { type Scale, scaleOf } from './terms.ts'
import { unitsOf } from './units.ts'

export interface InOrder {
  readonly hang: Hang
  /** Works that found no place, by their place in the problem. */
  readonly out: readonly number[]
  /** What its bays add to the quality, less what works left out cost. */
  readonly worth: number
}

/** More than all terms together are worth: a work hung always counts more. */
const leftOut = 2

/**
 * @param order the free works in the order that is kept
 * @throws RangeError for a place that is none
 */
export function hangInOrder(problem: Problem, order: readonly number[], scale: Scale = scaleOf(problem)): InOrder {
  const n = order.length
  const bays = problem.bays.length
  const worth = Array.from({ length: bays + 1 }, () => new Float64Array(n + 1).fill(Number.NEGATIVE_INFINITY))
  /** How many works the bay takes before the work; -1 where the work before was left out. */
  const taken = Array.from({ length: bays + 1 }, () => new Int32Array(n + 1))
  const glued = cutsForbidden(problem, order)
  skip(at(worth, 0), at(taken, 0), 0)
  const worths = new RowWorth(problem, scale)
  const ruled = hasRules(problem)
  const backwards = new Int32Array(n)
  const run = new Int32Array(n)
  for (let bay = 0; bay < bays; bay += 1) {
    const { from, to, margin, gap } = at(problem.bays, bay)
    const room = to - from - 2 * margin + gap
    const [before, after, runs] = [at(worth, bay), at(worth, bay + 1), at(taken, bay + 1)]
    for (let end = 0; end <= n; end += 1) {
      if (end < n && glued.has(end)) continue
      let left = room
      for (let begin = end; begin >= 0; begin -= 1) {
        const count = end - begin
        if (count > 0) {
          const first = at(order, begin)
          left -= (worths.width[first] ?? 0) + gap
          if (left < -1e-6 || !worths.mayHang(bay, first)) break
          backwards[count - 1] = first
        }
        const here = before[begin] ?? Number.NEGATIVE_INFINITY
        if (here === Number.NEGATIVE_INFINITY) continue
        for (let place = 0; place < count; place += 1) run[place] = backwards[count - 1 - place] ?? 0
        if (ruled && !allowedOn(problem, bay, Array.from(run.subarray(0, count)))) continue
        const value = here + worths.of(bay, run, count)
        if (value > (after[end] ?? 0) + 1e-12) {
          after[end] = value
          runs[end] = count
        }
      }
    }
    skip(after, runs, 0)
  }
  return { ...read(order, taken, bays), worth: at(worth, bays)[n] ?? 0 }

  /** A work may be left out between two runs, at a price. */
  function skip(values: Float64Array, runs: Int32Array, from: number): void {
    if (values === worth[0]) values[0] = 0
    for (let end = from + 1; end <= n; end += 1) {
      const value = (values[end - 1] ?? 0) - leftOut
      if (value > (values[end] ?? 0)) {
        values[end] = value
        runs[end] = -1
      }
    }
  }
}

/** Places between works of `order` that stand together: no bay ends there. */
function cutsForbidden(problem: Problem, order: readonly number[]): ReadonlySet<number> {
  const units = unitsOf(problem)
  return new Set(
    order.flatMap((work, index) => {
      const unit = units.get(work)
      return index > 0 && unit !== undefined && units.get(at(order, index - 1)) === unit ? [index] : []
    }),
  )
}

function read(order: readonly number[], taken: readonly Int32Array[], bays: number): Omit<InOrder, 'worth'> {
  const hang: number[][] = Array.from({ length: bays }, () => [])
  const out: number[] = []
  let end = order.length
  for (let bay = bays; bay >= 0; bay -= 1) {
    while (end > 0 && taken[bay]?.[end] === -1) {
      end -= 1
      out.unshift(at(order, end))
    }
    if (bay === 0) break
    const run = taken[bay]?.[end] ?? 0
    hang[bay - 1] = order.slice(end - run, end)
    end -= run
  }
  return { hang, out }
}
