/** Rooms put where they stand in the building, and where north is. A place is no measure: nothing is drawn anew. */
import type { Output, Received } from '../../../src/contract/contract.ts'
import { wholeTurn } from '../../../src/plan/place.ts'
import { type Clash, changeFields, notFound, same } from '../change.ts'
import { pairOpenings } from '../rooms/fixtures.ts'
import type { Writing } from '../service.ts'
import { row, update } from '../sql.ts'
import { shareWalls } from './share.ts'

interface Stored {
  readonly name: string
  readonly at_x: number | null
  readonly at_y: number | null
}

export function placeRooms(
  writing: Writing,
  { rooms, walls = [], doorways = [] }: Received<'plan.placeRoom'>,
): Output<'plan.placeRoom'> {
  const { db } = writing
  const saved = new Set<string>()
  const clashes: Clash[] = []
  const names: string[] = []
  for (const [index, { id, changes }] of rooms.entries()) {
    const stored = row<Stored>(db, 'SELECT name, at_x, at_y FROM room WHERE id = :id', { id })
    if (stored === undefined) throw notFound('room', `rooms.${index}.id`)
    names.push(stored.name)
    const { at, turn, ...rest } = changes
    if (at !== undefined) {
      const theirs: [number, number] | null =
        stored.at_x === null || stored.at_y === null ? null : [stored.at_x, stored.at_y]
      if (same(theirs, at.was) || same(theirs, at.to)) {
        update(db, 'room', id, { at_x: at.to?.[0] ?? null, at_y: at.to?.[1] ?? null })
        saved.add('at')
      } else clashes.push({ code: 'clash', id, field: 'at', was: at.was, yours: at.to, theirs })
    }
    const others = { ...rest, turn: turn === undefined ? undefined : { ...turn, to: wholeTurn(turn.to) } }
    const columns = { turn: 'turn', storey: 'storey', floorLevel: 'floor_level' }
    const changed = changeFields(writing, 'room', id, others, columns, 'room')
    for (const field of changed.saved) saved.add(field)
    clashes.push(...changed.clashes)
  }
  if (clashes.length === 0) {
    for (const each of walls) shareWalls(writing, each)
    for (const [id, other] of doorways) pairOpenings(writing, { id, other })
  }
  writing.label(`Place ${names.length === 1 ? names[0] : `${names.length} rooms`} on the plan`)
  return { saved: [...saved], clashes }
}

export function setNorth(writing: Writing, { was, to }: Received<'plan.setNorth'>): Output<'plan.setNorth'> {
  const { db } = writing
  const building = row<{ id: string }>(db, 'SELECT id FROM building ORDER BY id LIMIT 1')
  if (building === undefined) throw notFound('building', 'to')
  writing.label(to === null ? 'Take north off the plan' : `Say where north is: ${wholeTurn(to)}°`)
  const north = { was, to: to === null ? null : wholeTurn(to) }
  const { saved, clashes } = changeFields(writing, 'building', building.id, { north }, { north: 'north' }, 'building')
  return { saved, clashes }
}
