/**
 * Where the next corner goes while a hand draws: to ends and middles that are there, along the axes of the page, at a
 * right angle to the side before or in line with it, along walls of other rooms, at the length of a side before, on a
 * grid. A point wins over lines; two lines give their crossing; one line is kept and the length along it is drawn to
 * what it equals. Every hold is told in words.
 */
import { move, type Point } from '../drawing/room-plan.ts'
import { type Draft, lastHeading } from './draft.ts'
import { turnOf } from './place.ts'
import { nearestOn } from './within.ts'

export interface SnapWall {
  /** Its room and its name. */
  readonly called: string
  readonly from: Point
  readonly to: Point
}

export interface DraftSnap {
  readonly at: Point
  /** What holds, the strongest first. */
  readonly says: readonly string[]
  /** Lines that are exact there, to be drawn. */
  readonly guides: readonly (readonly [Point, Point])[]
  /** It is the first corner: setting it closes the outline. */
  readonly closes: boolean
}

export interface SnapQuestion {
  readonly draft: Draft
  readonly pointer: Point
  readonly walls: readonly SnapWall[]
  /** mm on the plan, from pixels by the view's scale; 0 never holds anything. */
  readonly reach: number
  /** Steps of the grid, mm. */
  readonly grid: number
  /** A direction that was typed: the corner lies on this line, whatever the pointer says. Degrees on the page. */
  readonly heading?: number | null
}

interface Line {
  readonly through: Point
  readonly along: Point
  readonly says: string
  /** Where the line comes from, so that it can be drawn from there. */
  readonly from: Point
}

const distance = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

export function snapDraft(question: SnapQuestion): DraftSnap {
  const { draft, pointer, reach, heading = null } = question
  const last = draft.corners.at(-1)?.at
  if (last !== undefined && heading !== null) return alongTyped(question, last, heading)
  const free: DraftSnap = { at: tidy(pointer), says: [], guides: [], closes: false }
  if (reach <= 0) return free
  const point = nearestPoint(question)
  if (point !== null) return point
  const lines = linesNear(question, last)
  const [first] = lines
  if (first === undefined) return onGrid(question, pointer)
  const second = lines.find(line => Math.abs(cross(line.along, first.along)) > 0.2)
  if (second !== undefined) {
    const at = meeting(first, second)
    if (distance(at, pointer) <= reach * 1.5) {
      return {
        at: tidy(at),
        says: [first.says, second.says],
        guides: [guide(first, at), guide(second, at)],
        closes: false,
      }
    }
  }
  return alongLine(question, last, first)
}

/** To a hundredth of a millimetre: a hand has no finer figures. */
function tidy([x, y]: Point): Point {
  return [Math.round(x * 100) / 100, Math.round(y * 100) / 100]
}

function nearestPoint({ draft, pointer, walls, reach }: SnapQuestion): DraftSnap | null {
  const first = draft.corners[0]?.at
  if (first !== undefined && draft.corners.length > 2 && distance(first, pointer) <= reach * 1.3)
    return { at: first, says: ['the first corner: closes the room'], guides: [], closes: true }
  let best: { readonly at: Point; readonly says: string; readonly away: number } | null = null
  const offer = (at: Point, says: string, handicap: number) => {
    const away = distance(at, pointer)
    if (away > reach) return
    if (best === null || away + handicap < best.away) best = { at, says, away: away + handicap }
  }
  for (const { at } of draft.corners.slice(0, -1)) offer(at, 'a corner of this room', 0)
  for (const { from, to, called } of walls) {
    offer(from, `end of ${called}`, 0)
    offer(to, `end of ${called}`, 0)
    offer([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2], `middle of ${called}`, reach * 0.1)
  }
  const found = best as { readonly at: Point; readonly says: string } | null // set within `offer`, which no compiler sees
  return found === null ? null : { at: found.at, says: [found.says], guides: [], closes: false }
}

const cross = (a: Point, b: Point) => a[0] * b[1] - a[1] * b[0]

