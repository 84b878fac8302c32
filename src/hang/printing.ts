/**
 * Numbers as they stand on paper. A position is rounded once, to the step of its unit; widths and spacings are printed
 * as measured; everything else is a sum or a difference of printed numbers. So millimetres and inches each add up for
 * themselves, and only gaps take up the rounding.
 */
import { INCH } from './physics.ts'

/** Steps that a sheet rounds to: millimetres, and parts of an inch. */
export interface Steps {
  readonly mm: number
  readonly fraction: number
}

export const defaultSteps: Steps = { mm: 1, fraction: 16 }

/** One length in both units, each rounded for itself: `mm` in millimetres, `inches` in inches. */
export interface Printed {
  readonly mm: number
  readonly inches: number
}

/** To the nearest step, halves away from zero, never −0. The slack keeps 0.4999999… of a computation a half. */
export function roundTo(value: number, step: number): number {
  const steps = Math.round(Math.abs(value) / step + 1e-9)
  return steps === 0 ? 0 : Math.sign(value) * steps * step
}

/** A length in millimetres, rounded once in each unit. */
export function print(mm: number, steps: Steps): Printed {
  return { mm: roundTo(mm, steps.mm), inches: roundTo(mm / INCH, 1 / steps.fraction) }
}

/** A position measured from a line that itself stands at its printed number in each unit. */
export function printFrom(mm: number, line: Printed, steps: Steps): Printed {
  return {
    mm: roundTo(mm - line.mm, steps.mm),
    inches: roundTo(mm / INCH - line.inches, 1 / steps.fraction),
  }
}

export function plus(a: Printed, b: Printed): Printed {
  return { mm: tidy(a.mm + b.mm), inches: a.inches + b.inches }
}

export function minus(a: Printed, b: Printed): Printed {
  return { mm: tidy(a.mm - b.mm), inches: a.inches - b.inches }
}

/** Steps such as 0.1 mm are no binary fractions; inches are. */
function tidy(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 + 0
}
