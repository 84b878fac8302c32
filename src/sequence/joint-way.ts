/**
 * The best way through the bays when every work has its price: for each bay how many works come before it, which
 * sections it has and which of them goes on from the bay before, by dynamic programming along the visitor's way. What a
 * bay holds is free but for that: each work whose worth there is above its price.
 */
import type { JointModel } from './joint-model.ts'

export interface Prices {
  /** Of each work: taken off wherever it hangs. */
  readonly work: Float64Array
  /** By bay: of width and of room, taken off; and what each of its works brings, taken off for each it is counted as. */
  readonly width: Float64Array
  readonly room: Float64Array
  readonly count: Float64Array
  /** Of one more run of a section; a single figure. */
  readonly run: Float64Array
}

/** How often each work hangs; by bay the width and room taken, and how many more works than it is counted as; runs. */
export type Used = Prices

export class JointWay {
  private readonly model: JointModel
  private readonly links: number
  /** By bay, count of works before it and section that goes on into it (the last for none): the best so far. */
  private readonly best: Float64Array
  private readonly fromCut: Int32Array
  private readonly fromLink: Int32Array
  /** Of the bay looked at: works that may be worth their price, and by how much before their order. */
  private readonly listed: Int32Array
  private readonly above: Float64Array
  private many = 0
  /** Of the bay and counts looked at. */
  private readonly opened: Float64Array
  private readonly more: Float64Array
  /** Works that stand on axes: so many of the first. */
  private readonly onAxis: Int32Array
  private standing = 0

  constructor(model: JointModel) {
    const { works, bays, sections, cuts } = model
    this.model = model
    this.links = sections + 1
    this.best = new Float64Array((bays + 1) * cuts * this.links)
    this.fromCut = new Int32Array(this.best.length)
    this.fromLink = new Int32Array(this.best.length)
    this.listed = new Int32Array(works)
    this.above = new Float64Array(works)
    this.opened = new Float64Array(sections)
    this.more = new Float64Array(works)
    this.onAxis = new Int32Array(works)
  }

  /** What the best way is worth with its prices taken off. */
  find(prices: Prices): number {
    const { bays, works } = this.model
    this.best.fill(Number.NEGATIVE_INFINITY)
    this.best[this.links - 1] = 0
    for (let bay = 0; bay < bays; bay += 1) this.pass(prices, bay)
    return (this.best[this.end()] ?? 0) - (prices.count[bays - 1] ?? 0) * works
  }

  /** What the way found last uses, added to `used`. */
  read(prices: Prices, used: Used): void {
    const { bays, works, cuts } = this.model
    let state = this.end()
    let after = works
    for (let bay = bays - 1; bay >= 0; bay -= 1) {
      const link = state % this.links
      const end = Math.floor(state / this.links) - (bay + 1) * cuts
      const begin = this.fromCut[state] ?? 0
      const by = this.fromLink[state] ?? 0
      const before = bay === 0 ? 0 : this.countedAt(begin, this.turn(prices, bay - 1))
      used.count[bay] = (used.count[bay] ?? 0) - (after - before)
      if (by >= 0) this.use(prices, used, bay, begin, end, by, link)
      state = (bay * cuts + begin) * this.links + (by < 0 ? link : by)
      after = before
    }
  }

  /** The best of all states after the last bay. */
  private end(): number {
    const from = (this.model.bays * this.model.cuts + this.model.cuts - 1) * this.links
    let best = from
    for (let link = from; link < from + this.links; link += 1)
      if ((this.best[link] ?? 0) > (this.best[best] ?? 0)) best = link
    return best
  }

  /** What each work before the next bay brings. */
  private turn(prices: Prices, bay: number): number {
    return bay === this.model.bays - 1 ? 0 : (prices.count[bay + 1] ?? 0) - (prices.count[bay] ?? 0)
  }

  /** Of the counts that are told as one, the one that brings most. */
  private countedAt(cut: number, turn: number): number {
    const { step, works } = this.model
    return turn > 0 ? Math.min(works, cut * step + step - 1) : cut * step
  }

  private pass(prices: Prices, bay: number): void {
    const { cuts, step, many, sections } = this.model
    const perRun = prices.run[0] ?? 0
    this.list(prices, bay)
    const turn = this.turn(prices, bay)
    const reach = Math.floor(((many[bay] ?? 0) + step - 1) / step)
    const { best, opened, links } = this
    for (let begin = 0; begin < cuts; begin += 1) {
      const from = (bay * cuts + begin) * links
      const none = best[from + sections] ?? 0
      if (none === Number.NEGATIVE_INFINITY) continue
      for (let end = begin; end < cuts && end <= begin + reach; end += 1) {
        const to = ((bay + 1) * cuts + end) * links
        const brings = turn * this.countedAt(end, turn)
        if (end === begin) {
          // Nothing hangs there: what goes on goes past it.
          for (let link = 0; link < links; link += 1)
            this.reach(to + link, (best[from + link] ?? 0) + brings, begin, -1)
          if (step === 1) continue
        }
        let plain = this.open(bay, begin, end) + brings
        let [top, by] = [none, sections]
        for (let section = 0; section < sections; section += 1) {
          const own = opened[section] ?? 0
          if (own > perRun) plain += own - perRun
          const on = (best[from + section] ?? 0) + Math.min(own, perRun)
          if (on > top) {
            top = on
            by = section
          }
        }
        this.reach(to + sections, plain + top, begin, by)
        for (let section = 0; section < sections; section += 1) {
          const own = opened[section] ?? 0
          if (own > 0) this.reach(to + section, plain + top + Math.min(0, own - perRun), begin, by)
          const on = best[from + section] ?? 0
          // One more run is all that a section saves by going on.
          if (on > none - perRun) this.reach(to + section, plain + on + Math.min(own, perRun), begin, section)
        }
      }
    }
  }

