/**
 * The way of a box through several doors and lifts: of all ways that a plan knows the one whose worst passage is best, of
 * those the one through fewest, of those the one that leaves most to spare. Millimetres, as in `fit.ts`.
 */
import { type Box, type Fit, fitsDoorway, fitsLift, overDoorway, overLift, rankOf, spareOf } from './fit.ts'

/** A doorway or a lift between two grounds, which are rooms or what lies beyond them. `depth` is of a lift alone. */
export interface Passage {
  readonly kind: 'door' | 'lift'
  readonly words: string
  readonly ends: readonly [string, string]
  readonly width: number
  readonly height: number
  readonly depth: number | null
}

export interface Passed {
  readonly passage: Passage
  readonly fit: Fit
  /** How much too large the box is, held straight; 0 where it passes so. */
  readonly over: number
  /** How much larger it could be and still pass as it does. */
  readonly spare: number
}

/** `through`: in the order of the way; empty where it begins where it ends. `tightest`: null there. */
export interface CarryWay {
  readonly through: readonly Passed[]
  readonly tightest: Passed | null
}

export function passedBy(box: Box, passage: Passage): Passed {
  const { width, height, depth } = passage
  const cabin = { width, height, depth: depth ?? 0 }
  const tell = (of: Box) => (passage.kind === 'lift' ? fitsLift(of, cabin) : fitsDoorway(of, passage))
  const over = passage.kind === 'lift' ? overLift(box, cabin) : overDoorway(box, passage)
  return { passage, fit: tell(box), over, spare: spareOf(box, tell) }
}

/** Worse passages last; two are alike where neither is. */
const byWorth = (a: Passed, b: Passed) => rankOf(a.fit) - rankOf(b.fit) || (a.fit === 'no' ? a.over - b.over : 0)
/** How tight it is, tightest last. */
const byTightness = (a: Passed, b: Passed) => byWorth(a, b) || b.spare - a.spare

/** From any of these grounds to any of those; null where no passages join them. */
export function carryWay(
  box: Box,
  passages: readonly Passage[],
  from: readonly string[],
  to: readonly string[],
): CarryWay | null {
  if (from.some(ground => to.includes(ground))) return { through: [], tightest: null }
  const all = passages.map(passage => passedBy(box, passage)).sort(byWorth)
  // Each step lets the next worse ones in, so that the first way found has the best worst passage.
  for (const [at, worst] of all.entries()) {
    const next = all[at + 1]
    if (next !== undefined && byWorth(worst, next) === 0) continue
    const through = fewest(all.slice(0, at + 1), from, to)
    if (through !== null) return { through, tightest: [...through].sort(byTightness).at(-1) ?? null }
  }
  return null
}

interface Reached {
  readonly through: readonly Passed[]
  readonly spare: number
}

/** Ring by ring; within a ring each ground keeps the way that leaves most to spare. */
function fewest(passages: readonly Passed[], from: readonly string[], to: readonly string[]): readonly Passed[] | null {
  const done = new Set(from)
  let ring = new Map<string, Reached>(from.map(ground => [ground, { through: [], spare: Number.POSITIVE_INFINITY }]))
  while (ring.size > 0) {
    const next = new Map<string, Reached>()
    for (const [ground, { through, spare }] of ring) {
      for (const each of passages) {
        const [a, b] = each.passage.ends
        const behind = a === ground ? b : b === ground ? a : null
        if (behind === null || done.has(behind)) continue
        const least = Math.min(spare, each.spare)
        if (least <= (next.get(behind)?.spare ?? -1)) continue
        next.set(behind, { through: [...through, each], spare: least })
      }
    }
    const ends = to.flatMap(ground => next.get(ground) ?? []).sort((a, b) => b.spare - a.spare)
    if (ends[0] !== undefined) return ends[0].through
    for (const ground of next.keys()) done.add(ground)
    ring = next
  }
  return null
}

/** Passages of a building by how much the plan says of where they lead. */
export interface KnownPassages {
  /** Between rooms, as the plan says. */
  readonly inside: readonly Passage[]
  /** Out of rooms, and lifts. */
  readonly out: readonly Passage[]
  /** Each doorway as if it led out of its room, for a plan that does not say where doorways lead. */
  readonly unsaid: readonly Passage[]
  /** All grounds that no room is. */
  readonly outside: readonly string[]
}

export interface KnownWay extends CarryWay {
  /** What the way rests on: the plan alone, what it does not show, or doorways of which it says nothing. */
  readonly by: 'plan' | 'beyond' | 'unsaid'
}

/**
 * The way by what the plan says for sure; around outside where that does not pass; by doorways that it leaves unsaid only
 * where it knows no other.
 * @param from its room; null for outside all rooms, and so `to`
 * @return null where nothing joins the two
 */
export function wayKnown(box: Box, known: KnownPassages, from: string | null, to: string | null): KnownWay | null {
  const starts = from === null ? known.outside : [from]
  const ends = to === null ? known.outside : [to]
  const found = (by: KnownWay['by'], passages: readonly Passage[]): KnownWay | null => {
    const way = carryWay(box, passages, starts, ends)
    return way === null ? null : { by, ...way }
  }
  const planned = found('plan', known.inside)
  if (planned !== null && planned.tightest?.fit !== 'no') return planned
  const around = found('beyond', [...known.inside, ...known.out])
  if (around !== null && around.tightest?.fit !== 'no') return around
  return planned ?? around ?? found('unsaid', [...known.inside, ...known.out, ...known.unsaid])
}
