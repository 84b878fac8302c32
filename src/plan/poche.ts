/**
 * A room as a survey draws it, in a handful of lines each of one weight: the floor, walls cut through as solid bands,
 * the edges of what is cut, openings with their leaves and swings. The text of the lines is that of SVG paths, in the
 * building's millimetres; whoever draws them scales them and keeps their weight.
 *
 * A wall whose thickness nobody measured still needs a band to read as a wall: it is `UNMEASURED` deep and kept apart
 * from the measured ones, so that it can be drawn lighter and never be taken for a figure.
 */
import type { PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'
import { move, type Point, planShapes, type WallShape } from '../drawing/room-plan.ts'
import { besideOf } from './partition.ts'
import { type Box, boxOf } from './place.ts'

/** Depth of the band of a wall that was not measured, mm; of the drawing alone. */
export const UNMEASURED = 120

export interface RoomLines {
  readonly floor: string
  /** Bands of walls whose thickness is known, and of the others. */
  readonly measured: string
  readonly unmeasured: string
  /** The faces that were measured, heaviest. */
  readonly faces: string
  /** Sills, thresholds, glass. */
  readonly thin: string
  /** Edges of an opening that has nothing in it. */
  readonly dashed: string
  readonly leaves: string
  readonly swings: string
  readonly box: Box
}

/** A wall as it is cut through. */
export type CutWall = Pick<PlanWallRow, 'id' | 'name' | 'length' | 'from' | 'to' | 'angle' | 'thickness'> & {
  readonly openings: readonly Pick<PlanWallRow['openings'][number], 'kind' | 'x' | 'width' | 'swing' | 'depth'>[]
}
type Shape<W extends CutWall = CutWall> = WallShape<W & { readonly key: string }>

/** Cut through; the band of a niche reaches to its back alone, and what is left of the wall behind it is solid. */
export function shapesOf<W extends CutWall>(walls: readonly W[]): readonly Shape<W>[] {
  return planShapes(
    walls.map(wall => ({ ...wall, key: wall.id })),
    wall => wall.thickness ?? UNMEASURED,
  ).map(shape => {
    const recessed = shape.openings.map(opening => recessOf(shape, opening))
    return {
      ...shape,
      solid: [...shape.solid, ...recessed.flatMap(({ behind }) => (behind === null ? [] : [behind]))],
      openings: recessed.map(({ behind: _, ...opening }) => opening),
    }
  })
}

/** A niche as deep as it is, and the wall behind its back; null where nothing is left of that, or where it is no niche. */
function recessOf(
  { wall, out, thick }: Shape,
  opening: Shape['openings'][number],
): Shape['openings'][number] & { readonly behind: readonly Point[] | null } {
  const [a, b, c, d] = opening.band
  const stored = wall.openings[opening.at]
  if (opening.kind !== 'niche' || stored === undefined || !a || !b || !c || !d) return { ...opening, behind: null }
  const deep = nicheDepth(stored, thick)
  const [left, right] = [move(a, out, deep), move(b, out, deep)]
  return { ...opening, band: [a, b, right, left], behind: deep < thick ? [left, right, c, d] : null }
}

/** A partition by the middle of its thickness, from its left end as face a sees it. */
export type CutPartition = Omit<CutWall, 'angle' | 'thickness' | 'from' | 'to'> & {
  readonly from: Point
  readonly to: Point
  readonly thickness: number
}

/** Partitions cut through, each by itself: its face a, with face b behind it. */
export function partitionShapes(partitions: readonly CutPartition[]): readonly Shape[] {
  return partitions.flatMap(partition => {
    const [from, to] = besideOf([partition.from, partition.to], 'a', partition.thickness / 2)
    return shapesOf([{ ...partition, from: [from[0], from[1]], to: [to[0], to[1]], angle: null }])
  })
}

/** What goes through a wall or a partition, each kind of line as one path. */
export function openingsOf(shapes: readonly Shape[]): OpeningLines {
  const all = shapes.flatMap(shape => shape.openings.map(each => openingLines(shape, each)))
  const of = (kind: keyof OpeningLines) => all.map(each => each[kind]).join('')
  return { thin: of('thin'), dashed: of('dashed'), leaves: of('leaves'), swings: of('swings') }
}

const at = ([x, y]: Point) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`
export const line = (...points: readonly Point[]) => `M${points.map(at).join('L')}`
export const loop = (points: readonly Point[]) => (points.length === 0 ? '' : `${line(...points)}Z`)

export function linesOf(room: Pick<PlanRoomRow, 'walls' | 'partitions'>): RoomLines {
  const shapes: readonly Shape[] = shapesOf(room.walls)
  const bands = (known: boolean) =>
    shapes
      .filter(({ wall }) => (wall.thickness !== null) === known)
      .flatMap(({ solid }) => solid.map(loop))
      .join('')
  const corners = room.walls.flatMap(wall => [wall.from, wall.to])
  const outside = shapes.flatMap(({ solid }) => solid.flat())
  return {
    floor: loop(room.walls.map(wall => wall.from)),
    measured: bands(true),
    unmeasured: bands(false),
    faces: shapes
      .flatMap(({ solid }) => solid.map(([a, b]) => (a === undefined || b === undefined ? '' : line(a, b))))
      .join(''),
    ...openingsOf([...shapes, ...partitionShapes(room.partitions)]),
    box: boxOf([...corners, ...outside]) ?? { left: 0, top: 0, right: 0, bottom: 0 },
  }
}

interface OpeningLines {
  readonly thin: string
  readonly dashed: string
  readonly leaves: string
  readonly swings: string
}

const nothing: OpeningLines = { thin: '', dashed: '', leaves: '', swings: '' }

/** How far the back of a niche lies behind the face, on the drawing: half the wall where nobody measured it. mm */
export function nicheDepth({ depth }: { readonly depth: number | null }, thick: number): number {
  return Math.min(depth ?? thick / 2, thick)
}

function openingLines(shape: Shape, opening: Shape['openings'][number]): OpeningLines {
  const [a, b, c, d] = opening.band
  const stored = shape.wall.openings[opening.at]
  if (a === undefined || b === undefined || c === undefined || d === undefined || stored === undefined) return nothing
  const jambs = line(a, d) + line(b, c)
  if (opening.kind === 'niche') return { ...nothing, thin: line(a, d, c, b) }
  if (opening.kind === 'window') {
    const glass = glassOf(shape, opening.band)
      .map(pane => line(...pane))
      .join('')
    return { ...nothing, thin: `${jambs}${line(a, b)}${line(d, c)}${glass}` }
  }
  const free = line(a, b) + line(d, c)
  if (opening.kind === 'passage') return { ...nothing, thin: jambs, dashed: free }
  const door = doorLines(stored.swing, shape, opening.band)
  return { thin: jambs + (stored.swing.startsWith('out') ? line(a, b) : line(d, c)), dashed: '', ...door }
}

/** The two faces of the glass of a window, in the middle of its wall. */
export function glassOf(
  { out, thick }: Pick<WallShape, 'out' | 'thick'>,
  [a, b]: readonly Point[],
): readonly (readonly Point[])[] {
  if (a === undefined || b === undefined) return []
  return [0.42, 0.58].map(share => [move(a, out, thick * share), move(b, out, thick * share)])
}

/**
 * The leaves of a door and what they sweep, by the band that it is cut into. Leaves stand open at a right angle, as on
 * every plan; hinges as seen from inside the room. In: hung on the inner face; out: on the outer one.
 */
export function doorLines(
  swing: string,
  { out, along, thick }: Pick<WallShape, 'out' | 'along' | 'thick'>,
  [a, b, c, d]: readonly Point[],
): { readonly leaves: string; readonly swings: string } {
  const outwards = swing.startsWith('out') || swing === 'both out'
  const [left, right] = outwards ? [d, c] : [a, b]
  if (left === undefined || right === undefined) return { leaves: '', swings: '' }
  const width = Math.hypot(right[0] - left[0], right[1] - left[1])
  if (swing === 'sliding') {
    // Beside its opening, before the face it slides along.
    const beside = move(right, along, width)
    const [p, q] = [move(right, out, -thick * 0.3), move(beside, out, -thick * 0.3)]
    return { leaves: line(p, q), swings: line(right, p) }
  }
  const leaf = (hinge: Point, towards: Point, wide: number) => {
    const tip = move(hinge, out, outwards ? wide : -wide)
    const shut = move(hinge, [(towards[0] - hinge[0]) / width, (towards[1] - hinge[1]) / width], wide)
    const turns = (tip[0] - hinge[0]) * (shut[1] - hinge[1]) - (tip[1] - hinge[1]) * (shut[0] - hinge[0]) > 0
    const radius = Math.round(wide * 10) / 10
    return { leaf: line(hinge, tip), arc: `${line(tip)}A${radius} ${radius} 0 0 ${turns ? 1 : 0} ${at(shut)}` }
  }
  const hung =
    swing === 'both in' || swing === 'both out'
      ? [leaf(left, right, width / 2), leaf(right, left, width / 2)]
      : swing.endsWith('left')
        ? [leaf(left, right, width)]
        : swing.endsWith('right')
          ? [leaf(right, left, width)]
          : []
  return { leaves: hung.map(each => each.leaf).join(''), swings: hung.map(each => each.arc).join('') }
}

/**
 * A rectangle that stands out of a wall's face into the room: from `x` on, so wide and deep. mm along the wall; `behind`:
 * how far behind the face it begins.
 */
export function onFace(
  wall: Pick<PlanWallRow, 'from' | 'to' | 'length'>,
  x: number,
  width: number,
  depth: number,
  behind = 0,
): readonly Point[] {
  const run = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]) || 1
  const along: Point = [(wall.to[0] - wall.from[0]) / run, (wall.to[1] - wall.from[1]) / run]
  const into: Point = [-along[1], along[0]]
  const ratio = wall.length > 0 ? run / wall.length : 1
  const a = move(move(wall.from, along, x * ratio), into, -behind)
  const b = move(move(wall.from, along, (x + width) * ratio), into, -behind)
  return [a, b, move(b, into, depth), move(a, into, depth)]
}
