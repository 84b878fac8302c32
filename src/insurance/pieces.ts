/**
 * A work in its places at one value: what sums are made of. A group is what a sum is for: `all`, a lender, a room, a
 * crate, a vehicle. The rule it keeps: a work is in every group around it, once.
 */
import type { Amount } from '../money/currency.ts'
import { type Clock, dayLong, type Stay } from './stays.ts'
import type { ValueSpan } from './value.ts'

export interface Piece {
  readonly work: string
  readonly from: Clock
  /** The first moment after it. */
  readonly to: Clock
  readonly groups: readonly string[]
  /** Who bears it, then the terms of loans it is under. */
  readonly slices: readonly string[]
  readonly value: Amount | null
  readonly by: ValueSpan['by']
  readonly basis: Stay['basis']
  readonly places: readonly string[]
}

/** Stays of one work cut where its value changes; a stay in no group is left out. */
export function piecesOf(
  work: string,
  stays: readonly Stay[],
  values: readonly ValueSpan[],
  groupsOf: (places: readonly string[], slices: readonly string[]) => readonly string[],
): Piece[] {
  return stays.flatMap(stay =>
    values.flatMap(({ first, last, value, by, slices }): Piece[] => {
      const from = Math.max(stay.from, first * dayLong)
      const to = Math.min(stay.to, (last + 1) * dayLong)
      if (from >= to) return []
      const groups = groupsOf(stay.places, slices)
      if (groups.length === 0) return []
      return [{ work, from, to, groups, slices, value, by, basis: stay.basis, places: stay.places }]
    }),
  )
}
