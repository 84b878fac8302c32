/**
 * Prices to begin the joint bound with, of width and of works counted, for a bay with so many works: those at which just
 * so many are worth their price, and are as wide together as the bay's share wants.
 */
import type { JointModel } from './joint-model.ts'
import type { Prices } from './joint-way.ts'

/** A price of width is halved so often: it need not be exact. */
const halvings = 8

/** Sets `width` and `count` of prices whose `work` and `room` are set. */
export function countPrices(model: JointModel, prices: Prices, axis: Float64Array): void {
  const { works, bays, counts, many, gap, width, served, focal, axes, share, most, perUneven } = model
  const bare = new Float64Array(works)
  const above = new Float64Array(works)
  const sorted = new Float64Array(works)
  for (let bay = 0; bay < bays; bay += 1) {
    const perRoom = prices.room[bay] ?? 0
    for (let work = 0; work < works; work += 1)
      bare[work] =
        (served[bay * works + work] ?? 0) -
        (prices.work[work] ?? 0) -
        perRoom * ((width[work] ?? 0) + (gap[bay] ?? 0)) +
        (axes[bay] === 0 ? 0 : Math.max(0, (focal[bay * works + work] ?? 0) - (axis[bay] ?? 0)))
    for (let count = 1; count <= (many[bay] ?? 0); count += 1) {
      let [low, high] = [-perUneven, perUneven]
      for (let turn = 0; turn < halvings; turn += 1) {
        const wide = widthOfBest((low + high) / 2, count)
        if (wide > Math.min(share[bay] ?? 0, most[bay] ?? 0)) low = (low + high) / 2
        else high = (low + high) / 2
      }
      const place = bay * counts + count
      prices.width[place] = (low + high) / 2
      widthOfBest((low + high) / 2, count)
      const last = sorted[works - count] ?? 0
      prices.count[place] = Number.isFinite(last) ? -last : 0
    }
  }

  /** Width of so many works that are worth most above such a price; `sorted` is what works are worth. */
  function widthOfBest(price: number, count: number): number {
    for (let work = 0; work < works; work += 1) above[work] = (bare[work] ?? 0) - price * (width[work] ?? 0)
    sorted.set(above)
    sorted.sort()
    const least = sorted[works - count] ?? 0
    let [wide, more, last] = [0, 0, 0]
    for (let work = 0; work < works; work += 1) {
      const own = above[work] ?? 0
      if (own > least) {
        wide += width[work] ?? 0
        more += 1
      } else if (own === least) last = width[work] ?? 0
    }
    // Works of a series are worth the same: not all of them are among so many.
    return wide + (count - more) * last
  }
}
