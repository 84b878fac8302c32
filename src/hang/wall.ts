/**
 * What a wall is to someone who marks it: its size, its level line, its floor, what is behind it and what must stay
 * clear. The floor is 0 at the wall's left end; under any x it is read by straight lines between measured points.
 * A row of the catalogue's walls can be passed as it is.
 */
export interface WallFacts {
  readonly length: number
  readonly height: number
  readonly wallType: string
  /** Height of the level line above the floor at x = 0; null where the house rule gives it. */
  readonly datum: number | null
  /**
   * The level line runs along a ramp: `datum` is its height above the floor everywhere, and marks are measured from it
   * where they are. Level where left out.
   */
  readonly ramp?: boolean | undefined
  /** `[x, height of the floor there against the floor at 0]`; lower is negative. */
  readonly floor: readonly (readonly [number, number])[]
  readonly skirting: number | null
  readonly studFirst: number | null
  readonly studSpacing: number | null
  readonly backingFrom: number | null
  readonly backingTo: number | null
  readonly openings: readonly Opening[]
  readonly keepClears: readonly KeepClear[]
  /** Picture rail: `[x, height of the edge that its hooks bear on, above the floor at x = 0]`. */
  readonly rail?: Profile | null | undefined
  /** What the rail may carry on each metre, as its maker says; kg. */
  readonly railKgPerMetre?: number | null | undefined
  /** `[x, height of the ceiling there above the floor at x = 0]`; the wall's height where nobody measured. */
  readonly ceiling?: Profile | null | undefined
  /** x of the joints between boards. */
  readonly joints?: readonly number[] | null | undefined
  /** x of studs found one by one; they stand in place of the comb. */
  readonly studs?: readonly number[] | null | undefined
}

/** Heights along a wall, `[x, y]` in any order: straight between them, level beyond the last. */
export type Profile = readonly (readonly [number, number])[]

/** Left edge and bottom edge, width and height. */
export interface Opening {
  readonly id: string
  readonly kind: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly label: string
  /** How far it goes into the wall, or stands out of it; null or left out where nobody measured it. */
  readonly depth?: number | null | undefined
}

export interface KeepClear extends Opening {
  /** Clear distance wanted all round. */
  readonly margin: number
  readonly reason: string
  /** A hand must get to it: no margin is taken off it with a reason. */
  readonly reachable?: boolean | undefined
}

/**
 * Height of the floor at x against the floor at x = 0, mm, linear between measured points and level beyond the last.
 * Any order; the left end counts as 0 where it was not measured itself.
 */
export function floorAt(floor: WallFacts['floor'], x: number): number {
  if (floor.length === 0) return 0
  const points = [...floor].sort((a, b) => a[0] - b[0])
  const first = points[0]
  if (first !== undefined && first[0] > 0) points.unshift([0, 0])
  return read(points, x) - read(points, 0)
}

/** By how much the floor rises from one x to another, mm; what goes along a ramp climbs by it. */
export function climb(floor: Profile, from: number, to: number): number {
  return floorAt(floor, to) - floorAt(floor, from)
}

/** Height of a profile at x; null where nobody measured it. */
export function heightAlong(profile: Profile | null | undefined, x: number): number | null {
  if (profile === null || profile === undefined || profile.length === 0) return null
  return read(
    [...profile].sort((a, b) => a[0] - b[0]),
    x,
  )
}

function read(points: readonly (readonly [number, number])[], x: number): number {
  let before = points[0]
  if (before === undefined) return 0
  if (x <= before[0]) return before[1]
  for (const point of points) {
    if (point[0] >= x) {
      const span = point[0] - before[0]
      return span === 0 ? point[1] : before[1] + ((point[1] - before[1]) * (x - before[0])) / span
    }
    before = point
  }
  return before[1]
}

/** Half of a stud's face: nearer than this to its centre line a screw finds wood. 1 1/2 in stud, from memory. */
export const HALF_STUD = 19.05

/** Where studs are: found one by one, else as a comb from the first at a spacing. */
export type Studs = Pick<WallFacts, 'studs' | 'studFirst' | 'studSpacing' | 'length'>

