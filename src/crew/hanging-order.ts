/**
 * In which order works go up and come down. Heavy and large first while the floor is clear, then what is farthest from
 * the entrance, wall by wall from left to right; but never against what must come before: an upper work before the lower
 * one where its lock's tool needs the room, a lower one before the upper where it must be lifted into a narrow gap.
 * Coming down is the same graph turned round.
 */
import type { Rect } from '../geometry/rect.ts'
import { clearances, top } from '../geometry/rect.ts'
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
  /** Something at its lower edge is turned with a tool when it hangs. */
  readonly locksBelow: boolean
}

export interface Before {
  readonly first: string
  readonly last: string
  readonly why: 'lock-tool' | 'lift-on'
  /** Clear height between the two, mm. */
  readonly gap: number
}

export interface HangingOrder {
  /** Ids, first to hang first. */
  readonly order: readonly string[]
  readonly before: readonly Before[]
  /** Pairs where each must come before the other; the lock's room was kept, the lift-on was not. */
  readonly against: readonly Before[]
}

/** `lockRoom`: free height that a lock's tool needs; `liftOn`: free height to lift a work onto its fixing. mm. */
export function hangingOrder(
  works: readonly OrderedWork[],
  rules: { readonly lockRoom: number; readonly liftOn: number },
): HangingOrder {
  const asked = mustComeBefore(works, rules)
  const locks = new Set(asked.filter(each => each.why === 'lock-tool').map(({ first, last }) => `${last} ${first}`))
  const against = asked.filter(each => each.why === 'lift-on' && locks.has(`${each.first} ${each.last}`))
  const before = asked.filter(each => !against.includes(each))
  return { order: sorted(works, before), before, against }
}

/** The order in which works come down: the last to hang is the first. */
export function comingDown(order: readonly string[]): readonly string[] {
  return [...order].reverse()
}

function mustComeBefore(
  works: readonly OrderedWork[],
  { lockRoom, liftOn }: { readonly lockRoom: number; readonly liftOn: number },
): readonly Before[] {
  const found: Before[] = []
  for (const onFace of Map.groupBy(works, work => work.face).values()) {
    for (const upper of onFace) {
      for (const lower of onFace) {
        if (upper === lower || upper.rect === null || lower.rect === null) continue
        const { dx } = clearances(upper.rect, lower.rect)
        const gap = upper.rect.y - top(lower.rect)
        // Beside each other, or not one over the other.
        if (dx >= 0 || gap < -1e-6) continue
        if (upper.locksBelow && gap < lockRoom) {
          found.push({ first: upper.id, last: lower.id, why: 'lock-tool', gap })
        }
        if (gap < liftOn) found.push({ first: lower.id, last: upper.id, why: 'lift-on', gap })
      }
    }
  }
  return found
}

/** The most important work whose predecessors hang already, again and again; one of a ring where all wait. */
function sorted(works: readonly OrderedWork[], before: readonly Before[]): readonly string[] {
  const rank = (work: OrderedWork) => handlingClasses.indexOf(work.class)
  const left = [...works].sort(
    (a, b) => heavy(rank(b)) - heavy(rank(a)) || b.faceOrder - a.faceOrder || a.x - b.x || (a.id < b.id ? -1 : 1),
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
function heavy(rank: number): number {
  return Math.max(0, rank - 1)
}
