/**
 * In which order works go up and come down. Heavy and large first while the floor is clear, then what is farthest from
 * the entrance, wall by wall from left to right; but never against what must come before: a work before its neighbour
 * that would bar the tool of its lock, a lower one before the upper where it must be lifted into a narrow gap, and an
 * upper one before the lower so that nobody reaches over a hung work. Coming down is the same graph turned round.
 */
import type { Rect } from '../geometry/rect.ts'
import { clearances, clearDistance, overlap, top } from '../geometry/rect.ts'
import { type HandlingClass, handlingClasses } from './handling.ts'

export interface OrderedWork {
  readonly id: string
  readonly face: string
  /** Where its face comes on the way from the entrance, from 0. */
  readonly faceOrder: number
  /** Null while its size is not known: nothing waits for it then. */
  readonly rect: Rect | null
  /** Centre along the wall. */
  readonly x: number
  readonly class: HandlingClass
  /** What must be free of the wall while it is locked. */
  readonly tools: readonly Rect[]
}

/** Why one hangs before another. The first two must be; the last gives way to them. */
export const orderReasons = ['lock-tool', 'lift-on', 'reach-over'] as const

export interface Before {
  readonly first: string
  readonly last: string
  readonly why: (typeof orderReasons)[number]
  /** Clear distance between the two, mm. */
  readonly gap: number
}

export interface HangingOrder {
  /** Ids, first to hang first. */
  readonly order: readonly string[]
  readonly before: readonly Before[]
  /** What could not be kept since the other of the pair must come first: of two locks one, of lock and lift-on the lift-on. */
  readonly against: readonly Before[]
}

/**
 * The order, with its reasons. `liftOn`: free height to lift a work onto its fixing, mm. That an upper work goes before
 * the lower one where a lock needs the room, and stacks come down in reverse order, is common practice, no source; that
 * nobody reaches over a hung work is from memory.
 */
export function hangingOrder(works: readonly OrderedWork[], rules: { readonly liftOn: number }): HangingOrder {
  const before: Before[] = []
  const against: Before[] = []
  const waits = new Map<string, Set<string>>()
  const add = (each: Before): boolean => {
    if (waitsFor(each.first, each.last, waits)) return false
    before.push(each)
    waits.set(each.last, (waits.get(each.last) ?? new Set()).add(each.first))
    return true
  }
  for (const onFace of Map.groupBy(works, work => work.face).values()) {
    for (const each of [...forTools(onFace), ...forLifting(onFace, rules.liftOn)]) if (!add(each)) against.push(each)
    for (const each of forReach(onFace)) if (!waitsFor(each.last, each.first, waits)) add(each)
  }
  return { order: sorted(works, before), before, against }
}

/** The order in which works come down: the last to hang is the first. */
export function comingDown(order: readonly string[]): readonly string[] {
  return [...order].reverse()
}

/** Whether `id` waits for `other`, straight or by others between them. */
function waitsFor(id: string, other: string, waits: ReadonlyMap<string, ReadonlySet<string>>): boolean {
  const seen = new Set<string>()
  const open = [id]
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    if (at === other) return true
    if (seen.has(at)) continue
    seen.add(at)
    open.push(...(waits.get(at) ?? []))
  }
  return false
}

function forTools(works: readonly OrderedWork[]): readonly Before[] {
  return works.flatMap(work =>
    works.flatMap(({ id, rect }): readonly Before[] => {
      if (id === work.id || rect === null || work.rect === null) return []
      if (!work.tools.some(area => overlap(area, rect))) return []
      return [{ first: work.id, last: id, why: 'lock-tool', gap: clearDistance(work.rect, rect) }]
    }),
  )
}

interface Pair {
  readonly upper: OrderedWork
  readonly lower: OrderedWork
  readonly gap: number
}

/** Every two of which one hangs over the other. */
function stacked(works: readonly OrderedWork[]): readonly Pair[] {
  return works.flatMap(upper =>
    works.flatMap(lower => {
      if (upper === lower || upper.rect === null || lower.rect === null) return []
      const gap = upper.rect.y - top(lower.rect)
      return clearances(upper.rect, lower.rect).dx < 0 && gap >= -1e-6 ? [{ upper, lower, gap }] : []
    }),
  )
}

function forLifting(works: readonly OrderedWork[], liftOn: number): readonly Before[] {
  return stacked(works)
    .filter(({ gap }) => gap < liftOn)
    .map(({ upper, lower, gap }) => ({ first: lower.id, last: upper.id, why: 'lift-on', gap }))
}

/** Next above next below only: the rest follows. What needs equipment goes up while the floor is clear all the same. */
function forReach(works: readonly OrderedWork[]): readonly Before[] {
  const pairs = stacked(works)
  const over = Map.groupBy(pairs, pair => pair.upper)
  const isNext = ({ upper, lower }: Pair) =>
    !(over.get(upper) ?? []).some(one => (over.get(one.lower) ?? []).some(two => two.lower === lower))
  return pairs
    .filter(pair => heavy(pair.lower) <= heavy(pair.upper) && isNext(pair))
    .map(({ upper, lower, gap }) => ({ first: upper.id, last: lower.id, why: 'reach-over', gap }))
}

/** The most important work whose predecessors hang already, again and again. */
function sorted(works: readonly OrderedWork[], before: readonly Before[]): readonly string[] {
  const left = [...works].sort(
    (a, b) => heavy(b) - heavy(a) || b.faceOrder - a.faceOrder || a.x - b.x || (a.id < b.id ? -1 : 1),
  )
  const order: string[] = []
  const hung = new Set<string>()
  const waits = Map.groupBy(before, each => each.last)
  while (left.length > 0) {
    const ready = left.findIndex(work => (waits.get(work.id) ?? []).every(({ first }) => hung.has(first)))
    const [work] = left.splice(Math.max(ready, 0), 1)
    if (work === undefined) break
    order.push(work.id)
    hung.add(work.id)
  }
  return order
}

/** What hands lift is no reason to cross the room: only what needs equipment goes first. */
function heavy(work: OrderedWork): number {
  return Math.max(0, handlingClasses.indexOf(work.class) - 1)
}
