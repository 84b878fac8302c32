/**
 * A room's outline from what a tape and an angle gauge give: the lengths of its walls, from left to right as seen from
 * inside, and the interior angle at each wall's right end. Walking round, the measures never quite come back to where
 * they began; the gap is told, and for drawing it is shared over the walls by their lengths (the compass rule of plane
 * surveying), so that the plan closes without hiding the number.
 *
 * Plan coordinates: millimetres, x to the right and y down the page; the first wall runs to the right from 0, 0.
 */
import { clean } from '../geometry/clean.ts'
import { areaOf, crossing } from '../plan/outline-shape.ts'

type Point = readonly [number, number]

export interface MeasuredWall {
  readonly length: number
  /** Interior angle at the wall's right end in degrees; null where nobody measured it. */
  readonly angle: number | null
  /** What the note calls it; its number in the order where it has none. */
  readonly name?: string | undefined
}

export interface Outline {
  /** Where each wall begins; one more than the walls when the outline is open. */
  readonly corners: readonly (readonly [number, number])[]
  /** False while one or two walls make no room. */
  readonly closed: boolean
  /** The gap is within the tolerance, and no wall crosses another. */
  readonly closes: boolean
  /** The first two walls that cross, of an outline that comes round; null where none do. */
  readonly crosses: readonly [number, number] | null
  /** Millimetres between the end of the last wall and the beginning of the first, before it is shared out. */
  readonly gap: number
  /** Square metres within the drawn outline; 0 when open. */
  readonly area: number
  /** Walls that run most nearly along the gap of an outline that does not close, with what each would be too long by. */
  readonly suspects: readonly { readonly wall: number; readonly over: number }[]
  /** A sentence for people. */
  readonly note: string
}

/**
 * @param walls at least one, lengths above 0.
 * @param tolerance millimetres of gap that count as closing (house rule `closesWithin`).
 * @param say writes the gap for the note; in millimetres where left out.
 */
export function outlineOf(
  walls: readonly MeasuredWall[],
  tolerance: number,
  say: (mm: number) => string = inMillimetres,
): Outline {
  const angles = withUnknownAngles(walls)
  const free = walk(walls, angles)
  const end = free.at(-1) ?? [0, 0]
  if (walls.length < 3) {
    return {
      corners: free,
      closed: false,
      closes: false,
      crosses: null,
      gap: 0,
      area: 0,
      suspects: [],
      note: 'Add walls until they come round to the first.',
    }
  }
  const gap = Math.hypot(end[0], end[1])
  const total = walls.reduce((sum, wall) => sum + wall.length, 0)
  let walked = 0
  const corners = walls.map((wall, index) => {
    const [x, y] = free[index] ?? [0, 0]
    const share = walked / total
    walked += wall.length
    return [clean(x - end[0] * share), clean(y - end[1] * share)] as const
  })
  const round = gap <= tolerance
  // One that does not come round is told of that first.
  const crosses = round ? crossing(corners) : null
  const closes = round && crosses === null
  const suspects = round || turnNote(walls) !== null ? [] : alongGap(walls, free, gap)
  return {
    corners,
    closed: true,
    closes,
    crosses,
    gap,
    area: Math.abs(areaOf(corners)) / 1e6,
    suspects,
    note:
      crosses === null
        ? noteOf(walls, gap, closes, suspects, say)
        : crossesSaid(calledWall(walls, crosses[0]), calledWall(walls, crosses[1])),
  }
}

const calledWall = (walls: readonly MeasuredWall[], at: number) => walls[at]?.name || `wall ${at + 1}`

/** Of two walls by their names. */
export function crossesSaid(one: string, other: string): string {
  return `Drawn by these measures ${one} crosses ${other}. Look for a corner or a length that is far off.`
}

/** Beyond this share of all its walls a gap is no error of measuring: a wall is missing still. From memory. */
const HALF_TYPED = 0.05

/**
 * The corners of a room that is typed as far as this, one more than its walls, without sharing the gap: each wall stands
 * at its own length and angle. Null where the walls come round, or nearly so that the gap is one of measuring.
 */
export function halfTyped(walls: readonly MeasuredWall[]): readonly (readonly [number, number])[] | null {
  if (walls.length < 2) return null
  const corners = walk(walls, withUnknownAngles(walls))
  const [x, y] = corners.at(-1) ?? [0, 0]
  const run = walls.reduce((sum, wall) => sum + wall.length, 0)
  return walls.length < 3 || Math.hypot(x, y) > run * HALF_TYPED ? corners : null
}

