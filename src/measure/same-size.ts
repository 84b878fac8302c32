/**
 * One size written in two units. The rule it keeps: within the larger of 0.06 cm and 0.5 % two lengths are one; beyond
 * that, sizes are held together only where brackets or nearness say that one was meant.
 */
import type { Draft, SizeItem } from './groups.ts'
import type { Dim } from './measures.ts'
import { type LengthUnit, toMillimetres } from './units.ts'

/** The unit a size was written in: that of its last measure with one. */
export function unitOf(dims: readonly Dim[]): LengthUnit | undefined {
  return dims.findLast(dim => dim.unit !== undefined)?.unit
}

const GUESSES: readonly LengthUnit[] = ['in', 'cm', 'mm']

/**
 * Whether `size` is the size of `group` in another unit. In brackets with its own unit it is, whether it agrees or
 * not; elsewhere at least one measure has to agree. A missing unit is filled in where all measures agree.
 */
export function sameSize(
  group: Draft,
  size: SizeItem,
  sure: boolean,
): { readonly dims: readonly Dim[]; readonly other: readonly Dim[] } | undefined {
  if (group.dims.length !== size.dims.length) return undefined
  const [mine, theirs] = [unitOf(group.dims), unitOf(size.dims)]
  if (mine !== undefined && theirs !== undefined) {
    if (mine === theirs) return undefined
    const close = agreeing(group.dims, mine, size.dims, theirs)
    const near = agreeing(group.dims, mine, size.dims, theirs, NEAR) === group.dims.length
    return sure || close > 0 || near ? { dims: group.dims, other: size.dims } : undefined
  }
  const all = group.dims.length
  for (const guess of GUESSES) {
    if (mine !== undefined && guess !== mine && agreeing(group.dims, mine, size.dims, guess) === all) {
      return { dims: group.dims, other: withUnit(size.dims, guess) }
    }
    if (theirs !== undefined && guess !== theirs && agreeing(group.dims, guess, size.dims, theirs) === all) {
      return { dims: withUnit(group.dims, guess), other: size.dims }
    }
  }
  return undefined
}

function withUnit(dims: readonly Dim[], unit: LengthUnit): readonly Dim[] {
  return dims.map(dim => (dim.unit === undefined ? { ...dim, unit } : dim))
}

function agreeing(a: readonly Dim[], unitA: LengthUnit, b: readonly Dim[], unitB: LengthUnit, share?: number): number {
  return a.filter((dim, index) => {
    const other = b[index]
    if (!other) return false
    return agree(toMillimetres(dim.value, dim.unit ?? unitA), toMillimetres(other.value, other.unit ?? unitB), share)
  }).length
}

/** Two sizes this near each other are one that was rounded, or mistyped, in one of its units. */
const NEAR = 0.04

/** Two statements of one length in different units agree within the larger of 0.06 cm and 0.5 %. */
export function agree(a: number, b: number, share = 0.005): boolean {
  return Math.abs(a - b) <= Math.max(0.6, share * Math.max(Math.abs(a), Math.abs(b))) + 1e-9
}

/** A4 (21 x 29.7 cm): the figures say how the paper lies, where no word did. */
export function turnPaper(group: Draft, size: SizeItem): void {
  if (group.paper === undefined || group.paper.said || group.others.length > 0 || size.dims.length !== 2) return
  const [unit, own] = [unitOf(size.dims), unitOf(group.dims)]
  if (unit === undefined || own === undefined) return
  const turned = group.dims.toReversed()
  const agrees = (dims: readonly Dim[]) => agreeing(dims, own, size.dims, unit) === 2
  if (agrees(turned)) group.dims = turned
  if (agrees(group.dims)) group.paper = { ...group.paper, said: true }
}
