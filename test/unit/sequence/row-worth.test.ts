/** The quick reckoning of a row against the terms as they are defined. */
import { expect, test } from 'vitest'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { leftOver, type Problem } from '../../../src/sequence/problem.ts'
import { RowWorth } from '../../../src/sequence/row-worth.ts'
import { gainOf, scaleOf, sumsOf } from '../../../src/sequence/terms.ts'
import { randomProblem } from './random-problem.ts'

test('a row is worth what its sums give, with works that stay at its ends, on 400 rows', () => {
  let fits = 0
  for (let seed = 1; seed <= 400; seed += 1) {
    const chance = chanceFrom(seed)
    const plain = randomProblem(seed, { works: 8, bays: 2, ruled: true })
    const edge = () => (chance() < 0.5 ? null : pickBelow(chance, 2))
    const problem: Problem = {
      ...plain,
      bays: plain.bays.map(bay => ({ ...bay, leftOf: edge(), rightOf: edge(), from: 300, to: bay.to + 300 })),
      works: plain.works.map((work, index) => (index < 2 ? { ...work, stays: { before: index } } : work)),
    }
    const bay = pickBelow(chance, 2)
    const worths = new RowWorth(problem, scaleOf(problem))
    const row = [2, 3, 4, 5, 6, 7].filter(work => chance() < 0.6 && worths.mayHang(bay, work))
    expect(worths.leftOver(bay, row, row.length)).toBeCloseTo(leftOver(problem, bay, row), 6)
    for (const work of problem.works.keys())
      expect(worths.mayHang(bay, work)).toBe(problem.works[work]?.served[bay] !== null)
    const scale = scaleOf(problem)
    expect(worths.of(bay, row, row.length), `seed ${seed}`).toBeCloseTo(
      gainOf(sumsOf(problem, scale, bay, row), problem, scale),
      12,
    )
    if (row.length > 1) fits += 1
    const most = worths.atMost(bay, row, row.length)
    if (leftOver(problem, bay, row) < -1e-6) expect(most, `seed ${seed}`).toBe(Number.NEGATIVE_INFINITY)
    else expect(most, `seed ${seed}`).toBeGreaterThanOrEqual(worths.of(bay, row, row.length) - 1e-12)
    const barred = [2, 3, 4, 5, 6, 7].find(work => !worths.mayHang(bay, work))
    if (barred !== undefined)
      expect(worths.atMost(bay, [...row, barred], row.length + 1)).toBe(Number.NEGATIVE_INFINITY)
  }
  expect(fits).toBeGreaterThan(200)
})

test('works that stand elsewhere than in equal gaps balance and meet axes where they stand', () => {
  const plain = randomProblem(2, { works: 2, bays: 1, ruled: false })
  const problem: Problem = {
    ...plain,
    bays: plain.bays.map(bay => ({ ...bay, from: 0, to: 4000, axes: [1000] })),
    works: plain.works.map(work => ({ ...work, width: 400, weight: 1 })),
  }
  const scale = scaleOf(problem)
  const at = (centres: readonly number[]) => sumsOf(problem, scale, 0, [0, 1], centres)
  // Their middle is 300 from the bay's, 7.5 % of its length: 1 - (7.5 - 1) / 24.
  expect(at([1100, 2300]).balance).toBeCloseTo(2 * (1 - 6.5 / 24), 12)
  expect(at([1100, 2900]).balance).toBe(2)
  expect([at([1100, 2900]).focal, at([700, 3300]).focal]).toEqual([1, 0])
})
