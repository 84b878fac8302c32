/** The searches against every hang there is, on small problems. */
import { describe, expect, test } from 'vitest'
import { broken } from '../../../src/sequence/across.ts'
import { allowed, allowedOn } from '../../../src/sequence/allowed.ts'
import { searchBetween } from '../../../src/sequence/between-bays.ts'
import { boundOf } from '../../../src/sequence/bound.ts'
import { bestOrder } from '../../../src/sequence/in-bay.ts'
import { hangInOrder } from '../../../src/sequence/in-order.ts'
import { hangInOrderKept } from '../../../src/sequence/in-order-kept.ts'
import { centresIn, type Hang, leftOver, type Problem } from '../../../src/sequence/problem.ts'
import { proveBest } from '../../../src/sequence/proved.ts'
import {
  gainOf,
  judge,
  noSums,
  quality,
  scaleOf,
  sumsOf,
  termsOfSums,
  turnedPairs,
} from '../../../src/sequence/terms.ts'
import { cuts, everyHang, permutations, randomProblem } from './random-problem.ts'

const inRow = (problem: Problem) => [...problem.works.keys()]

function best(problem: Problem, hangs: Iterable<Hang>): number {
  let found = Number.NEGATIVE_INFINITY
  for (const hang of hangs) found = Math.max(found, judge(problem, hang).quality)
  return found
}

describe('places in a bay', () => {
  test('what is left over goes to ends and gaps alike, and adds up', () => {
    const problem = randomProblem(3, { works: 3, bays: 1, ruled: false })
    const bay = problem.bays[0]
    const works = problem.works
    if (bay === undefined) throw new Error('no bay')
    const left = leftOver(problem, 0, [0, 1, 2])
    const centres = centresIn(problem, 0, [0, 1, 2])
    const edges = centres.map((x, index) => [x - (works[index]?.width ?? 0) / 2, x + (works[index]?.width ?? 0) / 2])
    expect((edges[0]?.[0] ?? 0) - bay.from).toBeCloseTo(bay.margin + left / 4, 6)
    expect(bay.to - (edges[2]?.[1] ?? 0)).toBeCloseTo(bay.margin + left / 4, 6)
    expect((edges[1]?.[0] ?? 0) - (edges[0]?.[1] ?? 0)).toBeCloseTo(bay.gap + left / 4, 6)
  })
})

describe('terms', () => {
  test('pairs in the wrong order, against counting each', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const keys = randomProblem(seed, { works: 9, bays: 1, ruled: false }).works.map(work =>
        Math.round(work.width / 200),
      )
      let turned = 0
      keys.forEach((a, i) => {
        keys.slice(i + 1).forEach(b => {
          if (a > b) turned += 1
        })
      })
      expect(turnedPairs(keys)).toBe(turned)
    }
  })

  test('gains of bays and the order add up to the quality, which lies between 0 and 1', () => {
    for (let seed = 1; seed <= 200; seed += 1) {
      const problem = randomProblem(seed, { works: 5, bays: 3, ruled: true })
      const scale = scaleOf(problem)
      const { hang } = hangInOrder(problem, inRow(problem))
      const gains = problem.bays.map((_, bay) => gainOf(sumsOf(problem, scale, bay, hang[bay] ?? []), problem, scale))
      const judged = judge(problem, hang)
      const bare = quality({ order: judged.values.order, ...termsOfSums(noSums, scale) }, problem.weights)
      expect(gains.reduce((sum, gain) => sum + gain, bare)).toBeCloseTo(judged.quality, 9)
      for (const value of Object.values(judged.values)) {
        expect(value).toBeGreaterThanOrEqual(-1e-9)
        expect(value).toBeLessThanOrEqual(1 + 1e-9)
      }
    }
  })
})

