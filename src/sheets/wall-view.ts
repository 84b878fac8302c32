/**
 * What a drawing of a wall shows and where it stands on the paper: the stretch of wall, the scale, and the places of
 * millimetres of the wall in millimetres of the paper.
 */
import type { MadeMark } from '../contract/areas/marks.ts'
import type { Elevation } from '../contract/areas/walls.ts'
import type { LabelPlace } from '../layout/labels-shape.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import type { Units } from './figures.ts'
import type { Box } from './shapes.ts'
import type { WallSheetRow } from './wall-rows.ts'

export interface DrawingQuestion {
  readonly elevation: Elevation
  readonly marks: ReadonlyMap<string, MarksOrWhy>
  /** Left edges and widths along the wall, from left to right. */
  readonly along: readonly { readonly placement: string; readonly at: number; readonly size: number }[]
  /** Where the labels of the wall stand. */
  readonly labels: readonly LabelPlace[]
  /** The height of the level line above the floor at the wall's left end. */
  readonly datum: number
  /** The works of this page, from left to right. */
  readonly rows: readonly WallSheetRow[]
  /** All works of the wall are on this page. */
  readonly whole: boolean
  /** Holes that nothing hangs on. */
  readonly dead: readonly MadeMark[]
  readonly units: Units
  /** Grows with the paper. */
  readonly k: number
}

/** Room for the height of the level line, right of the wall. */
export const besideLine = 27
/** Wall shown above the tallest work at least, mm. */
const overTheTallest = 300

/** Room that labels and dimensions take from the height of the drawing, before scaling by `k`. */
export const aroundDrawing = { above: 9, below: 9 }

export interface View {
  readonly x: (x: number) => number
  readonly y: (y: number) => number
  readonly scale: number
  readonly shown: { readonly from: number; readonly to: number }
  readonly left: number
  readonly right: number
  readonly floor: number
  readonly top: number
  /** The height that is drawn, mm: of the wall, or less of it. */
  readonly highest: number
  readonly labels: number
  readonly limits: { readonly from: number; readonly to: number }
}

/** As large as `box` allows. */
export function viewOf(box: Box, question: DrawingQuestion): View {
  const { elevation, marks, whole, datum, k } = question
  const { wall } = elevation
  const room = { w: box.w - (besideLine + 5) * k, h: box.h - (aroundDrawing.above + aroundDrawing.below) * k }
  const stretch = whole ? { from: 0, to: wall.length } : stretchOf(question)
  const tallest = Math.max(0, ...elevation.works.map(work => work.centreY + (work.size?.height ?? 0) / 2))
  // A rail is drawn with what hangs from it.
  const hung = [...marks.values()].flatMap(found =>
    'answer' in found ? found.answer.hangers.map(one => one.from.y) : [],
  )
  const works = Math.max(tallest, datum, ...hung) + overTheTallest
  const across = room.w / (stretch.to - stretch.from)
  // Empty wall above is left out where the works could be drawn larger without it.
  const high = Math.min(Math.max(wall.height, tallest), Math.max(works, room.h / across))
  const scale = Math.min(across, room.h / high)
  const shown = widened(stretch, room.w / scale, wall.length)
  const left = box.x + 5 * k + (room.w - (shown.to - shown.from) * scale) / 2
  const floor = box.y + box.h - aroundDrawing.below * k
  return {
    x: (x: number) => left + (x - shown.from) * scale,
    y: (y: number) => floor - y * scale,
    scale,
    shown,
    right: left + (shown.to - shown.from) * scale,
    left,
    floor,
    top: floor - Math.min(high, wall.height) * scale,
    highest: Math.min(high, wall.height),
    labels: box.y + 3 * k,
    limits: { from: box.x, to: box.x + box.w },
  }
}

/** The stretch of wall around the works of this page, with a little on either side. */
function stretchOf({ elevation, rows }: DrawingQuestion): { from: number; to: number } {
  const here = new Set(rows.map(row => row.placement))
  const works = elevation.works.filter(work => here.has(work.placement))
  const from = Math.min(...works.map(work => work.x - (work.size?.width ?? 0) / 2))
  const to = Math.max(...works.map(work => work.x + (work.size?.width ?? 0) / 2))
  const more = Math.max(200, (to - from) * 0.05)
  return { from: Math.max(0, from - more), to: Math.min(elevation.wall.length, Math.max(to + more, from + 1000)) }
}

function widened(stretch: { from: number; to: number }, width: number, length: number): { from: number; to: number } {
  const spare = Math.max(0, width - (stretch.to - stretch.from))
  const from = Math.max(0, stretch.from - spare / 2)
  const to = Math.min(length, from + (stretch.to - stretch.from) + spare)
  return { from: Math.max(0, Math.min(from, to - (stretch.to - stretch.from) - spare)), to }
}
