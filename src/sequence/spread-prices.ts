/**
 * Prices to begin the joint bound with: those at which works spread over the bays if their order were free. Then every
 * work hangs where it is worth most above the prices of width, room and axes, and only these are moved (a Lagrangian dual
 * with three prices a bay): hundreds of rounds cost what a few of the joint bound do, and it begins where they end.
 */
import type { JointModel } from './joint-model.ts'
import { Steps, widthAt } from './price-steps.ts'

export interface SpreadPrices {
  /** Above every hang, as the joint bound is: the order at its best. */
  readonly bound: number
  /** Of each work what it is worth where it is worth most; by bay, of width and of room. */
  readonly work: Float64Array
  readonly width: Float64Array
  readonly room: Float64Array
}

const mostRounds = 600

/** @param known the best quality known */
export function spreadPrices(model: JointModel, known: number): SpreadPrices {
  const { works, bays, perUneven, axes, room } = model
  const prices = { width: new Float64Array(bays), room: new Float64Array(bays), axis: startOnAxes(model) }
  const used = { width: new Float64Array(bays), room: new Float64Array(bays), axis: new Float64Array(bays) }
  const steps = new Steps(prices, 1)
  for (let round = 0; round < mostRounds && !steps.done; round += 1) {
    const retreat = steps.told(bound(null), prices)
    if (retreat) bound(null)
    for (let bay = 0; bay < bays; bay += 1) {
      // What is left over and costs nothing stays so.
      if (prices.room[bay] === 0) used.room[bay] = Math.max(0, used.room[bay] ?? 0)
      if (prices.axis[bay] === 0) used.axis[bay] = Math.max(0, used.axis[bay] ?? 0)
    }
    if (!steps.turn(used)) break
    const each = steps.length(known)
    for (let bay = 0; bay < bays; bay += 1) {
      // Beyond these a bay would be left empty or filled, whatever it costs: the price of room says that.
      const width = (prices.width[bay] ?? 0) + each * (steps.direction.width[bay] ?? 0)
      prices.width[bay] = Math.max(-perUneven, Math.min(perUneven, width))
      prices.room[bay] = Math.max(0, (prices.room[bay] ?? 0) + each * (steps.direction.room[bay] ?? 0))
      prices.axis[bay] = Math.max(0, (prices.axis[bay] ?? 0) + each * (steps.direction.axis[bay] ?? 0))
    }
  }
  steps.back(prices)
  const work = new Float64Array(works)
  return { bound: bound(work), work, width: prices.width, room: prices.room }

  /** What no hang exceeds at these prices; `used` becomes what is used beyond what there is. */
  function bound(tops: Float64Array | null): number {
    let sum = model.base
    for (let bay = 0; bay < bays; bay += 1) {
      const [own, space, lines] = [widthAt(model, bay, prices.width[bay] ?? 0), room[bay] ?? 0, axes[bay] ?? 0]
      sum += own.worth + (prices.room[bay] ?? 0) * space + (prices.axis[bay] ?? 0) * lines
      used.width[bay] = -own.width
      used.room[bay] = -space
      used.axis[bay] = -lines
    }
    for (let work = 0; work < works; work += 1) {
      const own = model.width[work] ?? 0
      let [top, on] = [Number.NEGATIVE_INFINITY, 0]
      for (let bay = 0; bay < bays; bay += 1) {
        const taken = (prices.width[bay] ?? 0) * own + (prices.room[bay] ?? 0) * (own + (model.gap[bay] ?? 0))
        const worth = (model.served[bay * works + work] ?? 0) - taken + Math.max(0, aboveAxis(work, bay))
        if (worth > top) [top, on] = [worth, bay]
      }
      sum += top
      if (tops !== null) tops[work] = top
      used.width[on] = (used.width[on] ?? 0) + own
      used.room[on] = (used.room[on] ?? 0) + own + (model.gap[on] ?? 0)
      if (aboveAxis(work, on) > 0) used.axis[on] = (used.axis[on] ?? 0) + 1
    }
    return sum
  }

  function aboveAxis(work: number, bay: number): number {
    return axes[bay] === 0 ? 0 : (model.focal[bay * works + work] ?? 0) - (prices.axis[bay] ?? 0)
  }
}

/** As dear as the first work that finds no axis, if the heaviest take all. */
function startOnAxes({ works, bays, axes, focal }: JointModel): Float64Array {
  const most = Float64Array.from({ length: works }, (_, work) => {
    let top = 0
    for (let bay = 0; bay < bays; bay += 1) top = Math.max(top, focal[bay * works + work] ?? 0)
    return top
  }).sort()
  const lines = axes.reduce((sum, own) => sum + own, 0)
  return new Float64Array(bays).fill(most[works - 1 - lines] ?? 0)
}
