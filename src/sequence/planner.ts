/**
 * Two or three hangs to choose from, which differ in substance. First the best that keeps the checklist's order, or takes
 * as few works out of it as can be found for all to have room; then one that keeps sections and moves works freely within
 * and between bays; then one that is as good as can be while at least a quarter of the works hang on other bays. Small
 * shows are proved. Each has its terms and the one bound that none of them, and nothing else, can exceed.
 */
import { broken } from './across.ts'
import { type Found, searchBetween } from './between-bays.ts'
import { type Bound, boundOf } from './bound.ts'
import { bestOrder } from './in-bay.ts'
import { inOrderFilled } from './in-order-filled.ts'
import { hangInOrderKept } from './in-order-kept.ts'
import { jointBound } from './joint-bound.ts'
import { hangsNowhere, jointModel } from './joint-model.ts'
import { at, type Hang, type Problem } from './problem.ts'
import { proveBest } from './proved.ts'
import { spreadPrices } from './spread-prices.ts'
import { judge, type Scale, scaleOf, type TermValues } from './terms.ts'
import { orderKept } from './units.ts'

export interface Proposal {
  readonly way: 'in order' | 'freer' | 'another'
  readonly hang: Hang
  /** Works that found no place. */
  readonly out: readonly number[]
  readonly values: TermValues
  readonly quality: number
  /** Nothing that keeps the same rules (and for "in order" the same order) is better. */
  readonly proved: boolean
}

export interface Planned {
  readonly proposals: readonly Proposal[]
  /** Of all hangs that leave out no more works than the proposal that leaves out fewest. */
  readonly bound: Bound
}

export interface PlanWishes {
  readonly seed: number
  readonly steps: number
}

export interface Progress {
  readonly step: number
  readonly steps: number
  /** The best quality so far. */
  readonly best: number
  readonly bound: number
}

/** Shows of so few works are proved. */
const fewWorks = 7
const provedWithin = 400_000
/** Bays of so few works get their best order at the end. */
const shortBay = 8
/** Works that hang on another bay, of all, for a proposal to be another one. */
export const otherEnough = 0.25

/** Rounds in which the bound is lowered: as many as ever help, fewer for very large shows, where each takes long. */
const mostRounds = 200
const leastRounds = 20
const roundsOfAll = 32_000_000

/** Signs of life that a search gives. */
const signs = 200

/** Steps in which a show of so many works is planned well: more take longer and give little. */
export function usualSteps(works: number): number {
  return Math.min(4_000_000, Math.max(60_000, 8_000 * works, 45 * works ** 2))
}

/**
 * Yields how far it is; returns the proposals, best of each way, without any that is none of its own, and the bound.
 */
export function* propose(problem: Problem, wishes: PlanWishes): Generator<Progress, Planned> {
  const scale = scaleOf(problem)
  const free = orderKept(problem)
  const cut = hangInOrderKept(problem, free, scale)
  const ordered = asProposal(problem, scale, 'in order', cut, cut.proved && cut.out.length === 0)
  const bounding = new Bounding(problem, scale, ordered)
  const half = Math.ceil(wishes.steps / 2)
  const begun = () => ({ step: 0, steps: wishes.steps, best: bounding.best, bound: bounding.quality })
  yield begun()
  const filling = inOrderFilled(problem, free, scale, cut)
  let filled = filling.next()
  for (; filled.done !== true; filled = filling.next()) yield begun()
  const first = filled.value
  const found = [first === cut ? ordered : asProposal(problem, scale, 'in order', first, false)]
  bounding.know(at(found, 0))
  const freer = yield* searched(problem, scale, first, { ...wishes, steps: half }, 0, bounding, wishes.steps, null)
  if (free.length <= fewWorks) {
    const proved = proveBest(problem, freer.out.length === 0 ? freer.hang : null, provedWithin, scale)
    const best = proved === null ? freer : { hang: proved.hang, out: [] }
    found.push(asProposal(problem, scale, 'freer', best, proved?.proved ?? false))
    if (proved?.proved === true) bounding.is(proved.quality)
  } else found.push(asProposal(problem, scale, 'freer', freer, false))
  const away = at(found, 1).hang
  const last = { seed: wishes.seed + 1, steps: wishes.steps - half }
  const another = yield* searched(problem, scale, first, last, half, bounding, wishes.steps, away)
  found.push(asProposal(problem, scale, 'another', another, false))
  while (bounding.lower(2))
    yield { step: wishes.steps, steps: wishes.steps, best: bounding.best, bound: bounding.quality }
  const proposals = distinct(found, free.length)
  const { values, quality } = bounding.bound
  // Proposals that leave works out have a quality too, though the bound is not theirs.
  return { proposals, bound: { values, quality: Math.max(quality, ...proposals.map(one => one.quality)) } }
}

/** Each round looks at every count of works before each bay with every count on it: bays hold about three times as many narrow ones. */
function roundsFor({ bays }: Problem, { free }: Scale): number {
  const size = Math.max(1, free * (bays.length + 3 * free))
  return Math.max(leastRounds, Math.min(mostRounds, Math.floor(roundsOfAll / size)))
}

