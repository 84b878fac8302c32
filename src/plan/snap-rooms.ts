/**
 * Snapping while a room is carried over the plan. It is computed from where the room stood and how far the hand has
 * gone, never from the last frame. Walls go back to back with the thickness between them, or into one line; doorways
 * line up; corners come level. At most one line along each of two directions holds, and each says what it is.
 */
import type { PlanWallRow } from '../contract/areas/plan.ts'
import type { Point } from '../drawing/room-plan.ts'
import { UNMEASURED } from './poche.ts'

export interface SnapRoom {
  readonly name: string
  readonly walls: readonly PlanWallRow[]
}

export interface Hold {
  /** The room is carried by this along `normal` to make it exact, mm. */
  readonly shift: number
  readonly normal: Point
  readonly kind: 'back to back' | 'in line' | 'doorways' | 'corners'
  readonly says: string
  /** What is exact then, to be drawn. */
  readonly line: readonly [Point, Point]
}

export interface RoomSnap {
  readonly by: Point
  readonly holds: readonly Hold[]
}

/** Walls this far from parallel still count as parallel, radians. From memory: a tenth of a degree reads as one line. */
const PARALLEL = 0.1 * (Math.PI / 180)

interface Line {
  readonly from: Point
  readonly to: Point
  readonly along: Point
  readonly out: Point
  readonly run: number
}

function lineOf(wall: PlanWallRow, by: Point): Line {
  const from: Point = [wall.from[0] + by[0], wall.from[1] + by[1]]
  const to: Point = [wall.to[0] + by[0], wall.to[1] + by[1]]
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  return { from, to, along, out: [along[1], -along[0]], run }
}

const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1]
const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]]

/** The middles of the doors and passages of a wall, along the plan's line. */
function ways(wall: PlanWallRow, line: Line): readonly Point[] {
  return wall.openings
    .filter(({ kind }) => kind === 'door' || kind === 'passage')
    .map(({ x, width }) => {
      const share = ((x + width / 2) / wall.length) * line.run
      return [line.from[0] + line.along[0] * share, line.from[1] + line.along[1] * share]
    })
}

/**
 * @param by how far the hand has gone, mm
 * @param reach mm on the plan; from pixels by the view's scale. 0 never moves anything.
 * @param say writes a thickness for the words
 */
export function snapRoom(
  room: SnapRoom,
  by: Point,
  others: readonly SnapRoom[],
  reach: number,
  say: (mm: number) => string,
): RoomSnap {
  if (reach <= 0) return { by, holds: [] }
  const found: Hold[] = []
  for (const wall of room.walls) {
    const mine = lineOf(wall, by)
    for (const other of others) {
      for (const their of other.walls) found.push(...between(wall, mine, other.name, their, reach, say))
    }
  }
  found.sort((a, b) => weight(a) - weight(b))
  const [first] = found
  if (first === undefined) return { by, holds: [] }
  const second = found.find(each => Math.abs(cross(first.normal, each.normal)) > 0.5)
  const to = second === undefined ? along(by, first) : both(by, first, second)
  return { by: to, holds: second === undefined ? [first] : [first, second] }
}

/** Back to back is what a hand mostly wants, so it wins over a corner that is a little nearer. */
const weights = { 'back to back': 0.5, doorways: 0.7, 'in line': 1, corners: 1 } as const
const weight = (hold: Hold) => Math.abs(hold.shift) * weights[hold.kind]
const cross = (a: Point, b: Point) => a[0] * b[1] - a[1] * b[0]

function along(by: Point, { normal, shift }: Hold): Point {
  return [by[0] + normal[0] * shift, by[1] + normal[1] * shift]
}

/** The one step that makes both exact: its parts along both normals are the two shifts. */
function both(by: Point, a: Hold, b: Hold): Point {
  const det = cross(a.normal, b.normal)
  return [
    by[0] + (a.shift * b.normal[1] - b.shift * a.normal[1]) / det,
    by[1] + (b.shift * a.normal[0] - a.shift * b.normal[0]) / det,
  ]
}

function between(
  wall: PlanWallRow,
  mine: Line,
  name: string,
  their: PlanWallRow,
  reach: number,
  say: (mm: number) => string,
): readonly Hold[] {
  const other = lineOf(their, [0, 0])
  if (Math.abs(cross(mine.along, other.along)) > PARALLEL) return []
  const facing = dot(mine.along, other.along) < 0
  const apart = dot(minus(other.from, mine.from), mine.out)
  const holds: Hold[] = []
  const called = `${name}, ${their.name}`
  const near = overlap(mine, other) > -reach
  const thick = wall.thickness ?? their.thickness ?? UNMEASURED
  const gap = apart - thick
  if (facing && near && Math.abs(gap) <= reach) {
    const known = wall.thickness ?? their.thickness
    holds.push({
      shift: gap,
      normal: mine.out,
      kind: 'back to back',
      says: `back to back with ${called}${known === null ? ', thickness not measured' : `, ${say(known)} between`}`,
      line: [other.from, other.to],
    })
  }
  // Its face in one line with theirs: rooms along one front.
  if (!facing && Math.abs(apart) <= reach) {
    holds.push({
      shift: apart,
      normal: mine.out,
      kind: 'in line',
      says: `in line with ${called}`,
      line: [other.from, other.to],
    })
  }
  if (facing && near && Math.abs(gap) <= reach * 4) holds.push(...level(wall, mine, their, other, called, reach))
  return holds
}

/** Along two walls that stand back to back: doorways first, then corners. */
function level(
  wall: PlanWallRow,
  mine: Line,
  their: PlanWallRow,
  other: Line,
  called: string,
  reach: number,
): readonly Hold[] {
  const pairs: (readonly [Point, Point, Hold['kind'], string])[] = []
  for (const a of ways(wall, mine))
    for (const b of ways(their, other)) pairs.push([a, b, 'doorways', `doorway before the doorway of ${called}`])
  pairs.push([mine.from, other.to, 'corners', `corner level with ${called}`])
  pairs.push([mine.to, other.from, 'corners', `corner level with ${called}`])
  return pairs.flatMap(([a, b, kind, says]) => {
    const shift = dot(minus(b, a), mine.along)
    return Math.abs(shift) > reach ? [] : [{ shift, normal: mine.along, kind, says, line: [b, a] as const }]
  })
}

/** How long two parallel lines lie beside one another; below 0 the gap between them. */
function overlap(a: Line, b: Line): number {
  const [p, q] = [dot(minus(b.from, a.from), a.along), dot(minus(b.to, a.from), a.along)]
  return Math.min(a.run, Math.max(p, q)) - Math.max(0, Math.min(p, q))
}
