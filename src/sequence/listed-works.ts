/**
 * Works that may be worth their price on a bay, for the joint bound: what they are worth beyond it, by section, wherever
 * the bay begins. Works of one place in the order are off by the same, so that a group of them is weighed at once: those
 * most above their price first, as many as are worth it.
 */
import type { JointModel } from './joint-model.ts'
import type { Prices } from './joint-way.ts'

export class ListedWorks {
  /**
   * By section and count of works before the bay, of what was opened last: what its works there are worth; where none is
   * worth its price, what the one that costs least does, down to the price of a run; -Infinity where none is listed.
   */
  readonly opened: Float64Array
  /** Sections that have works there, and the counts between which they have them. */
  readonly some: Int32Array
  sections = 0
  readonly first: Int32Array
  readonly last: Int32Array
  /** By count of works before the bay, what axes add. */
  readonly added: Float64Array
  /** Works that stand on axes, of the count opened last: so many of the first. */
  readonly onAxis: Int32Array
  standing = 0
  private readonly model: JointModel
  private bay = 0
  private least = 0
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
  /** Those of them that are listed and may stand on one. */
  private readonly mayStand: Int32Array
  private maybe = 0

  constructor(model: JointModel) {
    const { works, bays, sections, axes, focal } = model
    this.model = model
    this.opened = new Float64Array(sections * (works + 1)).fill(Number.NEGATIVE_INFINITY)
    this.some = new Int32Array(sections)
    this.first = new Int32Array(sections)
    this.last = new Int32Array(sections).fill(-1)
    this.added = new Float64Array(works + 1)
    this.onAxis = new Int32Array(works)
    this.above = new Float64Array(works)
    this.sorted = new Float64Array(works)
    this.sums = new Float64Array(works)
    this.groupEnd = new Int32Array(works)
    this.groupWork = new Int32Array(works)
    this.more = new Float64Array(works)
    this.mayStand = new Int32Array(works)
    this.byFocal = Array.from({ length: bays }, (_, bay) => {
      const own = focal.subarray(bay * works, (bay + 1) * works)
      const some = axes[bay] === 0 ? [] : [...own.keys()].filter(work => (own[work] ?? 0) > 0)
      return Int32Array.from(some.sort((a, b) => (own[b] ?? 0) - (own[a] ?? 0)))
    })
  }

