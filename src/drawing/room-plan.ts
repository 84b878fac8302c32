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
  /** How the leaves of a door turn, hinges as seen from inside; left out where nobody asks. */
  readonly swing?: string
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

export interface WallShape<W extends PlanWall = PlanWall> {
  readonly wall: W
  /** Along the wall and out of the room, of length 1. */
  readonly along: Point
  readonly out: Point
  /** Of its band, mm. */
  readonly thick: number
  /** Solid bands, four corners each. */
  readonly solid: readonly (readonly Point[])[]
  /** `at`: which of the wall's openings it is. */
  readonly openings: readonly { readonly kind: string; readonly at: number; readonly band: readonly Point[] }[]
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

/** How far a point lies out of a wall's measured line: along its outward normal, mm. */
interface Side {
  readonly out: Point
  readonly thick: number
}

/** Where the outer lines of two walls meet; the plain corner where they are parallel or meet too far away. */
function mitre(corner: Point, before: Side, after: Side): Point | null {
  const [a, b] = [before.out, after.out]
  const cross = a[0] * b[1] - a[1] * b[0]
  if (Math.abs(cross) < 0.02) return null
  if (a[0] * b[0] + a[1] * b[1] + 1 < 0.2) return null
  // The point that lies as far out of either wall as that one is thick.
  return [
    corner[0] + (before.thick * b[1] - after.thick * a[1]) / cross,
    corner[1] + (after.thick * a[0] - before.thick * b[0]) / cross,
  ]
}

/**
 * The shapes of a room's walls, each band `thick` mm deep, or as deep as `thick` says of that wall. Walls of an open
 * chain end square; an opening is cut where it lies on the wall, and one beyond its end is cut off there.
 */
export function planShapes<W extends PlanWall>(
  walls: readonly W[],
  thick: number | ((wall: W) => number),
): readonly WallShape<W>[] {
  const first = walls[0]
  const last = walls.at(-1)
  const closed =
    walls.length > 2 &&
    first !== undefined &&
    last !== undefined &&
    Math.hypot(first.from[0] - last.to[0], first.from[1] - last.to[1]) < 1
  const sides = walls.map(wall => ({ ...axes(wall), thick: typeof thick === 'number' ? thick : thick(wall) }))
  return walls.map((wall, index) => {
    const own = sides[index] ?? { ...axes(wall), thick: 0 }
    const { along, out } = own
    const before = index > 0 || closed ? sides.at(index - 1) : undefined
    const after = index < walls.length - 1 ? sides[index + 1] : closed ? sides[0] : undefined
    const begin = (before && mitre(wall.from, before, own)) ?? move(wall.from, out, own.thick)
    const end = (after && mitre(wall.to, own, after)) ?? move(wall.to, out, own.thick)
    const drawn = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1])
    const ratio = wall.length > 0 ? drawn / wall.length : 1
    const inner = (x: number) => move(wall.from, along, x * ratio)
    const outer = (x: number) => (x <= 0 ? begin : x >= wall.length ? end : move(inner(x), out, own.thick))
    const band = (a: number, b: number): readonly Point[] => [inner(a), inner(b), outer(b), outer(a)]
    const cuts = wall.openings
      .map(({ kind, x, width }, at) => ({ kind, at, from: Math.max(0, x), to: Math.min(wall.length, x + width) }))
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
      thick: own.thick,
      solid,
      openings: cuts.map(cut => ({ kind: cut.kind, at: cut.at, band: band(cut.from, cut.to) })),
      stops,
    }
  })
}

/** Degrees that text along a direction is turned by, so that it reads from below or from the right. */
export function readable([ux, uy]: Point): number {
  const degrees = (Math.atan2(uy, ux) * 180) / Math.PI
  return degrees > 89.5 ? degrees - 180 : degrees < -90.5 ? degrees + 180 : degrees
}
