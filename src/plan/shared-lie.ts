/**
 * How the two sides of one wall lie to each other where their rooms stand. A length that was typed, or a room that was
 * put elsewhere, says nothing of the next room's measures: it moves faces apart, and what is true is for people to say.
 */
import type { Point } from '../drawing/room-plan.ts'
import { facing, sharedBounds } from './back-to-back.ts'

interface Face {
  readonly from: Point
  readonly to: Point
  readonly length: number
  readonly thickness: number | null
}

export type Lie =
  | { readonly is: 'well' }
  /** Nowhere near back to back. */
  | { readonly is: 'elsewhere' }
  /** As far apart as they are drawn, and by which way a's room goes to lie against b's. */
  | { readonly is: 'apart'; readonly apart: number; readonly thickness: number; readonly by: Point }

/** @param within mm that tapes of two rooms may differ by */
export function sharedLie(a: Face, b: Face, within: number): Lie {
  const lie = facing(
    { ...a, from: [...a.from], to: [...a.to], openings: [] },
    { ...b, from: [...b.from], to: [...b.to], openings: [] },
    // A short part of a wall that was cut is one wall with its other side too.
    Math.min(sharedBounds.beside, a.length / 2, b.length / 2),
  )
  if (lie === null) return { is: 'elsewhere' }
  const { apart } = lie
  if (a.thickness === null || Math.abs(apart - a.thickness) <= within) return { is: 'well' }
  const run = Math.hypot(a.to[0] - a.from[0], a.to[1] - a.from[1])
  const far = (apart - a.thickness) / run
  const tenth = (mm: number) => Math.round(mm * 10) / 10 || 0
  return {
    is: 'apart',
    apart,
    thickness: a.thickness,
    by: [tenth((a.to[1] - a.from[1]) * far), tenth((a.from[0] - a.to[0]) * far)],
  }
}

/** Empty where they lie as they should. */
export function lieSaid(lie: Lie, say: (mm: number) => string): string {
  if (lie.is === 'well') return ''
  if (lie.is === 'elsewhere') return 'its two sides do not lie back to back on the plan'
  return `its two sides lie ${say(lie.apart)} apart on the plan, and it was measured ${say(lie.thickness)} thick`
}
