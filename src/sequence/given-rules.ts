/**
 * The rules of a show as a planner takes them: bays that they bar for each work, and what is left to hold between works
 * that move. Works that stay are settled here: what they forbid becomes bars, and a rule that they break by themselves is
 * named.
 */
import { type Extent, type HangRule, pairsOf } from './hang-rule.ts'
import type { Leads, Rules } from './problem.ts'

export interface RuledWork {
  readonly width: number
  readonly section: number
  /** For each bay, whether it could hang there if no rule were. */
  readonly could: readonly boolean[]
  readonly stays: Stays | null
}

export interface Stays extends Extent {
  /** The bay before which it is met; those with the same by `order`. */
  readonly before: number
  readonly order: number
}

export interface RuledBay extends Extent {
  readonly margin: number
  readonly gap: number
  readonly leftOf: number | null
  readonly rightOf: number | null
}

export interface RuledShow {
  readonly works: readonly RuledWork[]
  /** In the visitor's order. */
  readonly bays: readonly RuledBay[]
  /** Unbroken lengths of wall: what stays on them and the bays between, from the left. */
  readonly runs: readonly (readonly ({ readonly work: number } | { readonly bay: number })[])[]
  readonly faces: (a: Extent, b: Extent) => boolean
}

export interface GivenRules {
  readonly rules: Rules
  /** For each work and bay, whether a rule bars it there. */
  readonly barred: readonly (readonly boolean[])[]
  /** Rules that what stays breaks by itself. */
  readonly impossible: readonly string[]
}

