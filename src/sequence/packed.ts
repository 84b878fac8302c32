/**
 * A hang that takes as many works as can be found room for, whatever it is worth: for shows so full that a search which
 * moves a few works at a time leaves some out. Bay by bay those works that leave least of its length over (subset sums by
 * dynamic programming), the longest first; over again with other orders by chance, until none is left out.
 */
import { apart, type Begun } from './apart.ts'
import { chanceFrom } from './chance.ts'
import { at, type Problem } from './problem.ts'
import { orderKept, type Unit, unitsOf } from './units.ts'

/** Orders that are tried, as far as so many sums are looked at in all: none for thousands of works, where each takes long. */
const mostTries = 40
const sumsOfAll = 80_000_000
/** Lengths are told apart to so many mm. */
const grain = 5

/** What goes together, and what must hang on one wall. */
export interface Block {
  readonly works: readonly number[]
  readonly width: number
  readonly may: readonly boolean[]
}

export function packed(problem: Problem, seed: number): Begun {
  const units = unitsOf(problem)
  const order = orderKept(problem)
  const blocks = blocksOf(problem, order, units)
  const chance = chanceFrom(seed)
  const length = problem.bays.reduce((sum, { from, to }) => sum + (to - from) / grain, 0)
  const tries = Math.min(mostTries, Math.floor(sumsOfAll / Math.max(1, length * blocks.length)))
  let best: Begun | null = null
  for (let tried = 0; tried < tries && best?.out.length !== 0; tried += 1) {
    const shaken = (size: number) => size * (tried === 0 ? 1 : 0.6 + 0.8 * chance())
    const bays = [...problem.bays.keys()]
      .map(bay => ({ bay, by: shaken(blocks.filter(({ may }) => may[bay] === true).length) }))
      .sort((a, b) => a.by - b.by)
    const sorted = blocks
      // What few bays may take comes early, as if it were longer.
      .map(block => ({ block, by: shaken(block.width * (1 + 2 / Math.max(1, block.may.filter(Boolean).length))) }))
      .sort((a, b) => b.by - a.by)
    const found = packOnce(
      problem,
      order,
      bays.map(({ bay }) => bay),
      sorted.map(({ block }) => block),
    )
    const kept = apart(problem, found, units)
    if (best === null || kept.out.length < best.out.length) best = kept
  }
  return best ?? { hang: problem.bays.map(() => []), out: order }
}

/** What goes together, and what must hang on one wall, as one. */
export function blocksOf(
  problem: Problem,
  order: readonly number[],
  units: ReadonlyMap<number, Unit>,
): readonly Block[] {
  const done = new Set<number>()
  return order.flatMap(first => {
    if (done.has(first)) return []
    const works = new Set([first])
    for (const work of works) {
      for (const other of units.get(work)?.works ?? []) works.add(other)
      for (const group of problem.rules.oneWall)
        if (group.includes(work)) for (const other of group) if (order.includes(other)) works.add(other)
    }
    for (const work of works) done.add(work)
    const own = [...works]
    const may = problem.bays.map((_, bay) => own.every(work => (at(problem.works, work).served[bay] ?? null) !== null))
    return [{ works: own, width: own.reduce((sum, work) => sum + at(problem.works, work).width, 0), may }]
  })
}

function packOnce(
  problem: Problem,
  order: readonly number[],
  bays: readonly number[],
  blocks: readonly Block[],
): Begun {
  const hang: (readonly number[])[] = problem.bays.map(() => [])
  let rest = blocks
  for (const bay of bays) {
    const { from, to, margin, gap } = at(problem.bays, bay)
    const room = Math.floor((to - from - 2 * margin + gap) / grain)
    if (room <= 0) continue
    /** By length filled, the block by which it was reached first; -1 for none. Lengths are rounded up. */
    const by = new Int32Array(room + 1).fill(-1)
    const needs = rest.map(({ works, width }) => Math.ceil((width + works.length * gap) / grain))
    for (const [index, block] of rest.entries()) {
      const need = at(needs, index)
      if (block.may[bay] !== true) continue
      for (let sum = room; sum >= need; sum -= 1)
        if (by[sum] === -1 && (sum === need || (by[sum - need] ?? -1) >= 0)) by[sum] = index
    }
    let sum = by.findLastIndex(index => index >= 0)
    const taken = new Set<Block>()
    while (sum > 0) {
      const index = by[sum] ?? -1
      if (index < 0) break
      taken.add(at(rest, index))
      sum -= at(needs, index)
    }
    hang[bay] = order.filter(work => [...taken].some(({ works }) => works.includes(work)))
    rest = rest.filter(block => !taken.has(block))
  }
  return { hang, out: rest.flatMap(({ works }) => works) }
}
