/**
 * That the search's heats, its number of steps and its moves do what they are there for, on shows whose best known hang is
 * known from long runs: the same search without heat, with too much of it or that never cools stays below.
 */
import { expect, test } from 'vitest'
import { searchBetween } from '../../../src/sequence/between-bays.ts'
import { hangInOrderKept } from '../../../src/sequence/in-order-kept.ts'
import { usualSteps } from '../../../src/sequence/planner.ts'
import { scaleOf } from '../../../src/sequence/terms.ts'
import { orderKept } from '../../../src/sequence/units.ts'
import { showToPlan } from '../../bench/planned-show.ts'

/** Mean of several seeds, points of 100; and whether all hang every work. */
function searched(show: number, works: number, walls: number, steps: number, seeds: number) {
  const problem = showToPlan(show, works, walls)
  const scale = scaleOf(problem)
  const first = hangInOrderKept(problem, orderKept(problem), scale)
  let [sum, out] = [0, 0]
  for (let seed = 1; seed <= seeds; seed += 1) {
    const search = searchBetween(problem, first, { seed, steps, every: steps }, scale)
    let next = search.next()
    while (next.done !== true) next = search.next()
    sum += 100 * next.value.quality
    out += next.value.out.length
  }
  return { mean: sum / seeds, out }
}

test('60 works in a sixth of the usual steps: nearly as good as is known, whatever the seed', {
  timeout: 60_000,
}, () => {
  const { mean, out } = searched(4, 60, 14, 60_000, 4)
  expect(out).toBe(0)
  // Seen 91.18. Without heat 90.94, with a thirtieth of the first heat 90.90; never cooled 90.45.
  expect(mean).toBeGreaterThan(91.05)
})

test('300 works in a tenth of the usual steps: works find to where more of their section is', {
  timeout: 60_000,
}, () => {
  const { mean, out } = searched(2, 300, 60, 400_000, 2)
  expect(out).toBe(0)
  // Seen 90.47. Where a work goes only to bays near it or to any, 89.73.
  expect(mean).toBeGreaterThan(90.2)
})

test('with the usual steps little is left to find, and with a sixtieth of them much', { timeout: 60_000 }, () => {
  const usual = Math.ceil(usualSteps(30) / 2)
  const [few, many, long] = [usual / 60, usual, 3 * usual].map(steps => searched(2, 30, 8, Math.round(steps), 3).mean)
  // Seen 91.02, 92.26 and 92.11.
  expect(many).toBeGreaterThan((long ?? 100) - 0.15)
  expect(many).toBeGreaterThan((few ?? 100) + 0.8)
})
