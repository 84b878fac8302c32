/**
 * The best way through the bays when every work has its price: for each bay how many works come before it, how many it
 * has, and which section goes on from the bay before, by dynamic programming along the visitor's way. What a bay holds is
 * free but for that: each work whose worth there is above its price. Prices of width and of works counted are those of a
 * bay with so many works: a bay of few wide works and one of many narrow ones don't pass for one of many wide ones.
 */
import type { JointModel } from './joint-model.ts'
import { ListedWorks } from './listed-works.ts'
import { widthAt } from './price-steps.ts'

export interface Prices {
  /** Of each work: taken off wherever it hangs. */
  readonly work: Float64Array
  /** By bay, of room: taken off. */
  readonly room: Float64Array
  /** By bay and count of its works: of width, taken off; and what each work brings, taken off for each it is counted as. */
  readonly width: Float64Array
  readonly count: Float64Array
  /** Of one more run of a section; a single figure. */
  readonly run: Float64Array
}

/** How often each work hangs; width and room taken beyond what there is, how many more works hang than are counted; runs. */
export type Used = Prices

export class JointWay {
  private readonly model: JointModel
  private readonly links: number
  private readonly cuts: number
  /** By bay, section that goes on into it (the last for none) and count of works before it: the best so far. */
  private readonly best: Float64Array
  private readonly fromCut: Int32Array
  private readonly fromLink: Int32Array
  /** Works of the bay looked at. */
  private readonly listed: ListedWorks
  /** By count of works before the bay: what it is worth but for what goes on into it; with that; and which section does. */
  private readonly plain: Float64Array
  private readonly top: Float64Array
  private readonly topLink: Int32Array
  /** By bay, how many works the bays before it take at most, and it and those after it. */
  private readonly before: Int32Array
  private readonly after: Int32Array

  /** How many states ways through a model have. */
  static states({ bays, sections, works }: JointModel): number {
    return (bays + 1) * (sections + 1) * (works + 1)
  }

  constructor(model: JointModel) {
    const { bays, sections, works } = model
    this.model = model
    this.links = sections + 1
    this.cuts = works + 1
    this.best = new Float64Array((bays + 1) * this.cuts * this.links)
    this.fromCut = new Int32Array(this.best.length)
    this.fromLink = new Int32Array(this.best.length)
    this.listed = new ListedWorks(model)
    this.plain = new Float64Array(this.cuts)
    this.top = new Float64Array(this.cuts)
    this.topLink = new Int32Array(this.cuts)
    this.before = Int32Array.from(model.many, (_, bay) => total(model.many.subarray(0, bay)))
    this.after = Int32Array.from(model.many, (_, bay) => total(model.many.subarray(bay)))
  }

  /** What the best way is worth with its prices taken off. */
  find(prices: Prices): number {
    this.best.fill(Number.NEGATIVE_INFINITY)
    this.best[this.state(0, this.links - 1, 0)] = 0
    for (let bay = 0; bay < this.model.bays; bay += 1) this.pass(prices, bay)
    return this.best[this.end()] ?? 0
  }

  private state(bay: number, link: number, cut: number): number {
    return (bay * this.links + link) * this.cuts + cut
  }

  /** The best of all states after the last bay: nothing goes on from there. */
  private end(): number {
    return this.state(this.model.bays, this.links - 1, this.cuts - 1)
  }

  /** What the way found last uses, added to `used`. */
  read(prices: Prices, used: Used): void {
    let [link, end] = [this.links - 1, this.cuts - 1]
    for (let bay = this.model.bays - 1; bay >= 0; bay -= 1) {
      const state = this.state(bay + 1, link, end)
      const begin = this.fromCut[state] ?? 0
      const by = this.fromLink[state] ?? 0
      used.room[bay] = (used.room[bay] ?? 0) - (this.model.room[bay] ?? 0)
      if (end > begin) {
        this.use(prices, used, bay, begin, end, by, link)
        link = by
      }
      end = begin
    }
  }

  private pass(prices: Prices, bay: number): void {
    const { many, counts, perUneven, share, room } = this.model
    const fixed = (prices.room[bay] ?? 0) * (room[bay] ?? 0)
    this.passEmpty(bay, fixed - perUneven * (share[bay] ?? 0))
    for (let count = 1; count <= (many[bay] ?? 0); count += 1) {
      const place = bay * counts + count
      const { worth } = widthAt(this.model, bay, prices.width[place] ?? 0)
      this.listed.list(prices, bay, count)
      // Fewer come before it than bays before it take, and no fewer than bays from it on leave.
      const from = Math.max(0, this.cuts - 1 - (this.after[bay] ?? 0))
      const to = Math.min(this.cuts - 1 - count, this.before[bay] ?? 0)
      if (from > to) continue
      this.listed.open(count, from, to)
      this.passWith(prices.run[0] ?? 0, bay, count, from, to, fixed + worth - count * (prices.count[place] ?? 0))
    }
  }

