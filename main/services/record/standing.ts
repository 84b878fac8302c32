/**
 * Where things stood at a moment, read from the record alone: of each thing the last movement until then that nothing
 * set right. One step down an index for each thing, however long the record is.
 */
import type { ReadHandle } from '../../database/handles.ts'
import { row, rows } from '../sql.ts'

export interface Stood {
  readonly thing: string
  readonly movement: string
  readonly at: string
  readonly place: string
  readonly from: string
}

/** Joined: moved. What was set right counts no more, with the moment it gave. */
export const inForce = 'NOT EXISTS (SELECT 1 FROM movement AS later WHERE later.corrects = moved.movement)'

/** The row of the last movement until `:at` of what `of` names. */
export function lastOf(kind: 'work' | 'crate', of: string): string {
  return `(SELECT moved.rowid FROM moved WHERE moved.${kind} = ${of} AND moved.at <= :at AND ${inForce}
    ORDER BY moved.at DESC, moved.movement DESC LIMIT 1)`
}

const columns = 'last.movement, last.at, last.place, last.from_place AS "from"'

/** Every work of a show, or of the catalogue, that had moved by then. */
export const worksStanding = `SELECT work.id AS thing, ${columns} FROM work JOIN moved AS last ON last.rowid = ${lastOf('work', 'work.id')}`
const worksOfShow = `SELECT entry.work AS thing, ${columns} FROM entry JOIN moved AS last ON last.rowid = ${lastOf('work', 'entry.work')}
  WHERE entry.exhibition = :exhibition`
const cratesStanding = `SELECT location.id AS thing, ${columns} FROM location JOIN moved AS last ON last.rowid = ${lastOf('crate', 'location.id')}
  WHERE location.kind IN ('crate', 'vehicle')`

export function standingWorks(db: ReadHandle, at: string, exhibition?: string): Stood[] {
  return exhibition === undefined
    ? rows<Stood>(db, worksStanding, { at })
    : rows<Stood>(db, worksOfShow, { at, exhibition })
}

/** Crates and vehicles by their key. */
export function standingCrates(db: ReadHandle, at: string): Map<string, Stood> {
  return new Map(rows<Stood>(db, cratesStanding, { at }).map(stood => [stood.thing, stood]))
}

/** One thing alone, as if the movement `ignoring` had never been. */
export function standingWithout(
  db: ReadHandle,
  kind: 'work' | 'crate',
  thing: string,
  at: string,
  ignoring: string | undefined,
): Stood | undefined {
  const stood = standingOf(db, kind, thing, at)
  if (stood === undefined || stood.movement !== ignoring) return stood
  return row<Stood>(
    db,
    `SELECT :thing AS thing, moved.movement, moved.at, moved.place, moved.from_place AS "from" FROM moved
     WHERE moved.${kind} = :thing AND moved.at <= :at AND moved.movement <> :ignoring AND ${inForce}
     ORDER BY moved.at DESC, moved.movement DESC LIMIT 1`,
    { thing, at, ignoring },
  )
}

/** One thing alone. */
export function standingOf(db: ReadHandle, kind: 'work' | 'crate', thing: string, at: string): Stood | undefined {
  return row<Stood>(
    db,
    `SELECT :thing AS thing, ${columns} FROM moved AS last WHERE last.rowid = ${lastOf(kind, ':thing')}`,
    { thing, at },
  )
}
