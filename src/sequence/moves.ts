/**
 * Changes that a search tries, drawn by chance and laid out: a work, or all that goes with it, moves or changes places;
 * one goes to where more of its section is; one pushes another on to a third bay; stretches of a row move, change places or
 * turn round; two bays change all they have. Near bays more often than far ones, since sections hang together. Whether it
 * fits is asked afterwards.
 */
import { type Chance, pickBelow } from './chance.ts'
import type { MetRows } from './met-rows.ts'
import { at } from './problem.ts'
import type { Unit } from './units.ts'

/** Works of a stretch that moves as one, at most. */
const longestRun = 5

export class Moves {
  private readonly rows: MetRows
  private readonly units: ReadonlyMap<number, Unit>
  private readonly movable: readonly number[]
  private readonly chance: Chance
  private readonly singles: readonly (readonly number[])[]
  /** Of each section those that move. */
  private readonly mates: ReadonlyMap<number, readonly number[]>

  constructor(rows: MetRows, units: ReadonlyMap<number, Unit>, movable: readonly number[], chance: Chance) {
    this.rows = rows
    this.units = units
    this.movable = movable
    this.chance = chance
    this.singles = Array.from(rows.on, (_, work) => [work])
    this.mates = Map.groupBy(movable, work => rows.sectionOf(work))
  }

  /** Lays a change out; false where chance drew none. */
  draw(): boolean {
    const { rows } = this
    rows.layOut()
    const one = this.unit(this.pick(this.movable.length))
    const here = this.bayOf(one)
    const draw = this.chance()
    if (here < 0) return this.comeIn(one, draw)
    if (draw < 0.26) return this.swapNear(one, here)
    if (draw < 0.34) return this.swap(one, this.unit(this.pick(this.movable.length)))
    if (draw < 0.46) return this.move(one, here)
    if (draw < 0.56) return this.join(one, here)
    if (draw < 0.66) return this.joinFor(one, here)
    if (draw < 0.76) return this.move(one, this.nearBay(here))
    if (draw < 0.82) return this.push(one, here)
    if (draw < 0.97) return this.runs(here, this.nearBay(here))
    return draw < 0.985 ? this.turn(here) : this.exchange(here, this.nearBay(here))
  }

  private pick(many: number): number {
    return at(this.movable, pickBelow(this.chance, many))
  }

  /** All that goes with a work, in one of its orders. */
  private unit(work: number): readonly number[] {
    const own = this.units.get(work)
    if (own === undefined) return at(this.singles, work)
    return own.orders[pickBelow(this.chance, own.orders.length)] ?? own.works
  }

  private bayOf(unit: readonly number[]): number {
    return this.rows.on[unit[0] ?? 0] ?? -1
  }

  private anyBay(): number {
    return pickBelow(this.chance, this.rows.bays)
  }

  private nearBay(from: number): number {
    const { bays } = this.rows
    if (this.chance() < 0.3) return this.anyBay()
    const away = 1 + Math.floor(this.chance() ** 2 * Math.min(4, bays))
    return (from + (this.chance() < 0.5 ? away : bays - (away % bays)) + bays) % bays
  }

  /** Place of the first of a unit in a row laid out. */
  private placeIn(index: number, unit: readonly number[]): number {
    const row = this.rows.laid(index)
    let place = 0
    while (!unit.includes(row[place] ?? -1)) place += 1
    return place
  }

  private replace(bay: number, unit: readonly number[], by: readonly number[]): void {
    const index = this.rows.lay(bay)
    this.rows.splice(index, this.placeIn(index, unit), unit.length, by)
  }

  private insert(bay: number, unit: readonly number[]): void {
    const index = this.rows.lay(bay)
    this.rows.splice(index, pickBelow(this.chance, this.rows.laidCount(index) + 1), 0, unit)
  }

  private move(one: readonly number[], bay: number): boolean {
    const here = this.bayOf(one)
    if (here >= 0) this.replace(here, one, [])
    this.insert(bay, one)
    return true
  }

  /** A work that is left out comes in: for another, beside others, or for a stretch that goes on to one bay or two. */
  private comeIn(one: readonly number[], draw: number): boolean {
    if (draw < 0.3) return this.swap(one, this.unit(this.pick(this.movable.length)))
    const bay = this.anyBay()
    if (draw < 0.5) return this.move(one, bay)
    const row = this.rows.rowOf(bay)
    if (row.length === 0) return this.move(one, bay)
    const many = 1 + pickBelow(this.chance, row.length)
    const from = pickBelow(this.chance, row.length - many + 1)
    const first = pickBelow(this.chance, many + 1)
    this.rows.splice(this.rows.lay(bay), from, many, one)
    for (const part of [row.subarray(from, from + first), row.subarray(from + first, from + many)]) {
      const to = this.nearBay(bay)
      if (to === bay) return false
      const index = this.rows.lay(to)
      this.rows.splice(index, pickBelow(this.chance, this.rows.laidCount(index) + 1), 0, part)
    }
    return true
  }

