/**
 * What a way out costs, counted in the things that people count: works moved, holes drilled, holes left, labels, gaps.
 * The rule it keeps: costs are differences to the wall as it is, and the sum of prices is only for the order.
 */
import { centreFromRule } from '../hang/height.ts'
import { type HoleCount, matchHoles } from './holes.ts'
import type { Cost, LateQuestion, LateWork, Prices } from './late-shape.ts'

export interface Spot {
  readonly x: number
  readonly y: number
}

const SAME = 0.05

/** What the wall is now; reckoned once for a question. */
export interface Before {
  readonly holes: HoleCount
  readonly spots: ReadonlyMap<string, Spot>
}

export function spotOf(work: LateWork): Spot {
  return { x: work.x, y: centreFromRule(work.stands, work.height) }
}

export function before(question: LateQuestion, gone: ReadonlySet<string>): Before {
  const spots = new Map(question.works.map(work => [work.id, spotOf(work)]))
  const { change } = question
  // A work from elsewhere is reckoned from the place that it takes.
  const taken = change.kind === 'replace' ? question.works.find(work => work.id === change.id) : undefined
  if (change.kind === 'replace' && taken !== undefined) {
    spots.set(change.by.id, { x: taken.x, y: centreFromRule(taken.stands, change.by.height) })
  }
  const standing = question.works.map(work => ({ ...work, ...spotOf(work) }))
  const kept = matchHoles(standing, question.drilled, question.sameHole)
  // What a dropped work still had to be drilled for is no saving: it is gone in every offer.
  return { holes: { ...kept, missing: kept.missing.filter(need => !gone.has(need.work)) }, spots }
}

/**
 * The cost of works in new places. `after` are the works as the change leaves them, each with its spot; `gaps` the clear
 * distances along the row, `ends` how far its outer edges came.
 */
export function costOf(
  question: LateQuestion,
  was: Before,
  after: readonly { readonly work: LateWork; readonly spot: Spot }[],
  gaps: readonly number[],
  ends: number,
): { readonly cost: Cost; readonly holes: HoleCount } {
  const holes = matchHoles(
    after.map(({ work, spot }) => ({ id: work.id, holes: work.holes, ...spot })),
    question.drilled,
    question.sameHole,
  )
  let hungMoved = 0
  let moved = 0
  let labels = 0
  let offLine = 0
  // Where everything is to be lower, the line is what it comes to: off it is who stays behind.
  const lower = question.change.kind === 'lower' ? question.change.by : 0
  for (const { work, spot } of after) {
    const old = was.spots.get(work.id)
    if (old !== undefined && Math.hypot(old.x - spot.x, old.y - spot.y) > SAME) {
      if (work.standing === 'hung') hungMoved += 1
      else moved += 1
      if (work.labelled) labels += 1
    }
    const off = Math.abs(spot.y - centreFromRule(work.stands, work.height) + lower)
    if (off > SAME) offLine += off
  }
  const inner = gaps.slice(1, -1)
  return {
    holes,
    cost: {
      hungMoved,
      moved,
      newHoles: holes.missing.length - was.holes.missing.length,
      deadHoles: holes.unused.length - was.holes.unused.length,
      labels,
      gapSpread: inner.length === 0 ? 0 : Math.max(...inner) - Math.min(...inner),
      ends,
      offLine,
    },
  }
}

export function priceOf(cost: Cost, prices: Prices): number {
  return (
    cost.hungMoved * prices.hungMoved +
    cost.newHoles * prices.newHole +
    cost.deadHoles * prices.deadHole +
    cost.moved * prices.moved +
    cost.labels * prices.label +
    cost.gapSpread * prices.gapSpreadPerMm +
    cost.ends * prices.endsPerMm +
    cost.offLine * prices.offLinePerMm
  )
}

/** True where `a` is nowhere worse than `b` and somewhere better: then nobody wants `b`. */
export function beats(a: Cost, b: Cost): boolean {
  const keys = ['hungMoved', 'moved', 'newHoles', 'deadHoles', 'labels', 'gapSpread', 'ends', 'offLine'] as const
  let better = false
  for (const key of keys) {
    if (a[key] > b[key] + SAME) return false
    if (a[key] < b[key] - SAME) better = true
  }
  return better
}
