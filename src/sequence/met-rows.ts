/**
 * Works as a visitor meets them, row by row, and a change laid out on rows of its own: how many pairs it turns and how
 * many more times a section changes to another. Only what lies between the bays that change is looked at, and nothing is
 * made on the way.
 */
import { at, type Hang, type Problem } from './problem.ts'
import { orderKeys } from './terms.ts'

/** Bays that one change may touch. */
const mostChanged = 3

export class MetRows {
  readonly bays: number
  /** Bay of each work; -1 where it is left out. */
  readonly on: Int32Array
  /** Bays of the change that is laid out, and how many they are. */
  readonly which = new Int32Array(mostChanged)
  changed = 0
  private readonly all: number
  private readonly keys: Float64Array
  private readonly sections: Int32Array
  /** Slots as they are met: what stays before a bay, the bay, …, what stays after all. `all` places each. */
  private readonly rows: Int32Array
  private readonly counts: Int32Array
  private readonly inside: Float64Array
  private readonly trial: readonly Int32Array[]
  private readonly trialCounts = new Int32Array(mostChanged)
  private readonly trialInside = new Float64Array(mostChanged)
  /** By work, the change in which it was seen last. */
  private readonly seen: Int32Array
  private change = 0
  /** By slot, works that are met before it. */
  private readonly metBefore: Int32Array

  constructor(problem: Problem, hang: Hang) {
    const { works, bays } = problem
    this.bays = bays.length
    this.all = works.length
    this.keys = Float64Array.from(orderKeys(problem))
    this.sections = Int32Array.from(works, work => work.section)
    const slots = 2 * bays.length + 1
    this.rows = new Int32Array(slots * works.length)
    this.counts = new Int32Array(slots)
    this.inside = new Float64Array(slots)
    this.on = new Int32Array(works.length).fill(-1)
    this.seen = new Int32Array(works.length)
    this.trial = Array.from({ length: mostChanged }, () => new Int32Array(works.length + 1))
    for (const [index, work] of works.entries()) if (work.stays !== null) this.put(2 * work.stays.before, index)
    for (const [bay, row] of hang.entries())
      for (const work of row) {
        this.put(2 * bay + 1, work)
        this.on[work] = bay
      }
    for (let slot = 0; slot < slots; slot += 1) {
      const from = slot * this.all
      this.inside[slot] = this.turnedIn(this.rows, from, this.counts[slot] ?? 0)
    }
    this.metBefore = new Int32Array(slots + 1)
    this.countMet()
  }

  private countMet(): void {
    for (let slot = 0; slot < this.counts.length; slot += 1)
      this.metBefore[slot + 1] = (this.metBefore[slot] ?? 0) + (this.counts[slot] ?? 0)
  }

  private put(slot: number, work: number): void {
    const count = this.counts[slot] ?? 0
    this.rows[slot * this.all + count] = work
    this.counts[slot] = count + 1
  }

  countOn(bay: number): number {
    return this.counts[2 * bay + 1] ?? 0
  }

  workOn(bay: number, place: number): number {
    return this.rows[(2 * bay + 1) * this.all + place] ?? 0
  }

  rowOf(bay: number): Int32Array {
    const from = (2 * bay + 1) * this.all
    return this.rows.subarray(from, from + this.countOn(bay))
  }

  sectionOf(work: number): number {
    return this.sections[work] ?? 0
  }

  /** Place of a work that hangs, on its bay. */
  placeOf(work: number): number {
    const from = (2 * (this.on[work] ?? 0) + 1) * this.all
    let place = 0
    while (this.rows[from + place] !== work) place += 1
    return place
  }

  copy(): number[][] {
    return Array.from({ length: this.bays }, (_, bay) => [...this.rowOf(bay)])
  }

  /** Begins to lay out another change. */
  layOut(): void {
    this.changed = 0
  }

  /** The row laid out for a bay: as it hangs, the first time. Three bays at most. */
  lay(bay: number): number {
    for (let index = 0; index < this.changed; index += 1) if (this.which[index] === bay) return index
    const index = this.changed
    this.changed += 1
    this.which[index] = bay
    const count = this.countOn(bay)
    const from = (2 * bay + 1) * this.all
    const row = this.laid(index)
    for (let place = 0; place < count; place += 1) row[place] = this.rows[from + place] ?? 0
    this.trialCounts[index] = count
    return index
  }

  laid(index: number): Int32Array {
    return at(this.trial, index)
  }

  laidCount(index: number): number {
    return this.trialCounts[index] ?? 0
  }

