/**
 * The elevation of a wall sheet, to scale: the wall, the level line, works as outlines with their running numbers and a
 * cross at each mark, dimensions above and below. Where a page shows only some works, the rest stand pale.
 */
import type { MarksAnswer } from '../hang/marks-shape.ts'
import { placementOfKey } from '../model/parts-of-set.ts'
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import type { Box } from './shapes.ts'
import type { Sketch } from './sketch.ts'
import { drawChain, drawMarkLabels } from './wall-dimensions.ts'
import { drawLine, drawWall } from './wall-ground.ts'
import { hole } from './wall-notes.ts'
import { sheetNames } from './wall-rows.ts'
import { type DrawingQuestion, type View, viewOf } from './wall-view.ts'

/** Draws into `box`. */
export function drawElevation(sketch: Sketch, box: Box, question: DrawingQuestion): void {
  const view = viewOf(box, question)
  drawWall(sketch, view, question)
  drawLine(sketch, view, question)
  drawHangers(sketch, view, question)
  drawMarkLabels(sketch, view, question)
  drawWorks(sketch, view, question)
  drawLabels(sketch, view, question)
  drawDead(sketch, view, question)
  drawChain(sketch, view, question)
}

function isShown(x: number, { shown }: View): boolean {
  return x >= shown.from - 1 && x <= shown.to + 1
}

/** Cables, rods or chains from what they hang on, with the hooks over the rail. */
function drawHangers(sketch: Sketch, view: View, { marks, k }: DrawingQuestion): void {
  for (const found of marks.values()) {
    if (!('answer' in found)) continue
    for (const { from, to } of found.answer.hangers) {
      if (!isShown(from.x, view) || !isShown(to.x, view)) continue
      sketch.line(view.x(from.x), view.y(from.y), view.x(to.x), view.y(to.y), 0.2 * k)
      sketch.line(view.x(from.x) - 0.7 * k, view.y(from.y), view.x(from.x) + 0.7 * k, view.y(from.y), 0.4 * k)
    }
  }
}

function drawDead(sketch: Sketch, view: View, { dead, k }: DrawingQuestion): void {
  for (const { x, y } of dead) {
    if (isShown(x, view) && y <= view.highest) sketch.add(...hole(view.x(x), view.y(y), 1 * k, k))
  }
}

/** The base that a work stands on, from the floor up to it, between the marked corners. */
function drawBase(sketch: Sketch, view: View, answer: MarksAnswer, k: number): void {
  const corners = answer.marks.filter(mark => mark.on === 'floor')
  const [first, last] = [corners[0], corners.at(-1)]
  if (first === undefined || last === undefined || first === last) return
  const [from, to] = [Math.max(first.hole.x, view.shown.from), Math.min(last.hole.x, view.shown.to)]
  if (to - from < 1) return
  const top = view.y(answer.edges.bottom)
  sketch.add({
    kind: 'rect',
    x: view.x(from),
    y: top,
    w: (to - from) * view.scale,
    h: Math.max(0, view.y(first.hole.y) - top),
    stroke: ink.ink3,
    width: 0.25 * k,
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
    if (found === undefined || !('answer' in found)) continue
    drawBase(sketch, view, found.answer, k)
    if (!isHere) continue
    for (const mark of found.answer.marks) {
      const [x, y] = [view.x(mark.hole.x), view.y(mark.hole.y)]
      const arm = Math.min(1.4 * k, Math.max(0.6 * k, box.w / 6)) * (mark.does === 'keeps' ? 0.75 : 1)
      // Upright where it carries, lying where it only keeps.
      const lean = mark.does === 'keeps' ? arm : 0
      sketch.line(x - arm, y - lean, x + arm, y + lean, 0.35 * k)
      sketch.line(x + lean, y - arm, x - lean, y + arm, 0.35 * k)
    }
  }
}

/** Labels as small cards; those of works on other pages stand pale. */
function drawLabels(sketch: Sketch, view: View, { labels, rows, k }: DrawingQuestion): void {
  const here = new Set(rows.map(row => placementOfKey(row.placement)))
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
