/**
 * Whether a box passes a doorway or stands in a lift, held straight or turned, and by how much it does not. Figures as
 * typed or measured, millimetres, without room for hands or wrapping; nothing is bent or taken off its hinges: who
 * carries decides about that.
 */
export interface Box {
  /** Across, up and through, as it is carried upright. */
  readonly width: number
  readonly height: number
  readonly depth: number
}

export interface Doorway {
  readonly width: number
  readonly height: number
}

/**
 * `upright`: as it stands, one side foremost. `turned`: upright, on the diagonal of a lift's floor. `tipped`: only laid on
 * a side. `leaning`: only held slantwise, from corner to corner. `no`: in none of these ways.
 */
export type Fit = 'upright' | 'turned' | 'tipped' | 'leaning' | 'no'
const order: readonly Fit[] = ['upright', 'turned', 'tipped', 'leaning', 'no']

/** 0 for the best way to carry it, more the worse. */
export const rankOf = (fit: Fit) => order.indexOf(fit)

/**
 * Whether a rectangle of sides `p`, `q` lies within one of `a`, `b`, turned by any angle (Carver, American Mathematical
 * Monthly 64, 1957; from memory, tested against turning it by small steps).
 */
export function liesWithin(p: number, q: number, a: number, b: number): boolean {
  const [long, short] = [Math.max(p, q), Math.min(p, q)]
  const [wide, narrow] = [Math.max(a, b), Math.min(a, b)]
  if (short > narrow) return false
  if (long <= wide) return true
  const square = long ** 2 + short ** 2
  const needed = (2 * long * short * wide + (long ** 2 - short ** 2) * Math.sqrt(square - wide ** 2)) / square
  return narrow >= needed
}

/** Smallest first. */
const sorted = ({ width, height, depth }: Box) =>
  [width, height, depth].sort((a, b) => a - b) as [number, number, number]

/** Through a doorway one face of the box goes foremost, so two of its three measures count; upright its height stays up. */
export function fitsDoorway(box: Box, door: Doorway): Fit {
  if (box.height <= door.height && Math.min(box.width, box.depth) <= door.width) return 'upright'
  const [least, middle] = sorted(box)
  if (overDoorway(box, door) === 0) return 'tipped'
  return liesWithin(least, middle, door.width, door.height) ? 'leaning' : 'no'
}

/** How much too large its least face is for a doorway, held straight; 0 where it passes. */
export function overDoorway(box: Box, door: Doorway): number {
  const [least, middle] = sorted(box)
  const [narrow, wide] = [Math.min(door.width, door.height), Math.max(door.width, door.height)]
  return Math.max(0, least - narrow, middle - wide)
}

/** Within a cabin all three measures count; one of them stays along a wall, the other two may be turned. */
export function fitsLift(box: Box, cabin: Box): Fit {
  const floor = [box.width, box.depth].sort((a, b) => a - b) as [number, number]
  const under = [cabin.width, cabin.depth].sort((a, b) => a - b) as [number, number]
  if (box.height <= cabin.height && floor[0] <= under[0] && floor[1] <= under[1]) return 'upright'
  if (box.height <= cabin.height && liesWithin(...floor, ...under)) return 'turned'
  if (overLift(box, cabin) === 0) return 'tipped'
  const [sides, inner] = [sorted(box), sorted(cabin)]
  const others = (of: readonly number[], at: number) => of.filter((_, nth) => nth !== at) as [number, number]
  const leans = sides.some((side, i) =>
    inner.some((length, j) => side <= length && liesWithin(...others(sides, i), ...others(inner, j))),
  )
  return leans ? 'leaning' : 'no'
}

/** How much too large it is for a cabin, held straight in the way that lacks least; 0 where it goes in. */
export function overLift(box: Box, cabin: Box): number {
  const inner = sorted(cabin)
  return Math.max(0, ...sorted(box).map((side, at) => side - (inner[at] ?? 0)))
}

/**
 * By how many millimetres all its measures could be larger and it would still pass as well as it does; 0 where it does
 * not pass. `tell` says of a box how it passes.
 */
export function spareOf(box: Box, tell: (box: Box) => Fit): number {
  const now = tell(box)
  if (now === 'no') return 0
  const passes = (by: number) =>
    rankOf(tell({ width: box.width + by, height: box.height + by, depth: box.depth + by })) <= rankOf(now)
  let [fits, fails] = [0, 1]
  while (passes(fails) && fails < 1e6) fails *= 2
  // To a ten-thousandth of a millimetre.
  while (fails - fits > 1e-4) {
    const half = (fits + fails) / 2
    if (passes(half)) fits = half
    else fails = half
  }
  return Math.round(fits * 10) / 10
}
