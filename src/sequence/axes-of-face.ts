/**
 * The upright lines that a hang may be balanced about: the middle of the wall, of each of its free stretches, the axis
 * of a doorway that looks at it, of a bench before it. mm along the face, from its left end as seen from in front.
 */

import type { WallFacts } from '../hang/wall.ts'
import { baysOf } from '../layout/bays.ts'

type Point = readonly [number, number]

export interface Axis {
  readonly kind: 'middle' | 'stretch' | 'doorway' | 'bench'
  /** What it is the axis of; empty for the middle. */
  readonly label: string
  readonly x: number
  /** The part of the wall that is balanced about it. */
  readonly from: number
  readonly to: number
}

export interface LooksAt {
  /** The opening or the bench. */
  readonly of: string
  readonly label: string
  /** In plan coordinates: the middle of a doorway or bench, and which way it looks, not of any length. */
  readonly at: Point
  readonly towards: Point
  readonly kind: 'doorway' | 'bench'
}

/** Where a line from `at` towards `towards` meets the stretch from a to b, as a length from a; null where it doesn't. */
export function meets(at: Point, towards: Point, [a, b]: readonly [Point, Point]): number | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const across = towards[0] * dy - towards[1] * dx
  const length = Math.hypot(dx, dy)
  if (Math.abs(across) < 1e-9 || length === 0) return null
  const [ox, oy] = [a[0] - at[0], a[1] - at[1]]
  const ahead = (ox * dy - oy * dx) / across
  const share = (ox * towards[1] - oy * towards[0]) / across
  return ahead > 1e-6 && share >= -1e-9 && share <= 1 + 1e-9 ? share * length : null
}

/**
 * All axes of a face, its middle first. `ends` are its left and right end in plan coordinates; `looking` what looks
 * anywhere in its room, `bars` what stands in the way of a look. What looks at the face past a bar is no axis.
 */
export function axesOfFace(
  wall: Pick<WallFacts, 'length' | 'openings' | 'keepClears'>,
  band: { readonly bottom: number; readonly top: number },
  ends: readonly [Point, Point],
  looking: readonly LooksAt[],
  bars: readonly (readonly [Point, Point])[],
): readonly Axis[] {
  const whole = { from: 0, to: wall.length }
  const bays = baysOf({ ...wall, keepClears: [] }, band)
  const stretches = bays.length < 2 ? [] : bays
  return [
    { kind: 'middle', label: '', x: wall.length / 2, ...whole },
    ...stretches.map(({ from, to, leftOf, rightOf }): Axis => {
      const label = [leftOf, rightOf].map(side => (side === 'end' ? 'the end' : side)).join(' to ')
      return { kind: 'stretch', label, x: (from + to) / 2, from, to }
    }),
    ...looking.flatMap(({ kind, label, at, towards }): Axis[] => {
      const x = meets(at, towards, ends)
      if (x === null) return []
      const [[ax, ay], [bx, by]] = ends
      const share = x / wall.length
      const there: Point = [ax + (bx - ax) * share, ay + (by - ay) * share]
      const away = Math.hypot(there[0] - at[0], there[1] - at[1])
      const size = Math.hypot(...towards)
      const along: Point = [towards[0] / size, towards[1] / size]
      const barred = bars.some(([a, b]) => {
        const met = meets(at, along, [a, b])
        if (met === null) return false
        const part = met / Math.hypot(b[0] - a[0], b[1] - a[1])
        const point: Point = [a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part]
        return Math.hypot(point[0] - at[0], point[1] - at[1]) < away - 1
      })
      return barred ? [] : [{ kind, label, x, ...whole }]
    }),
  ]
}
