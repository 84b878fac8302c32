/**
 * In which orders works that were given to a bay can stand on it, with what spaces they need and which other works between
 * them. Works that no rule puts in an order are not tried in all of theirs: they stand where they are needed, between two
 * that must not be neighbours, or wherever the others leave them a place.
 */
import { chainsOf, type GivenRules, type RuledShow } from './given-rules.ts'
import { at, type Leads } from './problem.ts'

export const slack = 1e-6

/** Other works needed between those of a bay: in any order, and in one that lets others hang there. */
export interface Order {
  readonly least: number
  readonly open: number | null
}

export class OrdersOfBay {
  private readonly show: RuledShow
  private readonly given: GivenRules
  /** Works by the bay, as the search goes on. */
  private readonly hang: readonly (readonly number[])[]
  private readonly count: () => void
  private readonly chains: readonly (readonly number[])[]
  /** Works whose order some rule asks about, and those whose place along the wall. */
  private readonly ordered: ReadonlySet<number>
  private readonly onAxis: ReadonlySet<number>

  /** @param count called for each order begun; it throws where there were too many */
  constructor(show: RuledShow, given: GivenRules, hang: readonly (readonly number[])[], count: () => void) {
    this.show = show
    this.given = given
    this.hang = hang
    this.count = count
    this.chains = chainsOf(show)
    const { together, beside, notBeside, first, last, onAxis } = given.rules
    const leads = [...first, ...last].flatMap(({ work, among }) => [work, ...(among ?? [])])
    this.onAxis = new Set(onAxis.map(({ work }) => work))
    this.ordered = new Set([...together.flat(), ...beside.flat(), ...notBeside.flat(), ...leads, ...this.onAxis])
  }

  /** On either side of what is kept clear works may be neighbours. */
  chained(bay: number, other: number): boolean {
    return this.chains.some(chain => chain.includes(bay) && chain.includes(other))
  }

  /** To all that is not named, by what stays. */
  private closed(bay: number): boolean {
    return this.given.barred.at(-1)?.[bay] === true
  }

  /** Whether works that no rule leads or follows may stand at this place of a bay's row. */
  private freeAt(bay: number, row: readonly number[], place: number): boolean {
    const bars = (leads: readonly Leads[], way: 1 | -1) =>
      leads.some(({ work, among, bays, sameWall }) => {
        const here = this.hang.findIndex(each => each.includes(work))
        if (among !== null || here < 0 || (bays !== null && !bays.includes(bay))) return false
        if (sameWall && at(this.show.bays, bay).face !== at(this.show.bays, here).face) return false
        if (bay !== here) return (bay - here) * way < 0
        return way === 1 ? place <= row.indexOf(work) : place > row.indexOf(work)
      })
    return !bars(this.given.rules.first, 1) && !bars(this.given.rules.last, -1)
  }

  /** The same for works that are not named: what stays may bar all of them. */
  private openAt(bay: number, row: readonly number[], place: number): boolean {
    return !this.closed(bay) && this.freeAt(bay, row, place)
  }

  /**
   * How many other works an order of the bay needs between its own, at least: in any order, and in one that lets others
   * hang there. Null where no order holds.
   */
  fewestParted(bay: number, fillers: number, thin: number): Order | null {
    const works = at(this.hang, bay)
    if (works.length === 0) return { least: 0, open: this.openAt(bay, [], 0) ? 0 : null }
    // On an axis it matters how wide is what stands before: then all of them are tried.
    const told = works.some(work => this.onAxis.has(work)) ? works : works.filter(work => this.ordered.has(work))
    const plain = works.filter(work => !told.includes(work))
    let best: { least: number; open: number | null } | null = null
    const row: number[] = []
    const build = () => {
      if (best?.open === 0) return
      this.count()
      if (row.length === told.length) {
        const order = this.parted(bay, row, plain, fillers, thin)
        if (order === null) return
        const opens = [best?.open ?? null, order.open].flatMap(each => (each === null ? [] : [each]))
        best = {
          least: Math.min(best?.least ?? order.least, order.least),
          open: opens.length === 0 ? null : Math.min(...opens),
        }
        return
      }
      for (const work of told) {
        if (row.includes(work)) continue
        row.push(work)
        build()
        row.pop()
      }
    }
    build()
    return best
  }

