/**
 * What one sheet of a paper template shows of the wall: the work's edges and middle, the level line, marks with their
 * names, where the neighbours lie. Everything is drawn as strokes cut at the sheet's frame.
 */
import type { MarksAnswer } from '../hang/marks-shape.ts'
import type { Printed } from '../hang/printing.ts'
import { figure, offset, type Units } from './figures.ts'
import { ink } from './ink.ts'
import { boxesMeet, textBox } from './shapes.ts'
import type { Sketch } from './sketch.ts'
import { type Area, clipped, onPaper, type Tile, type Tiling, templateMargin, templateOverlap } from './tiles.ts'

export interface TemplatePart {
  readonly letter: string
  readonly answer: MarksAnswer
}

export interface TemplateMark {
  /** Letter of the part of a set; empty for a work that hangs by itself. */
  readonly part: string
  readonly name: string
  readonly x: number
  readonly y: number
  readonly bearing: { readonly x: number; readonly y: number } | null
  readonly drilled: boolean
  readonly fixing: string
  readonly printed: {
    readonly x: Printed
    readonly fromLine: Printed
    readonly holeFromLine: Printed
    readonly holeFromFloor: Printed
  } | null
  /** Of a set: along from the set's left edge, as it stands on paper. */
  readonly running: Printed | null
}

export interface TileQuestion {
  readonly answer: MarksAnswer
  readonly parts: readonly TemplatePart[]
  readonly marks: readonly TemplateMark[]
  readonly tile: Tile
  readonly tiling: Tiling
  /** All of the wall that the template shows. */
  readonly sheet: Area
  readonly units: Units
}

/** Arms of a mark's cross, and its ring. */
const arm = 12
const ring = 4

/** Draws a sheet; false where nothing of the work falls on it. */
export function drawTile(sketch: Sketch, question: TileQuestion): boolean {
  const { answer, parts, marks, tile, sheet } = question
  const pen = penFor(sketch, tile)
  const { edges, datum } = answer
  const middle = (edges.left + edges.right) / 2
  // The middle and the line run over the whole template, so that sheets can be laid along them.
  pen.stroke(middle, sheet.bottom, middle, sheet.top, 0.2, ink.ink2, [6, 2])
  pen.stroke(sheet.left, datum, sheet.right, datum, 0.35, ink.snapped, [8, 3])
  outline(pen, edges, parts.length === 0 ? undefined : [3, 2])
  for (const part of parts) outline(pen, part.answer.edges)
  for (const own of byPart(marks)) {
    const carried = own.flatMap(mark => mark.bearing ?? [])
    const first = carried[0]
    const last = carried.at(-1)
    if (first !== undefined && last !== undefined && carried.length > 1) {
      pen.stroke(first.x, first.y, last.x, last.y, 0.2, ink.line)
    }
  }
  for (const mark of marks) drawMark(pen, mark)
  const inked = pen.inked()
  if (!inked) return false
  names(sketch, question)
  drawSeams(sketch, question)
  return true
}

/** What hangs by itself has a bearing line of its own. */
function byPart(marks: readonly TemplateMark[]): readonly (readonly TemplateMark[])[] {
  return [...Map.groupBy(marks, mark => mark.part).values()]
}

function outline(pen: Pen, edges: MarksAnswer['edges'], dash?: readonly [number, number]): void {
  const { left, right, top, bottom } = edges
  pen.stroke(left, top, right, top, 0.3, ink.ink, dash)
  pen.stroke(left, bottom, right, bottom, 0.3, ink.ink, dash)
  pen.stroke(left, bottom, left, top, 0.3, ink.ink, dash)
  pen.stroke(right, bottom, right, top, 0.3, ink.ink, dash)
}

interface Pen {
  readonly stroke: (
    x1: number,
    y1: number,
    x2: number,
    y2: number,
    width: number,
    colour: string,
    dash?: readonly [number, number],
  ) => void
  readonly inked: () => boolean
}

