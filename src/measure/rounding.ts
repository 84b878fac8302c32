/**
 * Rounding to what a sheet prints: whole millimetres or parts of an inch. The rule it keeps: a printed value is a
 * whole count of steps, so that sums of printed values are exact and 1/32 in never drifts.
 */

/** Parts of an inch that a printed fraction may have at the finest. */
export type InchParts = 8 | 16 | 32

/** One step of a printed scale: `size` of a millimetre, or an inch over `parts`. */
export type Step =
  | { readonly unit: 'mm'; readonly size: 0.1 | 0.5 | 1 | 5 | 10 }
  | { readonly unit: 'in'; readonly parts: InchParts }

export const ONE_MM: Step = { unit: 'mm', size: 1 }
export const SIXTEENTH: Step = { unit: 'in', parts: 16 }
export const THIRTY_SECOND: Step = { unit: 'in', parts: 32 }

/** Whole steps nearest to `mm`; halves go away from zero. */
export function toCount(mm: number, step: Step): number {
  return halfAway(
    step.unit === 'in' ? (mm * step.parts * 5) / 127 : step.size < 1 ? mm * Math.round(1 / step.size) : mm / step.size,
  )
}

/** Millimetres of `count` whole steps. */
export function fromCount(count: number, step: Step): number {
  if (step.unit === 'in') return (count * 127) / (step.parts * 5)
  return step.size < 1 ? count / Math.round(1 / step.size) : count * step.size
}

/** `mm` rounded once to a whole number of steps, in millimetres. */
export function roundTo(mm: number, step: Step): number {
  return fromCount(toCount(mm, step), step)
}

/** Nearest whole number, halves away from zero; a hair of binary dust does not push a half down. */
export function halfAway(value: number): number {
  const size = Math.abs(value)
  const whole = Math.floor(size + 0.5 + Math.max(size, 1) * 1e-12)
  return value < 0 && whole !== 0 ? -whole : whole
}
