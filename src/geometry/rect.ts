/**
 * Upright rectangles on a wall: x to the right, y up, millimetres. Distances are clear distances, edge to edge; 0 means
 * touching or overlapping.
 */
export interface Point {
  readonly x: number
  readonly y: number
}

/** Left edge, bottom edge, width, height. */
export interface Rect {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export function right(rect: Rect): number {
  return rect.x + rect.width
}

export function top(rect: Rect): number {
  return rect.y + rect.height
}

export function centreOf(rect: Rect): Point {
  return { x: rect.x + rect.width / 2, y: rect.y + rect.height / 2 }
}

export function moved(rect: Rect, dx: number, dy: number): Rect {
  return { ...rect, x: rect.x + dx, y: rect.y + dy }
}

/** Signed clear distances along x and along y; negative where the two overlap in that direction, by how much. */
export function clearances(a: Rect, b: Rect): { readonly dx: number; readonly dy: number } {
  return {
    dx: Math.max(b.x - right(a), a.x - right(b)),
    dy: Math.max(b.y - top(a), a.y - top(b)),
  }
}

/** Clear distance between nearest edges or corners. */
export function clearDistance(a: Rect, b: Rect): number {
  const { dx, dy } = clearances(a, b)
  return Math.hypot(Math.max(0, dx), Math.max(0, dy))
}

/** True where the two share more than an edge; `slack` absorbs the last digits of a computation. */
export function overlap(a: Rect, b: Rect, slack = 1e-6): boolean {
  const { dx, dy } = clearances(a, b)
  return dx < -slack && dy < -slack
}

/** Distance from a point to a rectangle, 0 inside it. */
export function distanceToPoint(rect: Rect, point: Point): number {
  const dx = Math.max(0, rect.x - point.x, point.x - right(rect))
  const dy = Math.max(0, rect.y - point.y, point.y - top(rect))
  return Math.hypot(dx, dy)
}