/** Lines that pass near the pointer, the nearest first; those of this room before those of others. */
function linesNear({ draft, pointer, walls, reach }: SnapQuestion, last: Point | undefined): readonly Line[] {
  const found: { readonly line: Line; readonly away: number }[] = []
  const offer = (line: Line, handicap: number) => {
    const away = Math.abs(cross(line.along, [pointer[0] - line.through[0], pointer[1] - line.through[1]]))
    if (away <= reach) found.push({ line, away: away + handicap * reach })
  }
  const first = draft.corners[0]?.at
  if (last !== undefined) {
    const heading = lastHeading(draft)
    if (heading !== null) {
      const square = heading % 90 === 0
      offer({ through: last, along: turnOf(heading + 90), from: last, says: 'at a right angle' }, 0)
      offer({ through: last, along: turnOf(heading), from: last, says: 'straight on' }, 0)
      if (!square) {
        offer({ through: last, along: [1, 0], from: last, says: 'level on the page' }, 0.1)
        offer({ through: last, along: [0, 1], from: last, says: 'upright on the page' }, 0.1)
      }
    } else {
      offer({ through: last, along: [1, 0], from: last, says: 'level on the page' }, 0)
      offer({ through: last, along: [0, 1], from: last, says: 'upright on the page' }, 0)
    }
  }
  if (first !== undefined && draft.corners.length > 1) {
    const side = draft.corners[1]?.at ?? first
    const away = distance(first, side)
    const along: Point = [(side[0] - first[0]) / away, (side[1] - first[1]) / away]
    offer({ through: first, along: [-along[1], along[0]], from: first, says: 'square with the first corner' }, 0.2)
    offer({ through: first, along, from: first, says: 'in line with the first side' }, 0.2)
  }
  for (const { from, to, called } of walls) {
    const run = distance(from, to)
    if (run < 1) continue
    // Only near the wall itself, or a building of 600 walls holds everywhere.
    if (nearestOn(from, to, pointer).away > Math.max(run, reach * 8)) continue
    const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
    offer({ through: from, along, from, says: `in line with ${called}` }, 0.3)
  }
  return found.sort((a, b) => a.away - b.away).map(each => each.line)
}

function meeting(a: Line, b: Line): Point {
  const share = cross([b.through[0] - a.through[0], b.through[1] - a.through[1]], b.along) / cross(a.along, b.along)
  return move(a.through, a.along, share)
}

const guide = (line: Line, at: Point): readonly [Point, Point] => [line.from, at]

/** One line holds: along it the corner goes where the side is as long as another, or on a step of the grid. */
function alongLine(question: SnapQuestion, last: Point | undefined, line: Line): DraftSnap {
  const { pointer, reach, grid } = question
  const offset: Point = [pointer[0] - line.through[0], pointer[1] - line.through[1]]
  const share = offset[0] * line.along[0] + offset[1] * line.along[1]
  const at = move(line.through, line.along, share)
  if (last === undefined || distance(line.through, last) > 0.01)
    return { at: tidy(at), says: [line.says], guides: [guide(line, at)], closes: false }
  const equal = equalLength(question, Math.abs(share))
  const stepped = Math.round(Math.abs(share) / grid) * grid
  const run = equal?.length ?? (Math.abs(stepped - Math.abs(share)) <= reach && stepped > 0 ? stepped : Math.abs(share))
  const to = move(line.through, line.along, Math.sign(share) * run)
  const says = equal === null ? [line.says] : [line.says, equal.says]
  return { at: tidy(to), says, guides: [guide(line, to)], closes: false }
}

function equalLength(
  { draft, reach }: SnapQuestion,
  run: number,
): { readonly length: number; readonly says: string } | null {
  let best: { readonly length: number; readonly says: string; readonly away: number } | null = null
  for (let side = 0; side + 1 < draft.corners.length; side += 1) {
    const [a, b] = [draft.corners[side]?.at, draft.corners[side + 1]?.at]
    if (a === undefined || b === undefined) continue
    const length = distance(a, b)
    const away = Math.abs(length - run)
    if (away <= reach && (best === null || away < best.away))
      best = { length, says: `as long as side ${side + 1}`, away }
  }
  return best
}

function onGrid({ pointer, reach, grid }: SnapQuestion, at: Point): DraftSnap {
  const step: Point = [Math.round(pointer[0] / grid) * grid, Math.round(pointer[1] / grid) * grid]
  if (distance(step, pointer) > reach) return { at: tidy(at), says: [], guides: [], closes: false }
  return { at: step, says: ['on the grid'], guides: [], closes: false }
}

/** The direction was typed: the corner lies on its line, the nearest to the pointer, forwards. */
function alongTyped(question: SnapQuestion, last: Point, heading: number): DraftSnap {
  const along = turnOf(heading)
  const { pointer, reach, grid } = question
  const share = Math.max(0, (pointer[0] - last[0]) * along[0] + (pointer[1] - last[1]) * along[1])
  const equal = reach > 0 ? equalLength(question, share) : null
  const stepped = Math.round(share / grid) * grid
  const run = equal?.length ?? (reach > 0 && Math.abs(stepped - share) <= reach ? stepped : share)
  const at = move(last, along, run)
  return { at: tidy(at), says: equal === null ? [] : [equal.says], guides: [[last, at]], closes: false }
}
