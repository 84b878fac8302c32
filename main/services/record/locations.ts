/** Places with agreed names, beyond the rooms and walls of the building. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { changeFields, notFound } from '../change.ts'
import type { Reading, Writing } from '../service.ts'
import { insert, remove as removeRow, value } from '../sql.ts'
import { allPlaces, type Location, locationOf, moves, placeOf } from './places.ts'

export function list({ db }: Reading): Output<'location.list'> {
  return { places: allPlaces(db) }
}

export function add(writing: Writing, input: Received<'location.add'>): Output<'location.add'> {
  const { db } = writing
  const { kind, name, parent = null } = input
  if (parent !== null) {
    if (moves(kind)) {
      const sentence = `A ${kind} is moved from place to place: record where it is instead of naming a place around it.`
      throw new Refusal('bad-input', sentence, { field: 'parent' })
    }
    const around = locationOf(db, parent)
    if (around === undefined) throw notFound('place', 'parent')
    if (moves(around.kind)) {
      throw new Refusal('bad-input', `${around.name} moves, so no place can lie in it for good.`, { field: 'parent' })
    }
  }
  refuseSameName(db, name, parent, null, 'name')
  const id = writing.newId()
  writing.label(`Add the ${kind === 'elsewhere' ? 'place' : kind} ${name}`)
  insert(db, 'location', {
    id,
    kind,
    parent,
    name,
    address: input.address ?? '',
    width: input.width ?? null,
    height: input.height ?? null,
    depth: input.depth ?? null,
    hold_hours: input.holdHours ?? null,
    note: input.note ?? '',
  })
  return { id }
}

/** Two places of one name in the same place would make every record of either doubtful. */
function refuseSameName(db: Reading['db'], name: string, parent: string | null, own: string | null, field: string) {
  const there = value<string>(
    db,
    `SELECT name FROM location WHERE name = :name COLLATE NOCASE AND parent IS :parent AND id IS NOT :own
     UNION ALL SELECT name FROM room WHERE name = :name COLLATE NOCASE AND :parent IS NULL LIMIT 1`,
    { name, parent, own },
  )
  if (there === undefined) return
  throw new Refusal('same-name', `There is a place called ${there} already. Choose a name that tells them apart.`, {
    field,
  })
}

const columns = {
  name: 'name',
  address: 'address',
  note: 'note',
  width: 'width',
  height: 'height',
  depth: 'depth',
  holdHours: 'hold_hours',
} as const

export function change(writing: Writing, { id, changes }: Received<'location.update'>): Output<'location.update'> {
  const stored = found(writing.db, id)
  if (changes.name !== undefined) refuseSameName(writing.db, changes.name.to, stored.parent, id, 'changes.name.to')
  writing.label(`Change the place ${stored.name}`)
  const { saved, clashes } = changeFields(writing, 'location', id, changes, columns, 'place')
  return { saved, clashes }
}

function found(db: Reading['db'], id: string): Location {
  const stored = locationOf(db, id)
  if (stored !== undefined) return stored
  const built = placeOf(db, id)
  if (built === undefined) throw notFound('place')
  throw new Refusal('of-the-building', `${built.words} is of the building: it is drawn and named with its room.`, {
    field: 'id',
  })
}

export function remove(writing: Writing, { id }: Received<'location.remove'>): Output<'location.remove'> {
  const { db } = writing
  const { name } = found(db, id)
  const recorded = value(
    db,
    `SELECT 1 FROM movement WHERE location = :id UNION ALL SELECT 1 FROM moved WHERE crate = :id
     UNION ALL SELECT 1 FROM moved WHERE from_place = :id LIMIT 1`,
    { id },
  )
  if (recorded !== undefined) {
    throw new Refusal('recorded', `The record names ${name}, so it stays. It can be given another name.`, {
      field: 'id',
    })
  }
  const planned = value(db, 'SELECT 1 FROM planned_move WHERE place = :id OR crate = :id LIMIT 1', { id })
  if (planned !== undefined) {
    throw new Refusal(
      'planned',
      `Something is planned to be moved to ${name}, or ${name} itself. Take that off the plan first.`,
      {
        field: 'id',
      },
    )
  }
  if (value(db, 'SELECT id FROM location WHERE parent = :id LIMIT 1', { id }) !== undefined) {
    throw new Refusal('holds-places', `Other places lie in ${name}. Remove them first.`, { field: 'id' })
  }
  writing.label(`Remove the place ${name}`)
  removeRow(db, 'location', id)
  return { done: true }
}
