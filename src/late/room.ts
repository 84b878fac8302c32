/** Whether works have room where an offer puts them: on the wall, clear of what must stay clear, and of each other. */
import { clearances, overlap } from '../geometry/rect.ts'
import { floorAt } from '../hang/wall.ts'
import { insideMargin } from '../layout/shifts.ts'
import type { LateQuestion } from './late-shape.ts'
import type { Placed } from './row.ts'

const SLACK = 1e-6

/** Looks only at what was touched: what was wrong before the change is not this change's fault. */
export function fits(rects: readonly Placed[], touched: ReadonlySet<string>, question: LateQuestion): boolean {
  const { wall, leastGap, leastMargin } = question
  for (const rect of rects) {
    if (!touched.has(rect.id)) continue
    const floor = Math.max(floorAt(wall.floor, rect.x), floorAt(wall.floor, rect.x + rect.width))
    if (rect.x < leastMargin - SLACK || rect.x + rect.width > wall.length - leastMargin + SLACK) return false
    if (rect.y < floor - SLACK || rect.y + rect.height > wall.height + SLACK) return false
    if (wall.openings.some(opening => overlap(rect, opening))) return false
    if (wall.keepClears.some(item => insideMargin(rect, item) > SLACK)) return false
    for (const other of rects) {
      if (other.id === rect.id) continue
      const { dx, dy } = clearances(rect, other)
      if (Math.hypot(Math.max(0, dx), Math.max(0, dy)) < leastGap - SLACK) return false
    }
  }
  return true
}
