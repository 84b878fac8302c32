/**
 * What is good about a hang, each term from 0 to 1, and their weighted mean, the quality. All but the order are sums
 * over bays, so that a bay can be judged by itself. That these things are looked at is common practice; how they are
 * made numbers is ours, and each number can be told in words.
 *
 * - order: of all pairs that the checklist orders, those in its order; of all neighbours, those that don't break a section.
 * - balance: how near the weight of each bay is to its middle, by the works that hang there. To 1 % of its length is as
 *   good as centred, a quarter is 0.
 * - evenness: width of works on each bay against its share of the whole; half the sum of what is too much and too little.
 * - light: neighbours that may receive the same; a factor of four between them, or more, is 0.
 * - sight: how well the viewers of its wall are served by each work, and how heavy a work stands on the axes of doors.
 * - rhythm: neighbours of clearly one size or clearly another; nearly the same looks like a mistake. And the heaviest
 *   are not side by side.
 */
import { at, type Hang, leftOver, type Problem, type Term, terms } from './problem.ts'

export type TermValues = { readonly [T in Term]: number }

/** What one bay adds: sums that the terms are made of. */
export interface BaySums {
  /** Works times how well they balance. */
  readonly balance: number
  /** Width that is too much or too little. */
  readonly uneven: number
  /** Costs of neighbours. */
  readonly light: number
  readonly rhythm: number
  readonly served: number
  /** Shares of the greatest weight that stands on axes. */
  readonly focal: number
}

/** Figures of the whole problem that every bay is judged by. */
export interface Scale {
  /** Works to be hung, and all of them with those that stay. */
  readonly free: number
  readonly all: number
  /** Σ widths of the free works. */
  readonly width: number
  /** Width of works for each mm of bay, if all were even. */
  readonly fill: number
  readonly axes: number
  /** Pairs of works that have an order, and sections that have works. */
  readonly ordered: number
  readonly sections: number
  readonly heaviest: number
  /** From this weight on a work counts as one of the strongest. */
  readonly strong: number
}

export function scaleOf(problem: Problem): Scale {
  const { works, bays } = problem
  const keys = orderKeys(problem)
  const equal = [...Map.groupBy(keys, key => key).values()].reduce((sum, { length: n }) => sum + (n * (n - 1)) / 2, 0)
  const free = works.filter(work => work.stays === null)
  const width = free.reduce((sum, work) => sum + work.width, 0)
  const length = bays.reduce((sum, bay) => sum + bay.to - bay.from, 0)
  const weights = works.map(work => work.weight).sort((a, b) => b - a)
  return {
    free: free.length,
    all: works.length,
    width,
    fill: length === 0 ? 0 : width / length,
    axes: bays.reduce((sum, bay) => sum + bay.axes.length, 0),
    ordered: (keys.length * (keys.length - 1)) / 2 - equal,
    sections: new Set(works.map(work => work.section)).size,
    heaviest: weights[0] ?? 0,
    strong: weights[Math.floor(weights.length / 10)] ?? Number.POSITIVE_INFINITY,
  }
}

/** Of 0 where two works may receive the same light to 1 where one may receive four times as much, or more. */
export function lightCost(one: number | null, other: number | null): number {
  if (one === null || other === null || one <= 0 || other <= 0) return 0
  return Math.min(1, Math.abs(Math.log2(one / other)) / 2)
}

/** 1 where two sizes are nearly the same, or both works are among the strongest. */
export function rhythmCost(
  one: { readonly width: number; readonly height: number; readonly weight: number },
  other: { readonly width: number; readonly height: number; readonly weight: number },
  strong: number,
): number {
  if (one.weight >= strong && other.weight >= strong) return 1
  const apart = (a: number, b: number) => Math.abs(a - b) / Math.max(a, b)
  const [high, wide] = [apart(one.height, other.height), apart(one.width, other.width)]
  return Math.max(high, wide) > 0.01 && Math.max(high, wide) < 0.08 ? 1 : 0
}

/** 1 to within 1 % of the bay's length, 0 from a quarter of it on. */
export function balanceScore(off: number, length: number): number {
  return 1 - Math.min(1, Math.max(0, Math.abs(off) / length - 0.01) / 0.24)
}

/**
 * Of works on a bay, from its left end. What is left over goes in equal parts to ends and gaps, unless `centres` says
 * where the middle of each is, mm from the left end of the wall.
 */
export function sumsOf(
  problem: Problem,
  scale: Scale,
  bay: number,
  hung: readonly number[],
  centres?: readonly number[],
): BaySums {
  const { from, to, margin, gap, leftOf, rightOf, axes } = at(problem.bays, bay)
  const { works } = problem
  const length = to - from
  const each = leftOver(problem, bay, hung) / (hung.length + 1)
  let [width, weight, moment, served, light, rhythm, focal] = [0, 0, 0, 0, 0, 0, 0]
  let x = from + margin + each
  let before = leftOf === null ? null : at(works, leftOf)
  let place = 0
  for (const index of hung) {
    const work = at(works, index)
    const centre = centres?.[place] ?? x + work.width / 2
    place += 1
    x += work.width + gap + each
    width += work.width
    weight += work.weight
    moment += work.weight * centre
    served += work.served[bay] ?? 0
    for (const axis of axes) {
      if (scale.heaviest > 0 && Math.abs(centre - axis) <= work.width / 2) focal += work.weight / scale.heaviest
    }
    if (before !== null) {
      light += lightCost(before.limit, work.limit)
      rhythm += rhythmCost(before, work, scale.strong)
    }
    before = work
  }
  if (hung.length > 0 && before !== null && rightOf !== null) {
    const after = at(works, rightOf)
    light += lightCost(before.limit, after.limit)
    rhythm += rhythmCost(before, after, scale.strong)
  }
  const off = weight > 0 ? moment / weight - (from + to) / 2 : 0
  return {
    balance: hung.length * balanceScore(off, length),
    uneven: Math.abs(width - scale.fill * length),
    light,
    rhythm,
    served,
    focal,
  }
}

