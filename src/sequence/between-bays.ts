/**
 * A search between bays: works, or groups that stay together, move, change places, and cross to other bays; what is
 * worse is taken less and less often (simulated annealing; Kirkpatrick, Gelatt and Vecchi, Science 220, 1983). Seeded,
 * so that the same question has the same answer; counted in steps, not in time. It gives a sign of life every so often
 * and can be left at any of them.
 */
import { allowedOn, facesForbidden } from './allowed.ts'
import { type Chance, chanceFrom, pickBelow } from './chance.ts'
import { at, type Hang, leftOver, type Problem } from './problem.ts'
import {
  added,
  asMet,
  type BaySums,
  noSums,
  orderTerm,
  quality,
  type Scale,
  scaleOf,
  sumsOf,
  termsOfSums,
} from './terms.ts'

export interface Found {
  readonly hang: Hang
  readonly out: readonly number[]
  readonly quality: number
  readonly step: number
}

export interface SearchWishes {
  readonly seed: number
  readonly steps: number
  /** Steps between two signs of life. */
  readonly every: number
}

/** What a work left out costs: more than all terms are worth. */
const leftOut = 2
/**
 * How much worse a step may be at first, to be taken by about one chance in three, in works: one that is wholly wrong
 * costs about one part in as many as there are. And how much of that is left at the end.
 */
const heatAtFirst = 0.3
const coolsTo = 0.004

interface State {
  readonly hang: number[][]
  readonly sums: BaySums[]
  out: number[]
  value: number
}

/**
 * Begins with `from`, in which every bay must be allowed; of works that face one another against a rule one is taken
 * out first. Yields the best so far, and returns it at the end.
 */
export function* searchBetween(
  problem: Problem,
  from: { readonly hang: Hang; readonly out: readonly number[] },
  wishes: SearchWishes,
  scale: Scale = scaleOf(problem),
): Generator<Found, Found> {
  const chance = chanceFrom(wishes.seed)
  const groups = new Map(problem.rules.together.flatMap(group => group.map(work => [work, group] as const)))
  const begun = apart(problem, from, groups)
  const state: State = {
    ...begun,
    sums: begun.hang.map((works, bay) => sumsOf(problem, scale, bay, works)),
    value: 0,
  }
  state.value = worthOf(problem, scale, state.hang, state.sums, state.out.length)
  let best: Found = snapshot(state, 0)
  const movable = [...from.hang.flat(), ...from.out]
  const hot = heatAtFirst / Math.max(1, movable.length)
  for (let step = 1; step <= wishes.steps && movable.length > 0; step += 1) {
    const heat = hot * coolsTo ** (step / wishes.steps)
    const tried = proposed(problem, state, groups, chance, movable)
    if (tried !== null) {
      const sums = [...state.sums]
      for (const [bay, works] of tried.bays) sums[bay] = sumsOf(problem, scale, bay, works)
      const hang = state.hang.map((works, bay) => tried.bays.get(bay) ?? works)
      const value = facesForbidden(problem, hang)
        ? Number.NEGATIVE_INFINITY
        : worthOf(problem, scale, hang, sums, tried.out.length)
      if (value >= state.value || chance() < Math.exp((value - state.value) / heat)) {
        for (const [bay, works] of tried.bays) {
          state.hang[bay] = works
          state.sums[bay] = at(sums, bay)
        }
        state.out = tried.out
        state.value = value
        if (value > best.quality - leftOut * best.out.length + 1e-12) best = snapshot(state, step)
      }
    }
    if (step % wishes.every === 0) yield best
  }
  return best
}

/** As given, without works that face another against a rule. */
function apart(
  problem: Problem,
  from: { readonly hang: Hang; readonly out: readonly number[] },
  groups: ReadonlyMap<number, readonly number[]>,
): { hang: number[][]; out: number[] } {
  let hang = from.hang.map(works => [...works])
  const out = [...from.out]
  for (const pair of problem.rules.notFacing) {
    if (!facesForbidden({ ...problem, rules: { ...problem.rules, notFacing: [pair] } }, hang)) continue
    const gone = groups.get(pair[1]) ?? [pair[1]]
    hang = hang.map(works => works.filter(work => !gone.includes(work)))
    out.push(...gone)
  }
  return { hang, out }
}

