/**
 * Rooms without a place put together from their doorways, as a proposal: two doorways that lead to each other are one
 * hole, the walls about it stand back to back with their thickness between them, and so each room stands against one
 * that stands already. What else that makes meet, or miss, is told with it; a room that would lie on another is not put.
 * Building coordinates, mm.
 */
import type { Point } from '../drawing/room-plan.ts'
import { type DoorPair, doorPairs, type Hole, type LooseRoom } from './door-pairs.ts'
import { overlap } from './overlap.ts'
import { type Place, toBuilding, wholeTurn } from './place.ts'
import { UNMEASURED } from './poche.ts'

/** A doorway of the room and the one it meets there. */
export interface Tie {
  readonly opening: string
  readonly other: string
  /** The room it leads to. */
  readonly to: string
  /** How far the two are from being one hole; 0 for the doorway that the room was put by. */
  readonly misses: number
  readonly fits: boolean
  readonly widths: readonly [number, number]
  /** Between the two faces; assumed where neither wall was measured. */
  readonly thickness: number
  readonly assumed: boolean
  /** The two walls are said to be this thick, and differ. */
  readonly differ: readonly [number, number] | null
}

export interface PutRoom {
  readonly room: string
  readonly place: Place
  /** None of the room that the others are put against, where nothing stood before. */
  readonly ties: readonly Tie[]
}

export type Why =
  | { readonly kind: 'no doorway' }
  | { readonly kind: 'none as wide'; readonly to: string; readonly width: number }
  | { readonly kind: 'in the way'; readonly of: string }
  | { readonly kind: 'apart' }

export interface Together {
  readonly put: readonly PutRoom[]
  readonly left: readonly { readonly room: string; readonly why: Why }[]
}

/** What two tapes make of one wall and one doorway may differ by this, and they still meet; mm, from memory. */
const MEETS = 150
/** Degrees that walls may be off each other for the same reason; from memory. */
const ASKEW = 0.5

interface Stood {
  readonly room: LooseRoom
  readonly place: Place
  readonly corners: readonly Point[]
}

interface Try extends PutRoom {
  readonly blocked: string | null
  readonly meets: number
  readonly misses: number
}

/**
 * @param rooms of one storey; those that have a place stay where they are
 * @param without rooms that are to be left as they are: none is put against them unless they stand
 */
export function putTogether(rooms: readonly LooseRoom[], without: ReadonlySet<string> = new Set()): Together {
  const { pairs, alone } = doorPairs(rooms)
  const stood = new Map<string, Stood>()
  for (const room of rooms) if (room.at !== null) stood.set(room.id, standing(room, asItStands))
  const waiting = new Map(rooms.flatMap(room => (room.at === null && !without.has(room.id) ? [[room.id, room]] : [])))
  const put: PutRoom[] = []
  const stand = (each: PutRoom, room: LooseRoom) => {
    stood.set(room.id, standing(room, each.place))
    waiting.delete(room.id)
    put.push({ room: each.room, place: each.place, ties: each.ties })
  }
  if (stood.size === 0) {
    const first = mostDoors([...waiting.values()], pairs)
    if (first !== null) stand({ room: first.id, place: { at: [0, 0], turn: 0 }, ties: [] }, first)
  }
  for (;;) {
    const best = [...waiting.values()].flatMap(room => bestOf(room, pairs, stood) ?? []).sort(better)[0]
    const room = best === undefined ? undefined : waiting.get(best.room)
    if (best === undefined || room === undefined || best.blocked !== null) break
    stand(best, room)
  }
  const left = [...waiting.values()].map(room => ({ room: room.id, why: whyOf(room, pairs, alone, stood) }))
  return { put, left }
}

/** Walls of a room with a place are in the building's coordinates already. */
const asItStands: Place = { at: [0, 0], turn: 0 }

function standing(room: LooseRoom, place: Place): Stood {
  return { room, place, corners: room.walls.map(wall => toBuilding(place, wall.from)) }
}

/** The room that most doorways lead to or from; the first of those that have as many. */
function mostDoors(rooms: readonly LooseRoom[], pairs: readonly DoorPair[]): LooseRoom | null {
  let best: LooseRoom | null = null
  let most = 0
  for (const room of rooms) {
    const doors = pairs.filter(({ here, there }) => here.room === room.id || there.room === room.id).length
    if (doors > most) [best, most] = [room, doors]
  }
  return best
}

/** Nothing in the way first, then what makes most doorways meet, then what makes them meet best. */
function better(a: Try, b: Try): number {
  return Number(a.blocked !== null) - Number(b.blocked !== null) || b.meets - a.meets || a.misses - b.misses
}

