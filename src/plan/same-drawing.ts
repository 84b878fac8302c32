/**
 * Where a drawing lies in the building, told by the rooms that were taken from it before: an outline of it that has the
 * shape of a room that stands says by how much the drawing was carried. So what is taken later stands beside what was
 * taken first, as it is drawn, wherever that has been carried meanwhile. Millimetres, building coordinates.
 */
import type { Point } from '../drawing/room-plan.ts'

export interface Shaped {
  readonly name: string
  /** In order; the first may be any. */
  readonly corners: readonly Point[]
}

/** A tape moves corners by as much as this against the drawing, and it is still the same room; mm, from memory. */
const MOVED = 60

interface Match {
  readonly shift: Point
  /** The farthest that a corner is from where it is drawn. */
  readonly off: number
  readonly room: Shaped
  readonly named: boolean
}

const minus = ([ax, ay]: Point, [bx, by]: Point): Point => [ax - bx, ay - by]
const far = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

/** How `room` lies to `outline` where it has its shape and is turned as it is; null where it has not. */
function matchOf(outline: Shaped, room: Shaped): Match | null {
  const count = outline.corners.length
  if (count !== room.corners.length) return null
  let best: Match | null = null
  for (let begin = 0; begin < count; begin++) {
    const shifts = outline.corners.map((corner, at) => minus(room.corners[(begin + at) % count] ?? corner, corner))
    const mean: Point = [
      shifts.reduce((sum, [x]) => sum + x, 0) / count,
      shifts.reduce((sum, [, y]) => sum + y, 0) / count,
    ]
    const off = Math.max(...shifts.map(shift => far(shift, mean)))
    if (off <= MOVED && (best === null || off < best.off))
      best = { shift: mean, off, room, named: outline.name !== '' && outline.name === room.name }
  }
  return best
}

/**
 * By how much the drawing is carried in the building; null where no room tells, or where two tell otherwise and
 * nothing says which is right: like cabinets in a row.
 */
export function shiftOfDrawing(outlines: readonly Shaped[], rooms: readonly Shaped[]): Point | null {
  const matches = outlines.flatMap(outline => rooms.flatMap(room => matchOf(outline, room) ?? []))
  const scored = matches
    .map(match => {
      const same = matches.filter(other => far(other.shift, match.shift) <= MOVED)
      const names = new Set(same.filter(other => other.named).map(other => other.room)).size
      return { match, score: new Set(same.map(other => other.room)).size + names }
    })
    .sort((a, b) => b.score - a.score || a.match.off - b.match.off)
  const [best] = scored
  if (best === undefined) return null
  const rival = scored.find(({ match }) => far(match.shift, best.match.shift) > MOVED)
  return rival !== undefined && rival.score === best.score ? null : best.match.shift
}