  /** Takes `count` works from a place of a row laid out and puts others there. */
  splice(index: number, place: number, count: number, works: ArrayLike<number>, many = works.length): void {
    const row = this.laid(index)
    const before = this.laidCount(index)
    row.copyWithin(place + many, place + count, before)
    for (let each = 0; each < many; each += 1) row[place + each] = works[each] ?? 0
    this.trialCounts[index] = before - count + many
  }

  /** Hangs as laid out. What then hangs on no bay is left out. */
  take(): void {
    for (let index = 0; index < this.changed; index += 1) {
      const bay = this.which[index] ?? 0
      for (let place = 0; place < this.countOn(bay); place += 1) this.on[this.workOn(bay, place)] = -1
    }
    for (let index = 0; index < this.changed; index += 1) {
      const bay = this.which[index] ?? 0
      const from = (2 * bay + 1) * this.all
      const row = this.laid(index)
      for (let place = 0; place < this.laidCount(index); place += 1) {
        const work = row[place] ?? 0
        this.rows[from + place] = work
        this.on[work] = bay
      }
      this.counts[2 * bay + 1] = this.laidCount(index)
      this.inside[2 * bay + 1] = this.trialInside[index] ?? 0
    }
    this.countMet()
  }

  /** Pairs out of order as it hangs; n² steps. */
  turned(): number {
    let turned = 0
    for (let slot = 0; slot < this.counts.length; slot += 1) {
      turned += this.inside[slot] ?? 0
      for (let before = 0; before < slot; before += 1)
        turned += this.across(
          this.rows,
          before * this.all,
          this.counts[before] ?? 0,
          this.rows,
          slot * this.all,
          this.counts[slot] ?? 0,
        )
    }
    return turned
  }

  /**
   * Pairs that the change can bring to order, at most: those within its bays, those of works that change their bay with all
   * that hangs from the one to the other, and those of such works with one another. All there are where a work comes in.
   */
  mostRighted(): number {
    let [most, moved] = [0, 0]
    for (let index = 0; index < this.changed; index += 1) {
      const bay = this.which[index] ?? 0
      most += this.inside[2 * bay + 1] ?? 0
      const row = this.laid(index)
      for (let place = 0; place < this.laidCount(index); place += 1) {
        const from = this.on[row[place] ?? 0] ?? -1
        if (from === -1) return this.all * this.all
        if (from === bay) continue
        moved += 1
        const [first, last] = [2 * Math.min(from, bay) + 1, 2 * Math.max(from, bay) + 1]
        most += (this.metBefore[last + 1] ?? 0) - (this.metBefore[first] ?? 0)
      }
    }
    return most + (moved * moved) / 2
  }

  /** By how many pairs out of order the change is worse. */
  turnedMore(): number {
    let more = 0
    this.change += 1
    for (let index = 0; index < this.changed; index += 1) {
      const row = this.laid(index)
      const count = this.laidCount(index)
      for (let place = 0; place < count; place += 1) this.seen[row[place] ?? 0] = this.change
      const inside = this.turnedIn(row, 0, count)
      this.trialInside[index] = inside
      more += inside - (this.inside[2 * (this.which[index] ?? 0) + 1] ?? 0)
    }
    for (let index = 0; index < this.changed; index += 1) {
      const bay = this.which[index] ?? 0
      const row = this.laid(index)
      for (let place = 0; place < this.laidCount(index); place += 1) {
        const work = row[place] ?? 0
        const from = this.on[work] ?? -1
        if (from === -1) more += this.withOthers(work, bay, 0, this.counts.length)
        else if (from !== bay) more += this.passing(work, from, bay)
      }
      for (let place = 0; place < this.countOn(bay); place += 1) {
        const work = this.workOn(bay, place)
        if (this.seen[work] !== this.change) more -= this.withOthers(work, bay, 0, this.counts.length)
      }
      for (let other = 0; other < this.changed; other += 1) {
        const there = this.which[other] ?? 0
        if (there >= bay) continue
        const [had, has] = [(2 * there + 1) * this.all, (2 * bay + 1) * this.all]
        more += this.across(this.laid(other), 0, this.laidCount(other), row, 0, this.laidCount(index))
        more -= this.across(this.rows, had, this.countOn(there), this.rows, has, this.countOn(bay))
      }
    }
    return more
  }

  /** A work that goes from bay to bay, with all works on the way that do not change their bay. */
  private passing(work: number, from: number, to: number): number {
    const [first, end] = [2 * Math.min(from, to) + 2, 2 * Math.max(from, to) + 1]
    return this.withOthers(work, to, first, end) - this.withOthers(work, from, first, end)
  }

