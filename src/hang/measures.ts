/** Schemas and small helpers that several methods share: a drop, an inset, a pair of hangers on a frame. */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import type { Bearing, MethodAnswer, PlainFinding, WorkSize } from './method.ts'

export const measured = z.number().gt(0).max(1e5).meta({ description: 'measured on the back, millimetres' })
export const measuredOrZero = z.number().min(0).max(1e5).meta({ description: 'measured on the back, millimetres' })

export const hangerSide = z.strictObject({
  /** From the top edge down to where it bears, pulled as it will be under load. */
  drop: measured,
  /** From the side edge to the middle of the hanger. */
  inset: measuredOrZero.nullable().optional(),
})

/** Two hangers on a frame, each with its drop, and how far they are apart. */
export const pairShape = { left: hangerSide, right: hangerSide, spacing: measured.nullable().optional() }

/** What most methods have not: a wire, a cleat, measured spacings. Their load is shared by moments about the mass. */
export const bare = {
  spacing: null,
  spacingFromInsets: null,
  wire: null,
  cleat: null,
  sharing: 'moments',
  steps: [],
} as const satisfies Partial<MethodAnswer>

/** Where two hangers are, from the work's left edge, and both spacings that can be compared. */
export interface HangerPair {
  readonly left: number
  readonly right: number
  readonly measured: number | null
  readonly fromInsets: number | null
  readonly centred: boolean
}

/**
 * Places a pair of hangers from whichever of two insets and one spacing were measured. A measured spacing wins over
 * the one from insets; with a spacing alone the pair is taken to be centred. Refuses a pair that nothing places, or
 * that does not lie on the work.
 */
export function placePair(
  width: number,
  leftInset: number | null | undefined,
  rightInset: number | null | undefined,
  spacing: number | null | undefined,
  field: string,
): HangerPair {
  const l = leftInset ?? null
  const r = rightInset ?? null
  const s = spacing ?? null
  const fromInsets = l !== null && r !== null ? width - l - r : null
  const left = l ?? (s === null ? null : r === null ? (width - s) / 2 : width - r - s)
  const apart = s ?? fromInsets
  if (left === null || apart === null) {
    throw new Refusal('hangers-not-placed', 'Measure both insets, or how far apart the hangers are.', { field })
  }
  if (left < -1e-9 || left + apart > width + 1e-9 || !(apart > 0)) {
    throw new Refusal(
      'hangers-off-the-work',
      'The hangers would lie outside the work. Check insets, spacing and width.',
      {
        field,
        details: { left, apart, width },
      },
    )
  }
  return { left, right: left + apart, measured: s, fromInsets, centred: l === null && r === null }
}

/** A mark on the wall that carries, measured from the top edge: the usual case. */
export function carries(side: Bearing['side'], fromLeft: number, drop: number): Bearing {
  return { side, does: 'carries', name: null, on: 'wall', fromLeft, drop, from: 'top' }
}

/** A mark on the wall that only keeps the work, measured `up` from its bottom edge. */
export function keeps(name: string, side: Bearing['side'], fromLeft: number, up: number, height: number): Bearing {
  return { side, does: 'keeps', name, on: 'wall', fromLeft, drop: height - up, from: 'bottom' }
}

/** A drop that is not on the work at all is a slip of the tape. */
export function checkDrop(drop: number, work: WorkSize, field: string): void {
  if (drop >= work.height) {
    throw new Refusal('drop-below-the-work', 'The drop is longer than the work is high. Measure from the top edge.', {
      field,
      details: { drop, height: work.height },
    })
  }
}

/** The same for what is measured from the bottom edge. */
export function checkUp(up: number, work: WorkSize, field: string): void {
  if (up >= work.height) {
    throw new Refusal('mark-above-the-work', 'It would stand above the work. Measure from the bottom edge up.', {
      field,
      details: { up, height: work.height },
    })
  }
}

/** Both spacings of a pair must agree: else an inset or the width is wrong. */
export function spacingFinding(
  pair: HangerPair,
  tolerance: number,
  say: (mm: number) => string,
): readonly PlainFinding[] {
  if (pair.measured === null || pair.fromInsets === null) return []
  const difference = Math.abs(pair.measured - pair.fromInsets)
  if (difference <= tolerance + 1e-9) return []
  return [
    {
      severity: 'settle',
      code: 'spacing-differs',
      text: `Measured ${say(pair.measured)} between the hangers, but ${say(pair.fromInsets)} follows from the insets. Measure again.`,
      figures: { measured: pair.measured, fromInsets: pair.fromInsets, difference },
    },
  ]
}

export function unevenFinding(
  left: number,
  right: number,
  tolerance: number,
  say: (mm: number) => string,
): readonly PlainFinding[] {
  const difference = Math.abs(left - right)
  if (difference <= tolerance + 1e-9) return []
  return [
    {
      severity: 'settle',
      code: 'drops-differ',
      text: `The two drops differ by ${say(difference)}: the marks are at two heights, each for its own side.`,
      figures: { left, right, difference },
    },
  ]
}

/** The hangers of a back where they are measured. Refuses as `placePair` does, and a drop that is not on the work. */
export function pairOn(
  {
    left,
    right,
    spacing,
  }: {
    readonly left: z.output<typeof hangerSide>
    readonly right: z.output<typeof hangerSide>
    readonly spacing?: number | null | undefined
  },
  work: WorkSize,
): HangerPair {
  checkDrop(left.drop, work, 'back.data.left.drop')
  checkDrop(right.drop, work, 'back.data.right.drop')
  return placePair(work.width, left.inset, right.inset, spacing, 'back.data.spacing')
}
