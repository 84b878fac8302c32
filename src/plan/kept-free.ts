/**
 * Floor that must stay free: what the leaf of a door sweeps, and a strip before doors, passages and what a hand must get
 * to. Room-local mm. A leaf opens a quarter turn; its sweep is taken in straight pieces just about the arc.
 */
import type { Point } from '../drawing/room-plan.ts'

/** A wall or a face of a partition as who stands before it sees it, from its left end to its right. */
export interface SeenFace {
  readonly from: Point
  readonly to: Point
  /** As measured; drawn it may be longer or shorter. */
  readonly length: number
  /** From the line to the face: half the thickness of a partition. */
  readonly before: number
}

export interface Stretch {
  readonly x: number
  readonly width: number
}

interface Axes {
  /** A place along the face, so far before it. */
  readonly at: (x: number, before: number) => Point
}

function axes({ from, to, length, before }: SeenFace): Axes {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  const ratio = length > 0 ? run / length : 1
  return {
    at: (x, out) => {
      const [u, v] = [x * ratio, out + before]
      return [from[0] + along[0] * u - along[1] * v, from[1] + along[1] * u + along[0] * v]
    },
  }
}

/** A strip of floor before a stretch of the face. */
export function stripBefore(face: SeenFace, { x, width }: Stretch, deep: number): readonly Point[] {
  const { at } = axes(face)
  return [at(x, 0), at(x + width, 0), at(x + width, deep), at(x, deep)]
}

const PIECES = 8
/** What a polygon about an arc stands out of it. */
const ABOUT = 1 / Math.cos(Math.PI / 4 / PIECES)

/** What the leaves of a door sweep before this face, one convex outline a leaf; none that turn the other way or slide. */
export function sweptBefore(face: SeenFace, { x, width, swing }: Stretch & { readonly swing: string }) {
  const { at } = axes(face)
  const leaf = (hinge: number, way: 1 | -1, wide: number): readonly Point[] => [
    at(hinge, 0),
    at(hinge + way * wide, 0),
    ...Array.from({ length: PIECES }, (_, piece) => {
      const angle = ((piece + 0.5) / PIECES) * (Math.PI / 2)
      return at(hinge + way * wide * ABOUT * Math.cos(angle), wide * ABOUT * Math.sin(angle))
    }),
    at(hinge, wide),
  ]
  if (swing === 'in left') return [leaf(x, 1, width)]
  if (swing === 'in right') return [leaf(x + width, -1, width)]
  if (swing === 'both in') return [leaf(x, 1, width / 2), leaf(x + width, -1, width / 2)]
  return []
}
