/** The bound of a free order: against every hang, with works left out too, and against a general solver's linear program. */
import loadHighs from 'highs'
import { expect, test } from 'vitest'
import { hangsNowhere, jointModel } from '../../../src/sequence/joint-model.ts'
import { propose } from '../../../src/sequence/planner.ts'
import { leftOver, noRules, type Problem } from '../../../src/sequence/problem.ts'
import { spreadPrices } from '../../../src/sequence/spread-prices.ts'
import { judge, scaleOf } from '../../../src/sequence/terms.ts'
import { showToPlan } from '../../bench/planned-show.ts'
import { cuts, permutations, randomProblem } from './random-problem.ts'

const fits = (problem: Problem) => (hang: readonly (readonly number[])[]) =>
  hang.every(
    (row, bay) =>
      leftOver(problem, bay, row) >= -1e-6 && row.every(work => (problem.works[work]?.served[bay] ?? null) !== null),
  )

test('no hang that leaves out as many works as may be is above it, on 200 small problems', () => {
  let hung = 0
  for (let seed = 1; seed <= 200; seed += 1) {
    const problem = { ...randomProblem(seed, { works: 4, bays: 2, ruled: false }), rules: noRules }
    const scale = scaleOf(problem)
    const all = problem.works.flatMap((work, index) => (work.stays === null ? [index] : []))
    const nowhere = all.filter(work => {
      const own = problem.works[work]
      return own !== undefined && hangsNowhere(own)
    })
    for (const out of [0, 1, 2]) {
      const hangs = subsets(all, out + nowhere.length)
        .flatMap(permutations)
        .flatMap(order => cuts(order, 2))
        .filter(fits(problem))
      if (hangs.length === 0 || nowhere.length === all.length) continue
      hung += 1
      const most = Math.max(...hangs.map(hang => judge(problem, hang, scale).quality))
      const { bound } = spreadPrices(jointModel(problem, scale), most, out)
      expect(bound, `seed ${seed}, ${out} left out`).toBeGreaterThanOrEqual(most - 1e-9)
    }
  }
  expect(hung).toBeGreaterThan(300)
})

/** All that is left of a list when at most so many go. */
function subsets(of: readonly number[], out: number): readonly (readonly number[])[] {
  if (out === 0) return [of]
  return [of, ...of.flatMap((_, index) => subsets([...of.slice(0, index), ...of.slice(index + 1)], out - 1))]
}

test('it is the linear program’s, as highs solves it, but for two thousandths', async () => {
  const highs = await loadHighs()
  for (const seed of [1, 2, 3]) {
    const problem = showToPlan(seed, 40, 10)
    const model = jointModel(problem, scaleOf(problem))
    const solved = highs.solve(spreadProgram(model), { output_flag: false })
    expect(solved.Status).toBe('Optimal')
    const most = model.base + solved.ObjectiveValue
    const { bound } = spreadPrices(model, most - 0.03)
    expect(bound, `seed ${seed}`).toBeGreaterThanOrEqual(most - 1e-6)
    expect(bound, `seed ${seed}`).toBeLessThan(most + 0.002)
  }
})

/** Shares of works on bays, what of them stands on axes, and by how much bays are uneven. */
function spreadProgram(model: ReturnType<typeof jointModel>): string {
  const { works, bays, served, focal, width, gap, room, share, axes, perUneven } = model
  const gains: string[] = []
  const rows: string[] = []
  const of = (work: number, bay: number) => served[bay * works + work] ?? Number.NEGATIVE_INFINITY
  const may = (bay: number) => [...width.keys()].filter(work => of(work, bay) > Number.NEGATIVE_INFINITY)
  for (let bay = 0; bay < bays; bay += 1) {
    const hung = may(bay)
    const widths = hung.map(work => `${width[work]} x${work}_${bay}`)
    const even = share[bay] ?? 0
    gains.push(`- ${perUneven} e${bay}`, ...hung.map(work => `+ ${of(work, bay)} x${work}_${bay}`))
    rows.push(`e${bay} - ${widths.join(' - ')} >= ${-even}`, `e${bay} + ${widths.join(' + ')} >= ${even}`)
    const taken = hung.map(work => `${(width[work] ?? 0) + (gap[bay] ?? 0)} x${work}_${bay}`)
    rows.push(`${taken.join(' + ')} <= ${room[bay]}`)
    if (axes[bay] === 0) continue
    gains.push(...hung.map(work => `+ ${focal[bay * works + work]} f${work}_${bay}`))
    rows.push(...hung.map(work => `f${work}_${bay} - x${work}_${bay} <= 0`))
    rows.push(`${hung.map(work => `f${work}_${bay}`).join(' + ')} <= ${axes[bay]}`)
  }
  for (let work = 0; work < works; work += 1) {
    const on = [...share.keys()].filter(bay => of(work, bay) > Number.NEGATIVE_INFINITY)
    rows.push(`${on.map(bay => `x${work}_${bay}`).join(' + ')} = 1`)
  }
  return `Maximize\n gain: ${gains.join('\n ')}\nSubject To\n${rows.map((row, index) => ` r${index}: ${row}`).join('\n')}\nEnd`
}

test('a show of which one work can’t hang with the others has a bound of its own, near what is proposed', () => {
  const plain = showToPlan(1, 30, 8)
  // Two works that only one bay can take, and that not both: each may hang, never together.
  const longest = Math.max(...plain.bays.map(bay => bay.to))
  const on = plain.bays.findIndex(bay => bay.to === longest)
  const works = plain.works.map((work, index) =>
    index < 2 ? { ...work, width: longest * 0.6, served: plain.bays.map((_, bay) => (bay === on ? 0.5 : null)) } : work,
  )
  const search = propose({ ...plain, works }, { seed: 1, steps: 20_000 })
  let next = search.next()
  while (next.done !== true) next = search.next()
  const { proposals, bound } = next.value
  for (const one of proposals) {
    expect(one.out.length, one.way).toBeGreaterThanOrEqual(1)
    expect(one.quality, one.way).toBeLessThanOrEqual(bound.quality)
  }
  const most = Math.max(...proposals.map(one => one.quality))
  expect(bound.quality - most).toBeLessThan(0.12)
})
