/** Places by their key: rooms and walls of the building, and the places that a person agreed names for. */
import type { LocationKind, Place } from '../../../src/contract/areas/movements.ts'
import type { ReadHandle } from '../../database/handles.ts'
import { notFound } from '../change.ts'
import { wallCalled } from '../rooms/called.ts'
import { row, rows, value } from '../sql.ts'

export interface Location {
  readonly id: string
  readonly kind: LocationKind
  readonly parent: string | null
  readonly name: string
  readonly address: string
  readonly width: number | null
  readonly height: number | null
  readonly depth: number | null
  readonly holdHours: number | null
  readonly note: string
}

const columns = 'id, kind, parent, name, address, width, height, depth, hold_hours AS holdHours, note'

export function locationOf(db: ReadHandle, id: string): Location | undefined {
  return row<Location>(db, `SELECT ${columns} FROM location WHERE id = :id`, { id })
}

/** Crates and vehicles are themselves moved. */
export function moves(kind: LocationKind): boolean {
  return kind === 'crate' || kind === 'vehicle'
}

export interface NamedPlace {
  readonly place: string
  readonly kind: Place['kind']
  readonly words: string
  /** Of a room or a wall. */
  readonly room: string | null
  readonly location: Location | null
}

function wordsWithin(db: ReadHandle, location: Location): string {
  const around = location.parent === null ? undefined : locationOf(db, location.parent)
  return around === undefined ? location.name : `${wordsWithin(db, around)}, ${location.name}`
}

/** The place as it is called now; undefined where it is not there any more. */
export function placeOf(db: ReadHandle, place: string): NamedPlace | undefined {
  const location = locationOf(db, place)
  if (location !== undefined) {
    return { place, kind: location.kind, words: wordsWithin(db, location), room: null, location }
  }
  const room = value<string>(db, 'SELECT name FROM room WHERE id = :place', { place })
  if (room !== undefined) return { place, kind: 'room', words: room, room: place, location: null }
  const face = row<{ words: string; room: string }>(
    db,
    `SELECT room.name || ', ' || ${wallCalled} AS words, room.id AS room FROM face JOIN wall ON wall.id = face.wall
     JOIN room ON room.id = wall.room WHERE face.id = :place`,
    { place },
  )
  return face === undefined ? undefined : { place, kind: 'face', words: face.words, room: face.room, location: null }
}

/** Refuses `not-found`. */
export function placeNamed(db: ReadHandle, place: string, field: string): NamedPlace {
  const found = placeOf(db, place)
  if (found === undefined) throw notFound('place', field)
  return found
}

/** Names of many places, each looked up once. */
export function namer(db: ReadHandle): (place: string) => string | undefined {
  const known = new Map<string, string | undefined>()
  return place => {
    if (!known.has(place)) known.set(place, placeOf(db, place)?.words)
    return known.get(place)
  }
}

const bare = { address: '', note: '', width: null, height: null, depth: null, holdHours: null } as const

/** All of them: the building's first, room by room, then agreed ones by their names. */
export function allPlaces(db: ReadHandle): Place[] {
  const recorded = new Set(rows<{ place: string }>(db, 'SELECT DISTINCT place FROM movement').map(each => each.place))
  for (const { crate } of rows<{ crate: string }>(db, 'SELECT DISTINCT crate FROM moved WHERE crate IS NOT NULL')) {
    recorded.add(crate)
  }
  const rooms = rows<{ id: string; name: string }>(db, 'SELECT id, name FROM room ORDER BY position, id')
  const faces = rows<{ id: string; room: string; name: string }>(
    db,
    `SELECT face.id, wall.room, ${wallCalled} AS name FROM face JOIN wall ON wall.id = face.wall
     ORDER BY wall.position, face.side, face.id`,
  )
  const building = rooms.flatMap(room => [
    { place: room.id, kind: 'room' as const, name: room.name, words: room.name, parent: null, ...bare },
    ...faces
      .filter(face => face.room === room.id)
      .map(face => ({
        place: face.id,
        kind: 'face' as const,
        name: face.name,
        words: `${room.name}, ${face.name}`,
        parent: room.id,
        ...bare,
      })),
  ])
  const agreed = rows<Location>(db, `SELECT ${columns} FROM location`)
    .map(({ id, ...location }) => ({ place: id, ...location, words: wordsWithin(db, { id, ...location }) }))
    .sort((a, b) => collator.compare(a.words, b.words))
  return [...building, ...agreed].map(each => ({ ...each, recorded: recorded.has(each.place) }))
}

/** Names as people sort them: Crate 2 before Crate 10. */
export const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })
