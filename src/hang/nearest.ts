/**
 * The nearest move that brings every mark of a work onto stud or backing and out of every conflict: the whole work along
 * the wall, its hooks closer or wider where the method leaves that free, or both where neither is enough. The rule it
 * keeps: an offer has been worked through the marks again, and none is made that does not hold there.
 */
import { Refusal } from '../contract/refusal.ts'
import type { Rect } from '../geometry/rect.ts'
import { distanceToPoint, right } from '../geometry/rect.ts'
import { forbiddenAlong, keepsOf, nearestFree, roomAlong, type Stretch } from '../layout/shifts.ts'
import { markConflicts, SERVED } from './mark-checks.ts'
import { marksFor } from './marks.ts'
import type { MarksAnswer, MarksQuestion } from './marks-shape.ts'
import type { Offer, Offers } from './nearest-shape.ts'
import { openingsFor } from './niche.ts'
import { defaultHangRules } from './rules.ts'
import type { WallFacts } from './wall.ts'
import { bends, ceilingAt, floorAt, HALF_STUD, studsBetween } from './wall.ts'

/** A hole is clear of the thing itself by this, mm; its edge is still the thing. */
const OFF_EDGE = 0.1
/** Methods whose hooks or nails may stand closer or wider. */
const FREE: readonly string[] = ['wire', 'stretcher-bar']
const SAME = 1e-6

/**
 * Offers for one work among `others` on its wall, cheapest first; none where no mark is in conflict (`clear`) or where
 * nothing helps. A shift is exact along the wall (union of forbidden stretches), a spacing is tried millimetre by
 * millimetre. Cost: mm moved plus mm between the hooks. Refuses what `marksFor` refuses.
 */
export function nearestMoves(question: MarksQuestion, others: readonly Rect[] = []): Offers {
  const now = marksFor(question)
  const conflicts = codesOf(now).filter(code => markConflicts.has(code))
  if (conflicts.length === 0) return { clear: true, conflicts: [], offers: [] }
  const spread = spreadOf(now)
  const free = FREE.includes(now.method) && spread !== null
  const shift = shiftFor(question, now, others)
  const alone = shift === null ? [] : [offered(question, others, now, shift, null)]
  const spacing = free ? nearestSpacing(question, now, spread, others) : null
  const spaced = spacing === null ? [] : [offered(question, others, now, 0, spacing)]
  const both = free && alone.length + spaced.length === 0 ? bothMoved(question, now, spread, others) : []
  return { clear: false, conflicts, offers: [...alone, ...spaced, ...both].sort((a, b) => a.cost - b.cost) }
}

function codesOf(answer: MarksAnswer): readonly string[] {
  return [...new Set(answer.findings.filter(found => found.severity !== 'fits').map(found => found.code))]
}

/** Between the outer holes that carry; null with fewer than two. */
function spreadOf({ marks }: MarksAnswer): number | null {
  const holes = marks.filter(mark => mark.does === 'carries' && mark.on === 'wall').map(mark => mark.hole.x)
  return holes.length < 2 ? null : Math.max(...holes) - Math.min(...holes)
}

function rectOf({ work, centre }: MarksQuestion): Rect {
  const { width, height } = work
  return { x: centre.x - width / 2, y: centre.y - height / 2, width, height }
}

function movedBy(question: MarksQuestion, dx: number, hooksApart: number | null): MarksQuestion {
  const { centre } = question
  return {
    ...question,
    centre: { x: centre.x + dx, y: centre.y },
    ...(hooksApart === null ? {} : { hooksApart }),
  }
}

/** The nearest shift along that leaves no mark and not the work itself in conflict; null if none does. */
function shiftFor(question: MarksQuestion, now: MarksAnswer, others: readonly Rect[]): number | null {
  const { wall } = question
  const rect = rectOf(question)
  const fromEnd = question.rules?.markFromEnd ?? defaultHangRules.markFromEnd
  const beside = question.rules?.besideService ?? defaultHangRules.besideService
  const holes = now.marks.filter(mark => mark.on === 'wall')
  const room = roomAlong(rect, wall)
  const least = Math.max(room.from, ...holes.map(mark => fromEnd - mark.hole.x))
  const most = Math.min(room.to, ...holes.map(mark => wall.length - fromEnd - mark.hole.x))
  const bare = holes.filter(mark => mark.backed !== true && mark.fixing.ratedKg === null)
  const stretches = [
    ...keepsOf(rect, wall, others).flatMap(keep => forbiddenAlong(rect, keep)),
    ...holes.flatMap(mark => againstHole(mark.hole, { ...wall, openings: openingsFor(rect, wall) }, fromEnd, beside)),
    ...bare.flatMap(mark => (mark.backed === null && mark.toStud === null ? [] : offStuds(mark.hole.x, wall))),
  ]
  const shift = nearestFree(stretches, least, most)
  if (shift === null) return null
  return holds(movedBy(question, shift, null)) ? shift : null
}

/** Nothing of a mark's is in conflict any more, worked through the marks. */
function holds(question: MarksQuestion): boolean {
  return codesOf(marksFor(question)).every(code => !markConflicts.has(code))
}

