/** A stack or grid on a stretch of wall: whether it may hang there, how high its middle is, whom its works serve. mm. */
import { centreOnFace } from '../model/centre-on-face.ts'
import type { HangUnit } from './form-units.ts'
import type { SectionHang } from './section-hang.ts'
import { type Bar, barOn, viewersOf } from './served-on.ts'
import { leastServed, type Sight } from './sight.ts'
import { type Stretch, stretchesOf } from './stretches.ts'

/** Height of the middle of a unit on the wall's own rule, above the floor at x = 0. */
export function middleOn({ plan }: Pick<Stretch['elevation'], 'plan'>, height: number, x: number): number {
  return centreOnFace({ rule: 'face', y: null, x }, plan, height)
}

export type UnitSize = Pick<HangUnit, 'width' | 'height'>
export type Edges = Pick<SectionHang, 'lowest' | 'highest'>

/**
 * Why a unit may not hang on a stretch; null where it may: under the ceiling, between the edges that its section keeps
 * to, and with nothing in the way over the whole stretch. A stretch is cut for works of a usual height, and a unit may
 * reach a door's head or a thing kept clear above it.
 */
export function unitBarOn(
  stretch: Stretch,
  { width, height }: UnitSize,
  { lowest, highest }: Edges,
  margin: number,
): Bar | null {
  const { elevation, from, to } = stretch
  const bar = barOn(stretch, { width, height, limit: null }, margin)
  if (bar !== null) return bar
  const middle = middleOn(elevation, height, (from + to) / 2)
  if (middle + height / 2 > highest) return 'too high'
  if (middle - height / 2 < lowest) return 'too low'
  const clear = stretchesOf(elevation, height).some(free => free.from <= from + 1 && free.to >= to - 1)
  return clear ? null : 'too high'
}

export function mayHangOn(stretch: Stretch, size: UnitSize, edges: Edges, margin: number): boolean {
  return unitBarOn(stretch, size, edges, margin) === null
}

/** Mean over its works of the share of the least served viewers, each work seen at its own height; 0 to 1. */
export function unitServedOn(
  { elevation, from, to }: Stretch,
  { height, places }: Pick<HangUnit, 'height' | 'places'>,
  heights: readonly number[],
  { usual, sight }: { readonly usual: number; readonly sight: Sight },
): number {
  const middle = middleOn(elevation, height, (from + to) / 2)
  const distance = elevation.plan.viewingDistance ?? usual
  const shares = places.map(({ dy }, index) =>
    leastServed(viewersOf(elevation.plan), { centre: middle + dy, height: heights[index] ?? 0 }, distance, sight),
  )
  return shares.reduce((sum, share) => sum + share, 0) / Math.max(1, shares.length)
}
