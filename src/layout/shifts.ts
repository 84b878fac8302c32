/** The smallest single shift that takes a work, or a whole hang, out of what must stay clear. */
import type { Rect } from '../geometry/rect.ts'
import { clearances, clearDistance, right, top } from '../geometry/rect.ts'
import { nicheOf, openingsFor } from '../hang/niche.ts'
import type { KeepClear, WallFacts } from '../hang/wall.ts'
import { highestFloor, lowestCeiling } from '../hang/wall.ts'

const SLACK = 1e-6

/** How far a work stands inside the margin: 0 clear, the margin and more where the thing itself is covered. */
export function insideMargin(rect: Rect, item: KeepClear): number {
  const { dx, dy } = clearances(rect, item)
  if (dx < 0 && dy < 0) return item.margin - Math.max(dx, dy)
  return Math.max(0, item.margin - clearDistance(rect, item))
}

/** Clear distance needed in one direction when the other already gives `other`; corners are measured straight across. */
function needed(margin: number, other: number): number {
  const across = Math.max(0, other)
  return across >= margin ? 0 : Math.sqrt(margin * margin - across * across)
}

/** Shifts that would bring a conflict; both ends are just free of it. */
export interface Stretch {
  readonly from: number
  readonly to: number
}

/** What a rectangle must keep clear of, with the margin; 0 may touch. */
export type Keep = Rect & { readonly margin: number }

/** Of one work, which stays in the niche that it hangs in. */
export function keepsOf(work: Rect, wall: WallFacts, others: readonly Rect[]): readonly Keep[] {
  return [...wall.keepClears, ...[...openingsFor(work, wall), ...others].map(rect => ({ ...rect, margin: 0 }))]
}

/** How far a work may go to either side: to the ends of the wall, or to the sides of its niche. */
export function roomAlong(work: Rect, wall: WallFacts): Stretch {
  const niche = nicheOf(work, wall)
  const [left, end] = niche === null ? [0, wall.length] : [niche.x, right(niche)]
  return { from: left - work.x, to: end - right(work) }
}

/** Shifts along that would bring a rectangle inside a margin; one stretch, none where it passes above or below. mm. */
export function forbiddenAlong(rect: Rect, keep: Keep): readonly Stretch[] {
  const { dy } = clearances(rect, keep)
  if (dy >= keep.margin - SLACK) return []
  const along = needed(keep.margin, dy)
  return [{ from: keep.x - along - right(rect), to: right(keep) + along - rect.x }]
}

/** Shifts up that would bring a rectangle inside a margin; one stretch, none where it passes beside. mm. */
export function forbiddenUp(rect: Rect, keep: Keep): readonly Stretch[] {
  const { dx } = clearances(rect, keep)
  if (dx >= keep.margin - SLACK) return []
  const up = needed(keep.margin, dx)
  return [{ from: keep.y - up - top(rect), to: top(keep) + up - rect.y }]
}

/** The shift nearest to none, from `least` to `most`, that lies in no stretch; null if there is none. */
export function nearestFree(stretches: readonly Stretch[], least: number, most: number): number | null {
  const sorted = [...stretches].sort((a, b) => a.from - b.from)
  const merged: { from: number; to: number }[] = []
  for (const { from, to } of sorted) {
    const last = merged.at(-1)
    if (last !== undefined && from < last.to - SLACK) last.to = Math.max(last.to, to)
    else merged.push({ from, to })
  }
  const allowed = (shift: number) =>
    shift >= least - SLACK &&
    shift <= most + SLACK &&
    merged.every(each => shift <= each.from + SLACK || shift >= each.to - SLACK)
  const candidates = [0, least, most, ...merged.flatMap(each => [each.from, each.to])]
  return candidates.sort((a, b) => Math.abs(a) - Math.abs(b)).find(allowed) ?? null
}

/** The smallest shift of one work alone, straight along or straight up or down, that leaves no conflict; null if none does. */
export function smallestShift(
  rect: Rect,
  wall: WallFacts,
  others: readonly Rect[],
): { readonly dx: number; readonly dy: number } | null {
  const keeps = keepsOf(rect, wall, others)
  const room = roomAlong(rect, wall)
  const along = nearestFree(
    keeps.flatMap(keep => forbiddenAlong(rect, keep)),
    room.from,
    room.to,
  )
  const niche = nicheOf(rect, wall)
  const low = niche?.y ?? highestFloor(wall, rect.x, right(rect))
  const high = niche === null ? lowestCeiling(wall, rect.x, right(rect)) : top(niche)
  const up = nearestFree(
    keeps.flatMap(keep => forbiddenUp(rect, keep)),
    low - rect.y,
    high - top(rect),
  )
  if (along === null) return up === null ? null : { dx: 0, dy: up }
  return up === null || Math.abs(along) <= Math.abs(up) ? { dx: along, dy: 0 } : { dx: 0, dy: up }
}

/** The smallest shift of all works together along the wall that leaves no conflict with the wall; null if none does. */
export function smallestGroupShift(rects: readonly Rect[], wall: WallFacts): number | null {
  const rooms = rects.map(rect => roomAlong(rect, wall))
  return nearestFree(
    rects.flatMap(rect => keepsOf(rect, wall, []).flatMap(keep => forbiddenAlong(rect, keep))),
    Math.max(...rooms.map(({ from }) => from)),
    Math.min(...rooms.map(({ to }) => to)),
  )
}