/** Shifts of one hole that bring it on what must stay clear, near a joint, into skirting, floor or ceiling. */
function againstHole(
  { x, y }: { readonly x: number; readonly y: number },
  wall: WallFacts,
  fromEnd: number,
  beside: number,
): readonly Stretch[] {
  const found: Stretch[] = []
  const across = (rect: Rect, wide: number) => found.push({ from: rect.x - wide - x, to: right(rect) + wide - x })
  for (const opening of wall.openings) {
    if (distanceToPoint(opening, { x: opening.x, y }) === 0) across(opening, OFF_EDGE)
  }
  for (const item of wall.keepClears) {
    const up = distanceToPoint(item, { x: item.x, y })
    if (up < item.margin) across(item, Math.max(Math.sqrt(item.margin ** 2 - up ** 2), up === 0 ? OFF_EDGE : 0))
    else if (up === 0) across(item, OFF_EDGE)
    if (SERVED.includes(item.kind)) across(item, beside + OFF_EDGE)
  }
  for (const joint of wall.joints ?? []) found.push({ from: joint - fromEnd - x, to: joint + fromEnd - x })
  const ends = bends([...wall.floor, ...(wall.ceiling ?? [])], 0, wall.length)
  const low = (at: number) => floorAt(wall.floor, at) + (wall.skirting ?? 0) - y
  const high = (at: number) => y - ceilingAt(wall, at)
  ends.forEach((end, index) => {
    const begin = ends[index - 1]
    if (begin === undefined || end - begin < SAME) return
    for (const over of [low, high]) {
      const stretch = whereAbove(over, begin, end)
      if (stretch !== null) found.push({ from: stretch.from - x, to: stretch.to - x })
    }
  })
  return found
}

/** Where a straight line between two places is above 0; null where it is nowhere. */
function whereAbove(line: (at: number) => number, begin: number, end: number): Stretch | null {
  const [a, b] = [line(begin), line(end)]
  if (a <= SAME && b <= SAME) return null
  const cross = begin + ((end - begin) * a) / (a - b)
  if (a > SAME && b > SAME) return { from: begin, to: end }
  return a > SAME ? { from: begin, to: cross } : { from: cross, to: end }
}

/** Shifts of one hole that leave it between studs. */
function offStuds(x: number, wall: WallFacts): readonly Stretch[] {
  const found: Stretch[] = []
  let from = Number.NEGATIVE_INFINITY
  for (const stud of studsBetween(wall, 0, wall.length)) {
    if (stud - HALF_STUD - x > from) found.push({ from, to: stud - HALF_STUD - x })
    from = stud + HALF_STUD - x
  }
  return [...found, { from, to: Number.POSITIVE_INFINITY }]
}

/** Spacings from the nearest to today's outwards, whole millimetres. */
function spacingsFrom(spread: number, width: number): readonly number[] {
  return Array.from({ length: Math.max(0, Math.ceil(width) - 1) }, (_, index) => index + 1).sort(
    (a, b) => Math.abs(a - spread) - Math.abs(b - spread) || a - b,
  )
}

/** The answer at another spacing; null where the method refuses it or it brings something new that speaks against it. */
function atSpacing(question: MarksQuestion, now: MarksAnswer, apart: number): MarksAnswer | null {
  try {
    const answer = marksFor(movedBy(question, 0, apart))
    const known = new Set(codesOf(now))
    return codesOf(answer).every(code => known.has(code) || markConflicts.has(code)) ? answer : null
  } catch (error) {
    if (error instanceof Refusal) return null
    throw error
  }
}

/** The nearest spacing that clears every mark where the work stands; null if none does, or if the work itself is in the way. */
function nearestSpacing(
  question: MarksQuestion,
  now: MarksAnswer,
  spread: number,
  others: readonly Rect[],
): number | null {
  const rect = rectOf(question)
  const blocked = keepsOf(rect, question.wall, others).some(keep =>
    forbiddenAlong(rect, keep).some(({ from, to }) => from < -SAME && to > SAME),
  )
  if (blocked) return null
  for (const apart of spacingsFrom(spread, question.work.width)) {
    const answer = atSpacing(question, now, apart)
    if (answer !== null && codesOf(answer).every(code => !markConflicts.has(code))) return apart
  }
  return null
}

/** The cheapest shift with another spacing: spacings are tried outwards until they alone cost more than the best. */
function bothMoved(
  question: MarksQuestion,
  now: MarksAnswer,
  spread: number,
  others: readonly Rect[],
): readonly Offer[] {
  let best: Offer | null = null
  for (const apart of spacingsFrom(spread, question.work.width)) {
    if (best !== null && Math.abs(apart - spread) >= best.cost) break
    const answer = atSpacing(question, now, apart)
    if (answer === null) continue
    const shift = shiftFor(movedBy(question, 0, apart), answer, others)
    if (shift === null) continue
    const offer = offered(question, others, now, shift, apart)
    if (best === null || offer.cost < best.cost) best = offer
  }
  return best === null ? [] : [best]
}

function offered(
  question: MarksQuestion,
  others: readonly Rect[],
  now: MarksAnswer,
  dx: number,
  hooksApart: number | null,
): Offer {
  const spread = spreadOf(now) ?? 0
  const rect = rectOf(question)
  const middle = question.centre.x
  const before = Math.max(0, ...others.filter(one => one.x + one.width / 2 < middle).map(right))
  const after = Math.min(
    question.wall.length,
    ...others.filter(one => one.x + one.width / 2 >= middle).map(one => one.x),
  )
  const left = rect.x - before
  const rightGap = after - right(rect)
  return {
    dx,
    hooksApart,
    hooksWere: hooksApart === null ? null : spread,
    cost: Math.abs(dx) + (hooksApart === null ? 0 : Math.abs(hooksApart - spread)),
    gapLeft: { was: left, becomes: left + dx },
    gapRight: { was: rightGap, becomes: rightGap - dx },
  }
}
