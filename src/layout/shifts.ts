/** The smallest single shift that takes a work, or a whole hang, out of what must stay clear. */
import type { Rect } from '../geometry/rect.ts'
import { clearances, clearDistance, moved, overlap, right, top } from '../geometry/rect.ts'
import type { KeepClear, WallFacts } from '../hang/wall.ts'
import { floorAt } from '../hang/wall.ts'

const SLACK = 1e-6

/** How far a work stands inside the margin: 0 clear, the margin and more where the thing itself is covered. */
export function insideMargin(rect: Rect, item: KeepClear): number {
  const { dx, dy } = clearances(rect, item)
  if (dx < 0 && dy < 0) return item.margin - Math.max(dx, dy)
  return Math.max(0, item.margin - clearDistance(rect, item))
}

/** Shifts of a rectangle straight left, right, up or down that bring it just to the margin. */
export function shiftsOff(rect: Rect, item: KeepClear): readonly { readonly dx: number; readonly dy: number }[] {
  const { dx, dy } = clearances(rect, item)
  const along = needed(item.margin, dy)
  const up = needed(item.margin, dx)
  return [
    { dx: right(item) + along - rect.x, dy: 0 },
    { dx: item.x - along - right(rect), dy: 0 },
    { dx: 0, dy: top(item) + up - rect.y },
    { dx: 0, dy: item.y - up - top(rect) },
  ]
}

/** Clear distance needed in one direction when the other already gives `other`; corners are measured straight across. */
function needed(margin: number, other: number): number {
  const across = Math.max(0, other)
  return across >= margin ? 0 : Math.sqrt(margin * margin - across * across)
}

function isFree(rect: Rect, wall: WallFacts, others: readonly Rect[]): boolean {
  return (
    rect.x >= -SLACK &&
    right(rect) <= wall.length + SLACK &&
    top(rect) <= wall.height + SLACK &&
    rect.y >= Math.max(floorAt(wall.floor, rect.x), floorAt(wall.floor, right(rect))) - SLACK &&
    wall.keepClears.every(item => insideMargin(rect, item) <= SLACK) &&
    wall.openings.every(opening => !overlap(rect, opening)) &&
    others.every(other => !overlap(rect, other))
  )
}

/** The smallest shift of one work alone, straight along or straight up or down, that leaves no conflict; null if none does. */
export function smallestShift(
  rect: Rect,
  wall: WallFacts,
  others: readonly Rect[],
): { readonly dx: number; readonly dy: number } | null {
  const candidates = [
    ...wall.keepClears.flatMap(item => shiftsOff(rect, item)),
    ...wall.openings.flatMap(opening => shiftsOff(rect, { ...opening, margin: 0, reason: '' })),
  ]
  return best(candidates, shift => isFree(moved(rect, shift.dx, shift.dy), wall, others))
}

/** The smallest shift of all works together along the wall that leaves no conflict; null if none does. */
export function smallestGroupShift(rects: readonly Rect[], wall: WallFacts): number | null {
  const candidates = rects.flatMap(rect =>
    wall.keepClears.flatMap(item => shiftsOff(rect, item)).filter(shift => shift.dy === 0),
  )
  const found = best(candidates, shift => rects.every(rect => isFree(moved(rect, shift.dx, 0), wall, [])))
  return found === null ? null : found.dx
}

function best<T extends { readonly dx: number; readonly dy: number }>(
  candidates: readonly T[],
  good: (shift: T) => boolean,
): T | null {
  const sorted = [...candidates].sort((a, b) => Math.abs(a.dx) + Math.abs(a.dy) - Math.abs(b.dx) - Math.abs(b.dy))
  return sorted.find(good) ?? null
}