  /** Pairs out of order of a work on a bay with works of other slots that do not change. */
  private withOthers(work: number, bay: number, first: number, end: number): number {
    const key = this.keys[work] ?? 0
    let turned = 0
    for (let slot = first; slot < end; slot += 1) {
      const count = this.counts[slot] ?? 0
      if (count === 0 || this.laidAt(slot) >= 0) continue
      const from = slot * this.all
      if (slot < 2 * bay + 1) {
        for (let place = from; place < from + count; place += 1)
          if ((this.keys[this.rows[place] ?? 0] ?? 0) > key) turned += 1
      } else {
        for (let place = from; place < from + count; place += 1)
          if ((this.keys[this.rows[place] ?? 0] ?? 0) < key) turned += 1
      }
    }
    return turned
  }

  private turnedIn(row: Int32Array, from: number, count: number): number {
    let turned = 0
    for (let later = from + 1; later < from + count; later += 1) {
      const key = this.keys[row[later] ?? 0] ?? 0
      for (let before = from; before < later; before += 1) if ((this.keys[row[before] ?? 0] ?? 0) > key) turned += 1
    }
    return turned
  }

  private across(before: Int32Array, from: number, many: number, after: Int32Array, to: number, count: number): number {
    let turned = 0
    for (let one = from; one < from + many; one += 1) {
      const key = this.keys[before[one] ?? 0] ?? 0
      for (let other = to; other < to + count; other += 1) if ((this.keys[after[other] ?? 0] ?? 0) < key) turned += 1
    }
    return turned
  }

  /** How often a section changes to another between neighbours, rows of all slots met one after the other. */
  changes(): number {
    let [changes, last] = [0, -1]
    for (let slot = 0; slot < this.counts.length; slot += 1) {
      for (let place = 0; place < (this.counts[slot] ?? 0); place += 1) {
        const section = this.sections[this.rows[slot * this.all + place] ?? 0] ?? 0
        if (last >= 0 && last !== section) changes += 1
        last = section
      }
    }
    return changes
  }

  /** How many more times a section changes to another with the change laid out. */
  changesMore(): number {
    return this.changesAbout(true) - this.changesAbout(false)
  }

  private changesAbout(laid: boolean): number {
    let changes = 0
    /** Up to this slot everything is counted. */
    let done = -1
    let slot = -1
    for (let turn = 0; turn < this.changed; turn += 1) {
      slot = this.changedAfter(slot)
      const before = this.beside(slot, -1, laid)
      const after = this.beside(slot, 1, laid)
      const count = this.countAt(slot, laid)
      if (count === 0) {
        if (done < after && before >= 0 && after < this.counts.length) {
          changes += this.differ(before, after, laid)
          done = after
        }
        continue
      }
      for (let place = 1; place < count; place += 1)
        if (this.sectionAt(slot, place - 1, laid) !== this.sectionAt(slot, place, laid)) changes += 1
      if (before >= 0 && done < slot) changes += this.differ(before, slot, laid)
      if (after < this.counts.length) changes += this.differ(slot, after, laid)
      done = after
    }
    return changes
  }

  private changedAfter(slot: number): number {
    let next = this.counts.length
    for (let index = 0; index < this.changed; index += 1) {
      const own = 2 * (this.which[index] ?? 0) + 1
      if (own > slot && own < next) next = own
    }
    return next
  }

  /** The next slot with works before (-1) or after (1) a slot. */
  private beside(slot: number, way: 1 | -1, laid: boolean): number {
    let found = slot + way
    while (found >= 0 && found < this.counts.length && this.countAt(found, laid) === 0) found += way
    return found
  }

  private laidAt(slot: number): number {
    for (let index = 0; index < this.changed; index += 1) if (2 * (this.which[index] ?? 0) + 1 === slot) return index
    return -1
  }

  private countAt(slot: number, laid: boolean): number {
    const index = laid ? this.laidAt(slot) : -1
    return index < 0 ? (this.counts[slot] ?? 0) : this.laidCount(index)
  }

  private sectionAt(slot: number, place: number, laid: boolean): number {
    const index = laid ? this.laidAt(slot) : -1
    const work = index < 0 ? this.rows[slot * this.all + place] : this.laid(index)[place]
    return this.sections[work ?? 0] ?? 0
  }

  private differ(one: number, other: number, laid: boolean): number {
    const last = this.sectionAt(one, this.countAt(one, laid) - 1, laid)
    return last === this.sectionAt(other, 0, laid) ? 0 : 1
  }
}
