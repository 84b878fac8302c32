/** Shows so full that works must be sorted onto bays by their length: all of them find room where it is known that they can. */
import { expect, test } from 'vitest'
import { allowed } from '../../../src/sequence/allowed.ts'
import { chanceFrom, pickBelow } from '../../../src/sequence/chance.ts'
import { packed } from '../../../src/sequence/packed.ts'
import { propose } from '../../../src/sequence/planner.ts'
import { leftOver, noRules, type Problem } from '../../../src/sequence/problem.ts'
import { showToPlan } from '../../bench/planned-show.ts'

/** Each bay is cut into works and their gaps, so that next to nothing is left over; then works are mixed. */
function full(seed: number, bays: number): Problem {
  const chance = chanceFrom(seed)
  const plain = showToPlan(seed, 5 * bays, bays)
  const widths = plain.bays.flatMap(({ from, to, margin, gap }) => {
    const many = 3 + pickBelow(chance, 4)
    const raw = Array.from({ length: many }, () => 0.4 + chance())
    const room = to - from - 2 * margin - (many - 1) * gap - 20 * many
    return raw.map(share => Math.floor((room * share) / raw.reduce((sum, each) => sum + each, 0)))
  })
  const mixed = widths.map(width => ({ width, by: chance() })).sort((a, b) => a.by - b.by)
  const works = mixed.map(({ width }, rank) => ({
    ...(plain.works[rank % plain.works.length] as Problem['works'][number]),
    ...{ id: `w${rank}`, rank, section: Math.floor(rank / 8), width, stays: null },
    served: plain.bays.map(() => Math.round(100 * chance()) / 100),
  }))
  return { ...plain, works, rules: noRules }
}

test('works that are known to fit are all hung, one on each place, on 30 full shows', () => {
  let all = 0
  for (let seed = 1; seed <= 30; seed += 1) {
    const problem = full(seed, 8)
    const { hang, out } = packed(problem, seed)
    expect([...hang.flat(), ...out].sort((a, b) => a - b)).toEqual([...problem.works.keys()])
    for (const [bay, row] of hang.entries()) expect(leftOver(problem, bay, row)).toBeGreaterThanOrEqual(-1e-6)
    if (out.length === 0) all += 1
  }
  expect(all).toBe(30)
})

test('rules are kept: together, on one wall, first', () => {
  for (let seed = 1; seed <= 20; seed += 1) {
    const plain = showToPlan(seed, 40, 12, 0.5)
    const first = [{ work: 0, among: null, bays: null, sameWall: true }]
    const rules = { ...noRules, together: [[5, 6, 7]], beside: [[20, 21]], oneWall: [[30, 33]], first }
    const problem = { ...plain, rules }
    const { hang, out } = packed(problem, seed)
    expect(allowed(problem, hang), `seed ${seed}`).toBe(true)
    expect([...hang.flat(), ...out].sort((a, b) => a - b)).toEqual([...problem.works.keys()])
  }
})

test('a full show of which the order of the checklist leaves works out is proposed whole', () => {
  const problem = full(3, 8)
  const search = propose(problem, { seed: 1, steps: 20_000 })
  let next = search.next()
  while (next.done !== true) next = search.next()
  const { proposals, bound } = next.value
  const outOf = (way: string) => proposals.find(one => one.way === way)?.out.length
  expect(outOf('in order')).toBeGreaterThan(0)
  expect(outOf('freer')).toBe(0)
  for (const one of proposals) expect(one.quality).toBeLessThanOrEqual(bound.quality)
})
