/**
 * The key plan as lines: rooms brought onto one sheet with y downwards, each wall cut at its doors and passages, with
 * the normal that points into the room. Rooms that were measured each from their own corner are set below one another.
 */
import type { Output } from '../../src/contract/contract.ts'

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
  readonly middle: Point
  readonly walls: readonly WallLine[]
  /** From the last wall's end to the first one's beginning, where the room is typed by half. */
  readonly closing: readonly [Point, Point] | null
}

export interface PlanDrawing {
  readonly width: number
  readonly height: number
  readonly rooms: readonly RoomLines[]
}

interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

function boxOf(points: readonly Point[]): Box {
  const xs = points.map(point => point[0])
  const ys = points.map(point => point[1])
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) }
}

function overlap(a: Box, b: Box): boolean {
  // Neighbours share a wall; only a real overlap counts.
  const slack = 300
  return a.left + slack < b.right && b.left + slack < a.right && a.top + slack < b.bottom && b.top + slack < a.bottom
}

/** Twice the signed area; positive where the outline runs clockwise with y downwards. */
function turning(points: readonly Point[]): number {
  return points.reduce((sum, [x, y], at) => {
    const [nextX, nextY] = points[(at + 1) % points.length] ?? [x, y]
    return sum + x * nextY - nextX * y
  }, 0)
}

function along(from: Point, to: Point, share: number): Point {
  return [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]
}

function wallLine(wall: PlanWall, move: (point: Point) => Point): WallLine {
  const from = move(wall.from)
  const to = move(wall.to)
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const gaps = wall.openings
    .filter(opening => opening.kind === 'door' || opening.kind === 'passage')
    .map(opening => [opening.x / wall.length, (opening.x + opening.width) / wall.length] as const)
    .sort((a, b) => a[0] - b[0])
  const solid: (readonly [Point, Point])[] = []
  let at = 0
  for (const [start, end] of gaps) {
    if (start > at) solid.push([along(from, to, at), along(from, to, Math.min(1, start))])
    at = Math.max(at, end)
  }
  if (at < 1) solid.push([along(from, to, at), to])
  return { wall, from, to, inward: [-(to[1] - from[1]) / length, (to[0] - from[0]) / length], solid }
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
  // Walls run to the right as seen from inside, which is clockwise on the plan: if it isn't, y points upwards.
  const [first] = drawn
  const flip = first !== undefined && turning(outlineWalls(first).map(wall => wall.from)) < 0 ? -1 : 1
  const turned = (point: Point): Point => [point[0], point[1] * flip]
  const boxes = drawn.map(room => boxOf(room.walls.flatMap(wall => [turned(wall.from), turned(wall.to)])))
  const apart = boxes.every((box, at) => boxes.every((other, to) => to <= at || !overlap(box, other)))
  let below = 0
  const shifts = boxes.map((box): Point => {
    if (apart) return [0, 0]
    const shift: Point = [-box.left, below - box.top]
    below += box.bottom - box.top + 900
    return shift
  })
  const placed = drawn.map((room, at) => {
    const [dx, dy] = shifts[at] ?? [0, 0]
    const move = (point: Point): Point => [point[0] + dx, point[1] * flip + dy]
    const box = boxOf(room.walls.flatMap(wall => [move(wall.from), move(wall.to)]))
    const closing = closingOf(outlineWalls(room))
    return {
      id: room.id,
      name: room.name,
      middle: [(box.left + box.right) / 2, (box.top + box.bottom) / 2] as const,
      walls: room.walls.map(wall => wallLine(wall, move)),
      closing: closing === null ? null : ([move(closing[0]), move(closing[1])] as const),
    }
  })
  const whole = boxOf(
    placed.length === 0 ? [[0, 0]] : placed.flatMap(room => room.walls.flatMap(wall => [wall.from, wall.to])),
  )
  const shift = (point: Point): Point => [point[0] - whole.left, point[1] - whole.top]
  return {
    width: whole.right - whole.left,
    height: whole.bottom - whole.top,
    rooms: placed.map(room => ({
      ...room,
      middle: shift(room.middle),
      closing: room.closing === null ? null : ([shift(room.closing[0]), shift(room.closing[1])] as const),
      walls: room.walls.map(line => ({
        ...line,
        from: shift(line.from),
        to: shift(line.to),
        solid: line.solid.map(([a, b]) => [shift(a), shift(b)] as const),
      })),
    })),
  }
}
