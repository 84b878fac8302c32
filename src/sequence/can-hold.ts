/**
 * Whether rules can hold together: exact, on the works that they name. Works come to bays with any spaces between them;
 * other works of the show may stand between two that must not be neighbours, and must have room somewhere. What is asked
 * is more lenient than a planner's hang in equal parts, so that rules are never accused of what only spaces decide.
 */
import { type AskedAcross, broken } from './across.ts'
import { type GivenRules, givenRules, type RuledShow, type RuledWork } from './given-rules.ts'
import { type HangRule, pairsOf } from './hang-rule.ts'
import { OrdersOfBay, slack } from './orders-of-bay.ts'
import { at, type Leads } from './problem.ts'
import { unitsOf } from './units.ts'

/** `unknown`: not answered within the beginnings of hangs that it may look at. */
export type CanHold = 'yes' | 'no' | 'unknown'

class TooMany extends Error {}

function anyOther({ bays }: RuledShow): RuledWork {
  return { width: 0, section: Number.NaN, could: bays.map(() => true), stays: null }
}

/** Pairs of bays that look at each other, by their place. */
export function facingBays({ bays, faces }: Pick<RuledShow, 'bays' | 'faces'>): (readonly [number, number])[] {
  return pairsOf([...bays.keys()]).filter(([a, b]) => faces(at(bays, a), at(bays, b)))
}

/** @param most beginnings of hangs looked at before it gives up */
export function canHold(show: RuledShow, rules: readonly HangRule[], most = 20_000): CanHold {
  const free = [...show.works.keys()].filter(work => show.works[work]?.stays === null)
  // A work that fits no wall is no rule's matter.
  const fits = new Set(free.filter(work => at(show.works, work).could.some(Boolean)))
  const asked = rules.map(rule => ({
    ...rule,
    works: rule.works.filter(work => fits.has(work) || !free.includes(work)),
  }))
  // One more stands for whatever is not named: what bars it bars all of them.
  const given = givenRules({ ...show, works: [...show.works, anyOther(show)] }, asked)
  if (given.impossible.length > 0) return 'no'
  // Side by side, wherever that is: no order of a group may need another work within it.
  const grouped = { rules: given.rules, works: show.works.map(({ stays }, rank) => ({ stays, rank })) }
  if ([...unitsOf(grouped).values()].some(unit => unit.tried && unit.orders.length === 0)) return 'no'
  const named = [...new Set(asked.flatMap(rule => rule.works))].filter(work => fits.has(work))
  const open = (work: number) =>
    show.bays.flatMap((_, bay) =>
      at(at(show.works, work).could, bay) && !at(at(given.barred, work), bay) ? [bay] : [],
    )
  const domains = new Map([...fits].map(work => [work, open(work)] as const))
  if ([...domains.values()].some(bays => bays.length === 0)) return 'no'
  const others = [...fits].filter(work => !named.includes(work))
  try {
    return new Search(show, given, named, others, domains, most).found() ? 'yes' : 'no'
  } catch (thrown) {
    if (thrown instanceof TooMany) return 'unknown'
    throw thrown
  }
}

/** Works are given to bays, those with the fewest first; each bay that gets one is asked for an order. */
class Search {
  private readonly show: RuledShow
  private readonly given: GivenRules
  private readonly named: readonly number[]
  private readonly domains: ReadonlyMap<number, readonly number[]>
  private readonly most: number
  private readonly hang: number[][]
  private readonly asked: AskedAcross
  private looked = 0
  /** Other works that can stand between: how many, the least width of one, and the length that all of them want. */
  private readonly fillers: number
  private readonly thin: number
  private readonly bulk: number
  private readonly narrowest: number
  private readonly groups: readonly (readonly number[])[]
  private readonly orders: OrdersOfBay

  constructor(
    show: RuledShow,
    given: GivenRules,
    named: readonly number[],
    others: readonly number[],
    domains: ReadonlyMap<number, readonly number[]>,
    most: number,
  ) {
    this.show = show
    this.given = given
    this.domains = domains
    this.most = most
    this.hang = show.bays.map(() => [])
    this.groups = [...given.rules.together, ...given.rules.beside]
    const tied = (work: number) => Number(this.groups.some(group => group.includes(work)))
    this.named = [...named].sort(
      (a, b) => (domains.get(a)?.length ?? 0) - (domains.get(b)?.length ?? 0) || tied(b) - tied(a) || a - b,
    )
    const widths = others.map(work => at(show.works, work).width)
    this.fillers = others.length
    this.thin = Math.min(...widths, Number.POSITIVE_INFINITY)
    this.narrowest = Math.min(...show.bays.map(bay => bay.gap), Number.POSITIVE_INFINITY)
    this.bulk = widths.reduce((sum, width) => sum + width + this.narrowest, 0)
    this.orders = new OrdersOfBay(show, given, this.hang, () => this.count())
    this.asked = {
      bays: show.bays,
      works: show.works,
      facing: given.rules.notFacing.length === 0 ? [] : facingBays(show),
      // Who comes first within a bay is asked with its order.
      rules: { ...given.rules, first: [], last: [] },
    }
  }

