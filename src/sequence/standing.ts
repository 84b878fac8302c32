/**
 * A hang that changes step by step, with what it is worth kept up to date: a change of two bays costs what those two
 * bays cost, and the works between them for their order, however large the show is.
 */
import { at, type Hang, type Problem } from './problem.ts'
import {
  added,
  type BaySums,
  noSums,
  type OrderCounts,
  orderKeys,
  orderOf,
  quality,
  type Scale,
  sumsOf,
  termsOfSums,
  turnedPairs,
} from './terms.ts'

export type BaysChanged = readonly (readonly [bay: number, works: readonly number[]])[]

export class Standing {
  private readonly problem: Problem
  private readonly scale: Scale
  private readonly away: { readonly hang: Hang; readonly least: number } | null
  private readonly on: Int32Array
  private readonly awayOn: Int32Array
  private readonly bays: BaySums[]
  private readonly keys: readonly number[]
  /** By bay, works that stay and are met before it; the last for those after all bays. */
  private readonly staying: readonly (readonly number[])[]
  private total: BaySums
  private counts: OrderCounts
  /** Works that hang where the hang to keep away from has them. */
  private same = 0
  private readonly all: number
  rows: (readonly number[])[]

  constructor(
    problem: Problem,
    scale: Scale,
    hang: Hang,
    away: { readonly hang: Hang; readonly least: number } | null,
  ) {
    this.problem = problem
    this.scale = scale
    this.away = away
    this.rows = hang.map(works => [...works])
    this.on = placesOf(hang, problem.works.length)
    this.awayOn = placesOf(away?.hang ?? [], problem.works.length)
    this.bays = hang.map((works, bay) => sumsOf(problem, scale, bay, works))
    this.total = this.bays.reduce((sum, one) => added(sum, one), noSums)
    this.keys = orderKeys(problem)
    const staying: number[][] = Array.from({ length: hang.length + 1 }, () => [])
    problem.works.forEach((work, index) => {
      if (work.stays !== null) staying[work.stays.before]?.push(index)
    })
    this.staying = staying
    this.all = scale.free
    this.counts = this.counted(0, hang.length, new Map())
    this.same = this.sameIn(hang.map((works, bay) => [bay, works] as const))
  }

  /** The bay of a work; -1 where it is left out. */
  bayOf(work: number): number {
    return this.on[work] ?? -1
  }

  get quality(): number {
    return this.qualityWith(this.total, this.counts)
  }

  /** By how much it is less different from the hang to keep away from than it should be. */
  get near(): number {
    return this.nearWith(this.same)
  }

  copy(): number[][] {
    return this.rows.map(works => [...works])
  }

  /** What it would be worth if these bays held these works. */
  asIf(bays: BaysChanged) {
    let total = this.total
    const sums: BaySums[] = []
    let [first, last] = [this.rows.length, 0]
    for (const [bay, works] of bays) {
      const own = sumsOf(this.problem, this.scale, bay, works)
      sums.push(own)
      total = added(added(total, at(this.bays, bay), -1), own)
      first = Math.min(first, bay)
      last = Math.max(last, bay)
    }
    const changed = new Map(bays)
    const before = this.counted(first, last + 1, new Map())
    const after = this.counted(first, last + 1, changed)
    const counts = {
      turned: this.counts.turned - before.turned + after.turned + this.turnedOutside(bays, first, last + 1),
      runs: this.counts.runs - before.runs + after.runs,
    }
    const same = this.same - this.sameIn(bays.map(([bay]) => [bay, at(this.rows, bay)])) + this.sameIn(bays)
    return { quality: this.qualityWith(total, counts), near: this.nearWith(same), sums, counts }
  }

