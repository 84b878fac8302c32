/**
 * The sides of a work that findings are laid on, each measured from its own left and top edge as one stands before it:
 * how large it is, how it is called, from where it is seen. The frame is a side of its own: its ring, seen from the
 * front, so that what is found on it is never taken for something of the picture in it.
 */
import type { Face, Side, Spot } from './shape.ts'

/** mm. */
export interface Body extends Face {
  /** Null where nobody has measured it. */
  readonly depth: number | null
}

export interface Opening extends Face {
  readonly left: number
  readonly top: number
}

const deep: ReadonlySet<Side> = new Set<Side>(['left', 'right', 'top', 'bottom'])

/** Whether its size follows from how deep the work is. */
export const needsDepth = (side: Side): boolean => deep.has(side)

/** How large a side is; null where the depth that it needs is not known. */
export function faceOfSide({ width, height, depth }: Body, side: Side): Face | null {
  if (!needsDepth(side)) return { width, height }
  if (depth === null) return null
  return side === 'left' || side === 'right' ? { width: depth, height } : { width, height: depth }
}

export const sideTitles: Readonly<Record<Side, string>> = {
  front: 'front',
  frame: 'frame',
  back: 'back',
  left: 'left',
  right: 'right',
  top: 'top',
  bottom: 'underside',
}

/** Before a place on it; the front goes without saying. */
export const onSide: Readonly<Record<Side, string>> = {
  front: '',
  frame: 'on the frame',
  back: 'on the back',
  left: 'on the left side',
  right: 'on the right side',
  top: 'on the top',
  bottom: 'on the underside',
}

/** How it is drawn, without a full stop; the front goes without saying. Left and right are those of the front. */
export const sideSeen: Readonly<Record<Side, string>> = {
  front: '',
  frame: 'The frame, as seen from the front',
  back: 'The back, as seen from behind',
  left: 'The left side, as seen from the left: the front is at its right edge',
  right: 'The right side, as seen from the right: the front is at its left edge',
  top: 'The top, as seen from above: the front is at its lower edge',
  bottom: 'The underside, as seen from below: the front is at its upper edge',
}

/** Where the picture stands in its frame, as far in from either side; null where it is not known to be smaller. */
export function openingOf({ width, height }: Face, picture: Face | null): Opening | null {
  if (picture === null || picture.width >= width || picture.height >= height) return null
  const { width: across, height: down } = picture
  return { left: (width - across) / 2, top: (height - down) / 2, width: across, height: down }
}

/** From each corner of the frame to that of its opening. */
export function mitresOf({ width, height }: Face, { left, top, width: across, height: down }: Opening): Spot[][] {
  const [right, bottom] = [left + across, top + down]
  const corners: readonly (readonly [number, number, number, number])[] = [
    [0, 0, left, top],
    [width, 0, right, top],
    [width, height, right, bottom],
    [0, height, left, bottom],
  ]
  return corners.map(([x, y, inX, inY]) => [
    { x, y },
    { x: inX, y: inY },
  ])
}
