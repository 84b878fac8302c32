import { describe, expect, test } from 'vitest'
import { allowed } from '../../../src/sequence/allowed.ts'
import { boundOf } from '../../../src/sequence/bound.ts'
import { difference, otherEnough, type Progress, type Proposal, propose } from '../../../src/sequence/planner.ts'
import { noRules, type Problem } from '../../../src/sequence/problem.ts'
import { judge } from '../../../src/sequence/terms.ts'
import { orderKept } from '../../../src/sequence/units.ts'
import { showToPlan } from '../../bench/planned-show.ts'
import { randomProblem } from './random-problem.ts'

function run(problem: Problem, steps: number, seed = 1) {
  const told: Progress[] = []
  const search = propose(problem, { seed, steps })
  for (;;) {
    const next = search.next()
    if (next.done === true) return { told, ...next.value }
    told.push(next.value)
  }
}

const way = (proposals: readonly Proposal[], wanted: Proposal['way']) => {
  const found = proposals.find(one => one.way === wanted)
  if (found === undefined) throw new Error(`no proposal ${wanted}`)
  return found
}

describe('proposals', () => {
  const problem: Problem = { ...randomProblem(7, { works: 40, bays: 20, ruled: true }), orderBy: 'section' }
  const { told, proposals, bound } = run(problem, 6000)

  test('each keeps the rules, is judged as it stands, and none passes the bound', () => {
    expect(bound.quality).toBeLessThan(boundOf(problem).quality)
    expect(proposals.length).toBeGreaterThanOrEqual(2)
    for (const one of proposals) {
      expect(one.out, one.way).toEqual([])
      expect(allowed(problem, one.hang), one.way).toBe(true)
      expect(one.quality, one.way).toBeCloseTo(judge(problem, one.hang).quality, 12)
      expect(one.quality, one.way).toBeLessThanOrEqual(bound.quality)
      expect([...one.hang.flat()].sort((a, b) => a - b)).toEqual([...problem.works.keys()])
    }
  })

  test('the first keeps the order, the freer is better, another is another', () => {
    const [first, freer, another] = [way(proposals, 'in order'), way(proposals, 'freer'), way(proposals, 'another')]
    // The checklist, but for what hangs together and what leads.
    expect(first.hang.flat()).toEqual(orderKept(problem))
    expect(freer.quality).toBeGreaterThan(first.quality)
    expect(difference(another.hang, freer.hang, 40)).toBeGreaterThanOrEqual(otherEnough - 1e-9)
  })

  test('progress never goes back, and the same question has the same answer', () => {
    expect(told.length).toBeGreaterThan(5)
    told.slice(1).forEach((one, index) => {
      expect(one.step).toBeGreaterThanOrEqual(told[index]?.step ?? 0)
    })
    expect(run(problem, 6000).proposals).toEqual(proposals)
  })

  test('few works are proved', () => {
    const few: Problem = { ...randomProblem(12, { works: 5, bays: 3, ruled: false }), orderBy: 'section' }
    const { proposals: of } = run(few, 2000)
    expect(of.length).toBeGreaterThan(0)
    for (const one of of) expect(one.proved, one.way).toBe(one.way !== 'another')
  })

  test('no works, no bays, a work wider than any bay: nothing is placed that does not fit, and it ends', () => {
    expect(run({ ...problem, works: [], rules: noRules }, 100).proposals).toEqual([])
    const nowhere = run({ ...problem, bays: [], works: problem.works.map(work => ({ ...work, served: [] })) }, 100)
    expect(nowhere.proposals[0]?.out).toHaveLength(40)
    const wide = problem.works.map((work, index) => (index === 0 ? { ...work, width: 9000 } : work))
    const free = { ...problem, rules: noRules }
    for (const one of run({ ...free, works: wide }, 500).proposals) expect(one.out).toContain(0)
  })

  test('2,000 works for walls that take a sixth of them, and many on one wall: it ends, and says what has no place', {
    timeout: 180_000,
  }, () => {
    const long = showToPlan(1, 2000, 60, 2.5)
    const { proposals: of, bound: most } = run(long, 2000)
    expect(of.length).toBeGreaterThan(0)
    for (const one of of) {
      expect(one.out.length, one.way).toBeGreaterThan(1000)
      expect(one.hang.flat().length + one.out.length, one.way).toBe(2000)
      expect(allowed(long, one.hang), one.way).toBe(true)
      expect(one.quality, one.way).toBeLessThanOrEqual(most.quality)
    }
    const single = showToPlan(2, 25, 1)
    for (const one of run(single, 2000).proposals) expect([...one.hang.flat(), ...one.out]).toHaveLength(25)
  })

  test('it can be left at any sign of life, the first of which comes before any search', () => {
    const search = propose(showToPlan(3, 60, 14), { seed: 1, steps: 1e9 })
    const first = search.next()
    expect(first.done === false && first.value.step).toBe(0)
    expect(first.done === false && first.value.best).toBeGreaterThan(0.5)
  })
})
