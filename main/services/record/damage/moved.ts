/** When a damaged work was moved: by itself, or with a crate or a vehicle that it lay in, however deep. */
import { placesAround } from '../../../../src/record/nested.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { rows } from '../../sql.ts'
import { inForce, standingOf } from '../standing.ts'

/** The first moment after `found` at which it was moved; null where it has not been. */
export function firstMoved(db: ReadHandle, work: string, found: string): string | null {
  const later = rows<{ at: string; crate: string | null }>(
    db,
    `SELECT moved.at, moved.crate FROM moved WHERE moved.at > :found AND ${inForce}
     AND (moved.work = :work OR moved.crate IS NOT NULL) ORDER BY moved.at`,
    { work, found },
  )
  const moved = later.find(({ at, crate }) => crate === null || isIn(db, work, crate, at))
  return moved?.at ?? null
}

function isIn(db: ReadHandle, work: string, crate: string, at: string): boolean {
  const stood = standingOf(db, 'work', work, at)
  if (stood === undefined) return false
  return placesAround(stood.place, { get: key => standingOf(db, 'crate', key, at) }).includes(crate)
}
