/**
 * What a row of works on a bay adds to the quality, as `gainOf(sumsOf(…))` has it, for searches that ask millions of
 * times: figures of works lie side by side, what neighbours cost is known beforehand, and nothing is made on the way.
 */
import { at, type Problem } from './problem.ts'
import { balanceScore, gainOf, lightCost, noSums, rhythmCost, type Scale } from './terms.ts'

export type Row = Int32Array | readonly number[]

/** For so many works the costs of all pairs are kept: 8 MB. */
const keptPairs = 1000
/** Lengths may be over by so much and still count as fitting. mm */
const slack = 1e-6

export class RowWorth {
  readonly width: Float64Array
  private readonly problem: Problem
  private readonly scale: Scale
  private readonly weight: Float64Array
  /** By bay and work; not a number where it may not hang. */
  private readonly served: Float64Array
  private readonly pairs: Float64Array | null
  /** By bay: the gap, the room that works and gaps may take, an even share of the width, what axes add at most. */
  private readonly gap: Float64Array
  private readonly room: Float64Array
  private readonly share: Float64Array
  private readonly focalMost: Float64Array
  private readonly perBalance: number
  private readonly perUneven: number
  private readonly perFocal: number
  private readonly perLight: number
  private readonly perRhythm: number

  constructor(problem: Problem, scale: Scale) {
    const { works, bays } = problem
    this.problem = problem
    this.scale = scale
    this.width = Float64Array.from(works, work => work.width)
    this.weight = Float64Array.from(works, work => work.weight)
    const per = (of: Partial<typeof noSums>) => (scale.free === 0 ? 0 : gainOf({ ...noSums, ...of }, problem, scale))
    this.perBalance = per({ balance: 1 })
    this.perUneven = per({ uneven: 1 })
    this.perFocal = scale.heaviest > 0 ? per({ focal: 1 }) / scale.heaviest : 0
    this.perLight = per({ light: 1 })
    this.perRhythm = per({ rhythm: 1 })
    const perServed = per({ served: 1 })
    this.gap = Float64Array.from(bays, bay => bay.gap)
    this.room = Float64Array.from(bays, ({ from, to, margin, gap }) => to - from - 2 * margin + gap + slack)
    this.share = Float64Array.from(bays, ({ from, to }) => scale.fill * (to - from))
    this.focalMost = Float64Array.from(bays, ({ axes }) => axes.length * this.perFocal * scale.heaviest)
    this.served = new Float64Array(bays.length * works.length)
    for (let bay = 0; bay < bays.length; bay += 1) {
      for (const [index, work] of works.entries()) {
        const share = work.served[bay] ?? null
        this.served[bay * works.length + index] = share === null ? Number.NaN : perServed * share
      }
    }
    this.pairs = works.length <= keptPairs ? new Float64Array(works.length ** 2) : null
    if (this.pairs !== null)
      for (let one = 0; one < works.length; one += 1)
        for (let other = 0; other < works.length; other += 1)
          this.pairs[one * works.length + other] = this.costOf(one, other)
  }

  /** Whether a work may hang on a bay, whatever is beside it. */
  mayHang(bay: number, work: number): boolean {
    return !Number.isNaN(this.served[bay * this.width.length + work])
  }

  /** What is left over with the first `count` works of a row; below 0 they do not fit. mm. */
  leftOver(bay: number, row: Row, count: number): number {
    const { from, to, margin, gap } = at(this.problem.bays, bay)
    let left = to - from - 2 * margin + (count > 0 ? gap : 0)
    for (let place = 0; place < count; place += 1) left -= (this.width[row[place] ?? 0] ?? 0) + gap
    return left
  }

  /**
   * What the first `count` works of a row add at most, in whichever order: balanced, beside their like, the heaviest of all
   * on every axis. -Infinity where they do not fit or one of them may not hang there.
   */
  atMost(bay: number, row: Row, count: number): number {
    const seen = bay * this.width.length
    const gap = this.gap[bay] ?? 0
    let [width, sum] = [0, 0]
    for (let place = 0; place < count; place += 1) {
      const work = row[place] ?? 0
      width += this.width[work] ?? 0
      sum += this.served[seen + work] ?? 0
    }
    // The sum of what is no number is none.
    if (width + gap * count > (this.room[bay] ?? 0) || Number.isNaN(sum)) return Number.NEGATIVE_INFINITY
    const uneven = this.perUneven * Math.abs(width - (this.share[bay] ?? 0))
    return sum + uneven + count * this.perBalance + (this.focalMost[bay] ?? 0)
  }

  /** Of the first `count` works of a row; each of them may hang there. */
  of(bay: number, row: Row, count: number): number {
    const { from, to, margin, gap, leftOf, rightOf, axes } = at(this.problem.bays, bay)
    const length = to - from
    const share = this.share[bay] ?? 0
    if (count === 0) return this.perUneven * share
    const each = this.leftOver(bay, row, count) / (count + 1)
    const seen = bay * this.width.length
    let [width, weight, moment, sum] = [0, 0, 0, 0]
    let x = from + margin + each
    let before = leftOf ?? -1
    for (let place = 0; place < count; place += 1) {
      const work = row[place] ?? 0
      const own = this.width[work] ?? 0
      const heavy = this.weight[work] ?? 0
      const centre = x + own / 2
      x += own + gap + each
      width += own
      weight += heavy
      moment += heavy * centre
      sum += this.served[seen + work] ?? 0
      for (let axis = 0; axis < axes.length; axis += 1) {
        if (Math.abs(centre - (axes[axis] ?? 0)) <= own / 2) sum += this.perFocal * heavy
      }
      if (before >= 0) sum += this.pair(before, work)
      before = work
    }
    if (rightOf !== null) sum += this.pair(before, rightOf)
    const off = weight > 0 ? moment / weight - (from + to) / 2 : 0
    return sum + this.perBalance * count * balanceScore(off, length) + this.perUneven * Math.abs(width - share)
  }

  private pair(one: number, other: number): number {
    return this.pairs === null ? this.costOf(one, other) : (this.pairs[one * this.width.length + other] ?? 0)
  }

  private costOf(one: number, other: number): number {
    const [a, b] = [at(this.problem.works, one), at(this.problem.works, other)]
    return this.perLight * lightCost(a.limit, b.limit) + this.perRhythm * rhythmCost(a, b, this.scale.strong)
  }
}