function snapshot({ hang, out, value }: State, step: number): Found {
  return { hang: hang.map(works => [...works]), out: [...out], quality: value + leftOut * out.length, step }
}

function worthOf(problem: Problem, scale: Scale, hang: Hang, sums: readonly BaySums[], out: number): number {
  const all = sums.reduce((sum, one) => added(sum, one), noSums)
  const values = { order: orderTerm(problem, asMet(problem, hang)), ...termsOfSums(all, scale) }
  return quality(values, problem.weights) - leftOut * out
}

interface Tried {
  /** Bays as they would be. */
  readonly bays: Map<number, number[]>
  readonly out: number[]
}

/** One change, or null where it is none or not allowed. */
function proposed(
  problem: Problem,
  state: State,
  groups: ReadonlyMap<number, readonly number[]>,
  chance: Chance,
  movable: readonly number[],
): Tried | null {
  const unit = (work: number) => groups.get(work) ?? [work]
  const work = unit(at(movable, pickBelow(chance, movable.length)))
  const here = state.hang.findIndex(works => works.includes(at(work, 0)))
  const draw = chance()
  if (here >= 0 && draw < 0.45) {
    const other = unit(at(movable, pickBelow(chance, movable.length)))
    if (other === work || at(other, 0) === at(work, 0)) return null
    return checked(problem, swapped(state, work, other))
  }
  const bay = here >= 0 && draw < 0.65 ? here : nearBay(problem, here, chance)
  const rest = without(state, work)
  const target = rest.bays.get(bay) ?? [...at(state.hang, bay)]
  const places = [...target.keys(), target.length].filter(
    place => place === 0 || place === target.length || !sameGroup(groups, target[place - 1], target[place]),
  )
  const place = at(places, pickBelow(chance, places.length))
  target.splice(place, 0, ...work)
  rest.bays.set(bay, target)
  return checked(problem, rest)
}

/** Bays nearby more often than those far away, since sections hang together. */
function nearBay({ bays }: Problem, from: number, chance: Chance): number {
  if (from < 0 || chance() < 0.3) return pickBelow(chance, bays.length)
  const away = 1 + Math.floor(chance() ** 2 * Math.min(4, bays.length))
  return (from + (chance() < 0.5 ? away : bays.length - away) + bays.length) % bays.length
}

function sameGroup(groups: ReadonlyMap<number, readonly number[]>, one?: number, other?: number): boolean {
  if (one === undefined || other === undefined) return false
  const group = groups.get(one)
  return group !== undefined && group === groups.get(other)
}

function without(state: State, unit: readonly number[]): Tried {
  const bays = new Map<number, number[]>()
  state.hang.forEach((works, bay) => {
    if (works.includes(at(unit, 0)))
      bays.set(
        bay,
        works.filter(work => !unit.includes(work)),
      )
  })
  return { bays, out: state.out.filter(work => !unit.includes(work)) }
}

/** Each where the other was. */
function swapped(state: State, one: readonly number[], other: readonly number[]): Tried {
  const change = (works: readonly number[]) =>
    works.flatMap(work => {
      if (work === one[0]) return other
      if (work === other[0]) return one
      return one.includes(work) || other.includes(work) ? [] : [work]
    })
  const bays = new Map<number, number[]>()
  state.hang.forEach((works, bay) => {
    if (works.includes(at(one, 0)) || works.includes(at(other, 0))) bays.set(bay, change(works))
  })
  return { bays, out: change(state.out) }
}

function checked(problem: Problem, tried: Tried): Tried | null {
  for (const [bay, works] of tried.bays) {
    if (leftOver(problem, bay, works) < -1e-6 || !allowedOn(problem, bay, works)) return null
  }
  return tried
}
