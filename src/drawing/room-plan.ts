/**
 * A room's plan as an architect draws it: walls as solid bands outside the measured outline, mitred at the corners and
 * cut at their openings. Millimetres, x to the right and y down the page; walls run clockwise, so that the room lies to
 * the right of the way. The band's thickness is of the drawing, not of the house: nobody measured it.
 */
export type Point = readonly [number, number]

export interface PlanOpening {
  readonly kind: string
  readonly x: number
  readonly width: number
}

export interface PlanWall {
  readonly key: string
  readonly name: string
  /** As measured; from and to are as drawn, after a gap was shared out. */
  readonly length: number
  readonly from: Point
  readonly to: Point
  /** Interior angle at its right end. */
  readonly angle: number | null
  readonly openings: readonly PlanOpening[]
}

/** Walls with the corners of their outline, which has one corner a wall, or one more while it is open. */
export function planWalls<W extends Omit<PlanWall, 'from' | 'to'>>(
  walls: readonly W[],
  corners: readonly Point[],
): readonly (W & Pick<PlanWall, 'from' | 'to'>)[] {
  return walls.map((wall, index) => ({
    ...wall,
    from: corners[index] ?? [0, 0],
    to: corners[(index + 1) % corners.length] ?? [0, 0],
  }))
}

export interface WallShape {
  readonly wall: PlanWall
  /** Along the wall and out of the room, of length 1. */
  readonly along: Point
  readonly out: Point
  /** Solid bands, four corners each. */
  readonly solid: readonly (readonly Point[])[]
  readonly openings: readonly { readonly kind: string; readonly band: readonly Point[] }[]
  /** Positions along the wall that a dimension string with openings stops at; empty where there are none. */
  readonly stops: readonly number[]
}

export function move([x, y]: Point, [ux, uy]: Point, by: number): Point {
  return [x + ux * by, y + uy * by]
}

function axes({ from, to }: PlanWall): { readonly along: Point; readonly out: Point } {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const along: Point = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  return { along, out: [along[1], -along[0]] }
}

/** Where the outer lines of two walls meet; the plain corner where they are parallel or meet too far away. */
function mitre(corner: Point, before: Point, after: Point, thick: number): Point | null {
  const cross = before[0] * after[1] - before[1] * after[0]
  if (Math.abs(cross) < 0.02) return null
  const share = before[0] * after[0] + before[1] * after[1] + 1
  // Both outward normals added and scaled until the point lies `thick` out of either wall.
  if (share < 0.2) return null
  return [corner[0] + ((before[0] + after[0]) * thick) / share, corner[1] + ((before[1] + after[1]) * thick) / share]
}

/**
 * The shapes of a room's walls, each band `thick` mm deep. Walls of an open chain end square; an opening is cut where
 * it lies on the wall, and one beyond its end is cut off there.
 */
export function planShapes(walls: readonly PlanWall[], thick: number): readonly WallShape[] {
  const first = walls[0]
  const last = walls.at(-1)
  const closed =
    walls.length > 2 &&
    first !== undefined &&
    last !== undefined &&
    Math.hypot(first.from[0] - last.to[0], first.from[1] - last.to[1]) < 1
  const all = walls.map(axes)
  return walls.map((wall, index) => {
    const { along, out } = all[index] ?? axes(wall)
    const before = index > 0 || closed ? all.at(index - 1) : undefined
    const after = index < walls.length - 1 ? all[index + 1] : closed ? all[0] : undefined
    const begin = (before && mitre(wall.from, before.out, out, thick)) ?? move(wall.from, out, thick)
    const end = (after && mitre(wall.to, out, after.out, thick)) ?? move(wall.to, out, thick)
    const drawn = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1])
    const ratio = wall.length > 0 ? drawn / wall.length : 1
    const inner = (x: number) => move(wall.from, along, x * ratio)
    const outer = (x: number) => (x <= 0 ? begin : x >= wall.length ? end : move(inner(x), out, thick))
    const band = (a: number, b: number): readonly Point[] => [inner(a), inner(b), outer(b), outer(a)]
    const cuts = wall.openings
      .map(({ kind, x, width }) => ({ kind, from: Math.max(0, x), to: Math.min(wall.length, x + width) }))
      .filter(cut => cut.to > cut.from)
      .sort((a, b) => a.from - b.from)
    const solid: (readonly Point[])[] = []
    let at = 0
    for (const cut of cuts) {
      if (cut.from > at) solid.push(band(at, cut.from))
      at = Math.max(at, cut.to)
    }
    if (at < wall.length) solid.push(band(at, wall.length))
    const stops =
      cuts.length === 0
        ? []
        : [...new Set([0, ...cuts.flatMap(cut => [cut.from, cut.to]), wall.length])].sort((a, b) => a - b)
    return {
      wall,
      along,
      out,
      solid,
      openings: cuts.map(cut => ({ kind: cut.kind, band: band(cut.from, cut.to) })),
      stops,
    }
  })
}

/** Degrees that text along a direction is turned by, so that it reads from below or from the right. */
export function readable([ux, uy]: Point): number {
  const degrees = (Math.atan2(uy, ux) * 180) / Math.PI
  return degrees > 89.5 ? degrees - 180 : degrees < -90.5 ? degrees + 180 : degrees
}
