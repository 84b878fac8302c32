/**
 * Works that may be worth their price on a bay, for the joint bound: what they are worth beyond it, by section, for any
 * count of works before and after the bay. Works of one place in the order are off by the same, so that a group of them
 * is weighed at once: those most above their price first, as many as are worth it.
 */
import type { JointModel } from './joint-model.ts'
import type { Prices } from './joint-way.ts'

export class ListedWorks {
  /** By section, of the counts asked about last. */
  readonly opened: Float64Array
  /** Works that stand on axes: so many of the first. */
  readonly onAxis: Int32Array
  standing = 0
  private readonly model: JointModel
  private bay = 0
  /** By work, how much it is above its price before its order; -Infinity where it is not listed. */
  private readonly above: Float64Array
  /** The same group by group, rising in each; and in each the sums from a place to its end. */
  private readonly sorted: Float64Array
  private readonly sums: Float64Array
  /** Where each group ends among these, and one work of it. */
  private readonly groupEnd: Int32Array
  private readonly groupWork: Int32Array
  private groups = 0
  /** By bay with axes, the works to which an axis adds anything, those first to which it adds most. */
  private readonly byFocal: readonly Int32Array[]
  private readonly more: Float64Array

  constructor(model: JointModel) {
    const { works, bays, sections, axes, focal } = model
    this.model = model
    this.opened = new Float64Array(sections)
    this.onAxis = new Int32Array(works)
    this.above = new Float64Array(works)
    this.sorted = new Float64Array(works)
    this.sums = new Float64Array(works)
    this.groupEnd = new Int32Array(works)
    this.groupWork = new Int32Array(works)
    this.more = new Float64Array(works)
    this.byFocal = Array.from({ length: bays }, (_, bay) => {
      const own = focal.subarray(bay * works, (bay + 1) * works)
      const some = axes[bay] === 0 ? [] : [...own.keys()].filter(work => (own[work] ?? 0) > 0)
      return Int32Array.from(some.sort((a, b) => (own[b] ?? 0) - (own[a] ?? 0)))
    })
  }

  /** Lists the works of a bay at such prices. */
  list(prices: Prices, bay: number): void {
    const { works, served, focal, axes, width, gap, section, low } = this.model
    const seen = (axes[bay] ?? 0) > 0
    const [perWidth, perRoom, brings] = [prices.width[bay] ?? 0, prices.room[bay] ?? 0, prices.count[bay] ?? 0]
    this.bay = bay
    this.groups = 0
    let [many, last] = [0, -1]
    for (let work = 0; work < works; work += 1) {
      const own = width[work] ?? 0
      const above =
        (served[bay * works + work] ?? 0) -
        (prices.work[work] ?? 0) -
        perWidth * own -
        perRoom * (own + (gap[bay] ?? 0)) +
        brings
      if (above + (seen ? (focal[bay * works + work] ?? 0) : 0) <= 0) {
        this.above[work] = Number.NEGATIVE_INFINITY
        continue
      }
      this.above[work] = above
      if (last < 0 || section[last] !== section[work] || low[last] !== low[work]) {
        this.groupWork[this.groups] = work
        this.groups += 1
      }
      this.sorted[many] = above
      many += 1
      this.groupEnd[this.groups - 1] = many
      last = work
    }
    this.sum()
  }

  private sum(): void {
    let from = 0
    for (let group = 0; group < this.groups; group += 1) {
      const end = this.groupEnd[group] ?? 0
      if (end - from > 1) this.sorted.subarray(from, end).sort()
      let sum = 0
      for (let place = end - 1; place >= from; place -= 1) {
        sum += this.sorted[place] ?? 0
        this.sums[place] = sum
      }
      from = end
    }
  }

  /** Worth of a work above its price, less what its place in the order costs it at the least. */
  worthOf(work: number, begin: number, end: number): number {
    return (this.above[work] ?? 0) - this.offCost(work, begin, end)
  }

  private offCost(work: number, begin: number, end: number): number {
    const { step, works, perTurned, low, high } = this.model
    const late = begin * step + 1 - (high[work] ?? 0)
    const early = (low[work] ?? 0) - Math.min(works, end * step + step - 1)
    return 0.5 * perTurned * Math.max(0, late, early)
  }

  /** What sections are worth on the bay with such counts goes to `opened`; returns what axes add. */
  open(begin: number, end: number): number {
    const { opened, sorted, sums, groupEnd, groupWork } = this
    opened.fill(0)
    let from = 0
    for (let group = 0; group < this.groups; group += 1) {
      const to = groupEnd[group] ?? 0
      const work = groupWork[group] ?? 0
      const cost = this.offCost(work, begin, end)
      let place = to
      while (place > from && (sorted[place - 1] ?? 0) > cost) place -= 1
      if (place < to) {
        const own = this.model.section[work] ?? 0
        opened[own] = (opened[own] ?? 0) + (sums[place] ?? 0) - (to - place) * cost
      }
      from = to
    }
    this.standing = 0
    const lines = this.model.axes[this.bay] ?? 0
    return lines === 0 ? 0 : this.stand(lines, begin, end)
  }

  /** The works to which axes add most stand on them. */
  private stand(lines: number, begin: number, end: number): number {
    const { more, onAxis } = this
    const { focal, works } = this.model
    for (const work of this.byFocal[this.bay] ?? []) {
      const own = focal[this.bay * works + work] ?? 0
      const least = this.standing === lines ? (more[lines - 1] ?? 0) : 0
      // No work after it adds more than an axis does.
      if (own <= least) break
      const worth = this.worthOf(work, begin, end)
      const adds = Math.max(0, worth + own) - Math.max(0, worth)
      if (!(adds > least)) continue
      let line = this.standing < lines ? this.standing : lines - 1
      for (; line > 0 && (more[line - 1] ?? 0) < adds; line -= 1) {
        more[line] = more[line - 1] ?? 0
        onAxis[line] = onAxis[line - 1] ?? 0
      }
      more[line] = adds
      onAxis[line] = work
      this.standing = Math.min(lines, this.standing + 1)
    }
    let added = 0
    for (let line = 0; line < this.standing; line += 1) added += more[line] ?? 0
    return added
  }
}
