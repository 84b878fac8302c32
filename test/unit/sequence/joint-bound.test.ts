/** The joint bound against every hang there is, on small problems, and against proposals on larger ones. */
import { describe, expect, test } from 'vitest'
import { searchBetween } from '../../../src/sequence/between-bays.ts'
import { boundOf } from '../../../src/sequence/bound.ts'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { hangInOrder } from '../../../src/sequence/in-order.ts'
import { jointBound } from '../../../src/sequence/joint-bound.ts'
import { jointModel } from '../../../src/sequence/joint-model.ts'
import { type Hang, noRules, type Problem } from '../../../src/sequence/problem.ts'
import { spreadPrices } from '../../../src/sequence/spread-prices.ts'
import { judge, scaleOf } from '../../../src/sequence/terms.ts'
import { showToPlan } from '../../bench/planned-show.ts'
import { cuts, everyHang, permutations, randomProblem } from './random-problem.ts'

/** Every bound on the way down. */
function boundsOf(problem: Problem, known: number, rounds: number): number[] {
  return [...jointBound(problem, scaleOf(problem), () => known, rounds)]
}

function best(problem: Problem, hangs: Iterable<Hang>): number {
  let most = Number.NEGATIVE_INFINITY
  for (const hang of hangs) most = Math.max(most, judge(problem, hang).quality)
  return most
}

describe('never below any hang', () => {
  test('of all hangs of 300 small problems, each round of it', () => {
    let [hung, nearer] = [0, 0]
    for (let seed = 1; seed <= 300; seed += 1) {
      const problem = randomProblem(seed, { works: 2 + (seed % 4), bays: 1 + (seed % 3), ruled: seed % 2 === 0 })
      const most = best(problem, everyHang(problem))
      if (most === Number.NEGATIVE_INFINITY) continue
      hung += 1
      const bounds = boundsOf(problem, most, 60)
      for (const bound of bounds) expect(bound, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-9)
      if ((bounds.at(-1) ?? 1) < boundOf(problem).quality - 0.002) nearer += 1
    }
    expect(hung).toBeGreaterThan(140)
    expect(nearer).toBeGreaterThan(50)
  })

  test('where works stay, sections run over several bays, axes are crowded and room is scarce', () => {
    let hung = 0
    for (let seed = 1; seed <= 150; seed += 1) {
      const chance = chanceFrom(seed)
      const plain = randomProblem(seed, { works: 6, bays: 3, ruled: false })
      const short = 900 + pickBelow(chance, 2200)
      const problem: Problem = {
        ...plain,
        rules: noRules,
        bays: plain.bays.map(bay => ({ ...bay, to: bay.from + short + pickBelow(chance, 900), axes: [300, 700, 720] })),
        works: plain.works.map((work, index) => ({
          ...work,
          section: pickBelow(chance, 3),
          stays: index < 1 + (seed % 2) ? { before: pickBelow(chance, 4) } : null,
        })),
      }
      const free = problem.works.flatMap((work, index) => (work.stays === null ? [index] : []))
      const widthOf = (row: readonly number[]) =>
        row.reduce((sum, work) => sum + (problem.works[work]?.width ?? 0) + 75, 0)
      const fits = (hang: Hang) => hang.every((row, bay) => widthOf(row) <= (problem.bays[bay]?.to ?? 0) - 300 + 75)
      const hangs = permutations(free)
        .flatMap(order => cuts(order, 3))
        .filter(fits)
      const most = best(problem, hangs)
      if (most === Number.NEGATIVE_INFINITY) continue
      hung += 1
      for (const bound of boundsOf(problem, most, 40)) expect(bound, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-9)
    }
    expect(hung).toBeGreaterThan(60)
  })

  test('nor below what a search finds, on shows of 130 works', () => {
    for (const seed of [1, 2, 3]) {
      const problem = showToPlan(seed, 130, 30)
      const from = hangInOrder(problem, [...problem.works.keys()])
      const search = searchBetween(problem, from, { seed, steps: 30_000, every: 30_000 })
      search.next()
      const found = search.next().value
      if (found === undefined || found.out.length > 0) continue
      const bounds = boundsOf(problem, found.quality, 80)
      for (const bound of bounds) expect(bound).toBeGreaterThanOrEqual(found.quality)
      // Terms by themselves leave room that they can't have together.
      expect(bounds.at(-1)).toBeLessThan(boundOf(problem).quality)
    }
  })
})

test('a work that may hang nowhere is left out of it, as it is of every hang', () => {
  for (let seed = 1; seed <= 60; seed += 1) {
    const plain = randomProblem(seed, { works: 4, bays: 2, ruled: false })
    const works = plain.works.map((work, index) => (index === seed % 4 ? { ...work, served: [null, null] } : work))
    const problem = { ...plain, works, rules: noRules }
    const rest = [...works.keys()].filter(index => index !== seed % 4)
    const hangs = permutations(rest).flatMap(order => cuts(order, 2))
    const widthOf = (row: readonly number[]) => row.reduce((sum, work) => sum + (works[work]?.width ?? 0) + 75, 0)
    const fits = (hang: Hang) => hang.every((row, bay) => widthOf(row) <= (problem.bays[bay]?.to ?? 0) - 300 + 75)
    const most = best(problem, hangs.filter(fits))
    for (const bound of boundsOf(problem, most, 40)) expect(bound, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-9)
  }
})

test('a show too large for ways through it has the bound of a free order alone', () => {
  const problem = showToPlan(1, 1000, 40)
  const { bound } = spreadPrices(jointModel(problem, scaleOf(problem)), 0.85)
  expect(boundsOf(problem, 0.85, 20)).toEqual([bound])
})

test('without works or bays nothing is bounded', () => {
  const problem = randomProblem(1, { works: 3, bays: 2, ruled: false })
  expect(boundsOf({ ...problem, works: [] }, 0, 5)).toEqual([])
  expect(boundsOf({ ...problem, bays: [] }, 0, 5)).toEqual([])
})
