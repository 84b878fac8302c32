/**
 * A bound that plays terms against one another: where each work is seen best, how even bays become, what stands on axes,
 * how far works stray from the order and how often a section begins anew can't all be at their best at once. Each work
 * gets a price for hanging, each bay one for its room, and for every count of its works one for their width and one for
 * being counted; with prices taken off the best way through the bays is found exactly, and what that and the prices add up
 * to is above every hang, whatever the prices are. They are moved until it is low (Lagrangian relaxation), beginning with
 * those for a free order.
 *
 * Pairs out of order are at least half of how far works are from their places, summed (Diaconis and Graham, Spearman's
 * footrule as a measure of disarray, Journal of the Royal Statistical Society B 39, 1977). Balance, light and rhythm are
 * taken at their best.
 */
import { countPrices } from './count-prices.ts'
import { hangsNowhere, type JointModel, jointModel } from './joint-model.ts'
import { JointWay, type Prices, type Used } from './joint-way.ts'
import { Steps } from './price-steps.ts'
import type { Problem } from './problem.ts'
import { spreadPrices } from './spread-prices.ts'
import type { Scale } from './terms.ts'

/** Of the price of one more run: with more at first, the first rounds go to lowering it. */
const runAtFirst = 0.1
/** Prices of a free order are near already. */
const firstStride = 0.05
/** Of a way: 16 bytes each. */
const mostStates = 4_000_000

/**
 * Yields the lowest bound after every round, and returns it; of all hangs that leave out only what may hang nowhere. Very
 * large shows have that of a free order, and no rounds: their ways would fill the memory.
 *
 * @param known the best quality known so far: the nearer to it, the shorter the steps
 * @param rounds at most
 */
export function* jointBound(
  problem: Problem,
  scale: Scale,
  known: () => number,
  rounds: number,
): Generator<number, number> {
  const some = problem.works.some(work => work.stays === null && !hangsNowhere(work))
  if (!some || problem.bays.length === 0) return 1
  const model = jointModel(problem, scale)
  const spread = spreadPrices(model, known())
  yield spread.bound
  if (JointWay.states(model) > mostStates) return spread.bound
  const way = new JointWay(model)
  const prices = pricesOf(model)
  prices.work.set(spread.work)
  prices.room.set(spread.room)
  countPrices(model, prices, spread.axis)
  prices.run[0] = runAtFirst * model.perRun
  const used = pricesOf(model)
  const steps = new Steps(prices, firstStride)
  for (let round = 0; round < rounds && !steps.done; round += 1) {
    const retreat = steps.told(boundWith(model, way, prices, used), prices)
    yield Math.min(spread.bound, steps.lowest)
    if (retreat) boundWith(model, way, prices, used)
    if (!steps.turn(used)) break
    moved(model, prices, steps.direction, steps.length(known()))
  }
  return Math.min(spread.bound, steps.lowest)
}

function pricesOf({ works, bays, counts }: JointModel): Prices {
  const perCount = () => new Float64Array(bays * counts)
  return {
    work: new Float64Array(works),
    width: perCount(),
    room: new Float64Array(bays),
    count: perCount(),
    run: new Float64Array(1),
  }
}

/** The bound that prices give; `used` becomes what is used beyond what there is. */
function boundWith(model: JointModel, way: JointWay, prices: Prices, used: Used): number {
  const { works, bays, base, fewestRuns } = model
  let bound = base + way.find(prices) + (prices.run[0] ?? 0) * fewestRuns
  used.work.fill(-1)
  used.count.fill(0)
  used.width.fill(0)
  used.room.fill(0)
  used.run[0] = -fewestRuns
  for (let work = 0; work < works; work += 1) bound += prices.work[work] ?? 0
  way.read(prices, used)
  if (prices.run[0] === model.perRun) used.run[0] = Math.min(0, used.run[0] ?? 0)
  // Room that is left over and costs nothing stays so.
  for (let bay = 0; bay < bays; bay += 1) if (prices.room[bay] === 0) used.room[bay] = Math.max(0, used.room[bay] ?? 0)
  return bound
}

/** Dearer what is used too much, by so much of a direction. */
function moved({ works, bays, perRun, perUneven }: JointModel, prices: Prices, direction: Used, each: number): void {
  // More runs than need be cost what they cost; fewer than there can be bring nothing.
  prices.run[0] = Math.max(0, Math.min(perRun, (prices.run[0] ?? 0) + each * (direction.run[0] ?? 0)))
  for (let work = 0; work < works; work += 1)
    prices.work[work] = (prices.work[work] ?? 0) + each * (direction.work[work] ?? 0)
  for (let bay = 0; bay < bays; bay += 1)
    prices.room[bay] = Math.max(0, (prices.room[bay] ?? 0) + each * (direction.room[bay] ?? 0))
  for (let place = 0; place < prices.count.length; place += 1) {
    const width = (prices.width[place] ?? 0) + each * (direction.width[place] ?? 0)
    prices.width[place] = Math.max(-perUneven, Math.min(perUneven, width))
    // A work counted is one that hangs: where more hang than are counted, each brings less.
    prices.count[place] = (prices.count[place] ?? 0) - each * (direction.count[place] ?? 0)
  }
}
