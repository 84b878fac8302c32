/**
 * What the depth of a work does to its top fixings: it wants to tip off the wall about its bottom edge, and they are
 * pulled straight out. `P = m g e / v`, e from the wall's face to the mass, v from the bottom support up to the fixings
 * (derived in the design; moments about the bottom edge).
 */
import type { HangQuestion, PlainFigure } from './method.ts'
import { newtons } from './physics.ts'

/** Pull on all top fixings together, newtons. kg and mm. */
export function pullOut(mass: number, fromWall: number, aboveSupport: number): number {
  return (newtons(mass) * fromWall) / aboveSupport
}

/**
 * The figure for a work whose back stands `off` the wall, its mass in the middle of its depth. Nothing where its mass or
 * depth is not known: no depth is guessed.
 */
export function pullOutFigure(
  { work, say, sayKg }: Pick<HangQuestion, 'work' | 'say' | 'sayKg'>,
  drop: number,
  off: number,
): readonly PlainFigure[] {
  const { mass, depth } = work
  if (mass === null || mass === undefined || depth === null || depth === undefined) return []
  const fromWall = off + depth / 2
  const aboveSupport = work.height - drop
  const kg = (mass * fromWall) / aboveSupport
  return [
    {
      key: 'pull-out',
      label: 'Top fixings pulled straight out, all together',
      value: pullOut(mass, fromWall, aboveSupport),
      unit: 'N',
      working: `${sayKg(mass)} × ${say(fromWall)} / ${say(aboveSupport)} = ${sayKg(kg)}`,
    },
  ]
}
