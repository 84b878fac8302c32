/**
 * An order of walls for a visitor, proposed from the plan: in at a door, along the walls of the room to one hand, then
 * on through the next doorway, until every room that doors lead to is seen. A proposal; the order is the curator's.
 */
import { isWay } from '../drawing/stretches.ts'
import { type Doorway, doorPairs, type RouteFace, type RouteRoom } from './route.ts'

/** To which hand the walls of a room are walked along from its door. */
export type Hand = 'left' | 'right'

/**
 * @param start the room a visitor comes into first
 * @returns faces in order; rooms that no doorway leads to come last, in the list's own order
 */
export function proposeOrder(rooms: readonly RouteRoom[], start: string, hand: Hand): readonly string[] {
  const behind = new Map([...doorPairs(rooms)].map(([door, other]) => [door.id, other]))
  const seen = new Set<string>()
  const faces: string[] = []
  const enter = (room: RouteRoom, door: string | null): void => {
    if (seen.has(room.id)) return
    seen.add(room.id)
    const walls = roundFrom(room, door, hand)
    faces.push(...walls.map(wall => wall.face), ...room.free.map(one => one.face))
    for (const wall of walls) {
      for (const { id } of [...wall.openings].sort((a, b) => (hand === 'left' ? a.x - b.x : b.x - a.x))) {
        const next = behind.get(id)
        const there = rooms.find(one => one.id === next?.room)
        if (there !== undefined) enter(there, next?.id ?? null)
      }
    }
  }
  const first = rooms.find(room => room.id === start)
  if (first !== undefined) enter(first, entrance(first, behind))
  for (const room of rooms) enter(room, entrance(room, behind))
  return faces
}

/** The door behind which nothing is known, so that it leads in from outside; else the first. */
function entrance(room: RouteRoom, behind: ReadonlyMap<string, Doorway | null>): string | null {
  const doors = room.walls.flatMap(wall => wall.openings).filter(isWay)
  return (doors.find(({ id }) => (behind.get(id) ?? null) === null) ?? doors[0])?.id ?? null
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
