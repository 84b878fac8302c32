/**
 * The visitor's route on the plan: a stop before each face in the visitor's order, and the way on foot from stop to
 * stop, round corners and through doorways from room to room. Millimetres in the building's coordinates.
 */
import { move, type Point } from '../drawing/room-plan.ts'
import { isWay, pointAlong, solidStretches } from '../drawing/stretches.ts'
import { within } from './outline-shape.ts'
import { bendsOf, distance, isFree, type RoomGround, type Segment, shortestWay, type Way } from './ways.ts'

export interface RouteOpening {
  readonly id: string
  readonly kind: string
  readonly x: number
  readonly width: number
  readonly leadsTo: string | null
  readonly other: string | null
}

/** One face; from left to right as seen by who looks at it, who therefore stands to the right of the way. */
export interface RouteFace {
  readonly face: string
  readonly from: Point
  readonly to: Point
  readonly length: number
  readonly openings: readonly RouteOpening[]
}

export interface RouteRoom {
  readonly id: string
  readonly name: string
  readonly walls: readonly RouteFace[]
  /** Faces of what stands free in the room. */
  readonly free: readonly RouteFace[]
  /** Footprints of partitions and of all that stands on the floor: corners in order, the free floor to their left. */
  readonly footprints: readonly (readonly Point[])[]
}

export interface Stop {
  readonly face: string
  readonly room: string
  readonly at: Point
}

export interface Leg {
  readonly from: string
  readonly to: string
  readonly points: readonly Point[]
  readonly length: number
  /** No way was found on the plan: it is drawn straight. */
  readonly lost: boolean
}

export interface Route {
  readonly stops: readonly Stop[]
  readonly legs: readonly Leg[]
  readonly length: number
}

/** How far before a wall a visitor is drawn, at most; nearer where the room is narrow. Of the drawing alone, mm. */
const before = 1500
/** How far off a corner a way bends, mm. */
const clear = 300
/** Doorways of two rooms belong together without being said where their middles are no further apart, mm. */
const sameDoor = 900

export interface Doorway {
  readonly id: string
  readonly room: string
  readonly at: Point
  readonly leadsTo: string | null
  readonly other: string | null
}

export function openingMiddle(wall: RouteFace, { x, width }: RouteOpening): Point {
  return pointAlong(wall, x + width / 2)
}

function doorwaysOf(room: RouteRoom): readonly Doorway[] {
  return room.walls.flatMap(wall =>
    wall.openings.filter(isWay).map(opening => ({
      id: opening.id,
      room: room.id,
      at: openingMiddle(wall, opening),
      leadsTo: opening.leadsTo,
      other: opening.other,
    })),
  )
}

/** Each doorway of the building with what it is in the room behind; null where nothing is known to lie behind it. */
export function doorPairs(rooms: readonly RouteRoom[]): ReadonlyMap<Doorway, Doorway | null> {
  const doors = rooms.flatMap(doorwaysOf)
  return new Map(doors.map(door => [door, otherSide(door, doors)]))
}

/** The same doorway as the room behind it sees it: as said, else the nearest one there that is near enough. */
function otherSide(door: Doorway, all: readonly Doorway[]): Doorway | null {
  const said = all.find(one => one.id === door.other)
  if (said !== undefined) return said
  const candidates = all
    .filter(one => one.room !== door.room && (door.leadsTo === null || one.room === door.leadsTo))
    .map(one => ({ one, far: distance(one.at, door.at) }))
    .sort((a, b) => a.far - b.far)
  const [nearest] = candidates
  return nearest !== undefined && nearest.far <= sameDoor ? nearest.one : null
}

/** What bars the way in a room: its walls but for their openings, the faces of partitions, what stands there. */
export function groundOf(room: RouteRoom): RoomGround {
  const edges = room.footprints.flatMap(corners =>
    corners.map((corner, at): Segment => [corner, corners[(at + 1) % corners.length] ?? corner]),
  )
  const corners = room.walls.map(wall => wall.from)
  return {
    bars: [...room.walls.flatMap(solidOf), ...edges],
    bends: [
      ...bendsOf(corners, clear),
      ...room.footprints.flatMap(footprint => bendsOf([...footprint].reverse(), clear)),
    ].filter(point => within(corners, point)),
  }
}