  found(): boolean {
    return !this.crowded() && this.place(0)
  }

  private count(): void {
    this.looked += 1
    if (this.looked > this.most) throw new TooMany()
  }

  /** More on some bays than they hold, by their lengths alone: as no search need find out. */
  private crowded(): boolean {
    const sets = new Map([...this.domains].map(([, bays]) => [bays.join(), bays] as const))
    return [...sets.values()].some(bays => {
      if (bays.length === this.show.bays.length) return false
      const inside = this.named.filter(work => this.domains.get(work)?.every(bay => bays.includes(bay)))
      const wants = inside.reduce((sum, work) => sum + at(this.show.works, work).width + this.narrowest, 0)
      return wants > bays.reduce((sum, bay) => sum + this.room(bay), 0) + slack
    })
  }

  /** What a bay gives to works that each want their width and its gap. */
  private room(bay: number): number {
    const { from, to, margin, gap } = at(this.show.bays, bay)
    return to - from - 2 * margin + gap
  }

  private place(index: number): boolean {
    const work = this.named[index]
    if (work === undefined) return this.othersFit()
    for (const bay of this.domains.get(work) ?? []) {
      this.count()
      if (!this.mayCome(work, bay)) continue
      at(this.hang, bay).push(work)
      if (this.keeps() && this.mayStand(bay) && this.place(index + 1)) return true
      at(this.hang, bay).pop()
    }
    return false
  }

  private mayCome(work: number, bay: number): boolean {
    const here = at(this.hang, bay)
    const { gap } = at(this.show.bays, bay)
    const wants = [...here, work].reduce((sum, each) => sum + at(this.show.works, each).width + gap, 0)
    if (wants > this.room(bay) + slack) return false
    // A group that nothing staying is part of stands on one bay, or goes on beside what is kept clear.
    return this.groups.every(
      group =>
        !group.includes(work) ||
        group.some(each => this.show.works[each]?.stays !== null) ||
        this.hang.every(
          (row, other) => other === bay || this.orders.chained(bay, other) || !row.some(each => group.includes(each)),
        ),
    )
  }

  /** Whether what holds between bays is kept so far; who comes first within one is asked with its order. */
  private keeps(): boolean {
    const { first, last } = this.given.rules
    const between = (leads: readonly Leads[], way: 1 | -1) => leads.every(each => !this.sooner(each, way))
    return broken(this.asked, this.hang) === null && between(first, 1) && between(last, -1)
  }

  /** Whether an order is left to a bay, whatever still comes to it: asked once its groups are complete. */
  private mayStand(bay: number): boolean {
    const row = at(this.hang, bay)
    const whole = this.groups.every(
      group => !group.some(work => row.includes(work)) || group.every(work => row.includes(work)),
    )
    return !whole || this.orders.fewestParted(bay, Number.POSITIVE_INFINITY, 0) !== null
  }

  private sooner({ work, among, bays, sameWall }: Leads, way: 1 | -1): boolean {
    const here = this.hang.findIndex(row => row.includes(work))
    if (here < 0) return false
    return this.hang.some((row, bay) => {
      if ((bay - here) * way >= 0 || (bays !== null && !bays.includes(bay))) return false
      if (sameWall && at(this.show.bays, bay).face !== at(this.show.bays, here).face) return false
      return row.some(other => among === null || among.includes(other))
    })
  }

  /** Every bay has an order, and what is not named has room on what is left. */
  private othersFit(): boolean {
    const orders = this.hang.map((_, bay) => this.orders.fewestParted(bay, this.fillers, this.thin))
    const total = this.show.bays.reduce((sum, _, bay) => sum + this.room(bay), 0)
    const all = this.bulk + this.named.reduce((sum, work) => sum + at(this.show.works, work).width + this.narrowest, 0)
    // A show that does not fit anyway is no rule's matter.
    const wanted = all > total ? 0 : this.bulk
    const choose = (bay: number, between: number, left: number): boolean => {
      if (between > this.fillers) return false
      const order = orders[bay]
      if (order === undefined) return wanted <= left + slack
      if (order === null) return false
      return (
        (order.open !== null && choose(bay + 1, between + order.open, left + this.leftOn(bay))) ||
        (order.open !== order.least && choose(bay + 1, between + order.least, left))
      )
    }
    return choose(0, 0, 0)
  }

  private leftOn(bay: number): number {
    const { gap } = at(this.show.bays, bay)
    return at(this.hang, bay).reduce((left, work) => left - at(this.show.works, work).width - gap, this.room(bay))
  }
}
