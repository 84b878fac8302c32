/**
 * Which of several facts is in force: one that a person chose, else measured over listed, else the newer. And which
 * size hangs: framed, else overall, mount, support, sheet, image, sight. A disagreement is never overwritten.
 */
export interface SourcedFact {
  readonly kind: 'listed' | 'measured'
  /** ISO 8601; compared as text. */
  readonly at: string
  readonly chosen: boolean
}

/** The fact in force among those of one thing; undefined for none. Ties go to the later in the list. */
export function inForce<F extends SourcedFact>(facts: readonly F[]): F | undefined {
  let best: F | undefined
  for (const fact of facts) if (best === undefined || rank(fact, best) >= 0) best = fact
  return best
}

function rank(a: SourcedFact, b: SourcedFact): number {
  if (a.chosen !== b.chosen) return a.chosen ? 1 : -1
  if (a.kind !== b.kind) return a.kind === 'measured' ? 1 : -1
  return a.at < b.at ? -1 : a.at > b.at ? 1 : 0
}

/** From what surrounds the work to what is only seen of it. `sight` is a caution: the frame is larger. */
export const hangingOrder = ['framed', 'overall', 'mount', 'support', 'sheet', 'image', 'sight'] as const
export type HangingPart = (typeof hangingOrder)[number]

export interface SizeFact extends SourcedFact {
  readonly part: string
  readonly height: number | null
  readonly width: number | null
  readonly depth: number | null
  readonly diameter: number | null
}

export interface HangingSize<F extends SizeFact> {
  readonly fact: F
  readonly part: HangingPart
  /** Millimetres; a round work hangs as its outer square. */
  readonly height: number
  readonly width: number
  readonly depth: number | null
  readonly diameter: number | null
}

/** The size that hangs; undefined while no part has both height and width (or a diameter). */
export function hangingSize<F extends SizeFact>(sizes: readonly F[]): HangingSize<F> | undefined {
  for (const part of hangingOrder) {
    const fact = inForce(sizes.filter(size => size.part === part))
    if (fact === undefined) continue
    const height = fact.height ?? fact.diameter
    const width = fact.width ?? fact.diameter
    if (height !== null && width !== null) {
      return { fact, part, height, width, depth: fact.depth, diameter: fact.diameter }
    }
  }
  return undefined
}

/**
 * By how much the measured size that is in force differs from the newest listed one of the same part, millimetres,
 * positive where measured is larger; undefined where there is nothing to compare.
 */
export function measuredAgainstListed(
  sizes: readonly SizeFact[],
): { readonly height: number; readonly width: number } | undefined {
  const hanging = hangingSize(sizes)
  if (hanging === undefined || hanging.fact.kind !== 'measured') return undefined
  const listed = inForce(sizes.filter(size => size.part === hanging.part && size.kind === 'listed'))
  const height = listed?.height ?? listed?.diameter
  const width = listed?.width ?? listed?.diameter
  if (height == null || width == null) return undefined
  return { height: hanging.height - height, width: hanging.width - width }
}