function solidOf(wall: RouteFace): readonly Segment[] {
  return solidStretches(wall.length, wall.openings).map(([from, to]) => [pointAlong(wall, from), pointAlong(wall, to)])
}

/** Before the middle of a face, as far as the room lets a visitor stand back. */
export function stopBefore(face: RouteFace, ground: RoomGround): Point {
  const middle: Point = [(face.from[0] + face.to[0]) / 2, (face.from[1] + face.to[1]) / 2]
  const run = distance(face.from, face.to) || 1
  const inward: Point = [-(face.to[1] - face.from[1]) / run, (face.to[0] - face.from[0]) / run]
  const start = move(middle, inward, 1)
  let [near, far] = [0, before * 2]
  if (isFree(start, move(middle, inward, far), ground.bars)) return move(middle, inward, before)
  // How far the view is clear, to a centimetre; a visitor is drawn half-way.
  while (far - near > 10) {
    const half = (near + far) / 2
    if (isFree(start, move(middle, inward, half), ground.bars)) near = half
    else far = half
  }
  return move(middle, inward, Math.min(before, near / 2))
}

/** The route past faces in this order; a face that no room has is left out. */
export function routePast(order: readonly string[], rooms: readonly RouteRoom[]): Route {
  const grounds = new Map(rooms.map(room => [room.id, groundOf(room)]))
  const stops = order.flatMap((face): Stop[] => {
    for (const room of rooms) {
      const found = [...room.walls, ...room.free].find(one => one.face === face)
      const ground = grounds.get(room.id)
      if (found !== undefined && ground !== undefined) return [{ face, room: room.id, at: stopBefore(found, ground) }]
    }
    return []
  })
  const pairs = doorPairs(rooms)
  const inRoom = (room: string, from: Point, to: Point): Way | null => {
    const ground = grounds.get(room)
    return ground === undefined ? null : shortestWay(from, to, ground)
  }
  const legs = stops.slice(1).map((to, at): Leg => {
    const from = stops[at] ?? to
    const way = acrossRooms(from, to, pairs, inRoom)
    const straight = { points: [from.at, to.at], length: distance(from.at, to.at) }
    return { from: from.face, to: to.face, ...(way ?? straight), lost: way === null }
  })
  return { stops, legs, length: legs.reduce((sum, leg) => sum + leg.length, 0) }
}

interface Reached {
  readonly room: string
  readonly way: Way
}

/** Dijkstra over doorways: each is reached in one room and left in the other. */
function acrossRooms(
  from: Stop,
  to: Stop,
  pairs: ReadonlyMap<Doorway, Doorway | null>,
  inRoom: (room: string, from: Point, to: Point) => Way | null,
): Way | null {
  let best: Way | null = null
  const open: Reached[] = [{ room: from.room, way: { points: [from.at], length: 0 } }]
  const done = new Set<string>()
  while (open.length > 0) {
    open.sort((a, b) => b.way.length - a.way.length)
    const here = open.pop()
    if (here === undefined || (best !== null && here.way.length >= best.length)) break
    const at = here.way.points.at(-1) ?? from.at
    const key = `${here.room} ${at[0]} ${at[1]}`
    if (done.has(key)) continue
    done.add(key)
    if (here.room === to.room) {
      const end = inRoom(here.room, at, to.at)
      if (end !== null && (best === null || here.way.length + end.length < best.length)) best = joined(here.way, end)
    }
    for (const [door, behind] of pairs) {
      if (door.room !== here.room || behind === null) continue
      const way = inRoom(here.room, at, door.at)
      if (way === null) continue
      const through = { points: [door.at, behind.at], length: distance(door.at, behind.at) }
      open.push({ room: behind.room, way: joined(joined(here.way, way), through) })
    }
  }
  return best
}

function joined(first: Way, then: Way): Way {
  return { points: [...first.points, ...then.points.slice(1)], length: first.length + then.length }
}
