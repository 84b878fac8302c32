/**
 * The one view transform of an elevation: from millimetres on the wall (x to the right, y up) to pixels on the screen
 * (y down). Everything that is drawn or pointed at goes through here.
 */
import type { Point, Rect } from '../geometry/rect.ts'

export interface View {
  /** Pixels for a millimetre. */
  readonly scale: number
  /** Where the wall's left end is, and its floor, in pixels. */
  readonly left: number
  readonly floor: number
}

export interface Box {
  readonly width: number
  readonly height: number
}

/** Room kept round the wall for ruler, line label and dimension chains, pixels. */
export const surround = { left: 44, right: 104, top: 72, bottom: 104 } as const
const leastScale = 0.004
const mostScale = 6

export function toScreen({ scale, left, floor }: View, { x, y }: Point): Point {
  return { x: left + x * scale, y: floor - y * scale }
}

export function toWall({ scale, left, floor }: View, { x, y }: Point): Point {
  return { x: (x - left) / scale, y: (floor - y) / scale }
}

/** A rectangle of the wall as it stands on the screen: its top left corner and its size in pixels. */
export function rectOnScreen(view: View, rect: Rect): Rect {
  const at = toScreen(view, { x: rect.x, y: rect.y + rect.height })
  return { x: at.x, y: at.y, width: rect.width * view.scale, height: rect.height * view.scale }
}

/** The whole wall with its surround, as large as the box lets it be, in the middle of what is left. */
export function fitView(wall: { readonly length: number; readonly height: number }, box: Box): View {
  const wide = Math.max(80, box.width - surround.left - surround.right)
  const high = Math.max(60, box.height - surround.top - surround.bottom)
  const scale = clampScale(Math.min(wide / wall.length, high / wall.height))
  return {
    scale,
    left: surround.left + (wide - wall.length * scale) / 2,
    floor: surround.top + high - (high - wall.height * scale) / 2,
  }
}

/** Larger or smaller about a point of the screen, which keeps showing the same point of the wall. */
export function zoomAt(view: View, at: Point, factor: number): View {
  const scale = clampScale(view.scale * factor)
  const by = scale / view.scale
  return { scale, left: at.x - (at.x - view.left) * by, floor: at.y - (at.y - view.floor) * by }
}

/** Moved by pixels, but never so far that the wall leaves the box. */
export function panned(
  view: View,
  dx: number,
  dy: number,
  wall: { readonly length: number; readonly height: number },
  box: Box,
): View {
  const keep = 60
  const left = Math.min(box.width - keep, Math.max(keep - wall.length * view.scale, view.left + dx))
  const floor = Math.max(keep, Math.min(box.height - keep + wall.height * view.scale, view.floor + dy))
  return { ...view, left, floor }
}

function clampScale(scale: number): number {
  return Math.min(mostScale, Math.max(leastScale, scale))
}