  /** Lists the works of a bay at such prices, if it has so many. */
  list(prices: Prices, bay: number, count: number): void {
    const { works, served, focal, axes, width, gap, section, low, counts } = this.model
    const seen = (axes[bay] ?? 0) > 0
    const place = bay * counts + count
    const [perRoom, brings] = [prices.room[bay] ?? 0, prices.count[place] ?? 0]
    const [perWidth, fixed] = [(prices.width[place] ?? 0) + perRoom, brings - perRoom * (gap[bay] ?? 0)]
    this.bay = bay
    this.least = -(prices.run[0] ?? 0)
    this.groups = 0
    let [many, last] = [0, -1]
    for (let work = 0; work < works; work += 1) {
      const above = (served[bay * works + work] ?? 0) - (prices.work[work] ?? 0) - perWidth * (width[work] ?? 0) + fixed
      const most = seen ? above + (focal[bay * works + work] ?? 0) : above
      if (most <= this.least) {
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
    if (seen) this.listStanding()
  }

  /** Those that an axis can make worth their price, in the order in which axes add to them. */
  private listStanding(): void {
    const { focal, works } = this.model
    this.maybe = 0
    for (const work of this.byFocal[this.bay] ?? []) {
      if ((this.above[work] ?? 0) + (focal[this.bay * works + work] ?? 0) <= 0) continue
      this.mayStand[this.maybe] = work
      this.maybe += 1
    }
  }

  private sum(): void {
    let from = 0
    for (let group = 0; group < this.groups; group += 1) {
      const end = this.groupEnd[group] ?? 0
      if (end - from > 1) this.sort(from, end)
      let sum = 0
      for (let place = end - 1; place >= from; place -= 1) {
        sum += this.sorted[place] ?? 0
        this.sums[place] = sum
      }
      from = end
    }
  }

  /** By insertion: groups are short. */
  private sort(from: number, end: number): void {
    const { sorted } = this
    if (end - from > 40) {
      sorted.subarray(from, end).sort()
      return
    }
    for (let next = from + 1; next < end; next += 1) {
      const own = sorted[next] ?? 0
      let place = next
      for (; place > from && (sorted[place - 1] ?? 0) > own; place -= 1) sorted[place] = sorted[place - 1] ?? 0
      sorted[place] = own
    }
  }

  /** Worth of a work above its price, less what its place in the order costs it at the least. */
  worthOf(work: number, begin: number, end: number): number {
    const { perTurned, low, high } = this.model
    const off = Math.max(0, begin + 1 - (high[work] ?? 0), (low[work] ?? 0) - end)
    return (this.above[work] ?? 0) - 0.5 * perTurned * off
  }

  /** What sections and axes are worth on the bay with so many works and `from` to `to` before it. */
  open(count: number, from: number, to: number): void {
    this.close()
    const { groupEnd, groupWork, sorted, first, last } = this
    const { section, low, high, perTurned } = this.model
    const each = 0.5 * perTurned
    let start = 0
    for (let group = 0; group < this.groups; group += 1) {
      const end = groupEnd[group] ?? 0
      const work = groupWork[group] ?? 0
      const farthest = each > 0 ? ((sorted[end - 1] ?? 0) - this.least) / each : Number.POSITIVE_INFINITY
      const early = Math.max(from, Math.ceil((low[work] ?? 0) - count - farthest))
      const late = Math.min(to, Math.floor((high[work] ?? 0) - 1 + farthest))
      if (early <= late) {
        const own = section[work] ?? 0
        if ((last[own] ?? 0) < 0) {
          this.some[this.sections] = own
          this.sections += 1
          first[own] = early
          last[own] = late
        } else {
          first[own] = Math.min(first[own] ?? 0, early)
          last[own] = Math.max(last[own] ?? 0, late)
        }
        this.openGroup(start, end, work, count, early, late)
      }
      start = end
    }
    const lines = this.model.axes[this.bay] ?? 0
    this.standing = 0
    if (lines === 0) this.added.fill(0, from, to + 1)
    else for (let begin = from; begin <= to; begin += 1) this.added[begin] = this.stand(lines, begin, begin + count)
  }

  private close(): void {
    const { opened, some, first, last } = this
    for (let index = 0; index < this.sections; index += 1) {
      const own = some[index] ?? 0
      const row = own * (this.model.works + 1)
      opened.fill(Number.NEGATIVE_INFINITY, row + (first[own] ?? 0), row + (last[own] ?? 0) + 1)
      last[own] = -1
    }
    this.sections = 0
  }

  private openGroup(start: number, end: number, work: number, count: number, early: number, late: number): void {
    const { opened, sorted, sums } = this
    const { section, low, high, perTurned, works } = this.model
    const row = (section[work] ?? 0) * (works + 1)
    const [lowest, highest, most] = [low[work] ?? 0, high[work] ?? 0, sorted[end - 1] ?? 0]
    let place = end
    for (let begin = early; begin <= late; begin += 1) {
      const cost = 0.5 * perTurned * Math.max(0, begin + 1 - highest, lowest - begin - count)
      const had = opened[row + begin] ?? 0
      if (most <= cost) {
        opened[row + begin] = Math.max(had, most - cost)
        continue
      }
      while (place > start && (sorted[place - 1] ?? 0) > cost) place -= 1
      while ((sorted[place] ?? 0) <= cost) place += 1
      opened[row + begin] = Math.max(0, had) + (sums[place] ?? 0) - (end - place) * cost
    }
  }

  /** The works to which axes add most stand on them; returns what they add. */
  private stand(lines: number, begin: number, end: number): number {
    const { more, onAxis, mayStand } = this
    const { focal, works } = this.model
    const from = this.bay * works
    this.standing = 0
    for (let index = 0; index < this.maybe; index += 1) {
      const work = mayStand[index] ?? 0
      const own = focal[from + work] ?? 0
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
