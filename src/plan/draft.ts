/**
 * A room while it is drawn: corners set one after another, each by the hand or by a length and an angle that were
 * typed, until the outline comes back to its first corner. Pure: every step gives the next state or says in a sentence
 * why not, and what was drawn so far stays.
 *
 * The angle that is typed is the corner between the side before and the new one, as a gauge reads it with the room at
 * the right: 90 turns to the right, 270 (or −90) to the left. For the first side it is the way on the page instead:
 * 0 to the right, 90 down.
 */
import type { Point } from '../drawing/room-plan.ts'
import { cornerBounds } from '../model/corner.ts'
import { areaOf } from './outline-shape.ts'
import { type Place, turnOf, wholeTurn } from './place.ts'

export interface DraftCorner {
  readonly at: Point
  /** What was typed for the side that ends here; empty where the hand set it. */
  readonly lengthText: string
}

export interface Draft {
  readonly corners: readonly DraftCorner[]
}

export const emptyDraft: Draft = { corners: [] }

export type Step = { readonly ok: true; readonly draft: Draft } | { readonly ok: false; readonly problem: string }

/** Two corners nearer than this are one, mm. A side that short is a slip of the hand. */
export const SHORTEST = 1

/** Degrees clockwise on the page, from a to b. */
export function headingOf(a: Point, b: Point): number {
  return wholeTurn((Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI)
}

/** The way the last side runs; null before there is one. */
export function lastHeading({ corners }: Draft): number | null {
  const [a, b] = [corners.at(-2), corners.at(-1)]
  return a === undefined || b === undefined ? null : headingOf(a.at, b.at)
}

/** The way of a side that leaves the last corner at this angle. */
export function headingBy(draft: Draft, corner: number): number {
  const last = lastHeading(draft)
  return wholeTurn(last === null ? corner : last + 180 - corner)
}

/** The angle at the last corner, should the next side run to this point. */
export function cornerTo(draft: Draft, to: Point): number | null {
  const end = draft.corners.at(-1)
  if (end === undefined) return null
  const heading = headingOf(end.at, to)
  const last = lastHeading(draft)
  return last === null ? heading : wholeTurn(180 - (heading - last))
}

export function pointBy(from: Point, heading: number, length: number): Point {
  const [cos, sin] = turnOf(heading)
  return [round(from[0] + cos * length), round(from[1] + sin * length)]
}

const round = (mm: number) => Math.round(mm * 1e4) / 1e4

/** Sets the next corner. Refuses one on the last, and a side that crosses or runs back over another. */
export function addCorner(draft: Draft, at: Point, lengthText = ''): Step {
  const last = draft.corners.at(-1)
  if (last === undefined) return { ok: true, draft: { corners: [{ at, lengthText: '' }] } }
  if (Math.hypot(at[0] - last.at[0], at[1] - last.at[1]) < SHORTEST)
    return { ok: false, problem: 'That is the corner before. A wall needs a length; type it, or go further.' }
  const crossed = crossing(draft.corners, last.at, at, false)
  if (crossed !== null) return { ok: false, problem: crossed }
  return { ok: true, draft: { corners: [...draft.corners, { at, lengthText }] } }
}

export function takeBack({ corners }: Draft): Draft {
  return { corners: corners.slice(0, -1) }
}

export interface Drawn {
  readonly walls: readonly { readonly length: number; readonly lengthText: string; readonly angle: number }[]
  readonly place: Place
  /** Corners in the building, clockwise, one a wall. */
  readonly corners: readonly Point[]
}

export type Closed = { readonly ok: true; readonly drawn: Drawn } | { readonly ok: false; readonly problem: string }

/**
 * Closes the outline with a last side to the first corner, for which `lastText` was typed. Walls come out clockwise, whichever way it was drawn, with
 * their lengths and the interior angle at each right end; the place makes `room.add` of them stand where it was drawn.
 */
export function close(draft: Draft, lastText = ''): Closed {
  const { corners } = draft
  const [first, last] = [corners[0], corners.at(-1)]
  if (first === undefined || last === undefined || corners.length < 3)
    return { ok: false, problem: 'A room has three walls or more. Set another corner first.' }
  const crossed = crossing(corners, last.at, first.at, true)
  if (crossed !== null) return { ok: false, problem: crossed }
  const points = corners.map(corner => corner.at)
  const area = areaOf(points)
  if (Math.abs(area) < SHORTEST * SHORTEST) return { ok: false, problem: 'This outline has no floor inside it.' }
  // Side i runs from corner i to the next; turned round, side i is the one that ended at corner i.
  const texts = corners.map((_, at) => corners[at + 1]?.lengthText ?? lastText)
  const turned = area < 0
  const round = turned ? [...points.slice(0, 1), ...points.slice(1).reverse()] : points
  const typed = turned ? [...texts].reverse() : texts
  return { ok: true, drawn: wallsOf(round, typed) }
}

function wallsOf(points: readonly Point[], texts: readonly string[]): Drawn {
  const headings = points.map((at, index) => headingOf(at, points[(index + 1) % points.length] ?? at))
  const walls = points.map((at, index) => {
    const next = points[(index + 1) % points.length] ?? at
    const turn = (headings[(index + 1) % points.length] ?? 0) - (headings[index] ?? 0)
    return {
      length: rounded(Math.hypot(next[0] - at[0], next[1] - at[1]), 1e3),
      lengthText: texts[index] ?? '',
      angle: rounded(wholeTurn(180 - turn), 1e4),
    }
  })
  return { walls, corners: points, place: { at: points[0] ?? [0, 0], turn: headings[0] ?? 0 } }
}

const rounded = (value: number, parts: number) => Math.round(value * parts) / parts

/** A sentence where the side from a to b meets one of the others; null where it is free. */
function crossing(corners: readonly DraftCorner[], a: Point, b: Point, closes: boolean): string | null {
  for (let at = 0; at + 1 < corners.length; at += 1) {
    const [p, q] = [corners[at]?.at, corners[at + 1]?.at]
    if (p === undefined || q === undefined) continue
    const before = at + 2 === corners.length
    const first = closes && at === 0
    const meets = before ? foldsBack(q, p, b) : first ? foldsBack(p, q, a) : sidesMeet(p, q, a, b)
    if (!meets) continue
    return before || first
      ? `This side would run back over side ${at + 1}. Choose another angle.`
      : `This side would cross side ${at + 1}. Go round it, or take a corner back.`
  }
  return null
}

/** Two sides that leave one corner in the same direction lie over one another. */
function foldsBack(corner: Point, p: Point, q: Point): boolean {
  const [ax, ay, bx, by] = [p[0] - corner[0], p[1] - corner[1], q[0] - corner[0], q[1] - corner[1]]
  const angle = Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * (180 / Math.PI)
  return angle < cornerBounds.least
}

/** Whether two stretches touch or cross. */
function sidesMeet(p: Point, q: Point, a: Point, b: Point): boolean {
  const side = (o: Point, u: Point, v: Point) => {
    const value = (u[0] - o[0]) * (v[1] - o[1]) - (u[1] - o[1]) * (v[0] - o[0])
    // Within a hundredth of a millimetre of the line it lies on it.
    return Math.abs(value) < 0.01 * Math.hypot(u[0] - o[0], u[1] - o[1]) ? 0 : Math.sign(value)
  }
  const [s1, s2, s3, s4] = [side(p, q, a), side(p, q, b), side(a, b, p), side(a, b, q)]
  if (s1 !== s2 && s3 !== s4) return true
  const on = (u: Point, v: Point, w: Point) =>
    Math.min(u[0], v[0]) <= w[0] + 0.01 &&
    w[0] <= Math.max(u[0], v[0]) + 0.01 &&
    Math.min(u[1], v[1]) <= w[1] + 0.01 &&
    w[1] <= Math.max(u[1], v[1]) + 0.01
  return (
    (s1 === 0 && on(p, q, a)) || (s2 === 0 && on(p, q, b)) || (s3 === 0 && on(a, b, p)) || (s4 === 0 && on(a, b, q))
  )
}
