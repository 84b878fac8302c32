/**
 * The elevation of a wall sheet, to scale: wall, floor, openings, what must stay clear, the level line with its height
 * beside it, works as outlines with their running numbers, a cross at each mark, running dimensions of the marks above
 * and the chain of works and gaps below. Where a page shows only some works, the rest stand pale.
 */

import type { Elevation } from '../contract/areas/walls.ts'
import { print } from '../hang/printing.ts'
import { mainMarks } from '../hang/steps.ts'
import { runningChain } from '../measure/chain.ts'
import type { Step } from '../measure/rounding.ts'
import type { MarksOrWhy } from '../model/marks-of-face.ts'
import { figure, type LengthUnit, otherUnit, type Units } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import type { Box } from './shapes.ts'
import type { Sketch } from './sketch.ts'
import { spread } from './spread.ts'
import { sheetNames, type WallSheetRow } from './wall-rows.ts'

export interface DrawingQuestion {
  readonly elevation: Elevation
  readonly marks: ReadonlyMap<string, MarksOrWhy>
  /** The height of the level line above the floor at the wall's left end. */
  readonly datum: number
  /** The works of this page, from left to right. */
  readonly rows: readonly WallSheetRow[]
  /** All works of the wall are on this page. */
  readonly whole: boolean
  readonly units: Units
  /** Grows with the paper. */
  readonly k: number
}

const labelSize = 2.7
const besideLine = 27
/** Wall shown above the tallest work at least, mm. */
const overTheTallest = 300

/** Room that labels and dimensions take from the height of the drawing, before scaling by `k`. */
export const aroundDrawing = { above: 9, below: 9 }

/** Widths of the labels above: whether a page can hold these works is asked before it is begun. */
export function labelsFit(
  rows: readonly WallSheetRow[],
  width: number,
  k: number,
  measure: Sketch['measure'],
): boolean {
  let needed = 0
  for (const row of rows) {
    for (const mark of [row.leftMark, row.rightMark]) {
      if (mark !== null) needed += measure.width('figure', labelSize * k, mark.main) + 1.6 * k
    }
  }
  return needed <= width - (besideLine + 4) * k
}

