/**
 * Whether a box passes a doorway or stands in a lift. Figures as typed or measured, millimetres; nothing is bent, tilted
 * or taken off its hinges: who carries decides about that.
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

/** `upright`: as it stands, one side foremost. `tipped`: only laid on a side. `no`: not as it is. */
export type Fit = 'upright' | 'tipped' | 'no'

/**
 * Through a doorway one face of the box goes foremost, so two of its three measures count; upright its height stays up.
 * Exact for a box carried straight (from memory: a rectangle turned within another may pass where this says no).
 */
export function fitsDoorway({ width, height, depth }: Box, door: Doorway): Fit {
  if (height <= door.height && Math.min(width, depth) <= door.width) return 'upright'
  const [least, middle] = [width, height, depth].sort((a, b) => a - b) as [number, number, number]
  const [narrow, wide] = [Math.min(door.width, door.height), Math.max(door.width, door.height)]
  return least <= narrow && middle <= wide ? 'tipped' : 'no'
}

/** Within a cabin all three measures count; upright the box may be turned on its floor. */
export function fitsLift(box: Box, cabin: Box): Fit {
  const floor = [box.width, box.depth].sort((a, b) => a - b) as [number, number]
  const under = [cabin.width, cabin.depth].sort((a, b) => a - b) as [number, number]
  if (box.height <= cabin.height && floor[0] <= under[0] && floor[1] <= under[1]) return 'upright'
  const sides = [box.width, box.height, box.depth].sort((a, b) => a - b)
  const inner = [cabin.width, cabin.height, cabin.depth].sort((a, b) => a - b)
  return sides.every((side, at) => side <= (inner[at] ?? 0)) ? 'tipped' : 'no'
}

/** The best way through any of several; null where none is known. */
export function bestFit<T>(ways: readonly T[], tell: (way: T) => Fit): { readonly way: T; readonly fit: Fit } | null {
  const order: readonly Fit[] = ['upright', 'tipped', 'no']
  const tried = ways.map(way => ({ way, fit: tell(way) }))
  return tried.sort((a, b) => order.indexOf(a.fit) - order.indexOf(b.fit))[0] ?? null
}
