/** A wall cut at its doors and passages. Millimetres along it. */
import type { Point } from './room-plan.ts'

export interface Cut {
  readonly kind: string
  readonly x: number
  readonly width: number
}

/** Whether people walk through it. */
export function isWay({ kind }: Pick<Cut, 'kind'>): boolean {
  return kind === 'door' || kind === 'passage'
}

/** The solid stretches from end to end; openings may overlap or reach beyond the wall. */
export function solidStretches(length: number, openings: readonly Cut[]): readonly (readonly [number, number])[] {
  const cuts = openings
    .filter(isWay)
    .map(({ x, width }) => [Math.max(0, x), Math.min(length, x + width)] as const)
    .filter(([from, to]) => to > from)
    .sort(([a], [b]) => a - b)
  const solid: (readonly [number, number])[] = []
  let at = 0
  for (const [from, to] of cuts) {
    if (from > at) solid.push([at, from])
    at = Math.max(at, to)
  }
  if (at < length) solid.push([at, length])
  return solid
}

/** The point of a wall that lies so far along it as measured; drawn, it may be a little longer or shorter. */
export function pointAlong(
  { from, to, length }: { readonly from: Point; readonly to: Point; readonly length: number },
  x: number,
): Point {
  const share = length > 0 ? x / length : 0
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
}
