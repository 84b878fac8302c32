/**
 * Snapping while a wall of a room is moved along its normal or turned: into one line with walls that are there, back to
 * back with the next room's, a neighbour as long as another wall or a round figure; at a right angle with a neighbour, in
 * the direction of another wall, level or upright on the page. Each hold says what it is. Building coordinates, mm.
 */
import type { Point } from '../drawing/room-plan.ts'
import type { BendWall } from './bend.ts'
import { headingOf } from './draft.ts'
import { UNMEASURED } from './poche.ts'

export interface OtherWall {
  /** As the words call it: with its room's name where it is another's. */
  readonly called: string
  readonly sameRoom: boolean
  readonly from: Point
  readonly to: Point
  readonly thickness: number | null
}

export interface WallHold {
  /** mm outwards, or degrees clockwise. */
  readonly by: number
  readonly says: string
  /** What is exact then, to be drawn. */
  readonly line: readonly [Point, Point] | null
}

/** Walls this far from parallel still count as parallel: the sine of a tenth of a degree. From memory. */
const PARALLEL = Math.sin(Math.PI / 1800)

interface Moved {
  readonly from: Point
  readonly to: Point
  readonly thickness: number | null
}

interface ShiftQuestion {
  readonly wall: Moved
  readonly others: readonly OtherWall[]
  /** The room's walls as they bend, and which of them moves. */
  readonly walls: readonly BendWall[]
  readonly index: number
  /** How far the hand has gone outwards. */
  readonly by: number
  /** mm on the plan; 0 holds nothing. */
  readonly reach: number
  /** Steps of round figures, mm. */
  readonly grid: number
  readonly say: (mm: number) => string
}

/** Where a wall that is moved holds; null where nothing is near. */
export function snapShift(question: ShiftQuestion): WallHold | null {
  const { by, reach } = question
  if (reach <= 0) return null
  const lines = nearest(
    question.others.flatMap(other => inLine(question, other)),
    by,
    reach,
  )
  return lines ?? nearest(alike(question), by, reach) ?? nearest(round(question), by, reach)
}

function nearest(holds: readonly WallHold[], by: number, reach: number): WallHold | null {
  const near = holds.filter(hold => Math.abs(hold.by - by) <= reach)
  return near.sort((a, b) => Math.abs(a.by - by) - Math.abs(b.by - by))[0] ?? null
}

function inLine({ wall, say }: ShiftQuestion, other: OtherWall): readonly WallHold[] {
  const run = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1])
  const their = Math.hypot(other.to[0] - other.from[0], other.to[1] - other.from[1])
  if (run < 1 || their < 1) return []
  const along: Point = [(wall.to[0] - wall.from[0]) / run, (wall.to[1] - wall.from[1]) / run]
  const way: Point = [(other.to[0] - other.from[0]) / their, (other.to[1] - other.from[1]) / their]
  if (Math.abs(along[0] * way[1] - along[1] * way[0]) > PARALLEL) return []
  const apart = (other.from[0] - wall.from[0]) * along[1] - (other.from[1] - wall.from[1]) * along[0]
  const line = [other.from, other.to] as const
  const facing = along[0] * way[0] + along[1] * way[1] < 0
  if (!facing) return [{ by: apart, says: `in line with ${other.called}`, line }]
  if (other.sameRoom) return []
  const known = wall.thickness ?? other.thickness
  const between = known === null ? ', thickness not measured' : `, ${say(known)} between`
  return [{ by: apart - (known ?? UNMEASURED), says: `back to back with ${other.called}${between}`, line }]
}

/** The neighbours, each with how much longer it grows for each millimetre outwards. */
function neighbours({ walls, index }: ShiftQuestion) {
  const count = walls.length
  const [before, own, after] = [walls[(index + count - 1) % count], walls[index], walls[(index + 1) % count]]
  if (before === undefined || own === undefined || after === undefined) return []
  const grows = (angle: number) => 1 / Math.sin((angle * Math.PI) / 180)
  return [
    { neighbour: before, grows: grows(before.angle) },
    { neighbour: after, grows: grows(own.angle) },
  ].filter(one => Math.abs(one.grows) < 10)
}

function alike(question: ShiftQuestion): readonly WallHold[] {
  return neighbours(question).flatMap(({ neighbour, grows }) =>
    question.walls
      .filter((other, at) => other !== neighbour && at !== question.index)
      .map(other => ({
        by: (other.length - neighbour.length) / grows,
        says: `${neighbour.name} as long as ${other.name}`,
        line: null,
      })),
  )
}

function round(question: ShiftQuestion): readonly WallHold[] {
  const { by, grid, say } = question
  return neighbours(question).map(({ neighbour, grows }) => {
    const length = Math.round((neighbour.length + by * grows) / grid) * grid
    return { by: (length - neighbour.length) / grows, says: `${neighbour.name} ${say(length)} long`, line: null }
  })
}

interface TurnQuestion {
  readonly wall: Moved
  readonly others: readonly OtherWall[]
  readonly walls: readonly BendWall[]
  readonly index: number
  /** How far the hand has turned, degrees clockwise on the page. */
  readonly by: number
  /** Degrees; 0 holds nothing. */
  readonly reach: number
}

/** Where a wall that is turned holds; null where nothing is near. */
export function snapTurn({ wall, others, walls, index, by, reach }: TurnQuestion): WallHold | null {
  if (reach <= 0) return null
  const count = walls.length
  const [before, own, after] = [walls[(index + count - 1) % count], walls[index], walls[(index + 1) % count]]
  const heading = headingOf(wall.from, wall.to)
  const square: WallHold[] = []
  if (before !== undefined)
    square.push({ by: before.angle - 90, says: `at a right angle with ${before.name}`, line: null })
  if (own !== undefined && after !== undefined)
    square.push({ by: 90 - own.angle, says: `at a right angle with ${after.name}`, line: null })
  const along = others.map(other => ({
    by: half(headingOf(other.from, other.to) - heading),
    says: `in the direction of ${other.called}`,
    line: [other.from, other.to] as const,
  }))
  const page: WallHold[] = [
    { by: half(-heading), says: 'level on the page', line: null },
    { by: half(90 - heading), says: 'upright on the page', line: null },
  ]
  const held = nearest(square, by, reach) ?? nearest(along, by, reach) ?? nearest(page, by, reach)
  return held === null ? null : { ...held, by: Math.round(held.by * 1e6) / 1e6 }
}

/** The same direction either way round: between −90 and 90. */
function half(degrees: number): number {
  const turn = ((degrees % 180) + 180) % 180
  return turn > 90 ? turn - 180 : turn
}
