/**
 * Usable stretches of a wall: between its ends, its openings and what must stay clear, each with its margin; and rows
 * that keep to them. Cutting a wall into such lengths, laying each and telling what is left over is common practice.
 */
import type { WallFacts } from '../hang/wall.ts'
import type { RowAnswer, RowQuestion, RowRule } from './layout-shape.ts'
import { layRow } from './row.ts'

export interface Bay {
  readonly from: number
  readonly to: number
  readonly length: number
  /** What bounds it: `end`, or the label or kind of an opening or a thing kept clear. */
  readonly leftOf: string
  readonly rightOf: string
}

/**
 * Bays at the heights from `bottom` to `top`: only what reaches into that band cuts the wall. Stretches shorter than
 * `least` are left out. mm.
 */
export function baysOf(
  wall: Pick<WallFacts, 'length' | 'openings' | 'keepClears'>,
  band: { readonly bottom: number; readonly top: number },
  least = 0,
): readonly Bay[] {
  const cuts = [...wall.openings.map(opening => ({ ...opening, margin: 0 })), ...wall.keepClears]
    .filter(item => item.y - item.margin < band.top && item.y + item.height + item.margin > band.bottom)
    .map(item => ({
      from: item.x - item.margin,
      to: item.x + item.width + item.margin,
      name: item.label === '' ? item.kind : item.label,
    }))
    .sort((a, b) => a.from - b.from)
  const found: Bay[] = []
  let at = 0
  let leftOf = 'end'
  const add = (to: number, rightOf: string) => {
    if (to - at > Math.max(least, 1e-6)) found.push({ from: at, to, length: to - at, leftOf, rightOf })
  }
  for (const cut of cuts) {
    if (cut.from > at) add(Math.min(cut.from, wall.length), cut.name)
    if (cut.to > at) {
      at = cut.to
      leftOf = cut.name
    }
  }
  if (at < wall.length) add(wall.length, 'end')
  return found
}

export type BayWork = RowQuestion['works'][number] & { readonly x: number }

export interface BayRow {
  readonly bay: Bay
  readonly row: RowAnswer
  /** Wall that neither works nor the gaps between them take. mm. */
  readonly leftOver: number
}

/**
 * Each bay by itself: every work in the bay where its centre `x` stands, else in the nearest, in the order given; all
 * by one rule. An axis is one of a single bay, so in several each row is centred in its own. Bays without works are
 * left out.
 * mm. Refuses what `layRow` refuses.
 */
export function rowsInBays(
  bays: readonly Bay[],
  works: readonly BayWork[],
  rule: RowRule,
  leastGap: number,
): readonly BayRow[] {
  const own: RowRule = 'axis' in rule && bays.length > 1 ? { ...rule, axis: null } : rule
  const off = (bay: Bay, x: number) => Math.max(bay.from - x, x - bay.to, 0)
  const inBays = Map.groupBy(works, work =>
    bays.reduce<Bay | undefined>(
      (best, bay) => (best === undefined || off(bay, work.x) < off(best, work.x) ? bay : best),
      undefined,
    ),
  )
  return bays.flatMap(bay => {
    const mine = inBays.get(bay)
    if (mine === undefined) return []
    const { from, to } = bay
    const items = mine.map(({ id, width, heldAt }) => ({ id, width, heldAt: heldAt ?? null }))
    const row = layRow({ from, to, works: items, rule: own, leastGap })
    const leftOver = row.fits ? (row.gaps[0] ?? 0) + (row.gaps.at(-1) ?? 0) : 0
    return [{ bay, row, leftOver }]
  })
}
