/**
 * A work that lies wholly within the edges of a niche hangs at its back: the niche is no hole in the wall for it, but
 * the wall that it hangs on, with sides, a top and a depth of its own. Partly over its edge it hangs on nothing.
 */
import type { Rect } from '../geometry/rect.ts'
import { right, top } from '../geometry/rect.ts'
import type { Opening, WallFacts } from './wall.ts'

/** Last digits of a computation, mm. */
const SLACK = 1e-6

/** The niche that a work hangs in; null where it hangs on the wall itself. */
export function nicheOf(work: Rect, { openings }: Pick<WallFacts, 'openings'>): Opening | null {
  const holds = (niche: Opening) =>
    work.x >= niche.x - SLACK &&
    right(work) <= right(niche) + SLACK &&
    work.y >= niche.y - SLACK &&
    top(work) <= top(niche) + SLACK
  return openings.find(opening => opening.kind === 'niche' && holds(opening)) ?? null
}

/** Openings that are in the way of a work: all but the niche that it hangs in. */
export function openingsFor(work: Rect, wall: Pick<WallFacts, 'openings'>): readonly Opening[] {
  const niche = nicheOf(work, wall)
  return niche === null ? wall.openings : wall.openings.filter(opening => opening !== niche)
}