export function givenRules(show: RuledShow, given: readonly HangRule[]): GivenRules {
  const { works, bays } = show
  const barred = works.map(() => bays.map(() => false))
  const impossible: string[] = []
  const rules = {
    ...{ together: [] as number[][], beside: [] as number[][], oneWall: [] as number[][] },
    ...{ notBeside: [] as (readonly [number, number])[], notFacing: [] as (readonly [number, number])[] },
    ...{
      first: [] as Leads[],
      last: [] as Leads[],
      onAxis: [] as { work: number; at: { bay: number; x: number }[] }[],
    },
  }
  const staysAt = (work: number) => works[work]?.stays ?? null
  const free = (list: readonly number[]) => list.filter(work => staysAt(work) === null)
  const bar = (work: number, when: (bay: RuledBay, index: number) => boolean) => {
    bays.forEach((bay, index) => {
      const own = barred[work]
      if (own !== undefined && when(bay, index)) own[index] = true
    })
  }

  for (const rule of given) {
    const fixed = rule.works.flatMap(work => staysAt(work) ?? [])
    const cannot = () => impossible.push(rule.id)
    switch (rule.kind) {
      case 'stays':
      case 'only on':
      case 'light':
        for (const work of free(rule.works)) bar(work, bay => !rule.faces.includes(bay.face))
        if (fixed.some(({ face }) => !rule.faces.includes(face))) cannot()
        break
      case 'not on':
        for (const work of free(rule.works)) bar(work, bay => rule.faces.includes(bay.face))
        if (fixed.some(({ face }) => rule.faces.includes(face))) cannot()
        break
      case 'one wall': {
        const walls = new Set(fixed.map(({ face }) => face))
        if (walls.size > 1) cannot()
        else if (walls.size === 1) for (const work of free(rule.works)) bar(work, bay => !walls.has(bay.face))
        else rules.oneWall.push([...rule.works])
        break
      }
      case 'side by side':
      case 'in this order':
        if (fixed.length > 0 && !besideStaying(rule)) cannot()
        else if (rule.kind === 'side by side') rules.beside.push([...rule.works])
        else rules.together.push([...rule.works])
        break
      case 'not beside':
        for (const pair of pairsOf(rule.works)) {
          if (free(pair).length > 0) rules.notBeside.push(pair)
          else if (touch(pair)) cannot()
        }
        break
      case 'not facing':
        for (const pair of pairsOf(rule.works)) {
          const [a, b] = [staysAt(pair[0]), staysAt(pair[1])]
          if (a === null && b === null) rules.notFacing.push(pair)
          else if (a !== null && b !== null) {
            if (show.faces(a, b)) cannot()
          } else if (a !== null) bar(pair[1], bay => show.faces(a, bay))
          else if (b !== null) bar(pair[0], bay => show.faces(b, bay))
        }
        break
      case 'axis': {
        const [work] = rule.works
        const at = rule.axes.flatMap(({ face, x }) =>
          bays.flatMap((bay, index) => (bay.face === face && x >= bay.from && x <= bay.to ? [{ bay: index, x }] : [])),
        )
        if (work !== undefined && fixed.length === 0) {
          bar(work, (_, index) => !at.some(({ bay }) => bay === index))
          rules.onAxis.push({ work, at })
        } else if (
          !fixed.every(spot => rule.axes.some(({ face, x }) => face === spot.face && x >= spot.from && x <= spot.to))
        )
          cannot()
        break
      }
      case 'first':
      case 'last':
        if (!led(rule, rule.kind === 'first')) cannot()
    }
  }
  return { rules, barred, impossible }

  /** Two that stay, with nothing between. */
  function touch(pair: readonly [number, number]): boolean {
    return show.runs.some(run =>
      run.some((item, index) => {
        const next = run[index + 1]
        if (next === undefined || !('work' in item) || !('work' in next)) return false
        return pair.includes(item.work) && pair.includes(next.work)
      }),
    )
  }

  /** A group of which some stays: the rest comes beside it, and nothing else between. False where that can't be. */
  function besideStaying({ works: group, kind }: HangRule): boolean {
    const run = show.runs.find(each => each.some(item => 'work' in item && group.includes(item.work)))
    if (run === undefined) return false
    const places = run.flatMap((item, index) => ('work' in item && group.includes(item.work) ? [index] : []))
    if (places.length < group.length - free(group).length) return false
    const [from, to] = [places[0] ?? 0, places.at(-1) ?? 0]
    const inside = run.slice(from, to + 1)
    if (inside.some(item => 'work' in item && !group.includes(item.work))) return false
    const order = inside.flatMap(item => ('work' in item ? [group.indexOf(item.work)] : []))
    if (kind === 'in this order' && order.some((place, index) => index > 0 && place < (order[index - 1] ?? 0)))
      return false
    const between = inside.flatMap(item => ('bay' in item ? [item.bay] : []))
    const ends = [run[from - 1], run[to + 1]].flatMap(item => (item !== undefined && 'bay' in item ? [item.bay] : []))
    for (const work of free(group)) bar(work, (_, index) => !between.includes(index) && !ends.includes(index))
    for (const work of works.keys())
      if (!group.includes(work) && staysAt(work) === null) bar(work, (_, index) => between.includes(index))
    return true
  }

  /** A work that comes first or last; false where what stays is met before it whatever is done. */
  function led({ works: [work], within, faces }: HangRule, first: boolean): boolean {
    if (work === undefined) return true
    const own = works[work]?.section
    const counts = (other: number, face: string, here: string) => {
      if (other === work) return false
      if (within === 'wall') return face === here
      if (within === 'room') return faces.includes(face)
      return within !== 'section' || works[other]?.section === own
    }
    const here = staysAt(work)
    if (here !== null) {
      if (within === 'room' && !faces.includes(here.face)) return false
      for (const other of works.keys()) {
        const there = staysAt(other)
        if (there === null)
          bar(
            other,
            (bay, index) => counts(other, bay.face, here.face) && (first ? index < here.before : index >= here.before),
          )
        else if (counts(other, there.face, here.face) && (first ? there.order < here.order : there.order > here.order))
          return false
      }
      return true
    }
    if (within === 'room') bar(work, bay => !faces.includes(bay.face))
    for (const other of works.keys()) {
      const there = staysAt(other)
      if (there === null) continue
      bar(
        work,
        (bay, index) => counts(other, there.face, bay.face) && (first ? there.before <= index : there.before > index),
      )
    }
    const among =
      within === 'section' ? [...works.keys()].filter(other => counts(other, '', '') && staysAt(other) === null) : null
    const rooms = bays.flatMap((bay, index) => (faces.includes(bay.face) ? [index] : []))
    const leads = { work, among, bays: within === 'room' ? rooms : null, sameWall: within === 'wall' }
    if (first) rules.first.push(leads)
    else rules.last.push(leads)
    return true
  }
}

/** Bays that follow one another on a length of wall with no work that stays between. */
export function chainsOf({ runs }: Pick<RuledShow, 'runs'>): number[][] {
  return runs.flatMap(run => {
    const chains: number[][] = [[]]
    for (const item of run) {
      if ('bay' in item) chains.at(-1)?.push(item.bay)
      else chains.push([])
    }
    return chains.filter(chain => chain.length > 1)
  })
}
