/**
 * The elevation of a wall sheet, to scale: the wall, the level line, works as outlines with their running numbers and a
 * cross at each mark, dimensions above and below. Where a page shows only some works, the rest stand pale.
 */
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import type { Box } from './shapes.ts'
import type { Sketch } from './sketch.ts'
import { drawChain, drawMarkLabels } from './wall-dimensions.ts'
import { drawLine, drawWall } from './wall-ground.ts'
import { sheetNames } from './wall-rows.ts'
import { type DrawingQuestion, type View, viewOf } from './wall-view.ts'

/** Draws into `box`. */
export function drawElevation(sketch: Sketch, box: Box, question: DrawingQuestion): void {
  const view = viewOf(box, question)
  drawWall(sketch, view, question)
  drawLine(sketch, view, question)
  drawMarkLabels(sketch, view, question)
  drawWorks(sketch, view, question)
  drawLabels(sketch, view, question)
  drawChain(sketch, view, question)
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

/** Labels as small cards; those of works on other pages stand pale. */
function drawLabels(sketch: Sketch, view: View, { labels, rows, k }: DrawingQuestion): void {
  const here = new Set(rows.map(row => row.placement))
  for (const label of labels) {
    const from = Math.max(label.x, view.shown.from)
    const to = Math.min(label.x + label.width, view.shown.to)
    if (to - from < 1) continue
    const colour = here.has(label.id) ? ink.ink2 : ink.line
    const box = {
      x: view.x(from),
      y: view.y(label.y + label.height),
      w: (to - from) * view.scale,
      h: label.height * view.scale,
    }
    sketch.add({ kind: 'rect', ...box, fill: ink.paper, stroke: colour, width: 0.18 * k })
    // Lines of writing, so that it is seen to be no work.
    const lines = Math.min(3, Math.floor(box.h / (0.7 * k)))
    for (let line = 1; line <= lines; line++) {
      const y = box.y + (box.h * line) / (lines + 1)
      sketch.line(box.x + box.w * 0.15, y, box.x + box.w * (line === lines ? 0.6 : 0.85), y, 0.12 * k, colour)
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
