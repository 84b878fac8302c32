/** The narrowest gap between neighbours on a wall. */

/**
 * Clear width between the two nearest works, mm; works one above the other have none between them. Null where no two
 * stand side by side. `x` is the middle of a work.
 */
export function narrowestGap(works: readonly { readonly x: number; readonly width: number }[]): number | null {
  const sorted = works
    .map(({ x, width }) => ({ from: x - width / 2, to: x + width / 2 }))
    .sort((a, b) => a.from - b.from)
  let least: number | null = null
  let reached = Number.NEGATIVE_INFINITY
  for (const { from, to } of sorted) {
    const gap = from - reached
    if (gap >= 0 && Number.isFinite(gap) && (least === null || gap < least)) least = gap
    reached = Math.max(reached, to)
  }
  return least
}
