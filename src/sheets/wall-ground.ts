/** What works hang on, drawn: wall, floor, openings, what must stay clear, and the level line with its height beside it. */
import { print } from '../hang/printing.ts'
import { figure, otherUnit } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin } from './lines.ts'
import type { Sketch } from './sketch.ts'
import { besideLine, type DrawingQuestion, type View } from './wall-view.ts'

export function drawWall(sketch: Sketch, view: View, { elevation, k, units }: DrawingQuestion): void {
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

export function drawLine(sketch: Sketch, view: View, { datum, units, k }: DrawingQuestion): void {
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
