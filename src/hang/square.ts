/**
 * Is the frame square? Both diagonals of the back, where somebody measured them. A frame that leans hangs level by its
 * top edge and looks wrong at its sides, so it is said before the marks are made.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { measureField } from './back-fields.ts'
import { measured } from './measures.ts'
import type { BackField, PlainFinding, WorkSize } from './method.ts'

/** `left` runs down from the upper left corner, `right` from the upper right: seen from the other side they swap. */
export const diagonals = z.strictObject({ left: measured, right: measured }).nullable().optional()

type Diagonals = z.output<typeof diagonals>

/** Diagonals within 3 mm of each other pass for square: common practice, no source. */
const SQUARE_WITHIN = 3

export const diagonalFields: readonly BackField[] = (['left', 'right'] as const).map(side =>
  measureField(
    ['diagonals', side],
    `Diagonal from the upper ${side} corner`,
    `From the upper ${side} corner to the opposite one, over the outer corners of the frame. Measure both or none.`,
  ),
)

/**
 * Findings of two diagonals, mm. By how much the bottom edge stands beside the top: `(d₁² − d₂²) / 4W`; and whether they
 * fit the size at all: `d₁² + d₂² = 2 (W² + H²)`. Refuses a diagonal that no frame of this size can have.
 */
export function squareFindings(
  measuredOnes: Diagonals,
  work: WorkSize,
  say: (mm: number) => string,
): readonly PlainFinding[] {
  if (measuredOnes === null || measuredOnes === undefined) return []
  const { left, right } = measuredOnes
  for (const [side, length] of [
    ['left', left],
    ['right', right],
  ] as const) {
    if (length < Math.abs(work.width - work.height) || length > work.width + work.height || length < work.height / 2) {
      throw new Refusal(
        'diagonal-impossible',
        `A frame of this size has no diagonal of ${say(length)}. Measure the diagonal, the height and the width again.`,
        { field: `back.data.diagonals.${side}`, details: { length, height: work.height, width: work.width } },
      )
    }
  }
  const findings: PlainFinding[] = []
  const aside = (left ** 2 - right ** 2) / (4 * work.width)
  if (Math.abs(left - right) > SQUARE_WITHIN) {
    findings.push({
      severity: 'settle',
      code: 'out-of-square',
      text: `The diagonals differ by ${say(Math.abs(left - right))}: the bottom edge stands ${say(Math.round(Math.abs(aside) * 10) / 10)} to the ${aside > 0 ? 'right' : 'left'} of the top one. Agree which edge is hung level or plumb.`,
      figures: { left, right, difference: left - right, aside },
    })
  }
  const mean = Math.sqrt((left ** 2 + right ** 2) / 2)
  const expected = Math.hypot(work.width, work.height)
  if (Math.abs(mean - expected) > SQUARE_WITHIN) {
    findings.push({
      severity: 'settle',
      code: 'diagonals-against-size',
      text: `The diagonals say ${say(Math.round(mean * 10) / 10)} from corner to corner, height and width say ${say(Math.round(expected * 10) / 10)}. Measure the size again.`,
      figures: { mean, expected, difference: mean - expected },
    })
  }
  return findings
}