  take(bays: BaysChanged, sums: readonly BaySums[], counts: OrderCounts): void {
    this.same += this.sameIn(bays) - this.sameIn(bays.map(([bay]) => [bay, at(this.rows, bay)]))
    for (const [bay] of bays) for (const work of at(this.rows, bay)) this.on[work] = -1
    for (const [index, [bay, works]] of bays.entries()) {
      this.total = added(added(this.total, at(this.bays, bay), -1), at(sums, index))
      this.bays[bay] = at(sums, index)
      this.rows[bay] = works
      for (const work of works) this.on[work] = bay
    }
    this.counts = counts
  }

  private qualityWith(total: BaySums, counts: OrderCounts): number {
    const values = { order: orderOf(counts, this.scale), ...termsOfSums(total, this.scale) }
    return quality(values, this.problem.weights)
  }

  private nearWith(same: number): number {
    return this.away === null || this.all === 0 ? 0 : Math.max(0, this.away.least - (1 - same / this.all))
  }

  private sameIn(bays: BaysChanged): number {
    if (this.away === null) return 0
    let same = 0
    for (const [bay, works] of bays) for (const work of works) if (this.awayOn[work] === bay) same += 1
    return same
  }

  /** Works from bay to bay as they are met, with some bays as they would be. */
  private met(first: number, end: number, changed: ReadonlyMap<number, readonly number[]>): number[] {
    const works: number[] = []
    for (let bay = first; bay < end; bay += 1) {
      works.push(...at(this.staying, bay), ...(changed.get(bay) ?? at(this.rows, bay)))
    }
    if (end === this.rows.length) works.push(...at(this.staying, end))
    return works
  }

  /** Turned pairs among them, and runs of sections, counted with the work before and after them. */
  private counted(first: number, end: number, changed: ReadonlyMap<number, readonly number[]>): OrderCounts {
    const met = this.met(first, end, changed)
    const turned = turnedPairs(met.map(work => at(this.keys, work)))
    let runs = 0
    let section = this.sectionBefore(first)
    for (const work of met) {
      const own = at(this.problem.works, work).section
      if (own !== section) runs += 1
      section = own
    }
    const next = this.sectionFrom(end)
    if (next !== null && next !== section) runs += 1
    return { turned, runs }
  }

  /** Section of the last work met before a bay; null where none is. */
  private sectionBefore(bay: number): number | null {
    for (let before = bay - 1; before >= 0; before -= 1) {
      const work = at(this.rows, before).at(-1) ?? at(this.staying, before).at(-1)
      if (work !== undefined) return at(this.problem.works, work).section
    }
    return null
  }

  /** Section of the first work met from a bay on. */
  private sectionFrom(bay: number): number | null {
    for (let after = bay; after < this.rows.length; after += 1) {
      const work = at(this.staying, after)[0] ?? at(this.rows, after)[0]
      if (work !== undefined) return at(this.problem.works, work).section
    }
    if (bay === this.rows.length) return null
    const last = at(this.staying, this.rows.length)[0]
    return last === undefined ? null : at(this.problem.works, last).section
  }

  /** Pairs with works outside the window that are won or lost where works come in from outside, or go out. */
  private turnedOutside(bays: BaysChanged, first: number, end: number): number {
    const now = new Set(bays.flatMap(([, works]) => works))
    const were = new Set(bays.flatMap(([bay]) => at(this.rows, bay)))
    let turned = 0
    for (const work of now) if (!were.has(work)) turned += this.turnedWith(work, first, end)
    for (const work of were) if (!now.has(work)) turned -= this.turnedWith(work, first, end)
    return turned
  }

  private turnedWith(work: number, first: number, end: number): number {
    const key = at(this.keys, work)
    const none = new Map<number, readonly number[]>()
    const before = this.met(0, first, none).filter(other => at(this.keys, other) > key).length
    const after = end >= this.rows.length ? [] : this.met(end, this.rows.length, none)
    return before + after.filter(other => at(this.keys, other) < key).length
  }
}

function placesOf(hang: Hang, works: number): Int32Array {
  const places = new Int32Array(works).fill(-1)
  for (const [bay, row] of hang.entries()) for (const work of row) places[work] = bay
  return places
}