/** The bound that nothing exceeds, lowered round by round while a search goes on. */
class Bounding {
  private readonly apart: Bound
  private readonly joint: Generator<number, number>
  private joined = Number.POSITIVE_INFINITY
  private settled = false
  /** Works that no hang can but leave out. */
  private readonly nowhere: number
  private readonly problem: Problem
  private readonly scale: Scale
  /** Works that the best known hang leaves out, and what no hang exceeds that leaves out so many. */
  private fewest = Number.POSITIVE_INFINITY
  private without = 1
  private withoutFor: number | null = null
  best: number

  constructor(problem: Problem, scale: Scale, first: { readonly quality: number; readonly out: readonly number[] }) {
    this.problem = problem
    this.scale = scale
    this.apart = boundOf(problem, scale)
    this.nowhere = problem.works.filter(work => work.stays === null && hangsNowhere(work)).length
    this.best = 0
    this.know(first)
    this.joint = jointBound(problem, scale, () => this.best, roundsFor(problem, scale))
  }

  /** While no hang of all works that may hang is known there may be none, and the joint bound would fall without end. */
  get quality(): number {
    if (this.fewest > this.nowhere) return Math.max(this.best, this.without)
    return Math.max(this.best, Math.min(this.apart.quality, this.joined))
  }

  get bound(): Bound {
    if (this.withoutFor !== this.fewest) this.boundWithout()
    return { values: this.apart.values, quality: this.quality }
  }

  /** A hang: the best is that of those that leave out fewest. */
  know({ quality, out }: { readonly quality: number; readonly out: readonly number[] }): void {
    if (out.length > this.fewest) return
    if (out.length < this.fewest) {
      this.fewest = out.length
      this.best = quality
      // What bounds hangs that leave out more bounds these too, until it is asked at the end.
      if (this.withoutFor === null) this.boundWithout()
    } else this.best = Math.max(this.best, quality)
  }

  private boundWithout(): void {
    this.withoutFor = this.fewest
    const more = this.fewest - this.nowhere
    if (more > 0 && this.problem.bays.length > 0)
      this.without = Math.min(1, spreadPrices(jointModel(this.problem, this.scale), this.best, more).bound)
  }

  /** No hang that keeps the rules is better than this. */
  is(quality: number): void {
    this.best = quality
    this.joined = quality
    this.settled = true
  }

  /** Some rounds more; false when it gets no lower. */
  lower(rounds: number): boolean {
    if (this.fewest > this.nowhere || this.settled) return false
    for (let round = 0; round < rounds; round += 1) {
      const { done, value } = this.joint.next()
      if (done === true) return false
      this.joined = value
    }
    return true
  }
}

function* searched(
  problem: Problem,
  scale: Scale,
  from: { readonly hang: Hang; readonly out: readonly number[] },
  wishes: PlanWishes,
  before: number,
  bounding: Bounding,
  steps: number,
  away: Hang | null,
): Generator<Progress, { hang: Hang; out: readonly number[] }> {
  const every = Math.max(1, Math.min(wishes.steps, Math.max(500, Math.floor(wishes.steps / signs))))
  const other = away === null ? null : { hang: away, least: otherEnough }
  const search = searchBetween(problem, from, { ...wishes, every, away: other }, scale)
  let found: IteratorResult<Found, Found> = search.next()
  while (found.done !== true) {
    const best = found.value
    bounding.know(best)
    bounding.lower(1)
    yield { step: before + best.at, steps, best: bounding.best, bound: bounding.quality }
    found = search.next()
  }
  return { hang: polished(problem, scale, found.value.hang), out: found.value.out }
}

/** Each short bay in its best order, where that is better for the whole. */
function polished(problem: Problem, scale: Scale, hang: Hang): Hang {
  let best = hang
  let most = judge(problem, hang, scale).quality
  for (const [bay, works] of hang.entries()) {
    if (works.length < 2 || works.length > shortBay) continue
    const answer = bestOrder(problem, bay, works, scale)
    if (answer === null) continue
    const tried = best.map((row, index) => (index === bay ? answer.order : row))
    const judged = judge(problem, tried, scale).quality
    if (judged > most + 1e-12 && broken(problem, tried) === null) [best, most] = [tried, judged]
  }
  return best
}

function asProposal(
  problem: Problem,
  scale: Scale,
  way: Proposal['way'],
  { hang, out }: { readonly hang: Hang; readonly out: readonly number[] },
  proved: boolean,
): Proposal {
  return { way, hang, out, proved, ...judge(problem, hang, scale) }
}

/** Share of works that two hangs put on other bays, or that one of them leaves out. */
export function difference(one: Hang, other: Hang, works: number): number {
  const on = (hang: Hang) => new Map(hang.flatMap((row, bay) => row.map(work => [work, bay] as const)))
  const [here, there] = [on(one), on(other)]
  const same = [...here].filter(([work, bay]) => there.get(work) === bay).length
  return works === 0 ? 0 : 1 - same / works
}

/** Of proposals that put every work on the same bays in the same order, the first. */
function distinct(found: readonly Proposal[], works: number): readonly Proposal[] {
  return found.filter(
    (one, index) =>
      works > 0 && !found.slice(0, index).some(before => JSON.stringify(before.hang) === JSON.stringify(one.hang)),
  )
}