  /** Nothing hangs there: what goes on goes past it. */
  private passEmpty(bay: number, worth: number): void {
    for (let link = 0; link < this.links; link += 1) {
      const [from, to] = [this.state(bay, link, 0), this.state(bay + 1, link, 0)]
      for (let cut = 0; cut < this.cuts; cut += 1) {
        this.best[to + cut] = (this.best[from + cut] ?? 0) + worth
        this.fromCut[to + cut] = cut
        this.fromLink[to + cut] = link
      }
    }
  }

  private passWith(perRun: number, bay: number, count: number, least: number, most: number, worth: number): void {
    const { best, listed, links, plain, top, topLink, cuts } = this
    const { opened, some, first, last, added } = listed
    const none = this.state(bay, links - 1, 0)
    for (let begin = least; begin <= most; begin += 1) {
      plain[begin] = worth + (added[begin] ?? 0)
      top[begin] = best[none + begin] ?? 0
      topLink[begin] = links - 1
    }
    for (let index = 0; index < listed.sections; index += 1) {
      const section = some[index] ?? 0
      const [row, from, to] = [section * cuts, this.state(bay, section, 0), last[section] ?? 0]
      for (let begin = first[section] ?? 0; begin <= to; begin += 1) {
        const own = opened[row + begin] ?? 0
        if (own <= 0) continue
        if (own > perRun) plain[begin] = (plain[begin] ?? 0) + own - perRun
        const on = (best[from + begin] ?? 0) + Math.min(own, perRun)
        if (on > (top[begin] ?? 0)) {
          top[begin] = on
          topLink[begin] = section
        }
      }
    }
    const onward = this.state(bay + 1, links - 1, count)
    for (let begin = least; begin <= most; begin += 1)
      this.reach(onward + begin, (plain[begin] ?? 0) + (top[begin] ?? 0), begin, topLink[begin] ?? 0)
    for (let index = 0; index < listed.sections; index += 1) {
      const section = some[index] ?? 0
      const [row, from, to] = [section * cuts, this.state(bay, section, 0), this.state(bay + 1, section, count)]
      const end = last[section] ?? 0
      for (let begin = first[section] ?? 0; begin <= end; begin += 1) {
        const own = opened[row + begin] ?? 0
        const goes = (plain[begin] ?? 0) + Math.min(own, perRun)
        const on = goes + (best[from + begin] ?? 0)
        // One that begins here pays for its run, whether its works are worth that or not.
        const begun = own > 0 ? goes + (top[begin] ?? 0) - perRun : Number.NEGATIVE_INFINITY
        if (on > begun) this.reach(to + begin, on, begin, section)
        else this.reach(to + begin, begun, begin, topLink[begin] ?? 0)
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
    const { listed, cuts } = this
    const { works, section, sections, counts } = this.model
    const perRun = prices.run[0] ?? 0
    const place = bay * counts + end - begin
    used.width[place] = -widthAt(this.model, bay, prices.width[place] ?? 0).width
    used.count[place] = begin - end
    listed.list(prices, bay, end - begin)
    listed.open(end - begin, begin, begin)
    const worth = (own: number) => listed.opened[own * cuts + begin] ?? 0
    const goes = (own: number) => worth(own) > perRun || own === link
    for (let own = 0; own < sections; own += 1) if (own !== by && goes(own)) used.run[0] = (used.run[0] ?? 0) + 1
    const hung = new Set<number>()
    for (let work = 0; work < works; work += 1) {
      const own = section[work] ?? 0
      if (!goes(own) && own !== by) continue
      const above = listed.worthOf(work, begin, end)
      // A section that only goes on has the one work that costs least.
      if (above > 0 || (worth(own) <= 0 && above === worth(own))) hung.add(work)
    }
    for (let line = 0; line < listed.standing; line += 1) hung.add(listed.onAxis[line] ?? 0)
    for (const work of hung) this.useWork(used, bay, place, work)
  }

  private useWork(used: Used, bay: number, place: number, work: number): void {
    const own = this.model.width[work] ?? 0
    used.work[work] = (used.work[work] ?? 0) + 1
    used.width[place] = (used.width[place] ?? 0) + own
    used.room[bay] = (used.room[bay] ?? 0) + own + (this.model.gap[bay] ?? 0)
    used.count[place] = (used.count[place] ?? 0) + 1
  }
}

function total(of: Int32Array): number {
  return of.reduce((sum, each) => sum + each, 0)
}