  private reach(state: number, value: number, begin: number, by: number): void {
    if (value <= (this.best[state] ?? 0)) return
    this.best[state] = value
    this.fromCut[state] = begin
    this.fromLink[state] = by
  }

  /** Works of a bay that may be worth their price. */
  private list(prices: Prices, bay: number): void {
    const { works, served, focal, axes, width, gap } = this.model
    const seen = (axes[bay] ?? 0) > 0
    const [perWidth, perRoom, brings] = [prices.width[bay] ?? 0, prices.room[bay] ?? 0, prices.count[bay] ?? 0]
    this.many = 0
    for (let work = 0; work < works; work += 1) {
      const own = width[work] ?? 0
      const above =
        (served[bay * works + work] ?? 0) -
        (prices.work[work] ?? 0) -
        perWidth * own -
        perRoom * (own + (gap[bay] ?? 0)) +
        brings
      if (above + (seen ? (focal[bay * works + work] ?? 0) : 0) <= 0) continue
      this.above[work] = above
      this.listed[this.many] = work
      this.many += 1
    }
  }

  /** Worth of a listed work above its price, less what its place in the order costs it at the least. */
  private worthOf(work: number, begin: number, end: number): number {
    const { step, works, high, low, perTurned } = this.model
    const late = begin * step + 1 - (high[work] ?? 0)
    const early = (low[work] ?? 0) - Math.min(works, end * step + step - 1)
    const off = Math.max(late, early)
    return (this.above[work] ?? 0) - (off > 0 ? 0.5 * perTurned * off : 0)
  }

  /** What sections are worth on a bay with such counts; returns what axes add. */
  private open(bay: number, begin: number, end: number): number {
    const { section, axes, focal, works } = this.model
    const { opened, more } = this
    opened.fill(0)
    const lines = axes[bay] ?? 0
    let heavy = 0
    for (let index = 0; index < this.many; index += 1) {
      const work = this.listed[index] ?? 0
      const worth = this.worthOf(work, begin, end)
      const own = section[work] ?? 0
      if (worth > 0) opened[own] = (opened[own] ?? 0) + worth
      if (lines === 0) continue
      const adds = Math.max(0, worth + (focal[bay * works + work] ?? 0)) - Math.max(0, worth)
      if (adds <= 0) continue
      more[heavy] = adds
      this.onAxis[heavy] = work
      heavy += 1
    }
    let added = 0
    this.standing = Math.min(lines, heavy)
    for (let line = 0; line < this.standing; line += 1) {
      let top = line
      for (let index = line + 1; index < heavy; index += 1) if ((more[index] ?? 0) > (more[top] ?? 0)) top = index
      const [value, work] = [more[top] ?? 0, this.onAxis[top] ?? 0]
      more[top] = more[line] ?? 0
      this.onAxis[top] = this.onAxis[line] ?? 0
      this.onAxis[line] = work
      added += value
    }
    return added
  }

  private use(prices: Prices, used: Used, bay: number, begin: number, end: number, by: number, link: number): void {
    const { section, sections } = this.model
    const perRun = prices.run[0] ?? 0
    this.list(prices, bay)
    this.open(bay, begin, end)
    let runs = 0
    for (let own = 0; own < sections; own += 1)
      if (own !== by && ((this.opened[own] ?? 0) > perRun || own === link)) runs += 1
    used.run[0] = (used.run[0] ?? 0) + runs
    const hangs = (work: number) => {
      const own = section[work] ?? 0
      return this.worthOf(work, begin, end) > 0 && ((this.opened[own] ?? 0) > perRun || own === by || own === link)
    }
    for (let index = 0; index < this.many; index += 1) {
      const work = this.listed[index] ?? 0
      if (hangs(work)) this.useWork(used, bay, work)
    }
    for (let index = 0; index < this.standing; index += 1) {
      const work = this.onAxis[index] ?? 0
      if (!hangs(work)) this.useWork(used, bay, work)
    }
  }

  private useWork(used: Used, bay: number, work: number): void {
    const own = this.model.width[work] ?? 0
    used.work[work] = (used.work[work] ?? 0) + 1
    used.width[bay] = (used.width[bay] ?? 0) + own
    used.room[bay] = (used.room[bay] ?? 0) + own + (this.model.gap[bay] ?? 0)
    used.count[bay] = (used.count[bay] ?? 0) + 1
  }
}
