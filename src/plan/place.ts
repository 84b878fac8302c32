/**
 * Where a room stands in its building. A room is measured by itself, from its first wall; its place says where that
 * room's 0, 0 lies in the building and by how much the room is turned: `p = at + R(turn) · local`. Millimetres, x to the
 * right and y down the page; degrees clockwise on the page. Corners are never stored in the building's coordinates, so
 * that a room can be moved without a measure of it being touched.
 */
import type { Point } from '../drawing/room-plan.ts'
import { clean } from '../geometry/clean.ts'

export interface Place {
  readonly at: Point
  /** Degrees clockwise on the page. */
  readonly turn: number
}

/** A room that stands at the building's 0, 0 as it was measured. */
export const origin: Place = { at: [0, 0], turn: 0 }

/** Cosine and sine of an angle in degrees; exact for quarter turns, so that square rooms stay square. */
export function turnOf(degrees: number): readonly [cos: number, sin: number] {
  const turn = wholeTurn(degrees)
  if (turn === 0) return [1, 0]
  if (turn === 90) return [0, 1]
  if (turn === 180) return [-1, 0]
  if (turn === 270) return [0, -1]
  const radians = (turn * Math.PI) / 180
  return [Math.cos(radians), Math.sin(radians)]
}

/** The same angle from 0 up to 360, to a millionth of a degree. */
export function wholeTurn(degrees: number): number {
  const rounded = Math.round((((degrees % 360) + 360) % 360) * 1e6) / 1e6
  return rounded === 360 ? 0 : rounded
}

/** A point of the room in the building's coordinates. */
export function toBuilding({ at, turn }: Place, [x, y]: Point): Point {
  const [cos, sin] = turnOf(turn)
  return [clean(at[0] + cos * x - sin * y), clean(at[1] + sin * x + cos * y)]
}

/** A point of the building in the room's own coordinates; the inverse of `toBuilding`. */
export function toRoom({ at, turn }: Place, [x, y]: Point): Point {
  const [cos, sin] = turnOf(turn)
  const [dx, dy] = [x - at[0], y - at[1]]
  return [clean(cos * dx + sin * dy), clean(cos * dy - sin * dx)]
}

/** The place of a room after it is turned about a point of the building, clockwise. */
export function turnedAbout({ at, turn }: Place, about: Point, degrees: number): Place {
  const [cos, sin] = turnOf(degrees)
  const [dx, dy] = [at[0] - about[0], at[1] - about[1]]
  return {
    at: [clean(about[0] + cos * dx - sin * dy), clean(about[1] + sin * dx + cos * dy)],
    turn: wholeTurn(turn + degrees),
  }
}

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The box about some points; null where there are none. */
export function boxOf(points: readonly Point[]): Box | null {
  if (points.length === 0) return null
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    left = Math.min(left, x)
    top = Math.min(top, y)
    right = Math.max(right, x)
    bottom = Math.max(bottom, y)
  }
  return { left, top, right, bottom }
}

/** Between rooms that stand aside, and between them and the building; of the drawing alone. */
const APART = 1800

/**
 * Rooms that have no place yet, in a row below the building from its left edge, in their order: where each stands for
 * the drawing. Rows break where they would become wider than `wide`.
 *
 * @param rooms the boxes of their corners as measured
 * @param building what is placed; null where nothing is
 */
export function standAside(rooms: readonly Box[], building: Box | null, wide: number): readonly Point[] {
  const left = building?.left ?? 0
  let x = left
  let y = building === null ? 0 : building.bottom + 2 * APART
  let deepest = 0
  return rooms.map(box => {
    const width = box.right - box.left
    if (x > left && x + width > left + wide) {
      x = left
      y += deepest + APART
      deepest = 0
    }
    const at: Point = [x - box.left, y - box.top]
    x += width + APART
    deepest = Math.max(deepest, box.bottom - box.top)
    return at
  })
}
