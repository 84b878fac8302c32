/** How a set stands in the catalogue, and the figures of the whole that follow from its parts. */
import type { SetFacts } from '../../../src/contract/areas/sets.ts'
import type { Output } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { laySet } from '../../../src/layout/set.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'

type HangingSize = NonNullable<Output<'work.get'>['size']>

export interface PartFigures {
  readonly id: string
  readonly hang_height: number | null
  readonly hang_width: number | null
  readonly hang_depth: number | null
  readonly hang_source: '' | 'listed' | 'measured'
  readonly hang_at: string
  readonly mass: number | null
  readonly mass_source: '' | 'listed' | 'measured'
}

/** The parts of a set in their order. */
export const ofSet = 'WHERE parent = :set ORDER BY part_order, id'

export function partFiguresOf(db: ReadHandle, set: string): readonly PartFigures[] {
  return rows<PartFigures>(
    db,
    `SELECT id, hang_height, hang_width, hang_depth, hang_source, hang_at, mass, mass_source FROM work ${ofSet}`,
    { set },
  )
}

/** Undefined for a work that is no set, or that is not there. */
export function setFactsOf(db: ReadHandle, work: string): SetFacts | undefined {
  const found = row<Omit<SetFacts, 'form'> & { form: SetFacts['form'] | '' }>(
    db,
    `SELECT set_form AS form, set_columns AS columns, coalesce(set_gap_x, 0.0) AS gapX, coalesce(set_gap_y, 0.0) AS gapY,
       set_keeps AS keeps FROM work WHERE id = :work`,
    { work },
  )
  return found === undefined || found.form === '' ? undefined : { ...found, form: found.form }
}

export function partIdsOf(db: ReadHandle, set: string): string[] {
  return rows<{ id: string }>(db, `SELECT id FROM work ${ofSet}`, { set }).map(part => part.id)
}

/** The size and mass of a whole set, as they follow from its parts. */
export function wholeOf(db: ReadHandle, set: string): { size: HangingSize | null; mass: number | null } {
  const facts = setFactsOf(db, set)
  const parts = partFiguresOf(db, set)
  const size = facts === undefined ? null : wholeSize(facts, parts)
  return {
    size: size === null ? null : { ...size, diameter: null, part: 'overall' },
    mass: wholeMass(parts).mass,
  }
}

/** Null while a part has no size. Measured is a set whose parts all are. */
export function wholeSize(set: SetFacts, parts: readonly PartFigures[]) {
  try {
    const { width, height } = laySet({
      ...set,
      parts: parts.map(part => ({ id: part.id, width: part.hang_width, height: part.hang_height })),
    })
    const depths = parts.map(part => part.hang_depth)
    return {
      width,
      height,
      depth: depths.includes(null) ? null : Math.max(...depths.map(depth => depth ?? 0)),
      kind: parts.every(part => part.hang_source === 'measured') ? ('measured' as const) : ('listed' as const),
      at:
        parts
          .map(part => part.hang_at)
          .sort()
          .at(-1) ?? '',
    }
  } catch (error) {
    if (error instanceof Refusal) return null
    throw error
  }
}

export function wholeMass(parts: readonly PartFigures[]): { mass: number | null; mass_source: string } {
  if (parts.length === 0 || parts.some(part => part.mass === null)) return { mass: null, mass_source: '' }
  return {
    mass: parts.reduce((sum, part) => sum + (part.mass ?? 0), 0),
    mass_source: parts.every(part => part.mass_source === 'measured') ? 'measured' : 'listed',
  }
}
