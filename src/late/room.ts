/**
 * Whether works have room where an offer puts them: on the wall, clear of what must stay clear, and of each other. What
 * was wrong before the change is not this change's fault, as long as it gets no worse.
 */
import { clearances, overlap, right, top } from '../geometry/rect.ts'
import { openingsFor } from '../hang/niche.ts'
import { highestFloor, lowestCeiling } from '../hang/wall.ts'
import { insideMargin } from '../layout/shifts.ts'
import type { LateQuestion } from './late-shape.ts'
import type { Placed } from './row.ts'

const SLACK = 1e-6

/** Why works have no room, in words; empty where they have. Looks only at what was touched. `were` is today, by work. */
export function whyNoRoom(
  rects: readonly Placed[],
  touched: ReadonlySet<string>,
  question: LateQuestion,
  were: ReadonlyMap<string, Placed>,
): string {
  for (const rect of rects) {
    if (!touched.has(rect.id)) continue
    const what = barredBy(rect, rects, question, were)
    if (what !== '') return `${nameOf(question, rect.id)} would ${what}`
  }
  return ''
}

function nameOf({ works, change }: LateQuestion, id: string): string {
  if (change.kind === 'replace' && change.by.id === id) return change.by.name
  return works.find(work => work.id === id)?.name ?? ''
}

function barredBy(
  rect: Placed,
  rects: readonly Placed[],
  question: LateQuestion,
  were: ReadonlyMap<string, Placed>,
): string {
  const { wall, leastGap, leastMargin } = question
  const was = were.get(rect.id)
  /** How far beyond a bound it stands, now and before: more than before is this change's fault. */
  const worse = (by: (one: Placed) => number) => {
    const now = by(rect)
    return now > SLACK && (was === undefined || now > by(was) + SLACK)
  }
  if (worse(one => Math.max(leastMargin - one.x, one.x + one.width - (wall.length - leastMargin))))
    return 'stand too near the end of the wall'
  const above = (one: Placed) => one.y - highestFloor(wall, one.x, right(one))
  if (worse(one => -above(one))) return 'run into the floor'
  const skirting = wall.skirting ?? 0
  if (worse(one => skirting - above(one))) return 'come down over the skirting'
  if (worse(one => top(one) - lowestCeiling(wall, one.x, right(one)))) return 'run into the ceiling'
  for (const opening of openingsFor(rect, wall)) {
    if (overlap(rect, opening) && !(was !== undefined && overlap(was, opening))) return 'cover an opening'
  }
  for (const item of wall.keepClears) {
    if (worse(one => insideMargin(one, item))) return 'come nearer to what must stay clear'
  }
  for (const other of rects) {
    if (other.id === rect.id) continue
    const clear = apart(rect, other)
    if (clear >= leastGap - SLACK) continue
    const otherWas = were.get(other.id)
    const before = was === undefined || otherWas === undefined ? Number.POSITIVE_INFINITY : apart(was, otherWas)
    if (clear < before - SLACK) return `come too near to ${nameOf(question, other.id)}`
  }
  return ''
}

/** Clear distance between two works; less than nothing where they overlap. */
function apart(a: Placed, b: Placed): number {
  const { dx, dy } = clearances(a, b)
  return dx < 0 && dy < 0 ? Math.max(dx, dy) : Math.hypot(Math.max(0, dx), Math.max(0, dy))
}
