/**
 * The best way through the bays when every work has its price: for each bay how many works come before it, which
 * sections it has and which of them goes on from the bay before, by dynamic programming along the visitor's way. What a
 * bay holds is free but for that: each work whose worth there is above its price.
 */
import type { JointModel } from './joint-model.ts'
import { ListedWorks } from './listed-works.ts'

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
  /** Works of the bay looked at. */
  private readonly listed: ListedWorks

  constructor(model: JointModel) {
    const { bays, sections, cuts } = model
    this.model = model
    this.links = sections + 1
    this.best = new Float64Array((bays + 1) * cuts * this.links)
    this.fromCut = new Int32Array(this.best.length)
    this.fromLink = new Int32Array(this.best.length)
    this.listed = new ListedWorks(model)
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
    this.listed.list(prices, bay)
    const turn = this.turn(prices, bay)
    const reach = Math.floor(((many[bay] ?? 0) + step - 1) / step)
    const { best, listed, links } = this
    const { opened } = listed
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
        let plain = listed.open(begin, end) + brings
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

  private use(prices: Prices, used: Used, bay: number, begin: number, end: number, by: number, link: number): void {
    const { listed } = this
    const { works, section, sections } = this.model
    const perRun = prices.run[0] ?? 0
    listed.list(prices, bay)
    listed.open(begin, end)
    const goes = (own: number) => (listed.opened[own] ?? 0) > perRun || own === link
    let runs = 0
    for (let own = 0; own < sections; own += 1) if (own !== by && goes(own)) runs += 1
    used.run[0] = (used.run[0] ?? 0) + runs
    const hangs = (work: number) => {
      const own = section[work] ?? 0
      return listed.worthOf(work, begin, end) > 0 && (goes(own) || own === by)
    }
    for (let work = 0; work < works; work += 1) if (hangs(work)) this.useWork(used, bay, work)
    for (let line = 0; line < listed.standing; line += 1) {
      const work = listed.onAxis[line] ?? 0
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
