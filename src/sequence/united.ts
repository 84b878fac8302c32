/**
 * A planner's question over units in place of works: what hangs together is one work of its outer size, as heavy as all
 * of its works, in the strictest light of theirs. Its weight counts at its middle. Search and bound see works alone, so
 * what they prove they prove of the units as they were formed.
 */
import { at, type Problem, type Rules, type Work } from './problem.ts'

export interface Group {
  /** By their place in the problem, in the order of the checklist; at least two. */
  readonly works: readonly number[]
  readonly width: number
  readonly height: number
  /** For each bay how well its works are served there, each at its own height; null where it may not hang. */
  readonly served: readonly (number | null)[]
}

export interface United {
  readonly problem: Problem
  /** Of each work of that problem those of the first that it is, in their order. */
  readonly members: readonly (readonly number[])[]
}

export function united(problem: Problem, groups: readonly Group[]): United {
  if (groups.length === 0) return { problem, members: problem.works.map((_, index) => [index]) }
  const of = new Map(groups.flatMap(group => group.works.map(work => [work, group] as const)))
  const members: (readonly number[])[] = []
  const works: Work[] = []
  const place = new Map<number, number>()
  for (const [index, work] of problem.works.entries()) {
    const group = of.get(index)
    if (group !== undefined && group.works[0] !== index) continue
    for (const own of group?.works ?? [index]) place.set(own, works.length)
    members.push(group?.works ?? [index])
    works.push(group === undefined ? work : asOne(problem, group, work))
  }
  const to = (work: number) => place.get(work) ?? work
  const orNull = (work: number | null) => (work === null ? null : to(work))
  return {
    problem: {
      ...problem,
      works,
      bays: problem.bays.map(bay => ({ ...bay, leftOf: orNull(bay.leftOf), rightOf: orNull(bay.rightOf) })),
      rules: rulesOver(problem.rules, to),
    },
    members,
  }
}

function asOne({ works }: Problem, { works: own, width, height, served }: Group, first: Work): Work {
  const all = own.map(index => at(works, index))
  const limits = all.flatMap(({ limit }) => limit ?? [])
  return {
    ...first,
    width,
    height,
    weight: all.reduce((sum, { weight }) => sum + weight, 0),
    limit: limits.length === 0 ? null : Math.min(...limits),
    served: served.map((share, bay) => (all.some(work => work.served[bay] === null) ? null : share)),
  }
}

/** Rules between units. Between works of one unit they are no matter of the planner's: it stands as it was formed. */
function rulesOver(rules: Rules, to: (work: number) => number): Rules {
  const group = (works: readonly number[]) => {
    const units = works.map(to)
    return units.filter((unit, index) => units.indexOf(unit) === index)
  }
  const groups = (all: readonly (readonly number[])[]) => all.map(group).filter(units => units.length > 1)
  const pairs = (all: Rules['notBeside']) =>
    all.map(([one, other]) => [to(one), to(other)] as const).filter(([one, other]) => one !== other)
  const leads = (all: Rules['first']) =>
    all.map(one => ({ ...one, work: to(one.work), among: one.among === null ? null : group(one.among) }))
  return {
    together: groups(rules.together),
    beside: groups(rules.beside),
    oneWall: groups(rules.oneWall),
    notBeside: pairs(rules.notBeside),
    notFacing: pairs(rules.notFacing),
    first: leads(rules.first),
    last: leads(rules.last),
    onAxis: rules.onAxis.map(one => ({ ...one, work: to(one.work) })),
  }
}
