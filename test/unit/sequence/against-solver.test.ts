/**
 * The search against optima that a kept mixed-integer solver proves (HiGHS, Huangfu and Hall, Mathematical Programming
 * Computation 10, 2018; npm `highs`). What it does not prove within its nodes is not counted.
 */
import loadHighs from 'highs'
import { expect, test } from 'vitest'
import { allowed } from '../../../src/sequence/allowed.ts'
import { jointBound } from '../../../src/sequence/joint-bound.ts'
import { propose } from '../../../src/sequence/planner.ts'
import { scaleOf } from '../../../src/sequence/terms.ts'
import { asProgram, coreProblem, qualityOfLack } from './core-problem.ts'

const nodes = 200

test('up to 14 works: the search is as good as the proved optimum, and no bound is below it', {
  timeout: 600_000,
}, async () => {
  const highs = await loadHighs()
  let counted = 0
  for (let seed = 1; seed <= 18; seed += 1) {
    const problem = coreProblem(seed, 4 + (seed % 11), 2 + (seed % 3))
    const scale = scaleOf(problem)
    const solved = highs.solve(asProgram(problem, scale), {
      output_flag: false,
      mip_max_nodes: nodes,
      mip_rel_gap: 0,
      mip_abs_gap: 1e-9,
    })
    if (solved.Status !== 'Optimal') continue
    counted += 1
    const most = qualityOfLack(solved.ObjectiveValue, problem, scale)
    const search = propose(problem, { seed: 1, steps: problem.works.length < 10 ? 40_000 : 160_000 })
    let next = search.next()
    while (next.done !== true) next = search.next()
    const { proposals, bound } = next.value
    for (const { hang, out } of proposals) {
      expect(out, `seed ${seed}`).toEqual([])
      expect(allowed(problem, hang), `seed ${seed}`).toBe(true)
    }
    expect(Math.max(...proposals.map(one => one.quality)), `seed ${seed}`).toBeCloseTo(most, 6)
    expect(bound.quality, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-6)
    for (const each of jointBound(problem, scale, () => most, 25))
      expect(each, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-6)
  }
  expect(counted).toBeGreaterThan(10)
})
