/**
 * Which parts of walls look at one another across a room, from the plan as it is: walls at any angle, partitions that
 * stand between. Plan coordinates, mm; faces run from their left to their right end as seen from in front.
 */
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import { facesOf } from '../plan/stands-drawn.ts'
import type { Extent } from './hang-rule.ts'

type Point = readonly [number, number]

export interface FaceEnds {
  readonly face: string
  readonly ends: readonly [Point, Point]
}

/** Walls that turn to each other by more than this from square across look past one another. cos 45° */
const turned = Math.SQRT1_2
/** A strip narrower than this is a corner, not a wall that is looked at. mm */
const strip = 1

/** Faces of a room: its walls, and both sides of the partitions of the show. */
export function facesIn(room: PlanRoomRow): readonly FaceEnds[] {
  const sides = room.partitions.flatMap(partition => facesOf(partition))
  return [...room.walls, ...sides].map(({ face, from, to }) => ({ face, ends: [from, to] }))
}

/**
 * Whether two lengths of walls face each other: from some part of one, looking squarely away from it, the first thing
 * met is the other. The same asked either way round.
 */
export function facingAmong(faces: readonly FaceEnds[]): (a: Extent, b: Extent) => boolean {
  const known = new Map(faces.map(each => [each.face, each.ends] as const))
  return (a, b) => {
    const [one, other] = [known.get(a.face), known.get(b.face)]
    if (one === undefined || other === undefined || a.face === b.face) return false
    const [n, m] = [normalOf(one), normalOf(other)]
    if (n[0] * m[0] + n[1] * m[1] > -turned) return false
    return looksAt(faces, one, a, b) || looksAt(faces, other, b, a)
  }
}

/** Into the room, which lies to the right of the way along its walls. Of length 1. */
function normalOf([from, to]: FaceEnds['ends']): Point {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return [-(to[1] - from[1]) / run, (to[0] - from[0]) / run]
}

function looksAt(faces: readonly FaceEnds[], ends: FaceEnds['ends'], a: Extent, b: Extent): boolean {
  const [from] = ends
  const n = normalOf(ends)
  // Along the face: the normal turned back.
  const u: Point = [n[1], -n[0]]
  const along = ([x, y]: Point) => (x - from[0]) * u[0] + (y - from[1]) * u[1]
  const away = ([x, y]: Point) => (x - from[0]) * n[0] + (y - from[1]) * n[1]
  const seen = faces
    .filter(each => each.face !== a.face)
    .map(({ face, ends: [left, right] }) => ({
      face,
      s: [along(left), along(right)] as const,
      t: [away(left), away(right)] as const,
      length: Math.hypot(right[0] - left[0], right[1] - left[1]),
    }))
  /** How far away a thing is that is met from `s`; null where it is not. */
  const met = ({ s: [s0, s1], t: [t0, t1] }: (typeof seen)[number], s: number): number | null => {
    if (s <= Math.min(s0, s1) || s >= Math.max(s0, s1)) return null
    const t = t0 + ((t1 - t0) * (s - s0)) / (s1 - s0)
    return t > 1e-6 ? t : null
  }
  const target = seen.find(each => each.face === b.face)
  if (target === undefined || target.length === 0) return false
  const edge = (x: number) => target.s[0] + ((target.s[1] - target.s[0]) * x) / target.length
  const cuts = [a.from, a.to, edge(b.from), edge(b.to), ...seen.flatMap(each => each.s), ...crossings(seen)]
    .filter(s => s >= a.from && s <= a.to)
    .sort((p, q) => p - q)
  const [low, high] = [Math.min(edge(b.from), edge(b.to)), Math.max(edge(b.from), edge(b.to))]
  return cuts.some((cut, index) => {
    const next = cuts[index + 1]
    if (next === undefined || next - cut < strip) return false
    const s = (cut + next) / 2
    if (s < low || s > high) return false
    const there = met(target, s)
    return there !== null && seen.every(each => each === target || (met(each, s) ?? Number.POSITIVE_INFINITY) >= there)
  })
}

interface Projected {
  readonly s: readonly [number, number]
  readonly t: readonly [number, number]
}

/** Where two of them cross, along the face that looks: what is in front changes there. */
function crossings(seen: readonly Projected[]): number[] {
  return seen.flatMap((one, index) =>
    seen.slice(index + 1).flatMap(other => {
      const slope = ({ s, t }: Projected) => (t[1] - t[0]) / (s[1] - s[0])
      const [p, q] = [slope(one), slope(other)]
      if (!Number.isFinite(p) || !Number.isFinite(q) || Math.abs(p - q) < 1e-9) return []
      return [(other.t[0] - q * other.s[0] - (one.t[0] - p * one.s[0])) / (p - q)]
    }),
  )
}
