/**
 * The one view of the plan: from the building's millimetres to pixels of the sheet, `pixel = mm · scale + at`. It goes
 * from a whole building to a door handle.
 */
import type { Point } from '../drawing/room-plan.ts'
import type { Box } from './place.ts'

export interface SheetView {
  /** Pixels for a millimetre. */
  readonly scale: number
  /** Where the building's 0, 0 is, pixels. */
  readonly x: number
  readonly y: number
}

export interface Sheet {
  readonly width: number
  readonly height: number
}

/** 2 km on a screen; a millimetre five pixels wide. */
const least = 0.0006
const most = 5

const clamp = (scale: number) => Math.min(most, Math.max(least, scale))

export function toSheet({ scale, x, y }: SheetView, [px, py]: Point): Point {
  return [px * scale + x, py * scale + y]
}

export function fromSheet({ scale, x, y }: SheetView, [px, py]: Point): Point {
  return [(px - x) / scale, (py - y) / scale]
}

/** The box as large as the sheet lets it be, `edge` pixels round it, in the middle. */
export function fitted(box: Box, sheet: Sheet, edge: number): SheetView {
  const wide = Math.max(box.right - box.left, 1)
  const high = Math.max(box.bottom - box.top, 1)
  const scale = clamp(
    Math.min(Math.max(40, sheet.width - 2 * edge) / wide, Math.max(40, sheet.height - 2 * edge) / high, 0.25),
  )
  return {
    scale,
    x: sheet.width / 2 - ((box.left + box.right) / 2) * scale,
    y: sheet.height / 2 - ((box.top + box.bottom) / 2) * scale,
  }
}

/** Larger or smaller about a point of the sheet, which goes on showing the same point of the building. */
export function zoomed(view: SheetView, [px, py]: Point, factor: number): SheetView {
  const scale = clamp(view.scale * factor)
  const by = scale / view.scale
  return { scale, x: px - (px - view.x) * by, y: py - (py - view.y) * by }
}

/** What of the building is on the sheet, and a little more on each side. */
export function seen(view: SheetView, sheet: Sheet, more = 0): Box {
  const [left, top] = fromSheet(view, [-more, -more])
  const [right, bottom] = fromSheet(view, [sheet.width + more, sheet.height + more])
  return { left, top, right, bottom }
}

export function meets(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

/** How what was drawn at one view is carried to where another has it: enlarged by `factor`, then shifted, pixels. */
export interface Carriage {
  readonly factor: number
  readonly x: number
  readonly y: number
}

export function carriage(drawn: SheetView, view: SheetView): Carriage {
  const factor = view.scale / drawn.scale
  return { factor, x: view.x - drawn.x * factor, y: view.y - drawn.y * factor }
}

/** A drawing enlarged or reduced further than this is drawn anew: its letters are no longer read well. */
const bears = 3

export function bearable({ factor }: Carriage): boolean {
  return factor < bears && factor > 1 / bears
}