  private swapNear(one: readonly number[], here: number): boolean {
    const bay = this.nearBay(here)
    const count = this.rows.countOn(bay)
    return count > 0 && this.swap(one, this.unit(this.rows.workOn(bay, pickBelow(this.chance, count))))
  }

  private swap(one: readonly number[], other: readonly number[]): boolean {
    if (other.includes(one[0] ?? 0)) return false
    const [here, there] = [this.bayOf(one), this.bayOf(other)]
    if (here < 0 && there < 0) return false
    if (here === there) {
      const index = this.rows.lay(here)
      const [first, second] = this.placeIn(index, one) < this.placeIn(index, other) ? [one, other] : [other, one]
      const [early, late] = [this.placeIn(index, first), this.placeIn(index, second)]
      this.rows.splice(index, late, second.length, first)
      this.rows.splice(index, early, first.length, second)
      return true
    }
    if (here >= 0) this.replace(here, one, other)
    if (there >= 0) this.replace(there, other, one)
    return true
  }

  /** Another work of its section, on another bay; -1 where chance drew none. */
  private mate(one: readonly number[], here: number): number {
    const own = this.mates.get(this.rows.sectionOf(one[0] ?? 0)) ?? []
    const mate = own[pickBelow(this.chance, own.length)] ?? -1
    const bay = this.rows.on[mate] ?? -1
    return bay < 0 || bay === here ? -1 : mate
  }

  /** Goes beside a work of its section. */
  private join(one: readonly number[], here: number): boolean {
    const mate = this.mate(one, here)
    if (mate < 0) return false
    const unit = this.unit(mate)
    const index = this.rows.lay(this.rows.on[mate] ?? 0)
    const place = this.placeIn(index, unit)
    this.rows.splice(index, this.chance() < 0.5 ? place : place + unit.length, 0, one)
    this.replace(here, one, [])
    return true
  }

  /** Goes to where its section is, for a work there of another. */
  private joinFor(one: readonly number[], here: number): boolean {
    const mate = this.mate(one, here)
    if (mate < 0) return false
    const bay = this.rows.on[mate] ?? 0
    const other = this.rows.workOn(bay, pickBelow(this.chance, this.rows.countOn(bay)))
    if (this.rows.sectionOf(other) === this.rows.sectionOf(mate)) return false
    return this.swap(one, this.unit(other))
  }

  /** It takes another's place on a bay nearby, which goes on to a third, or to where the first was. */
  private push(one: readonly number[], here: number): boolean {
    const bay = this.nearBay(here)
    const count = this.rows.countOn(bay)
    if (bay === here || count === 0) return false
    const pushed = this.unit(this.rows.workOn(bay, pickBelow(this.chance, count)))
    const third = this.nearBay(bay)
    if (third === bay) return false
    this.replace(here, one, [])
    this.replace(bay, pushed, one)
    this.insert(third, pushed)
    return true
  }

  /** A stretch of one bay goes to another, which may give a stretch for it. */
  private runs(here: number, there: number): boolean {
    if (here === there) return false
    const [one, other] = [this.rows.rowOf(here), this.rows.rowOf(there)]
    if (one.length === 0) return false
    const many = 1 + pickBelow(this.chance, Math.min(longestRun, one.length))
    const given = pickBelow(this.chance, Math.min(longestRun, other.length) + 1)
    const [from, to] = [pickBelow(this.chance, one.length - many + 1), pickBelow(this.chance, other.length - given + 1)]
    const [first, second] = [this.rows.lay(here), this.rows.lay(there)]
    this.rows.splice(first, from, many, other.subarray(to, to + given))
    this.rows.splice(second, to, given, one.subarray(from, from + many))
    return true
  }

  /** A stretch of a row the other way round. */
  private turn(bay: number): boolean {
    const count = this.rows.countOn(bay)
    if (count < 3) return false
    const many = 3 + pickBelow(this.chance, count - 2)
    const index = this.rows.lay(bay)
    const from = pickBelow(this.chance, count - many + 1)
    this.rows
      .laid(index)
      .subarray(from, from + many)
      .reverse()
    return true
  }

  /** Two bays change all they have. */
  private exchange(here: number, there: number): boolean {
    if (here === there) return false
    const [one, other] = [this.rows.rowOf(here), this.rows.rowOf(there)]
    const [first, second] = [this.rows.lay(here), this.rows.lay(there)]
    this.rows.splice(first, 0, one.length, other)
    this.rows.splice(second, 0, other.length, one)
    return true
  }
}