/** The line that is still to be closed: from the last corner to the first. */
export function closingLine(
  corners: readonly (readonly [number, number])[],
): readonly [readonly [number, number], readonly [number, number]] {
  return [corners.at(-1) ?? [0, 0], corners[0] ?? [0, 0]]
}

/** An angle nobody measured takes its share of what the others leave of (n − 2) × 180°. */
function withUnknownAngles(walls: readonly MeasuredWall[]): number[] {
  const known = walls.reduce((sum, wall) => sum + (wall.angle ?? 0), 0)
  const unknown = walls.filter(wall => wall.angle === null).length
  const left = ((walls.length - 2) * 180 - known) / Math.max(unknown, 1)
  const each = left > 1 && left < 359 ? left : 90
  return walls.map(wall => wall.angle ?? each)
}

function walk(walls: readonly MeasuredWall[], angles: readonly number[]): [number, number][] {
  const points: [number, number][] = [[0, 0]]
  let x = 0
  let y = 0
  let heading = 0
  for (const [index, wall] of walls.entries()) {
    x += wall.length * Math.cos(heading)
    y += wall.length * Math.sin(heading)
    points.push([clean(x), clean(y)])
    heading += ((180 - (angles[index] ?? 90)) * Math.PI) / 180
  }
  return points
}

/** Corners read with a gauge may be off by this together, degrees; from memory. */
const TURN_WITHIN = 2

function inMillimetres(mm: number): string {
  return `${mm.toFixed(mm < 10 ? 1 : 0)} mm`
}

/** A wrong length explains a gap only where its wall runs along it. */
function alongGap(walls: readonly MeasuredWall[], points: readonly Point[], gap: number): Outline['suspects'] {
  const [endX, endY] = points.at(-1) ?? [0, 0]
  const along = walls.map(({ length }, index) => {
    const [ax, ay] = points[index] ?? [0, 0]
    const [bx, by] = points[index + 1] ?? [0, 0]
    return ((bx - ax) * endX + (by - ay) * endY) / (length * gap)
  })
  const most = Math.max(...along.map(Math.abs))
  return along.flatMap((share, wall) => (Math.abs(share) > most - 0.01 ? [{ wall, over: gap * Math.sign(share) }] : []))
}

function noteOf(
  walls: readonly MeasuredWall[],
  gap: number,
  closes: boolean,
  along: Outline['suspects'],
  say: (mm: number) => string,
): string {
  const turned = turnNote(walls)
  if (!closes && turned !== null) return `The walls fail to close by ${say(gap)}. ${turned}`
  // A gap that is said as 0 is none.
  if (closes) return say(gap) === say(0) ? 'The walls close exactly.' : `The walls close within ${say(gap)}.`
  const suspects = along.map(({ wall }) => wall)
  const runs = suspects.length === 1 ? 'it runs' : 'they run'
  return `The walls fail to close by ${say(gap)}. Measure ${namesOf(suspects, walls)} again first; ${runs} along the gap.`
}

/** Corners that cannot go round explain a gap better than any length: the angles of n walls make (n − 2) × 180°. */
function turnNote(walls: readonly MeasuredWall[]): string | null {
  const wanted = (walls.length - 2) * 180
  let sum = 0
  for (const { angle } of walls) {
    if (angle === null) return null
    sum += angle
  }
  if (Math.abs(sum - wanted) <= TURN_WITHIN) return null
  return `The corners of ${walls.length} walls make ${wanted}° together, and these make ${Number(sum.toFixed(2))}°. Look at the corners first, or for a wall that is missing.`
}

/** By their names where each has one of its own, else by their numbers: wall 1, walls 1 and 3. */
function namesOf(suspects: readonly number[], walls: readonly MeasuredWall[]): string {
  const names = suspects.map(index => walls[index]?.name ?? '')
  const named = names.every((name, at) => name !== '' && names.indexOf(name) === at)
  const list = named ? names : suspects.map(index => String(index + 1))
  const all = list.length === 1 ? `${list[0]}` : `${list.slice(0, -1).join(', ')} and ${list.at(-1)}`
  return named ? all : `${list.length === 1 ? 'wall' : 'walls'} ${all}`
}