  private parted(
    bay: number,
    row: readonly number[],
    plain: readonly number[],
    fillers: number,
    thin: number,
  ): Order | null {
    const { together, beside, notBeside, first, last, onAxis } = this.given.rules
    const { from, to, margin, gap, leftOf, rightOf } = at(this.show.bays, bay)
    const all = [...(leftOf === null ? [] : [leftOf]), ...row, ...(rightOf === null ? [] : [rightOf])]
    const parts = all
      .slice(1)
      .map((work, index) =>
        notBeside.some(pair => pair.includes(work) && pair.includes(at(all, index)) && work !== all[index]),
      )
    const tight = (group: readonly number[], ordered: boolean) => {
      if (!row.some(work => group.includes(work))) return true
      const places = all.flatMap((work, index) => (group.includes(work) ? [index] : []))
      const kept = places.map(place => at(all, place))
      const joined = places.every(
        (place, index) => index === 0 || (place === at(places, index - 1) + 1 && parts[place - 1] === false),
      )
      const start = group.indexOf(at(kept, 0))
      if (!joined || (ordered && kept.some((work, index) => group[start + index] !== work))) return false
      if (kept.length === group.length || kept.some(work => this.show.works[work]?.stays !== null)) return true
      const chain = this.chains.find(each => each.includes(bay))
      return (
        chain !== undefined &&
        group.every(work => chain.some(each => kept.includes(work) || at(this.hang, each).includes(work)))
      )
    }
    if (!together.every(group => tight(group, true)) || !beside.every(group => tight(group, false))) return null
    const leads = ({ work, among, bays }: Leads, way: 1 | -1) => {
      const own = row.indexOf(work)
      if (own < 0 || (bays !== null && !bays.includes(bay))) return true
      return row.every((other, index) => (index - own) * way >= 0 || (among !== null && !among.includes(other)))
    }
    if (!first.every(each => leads(each, 1)) || !last.every(each => leads(each, -1))) return null
    // What stands here anyway parts as well as any other.
    const needed = Math.max(0, parts.filter(Boolean).length - plain.length)
    if (needed > (this.closed(bay) ? 0 : fillers)) return null
    const offset = leftOf === null ? -1 : 0
    let x = plain.reduce((sum, work) => sum + at(this.show.works, work).width + gap, from + margin)
    let own = plain.length
    const part = (index: number) => {
      if (parts[index] !== true) return
      if (own > 0) own -= 1
      else x += thin + gap
    }
    for (const [index, work] of row.entries()) {
      part(index + offset)
      const { width } = at(this.show.works, work)
      for (const axis of onAxis) {
        if (axis.work !== work) continue
        const reached = axis.at.filter(each => each.bay === bay && each.x >= x).map(each => each.x)
        if (reached.length === 0) return null
        x = Math.max(x, Math.min(...reached) - width)
      }
      x += width + gap
    }
    if (rightOf !== null) part(parts.length - 1)
    if (x - gap > to - margin + slack) return null
    const tied = (place: number) => {
      const [before, after] = [row[place - 1] ?? leftOf, row[place] ?? rightOf]
      const both = (group: readonly number[]) =>
        before !== null && after !== null && group.includes(before) && group.includes(after)
      return [...together, ...beside].some(both)
    }
    const places = [...row.keys(), row.length].filter(place => row.length === 0 || !tied(place))
    if (plain.length > 0 && !places.some(place => this.freeAt(bay, row, place))) return null
    const open = places.some(place => this.openAt(bay, row, place))
    return { least: needed, open: open ? needed : null }
  }
}
