/** Marks that have been made, as they stand in the catalogue. */
import type { MadeMark } from '../../../src/contract/areas/marks.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'

export interface StoredMark {
  readonly id: string
  readonly exhibition: string
  readonly face: string
  readonly placement: string | null
  readonly slot: string
  readonly x: number
  readonly y: number
  readonly bearing_y: number
  readonly fixing_name: string
  readonly kind: string
  readonly state: 'marked' | 'drilled'
  readonly services_at: string
  readonly services_by: string
  readonly marked_at: string
  readonly marked_by: string
  readonly drilled_at: string
  readonly drilled_by: string
  readonly filled_at: string
  readonly filled_by: string
  readonly note: string
}

function tick(at: string, by: string): { readonly at: string; readonly by: string } | null {
  return at === '' ? null : { at, by }
}

export function asMade(mark: StoredMark): MadeMark {
  return {
    id: mark.id,
    placement: mark.placement,
    slot: mark.slot,
    x: mark.x,
    y: mark.y,
    bearingY: mark.bearing_y,
    fixing: mark.fixing_name,
    kind: mark.kind,
    state: mark.state,
    services: tick(mark.services_at, mark.services_by),
    marked: tick(mark.marked_at, mark.marked_by),
    drilled: tick(mark.drilled_at, mark.drilled_by),
    filled: tick(mark.filled_at, mark.filled_by),
    note: mark.note,
  }
}

/** Every mark that was made on a face for a show, from left to right. */
export function madeOn(db: ReadHandle, exhibition: string, face: string): StoredMark[] {
  return rows<StoredMark>(db, 'SELECT * FROM mark WHERE exhibition = :exhibition AND face = :face ORDER BY x, y, id', {
    exhibition,
    face,
  })
}
