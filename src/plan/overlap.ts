/** Whether two rooms stand in each other's way. Outlines of corners in order, mm. */
import type { Point } from '../drawing/room-plan.ts'
import { boxOf } from './place.ts'
import { contains, middleOf } from './within.ts'

/** Walls that only touch, or cross by less than this, are no overlap; mm, from memory. */
const SLACK = 1

/** How far `p` lies to the left of the way from `a` to `b`, mm. */
function beside([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / (Math.hypot(bx - ax, by - ay) || 1)
}

/** Two walls cross where each has its ends on both sides of the other. */
function crosses(a: Point, b: Point, c: Point, d: Point): boolean {
  const apart = (p: number, q: number) => (p > SLACK && q < -SLACK) || (p < -SLACK && q > SLACK)
  return apart(beside(a, b, c), beside(a, b, d)) && apart(beside(c, d, a), beside(c, d, b))
}

export function overlap(one: readonly Point[], other: readonly Point[]): boolean {
  const [a, b] = [boxOf(one), boxOf(other)]
  if (a === null || b === null) return false
  if (a.right - SLACK < b.left || b.right - SLACK < a.left || a.bottom - SLACK < b.top || b.bottom - SLACK < a.top)
    return false
  if (contains(other, middleOf(one).at) || contains(one, middleOf(other).at)) return true
  return one.some((from, at) => {
    const to = one[(at + 1) % one.length] ?? from
    return other.some((start, next) => crosses(from, to, start, other[(next + 1) % other.length] ?? start))
  })
}
