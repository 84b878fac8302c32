/** A room of the plan ready to be drawn: its walls in the building's coordinates, its lines, and where its name stands. */
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import type { Point } from '../drawing/room-plan.ts'
import { bandOf, footprintOf } from './footprint.ts'
import { type Box, boxOf, origin, type Place, standAside, toBuilding, toRoom, wholeTurn } from './place.ts'
import { linesOf, type RoomLines } from './poche.ts'
import { facesOf, type PartitionFace, type StandLines, standLines } from './stands-drawn.ts'
import { middleOf } from './within.ts'

export interface DrawnRoom extends Omit<PlanRoomRow, 'at' | 'turn'> {
  /** Where it is drawn; beside the building while it has no place. */
  readonly place: Place
  readonly placed: boolean
  readonly corners: readonly Point[]
  readonly lines: RoomLines
  readonly stands: StandLines
  /** Of its partitions. */
  readonly faces: readonly PartitionFace[]
  /** Where its name stands, and how much room there is beside it. */
  readonly middle: { readonly at: Point; readonly wide: number }
}

/** The room's own place; that of its own axes while it has none. */
export function placeOf(room: Pick<PlanRoomRow, 'at' | 'turn'>): Place {
  return room.at === null ? origin : { at: room.at, turn: room.turn }
}

/** All of a room once it stands somewhere else: walls, partitions and what stands on its floor. */
export function roomAt(room: PlanRoomRow, from: Place, to: Place): PlanRoomRow {
  const put = (point: Point): [number, number] => [...toBuilding(to, toRoom(from, point))]
  const turned = (turn: number) => wholeTurn(turn + to.turn - from.turn)
  const ends = <T extends { readonly from: Point; readonly to: Point }>(each: T) => ({
    ...each,
    from: put(each.from),
    to: put(each.to),
  })
  return {
    ...room,
    walls: room.walls.map(ends),
    partitions: room.partitions.map(each => ({ ...ends(each), angle: turned(each.angle) })),
    things: room.things.map(each => ({ ...each, at: put(each.at), turn: turned(each.turn) })),
    tracks: room.tracks.map(ends),
  }
}

export function cornersOf(room: Pick<PlanRoomRow, 'walls' | 'closed'>): readonly Point[] {
  const last = room.walls.at(-1)
  const begins = room.walls.map(wall => wall.from)
  return room.closed || last === undefined ? begins : [...begins, last.to]
}

function drawn(room: PlanRoomRow, place: Place): DrawnRoom {
  const { at: _, turn: __, ...rest } = roomAt(room, placeOf(room), place)
  const corners = cornersOf(rest)
  return {
    ...rest,
    place,
    placed: room.at !== null,
    corners,
    lines: linesOf(rest),
    stands: standLines(rest),
    faces: rest.partitions.flatMap(facesOf),
    middle: middleOf(corners, standingBoxes(rest), nameHigh),
  }
}

/** Name, area and zones below one another, as seen from where all of a room is seen. mm. */
export const nameHigh = 1500

/** What stands on its floor: its name makes way for that. */
function standingBoxes(room: Pick<PlanRoomRow, 'things' | 'partitions'>): readonly Box[] {
  const shapes = [
    ...room.things.map(({ at: [x, y], ...thing }) => footprintOf({ x, y, ...thing })),
    ...room.partitions.map(({ from, to, thickness }) => bandOf([from, to], thickness)),
  ]
  return shapes.flatMap(shape => boxOf(shape) ?? [])
}

/** Where its name stands beside what else is written on its floor. @param high of the lines of its name, mm */
export function middleBeside(room: DrawnRoom, written: readonly Box[], high: number): DrawnRoom['middle'] {
  return middleOf(room.corners, [...standingBoxes(room), ...written], high)
}

/** A room whose walls are drawn elsewhere than they were. */
export function bentRoom(room: DrawnRoom, walls: Readonly<DrawnRoom['walls']>): DrawnRoom {
  const bent = { ...room, walls: [...walls] }
  const corners = cornersOf(bent)
  return { ...bent, corners, lines: linesOf(bent), middle: middleOf(corners, standingBoxes(room), nameHigh) }
}

/** What stands aside breaks into rows of this, where the building is narrower. mm; of the drawing alone. */
const ASIDE = 30_000

/**
 * All rooms of one storey, where they are drawn. An answer is new as a whole after every edit, so what was drawn is
 * kept by its text: a room that did not change is the same object again and costs nothing.
 */
export function drawRooms(
  rooms: readonly PlanRoomRow[],
  known: Map<string, { readonly text: string; readonly room: DrawnRoom }>,
): readonly DrawnRoom[] {
  const placed = rooms.filter(room => room.at !== null)
  const building = boxOf(placed.flatMap(cornersOf))
  const waiting = rooms.filter(room => room.at === null && room.walls.length > 0)
  const boxes = waiting.map(room => boxOf(cornersOf(room)) ?? emptyBox)
  const wide = Math.max(ASIDE, building === null ? 0 : building.right - building.left)
  const aside = new Map(standAside(boxes, building, wide).map((at, index) => [waiting[index]?.id, at]))
  return rooms
    .filter(room => room.walls.length > 0)
    .map(room => {
      const place: Place = room.at === null ? { at: aside.get(room.id) ?? [0, 0], turn: 0 } : placeOf(room)
      const text = JSON.stringify([room, place])
      const kept = known.get(room.id)
      if (kept?.text === text) return kept.room
      const made = drawn(room, place)
      known.set(room.id, { text, room: made })
      return made
    })
}

const emptyBox: Box = { left: 0, top: 0, right: 0, bottom: 0 }
