/**
 * What something takes up of the floor: convex outlines in room-local millimetres, and how two of them or one and the
 * room's outline are to each other. What is round is taken with 48 sides about it, so that nothing is missed; it is at
 * most 0.3 % too large.
 */
import type { Point } from '../drawing/room-plan.ts'
import { pointAlong, solidStretches } from '../drawing/stretches.ts'
import { within } from './outline-shape.ts'
import type { Ends } from './partition.ts'
import { turnOf } from './place.ts'

/** A thing by its middle; width across and depth before they are turned, in degrees clockwise on the page. */
export interface Thing {
  readonly x: number
  readonly y: number
  readonly turn: number
  readonly width: number
  readonly depth: number
  readonly round: boolean
}

const SIDES = 48

export function footprintOf({ x, y, turn, width, depth, round }: Thing): readonly Point[] {
  const [cos, sin] = turnOf(turn)
  const put = ([u, v]: Point): Point => [x + cos * u - sin * v, y + sin * u + cos * v]
  const [w, d] = [width / 2, depth / 2]
  if (!round) {
    const corners: readonly Point[] = [
      [-w, -d],
      [w, -d],
      [w, d],
      [-w, d],
    ]
    return corners.map(put)
  }
  const about = 1 / Math.cos(Math.PI / SIDES)
  return Array.from({ length: SIDES }, (_, at) => {
    const angle = (2 * Math.PI * (at + 0.5)) / SIDES
    return put([w * about * Math.cos(angle), d * about * Math.sin(angle)])
  })
}

/** How far a thing reaches either way from its middle along a direction of length 1. */
export function halfAlong({ turn, width, depth, round }: Thing, [ux, uy]: Point): number {
  const [cos, sin] = turnOf(turn)
  const [w, d] = [(width / 2) * (cos * ux + sin * uy), (depth / 2) * (cos * uy - sin * ux)]
  return round ? Math.hypot(w, d) : Math.abs(w) + Math.abs(d)
}

/** A band along two ends, half of its thickness to either side. */
export function bandOf([from, to]: Ends, thickness: number): readonly Point[] {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const [nx, ny] = [(-(to[1] - from[1]) / run) * (thickness / 2), ((to[0] - from[0]) / run) * (thickness / 2)]
  return [
    [from[0] - nx, from[1] - ny],
    [to[0] - nx, to[1] - ny],
    [to[0] + nx, to[1] + ny],
    [from[0] + nx, from[1] + ny],
  ]
}

/** A partition by its two ends, and what goes through it from the left end of its face a. */
export interface Band {
  readonly from: Point
  readonly to: Point
  readonly length: number
  readonly thickness: number
  readonly openings: readonly { readonly kind: string; readonly x: number; readonly width: number }[]
}

/** What stands of a partition between its openings, four corners each. */
export function solidBands(partition: Band): readonly (readonly Point[])[] {
  return solidStretches(partition.length, partition.openings).map(([from, to]) =>
    bandOf([pointAlong(partition, from), pointAlong(partition, to)], partition.thickness),
  )
}

/**
 * By how much two convex outlines overlap: the least way that parts them; 0 where they touch or are apart. By the
 * separating axes: two convex shapes are apart where a line along a side of either has them on its two sides.
 */
export function overlapBy(a: readonly Point[], b: readonly Point[]): number {
  let least = Infinity
  for (const shape of [a, b]) {
    for (const [index, [ax, ay]] of shape.entries()) {
      const [bx, by] = shape[(index + 1) % shape.length] ?? [ax, ay]
      const run = Math.hypot(bx - ax, by - ay)
      if (run === 0) continue
      const axis: Point = [(by - ay) / run, (ax - bx) / run]
      const [p, q] = [shadowOf(a, axis), shadowOf(b, axis)]
      const over = Math.min(p.high - q.low, q.high - p.low)
      if (over <= 0) return 0
      least = Math.min(least, over)
    }
  }
  return least === Infinity ? 0 : least
}

function shadowOf(shape: readonly Point[], [ux, uy]: Point): { readonly low: number; readonly high: number } {
  let [low, high] = [Infinity, -Infinity]
  for (const [x, y] of shape) {
    const at = x * ux + y * uy
    low = Math.min(low, at)
    high = Math.max(high, at)
  }
  return { low, high }
}

export interface Outside {
  readonly by: number
  /** Place of the side of the outline that is nearest to what lies farthest out. */
  readonly side: number
}

/**
 * How far a shape reaches out of a room's outline, and past which of its sides; null where it is within. Each side of
 * the shape is cut where it crosses the outline: the pieces lie wholly in or out.
 */
export function outsideOf(shape: readonly Point[], outline: readonly Point[]): Outside | null {
  let worst: Outside | null = null
  for (const [index, a] of shape.entries()) {
    const b = shape[(index + 1) % shape.length] ?? a
    const cuts = [0, ...crossings(a, b, outline), 1].sort((p, q) => p - q)
    for (const [at, from] of cuts.slice(0, -1).entries()) {
      const to = cuts[at + 1] ?? 1
      if (to - from < 1e-9 || within(outline, between(a, b, (from + to) / 2))) continue
      for (const share of [from, (from + to) / 2, to]) {
        const near = nearestSide(between(a, b, share), outline)
        if (worst === null || near.by > worst.by) worst = near
      }
    }
  }
  return worst
}

function between(a: Point, b: Point, share: number): Point {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]
}

/** Shares of the way from a to b at which it crosses a side of the outline. */
function crossings(a: Point, b: Point, outline: readonly Point[]): number[] {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  return outline.flatMap((c, index) => {
    const d = outline[(index + 1) % outline.length] ?? c
    const [ex, ey] = [d[0] - c[0], d[1] - c[1]]
    const cross = dx * ey - dy * ex
    if (Math.abs(cross) < 1e-12) return []
    const share = ((c[0] - a[0]) * ey - (c[1] - a[1]) * ex) / cross
    const on = ((c[0] - a[0]) * dy - (c[1] - a[1]) * dx) / cross
    return share > 0 && share < 1 && on >= 0 && on <= 1 ? [share] : []
  })
}

/** The side of an outline that a point is nearest to, and how far it is. */
export function nearestSide([x, y]: Point, outline: readonly Point[]): Outside {
  let best: Outside = { by: Infinity, side: 0 }
  for (const [side, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(side + 1) % outline.length] ?? [ax, ay]
    const square = (bx - ax) ** 2 + (by - ay) ** 2
    const share = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
    const away = Math.hypot(x - ax - share * (bx - ax), y - ay - share * (by - ay))
    if (away < best.by) best = { by: away, side }
  }
  return best
}
