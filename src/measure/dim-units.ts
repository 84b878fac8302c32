/**
 * The unit one measure of a size counts in, and whether its figure is in doubt in that unit. The rule it keeps: a unit
 * at the end serves the figures before it; feet and inches and metres serve none but their own.
 */
import type { Dim } from './measures.ts'
import type { LengthUnit } from './units.ts'

/** The unit of one measure: its own, else that of the next one to the right, else of the one to the left. */
export function unitAt(
  dims: readonly Dim[],
  index: number,
  fallback: LengthUnit | undefined,
  guess?: LengthUnit,
): LengthUnit | undefined {
  const own = dims[index]?.unit
  if (own !== undefined) return own
  const right = dims.find((dim, place) => place > index && dim.unit !== undefined)
  // 5 x 3'4": feet and inches say nothing about the bare figure beside them.
  if (right) return right.compound ? guess : right.unit
  const left = dims.findLast((dim, place) => place < index && dim.unit !== undefined)
  if (left) return left.compound || left.unit === 'm' ? guess : left.unit
  return fallback ?? guess
}

export function isFaulty(dim: Dim, unit: LengthUnit | undefined): boolean {
  if (dim.fault === 'fraction') return true
  if (dim.fault === 'thousands') return unit === 'mm' || unit === 'cm' || unit === undefined
  return dim.fault === 'millimetres' && unit === 'mm'
}
