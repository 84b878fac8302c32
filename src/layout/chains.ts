/**
 * The dimension lines under an elevation, in both units: a chain of gaps and widths that adds up to the wall, and
 * running positions from the left end. A left edge is rounded once, a width is printed as measured, gaps are what is
 * left between them.
 */

import { INCH } from '../hang/physics.ts'
import type { Printed, Steps } from '../hang/printing.ts'
import { defaultSteps } from '../hang/printing.ts'
import { countedChain } from '../measure/chain.ts'
import { fromCount, type Step } from '../measure/rounding.ts'

export interface ChainWork {
  readonly id: string
  readonly left: number
  readonly width: number
}

export interface WallPiece {
  readonly kind: 'gap' | 'work'
  /** The work; for a gap null. */
  readonly id: string | null
  /** Where it is really, for drawing. A gap of overlapping works is negative. */
  readonly from: number
  readonly to: number
  readonly printed: { readonly from: Printed; readonly to: Printed; readonly size: Printed }
}

export interface WallChain {
  readonly length: Printed
  readonly pieces: readonly WallPiece[]
  /** Left and right edges, in order. */
  readonly running: readonly { readonly id: string; readonly left: Printed; readonly right: Printed }[]
}

/** The chain of a wall from 0 to its length. The printed pieces add up to the printed length in each unit. */
export function wallChain(length: number, works: readonly ChainWork[], steps: Steps = defaultSteps): WallChain {
  const spans = works.map(work => ({ at: work.left, size: work.width }))
  const [mm, inch] = [metricStep(steps), { unit: 'in', parts: steps.fraction } as const]
  const metric = countedChain(0, length, spans, mm)
  const imperial = countedChain(0, length, spans, inch)
  const printed = (millimetres: number, parts: number): Printed => ({
    mm: fromCount(millimetres, mm),
    inches: inchesOf(fromCount(parts, inch)),
  })
  let at = 0
  const pieces = metric.pieces.map((piece, index): WallPiece => {
    const other = imperial.pieces[index] ?? piece
    const work = piece.kind === 'work' ? works[piece.index] : undefined
    const next = piece.kind === 'gap' ? works[piece.index] : undefined
    const from = work?.left ?? at
    const to = work === undefined ? (next?.left ?? length) : work.left + work.width
    at = to
    return {
      kind: piece.kind,
      id: work?.id ?? null,
      from,
      to,
      printed: {
        from: printed(piece.from, other.from),
        to: printed(piece.to, other.to),
        size: printed(piece.to - piece.from, other.to - other.from),
      },
    }
  })
  return {
    length: printed(metric.end - metric.start, imperial.end - imperial.start),
    pieces,
    running: pieces.flatMap(piece =>
      piece.id === null ? [] : [{ id: piece.id, left: piece.printed.from, right: piece.printed.to }],
    ),
  }
}

/** Whole parts of an inch, so that sums stay exact: 1/64 divides every part that is printed. */
function inchesOf(mm: number): number {
  return Math.round((mm * 64) / INCH) / 64
}

function metricStep(steps: Steps): Step {
  const size = ([0.1, 0.5, 1, 5, 10] as const).find(allowed => allowed === steps.mm)
  return { unit: 'mm', size: size ?? 1 }
}
