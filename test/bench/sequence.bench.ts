/**
 * The planner: shows of 60 works on 14 walls, 120 on 30 and 300 on 60. Time to the first proposal, then quality, bound and
 * gap (points of 100) over time, and the memory at the end. Then the core of planning (no positions) with 120 works beside
 * a kept mixed-integer solver that has 60 s. Wanted: 60 works first in 100 ms and within a point of the best known in 1 s;
 * 300 works first in 500 ms and within 3 points of the bound in 10 s; under 500 MB. Nothing here passes or fails.
 */
import { cpus, loadavg } from 'node:os'
import loadHighs from 'highs'
import { type Planned, propose, usualSteps } from '../../src/sequence/planner.ts'
import type { Problem } from '../../src/sequence/problem.ts'
import { scaleOf } from '../../src/sequence/terms.ts'
import { asProgram, coreProblem, qualityOfLack } from '../unit/sequence/core-problem.ts'
import { showToPlan } from './planned-show.ts'

const points = (share: number) => (100 * share).toFixed(2)
const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`

interface Ran {
  readonly first: number
  readonly took: number
  readonly seen: readonly {
    readonly at: number
    readonly step: number
    readonly best: number
    readonly bound: number
  }[]
  readonly planned: Planned
}

/** Time is that of the thread's processor: others on the machine do not count, nor does how it shares them out. */
function run(problem: Problem, steps: number, seed = 1): Ran {
  const begun = process.threadCpuUsage()
  const now = () => {
    const { user, system } = process.threadCpuUsage(begun)
    return (user + system) / 1000
  }
  const seen: { at: number; step: number; best: number; bound: number }[] = []
  const search = propose(problem, { seed, steps })
  let next = search.next()
  const first = now()
  let best = 0
  while (next.done !== true) {
    best = Math.max(best, next.value.best)
    seen.push({ at: now(), step: next.value.step, best, bound: next.value.bound })
    next = search.next()
  }
  return { first, took: now(), seen, planned: next.value }
}

function at({ seen }: Ran, ms: number) {
  return seen.findLast(one => one.at <= ms)
}

console.log(
  `  ${cpus().length} × ${cpus()[0]?.model ?? 'processor not known'}, load ${loadavg()[0]?.toFixed(1)}; times of its thread`,
)
for (const [works, walls, seeds] of [
  [60, 14, 4],
  [120, 30, 2],
  [300, 60, 2],
] as const) {
  for (let seed = 1; seed <= seeds; seed += 1) {
    const problem = showToPlan(seed, works, walls)
    const ran = run(problem, usualSteps(works))
    const { proposals, bound } = ran.planned
    const most = Math.max(...proposals.filter(({ out }) => out.length === 0).map(({ quality }) => quality))
    const over = [1000, 3000, 10_000].flatMap(ms => {
      const then = at(ran, ms)
      return then === undefined || ms > ran.took
        ? []
        : [`${ms / 1000} s ${points(then.best)} of ${points(then.bound)} (${then.step} steps)`]
    })
    console.log(
      `  ${works} works, ${walls} walls, seed ${seed}: first after ${ran.first.toFixed(0)} ms; ${[...over, `${seconds(ran.took)} ${points(most)} of ${points(bound.quality)} (${usualSteps(works)} steps)`].join(', ')}; gap ${points(bound.quality - most)}`,
    )
    if (works === 60) {
      const long = [1, 2].map(chance => run(problem, 5 * usualSteps(works), chance).planned.proposals)
      const known = Math.max(...long.flat().map(({ quality }) => quality))
      console.log(
        `    best known, of two seeds with five times as many steps: ${points(known)}; after 1 s it was ${points(known - (at(ran, 1000)?.best ?? 0))} below`,
      )
    }
  }
}
console.log(`  memory ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MB at most`)

const highs = await loadHighs()
for (const seed of [1, 2]) {
  const problem = coreProblem(seed, 120, 20)
  const scale = scaleOf(problem)
  const ran = run(problem, usualSteps(120))
  const most = Math.max(...ran.planned.proposals.map(({ quality }) => quality))
  const begun = performance.now()
  const solved = highs.solve(asProgram(problem, scale), { output_flag: false, time_limit: 60 })
  const lack = Number.isFinite(solved.ObjectiveValue) ? qualityOfLack(solved.ObjectiveValue, problem, scale) : null
  console.log(
    `  core of 120 works on 20 bays, seed ${seed}: ${points(most)} in ${seconds(ran.took)}, bound ${points(ran.planned.bound.quality)}; the solver ${lack === null ? 'has no answer' : points(lack)} after ${seconds(performance.now() - begun)} (${solved.Status})`,
  )
}
