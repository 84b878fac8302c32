/**
 * An order of walls for a visitor, proposed from the plan: in at a door, along the walls of the room to one hand, then
 * on through the next doorway, until every room that doors lead to is seen. A proposal; the order is the curator's.
 */
import { isWay } from '../drawing/stretches.ts'
import { openingMiddle, type RouteFace, type RouteRoom } from './route.ts'
import { distance } from './ways.ts'

/** To which hand the walls of a room are walked along from its door. */
export type Hand = 'left' | 'right'

/**
 * @param start the room a visitor comes into first
 * @returns faces in order; rooms that no doorway leads to come last, in the list's own order
 */
export function proposeOrder(rooms: readonly RouteRoom[], start: string, hand: Hand): readonly string[] {
  const seen = new Set<string>()
  const faces: string[] = []
  const enter = (room: RouteRoom, door: string | null): void => {
    if (seen.has(room.id)) return
    seen.add(room.id)
    const walls = roundFrom(room, door, hand)
    faces.push(...walls.map(wall => wall.face), ...room.free.map(one => one.face))
    for (const wall of walls) {
      const doors = [...wall.openings].sort((a, b) => (hand === 'left' ? a.x - b.x : b.x - a.x))
      for (const opening of doors) {
        const next = behind(rooms, room, wall, opening)
        if (next !== null) enter(next.room, next.opening)
      }
    }
  }
  const first = rooms.find(room => room.id === start)
  if (first !== undefined) enter(first, entrance(first))
  for (const room of rooms) enter(room, entrance(room))
  return faces
}

/** The door that leads out of the building or to a room nobody named; else none. */
function entrance(room: RouteRoom): string | null {
  const doors = room.walls.flatMap(wall => wall.openings).filter(isWay)
  return (doors.find(door => door.leadsTo === null && door.other === null) ?? doors[0])?.id ?? null
}

/**
 * The walls of a room from the one its door is in. Who comes in sees that wall last: to the left hand the walls run
 * clockwise on the plan, which is from left to right as seen from inside.
 */
function roundFrom(room: RouteRoom, door: string | null, hand: Hand): readonly RouteFace[] {
  const at = Math.max(
    0,
    room.walls.findIndex(wall => wall.openings.some(opening => opening.id === door)),
  )
  const round = [...room.walls.slice(at + 1), ...room.walls.slice(0, at + 1)]
  return hand === 'left' ? round : [...round.slice(0, -1).reverse(), ...round.slice(-1)]
}

function behind(
  rooms: readonly RouteRoom[],
  room: RouteRoom,
  wall: RouteFace,
  opening: RouteFace['openings'][number],
): { readonly room: RouteRoom; readonly opening: string | null } | null {
  if (!isWay(opening)) return null
  for (const other of rooms) {
    if (other === room) continue
    const pair = other.walls.flatMap(one => one.openings).find(one => one.id === opening.other)
    if (pair !== undefined) return { room: other, opening: pair.id }
  }
  const named = rooms.find(one => one.id === opening.leadsTo)
  if (named === undefined) return null
  const here = openingMiddle(wall, opening)
  const nearest = named.walls
    .flatMap(one => one.openings.filter(isWay).map(door => ({ door, at: openingMiddle(one, door) })))
    .sort((a, b) => distance(a.at, here) - distance(b.at, here))[0]
  return { room: named, opening: nearest?.door.id ?? null }
}
