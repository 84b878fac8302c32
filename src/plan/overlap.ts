/** Whether two rooms stand in each other's way. Outlines of corners in order, mm. */
import type { Point } from '../drawing/room-plan.ts'
import { crosses, within } from './outline-shape.ts'
import { boxOf } from './place.ts'
import { middleOf } from './within.ts'

/** Walls that only touch, or cross by less than this, are no overlap; mm, from memory. */
const SLACK = 1

export function overlap(one: readonly Point[], other: readonly Point[]): boolean {
  const [a, b] = [boxOf(one), boxOf(other)]
  if (a === null || b === null) return false
  if (a.right - SLACK < b.left || b.right - SLACK < a.left || a.bottom - SLACK < b.top || b.bottom - SLACK < a.top)
    return false
  if (within(other, middleOf(one).at) || within(one, middleOf(other).at)) return true
  return one.some((from, at) => {
    const to = one[(at + 1) % one.length] ?? from
    return other.some((start, next) => crosses(from, to, start, other[(next + 1) % other.length] ?? start, SLACK))
  })
}