/** Strokes in wall millimetres, cut at the tile. */
function penFor(sketch: Sketch, tile: Tile): Pen {
  let inked = false
  return {
    stroke: (x1, y1, x2, y2, width, colour, dash) => {
      const cut = clipped({ x1, y1, x2, y2 }, tile)
      if (cut === null || (cut.x1 === cut.x2 && cut.y1 === cut.y2)) return
      inked = true
      const from = onPaper({ x: cut.x1, y: cut.y1 }, tile)
      const to = onPaper({ x: cut.x2, y: cut.y2 }, tile)
      const line = { kind: 'line', x1: from.x, y1: from.y, x2: to.x, y2: to.y, width, colour } as const
      sketch.add(dash === undefined ? line : { ...line, dash })
    },
    inked: () => inked,
  }
}

/** A cross through the hole with a ring round it; the bearing point as a short level stroke. */
function drawMark(pen: Pen, mark: TemplateMark): void {
  const { x, y, bearing } = mark
  if (mark.drilled) {
    pen.stroke(x - arm, y, x + arm, y, 0.25, ink.ink)
    pen.stroke(x, y - arm, x, y + arm, 0.25, ink.ink)
    const steps = 32
    for (let step = 0; step < steps; step++) {
      const [a, b] = [step, step + 1].map(each => (each / steps) * 2 * Math.PI)
      if (a === undefined || b === undefined) continue
      pen.stroke(
        x + ring * Math.cos(a),
        y + ring * Math.sin(a),
        x + ring * Math.cos(b),
        y + ring * Math.sin(b),
        0.25,
        ink.ink,
      )
    }
  }
  if (bearing !== null) pen.stroke(bearing.x - 7, bearing.y, bearing.x + 7, bearing.y, 0.5, ink.fits)
}

/** Names beside marks and lines, each wherever it stands free on this sheet; what finds no room stands on the next. */
function names(sketch: Sketch, { answer, parts, marks, tile, units }: TileQuestion): void {
  const frame = {
    x: templateMargin.left,
    y: templateMargin.top,
    w: tile.right - tile.left,
    h: tile.top - tile.bottom,
  }
  // No words over a cross that somebody drills through.
  const crosses = marks.map(mark => {
    const { x, y } = onPaper(mark, tile)
    return { x: x - arm, y: y - arm, w: 2 * arm, h: 2 * arm }
  })
  const place = (
    name: string,
    at: { x: number; y: number },
    lines: readonly string[],
    strong: boolean,
    sides: readonly ('start' | 'end')[] = ['start', 'end'],
  ) => {
    if (at.x < tile.left || at.x > tile.right || at.y < tile.bottom || at.y > tile.top) return
    const point = onPaper(at, tile)
    const size = strong ? 4 : 3
    const leading = size * 1.25
    for (const [anchor, dy] of sides.flatMap(side => [-6, 8, 14].map(down => [side, down] as const))) {
      const dx = anchor === 'start' ? arm + 2 : -arm - 2
      const shapes = lines.map((text, index) => ({
        kind: 'text' as const,
        x: point.x + dx,
        y: point.y + dy + index * leading,
        size: index === 0 ? size : 3,
        face: index === 0 && strong ? ('strong' as const) : ('plain' as const),
        text,
        anchor,
        colour: ink.ink,
      }))
      const boxes = shapes.map(shape => textBox(shape, sketch.measure))
      const inside = boxes.every(
        box =>
          box.x >= frame.x &&
          box.y >= frame.y &&
          box.x + box.w <= frame.x + frame.w &&
          box.y + box.h <= frame.y + frame.h,
      )
      if (!inside || boxes.some(box => [...crosses, ...sketch.boxes].some(taken => boxesMeet(taken, box)))) continue
      shapes.forEach((shape, index) => {
        sketch.text(`${name} ${index}`, shape.x, shape.y, shape.size, shape.face, shape.text, { anchor })
      })
      return
    }
  }
  // The last mark of several is named inwards: beyond it are the work's edge and the next part.
  const lasts = new Set(byPart(marks).flatMap(own => (own.length > 1 ? own.slice(-1) : [])))
  for (const mark of marks) {
    place(
      mark.name,
      mark,
      [
        mark.drilled ? mark.name : `${mark.name}, end of the edge`,
        ...(mark.fixing === '' ? [] : [mark.fixing]),
        ...(mark.running === null ? [] : [`${figure(mark.running, units).main} from the set’s left edge`]),
        ...(mark.printed === null
          ? []
          : [
              `hole ${offset(mark.printed.holeFromLine, units).main} from the line, ${figure(mark.printed.holeFromFloor, units).main} from the floor`,
            ]),
      ],
      true,
      lasts.has(mark) ? ['end', 'start'] : ['start', 'end'],
    )
  }
  for (const own of byPart(marks)) {
    const borne = own.filter(mark => mark.bearing !== null && mark.printed !== null)
    const [first] = borne
    const last = borne.at(-1)
    if (!first?.bearing || !last?.bearing || first === last || first.bearing.y !== last.bearing.y) continue
    if (first.printed === null) continue
    const x = Math.min(Math.max((tile.left + tile.right) / 2, first.bearing.x), last.bearing.x)
    const what = first.part === '' ? 'the work' : first.part
    const line = `${what} bears on this line, ${offset(first.printed.fromLine, units).main} from the level line`
    place(`bearing ${first.part}`.trim(), { x, y: first.bearing.y }, [line], false)
  }
  for (const { letter, answer: part } of parts) {
    const { left, right, top } = part.edges
    place(`part ${letter}`, { x: (left + right) / 2, y: top }, [`top edge of ${letter}`], false)
  }
  const { edges, datum } = answer
  const middle = (edges.left + edges.right) / 2
  const along = Math.min(Math.max((tile.left + tile.right) / 2, edges.left), edges.right)
  const whole = parts.length === 0 ? 'work' : 'set'
  place('top edge', { x: along, y: edges.top }, [`top edge of the ${whole}`], false)
  place('bottom edge', { x: along, y: edges.bottom }, [`bottom edge of the ${whole}`], false)
  place('level line', { x: along, y: datum }, ['level line'], false)
  const up = (tile.top + tile.bottom) / 2
  place('middle', { x: middle, y: up }, [`middle of the ${whole}`], false)
  place('left edge', { x: edges.left, y: up }, [parts.length === 0 ? 'left edge' : 'left edge of the set'], false)
  place('right edge', { x: edges.right, y: up }, [parts.length === 0 ? 'right edge' : 'right edge of the set'], false)
}

