/** How a set stands in the catalogue, and the figures of the whole that follow from its parts. */
import type { SetFacts } from '../../../src/contract/areas/sets.ts'
import type { Output } from '../../../src/contract/contract.ts'
import { type PartFigures, wholeMass, wholeSize } from '../../../src/model/whole-of-set.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'

type HangingSize = NonNullable<Output<'work.get'>['size']>

/** The parts of a set in their order. */
export const ofSet = 'WHERE parent = :set ORDER BY part_order, id'

export function partFiguresOf(db: ReadHandle, set: string): readonly PartFigures[] {
  return rows<PartFigures>(
    db,
    `SELECT id, hang_height AS height, hang_width AS width, hang_depth AS depth, hang_source AS kind, hang_at AS at, mass,
       mass_source AS massKind FROM work ${ofSet}`,
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
