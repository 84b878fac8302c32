/**
 * Ways that keep every gap of the row as it was and push works along instead: from the left, from the right, or half
 * each way. After a swap the sum of widths is the same, so only what lies between the two moves.
 */
import { centreFromRule } from '../hang/height.ts'
import type { Spot } from './cost.ts'
import type { LateQuestion, LateWork } from './late-shape.ts'
import type { Row } from './row.ts'

export interface Pushed {
  readonly key: 'push-right' | 'push-left' | 'push-both'
  readonly spots: ReadonlyMap<string, Spot>
}

/** Null spots never: a row of one work has nothing to push. Held works stay, so a push that reaches one is left out. */
export function pushed(question: LateQuestion, after: readonly LateWork[], row: Row): readonly Pushed[] {
  const { change, works } = question
  const by = new Map(after.map(work => [work.id, work]))
  const were = works
    .filter(
      work =>
        row.ids.includes(work.id) || ((change.kind === 'drop' || change.kind === 'replace') && work.id === change.id),
    )
    .sort((a, b) => a.x - b.x)
  const gaps = were.slice(1).map((work, i) => {
    const before = were[i]
    return before === undefined ? 0 : work.x - work.width / 2 - (before.x + before.width / 2)
  })
  const order = were.flatMap(work => by.get(nowIn(question, work.id)) ?? [])
  if (change.kind === 'drop') {
    const at = were.findIndex(work => work.id === change.id)
    // The gap that goes is the one on its right; at the right end the one on its left.
    gaps.splice(Math.min(at, gaps.length - 1), 1)
  }
  const first = were[0]
  const last = were.at(-1)
  if (first === undefined || last === undefined || order.length === 0) return []
  const left = first.x - first.width / 2
  const right = last.x + last.width / 2
  const length = order.reduce((sum, work) => sum + work.width, 0) + gaps.reduce((sum, gap) => sum + gap, 0)
  const ways = [
    ['push-right', left],
    ['push-left', right - length],
    ['push-both', (left + right - length) / 2],
  ] as const
  return ways.flatMap(([key, from]) => {
    const spots = laid(order, gaps, from)
    const heldMoves = order.some(work => work.held && Math.abs((spots.get(work.id)?.x ?? work.x) - work.x) > 0.05)
    return heldMoves ? [] : [{ key, spots }]
  })
}

/** Which work stands in a work's old place of the order. */
function nowIn({ change }: LateQuestion, id: string): string {
  if (change.kind === 'replace') return id === change.id ? change.by.id : id
  if (change.kind !== 'swap') return id
  if (id === change.one) return change.other
  return id === change.other ? change.one : id
}

function laid(order: readonly LateWork[], gaps: readonly number[], from: number): ReadonlyMap<string, Spot> {
  const spots = new Map<string, Spot>()
  let x = from
  order.forEach((work, index) => {
    spots.set(work.id, { x: x + work.width / 2, y: centreFromRule(work.stands, work.height) })
    x += work.width + (gaps[index] ?? 0)
  })
  return spots
}
