/**
 * Which works a hang takes out of an order: the fewest that must be looked away from so that all others are met in it
 * (the complement of a longest increasing subsequence; Schensted, Canadian Journal of Mathematics 13, 1961).
 */
import type { Hang } from './problem.ts'

/**
 * @param order works in the order that is asked after; what hangs and is not in it is looked away from
 * @returns in that order
 */
export function outOfOrder(hang: Hang, order: readonly number[]): readonly number[] {
  const rank = new Map(order.map((work, index) => [work, index] as const))
  const met = hang.flat().flatMap(work => rank.get(work) ?? [])
  /** By length less one, where the run that ends lowest ends, by its place in `met`; and what each follows. */
  const ends: number[] = []
  const after = met.map((own, place) => {
    const longer = ends.findIndex(end => (met[end] ?? 0) > own)
    const length = longer === -1 ? ends.length : longer
    ends[length] = place
    return length === 0 ? -1 : (ends[length - 1] ?? -1)
  })
  const kept = new Set<number>()
  for (let place = ends.at(-1) ?? -1; place >= 0; place = after[place] ?? -1) kept.add(met[place] ?? -1)
  const hung = new Set(met)
  return order.filter((_, index) => hung.has(index) && !kept.has(index))
}
