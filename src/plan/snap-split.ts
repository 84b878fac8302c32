/**
 * Where a wall is split by the hand: at its middle, thirds and quarters, beside an opening, at a round distance from its
 * left end. A place within an opening is told, since a hole cannot be cut in two. Millimetres from the wall's left end.
 */
import type { PlanWallRow } from '../contract/areas/plan.ts'
import { calledHole, inTheWay } from './cut-place.ts'

export interface SplitPlace {
  readonly x: number
  /** What holds; empty where nothing does. */
  readonly says: string
  /** Why it cannot be split there; empty where it can. */
  readonly problem: string
}

interface Question {
  readonly length: number
  readonly openings: readonly Pick<PlanWallRow['openings'][number], 'kind' | 'x' | 'width' | 'label'>[]
  /** Where the hand is. */
  readonly x: number
  /** mm; 0 holds nothing. */
  readonly reach: number
  readonly grid: number
}

const parts = [
  [1, 2, 'the middle'],
  [1, 3, 'a third'],
  [2, 3, 'two thirds'],
  [1, 4, 'a quarter'],
  [3, 4, 'three quarters'],
] as const

export function snapSplit({ length, openings, x, reach, grid }: Question): SplitPlace {
  const holds = [
    ...parts.map(([top, under, says]) => ({ x: (length * top) / under, says })),
    ...openings.flatMap(each =>
      [each.x, each.x + each.width].map(edge => ({ x: edge, says: `beside ${calledHole(each)}` })),
    ),
  ].filter(hold => hold.x > 0 && hold.x < length && Math.abs(hold.x - x) <= reach)
  const [held] = holds.sort((a, b) => Math.abs(a.x - x) - Math.abs(b.x - x))
  const step = Math.round(x / grid) * grid
  const stepped = Math.abs(step - x) <= reach ? step : x
  const at = Math.min(length, Math.max(0, Math.round((held?.x ?? stepped) * 100) / 100))
  const across = inTheWay(openings, at)
  const problem =
    across !== null
      ? `${across.called} is in the way; split beside it.`
      : at < 1 || at > length - 1
        ? 'A wall is split between its ends.'
        : ''
  return { x: at, says: held?.says ?? '', problem }
}
