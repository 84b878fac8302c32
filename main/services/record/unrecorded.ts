/**
 * Works that are said to hang on a wall where the record does not have them. The wall's tick can be taken back, a record
 * cannot; so a person takes ticks into the record, and until then the work has two places.
 */
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'
import { standingWorks } from './standing.ts'

export interface HungUnrecorded {
  readonly work: string
  readonly face: string
  /** When it was said to hang, and by whom. */
  readonly at: string
  readonly by: string
  readonly spot: string
  /** The record has moved it elsewhere since: then the tick is old, not the record. */
  readonly later: boolean
}

export function hungUnrecorded(db: ReadHandle, exhibition: string, at: string): HungUnrecorded[] {
  const standing = new Map(standingWorks(db, at, exhibition).map(stood => [stood.thing, stood]))
  const hung = rows<{ work: string; face: string; at: string | null; by: string | null; nth: number }>(
    db,
    `SELECT entry.work, placement.face, step.at, step."by",
      (SELECT count(*) FROM placement AS before WHERE before.face = placement.face
        AND before.exhibition = placement.exhibition AND before.x < placement.x) + 1 AS nth
     FROM placement JOIN entry ON entry.id = placement.entry
     LEFT JOIN placement_step AS step ON step.id = (SELECT id FROM placement_step WHERE placement = placement.id
       AND state <> 'planned' ORDER BY state <> 'hung', at DESC, id DESC LIMIT 1)
     WHERE placement.exhibition = :exhibition AND placement.state <> 'planned' ORDER BY placement.face, placement.x, placement.id`,
    { exhibition },
  )
  return hung.flatMap(({ work, face, at: ticked, by, nth }) => {
    const stood = standing.get(work)
    // Works said to hang before ticks had a time stand there since the record last said otherwise.
    const since = ticked ?? at
    if (stood?.place === face || since > at) return []
    return [
      { work, face, at: since, by: by ?? '', spot: `position ${nth}`, later: stood !== undefined && stood.at > since },
    ]
  })
}
