/** Whether a work may hang on a stretch of wall, what bars it, and how well those who look there see it. mm, lux. */
import type { Elevation } from '../contract/areas/walls.ts'
import { centreOnFace } from '../model/centre-on-face.ts'
import { leastServed, type Sight, type ViewerKind } from './sight.ts'

export interface SeenStretch {
  readonly elevation: {
    readonly wall: Pick<Elevation['wall'], 'height' | 'skirting'>
    readonly plan: Pick<
      Elevation['plan'],
      'centreLine' | 'rule' | 'eyeFraction' | 'ramp' | 'plannedLux' | 'viewers' | 'viewingDistance'
    >
    readonly rules: Pick<Elevation['rules'], 'liftOn'>
  }
  readonly from: number
  readonly to: number
}

export interface PlannedSize {
  readonly width: number
  readonly height: number
  /** Light that it may receive; null where nobody said. */
  readonly limit: number | null
}

/** Why a work may not hang there, whatever stands beside it. */
export type Bar = 'too wide' | 'too much light' | 'too high' | 'too low'

/** Null where nothing bars it. `margin` stays free at either end; above a work its lift-on height does. */
export function barOn(
  { elevation, from, to }: SeenStretch,
  { width, height, limit }: PlannedSize,
  margin: number,
): Bar | null {
  const { wall, plan, rules } = elevation
  if (width > to - from - 2 * margin) return 'too wide'
  if (limit !== null && plan.plannedLux !== null && plan.plannedLux > limit) return 'too much light'
  const centre = centreOnFace({ rule: 'face', y: null, x: (from + to) / 2 }, plan, height)
  if (centre + height / 2 > wall.height - rules.liftOn) return 'too high'
  return centre - height / 2 < (wall.skirting ?? 0) ? 'too low' : null
}

/** Those who look at a wall: standing adults where nobody has said. */
export function viewersOf({ viewers }: Pick<Elevation['plan'], 'viewers'>): readonly ViewerKind[] {
  const kinds = viewers.filter(({ share }) => share > 0).map(({ kind }) => kind)
  return kinds.length > 0 ? kinds : ['standing']
}

/**
 * Share of the least served group of viewers, 0 to 1, where the wall's own rule hangs the work; null where it is barred.
 *
 * @param usual viewing distance where the wall names none
 */
export function servedOn(
  stretch: SeenStretch,
  size: PlannedSize,
  { margin, usual, sight }: { readonly margin: number; readonly usual: number; readonly sight: Sight },
): number | null {
  if (barOn(stretch, size, margin) !== null) return null
  const { elevation, from, to } = stretch
  const centre = centreOnFace({ rule: 'face', y: null, x: (from + to) / 2 }, elevation.plan, size.height)
  const distance = elevation.plan.viewingDistance ?? usual
  return leastServed(viewersOf(elevation.plan), { centre, height: size.height }, distance, sight)
}