/** Studs that were found one by one; null where nobody looked, and the comb counts. */
function foundStuds({ studs }: Studs): readonly number[] | null {
  return studs === null || studs === undefined || studs.length === 0 ? null : studs
}

/** Centre lines of studs from `from` to `to`, from left to right. */
export function studsBetween(wall: Studs, from: number, to: number): readonly number[] {
  const measured = foundStuds(wall)
  if (measured !== null) {
    return measured.filter(x => x >= from - 1e-6 && x <= to + 1e-6).sort((a, b) => a - b)
  }
  const { studFirst, studSpacing } = wall
  if (studFirst === null || studSpacing === null || !(studSpacing > 0)) return []
  const found: number[] = []
  const least = Math.ceil((Math.max(from, 0) - studFirst) / studSpacing - 1e-9)
  for (let k = least; ; k += 1) {
    const x = studFirst + k * studSpacing
    if (x > Math.min(to, wall.length) + 1e-6) return found
    found.push(x)
  }
}

/** Signed way from x to the nearest stud's centre line; null where studs are not known. */
export function toNearestStud(wall: Studs, x: number): number | null {
  const near = foundStuds(wall) ?? combNear(wall, x)
  let best: number | null = null
  for (const stud of near) if (best === null || Math.abs(stud - x) < Math.abs(best)) best = stud - x
  return best
}

function combNear(wall: Studs, x: number): readonly number[] {
  const { studSpacing } = wall
  if (studSpacing === null || !(studSpacing > 0)) return []
  return studsBetween(wall, x - studSpacing, x + studSpacing)
}

/** Signed way from x to the nearest joint between boards; null where nobody found one. */
export function toNearestJoint(wall: Pick<WallFacts, 'joints'>, x: number): number | null {
  let best: number | null = null
  for (const joint of wall.joints ?? []) {
    if (best === null || Math.abs(joint - x) < Math.abs(best)) best = joint - x
  }
  return best
}

/** Height of the ceiling at x above the floor at x = 0: as measured, else the wall's height. */
export function ceilingAt(wall: Pick<WallFacts, 'ceiling' | 'height'>, x: number): number {
  return heightAlong(wall.ceiling, x) ?? wall.height
}

/** The lowest of the ceiling over a stretch, and the highest of the floor under it: at its ends or where they bend. */
export function lowestCeiling(wall: Pick<WallFacts, 'ceiling' | 'height'>, from: number, to: number): number {
  return Math.min(...bends(wall.ceiling ?? [], from, to).map(x => ceilingAt(wall, x)))
}

export function highestFloor({ floor }: Pick<WallFacts, 'floor'>, from: number, to: number): number {
  return Math.max(...bends(floor, from, to).map(x => floorAt(floor, x)))
}

/** x of both ends of a stretch and of where a profile bends between them, from left to right: in between it is straight. */
export function bends(profile: Profile, from: number, to: number): readonly number[] {
  const inside = profile.map(([x]) => x).filter(x => x > from && x < to)
  return [from, ...new Set(inside.sort((a, b) => a - b)), to]
}

/** The heights between which backing stands, as far as the wall goes, mm; null where nobody wrote down a backing. */
export function backingOf({
  backingFrom,
  backingTo,
  height,
}: Pick<WallFacts, 'backingFrom' | 'backingTo' | 'height'>): { readonly from: number; readonly to: number } | null {
  if (backingFrom === null && backingTo === null) return null
  return { from: Math.max(0, backingFrom ?? 0), to: Math.min(height, backingTo ?? height) }
}

/** Whether backing stands behind height y; null where nobody wrote down a backing. */
export function isBacked(wall: Pick<WallFacts, 'backingFrom' | 'backingTo'>, y: number): boolean | null {
  if (wall.backingFrom === null && wall.backingTo === null) return null
  return y >= (wall.backingFrom ?? Number.NEGATIVE_INFINITY) && y <= (wall.backingTo ?? Number.POSITIVE_INFINITY)
}
