/** Whether two rooms stand in each other's way. Outlines of corners in order, mm. */
import type { Point } from '../drawing/room-plan.ts'
import { crosses, within } from './outline-shape.ts'
import { boxOf } from './place.ts'
import { middleOf, nearestOn } from './within.ts'

/** Walls that only touch, or cross by less than this, are no overlap; mm, from memory. */
const SLACK = 1

export function overlap(one: readonly Point[], other: readonly Point[]): boolean {
  const [a, b] = [boxOf(one), boxOf(other)]
  if (a === null || b === null) return false
  if (a.right - SLACK < b.left || b.right - SLACK < a.left || a.bottom - SLACK < b.top || b.bottom - SLACK < a.top)
    return false
  if (within(other, middleOf(one).at) || within(one, middleOf(other).at)) return true
  // Two as deep as each other, one pushed into the other, have walls in line and cross nowhere.
  if ([...depthsIn(one, other), ...depthsIn(other, one)].some(depth => depth > SLACK)) return true
  return one.some((from, at) => {
    const to = one[(at + 1) % one.length] ?? from
    return other.some((start, next) => crosses(from, to, start, other[(next + 1) % other.length] ?? start, SLACK))
  })
}

/**
 * How far one room reaches into the other, mm: the furthest that a corner or the middle of a wall lies inside. Null where
 * they cross with none of these inside, as two corridors do; zero where they lie apart.
 */
export function overlapDepth(one: readonly Point[], other: readonly Point[]): number | null {
  if (!overlap(one, other)) return 0
  const depths = [...depthsIn(one, other), ...depthsIn(other, one)]
  return depths.length === 0 ? null : Math.max(...depths)
}

function depthsIn(one: readonly Point[], other: readonly Point[]): number[] {
  const points = one.flatMap(([x, y], at): Point[] => {
    const [nextX, nextY] = one[(at + 1) % one.length] ?? [x, y]
    return [
      [x, y],
      [(x + nextX) / 2, (y + nextY) / 2],
    ]
  })
  return points
    .filter(point => within(other, point))
    .map(point =>
      Math.min(...other.map((from, at) => nearestOn(from, other[(at + 1) % other.length] ?? from, point).away)),
    )
}
