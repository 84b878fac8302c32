/** Questions about an outline as it is drawn: whether it crosses itself, its area and way round, what is seen from where. */
import type { Point } from '../drawing/room-plan.ts'

/** Twice the area of a triangle, positive when it turns clockwise on the page. */
export const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

/**
 * The ways from a to b and from c to d cross inside both: each has its ends on both sides of the other, further off its
 * line than `slack` mm. Ends that only touch don't.
 */
export function crosses(a: Point, b: Point, c: Point, d: Point, slack = 0): boolean {
  return parts(a, b, c, d, slack) && parts(c, d, a, b, slack)
}

/** The line through a and b has c and d on its two sides. */
function parts(a: Point, b: Point, c: Point, d: Point, slack: number): boolean {
  const [one, other] = [turn(a, b, c), turn(a, b, d)]
  // Twice an area over the length of its base is its height.
  const least = slack === 0 ? 0 : slack * Math.sqrt((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2)
  return (one > least && other < -least) || (one < -least && other > least)
}

const at = (corners: readonly Point[], index: number): Point => corners[index % corners.length] ?? [0, 0]

/** The first two sides of a closed outline that cross, by their places; null where none do. */
export function crossing(corners: readonly Point[]): readonly [number, number] | null {
  const count = corners.length
  for (let i = 0; i < count; i += 1) {
    for (let j = i + 2; j < count; j += 1) {
      if (i === 0 && j === count - 1) continue
      if (crosses(at(corners, i), at(corners, i + 1), at(corners, j), at(corners, j + 1))) return [i, j]
    }
  }
  return null
}

/** Square millimetres by the shoelace formula; positive where the outline runs clockwise on the page. */
export function areaOf(corners: readonly Point[]): number {
  let twice = 0
  for (const [index, [x, y]] of corners.entries()) {
    const [nextX, nextY] = at(corners, index + 1)
    twice += x * nextY - nextX * y
  }
  return twice / 2
}

/** Millimetres round. */
export function perimeterOf(corners: readonly Point[]): number {
  return corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = at(corners, index + 1)
    return sum + Math.hypot(nextX - x, nextY - y)
  }, 0)
}

/** A point within a closed outline, by the crossings of a ray. */
export function within(corners: readonly Point[], [x, y]: Point): boolean {
  let inside = false
  for (const [index, [ax, ay]] of corners.entries()) {
    const [bx, by] = at(corners, index + 1)
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}

/** A tape can be stretched between two corners: no wall is in the way, and the line runs through the room. */
export function taped(corners: readonly Point[], from: number, to: number): boolean {
  const [a, b] = [at(corners, from), at(corners, to)]
  const count = corners.length
  for (let i = 0; i < count; i += 1) {
    const next = (i + 1) % count
    if (i === from || i === to || next === from || next === to) continue
    if (crosses(a, b, at(corners, i), at(corners, next))) return false
  }
  // A corner that stands on the line is in its way too.
  const run = Math.hypot(b[0] - a[0], b[1] - a[1])
  for (let i = 0; i < count; i += 1) {
    if (i === from || i === to) continue
    const p = at(corners, i)
    const along = ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / Math.max(run * run, 1e-9)
    if (along > 0 && along < 1 && Math.abs(turn(a, b, p)) / Math.max(run, 1e-9) < 1) return false
  }
  return within(corners, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])
}
