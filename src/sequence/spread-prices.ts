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
  /** Of each work what it is worth where it is worth most; by bay, of width, of room and of standing on an axis. */
  readonly work: Float64Array
  readonly width: Float64Array
  readonly room: Float64Array
  readonly axis: Float64Array
}

const mostRounds = 600

/**
 * @param known the best quality known
 * @param out works that a hang may leave out, at most, beside those that may hang nowhere: they are worth nothing then
 */
export function spreadPrices(model: JointModel, known: number, out = 0): SpreadPrices {
  const { works, bays, perUneven, axes, room } = model
  const prices = { width: new Float64Array(bays), room: new Float64Array(bays), axis: startOnAxes(model) }
  const used = { width: new Float64Array(bays), room: new Float64Array(bays), axis: new Float64Array(bays) }
  const tops = new Float64Array(works)
  const on = new Int32Array(works)
  const none: ReadonlySet<number> = new Set()
  const steps = new Steps(prices, 1)
  for (let round = 0; round < mostRounds && !steps.done; round += 1) {
    const retreat = steps.told(bound(), prices)
    if (retreat) bound()
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
  return { bound: bound(), work: tops, width: prices.width, room: prices.room, axis: prices.axis }

  /** What no hang exceeds at these prices; `used` becomes what is used beyond what there is. */
  function bound(): number {
    let sum = model.base
    for (let bay = 0; bay < bays; bay += 1) {
      const [own, space, lines] = [widthAt(model, bay, prices.width[bay] ?? 0), room[bay] ?? 0, axes[bay] ?? 0]
      sum += own.worth + (prices.room[bay] ?? 0) * space + (prices.axis[bay] ?? 0) * lines
      used.width[bay] = -own.width
      used.room[bay] = -space
      used.axis[bay] = -lines
    }
    tops.fill(Number.NEGATIVE_INFINITY)
    for (let bay = 0; bay < bays; bay += 1) {
      const [perRoom, from] = [prices.room[bay] ?? 0, bay * works]
      const [perWidth, fixed] = [(prices.width[bay] ?? 0) + perRoom, perRoom * (model.gap[bay] ?? 0)]
      const lines = axes[bay] !== 0
      for (let work = 0; work < works; work += 1) {
        let worth = (model.served[from + work] ?? 0) - perWidth * (model.width[work] ?? 0) - fixed
        if (lines) worth += Math.max(0, aboveAxis(work, bay))
        if (worth <= (tops[work] ?? 0)) continue
        tops[work] = worth
        on[work] = bay
      }
    }
    const leftOut = leastWorth()
    for (let work = 0; work < works; work += 1) {
      if (leftOut.has(work)) continue
      const [own, where] = [model.width[work] ?? 0, on[work] ?? 0]
      sum += tops[work] ?? 0
      used.width[where] = (used.width[where] ?? 0) + own
      used.room[where] = (used.room[where] ?? 0) + own + (model.gap[where] ?? 0)
      if (aboveAxis(work, where) > 0) used.axis[where] = (used.axis[where] ?? 0) + 1
    }
    return sum
  }

  /** Works that cost more than they bring wherever they hang: as many of the worst as may be left out. */
  function leastWorth(): ReadonlySet<number> {
    if (out === 0) return none
    const worst = [...tops.keys()].filter(work => (tops[work] ?? 0) < 0)
    return new Set(worst.sort((a, b) => (tops[a] ?? 0) - (tops[b] ?? 0)).slice(0, out))
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
