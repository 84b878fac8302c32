/**
 * A found outline as a room of the catalogue: lengths of its walls and angles of its corners in order, where it stands
 * and how it is turned, a name from the words within. The first wall is the one that runs most nearly to the right at
 * the top, so that a square room stands unturned.
 */
import type { Point } from '../drawing/room-plan.ts'
import { within } from './outline-shape.ts'
import type { FoundOutline, FoundWall } from './outlines-from-lines.ts'
import { type Place, wholeTurn } from './place.ts'

export interface ProposedRoom extends Place {
  /** In order from the first; lengths to 0.1 mm, angles to 0.0001°, finer than any drawing is true. */
  readonly walls: readonly FoundWall[]
}

export function roomFromOutline({ walls }: FoundOutline): ProposedRoom {
  const heading = ({ from, to }: FoundWall) => (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI
  const middle = (wall: FoundWall) => (wall.from[1] + wall.to[1]) / 2
  let first = 0
  for (const [at, wall] of walls.entries()) {
    const best = walls[first]
    if (best === undefined) break
    const nearer = Math.abs(heading(wall)) - Math.abs(heading(best))
    if (nearer < -1 || (nearer <= 1 && middle(wall) < middle(best) - 1)) first = at
  }
  const ordered = [...walls.slice(first), ...walls.slice(0, first)]
  const begins = ordered[0]
  return {
    at: begins === undefined ? [0, 0] : [tenth(begins.from[0]), tenth(begins.from[1])],
    turn: begins === undefined ? 0 : wholeTurn(Math.round(heading(begins) * 1e4) / 1e4),
    walls: ordered.map(wall => ({
      ...wall,
      length: tenth(wall.length),
      angle: Math.round(wall.angle * 1e4) / 1e4,
      openings: wall.openings.map(({ x, width }) => ({ x: tenth(x), width: tenth(width) })),
    })),
  }
}

function tenth(mm: number): number {
  return Math.round(mm * 10) / 10 || 0
}

export interface PlacedWords {
  readonly text: string
  readonly x: number
  readonly y: number
}

/** An area or a length that a plan says within a room is not its name. */
const figureOnly = /^[\s\d.,'′"″×x+±-]*(mm|cm|m|m2|m²|sqm|sq ?m|sf|sq ?ft|ft|ft²|in)?\s*$/i
const numberOnly = /^[a-z]{0,2}[ .-]?\d{1,4}([ .-]\d{1,3})?[a-z]?$/i

/** What the words within an outline call it, from the top down; '' where none does. */
export function namesWithin(
  outline: FoundOutline,
  words: readonly PlacedWords[],
): { readonly name: string; readonly number: string } {
  const corners = outline.walls.map(wall => wall.from)
  const inside = words
    .filter(({ x, y }) => within(corners, [x, y]))
    .sort((a, b) => a.y - b.y || a.x - b.x)
    .map(({ text }) => text.trim())
  const number = inside.find(text => numberOnly.test(text) && text.length <= 20) ?? ''
  const name = inside.find(text => text !== number && text.length > 1 && /\p{L}/u.test(text) && !figureOnly.test(text))
  return { name: (name ?? '').slice(0, 200), number }
}

/** The corner farthest to the left and to the top of all outlines: the drawing's own 0, 0 may lie kilometres away. */
export function cornerOf(outlines: readonly FoundOutline[]): Point {
  const all = outlines.flatMap(({ walls }) => walls.map(wall => wall.from))
  if (all.length === 0) return [0, 0]
  return [
    all.reduce((least, [x]) => Math.min(least, x), Infinity),
    all.reduce((least, [, y]) => Math.min(least, y), Infinity),
  ]
}
