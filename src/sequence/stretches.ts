/**
 * Stretches of wall that works can be planned on: what openings, things kept clear and works that stay where they are
 * leave of each wall; and what stands before, after and beside them. mm, x along the wall from its left end.
 */
import type { Elevation } from '../contract/areas/walls.ts'
import { baysOf } from '../layout/bays.ts'
import { centreOnFace } from '../model/centre-on-face.ts'
import { rectOf } from '../model/hung-rect.ts'

/** What of a wall bounds its stretches. */
export type StretchedWall = Pick<Elevation, 'wall' | 'plan' | 'works' | 'made'>

export interface Stretch<W extends StretchedWall = Elevation> {
  readonly elevation: W
  readonly from: number
  readonly to: number
}

/** Shorter ones take no work worth hanging by itself. */
const leastStretch = 300
/** Height of a usual work where none has a size. */
const usualWork = 600

/** Works that stay where they are: held, hung, or with a hole made for them. */
export function staysOn({ works, made }: Pick<StretchedWall, 'works' | 'made'>): Elevation['works'] {
  const holes = new Set(made.map(mark => mark.placement))
  return works.filter(work => work.held || work.state !== 'planned' || holes.has(work.placement))
}

/** The middle one of the heights of works: how tall a usual one is. */
export function usualHeight(heights: readonly number[]): number {
  const sorted = [...heights].sort((a, b) => a - b)
  return sorted[Math.floor(sorted.length / 2)] ?? usualWork
}

/** Free stretches about the line where works of a usual height hang, between what stays. From left to right. */
export function stretchesOf<W extends StretchedWall>(elevation: W, tall: number): Stretch<W>[] {
  const { wall } = elevation
  const middle = centreOnFace({ rule: 'face', y: null, x: wall.length / 2 }, elevation.plan, tall)
  const staying = staysOn(elevation).flatMap(work => {
    const rect = rectOf(work)
    return rect === undefined ? [] : [{ ...rect, kind: 'work', margin: 0, label: '', reason: '' }]
  })
  const keepClears = [...wall.keepClears, ...staying]
  return baysOf({ ...wall, keepClears }, { bottom: middle - tall / 2, top: middle + tall / 2 }, leastStretch).map(
    ({ from, to }) => ({ elevation, from, to }),
  )
}

/** Free stretches of all walls, for works of these heights. */
export function stretchesIn<W extends StretchedWall>(
  works: readonly { readonly height: number | null }[],
  walls: readonly W[],
): Stretch<W>[] {
  const tall = usualHeight(works.flatMap(work => work.height ?? []))
  return walls.flatMap(wall => stretchesOf(wall, tall))
}

/** Where a work that stays is. */
export interface StaysAt {
  readonly face: string
  readonly x: number
}

interface OnFace {
  readonly elevation: { readonly wall: Pick<Elevation['wall'], 'face'> }
  readonly from: number
}

/** Place of the stretch before which a work that stays is met; after all of its wall's where none comes after it. */
export function firstAfter(stretches: readonly OnFace[], { face, x }: StaysAt): number {
  const own = stretches.flatMap((stretch, index) => (stretch.elevation.wall.face === face ? [{ stretch, index }] : []))
  const after = own.find(({ stretch }) => stretch.from >= x)
  if (after !== undefined) return after.index
  const last = own.at(-1)
  return last === undefined ? stretches.length : last.index + 1
}

/** The work that stays and whose right or left edge bounds a stretch, by its place in `works`; null for none. */
export function neighbourAt(
  works: readonly { readonly width: number | null; readonly stays: StaysAt | null }[],
  face: string,
  edge: number,
  side: 'left' | 'right',
): number | null {
  const found = works.findIndex(({ width, stays }) => {
    if (stays === null || stays.face !== face) return false
    return Math.abs(stays.x + ((width ?? 0) / 2) * (side === 'right' ? 1 : -1) - edge) < 1
  })
  return found < 0 ? null : found
}
