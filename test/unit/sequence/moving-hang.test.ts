/** A hang that changes step by step against the same hang judged from the beginning. */
import { expect, test } from 'vitest'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { Moves } from '../../../src/sequence/moves.ts'
import { MovingHang } from '../../../src/sequence/moving-hang.ts'
import { leftOver, type Problem } from '../../../src/sequence/problem.ts'
import { judge, scaleOf } from '../../../src/sequence/terms.ts'
import { randomProblem } from './random-problem.ts'

/** Works of a problem without rules, some of which stay before one of its bays. */
function withStaying(seed: number): Problem {
  const chance = chanceFrom(seed)
  const plain = randomProblem(seed, { works: 14, bays: 6, ruled: false })
  const works = plain.works.map((work, index) =>
    index % 5 === 3
      ? { ...work, stays: { before: pickBelow(chance, 7) } }
      : { ...work, served: work.served.map(share => (chance() < 0.1 ? null : share)) },
  )
  return { ...plain, works }
}

test('after every change taken it is worth what it is judged, on 40 problems', () => {
  let [taken, ended] = [0, 0]
  for (let seed = 1; seed <= 40; seed += 1) {
    const problem = withStaying(seed)
    const scale = scaleOf(problem)
    const free = problem.works.flatMap((work, index) => (work.stays === null ? [index] : []))
    const hang = new MovingHang(
      problem,
      scale,
      problem.bays.map(() => []),
      null,
    )
    const chance = chanceFrom(seed)
    const moves = new Moves(hang.rows, new Map(), free, chance)
    for (let step = 0; step < 400; step += 1) {
      if (!moves.draw()) continue
      const next = hang.weigh()
      const laid = hang.rows.copy()
      for (let index = 0; index < hang.rows.changed; index += 1)
        laid[hang.rows.which[index] ?? 0] = [...hang.rows.laid(index).subarray(0, hang.rows.laidCount(index))]
      const fits = laid.every(
        (works, bay) =>
          leftOver(problem, bay, works) >= -1e-6 && works.every(work => problem.works[work]?.served[bay] !== null),
      )
      expect(Number.isFinite(next), `seed ${seed}, step ${step}`).toBe(fits)
      if (fits) {
        // What is worth the least that is asked is weighed to its end, what is not may end before.
        expect(hang.weigh(next - 1e-9), `seed ${seed}, step ${step}`).toBe(next)
        expect(hang.weigh(next + 1e-9), `seed ${seed}, step ${step}`).toBeLessThan(next + 1e-9)
        if (hang.weigh(hang.value) === Number.NEGATIVE_INFINITY) ended += 1
        hang.weigh()
      }
      if (!fits || chance() < 0.2) continue
      hang.take()
      taken += 1
      const hung = laid.flat().length
      expect(new Set(laid.flat()).size, `seed ${seed}, step ${step}`).toBe(hung)
      expect(hang.rows.copy()).toEqual(laid)
      if (hung === 0) continue
      const { quality } = judge(problem, laid, scale)
      expect(hang.value, `seed ${seed}, step ${step}`).toBeCloseTo(quality - 2 * (free.length - hung), 9)
    }
  }
  expect(taken).toBeGreaterThan(5000)
  expect(ended).toBeGreaterThan(500)
})

test('being too near another hang costs what is missing of the difference', () => {
  const problem = randomProblem(4, { works: 6, bays: 3, ruled: false })
  const scale = scaleOf(problem)
  const other = [
    [0, 1],
    [2, 3],
    [4, 5],
  ]
  const near = new MovingHang(
    problem,
    scale,
    [
      [0, 1],
      [2, 4],
      [3, 5],
    ],
    { hang: other, least: 0.5 },
  )
  const free = new MovingHang(
    problem,
    scale,
    [
      [0, 1],
      [2, 4],
      [3, 5],
    ],
    null,
  )
  // Two of six hang elsewhere.
  expect(near.value).toBeCloseTo(free.value - (0.5 - 2 / 6), 12)
})
