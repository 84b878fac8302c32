/**
 * A search between bays: works, or groups that stay together, move, change places, and cross to other bays; what is
 * worse is taken less and less often (simulated annealing; Kirkpatrick, Gelatt and Vecchi, Science 220, 1983). Seeded,
 * so that the same question has the same answer; counted in steps, not in time. It gives a sign of life every so often
 * and can be left at any of them.
 */
import { broken, holdsAcross } from './across.ts'
import { allowedOn } from './allowed.ts'
import { type Chance, chanceFrom, pickBelow } from './chance.ts'
import { at, type Hang, leftOver, type Problem } from './problem.ts'
import { Standing } from './standing.ts'
import { judge, type Scale, scaleOf } from './terms.ts'
import { type Unit, unitsOf } from './units.ts'

export interface Begun {
  readonly hang: Hang
  readonly out: readonly number[]
}

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
  readonly away?: { readonly hang: Hang; readonly least: number } | null
}

/** What a work left out costs: more than all terms are worth; and what being too near a hang to keep away from does. */
const leftOut = 2
const tooNear = 1
/**
 * How much worse a step may be at first, to be taken by about one chance in three, in works: one that is wholly wrong
 * costs about one part in as many as there are. And how much of that is left at the end.
 */
const heatAtFirst = 0.08
const coolsTo = 0.01

/** Bays as they would be, and what would be left out. */
interface Tried {
  readonly bays: readonly (readonly [bay: number, works: number[]])[]
  readonly out: number[]
}

/**
 * Begins with `from`, in which every bay must be allowed; works that break a rule between bays are taken out first. Yields the best so far, and returns it at the end.
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
  const begun = apart(problem, from, units)
  const standing = new Standing(problem, scale, begun.hang, wishes.away ?? null)
  let out = [...begun.out]
  const movable = problem.bays.length === 0 ? [] : [...from.hang.flat(), ...from.out]
  const worth = (quality: number, near: number, left: number) => quality - leftOut * left - tooNear * near
  let value = worth(standing.quality, standing.near, out.length)
  let best = { hang: standing.copy(), out: [...out], value }
  const told = (step: number): Found => {
    const { quality } = judge(problem, best.hang, scale)
    return { hang: best.hang, out: best.out, quality, at: step }
  }
  const hot = heatAtFirst / Math.max(1, movable.length)
  for (let step = 1; step <= wishes.steps && movable.length > 0; step += 1) {
    const heat = hot * coolsTo ** (step / wishes.steps)
    const tried = proposed(problem, standing, out, units, chance, movable)
    if (tried !== null) {
      const { quality, near, sums, counts } = standing.asIf(tried.bays)
      const next = worth(quality, near, tried.out.length)
      if (next >= value || chance() < Math.exp((next - value) / heat)) {
        const before = tried.bays.map(([bay]) => [bay, at(standing.rows, bay)] as const)
        standing.take(tried.bays, sums, counts)
        if (across && broken(problem, standing.rows) !== null) {
          const back = standing.asIf(before)
          standing.take(before, back.sums, back.counts)
        } else {
          out = tried.out
          value = next
          if (value > best.value + 1e-12) best = { hang: standing.copy(), out: [...out], value }
        }
      }
    }
    if (step % wishes.every === 0) yield told(step)
  }
  return told(wishes.steps)
}

/** As given, without works that break a rule between bays, and what then is not allowed on their own. */
export function apart(
  problem: Problem,
  from: Begun,
  units: ReadonlyMap<number, Unit>,
): { readonly hang: number[][]; readonly out: number[] } {
  let hang = from.hang.map(works => [...works])
  const out = [...from.out]
  for (;;) {
    const across = broken(problem, hang)
    const bay = hang.findIndex((works, index) => !allowedOn(problem, index, works))
    const gone = across?.other ?? hang[bay]?.at(-1)
    if (gone === undefined) return { hang, out }
    const all = units.get(gone)?.works ?? [gone]
    hang = hang.map(works => works.filter(work => !all.includes(work)))
    out.push(...all)
  }
}

/** One change, or null where it is none or not allowed. */
function proposed(
  problem: Problem,
  standing: Standing,
  out: readonly number[],
  units: ReadonlyMap<number, Unit>,
  chance: Chance,
  movable: readonly number[],
): Tried | null {
  /** All that goes with a work, in one of its orders. */
  const unit = (work: number): readonly number[] => {
    const own = units.get(work)
    if (own === undefined) return [work]
    return own.orders[pickBelow(chance, own.orders.length)] ?? own.works
  }
  const pick = () => unit(at(movable, pickBelow(chance, movable.length)))
  const one = pick()
  const here = standing.bayOf(at(one, 0))
  const draw = chance()
  if (here >= 0 && draw < 0.45) {
    const other = draw < 0.3 ? unit(neighbouring(standing, here, chance) ?? at(one, 0)) : pick()
    return other.includes(at(one, 0)) ? null : checked(problem, swapped(standing, out, one, other))
  }
  const bay = here >= 0 && draw < 0.65 ? here : nearBay(problem, here, chance)
  const without = (works: readonly number[]) => works.filter(work => !one.includes(work))
  const target = without(at(standing.rows, bay))
  const place = pickBelow(chance, target.length + 1)
  const [before, after] = [target[place - 1], target[place]]
  if (before !== undefined && after !== undefined && units.has(before) && units.get(before) === units.get(after))
    return null
  target.splice(place, 0, ...one)
  const left = here < 0 || here === bay ? [] : [[here, without(at(standing.rows, here))] as const]
  return checked(problem, { bays: [...left, [bay, target]], out: here < 0 ? without(out) : [...out] })
}

/** A work of a bay nearby: most changes that help are small. */
function neighbouring(standing: Standing, here: number, chance: Chance): number | undefined {
  const bays = standing.rows.length
  const row = at(standing.rows, (here + pickBelow(chance, 5) - 2 + bays) % bays)
  return row[pickBelow(chance, row.length)]
}

/** Bays nearby more often than those far away, since sections hang together. */
function nearBay({ bays }: Problem, from: number, chance: Chance): number {
  if (from < 0 || chance() < 0.3) return pickBelow(chance, bays.length)
  const away = 1 + Math.floor(chance() ** 2 * Math.min(4, bays.length))
  return (from + (chance() < 0.5 ? away : bays.length - away) + bays.length) % bays.length
}

/** Each where the other was. */
function swapped(standing: Standing, out: readonly number[], one: readonly number[], other: readonly number[]): Tried {
  const change = (works: readonly number[]) =>
    works.flatMap(work => {
      if (work === one[0]) return other
      if (work === other[0]) return one
      return one.includes(work) || other.includes(work) ? [] : [work]
    })
  const [here, there] = [standing.bayOf(at(one, 0)), standing.bayOf(at(other, 0))]
  const bays = [...new Set([here, there])].filter(bay => bay >= 0)
  return {
    bays: bays.map(bay => [bay, change(at(standing.rows, bay))]),
    out: here < 0 || there < 0 ? change(out) : [...out],
  }
}

function checked(problem: Problem, tried: Tried): Tried | null {
  for (const [bay, works] of tried.bays) {
    if (leftOver(problem, bay, works) < -1e-6 || !allowedOn(problem, bay, works)) return null
  }
  return tried
}
