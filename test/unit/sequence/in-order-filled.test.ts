/** A checklist's order that leaves works out: all that find room hang, as few as can be found out of the order. */
import { describe, expect, test } from 'vitest'
import { allowed } from '../../../src/sequence/allowed.ts'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { inOrderFilled } from '../../../src/sequence/in-order-filled.ts'
import { hangInOrderKept } from '../../../src/sequence/in-order-kept.ts'
import { outOfOrder } from '../../../src/sequence/out-of-order.ts'
import { noRules, type Problem } from '../../../src/sequence/problem.ts'
import { scaleOf } from '../../../src/sequence/terms.ts'
import { orderKept } from '../../../src/sequence/units.ts'
import { randomProblem } from './random-problem.ts'

function filledOf(problem: Problem) {
  const [order, scale] = [orderKept(problem), scaleOf(problem)]
  const cut = hangInOrderKept(problem, order, scale)
  const filling = inOrderFilled(problem, order, scale, cut)
  let next = filling.next()
  while (next.done !== true) next = filling.next()
  return { order, cut, filled: next.value }
}

/** Works of such widths, all alike else, for bays of such lengths; `only` says which bays a work may hang on. */
function show(
  widths: readonly number[],
  lengths: readonly number[],
  only: Readonly<Record<number, number>> = {},
): Problem {
  const plain = randomProblem(1, { works: widths.length, bays: lengths.length, ruled: false })
  return {
    ...plain,
    rules: noRules,
    bays: plain.bays.map((bay, index) => ({ ...bay, to: lengths[index] ?? 0, margin: 100, gap: 100, axes: [] })),
    works: plain.works.map((work, rank) => ({
      ...work,
      width: widths[rank] ?? 0,
      served: lengths.map((_, bay) => (only[rank] === undefined || only[rank] === bay ? 0.5 : null)),
    })),
  }
}

describe('works for which the order leaves no room', () => {
  test('one hangs where room is left over before it', () => {
    const { cut, filled, order } = filledOf(show([1000, 2000, 800], [2200, 2200]))
    expect(cut.out).toHaveLength(1)
    expect(filled.out).toEqual([])
    expect(filled.hang.map(row => row.length)).toEqual([2, 1])
    expect(outOfOrder(filled.hang, order)).toHaveLength(1)
  })

  test('a wide one has its bay kept for it, and the order is cut over the others', () => {
    const { cut, filled, order } = filledOf(show([600, 600, 600, 2000], [2200, 2200, 900], { 3: 0 }))
    expect(cut.out).toEqual([3])
    expect(filled.out).toEqual([])
    expect(filled.hang[0]).toEqual([3])
    expect(outOfOrder(filled.hang, order)).toEqual([3])
  })

  test('a cut that hangs all is left as it is', () => {
    const { cut, filled } = filledOf(show([600, 600, 600], [2200, 2200]))
    expect(cut.out).toEqual([])
    expect(filled).toBe(cut)
  })

  test('rules are kept, each work is told once, and no fewer hang than the cut hangs, on 400 problems', () => {
    let more = 0
    for (let seed = 1; seed <= 400; seed += 1) {
      const problem = randomProblem(seed, { works: 9, bays: 3, ruled: seed % 2 === 0 })
      const { cut, filled } = filledOf(problem)
      expect(allowed(problem, filled.hang), `seed ${seed}`).toBe(true)
      expect([...filled.hang.flat(), ...filled.out].sort((a, b) => a - b)).toEqual([...problem.works.keys()])
      expect(filled.out.length, `seed ${seed}`).toBeLessThanOrEqual(cut.out.length)
      if (filled.out.length < cut.out.length) more += 1
    }
    expect(more).toBeGreaterThan(20)
  })
})

describe('works out of an order', () => {
  test('the fewest are told, as every smaller choice shows, on 300 orders', () => {
    const chance = chanceFrom(7)
    for (let round = 0; round < 300; round += 1) {
      const met = Array.from({ length: 8 }, (_, index) => index)
        .map(work => ({ work, by: chance() }))
        .sort((a, b) => a.by - b.by)
        .map(({ work }) => work)
      const cut = pickBelow(chance, 9)
      const told = outOfOrder([met.slice(0, cut), met.slice(cut)], [...met.keys()])
      const rest = met.filter(work => !told.includes(work))
      expect(rest).toEqual([...rest].sort((a, b) => a - b))
      let most = 0
      for (let choice = 0; choice < 256; choice += 1) {
        const some = met.filter(work => ((choice >> work) & 1) === 1)
        if (some.every((work, index) => index === 0 || (some[index - 1] ?? 0) < work))
          most = Math.max(most, some.length)
      }
      expect(told).toHaveLength(8 - most)
    }
  })

  test('what hangs nowhere is not told', () => {
    expect(outOfOrder([[2, 0], [3]], [0, 1, 2, 3])).toHaveLength(1)
    expect(outOfOrder([[], []], [0, 1])).toEqual([])
  })
})
