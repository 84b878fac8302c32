/**
 * Dimension chains whose printed parts add up to the printed whole. The rule it keeps: a position is rounded once, a
 * work's own size is printed as measured, and gaps are differences of printed values, so they alone take up the
 * rounding. Millimetres and inches add up each for themselves: make one chain per unit.
 */
import { formatInchCount, formatLength } from './format.ts'
import { fromCount, type Step, toCount } from './rounding.ts'

/** A printed value: whole steps, the millimetres they stand for, and the figures without a unit. */
export interface Printed {
  readonly count: number
  readonly mm: number
  readonly text: string
}

export interface ChainPiece {
  readonly kind: 'gap' | 'work'
  /** Place of the work in the list that was given; for a gap, that of the work after it. */
  readonly index: number
  readonly from: Printed
  readonly to: Printed
  readonly size: Printed
}

export interface RunningChain {
  readonly step: Step
  readonly from: Printed
  readonly to: Printed
  readonly whole: Printed
  readonly pieces: readonly ChainPiece[]
}

/** A piece in whole steps. */
export interface CountedPiece {
  readonly kind: 'gap' | 'work'
  readonly index: number
  readonly from: number
  readonly to: number
}

export interface CountedChain {
  readonly start: number
  readonly end: number
  readonly pieces: readonly CountedPiece[]
}

/** A stretch of the chain with its start and its own size as measured, in millimetres. */
export interface Span {
  readonly at: number
  readonly size: number
}

/**
 * The chain from `from` to `to` past `spans`, which are sorted by where they start. A gap can be negative where spans
 * overlap. The sizes of all pieces add up to the whole, in whole steps.
 */
export function runningChain(from: number, to: number, spans: readonly Span[], step: Step): RunningChain {
  const { start, end, pieces } = countedChain(from, to, spans, step)
  return {
    step,
    from: printed(start, step),
    to: printed(end, step),
    whole: printed(end - start, step),
    pieces: pieces.map(({ kind, index, from, to }) => ({
      kind,
      index,
      from: printed(from, step),
      to: printed(to, step),
      size: printed(to - from, step),
    })),
  }
}

/** The same chain in whole steps alone, for where it is worked out many times a second and few figures are read. */
export function countedChain(from: number, to: number, spans: readonly Span[], step: Step): CountedChain {
  const ordered = spans
    .map((span, index) => ({ span, index }))
    .sort((a, b) => a.span.at - b.span.at || a.index - b.index)
  const start = toCount(from, step)
  const end = toCount(to, step)
  const pieces: CountedPiece[] = []
  let here = start
  for (const { span, index } of ordered) {
    const left = toCount(span.at, step)
    const right = left + toCount(span.size, step)
    pieces.push({ kind: 'gap', index, from: here, to: left }, { kind: 'work', index, from: left, to: right })
    here = right
  }
  pieces.push({ kind: 'gap', index: ordered.length, from: here, to: end })
  return { start, end, pieces }
}

function printed(count: number, step: Step): Printed {
  const mm = fromCount(count, step)
  return {
    count,
    mm,
    text:
      step.unit === 'in'
        ? formatInchCount(count, step.parts)
        : formatLength(mm, { unit: 'mm', decimals: 1, bare: true }),
  }
}
