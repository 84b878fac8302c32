/**
 * A damaged work stays in the house until the record of its damage is closed: no movement takes it further away than it
 * was, neither by itself nor in what carries it, at its own moment or at a later one that is on record.
 */
import { Refusal } from '../../../../src/contract/refusal.ts'
import { type Crates, placesAround } from '../../../../src/record/nested.ts'
import type { ReadHandle } from '../../../database/handles.ts'
import { rows } from '../../sql.ts'
import { workName } from '../../works/facts.ts'
import type { Carry, Thing } from '../carry.ts'
import { inForce, standingCrates, standingOf, standingWithout } from '../standing.ts'
import { openDamage } from './rows.ts'

/** How far away what is at a place is: 0 in the house, 1 in a vehicle, 2 at an address outside. */
function farness(db: ReadHandle): (place: string | undefined, standing: Crates) => number {
  const known = new Map(
    rows<{ id: string; kind: string; parent: string | null }>(db, 'SELECT id, kind, parent FROM location').map(each => [
      each.id,
      each,
    ]),
  )
  const own = (place: string): number => {
    const location = known.get(place)
    if (location === undefined) return 0
    if (location.kind === 'elsewhere') return 2
    return location.kind === 'vehicle' ? 1 : location.parent === null ? 0 : own(location.parent)
  }
  return (place, standing) => (place === undefined ? 0 : Math.max(...placesAround(place, standing).map(own)))
}

/** Moments at which what is said of this movement may take a work away: its own, and those of later movements. */
function momentsFrom(db: ReadHandle, at: string, works: readonly string[]): string[] {
  const later = rows<{ at: string }>(
    db,
    `SELECT DISTINCT moved.at FROM moved WHERE moved.at > :at AND ${inForce}
     AND (moved.crate IS NOT NULL OR moved.work IN (SELECT value FROM json_each(:works))) ORDER BY moved.at`,
    { at, works: JSON.stringify(works) },
  )
  return [at, ...later.map(each => each.at)]
}

/** Refuses `damage-open`. `ignoring`: a movement that this one sets right. */
export function refuseDamaged(db: ReadHandle, { things, to, at }: Omit<Carry, 'spot'>, ignoring?: string): void {
  const open = openDamage(db)
  if (open.length === 0) return
  const far = farness(db)
  const crates = things.filter(({ kind }) => kind === 'crate')
  for (const moment of momentsFrom(db, at, [...new Set(open.map(each => each.carried))])) {
    const standing = standingCrates(db, moment)
    /** From its next movement on this one says nothing of where it is. */
    const counts = (stood: { readonly at: string; readonly movement: string } | undefined) =>
      stood === undefined || stood.at <= at || stood.movement === ignoring
    const supposed = new Map<string, { place: string }>(standing)
    for (const { id } of crates) if (counts(standing.get(id))) supposed.set(id, { place: to.place })
    for (const damage of open.filter(({ foundAt }) => foundAt <= moment)) {
      const stood = standingOf(db, 'work', damage.carried, moment)
      const carried = staysBehind(damage, things) ? undefined : things.find(({ id }) => id === damage.carried)
      const place = carried !== undefined && counts(stood) ? to.place : stood?.place
      if (far(place, supposed) > far(stood?.place, standing)) throw stays(db, damage, carried ?? crates[0])
    }
  }
}

/**
 * Refuses `damage-open` where what is struck brought a damaged work in: without it the work would be farther away than the
 * record has it, when its damage was found or at any later moment.
 */
export function refuseStruck(db: ReadHandle, wrong: { readonly id: string; readonly at: string }): void {
  const open = openDamage(db)
  const things = rows<{ work: string | null; crate: string | null }>(
    db,
    'SELECT work, crate FROM moved WHERE movement = :id',
    { id: wrong.id },
  )
  if (open.length === 0 || things.length === 0) return
  const far = farness(db)
  const crates = things.flatMap(({ crate }) => crate ?? [])
  const found = open.map(({ foundAt }) => foundAt).filter(at => at > wrong.at)
  const later = momentsFrom(db, wrong.at, [...new Set(open.map(each => each.carried))])
  for (const moment of new Set([...later, ...found])) {
    const standing = standingCrates(db, moment)
    const supposed: Crates = {
      get: key => (crates.includes(key) ? standingWithout(db, 'crate', key, moment, wrong.id) : standing.get(key)),
    }
    for (const { id, reference, work } of open.filter(({ foundAt }) => foundAt <= moment)) {
      const stood = standingOf(db, 'work', work, moment)
      const place = standingWithout(db, 'work', work, moment, wrong.id)?.place
      if (far(place, supposed) <= far(stood?.place, standing)) continue
      const sentence = `Without this movement ${workName(db, work)} would be out of the house, and its damage ${reference} is not closed. Set the movement right instead of striking it, or close the damage first.`
      throw new Refusal('damage-open', sentence, { field: 'struck', details: { damage: id, reference } })
    }
  }
}

/** A damaged part that its set goes without. */
function staysBehind({ work, carried }: ReturnType<typeof openDamage>[number], things: readonly Thing[]): boolean {
  if (work === carried || things.some(({ id }) => id === work)) return false
  return things.some(({ partOf }) => partOf === carried)
}

function stays(db: ReadHandle, damage: ReturnType<typeof openDamage>[number], thing: Thing | undefined): Refusal {
  const { id, reference, work } = damage
  const inIt = thing?.kind === 'crate' ? `, which is in ${thing.name},` : ''
  const sentence = `${workName(db, work)}${inIt} stays in the house: its damage ${reference} is not closed. Say there what is missing and close it, or put it somewhere in the house.`
  return new Refusal('damage-open', sentence, { field: thing?.field ?? 'to', details: { damage: id, reference } })
}
