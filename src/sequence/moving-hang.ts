/**
 * A hang that changes hundreds of thousands of times a second, with what it is worth kept up to date. A change is laid
 * out on rows of its own, weighed against what stands, and taken or let go.
 */
import { MetRows } from './met-rows.ts'
import type { Hang, Problem } from './problem.ts'
import { RowWorth } from './row-worth.ts'
import { noSums, quality, type Scale, termsOfSums } from './terms.ts'

/** A hang to keep away from: at least such a share of the works shall be on other bays. */
export interface Away {
  readonly hang: Hang
  readonly least: number
}

/** What a work left out costs: more than all terms are worth; and what being too near a hang to keep away from does. */
const leftOut = 2
const tooNear = 1

interface Counted {
  value: number
  gain: number
  turned: number
  changes: number
  same: number
  hung: number
}

export class MovingHang {
  readonly rows: MetRows
  private readonly worths: RowWorth
  private readonly scale: Scale
  private readonly away: Away | null
  private readonly awayOn: Int32Array
  private readonly perTurned: number
  private readonly perRun: number
  private readonly bare: number
  private readonly gains: Float64Array
  private readonly laidGains = new Float64Array(3)
  private readonly now: Counted
  private readonly next: Counted

  constructor(problem: Problem, scale: Scale, hang: Hang, away: Away | null) {
    const { works, bays, weights } = problem
    this.scale = scale
    this.away = away
    this.rows = new MetRows(problem, hang)
    this.worths = new RowWorth(problem, scale)
    const all = Object.values(weights).reduce((sum, weight) => sum + weight, 0)
    this.perTurned = scale.ordered === 0 ? 0 : weights.order / all / 2 / scale.ordered
    this.perRun = scale.all > scale.sections ? weights.order / all / 2 / (scale.all - scale.sections) : 0
    this.bare = quality({ order: 1, ...termsOfSums(noSums, scale) }, weights)
    this.awayOn = new Int32Array(works.length).fill(-1)
    for (const [bay, row] of (away?.hang ?? []).entries()) for (const work of row) this.awayOn[work] = bay
    this.gains = Float64Array.from(bays, (_, bay) => this.worths.of(bay, hang[bay] ?? [], hang[bay]?.length ?? 0))
    const placed = hang.flatMap((row, bay) => row.map(work => ({ work, bay })))
    this.now = {
      value: 0,
      gain: this.gains.reduce((sum, gain) => sum + gain, 0),
      turned: this.rows.turned(),
      changes: this.rows.changes(),
      same: placed.filter(({ work, bay }) => this.awayOn[work] === bay).length,
      hung: placed.length,
    }
    this.now.value = this.worthOf(this.now)
    this.next = { ...this.now }
  }

  /** Its quality, less what works left out and too little difference cost. */
  get value(): number {
    return this.now.value
  }

  /** What the change weighed last would make it. */
  get weighed(): number {
    return this.next.value
  }

  /**
   * What it would be worth as it is laid out; -Infinity where works do not fit or may not hang there, or where it is seen
   * on the way that it is not worth `least`. What is quick to weigh comes first: most changes end there.
   */
  weigh(least = Number.NEGATIVE_INFINITY): number {
    const { rows, now, next, worths } = this
    next.gain = now.gain
    next.hung = now.hung
    next.same = now.same
    for (let index = 0; index < rows.changed; index += 1) {
      const bay = rows.which[index] ?? 0
      const row = rows.laid(index)
      const count = rows.laidCount(index)
      const most = worths.atMost(bay, row, count)
      if (most === Number.NEGATIVE_INFINITY) return most
      this.laidGains[index] = most
      next.gain += most - (this.gains[bay] ?? 0)
      next.hung += count - rows.countOn(bay)
      if (this.away !== null) next.same += this.sameMore(index)
    }
    next.turned = Math.max(0, now.turned - rows.mostRighted())
    next.changes = now.changes + rows.changesMore()
    if (this.worthOf(next) < least) return Number.NEGATIVE_INFINITY
    next.turned = now.turned + rows.turnedMore()
    if (this.worthOf(next) < least) return Number.NEGATIVE_INFINITY
    for (let index = 0; index < rows.changed; index += 1) {
      const gain = worths.of(rows.which[index] ?? 0, rows.laid(index), rows.laidCount(index))
      next.gain += gain - (this.laidGains[index] ?? 0)
      this.laidGains[index] = gain
    }
    next.value = this.worthOf(next)
    return next.value
  }

  /** How many more works of a bay laid out hang there in the hang to keep away from. */
  private sameMore(index: number): number {
    const { rows, awayOn } = this
    const bay = rows.which[index] ?? 0
    const row = rows.laid(index)
    let more = 0
    for (let place = 0; place < rows.laidCount(index); place += 1) if (awayOn[row[place] ?? 0] === bay) more += 1
    for (let place = 0; place < rows.countOn(bay); place += 1) if (awayOn[rows.workOn(bay, place)] === bay) more -= 1
    return more
  }

  /** Hangs as it was laid out and weighed last. */
  take(): void {
    for (let index = 0; index < this.rows.changed; index += 1)
      this.gains[this.rows.which[index] ?? 0] = this.laidGains[index] ?? 0
    this.rows.take()
    Object.assign(this.now, this.next)
  }

  private worthOf({ gain, turned, changes, same, hung }: Counted): number {
    const { free, sections } = this.scale
    const breaks = Math.max(0, changes + 1 - sections)
    const near = this.away === null || free === 0 ? 0 : Math.max(0, this.away.least - (1 - same / free))
    return this.bare + gain - this.perTurned * turned - this.perRun * breaks - leftOut * (free - hung) - tooNear * near
  }
}
