/**
 * What would make a row fit that does not: changes each of which is enough alone, the cheapest for the hang first. The
 * rule it keeps: none is offered that has not been tried on the row itself.
 */
import type { RowCure, RowQuestion, RowRule } from './layout-shape.ts'
import { shortBy } from './row.ts'

const SLACK = 1e-6

function fits(question: RowQuestion): boolean {
  return shortBy(question) <= SLACK
}

/** `missing` is by how much the row is too long, mm. */
export function rowCures(question: RowQuestion, missing: number): readonly RowCure[] {
  const { works } = question
  const isHeld = (work: (typeof works)[number]) => (work.heldAt ?? null) !== null
  const leavable = works.filter(work => !isHeld(work)).sort((a, b) => a.width - b.width)
  const out = leavable.find(work => fits({ ...question, works: works.filter(each => each.id !== work.id) }))
  const freed = works
    .filter(isHeld)
    .find(work => fits({ ...question, works: works.map(each => (each === work ? { ...each, heldAt: null } : each)) }))
  return [
    ...cureOfRule(question),
    ...(out === undefined ? [] : [{ kind: 'leave-out' as const, id: out.id, mm: out.width }]),
    ...(freed === undefined ? [] : [{ kind: 'let-go' as const, id: freed.id, mm: 0 }]),
    ...(works.some(isHeld) ? [] : [{ kind: 'longer' as const, mm: missing }]),
  ]
}

/** The figures of the rule itself, each alone, as near to what was asked for as it may be. */
function cureOfRule(question: RowQuestion): readonly RowCure[] {
  const { rule, leastGap = 0 } = question
  const withRule = (changed: RowRule) => fits({ ...question, rule: changed })
  const least = most(leastGap, gap => fits({ ...question, leastGap: gap }))
  const leastCure: readonly RowCure[] = least === null ? [] : [{ kind: 'least-gap', mm: least }]
  switch (rule.rule) {
    case 'equal':
      return leastCure
    case 'ends': {
      const times = most(rule.times, k => withRule({ ...rule, times: k }))
      return [...(times === null ? [] : [{ kind: 'times' as const, times }]), ...leastCure]
    }
    case 'margins': {
      const margin = most(Math.max(rule.left, rule.right), mm => withRule({ ...rule, left: mm, right: mm }))
      return [...leastCure, ...(margin === null ? [] : [{ kind: 'margins' as const, mm: margin }])]
    }
    case 'gap': {
      const gap = most(rule.gap, mm => withRule({ ...rule, gap: mm }))
      return [...(gap === null ? [] : [{ kind: 'gap' as const, mm: gap }]), ...axisCure(question, rule)]
    }
    case 'by-size': {
      const factor = most(rule.factor, times => withRule({ ...rule, factor: times }))
      const closest = most(rule.least, mm => withRule({ ...rule, factor: 0, least: mm }))
      return [
        ...(factor === null ? [] : [{ kind: 'factor' as const, times: factor }]),
        ...axisCure(question, rule),
        ...(factor === null && closest !== null ? [{ kind: 'least-gap' as const, mm: closest }] : []),
      ]
    }
  }
}

/** The axis nearest to the one asked for about which the row would fit. */
function axisCure(
  question: RowQuestion,
  rule: Extract<RowRule, { readonly rule: 'gap' | 'by-size' }>,
): readonly RowCure[] {
  const { from, to } = question
  const { axis } = rule
  if (axis === null || axis === undefined) return []
  const about = (at: number) => fits({ ...question, rule: { ...rule, axis: at } })
  const middle = (from + to) / 2
  if (!about(middle)) return []
  // Nearer to the middle there is ever more room on the short side.
  const way = most(Math.abs(axis - middle), off => about(middle + Math.sign(axis - middle) * off))
  return way === null ? [] : [{ kind: 'axis', mm: middle + Math.sign(axis - middle) * way }]
}

/** The largest value below `asked` that will do, where smaller ones always do; null where none does or `asked` does. */
function most(asked: number, does: (value: number) => boolean): number | null {
  if (asked <= 0 || does(asked) || !does(0)) return null
  let [low, high] = [0, asked]
  for (let step = 0; step < 60 && high - low > 1e-9; step++) {
    const middle = (low + high) / 2
    if (does(middle)) low = middle
    else high = middle
  }
  // Rounded down, so that it fits as it is read.
  return Math.floor(low * 1000 + 1e-5) / 1000
}
