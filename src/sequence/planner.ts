/**
 * Two or three hangs to choose from, which differ in substance. First the best that keeps the checklist's order; then
 * one that keeps sections and moves works freely within and between bays; then one that is as good as can be while at
 * least a quarter of the works hang on other bays. Small shows are proved. Each has its terms and the one bound that
 * none of them, and nothing else, can exceed.
 */
import { broken } from './across.ts'
import { type Found, searchBetween } from './between-bays.ts'
import { boundOf } from './bound.ts'
import { bestOrder } from './in-bay.ts'
import { hangInOrderKept } from './in-order-kept.ts'
import { at, type Hang, type Problem } from './problem.ts'
import { proveBest } from './proved.ts'
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

/** Yields how far it is; returns the proposals, best of each way, without any that is none of its own. */
export function* propose(problem: Problem, wishes: PlanWishes): Generator<Progress, readonly Proposal[]> {
  const scale = scaleOf(problem)
  const bound = boundOf(problem, scale).quality
  const free = orderKept(problem)
  const first = hangInOrderKept(problem, free, scale)
  const ordered = asProposal(problem, scale, 'in order', first, first.proved && first.out.length === 0)
  const found = [ordered]
  const half = Math.ceil(wishes.steps / 2)
  yield { step: 0, steps: wishes.steps, best: ordered.quality, bound }
  const freer = yield* searched(problem, scale, first, { ...wishes, steps: half }, 0, bound, wishes.steps, null)
  if (free.length <= fewWorks) {
    const proved = proveBest(problem, freer.out.length === 0 ? freer.hang : null, provedWithin, scale)
    const best = proved === null ? freer : { hang: proved.hang, out: [] }
    found.push(asProposal(problem, scale, 'freer', best, proved?.proved ?? false))
  } else found.push(asProposal(problem, scale, 'freer', freer, false))
  const away = at(found, 1).hang
  const last = { seed: wishes.seed + 1, steps: wishes.steps - half }
  const another = yield* searched(problem, scale, first, last, half, bound, wishes.steps, away)
  found.push(asProposal(problem, scale, 'another', another, false))
  return distinct(found, free.length)
}

function* searched(
  problem: Problem,
  scale: Scale,
  from: { readonly hang: Hang; readonly out: readonly number[] },
  wishes: PlanWishes,
  before: number,
  bound: number,
  steps: number,
  away: Hang | null,
): Generator<Progress, { hang: Hang; out: readonly number[] }> {
  const every = Math.max(1, Math.min(500, wishes.steps))
  const other = away === null ? null : { hang: away, least: otherEnough }
  const search = searchBetween(problem, from, { ...wishes, every, away: other }, scale)
  let found: IteratorResult<Found, Found> = search.next()
  while (found.done !== true) {
    const best = found.value
    yield { step: before + best.at, steps, best: best.out.length > 0 ? 0 : best.quality, bound }
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