/** Neighbours there can be at most: between all works in one row. */
function pairs(scale: Scale): number {
  return Math.max(1, scale.all - 1)
}

/** Terms but the order, from sums over all bays. Without works each is 1. */
export function termsOfSums(sums: BaySums, scale: Scale): Omit<TermValues, 'order'> {
  if (scale.free === 0) return { balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 }
  const served = sums.served / scale.free
  return {
    balance: sums.balance / scale.free,
    evenness: 1 - sums.uneven / (2 * scale.width),
    light: 1 - sums.light / pairs(scale),
    sight: scale.axes === 0 ? served : 0.75 * served + (0.25 * sums.focal) / scale.axes,
    rhythm: 1 - sums.rhythm / pairs(scale),
  }
}

/** All works in the order in which a visitor meets them, those that stay among them. */
export function asMet({ works, bays }: Problem, hang: Hang): readonly number[] {
  const staying = works.flatMap((work, index) => (work.stays === null ? [] : [{ index, before: work.stays.before }]))
  return [...bays.keys(), bays.length].flatMap(bay => [
    ...staying.filter(({ before }) => before === bay).map(({ index }) => index),
    ...(hang[bay] ?? []),
  ])
}

/** What the order term is made of, counted over works as they are met. */
export interface OrderCounts {
  readonly turned: number
  /** Stretches of one section. */
  readonly runs: number
}

/** Of each work what orders it: its place in the checklist, or its section's. */
export function orderKeys({ works, orderBy }: Pick<Problem, 'works' | 'orderBy'>): readonly number[] {
  return works.map(work => (orderBy === 'section' ? work.section : work.rank))
}

/** The order term of so many works, from counts over all of them. */
export function orderOf({ turned, runs }: OrderCounts, scale: Pick<Scale, 'ordered' | 'sections' | 'all'>): number {
  const breaks = scale.all > scale.sections ? (runs - scale.sections) / (scale.all - scale.sections) : 0
  return 1 - 0.5 * (scale.ordered === 0 ? 0 : turned / scale.ordered) - 0.5 * Math.max(0, breaks)
}

/** The order term of works as they are met. Works that are left out turn nothing and break nothing. */
export function orderTerm(problem: Problem, scale: Scale, met: readonly number[]): number {
  const keys = orderKeys(problem)
  const sections = met.map(index => at(problem.works, index).section)
  const runs = sections.filter((section, index) => index === 0 || section !== sections[index - 1]).length
  return orderOf({ turned: turnedPairs(met.map(index => at(keys, index))), runs }, scale)
}

/** Pairs in the wrong order. Insertion for the few of a stretch of wall; by merging for a whole show (n log n). */
export function turnedPairs(keys: readonly number[]): number {
  if (keys.length > 48) {
    const half = keys.length >> 1
    const [left, right] = [keys.slice(0, half), keys.slice(half)]
    return turnedPairs(left) + turnedPairs(right) + turnedBetween(left, right)
  }
  let turned = 0
  for (let later = 1; later < keys.length; later += 1) {
    const key = at(keys, later)
    for (let before = 0; before < later; before += 1) if (at(keys, before) > key) turned += 1
  }
  return turned
}

function turnedBetween(left: readonly number[], right: readonly number[]): number {
  const [low, high] = [[...left].sort((a, b) => a - b), [...right].sort((a, b) => a - b)]
  let [turned, l] = [0, 0]
  for (const key of high) {
    while (l < low.length && at(low, l) <= key) l += 1
    turned += low.length - l
  }
  return turned
}

export const noSums: BaySums = { balance: 0, uneven: 0, light: 0, rhythm: 0, served: 0, focal: 0 }

export function added(one: BaySums, other: BaySums, times = 1): BaySums {
  return {
    balance: one.balance + times * other.balance,
    uneven: one.uneven + times * other.uneven,
    light: one.light + times * other.light,
    rhythm: one.rhythm + times * other.rhythm,
    served: one.served + times * other.served,
    focal: one.focal + times * other.focal,
  }
}

/** Weighted mean of the terms, 0 to 1. */
export function quality(values: TermValues, weights: Problem['weights']): number {
  const all = terms.reduce((sum, term) => sum + weights[term], 0)
  return terms.reduce((sum, term) => sum + weights[term] * values[term], 0) / all
}

export interface Judged {
  readonly values: TermValues
  readonly quality: number
}

/** By bay, the middle of each work that hangs there, mm from the left end of the wall. */
export type Centres = readonly (readonly number[])[]

/** @param centres of works that stand elsewhere than in equal gaps */
export function judge(problem: Problem, hang: Hang, scale = scaleOf(problem), centres?: Centres): Judged {
  const sums = problem.bays.reduce(
    (sum, _, bay) => added(sum, sumsOf(problem, scale, bay, hang[bay] ?? [], centres?.[bay])),
    noSums,
  )
  const values = { order: orderTerm(problem, scale, asMet(problem, hang)), ...termsOfSums(sums, scale) }
  return { values, quality: quality(values, problem.weights) }
}

/** What one bay adds to the quality, the order left out. Gains of all bays and that of no works add up to it. */
export function gainOf(sums: BaySums, { weights }: Problem, scale: Scale): number {
  const worth = (of: BaySums) => quality({ order: 0, ...termsOfSums(of, scale) }, weights)
  return worth(sums) - worth(noSums)
}
