/**
 * Numbers as they stand on paper, in both units at once. A position is rounded once, to the step of its unit; widths
 * and spacings are printed as measured; everything else is a sum or a difference of printed numbers. So millimetres and
 * inches each add up for themselves, and only gaps take up the rounding.
 */
import { formatInchCount, formatLength } from '../measure/format.ts'
import type { InchParts } from '../measure/rounding.ts'
import { halfAway } from '../measure/rounding.ts'
import { INCH } from './physics.ts'

/** Steps that a sheet rounds to: millimetres, and parts of an inch. */
export interface Steps {
  readonly mm: number
  readonly fraction: InchParts
}

export const defaultSteps: Steps = { mm: 1, fraction: 16 }

/** One length in both units, each rounded for itself: `mm` in millimetres, `inches` in inches. */
export interface Printed {
  readonly mm: number
  readonly inches: number
}

/** A length in millimetres, rounded once in each unit. */
export function print(mm: number, steps: Steps): Printed {
  return { mm: roundMm(mm, steps), inches: halfAway((mm * steps.fraction) / INCH) / steps.fraction }
}

/** A position measured from a line that itself stands at its printed number in each unit. */
export function printFrom(mm: number, line: Printed, steps: Steps): Printed {
  return {
    mm: roundMm(mm - line.mm, steps),
    inches: halfAway((mm / INCH - line.inches) * steps.fraction) / steps.fraction,
  }
}

export function plus(a: Printed, b: Printed): Printed {
  return { mm: tidy(a.mm + b.mm), inches: a.inches + b.inches }
}

export function minus(a: Printed, b: Printed): Printed {
  return { mm: tidy(a.mm - b.mm), inches: a.inches - b.inches }
}

/** The figures alone, as `1 795` or `70 11/16`; the heading says the unit. Centimetres are the millimetres over ten. */
export function printedText(printed: Printed, unit: 'mm' | 'cm' | 'in', steps: Steps = defaultSteps): string {
  if (unit === 'in') return formatInchCount(Math.round(printed.inches * steps.fraction), steps.fraction)
  return formatLength(printed.mm, { unit, bare: true })
}

function roundMm(mm: number, steps: Steps): number {
  return tidy(halfAway(mm / steps.mm) * steps.mm)
}

/** Steps such as 0.1 mm are no binary fractions; inches are. Never −0. */
function tidy(mm: number): number {
  return Math.round(mm * 1e6) / 1e6 + 0
}
