/** How prices are moved, on figures whose least is known by hand; and that the joint bound comes down as it should. */
import { describe, expect, test } from 'vitest'
import { jointBound } from '../../../src/sequence/joint-bound.ts'
import { jointModel } from '../../../src/sequence/joint-model.ts'
import { Steps } from '../../../src/sequence/price-steps.ts'
import { spreadPrices } from '../../../src/sequence/spread-prices.ts'
import { scaleOf } from '../../../src/sequence/terms.ts'
import { showToPlan } from '../../bench/planned-show.ts'

/** A bound of two prices, least (1) where they are 3 and -2: bent, as bounds from prices are. */
const bentAt = (prices: { readonly of: Float64Array }) =>
  1 + Math.abs((prices.of[0] ?? 0) - 3) + 2 * Math.abs((prices.of[1] ?? 0) + 2)
/** What is used too much: prices rise by it, and the bound falls. */
const usedAt = ({ of }: { readonly of: Float64Array }) => ({
  of: Float64Array.of(-Math.sign((of[0] ?? 0) - 3), -2 * Math.sign((of[1] ?? 0) + 2)),
})

function run(stride: number, rounds: number) {
  const prices = { of: new Float64Array(2) }
  const steps = new Steps(prices, stride)
  const backs: number[] = []
  let round = 0
  for (; round < rounds && !steps.done; round += 1) {
    if (steps.told(bentAt(prices), prices)) backs.push(bentAt(prices) - steps.lowest)
    if (!steps.turn(usedAt(prices))) break
    const each = steps.length(1)
    for (let index = 0; index < 2; index += 1)
      prices.of[index] = (prices.of[index] ?? 0) + each * (steps.direction.of[index] ?? 0)
  }
  return { prices, steps, backs, round }
}

describe('steps', () => {
  test('come to the least there is, and end', () => {
    const { steps, round } = run(1, 2000)
    expect(steps.lowest).toBeGreaterThanOrEqual(1)
    expect(steps.lowest).toBeLessThan(1.02)
    expect(round).toBeLessThan(2000)
  })

  test('go back to the best prices after many rounds without a lower bound', () => {
    const { steps, backs, prices } = run(1, 2000)
    expect(backs.length).toBeGreaterThan(3)
    for (const above of backs) expect(above).toBe(0)
    steps.back(prices)
    expect(bentAt(prices)).toBe(steps.lowest)
  })

  test('are longer where what is known is farther below, and shorter with a shorter stride', () => {
    const lengthOf = (stride: number, known: number) => {
      const prices = { of: new Float64Array(2) }
      const steps = new Steps(prices, stride)
      steps.told(bentAt(prices), prices)
      steps.turn(usedAt(prices))
      return steps.length(known)
    }
    // Stride times how much the bound is above what is known, 8 - known, over the square of the direction, 1 + 4.
    expect(lengthOf(1, 1)).toBeCloseTo(7 / 5, 12)
    expect(lengthOf(1, 4)).toBeCloseTo(4 / 5, 12)
    expect(lengthOf(0.1, 1)).toBeCloseTo(0.7 / 5, 12)
  })
})

test('from prices of a free order the joint bound comes down in its first rounds already', () => {
  const problem = showToPlan(3, 60, 14)
  const scale = scaleOf(problem)
  const known = 0.905
  const { bound } = spreadPrices(jointModel(problem, scale), known)
  const down = [...jointBound(problem, scale, () => known, 60)]
  expect(down[0]).toBe(bound)
  for (const [index, each] of down.slice(1).entries()) expect(each).toBeLessThanOrEqual(down[index] ?? 0)
  // Seen 0.83 points of 100. With one price of width and of counted works a bay, whatever their count, 0.3.
  expect(100 * (bound - (down.at(-1) ?? 1))).toBeGreaterThan(0.7)
})
