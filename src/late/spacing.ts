/**
 * One stretch of a row spaced anew: between the works that stay on both sides, or from the outermost work's own margin
 * where the stretch reaches the end of the row. What stays inside the stretch divides it.
 */
import { centreFromRule } from '../hang/height.ts'
import type { Spot } from './cost.ts'
import type { Change, LateWork } from './late-shape.ts'
import type { Row } from './row.ts'

export interface Stretch {
  /** The whole row from left to right, as the change leaves it. */
  readonly items: readonly LateWork[]
  /** The stretch: from work i to work j, both included. */
  readonly i: number
  readonly j: number
  readonly row: Row
  /** What does not move: drilled and hung works, hung ones alone, or nothing. Held works never do. */
  readonly keep: 'drilled' | 'hung' | 'nothing'
  readonly change: Change
  /** The row’s outermost edges before the change: what people see against the corner, so the margins are kept. */
  readonly outer: { readonly left: number; readonly right: number }
  readonly leastGap: number
}

export interface Spaced {
  readonly spots: ReadonlyMap<string, Spot>
  readonly ends: string
  /** The gaps made, one figure for each part between what stays. mm. */
  readonly gaps: readonly number[]
  /** Works inside the stretch that stay where they are. */
  readonly stayed: readonly LateWork[]
}

/**
 * Spots of the stretch's works with equal gaps between what stays; null where it does not fit, or where nothing in it
 * may move. mm.
 */
export function spaced(stretch: Stretch): Spaced | null {
  const { items, i, j, row, keep, change } = stretch
  const within = items.slice(i, j + 1)
  const stays = (work: LateWork) => {
    if (change.kind === 'different' && work.id === change.id) return false
    if (change.kind === 'replace' && work.id === change.by.id) return false
    if (change.kind === 'swap' && (work.id === change.one || work.id === change.other)) return false
    if (work.held) return true
    return keep === 'nothing' ? false : work.standing === 'hung' || (keep === 'drilled' && work.standing === 'drilled')
  }
  if (within.every(stays)) return null
  // A stretch that ends in a work that stays is the shorter stretch without it.
  const [head, tail] = [within[0], within.at(-1)]
  if (head === undefined || tail === undefined || stays(head) || stays(tail)) return null
  const before = items[i - 1]
  const behind = items[j + 1]
  const leftEdge = before === undefined ? stretch.outer.left : before.x + before.width / 2
  const rightEdge = behind === undefined ? stretch.outer.right : behind.x - behind.width / 2
  const spots = new Map<string, Spot>()
  const gaps: number[] = []
  let from = leftEdge
  let free: LateWork[] = []
  // No gap before the first work where its own margin is kept.
  let open = before !== undefined
  const close = (to: number, gapAfter: boolean): boolean => {
    const widths = free.reduce((sum, work) => sum + work.width, 0)
    const count = free.length - 1 + (open ? 1 : 0) + (gapAfter ? 1 : 0)
    if (free.length > 0) {
      const gap = count === 0 ? 0 : (to - from - widths) / count
      if (count > 0 && gap < stretch.leastGap - 1e-6) return false
      if (count > 0) gaps.push(gap)
      // One work between two margins is centred between them.
      let at = count === 0 ? from + (to - from - widths) / 2 : from + (open ? gap : 0)
      for (const work of free) {
        spots.set(work.id, { x: at + work.width / 2, y: centreFromRule(work.stands, work.height) })
        at += work.width + gap
      }
    }
    return true
  }
  for (const work of within) {
    if (!stays(work)) {
      free.push(work)
      continue
    }
    if (!close(work.x - work.width / 2, true)) return null
    from = work.x + work.width / 2
    free = []
    open = true
  }
  if (!close(rightEdge, behind !== undefined)) return null
  if (rightEdge > row.to + 1e-6 || leftEdge < row.from - 1e-6) return null
  return {
    spots,
    ends: `${before === undefined ? 'margin' : 'work'}-${behind === undefined ? 'margin' : 'work'}`,
    gaps,
    stayed: within.filter(stays),
  }
}
