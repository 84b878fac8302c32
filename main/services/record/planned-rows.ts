/** Planned movements as they are stored, with the movement in force that fulfilled each. */
import { daySaid } from '../../../src/light/day.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { rows } from '../sql.ts'
import type { Carry, Thing } from './carry.ts'
import { placeOf } from './places.ts'
import { inForce } from './standing.ts'

export interface Planned {
  readonly id: string
  readonly kind: 'work' | 'crate'
  /** The work or crate. */
  readonly thing: string
  readonly place: string
  /** As it was called when it was planned. */
  readonly placeWords: string
  readonly spot: string
  readonly day: string
  readonly hour: string
  readonly method: string
  readonly people: string
  readonly hands: number | null
  readonly reason: string
  readonly note: string
  /** The movement in force that fulfilled it. */
  readonly movement: string | null
}

const fulfilled = (besides: string) =>
  `(SELECT moved.movement FROM moved WHERE moved.plan = planned_move.id AND ${inForce}${besides} LIMIT 1)`
const columns = `id, iif(work IS NULL, 'crate', 'work') AS kind, coalesce(work, crate) AS thing, place,
  place_words AS placeWords, spot, day, hour, method, people, hands, reason, note`
const inTime = 'ORDER BY day, hour, id'

/** All of them, the first day first; without an hour before those with one. */
export function plannedMoves(db: ReadHandle): Planned[] {
  return rows<Planned>(db, `SELECT ${columns}, ${fulfilled('')} AS movement FROM planned_move ${inTime}`)
}

/** Those that nothing fulfils. `ignoring`: a movement that another sets right. */
export function openPlans(db: ReadHandle, ignoring: string | null = null): Planned[] {
  return rows<Planned>(
    db,
    `SELECT ${columns}, NULL AS movement FROM planned_move
     WHERE ${fulfilled(' AND moved.movement IS NOT :ignoring')} IS NULL ${inTime}`,
    { ignoring },
  )
}

export const placeSaid = (db: ReadHandle, { place, placeWords }: Pick<Planned, 'place' | 'placeWords'>): string =>
  placeOf(db, place)?.words ?? placeWords

/** `14 March 2031, 09:30`. */
export const whenSaid = ({ day, hour }: Pick<Planned, 'day' | 'hour'>): string =>
  hour === '' ? daySaid(day) : `${daySaid(day)}, ${hour}`

/** Which plan each thing of a movement fulfils, by thing. */
export type Fulfilled = ReadonlyMap<string, { readonly plan: string; readonly words: string }>

/**
 * Those named, and of what else is carried the earliest plan to the very place whose day has come.
 * @param date of the movement, by the clock of this machine
 */
export function fulfilledBy(
  db: ReadHandle,
  { things, to }: Pick<Carry, 'to'> & { readonly things: readonly Pick<Thing, 'id'>[] },
  date: string,
  named: readonly string[],
  ignoring: string | null = null,
): Fulfilled {
  const carried = new Set(things.map(({ id }) => id))
  const open = openPlans(db, ignoring).filter(({ thing }) => carried.has(thing))
  const found = new Map<string, { plan: string; words: string }>()
  const take = (plan: Planned) => {
    if (!found.has(plan.thing)) {
      found.set(plan.thing, { plan: plan.id, words: `${whenSaid(plan)}: to ${placeSaid(db, plan)}` })
    }
  }
  for (const plan of open) if (named.includes(plan.id)) take(plan)
  for (const plan of open) if (plan.place === to.place && plan.day <= date) take(plan)
  return found
}
