/**
 * The key plan as lines: each wall cut at its doors and passages, with the normal that points into the room. Where its
 * rooms are drawn the catalogue answers.
 */
import type { Output } from '../../src/contract/contract.ts'
import { pointAlong, solidStretches } from '../../src/drawing/stretches.ts'
import { boxOf } from '../../src/plan/place.ts'

type Rooms = Output<'room.plan'>['rooms']
type PlanRoom = Rooms[number]
type PlanWall = PlanRoom['walls'][number]
type Point = readonly [number, number]

export interface WallLine {
  readonly wall: PlanWall
  readonly from: Point
  readonly to: Point
  /** Unit vector from the wall into the room. */
  readonly inward: Point
  /** The solid stretches. */
  readonly solid: readonly (readonly [Point, Point])[]
}

export interface RoomLines {
  readonly id: string
  readonly name: string
  readonly number: string
  readonly middle: Point
  /** How wide it is on the page, mm. */
  readonly wide: number
  readonly walls: readonly WallLine[]
  /** From the last wall's end to the first one's beginning, where the room is typed by half. */
  readonly closing: readonly [Point, Point] | null
}

export interface PlanDrawing {
  readonly width: number
  readonly height: number
  readonly rooms: readonly RoomLines[]
}

function wallLine(wall: PlanWall, move: (point: Point) => Point): WallLine {
  const drawn = { from: move(wall.from), to: move(wall.to), length: wall.length }
  const { from, to } = drawn
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return {
    wall,
    from,
    to,
    inward: [-(to[1] - from[1]) / length, (to[0] - from[0]) / length],
    solid: solidStretches(wall.length, wall.openings).map(([a, b]) => [pointAlong(drawn, a), pointAlong(drawn, b)]),
  }
}

/** Shorter than this it is a gap that was shared out, or none. mm on the plan. */
const CLOSED = 1

function closingOf(walls: readonly PlanWall[]): readonly [Point, Point] | null {
  const [first, last] = [walls[0], walls.at(-1)]
  if (first === undefined || last === undefined || walls.length < 2) return null
  const open = Math.hypot(last.to[0] - first.from[0], last.to[1] - first.from[1]) > CLOSED
  return open ? [last.to, first.from] : null
}

/** The walls that go round the room; partitions stand in it. */
function outlineWalls({ walls }: PlanRoom): readonly PlanWall[] {
  return walls.filter(wall => !wall.partition)
}

export function planDrawing(rooms: Rooms): PlanDrawing {
  const drawn = rooms.filter(room => outlineWalls(room).length > 0)
  const nothing = { left: 0, top: 0, right: 0, bottom: 0 }
  const whole = boxOf(drawn.flatMap(room => room.walls.flatMap(wall => [wall.from, wall.to]))) ?? nothing
  const move = ([x, y]: Point): Point => [x - whole.left, y - whole.top]
  return {
    width: whole.right - whole.left,
    height: whole.bottom - whole.top,
    rooms: drawn.map(room => {
      const box = boxOf(room.walls.flatMap(wall => [move(wall.from), move(wall.to)])) ?? nothing
      const closing = closingOf(outlineWalls(room))
      return {
        id: room.id,
        name: room.name,
        number: room.number,
        wide: box.right - box.left,
        middle: [(box.left + box.right) / 2, (box.top + box.bottom) / 2] as const,
        walls: room.walls.map(wall => wallLine(wall, move)),
        closing: closing === null ? null : ([move(closing[0]), move(closing[1])] as const),
      }
    }),
  }
}