/** Pairs of the room with one that stands, the room's own doorway first. */
function facingPairs(room: LooseRoom, pairs: readonly DoorPair[], stood: ReadonlyMap<string, Stood>): DoorPair[] {
  const seen = new Set<string>()
  return pairs
    .flatMap(({ here, there }) =>
      here.room === room.id ? [{ here, there }] : there.room === room.id ? [{ here: there, there: here }] : [],
    )
    .filter(({ here, there }) => {
      const key = `${here.opening.id} ${there.opening.id}`
      if (!stood.has(there.room) || seen.has(key)) return false
      seen.add(key)
      return true
    })
}

function bestOf(room: LooseRoom, pairs: readonly DoorPair[], stood: ReadonlyMap<string, Stood>): Try | null {
  const own = facingPairs(room, pairs, stood)
  return own.map(by => tryAt(room, placeBy(by, stood), own, stood)).sort(better)[0] ?? null
}

/** Where a hole is: its middle, which way its wall runs and which way is out of its room. */
function holeAt({ wall, opening }: Hole, place: Place) {
  const [from, to] = [toBuilding(place, wall.from), toBuilding(place, wall.to)]
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  const far = ((opening.x + opening.width / 2) / wall.length) * run
  return {
    middle: [from[0] + along[0] * far, from[1] + along[1] * far] as Point,
    along,
    out: [along[1], -along[0]] as Point,
    heading: (Math.atan2(along[1], along[0]) * 180) / Math.PI,
  }
}

function thicknessOf(here: Hole, there: Hole): number {
  return there.wall.thickness ?? here.wall.thickness ?? UNMEASURED
}

/** Walls back to back about the hole, their middles on one axis. */
function placeBy({ here, there }: DoorPair, stood: ReadonlyMap<string, Stood>): Place {
  const other = holeAt(there, stood.get(there.room)?.place ?? asItStands)
  const own = holeAt(here, asItStands)
  const turn = wholeTurn(Math.round((other.heading + 180 - own.heading) * 1e4) / 1e4)
  const [x, y] = toBuilding({ at: [0, 0], turn }, own.middle)
  const thick = thicknessOf(here, there)
  const tenth = (mm: number) => Math.round(mm * 10) / 10 || 0
  return {
    at: [tenth(other.middle[0] + other.out[0] * thick - x), tenth(other.middle[1] + other.out[1] * thick - y)],
    turn,
  }
}

function tryAt(room: LooseRoom, place: Place, pairs: readonly DoorPair[], stood: ReadonlyMap<string, Stood>): Try {
  const all = pairs.map(pair => tieOf(pair, place, stood))
  // Of doorways that may each be several, the nearest one is meant.
  const ties = [...Map.groupBy(all, tie => tie.opening).values()].map(own =>
    own.reduce((best, tie) => (tie.misses < best.misses ? tie : best)),
  )
  const { corners } = standing(room, place)
  const blocked = [...stood.values()].find(each => overlap(corners, each.corners))
  return {
    room: room.id,
    place,
    ties,
    blocked: blocked?.room.id ?? null,
    meets: ties.filter(tie => tie.fits).length,
    misses: ties.reduce((sum, tie) => sum + tie.misses, 0),
  }
}

function tieOf({ here, there }: DoorPair, place: Place, stood: ReadonlyMap<string, Stood>): Tie {
  const other = holeAt(there, stood.get(there.room)?.place ?? asItStands)
  const own = holeAt(here, place)
  const [x, y]: Point = [own.middle[0] - other.middle[0], own.middle[1] - other.middle[1]]
  const thickness = thicknessOf(here, there)
  const misses = Math.hypot(x * other.along[0] + y * other.along[1], x * other.out[0] + y * other.out[1] - thickness)
  const askew = Math.abs(wholeTurn(own.heading - other.heading) - 180)
  const [mine, theirs] = [here.wall.thickness, there.wall.thickness]
  return {
    opening: here.opening.id,
    other: there.opening.id,
    to: there.room,
    // Places are kept to 0.1 mm.
    misses: misses < 0.2 ? 0 : misses,
    fits: misses <= MEETS && askew <= ASKEW,
    widths: [here.opening.width, there.opening.width],
    thickness,
    assumed: mine === null && theirs === null,
    differ: mine !== null && theirs !== null && mine !== theirs ? [mine, theirs] : null,
  }
}

function whyOf(
  room: LooseRoom,
  pairs: readonly DoorPair[],
  alone: ReturnType<typeof doorPairs>['alone'],
  stood: ReadonlyMap<string, Stood>,
): Why {
  const best = bestOf(room, pairs, stood)
  if (best !== null && best.blocked !== null) return { kind: 'in the way', of: best.blocked }
  const lonely = alone.find(({ here }) => here.room === room.id)
  if (lonely !== undefined) return { kind: 'none as wide', to: lonely.to, width: lonely.here.opening.width }
  const leads = pairs.some(({ here, there }) => here.room === room.id || there.room === room.id)
  return leads ? { kind: 'apart' } : { kind: 'no doorway' }
}
