/** First prices for bays of so many works, against what any other prices of width and of counted works give. */
import { expect, test } from 'vitest'
import { chanceFrom } from '../../../src/sequence/chance.ts'
import { countPrices } from '../../../src/sequence/count-prices.ts'
import { jointModel } from '../../../src/sequence/joint-model.ts'
import { widthAt } from '../../../src/sequence/price-steps.ts'
import { spreadPrices } from '../../../src/sequence/spread-prices.ts'
import { scaleOf } from '../../../src/sequence/terms.ts'
import { showToPlan } from '../../bench/planned-show.ts'

test('no other prices make a bay of so many works worth less, on every bay without axes of two shows', () => {
  let looked = 0
  for (const seed of [2, 3]) {
    const problem = showToPlan(seed, 40, 10)
    const model = jointModel(problem, scaleOf(problem))
    const { work, room, axis } = spreadPrices(model, 0.88)
    const size = model.bays * model.counts
    const [width, count] = [new Float64Array(size), new Float64Array(size)]
    countPrices(model, { work, room, width, count, run: new Float64Array(1) }, axis)
    const chance = chanceFrom(seed)
    for (let bay = 0; bay < model.bays; bay += 1) {
      if (model.axes[bay] !== 0) continue
      for (let many = 1; many <= (model.many[bay] ?? 0); many += 1) {
        const place = bay * model.counts + many
        const worth = (perWidth: number, brings: number) => {
          let sum = widthAt(model, bay, perWidth).worth - brings * many
          for (let each = 0; each < model.works; each += 1) {
            const [own, gap, perRoom] = [model.width[each] ?? 0, model.gap[bay] ?? 0, room[bay] ?? 0]
            const seen = model.served[bay * model.works + each] ?? 0
            sum += Math.max(0, seen - (work[each] ?? 0) - perWidth * own - perRoom * (own + gap) + brings)
          }
          return sum
        }
        const found = worth(width[place] ?? 0, count[place] ?? 0)
        looked += 1
        for (let tried = 0; tried < 60; tried += 1) {
          const perWidth = model.perUneven * (2 * chance() - 1)
          const brings = (count[place] ?? 0) + model.perUneven * (2 * chance() - 1) * 2 ** -(tried % 6)
          // Prices of width are halved only so often.
          expect(worth(perWidth, brings), `show ${seed}, bay ${bay}, ${many}`).toBeGreaterThan(found - 3e-4)
        }
      }
    }
  }
  expect(looked).toBeGreaterThan(60)
})
