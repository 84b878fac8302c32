/**
 * What no hang of a problem can exceed: each term at the best that any hang could give it, taken by itself. Honest and
 * not always near: terms that can't all be at their best together are not played against one another.
 */
import { at, type Problem } from './problem.ts'
import { quality, type Scale, scaleOf, type TermValues } from './terms.ts'

export interface Bound {
  readonly values: TermValues
  readonly quality: number
}

/** Of all hangs that leave no work out; never below the quality of any of them. */
export function boundOf(problem: Problem, scale: Scale = scaleOf(problem)): Bound {
  const values = {
    order: 1,
    balance: 1,
    evenness: evennessBound(problem, scale),
    light: 1,
    sight: sightBound(problem, scale),
    rhythm: 1,
  }
  return { values, quality: quality(values, problem.weights) }
}

/**
 * What is too little on bays that can't take their share is too much elsewhere. A bay lacks what its ends keep free, all
 * of its share where nothing may hang on it; and where there are more bays than works, the smallest stay empty.
 */
function evennessBound({ works, bays }: Problem, scale: Scale): number {
  if (scale.free === 0) return 1
  const free = works.filter(work => work.stays === null)
  const lacks = bays.map(({ from, to, margin }, bay) => {
    const share = scale.fill * (to - from)
    const usable = free.some(work => work.served[bay] !== null) ? Math.max(0, to - from - 2 * margin) : 0
    return { least: Math.max(0, share - usable), empty: share }
  })
  const empty = Math.max(0, bays.length - free.length)
  // An empty bay lacks its whole share: the cheapest to leave empty are those where that adds least.
  const added = lacks
    .map(lack => lack.empty - lack.least)
    .sort((a, b) => a - b)
    .slice(0, empty)
    .reduce((sum, more) => sum + more, 0)
  const least = lacks.reduce((sum, lack) => sum + lack.least, 0) + added
  return 1 - (2 * least) / (2 * scale.width)
}

/** Each work where it is seen best; the heaviest works on the axes, one each where none can stand on two. */
function sightBound({ works, bays }: Problem, scale: Scale): number {
  const free = works.filter(work => work.stays === null)
  if (free.length === 0) return 1
  const served = free.reduce((sum, work) => sum + Math.max(0, ...work.served.map(share => share ?? 0)), 0) / free.length
  if (scale.axes === 0 || scale.heaviest === 0) return served
  const widest = Math.max(...free.map(work => work.width))
  const crowded = bays.some(({ axes }) => {
    const sorted = [...axes].sort((a, b) => a - b)
    return sorted.some((x, index) => index > 0 && x - at(sorted, index - 1) <= widest)
  })
  const weights = free.map(work => work.weight).sort((a, b) => b - a)
  const onAxes = Array.from({ length: scale.axes }, (_, index) => (crowded ? (weights[0] ?? 0) : (weights[index] ?? 0)))
  const focal = onAxes.reduce((sum, weight) => sum + weight, 0) / scale.heaviest
  return 0.75 * served + (0.25 * focal) / scale.axes
}
