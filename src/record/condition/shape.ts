/**
 * Where a finding lies on the face of a work: a mark, an outline or an area, in millimetres to the right of the left
 * edge and down from the top edge, as one lays a rule along a frame. What is measured of it follows from its points.
 */

/** `mark`: one spot. `outline`: a line along it, a crack or a tear. `area`: the edge around it, closed by itself. */
export const forms = ['mark', 'outline', 'area'] as const
export type Form = (typeof forms)[number]

/** Each is seen from where it faces (`sides.ts`). */
export const sides = ['front', 'frame', 'back', 'left', 'right', 'top', 'bottom'] as const
export type Side = (typeof sides)[number]

export interface Spot {
  /** mm from the left edge. */
  readonly x: number
  /** mm from the top edge. */
  readonly y: number
}

export interface Shape {
  readonly form: Form
  readonly points: readonly Spot[]
  /** Of a mark: its greatest measure as taken with a rule, mm; null where nobody took it. */
  readonly across: number | null
}

export interface Face {
  /** mm. */
  readonly width: number
  readonly height: number
}

/** How many points a form needs before it is a place. */
export const pointsOf: Readonly<Record<Form, number>> = { mark: 1, outline: 2, area: 3 }

/** Whether it is a place on this face: enough points, none beside it. A mark is one point and no more. */
export function isPlaced({ form, points }: Pick<Shape, 'form' | 'points'>, { width, height }: Face): boolean {
  const enough = form === 'mark' ? points.length === 1 : points.length >= pointsOf[form]
  return enough && points.every(({ x, y }) => x >= 0 && y >= 0 && x <= width && y <= height)
}

type Segment = readonly [Spot, Spot]

function segmentsOf({ form, points }: Shape): Segment[] {
  const [first] = points
  if (first === undefined) return []
  const along = points.slice(1).map((point, index): Segment => [points[index] ?? first, point])
  const last = points.at(-1) ?? first
  if (form === 'area') return [...along, [last, first]]
  return along.length === 0 ? [[first, first]] : along
}

const apart = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y)

export interface Extent {
  /** The greatest straight distance between two of its points, mm; of a mark what a rule said; null where none did. */
  readonly reach: number | null
  /** Of an outline along it, of an area around it, mm; 0 for a mark. */
  readonly along: number
  /** mm²; 0 where it encloses nothing. */
  readonly area: number
}

/** Its measures. An area that crosses itself counts what its edge goes round, less what it goes round backwards. */
export function extentOf(shape: Shape): Extent {
  if (shape.form === 'mark') return { reach: shape.across, along: 0, area: 0 }
  const { points } = shape
  const reach = Math.max(0, ...points.flatMap((a, index) => points.slice(index + 1).map(b => apart(a, b))))
  const segments = segmentsOf(shape)
  const along = segments.reduce((sum, [a, b]) => sum + apart(a, b), 0)
  // Half the cross products round the edge (the shoelace formula).
  const twice = shape.form === 'area' ? segments.reduce((sum, [a, b]) => sum + (a.x * b.y - b.x * a.y), 0) : 0
  return { reach, along, area: Math.abs(twice) / 2 }
}

/** The box around it, mm. */
export function boxOf({ points }: Pick<Shape, 'points'>): { readonly left: number; readonly top: number } & Face {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top }
}

/** Which side of the line from a to b a point is on: more or less than 0, and 0 on it. */
const turn = (a: Spot, b: Spot, p: Spot) => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)

function cross([a, b]: Segment, [c, d]: Segment): boolean {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0
}

function toSegment(p: Spot, [a, b]: Segment): number {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2
  if (squared === 0) return apart(p, a)
  const share = Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / squared))
  return Math.hypot(p.x - (a.x + share * (b.x - a.x)), p.y - (a.y + share * (b.y - a.y)))
}

/** By how often a line from the point to the right meets the edge. */
function holds({ form, points }: Shape, p: Spot): boolean {
  if (form !== 'area') return false
  let inside = false
  for (const [index, a] of points.entries()) {
    const b = points[(index + 1) % points.length] ?? a
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
  }
  return inside
}

/**
 * The clear distance between two places, mm: 0 where they touch, cross, or one lies in the other. The same whichever is
 * named first, to the last bit.
 */
export function distanceBetween(one: Shape, other: Shape): number {
  if (one.points.some(p => holds(other, p)) || other.points.some(p => holds(one, p))) return 0
  let least = Number.POSITIVE_INFINITY
  for (const s of segmentsOf(one)) {
    for (const t of segmentsOf(other)) {
      if (cross(s, t)) return 0
      least = Math.min(least, toSegment(s[0], t), toSegment(s[1], t), toSegment(t[0], s), toSegment(t[1], s))
    }
  }
  return least
}

const thirds = (share: number, words: readonly [string, string, string]) =>
  share < 1 / 3 ? words[0] : share <= 2 / 3 ? words[1] : words[2]

/** Its place as one says it of a picture, by thirds: `upper left`, `centre`, `lower right`. */
export function thirdOf(shape: Pick<Shape, 'points'>, { width, height }: Face): string {
  const { left, top, width: across, height: down } = boxOf(shape)
  const side = thirds((left + across / 2) / width, ['left', 'middle', 'right'])
  const level = thirds((top + down / 2) / height, ['upper', 'middle', 'lower'])
  if (level === 'middle') return side === 'middle' ? 'centre' : `middle ${side}`
  return `${level} ${side}`
}
