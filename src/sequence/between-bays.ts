/**
 * A search between bays: works, or groups that stay together, move, change places, and cross to other bays; what is
 * worse is taken less and less often (simulated annealing; Kirkpatrick, Gelatt and Vecchi, Science 220, 1983). Seeded,
 * so that the same question has the same answer; counted in steps, not in time. It gives a sign of life every so often
 * and can be left at any of them.
 */
import { broken, holdsAcross } from './across.ts'
import { allowedOn } from './allowed.ts'
import { apart, type Begun } from './apart.ts'
import { chanceFrom } from './chance.ts'
import { Moves } from './moves.ts'
import { type Away, MovingHang } from './moving-hang.ts'
import { packed } from './packed.ts'
import { hasRules, type Problem } from './problem.ts'
import { judge, type Scale, scaleOf } from './terms.ts'
import { unitsOf } from './units.ts'

export interface Found extends Begun {
  readonly quality: number
  /** Steps done when this was told. */
  readonly at: number
}

export interface SearchWishes {
  readonly seed: number
  readonly steps: number
  /** Steps between two signs of life. */
  readonly every: number
  /** A hang to keep away from: at least such a share of the works shall be on other bays. */
  readonly away?: Away | null
}

/**
 * How much worse a step may be at first, to be taken by about one chance in three, in works: one that is wholly wrong
 * costs about one part in as many as there are; a show begins in order, and from more heat it has no time to come back.
 * And how much is left at the end. Both tried on shows of 60 to 300 works.
 */
const heatAtFirst = 0.05
const heatAtLast = 0.0015
/** Share of the steps in which it cools for the first time, so that a good hang is there soon; then once more, slowly. */
const soonShare = 0.02
/** Share of the steps after which works that are still left out are packed: a search that needs no such help is done by then. */
const lateShare = 0.1

/**
 * Begins with `from`, in which every bay must be allowed; works that break a rule between bays are taken out first.
 * Yields the best so far, and returns it at the end.
 */
export function* searchBetween(
  problem: Problem,
  from: Begun,
  wishes: SearchWishes,
  scale: Scale = scaleOf(problem),
): Generator<Found, Found> {
  const chance = chanceFrom(wishes.seed)
  const units = unitsOf(problem)
  const across = holdsAcross(problem)
  const ruled = hasRules(problem)
  const begun = apart(problem, from, units)
  let hang = new MovingHang(problem, scale, begun.hang, wishes.away ?? null)
  let rows = hang.rows
  const movable = problem.bays.length === 0 ? [] : [...begun.hang.flat(), ...begun.out]
  let moves = new Moves(rows, units, movable, chance)
  let best = { hang: rows.copy(), value: hang.value }
  /** Whether it is better as it hangs now than the best that was kept. */
  let better = false
  const keep = () => {
    best = { hang: rows.copy(), value: hang.value }
    better = false
  }
  const told = (step: number): Found => {
    if (better) keep()
    const { quality } = judge(problem, best.hang, scale)
    const hung = new Set(best.hang.flat())
    return { hang: best.hang, out: movable.filter(work => !hung.has(work)), quality, at: step }
  }
  const many = Math.max(1, movable.length)
  const [hot, cold] = [heatAtFirst / many, heatAtLast / many]
  const [soon, late] = [Math.round(wishes.steps * soonShare), Math.round(wishes.steps * lateShare)]
  let [heat, cooler] = [hot, (cold / hot) ** (1 / Math.max(1, soon))]
  for (let step = 1; step <= wishes.steps && movable.length > 0; step += 1) {
    heat *= cooler
    if (step === soon) [heat, cooler] = [hot, (cold / hot) ** (1 / Math.max(1, wishes.steps - soon))]
    if (step === late) pack()
    if (moves.draw()) {
      // The least that is taken: as much worse as chance allows at this heat.
      const least = hang.value + heat * Math.log(chance())
      if (hang.weigh(least) >= least && (!ruled || keepsRules())) {
        // The best is copied when it is left, not each time it becomes better.
        if (better && hang.weighed <= hang.value) keep()
        hang.take()
        better ||= hang.value > best.value + 1e-12
      }
    }
    if (step % wishes.every === 0) yield told(step)
  }
  return told(wishes.steps)

  /** Where works are left out that found room if all others moved: goes on from there. */
  function pack(): void {
    if (better) keep()
    const out = movable.length - best.hang.flat().length
    if (out === 0) return
    const roomier = packed(problem, wishes.seed)
    if (roomier.out.length >= out) return
    hang = new MovingHang(problem, scale, roomier.hang, wishes.away ?? null)
    rows = hang.rows
    moves = new Moves(rows, units, movable, chance)
    better = hang.value > best.value + 1e-12
  }

  /** Whether the change laid out keeps the rules of its bays and those between bays. */
  function keepsRules(): boolean {
    const changed = new Map<number, readonly number[]>()
    for (let index = 0; index < rows.changed; index += 1)
      changed.set(rows.which[index] ?? 0, [...rows.laid(index).subarray(0, rows.laidCount(index))])
    for (const [bay, works] of changed) if (!allowedOn(problem, bay, works)) return false
    return (
      !across ||
      broken(
        problem,
        rows.copy().map((works, bay) => changed.get(bay) ?? works),
      ) === null
    )
  }
}
