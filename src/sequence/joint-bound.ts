/**
 * A bound that plays terms against one another: where each work is seen best, how even bays become, what stands on axes,
 * how far works stray from the order and how often a section begins anew can't all be at their best at once. Each work
 * gets a price for hanging, each bay prices for its width, its room and its count of works; with prices taken off the
 * best way through the bays is found exactly, and what that and the prices add up to is above every hang, whatever the
 * prices are. They are moved until it is low (Lagrangian relaxation by subgradients: Held, Wolfe and Crowder,
 * Mathematical Programming 6, 1974).
 *
 * Pairs out of order are at least half of how far works are from their places, summed (Diaconis and Graham, Spearman's
 * footrule as a measure of disarray, Journal of the Royal Statistical Society B 39, 1977). Balance, light and rhythm are
 * taken at their best.
 */
import { hangsNowhere, type JointModel, jointModel } from './joint-model.ts'
import { JointWay, type Prices, type Used } from './joint-way.ts'
import type { Problem } from './problem.ts'
import type { Scale } from './terms.ts'

/** Rounds without a lower bound after which steps become shorter; how much; and how short they are at the end. */
const patience = 15
const shorter = 0.7
const shortest = 1e-3
/** How much of its last direction a step keeps, so that it does not go to and fro. */
const steady = 0.7

/**
 * Yields the lowest bound after every round, and returns it; of all hangs that leave out only what may hang nowhere.
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
  const way = new JointWay(model)
  const prices = pricesOf(model)
  for (let work = 0; work < model.works; work += 1) {
    let top = 0
    for (let bay = 0; bay < model.bays; bay += 1) top = Math.max(top, model.served[bay * model.works + work] ?? 0)
    prices.work[work] = top
  }
  prices.run[0] = model.perRun
  const used = pricesOf(model)
  const kept = pricesOf(model)
  const direction = pricesOf(model)
  let [lowest, stride, idle] = [Number.POSITIVE_INFINITY, 1, 0]
  for (let round = 0; round < rounds && stride > shortest; round += 1) {
    const bound = boundWith(model, way, prices, used)
    if (bound < lowest - 1e-6) idle = 0
    else idle += 1
    if (bound < lowest) {
      lowest = bound
      copy(prices, kept)
    }
    yield lowest
    if (idle > patience) {
      stride *= shorter
      idle = 0
      copy(kept, prices)
      boundWith(model, way, prices, used)
    }
    if (!turned(direction, used)) break
    moved(model, prices, direction, stride * Math.max(1e-6, lowest - known()))
  }
  return lowest
}

function pricesOf({ works, bays }: JointModel): Prices {
  const perBay = () => new Float64Array(bays)
  return { work: new Float64Array(works), width: perBay(), room: perBay(), count: perBay(), run: new Float64Array(1) }
}

function copy(from: Prices, to: Prices): void {
  to.work.set(from.work)
  to.width.set(from.width)
  to.room.set(from.room)
  to.count.set(from.count)
  to.run.set(from.run)
}

/** The bound that prices give; `used` becomes what is used beyond what there is. */
function boundWith(model: JointModel, way: JointWay, prices: Prices, used: Used): number {
  const { works, bays, share, most, room, perUneven, base, fewestRuns } = model
  let bound = base + way.find(prices) + (prices.run[0] ?? 0) * fewestRuns
  used.work.fill(-1)
  used.count.fill(0)
  used.run[0] = -fewestRuns
  for (let work = 0; work < works; work += 1) bound += prices.work[work] ?? 0
  for (let bay = 0; bay < bays; bay += 1) {
    const [even, full, price] = [share[bay] ?? 0, most[bay] ?? 0, prices.width[bay] ?? 0]
    const worth = (width: number) => price * width - perUneven * Math.abs(width - even)
    // A piecewise linear function is at its best at an end or where it bends.
    const bend = Math.min(even, full)
    const top = worth(0) > worth(bend) ? 0 : bend
    const width = worth(full) > worth(top) ? full : top
    bound += worth(width) + (prices.room[bay] ?? 0) * (room[bay] ?? 0)
    used.width[bay] = -width
    used.room[bay] = -(room[bay] ?? 0)
  }
  way.read(prices, used)
  if (prices.run[0] === model.perRun) used.run[0] = Math.min(0, used.run[0] ?? 0)
  // Room that is left over and costs nothing stays so.
  for (let bay = 0; bay < bays; bay += 1) if (prices.room[bay] === 0) used.room[bay] = Math.max(0, used.room[bay] ?? 0)
  return bound
}

/** Turns a direction towards what is used too much; false where all is used as it is there. */
function turned(direction: Used, used: Used): boolean {
  let some = false
  for (const kind of ['work', 'width', 'room', 'count', 'run'] as const) {
    const [old, now] = [direction[kind], used[kind]]
    for (let index = 0; index < now.length; index += 1) {
      if (now[index] !== 0) some = true
      old[index] = (now[index] ?? 0) + steady * (old[index] ?? 0)
    }
  }
  return some
}

/** Dearer what is used too much, by steps that together are `by`. */
function moved({ works, bays, perRun }: JointModel, prices: Prices, direction: Used, by: number): void {
  let size = (direction.run[0] ?? 0) ** 2
  for (let work = 0; work < works; work += 1) size += (direction.work[work] ?? 0) ** 2
  for (let bay = 0; bay < bays; bay += 1)
    size += (direction.width[bay] ?? 0) ** 2 + (direction.room[bay] ?? 0) ** 2 + (direction.count[bay] ?? 0) ** 2
  const each = by / Math.max(1e-12, size)
  // More runs than need be cost what they cost; fewer than there can be bring nothing.
  prices.run[0] = Math.max(0, Math.min(perRun, (prices.run[0] ?? 0) + each * (direction.run[0] ?? 0)))
  for (let work = 0; work < works; work += 1)
    prices.work[work] = (prices.work[work] ?? 0) + each * (direction.work[work] ?? 0)
  for (let bay = 0; bay < bays; bay += 1) {
    prices.width[bay] = (prices.width[bay] ?? 0) + each * (direction.width[bay] ?? 0)
    prices.room[bay] = Math.max(0, (prices.room[bay] ?? 0) + each * (direction.room[bay] ?? 0))
    // A work counted is one that hangs: where more hang than are counted, each brings less.
    prices.count[bay] = (prices.count[bay] ?? 0) - each * (direction.count[bay] ?? 0)
  }
}
