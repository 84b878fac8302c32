/**
 * What a dimension chain under an elevation runs along. Works that stand one above the other share one stretch of it,
 * as wide as all of them together; works that cover each other do not, so that their overlap is read as a gap below 0.
 */
import { overlap, type Rect, right } from '../geometry/rect.ts'
import type { ChainWork } from '../layout/chains.ts'

export interface Column extends ChainWork {
  /** All works of the column. `id` is the first of them. */
  readonly ids: readonly string[]
}

/** Columns from left to right. mm. */
export function columnsOf(works: readonly (Rect & { readonly id: string })[]): readonly Column[] {
  const columns: { readonly ids: string[]; readonly rects: Rect[]; from: number; to: number }[] = []
  for (const work of [...works].sort((a, b) => a.x - b.x || b.y - a.y)) {
    const last = columns.at(-1)
    const shares = last !== undefined && work.x < last.to - 1e-6 && !last.rects.some(rect => overlap(rect, work))
    if (shares) {
      last.ids.push(work.id)
      last.rects.push(work)
      last.to = Math.max(last.to, right(work))
    } else columns.push({ ids: [work.id], rects: [work], from: work.x, to: right(work) })
  }
  return columns.map(({ ids, from, to }) => ({ id: ids[0] ?? '', ids, left: from, width: to - from }))
}
