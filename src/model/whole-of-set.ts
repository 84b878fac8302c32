/** The figures of a whole set, as they follow from its parts. */
import type { SetFacts } from '../contract/areas/sets.ts'
import { Refusal } from '../contract/refusal.ts'
import { laySet } from '../layout/set.ts'

type Kind = '' | 'listed' | 'measured'

/** What is known of a part: as it hangs, in mm and kg; null where nobody has measured or weighed it. */
export interface PartFigures {
  readonly id: string
  readonly height: number | null
  readonly width: number | null
  readonly depth: number | null
  readonly kind: Kind
  readonly at: string
  readonly mass: number | null
  readonly massKind: Kind
}

/** Null while a part has no size or the set cannot be laid. Measured is a set whose parts all are. mm. */
export function wholeSize(set: SetFacts, parts: readonly PartFigures[]) {
  try {
    const { width, height } = laySet({ ...set, parts: parts.map(part => ({ ...part })) })
    const depths = parts.map(part => part.depth)
    return {
      width,
      height,
      depth: depths.includes(null) ? null : Math.max(...depths.map(depth => depth ?? 0)),
      kind: parts.every(part => part.kind === 'measured') ? ('measured' as const) : ('listed' as const),
      // The day on which the last of them was measured.
      at:
        parts
          .map(part => part.at)
          .sort()
          .at(-1) ?? '',
    }
  } catch (error) {
    if (error instanceof Refusal) return null
    throw error
  }
}

/** The sum of the parts, kg; not known while one of them is not weighed. */
export function wholeMass(parts: readonly PartFigures[]): { readonly mass: number | null; readonly kind: Kind } {
  if (parts.length === 0 || parts.some(part => part.mass === null)) return { mass: null, kind: '' }
  return {
    mass: parts.reduce((sum, part) => sum + (part.mass ?? 0), 0),
    kind: parts.every(part => part.massKind === 'measured') ? 'measured' : 'listed',
  }
}