/** The frame, where the neighbour begins, and crosses that both sheets show at the same place of the wall. */
function drawSeams(sketch: Sketch, { tile, tiling }: TileQuestion): void {
  const w = tile.right - tile.left
  const h = tile.top - tile.bottom
  const { left, top } = templateMargin
  sketch.add({ kind: 'rect', x: left, y: top, w, h, stroke: ink.ink3, width: 0.15 })
  const dash = [2, 2] as const
  if (tile.column + 1 < tiling.columns) {
    const x = left + w - templateOverlap
    sketch.add({ kind: 'line', x1: x, y1: top, x2: x, y2: top + h, width: 0.15, colour: ink.ink3, dash })
  }
  if (tile.row + 1 < tiling.rows) {
    const y = top + h - templateOverlap
    sketch.add({ kind: 'line', x1: left, y1: y, x2: left + w, y2: y, width: 0.15, colour: ink.ink3, dash })
  }
  const half = templateOverlap / 2
  const seamsX = [...(tile.column > 0 ? [half] : []), ...(tile.column + 1 < tiling.columns ? [w - half] : [])]
  const seamsY = [...(tile.row > 0 ? [half] : []), ...(tile.row + 1 < tiling.rows ? [h - half] : [])]
  const crosses = [
    ...seamsX.flatMap(x => [h / 4, (3 * h) / 4].map(y => ({ x, y }))),
    ...seamsY.flatMap(y => [w / 4, (3 * w) / 4].map(x => ({ x, y }))),
  ]
  for (const { x, y } of crosses) {
    sketch.line(left + x - 4, top + y, left + x + 4, top + y, 0.2, ink.ink2)
    sketch.line(left + x, top + y - 4, left + x, top + y + 4, 0.2, ink.ink2)
  }
}