describe('in the order of the checklist', () => {
  test('no cut of the same order that keeps the rules is better, on 3,000 problems', () => {
    let [placed, crossed] = [0, 0]
    for (let seed = 1; seed <= 3000; seed += 1) {
      const problem = randomProblem(seed, { works: 2 + (seed % 6), bays: 2 + (seed % 3), ruled: seed % 2 === 0 })
      const every = cuts(inRow(problem), problem.bays.length).filter(hang => allowed(problem, hang))
      const found = hangInOrderKept(problem, inRow(problem))
      expect(allowed(problem, found.hang), `seed ${seed}`).toBe(true)
      if (broken(problem, hangInOrder(problem, inRow(problem)).hang) !== null) crossed += 1
      if (every.length === 0) {
        expect(found.out.length, `seed ${seed}`).toBeGreaterThan(0)
        continue
      }
      placed += 1
      expect(found.proved, `seed ${seed}`).toBe(true)
      expect(found.out, `seed ${seed}`).toEqual([])
      expect(judge(problem, found.hang).quality, `seed ${seed}`).toBeCloseTo(best(problem, every), 9)
    }
    expect(placed).toBeGreaterThan(1250)
    expect(crossed).toBeGreaterThan(300)
  })
})

describe('within a bay', () => {
  test('no other order is better, on 2,000 problems', () => {
    let found = 0
    for (let seed = 1; seed <= 2000; seed += 1) {
      const problem = randomProblem(seed, { works: 2 + (seed % 5), bays: 1, ruled: seed % 3 === 0 })
      const scale = scaleOf(problem)
      const orders = permutations(inRow(problem)).filter(
        order => leftOver(problem, 0, order) >= 0 && allowedOn(problem, 0, order),
      )
      const answer = bestOrder(problem, 0, inRow(problem))
      if (orders.length === 0) {
        expect(answer, `seed ${seed}`).toBeNull()
        continue
      }
      found += 1
      const most = Math.max(...orders.map(order => gainOf(sumsOf(problem, scale, 0, order), problem, scale)))
      expect(answer?.proved, `seed ${seed}`).toBe(true)
      expect(answer?.gain, `seed ${seed}`).toBeCloseTo(most, 9)
    }
    expect(found).toBeGreaterThan(700)
  })
})

function last<T, R>(search: Generator<T, R>): R {
  for (;;) {
    const { done, value } = search.next()
    if (done === true) return value
  }
}

describe('between bays', () => {
  test('the proof finds the best of every hang, the search comes near it, none passes the bound', {
    timeout: 240_000,
  }, () => {
    let [hung, same] = [0, 0]
    for (let seed = 1; seed <= 1000; seed += 1) {
      const problem = randomProblem(seed, { works: 3 + (seed % 3), bays: 2 + (seed % 2), ruled: seed % 2 === 0 })
      const from = hangInOrder(problem, inRow(problem))
      const found = last(searchBetween(problem, from, { seed, steps: 4000, every: 4000 }))
      const most = best(problem, everyHang(problem))
      const proved = proveBest(problem, null, 1e6)
      if (most === Number.NEGATIVE_INFINITY) {
        expect(found.out.length, `seed ${seed}`).toBeGreaterThan(0)
        expect(proved, `seed ${seed}`).toBeNull()
        continue
      }
      hung += 1
      expect(proved?.proved, `seed ${seed}`).toBe(true)
      expect(proved?.quality, `seed ${seed}`).toBeCloseTo(most, 9)
      expect(boundOf(problem).quality, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-9)
      if (found.out.length > 0) continue
      expect(allowed(problem, found.hang), `seed ${seed}`).toBe(true)
      expect(found.quality, `seed ${seed}`).toBeCloseTo(judge(problem, found.hang).quality, 9)
      expect(found.quality, `seed ${seed}`).toBeGreaterThan(most - 0.06)
      if (found.quality > most - 1e-6) same += 1
    }
    expect(hung).toBeGreaterThan(300)
    expect(same).toBeGreaterThan(0.9 * hung)
  })

  test('the same seed gives the same hang', () => {
    const problem = randomProblem(9, { works: 12, bays: 5, ruled: true })
    const from = hangInOrder(problem, inRow(problem))
    const run = (seed: number) => last(searchBetween(problem, from, { seed, steps: 3000, every: 1000 }))
    expect(run(5)).toEqual(run(5))
  })
})
