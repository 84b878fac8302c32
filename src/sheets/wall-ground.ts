/** What works hang on, drawn: wall, floor, openings, what must stay clear, and the level line with its height beside it. */
import { lineAt, lineSaid } from '../hang/datum.ts'
import { print } from '../hang/printing.ts'
import { heightAlong } from '../hang/wall.ts'
import { levelLineOf } from '../model/marks-of-face.ts'
import { figure, otherUnit } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import type { Sketch } from './sketch.ts'
import { besideLine, type DrawingQuestion, type View } from './wall-view.ts'

type Heights = readonly (readonly [x: number, height: number])[]

export function drawWall(sketch: Sketch, view: View, { elevation, k, units }: DrawingQuestion): void {
  const { wall } = elevation
  const { shown, left, right, top, floor } = view
  drawCeiling(sketch, view, wall, k)
  drawRail(sketch, view, wall, k)
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

/** Heights along the wall between the ends of the drawing; flat beyond the outermost measured points. */
function along(profile: Heights, { shown }: View): Heights {
  const inside = [...profile].sort((a, b) => a[0] - b[0]).filter(([x]) => x > shown.from && x < shown.to)
  const at = (x: number): readonly [number, number] => [x, heightAlong(profile, x) ?? 0]
  return [at(shown.from), ...inside, at(shown.to)]
}

/** As measured, where it is; dashed where the drawing ends below it. */
function drawCeiling(sketch: Sketch, view: View, wall: DrawingQuestion['elevation']['wall'], k: number): void {
  const { left, right, top } = view
  const points = wall.ceiling.length > 0 ? along(wall.ceiling, view) : []
  const lowest = points.length > 0 ? Math.min(...points.map(([, y]) => y)) : wall.height
  if (lowest > view.highest + 0.5) {
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
  } else if (points.length === 0) sketch.line(left, top, right, top, 0.3 * k)
  else sketch.add({ kind: 'path', d: pathOf(points, view), stroke: ink.ink, width: 0.3 * k })
}

/** The edge that hooks bear on, with a shadow line under it. */
function drawRail(sketch: Sketch, view: View, wall: DrawingQuestion['elevation']['wall'], k: number): void {
  if (wall.rail.length === 0) return
  const points = along(wall.rail, view)
  if (points.some(([, y]) => y > view.highest)) return
  const d = pathOf(points, view)
  sketch.add({ kind: 'path', d, stroke: ink.ink2, width: 0.5 * k })
  const shadow = points.map(([x, y]): readonly [number, number] => [x, y - (1.1 * k) / view.scale])
  sketch.add({ kind: 'path', d: pathOf(shadow, view), stroke: ink.line, width: 0.15 * k })
}

function pathOf(points: Heights, view: View): string {
  return points
    .map(([x, y], index) => `${index === 0 ? 'M' : 'L'} ${view.x(x)} ${view.y(Math.min(y, view.highest))}`)
    .join(' ')
}

/** The line with its height large, and in words which floor it is measured from. */
export function drawLine(sketch: Sketch, view: View, { elevation, datum, units, k }: DrawingQuestion): void {
  const line = levelLineOf(elevation)
  const points = line.ramp
    ? along(elevation.wall.floor, view).map(([x]): readonly [number, number] => [
        x,
        lineAt(line, elevation.wall.floor, x),
      ])
    : []
  const y = points.length > 0 ? view.y(points.at(-1)?.[1] ?? datum) : view.y(datum)
  if (points.length > 0) sketch.add({ kind: 'path', d: pathOf(points, view), stroke: ink.snapped, width: 0.4 * k })
  else sketch.line(view.left - 4 * k, y, view.right + 3 * k, y, 0.4 * k, ink.snapped)
  const height = figure(print(datum, units.steps), units)
  const x = view.right + 4 * k
  const main = sizeWithin(`${height.main} ${units.unit}`, 'figure', 4.2 * k, (besideLine - 3) * k, sketch.measure)
  sketch.text('level line', x, y - 0.9 * k, main, 'figure', `${height.main} ${units.unit}`)
  sketch.text('level line, other unit', x, y + 2.4 * k, 2.2 * k, 'narrow', `${height.other} ${otherUnit(units.unit)}`, {
    colour: ink.ink2,
  })
  const say = (mm: number) => `${figure(print(mm, units.steps), units).main} ${units.unit}`
  wrap(lineSaid(line, say), 'narrow', 2 * k, (besideLine - 4) * k, sketch.measure).forEach((text, index) => {
    sketch.text(`level line, how ${index}`, x, y + (5.1 + 2.4 * index) * k, 2 * k, 'narrow', text, { colour: ink.ink2 })
  })
}