/** Draws into `box`. */
export function drawElevation(sketch: Sketch, box: Box, question: DrawingQuestion): void {
  const { elevation, rows, whole, datum, k } = question
  const { wall } = elevation
  const room = { w: box.w - (besideLine + 5) * k, h: box.h - (aroundDrawing.above + aroundDrawing.below) * k }
  const stretch = whole ? { from: 0, to: wall.length } : stretchOf(question)
  const tallest = Math.max(0, ...elevation.works.map(work => work.centreY + (work.size?.height ?? 0) / 2))
  const works = Math.max(tallest, datum) + overTheTallest
  const across = room.w / (stretch.to - stretch.from)
  // Empty wall above is left out where the works could be drawn larger without it.
  const high = Math.min(Math.max(wall.height, tallest), Math.max(works, room.h / across))
  const scale = Math.min(across, room.h / high)
  const shown = widened(stretch, room.w / scale, wall.length)
  const left = box.x + 5 * k + (room.w - (shown.to - shown.from) * scale) / 2
  const floor = box.y + box.h - aroundDrawing.below * k
  const view = {
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
  drawWall(sketch, view, question)
  drawLine(sketch, view, question)
  drawMarkLabels(sketch, view, question)
  drawWorks(sketch, view, question)
  drawChain(sketch, view, question, rows)
}

interface View {
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

function drawWall(sketch: Sketch, view: View, { elevation, k, units }: DrawingQuestion): void {
  const { wall } = elevation
  const { shown, left, right, top, floor } = view
  if (view.highest >= wall.height) sketch.line(left, top, right, top, 0.3 * k)
  else
    sketch.add({
      kind: 'line',
      x1: left,
      y1: top,
      x2: right,
      y2: top,
      width: 0.2 * k,
      colour: ink.line,
      dash: [2 * k, 1.2 * k],
    })
  for (const [x, isEnd] of [
    [left, shown.from <= 0],
    [right, shown.to >= wall.length],
  ] as const) {
    if (isEnd) sketch.line(x, top, x, floor, 0.3 * k)
    else
      sketch.add({
        kind: 'line',
        x1: x,
        y1: top,
        x2: x,
        y2: floor,
        width: 0.2 * k,
        colour: ink.line,
        dash: [2 * k, 1.2 * k],
      })
  }
  const clip = (x: number) => Math.min(Math.max(x, shown.from), shown.to)
  if (wall.skirting !== null && wall.skirting > 0) {
    sketch.line(left, view.y(wall.skirting), right, view.y(wall.skirting), 0.12 * k, ink.line)
  }
  for (const opening of wall.openings) {
    const [from, to] = [clip(opening.x), clip(opening.x + opening.width)]
    if (to - from < 1) continue
    const upper = Math.min(opening.y + opening.height, view.highest)
    if (upper <= opening.y) continue
    const box = { x: view.x(from), y: view.y(upper), w: (to - from) * view.scale, h: (upper - opening.y) * view.scale }
    sketch.add({ kind: 'rect', ...box, stroke: ink.ink2, width: 0.25 * k })
    if (opening.kind === 'door' || opening.kind === 'passage') {
      sketch.line(box.x, box.y, box.x + box.w, box.y + box.h, 0.1 * k, ink.line)
      sketch.line(box.x, box.y + box.h, box.x + box.w, box.y, 0.1 * k, ink.line)
    }
  }
  for (const item of wall.keepClears) {
    const [from, to] = [clip(item.x - item.margin), clip(item.x + item.width + item.margin)]
    if (to - from < 1 || item.y + item.height + item.margin > view.highest) continue
    sketch.add(
      {
        kind: 'rect',
        x: view.x(from),
        y: view.y(item.y + item.height + item.margin),
        w: (to - from) * view.scale,
        h: (item.height + 2 * item.margin) * view.scale,
        stroke: ink.settle,
        width: 0.18 * k,
        dash: [1.1 * k, 0.8 * k],
      },
      {
        kind: 'rect',
        x: view.x(clip(item.x)),
        y: view.y(item.y + item.height),
        w: Math.max(0.8 * k, (clip(item.x + item.width) - clip(item.x)) * view.scale),
        h: Math.max(0.8 * k, item.height * view.scale),
        stroke: ink.ink2,
        width: 0.2 * k,
      },
    )
  }
  if (wall.floor.length > 0) {
    const points = [...wall.floor].sort((a, b) => a[0] - b[0]).filter(([x]) => x >= shown.from && x <= shown.to)
    const d = points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'} ${view.x(x)} ${view.y(y)}`).join(' ')
    if (points.length > 1) sketch.add({ kind: 'path', d, stroke: ink.ink3, width: 0.25 * k })
  }
  sketch.line(left - 3 * k, floor, right + 3 * k, floor, 0.7 * k)
  if (shown.from > 0) {
    const from = figure(print(shown.from, units.steps), units).main
    sketch.text('cut left', left - 0.8 * k, floor - 1.5 * k, 2.1 * k, 'narrow', `from ${from} on`, {
      upright: true,
      colour: ink.ink3,
    })
  }
}

function drawLine(sketch: Sketch, view: View, { datum, units, k }: DrawingQuestion): void {
  const y = view.y(datum)
  sketch.line(view.left - 4 * k, y, view.right + 3 * k, y, 0.4 * k, ink.snapped)
  const height = figure(print(datum, units.steps), units)
  const x = view.right + 4 * k
  const main = sizeWithin(`${height.main} ${units.unit}`, 'figure', 4.2 * k, (besideLine - 3) * k, sketch.measure)
  sketch.text('level line', x, y - 0.9 * k, main, 'figure', `${height.main} ${units.unit}`)
  sketch.text('level line, other unit', x, y + 2.4 * k, 2.2 * k, 'narrow', `${height.other} ${otherUnit(units.unit)}`, {
    colour: ink.ink2,
  })
  sketch.text('level line, what', x, y + 5.1 * k, 2.1 * k, 'narrow', 'the level line above', { colour: ink.ink2 })
  sketch.text('level line, where', x, y + 7.7 * k, 2.1 * k, 'narrow', 'the floor at the left end', { colour: ink.ink2 })
}

function drawMarkLabels(sketch: Sketch, view: View, { rows, marks, k }: DrawingQuestion): void {
  const labels = rows
    .flatMap(row => {
      const found = marks.get(row.placement)
      if (found === undefined || !('answer' in found)) return []
      const shown = mainMarks(found.answer.marks)
      const [first] = shown
      const last = shown.at(-1)
      return [
        { name: `${row.called} left mark`, figure: row.leftMark, mark: first },
        { name: `${row.called} right mark`, figure: row.rightMark, mark: last },
      ]
    })
    .flatMap(({ name, figure: written, mark }) =>
      written === null || mark === undefined ? [] : [{ name, written, mark }],
    )
    .sort((a, b) => a.mark.hole.x - b.mark.hole.x)
  const size = labelSize * k
  const middles = spread(
    labels.map(label => ({
      at: view.x(label.mark.hole.x),
      width: sketch.measure.width('figure', size, label.written.main),
    })),
    view.limits.from,
    view.limits.to,
    1.6 * k,
  )
  labels.forEach((label, index) => {
    const middle = middles?.[index]
    if (middle === undefined) return
    const x = view.x(label.mark.hole.x)
    const elbow = view.labels + 4.5 * k
    sketch.text(`drawing ${label.name}`, middle, view.labels, size, 'figure', label.written.main, { anchor: 'middle' })
    sketch.add({
      kind: 'path',
      d: `M ${middle} ${view.labels + 0.9 * k} L ${middle} ${view.labels + 1.6 * k} L ${x} ${elbow} L ${x} ${view.y(label.mark.hole.y)}`,
      stroke: ink.line,
      width: 0.15 * k,
    })
  })
}

function drawWorks(sketch: Sketch, view: View, { elevation, marks, rows, k }: DrawingQuestion): void {
  const here = new Set(rows.map(row => row.placement))
  const names = sheetNames(elevation.works)
  for (const work of elevation.works) {
    if (work.size === null) continue
    const { width, height } = work.size
    const isHere = here.has(work.placement)
    const from = Math.max(work.x - width / 2, view.shown.from)
    const to = Math.min(work.x + width / 2, view.shown.to)
    if (to - from < 1) continue
    const box = {
      x: view.x(from),
      y: view.y(work.centreY + height / 2),
      w: (to - from) * view.scale,
      h: height * view.scale,
    }
    sketch.add({
      kind: 'rect',
      ...box,
      fill: ink.paper,
      stroke: isHere ? ink.ink : ink.line,
      width: (isHere ? 0.35 : 0.2) * k,
    })
    drawNumber(sketch, box, names.get(work.placement) ?? '', isHere, k)
    const found = marks.get(work.placement)
    if (!isHere || found === undefined || !('answer' in found)) continue
    for (const mark of found.answer.marks) {
      const [x, y] = [view.x(mark.hole.x), view.y(mark.hole.y)]
      const arm = Math.min(1.4 * k, Math.max(0.6 * k, box.w / 6))
      sketch.line(x - arm, y, x + arm, y, 0.35 * k)
      sketch.line(x, y - arm, x, y + arm, 0.35 * k)
    }
  }
}

function drawNumber(sketch: Sketch, box: Box, called: string, isHere: boolean, k: number): void {
  const most = Math.min(6 * k, box.h * 0.42)
  const size = sizeWithin(called, 'figure', most, box.w * 0.8, sketch.measure)
  // Too small to be read: the row of the table and the order from left to right tell which it is.
  if (size < 1.5) return
  sketch.text(`drawing ${called}`, box.x + box.w / 2, box.y + box.h * 0.56 + size * 0.25, size, 'figure', called, {
    anchor: 'middle',
    colour: isHere ? ink.ink : ink.ink3,
  })
}

/** Works and gaps along the wall, each as printed; the parts add up to the printed length. */
function drawChain(sketch: Sketch, view: View, question: DrawingQuestion, rows: readonly WallSheetRow[]): void {
  const { elevation, units, k } = question
  const works = elevation.works.flatMap(({ placement, x, size }) =>
    size === null ? [] : [{ placement, at: x - size.width / 2, size: size.width }],
  )
  const sorted = works.sort((a, b) => a.at - b.at)
  const chain = runningChain(0, elevation.wall.length, sorted, stepOf(units))
  const y = view.floor + 6.3 * k
  if (chain.pieces.some(piece => piece.size.count < 0)) {
    sketch.text(
      'chain',
      view.left,
      y,
      2.1 * k,
      'narrow',
      'Works overlap along this wall or pass its ends: edges and gaps are in the table.',
      {
        colour: ink.ink2,
      },
    )
    return
  }
  const here = new Set(rows.map(row => row.placement))
  const pieces = chain.pieces.filter(
    ({ index }) => here.has(sorted[index]?.placement ?? '') || here.has(sorted[index - 1]?.placement ?? ''),
  )
  const size = 2.3 * k
  const shown = pieces.filter(
    piece => piece.from.mm >= view.shown.from - 1 && piece.to.mm <= view.shown.to + 1 && piece.size.count > 0,
  )
  const texts = shown.map(piece => figureOf(piece.size.mm, units))
  const middles = spread(
    shown.map((piece, index) => ({
      at: view.x((piece.from.mm + piece.to.mm) / 2),
      width: sketch.measure.width(piece.kind === 'gap' ? 'figure' : 'narrow', size, texts[index] ?? ''),
    })),
    view.limits.from,
    view.limits.to,
    1.2 * k,
  )
  const [first, last] = [shown[0], shown.at(-1)]
  if (middles === null || first === undefined || last === undefined) return
  const line = view.floor + 3.4 * k
  sketch.line(view.x(first.from.mm), line, view.x(last.to.mm), line, 0.15 * k, ink.ink3)
  for (const x of new Set(shown.flatMap(piece => [piece.from.mm, piece.to.mm]))) {
    sketch.line(view.x(x) - 0.6 * k, line + 0.6 * k, view.x(x) + 0.6 * k, line - 0.6 * k, 0.25 * k)
  }
  shown.forEach((piece, index) => {
    const gap = piece.kind === 'gap'
    sketch.text(`chain ${index}`, middles[index] ?? 0, y, size, gap ? 'figure' : 'narrow', texts[index] ?? '', {
      anchor: 'middle',
      colour: gap ? ink.ink : ink.ink3,
    })
  })
}

/** The chain counts in whole steps of the sheet's unit. */
export function stepOf({ unit, steps }: Units): Step {
  if (unit === 'in') return { unit: 'in', parts: steps.fraction }
  const size = ([0.1, 0.5, 1, 5, 10] as const).find(each => each === steps.mm)
  return { unit: 'mm', size: size ?? 1 }
}

function figureOf(mm: number, units: { unit: LengthUnit; steps: Units['steps'] }): string {
  return figure(print(mm, units.steps), units).main
}
