/**
 * Works that go together: groups that stand side by side, joined where they share a work, each with the orders in which
 * it may stand; and the order of the checklist with such groups drawn together and leaders at the front.
 */
import { at, type Problem } from './problem.ts'

export interface Unit {
  readonly works: readonly number[]
  /** Orders in which every rule between its works holds, the checklist's first; none where they contradict. */
  readonly orders: readonly (readonly number[])[]
  /** Whether all were tried: then none means that there is none. */
  readonly tried: boolean
}

/** No more orders of a unit than these are tried, found in no more beginnings than these. */
const mostOrders = 24
const mostBegun = 20_000

/** What is asked of a problem. */
export interface Grouped {
  readonly rules: Problem['rules']
  readonly works: readonly { readonly stays: unknown; readonly rank: number }[]
}

/** By work, the unit it belongs to; works that go by themselves, and those that must stand beside one that stays, have none. */
export function unitsOf(problem: Grouped): ReadonlyMap<number, Unit> {
  const { rules, works } = problem
  const free = [...rules.together, ...rules.beside].filter(group => group.every(work => at(works, work).stays === null))
  return new Map(
    joined(free).flatMap(members => {
      const unit = { works: members, ...ordersOf(problem, members) }
      return members.map(work => [work, unit] as const)
    }),
  )
}

/** Groups joined where they share a work, each in the order of the checklist. */
function joined(groups: readonly (readonly number[])[]): number[][] {
  const found: Set<number>[] = []
  for (const group of groups) {
    const touching = found.filter(each => group.some(work => each.has(work)))
    const one = new Set([...group, ...touching.flatMap(each => [...each])])
    for (const each of touching) found.splice(found.indexOf(each), 1)
    found.push(one)
  }
  return found.map(each => [...each].sort((a, b) => a - b))
}

/** Built work by work; what can't become an order is not built further. */
function ordersOf({ rules, works }: Grouped, members: readonly number[]): Omit<Unit, 'works'> {
  const byRank = [...members].sort((a, b) => at(works, a).rank - at(works, b).rank)
  const together = rules.together.filter(group => group.every(work => members.includes(work)))
  const beside = rules.beside.filter(group => group.every(work => members.includes(work)))
  const apart = rules.notBeside.filter(pair => pair.every(work => members.includes(work)))
  const found: number[][] = []
  const row: number[] = []
  const fits = () => {
    const last = at(row, row.length - 1)
    const before = row[row.length - 2]
    if (before !== undefined && apart.some(pair => pair.includes(last) && pair.includes(before))) return false
    return (
      together.every(group => {
        const next = group[group.indexOf(before ?? -1) + 1]
        if (before !== undefined && group.includes(before) && next !== undefined) return last === next
        return group.indexOf(last) <= 0
      }) &&
      beside.every(group => {
        // Once it is left it must be complete.
        if (before === undefined || !group.includes(before) || group.includes(last)) return true
        return group.every(work => row.includes(work))
      })
    )
  }
  let begun = 0
  const build = () => {
    if (found.length >= mostOrders || begun > mostBegun) return
    begun += 1
    if (row.length === members.length) {
      found.push([...row])
      return
    }
    for (const work of byRank) {
      if (row.includes(work)) continue
      row.push(work)
      if (fits()) build()
      row.pop()
    }
  }
  build()
  return { orders: found, tried: begun <= mostBegun }
}

/**
 * The free works as the checklist has them, but for what rules demand: what hangs together is drawn to the place of its
 * first, and what leads stands at the front (or the end) of what it leads.
 */
export function orderKept(problem: Problem): readonly number[] {
  const { works, rules } = problem
  const free = works
    .flatMap((work, index) => (work.stays === null ? [index] : []))
    .sort((a, b) => at(works, a).rank - at(works, b).rank)
  const units = unitsOf(problem)
  const drawn = joined([...new Set([...units.values()].map(unit => unit.works)), ...rules.oneWall.map(freeOnly)])
  let order = free
  for (const members of drawn) {
    const first = order.findIndex(work => members.includes(work))
    const block = order.filter(work => members.includes(work))
    order = order.filter(work => !members.includes(work))
    order.splice(first, 0, ...asUnits(block))
  }
  for (const { work, among, bays, sameWall } of rules.first) if (bays === null && !sameWall) lead(work, among, true)
  for (const { work, among, bays, sameWall } of rules.last) if (bays === null && !sameWall) lead(work, among, false)
  return order

  function freeOnly(group: readonly number[]): number[] {
    return group.filter(work => at(works, work).stays === null)
  }

  /** Each unit in its first order, at the place of its first work. */
  function asUnits(block: readonly number[]): number[] {
    const done = new Set<Unit>()
    return block.flatMap(work => {
      const unit = units.get(work)
      if (unit === undefined) return [work]
      if (done.has(unit)) return []
      done.add(unit)
      return [...(unit.orders[0] ?? unit.works)]
    })
  }

  function lead(work: number, among: readonly number[] | null, front: boolean): void {
    const unit = units.get(work)
    const moved =
      unit === undefined
        ? [work]
        : (unit.orders.find(each => (front ? each[0] : each.at(-1)) === work) ?? unit.orders[0] ?? unit.works)
    const rest = order.filter(each => !moved.includes(each))
    const led = among === null ? rest : rest.filter(each => among.includes(each))
    const edge = front ? led[0] : led.at(-1)
    const place = edge === undefined ? order.indexOf(work) : rest.indexOf(edge) + (front ? 0 : 1)
    order = [...rest.slice(0, place), ...moved, ...rest.slice(place)]
  }
}
