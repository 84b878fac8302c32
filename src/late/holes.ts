/**
 * Which holes serve again. Every hole that works need in their places is matched with the nearest free hole that is
 * there already; what finds none must be drilled, what nothing uses is dead.
 */
import type { DrilledHole, NeededHole } from './late-shape.ts'

export interface Standing {
  readonly id: string
  readonly x: number
  readonly y: number
  readonly holes: readonly NeededHole[]
}

export interface HoleCount {
  readonly missing: readonly { readonly work: string; readonly slot: string; readonly x: number; readonly y: number }[]
  readonly unused: readonly string[]
  /** Which hole serves which need. */
  readonly served: readonly { readonly work: string; readonly slot: string; readonly hole: string }[]
}

/**
 * Holes to drill and holes without use, for works standing where they are. A hole serves within `near` mm, once. Nearest
 * pairs are matched first, so that two needs never take each other's hole.
 */
export function matchHoles(works: readonly Standing[], drilled: readonly DrilledHole[], near: number): HoleCount {
  const needs = works.flatMap(work =>
    work.holes.map(hole => ({ work: work.id, slot: hole.slot, x: work.x + hole.dx, y: work.y + hole.dy })),
  )
  const sorted = [...drilled].sort((a, b) => a.x - b.x)
  const pairs: { need: number; hole: DrilledHole; distance: number }[] = []
  needs.forEach((need, index) => {
    for (let k = firstFrom(sorted, need.x - near); k < sorted.length; k += 1) {
      const hole = sorted[k]
      if (hole === undefined || hole.x > need.x + near) break
      const distance = Math.hypot(hole.x - need.x, hole.y - need.y)
      if (distance <= near + 1e-9) pairs.push({ need: index, hole, distance })
    }
  })
  pairs.sort((a, b) => a.distance - b.distance || a.need - b.need)
  const served = new Map<number, string>()
  const used = new Set<string>()
  for (const { need, hole } of pairs) {
    if (served.has(need) || used.has(hole.id)) continue
    served.set(need, hole.id)
    used.add(hole.id)
  }
  return {
    missing: needs.filter((_, index) => !served.has(index)),
    served: needs.flatMap(({ work, slot }, index) => {
      const hole = served.get(index)
      return hole === undefined ? [] : [{ work, slot, hole }]
    }),
    unused: drilled.filter(hole => !used.has(hole.id)).map(hole => hole.id),
  }
}

/** Index of the first hole at or right of x. */
function firstFrom(sorted: readonly DrilledHole[], x: number): number {
  let low = 0
  let high = sorted.length
  while (low < high) {
    const middle = (low + high) >> 1
    if ((sorted[middle]?.x ?? 0) < x) low = middle + 1
    else high = middle
  }
  return low
}
