/** What several rooms of one drawing share: walls that are one wall, and doorways that go through. */
import type { BackToBack } from './back-to-back.ts'

export interface Shared {
  /** A wall of one room that lies back to back with one wall of one other alone. */
  readonly walls: readonly BackToBack[]
  /** Openings that are one hole, each in one pair at most. */
  readonly doorways: readonly (readonly [string, string])[]
}

/** A long wall that several rooms lie behind is the other side of none of them alone; its doorways lead to each. */
export function sharedOf(pairs: readonly BackToBack[]): Shared {
  const met = new Map<string, number>()
  for (const { a, b } of pairs) for (const { id } of [a, b]) met.set(id, (met.get(id) ?? 0) + 1)
  const taken = new Set<string>()
  const doorways = pairs
    .flatMap(({ through }) => through)
    .filter(pair => {
      if (pair.some(id => taken.has(id))) return false
      for (const id of pair) taken.add(id)
      return true
    })
  return { walls: pairs.filter(({ a, b }) => met.get(a.id) === 1 && met.get(b.id) === 1), doorways }
}
