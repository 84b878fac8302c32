/**
 * A storey on one sheet of paper at a stated scale: walls cut through, what is in and on them, names, lengths of walls,
 * a scale bar, north. The same shapes are printed, drawn on the screen and written as SVG; a millimetre of the sheet is
 * so many of the house everywhere on it.
 */
import type { Figure, PlanLayer, StoreyFigures } from '../plan/figures.ts'
import type { Units } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import { drawKeys, keyLineHigh, keyLines } from './plan-keys.ts'
import { drawPlanWords } from './plan-words.ts'
import { drawLegend, drawZones, legendHigh } from './plan-zones.ts'
import type { Page, TextMeasure } from './shapes.ts'
import { type NamedBox, newSketch, type Sketch } from './sketch.ts'
import { footHeight, headerHeight, margin, voidWords } from './wall-frame.ts'

/** One to so many; the usual scales of plans (ISO 5455), and 1:25 and 1:250 that offices use beside them. */
export const planScales = [20, 25, 50, 100, 200, 250, 500, 1000, 2000, 5000] as const

/** Air about the drawing, mm of paper: thicknesses of lines and words that stand over an edge. */
const air = 4

export interface PlanSheetQuestion {
  readonly title: string
  /** Show, storey; what stands beside the title. */
  readonly about: string
  readonly storey: StoreyFigures
  /** One to so many. */
  readonly scale: number
  readonly paper: Size
  readonly north: number | null
  readonly units: Units
  readonly time: string
  readonly by: string
  /** Of the show's plan, and those that it makes void; null where no show is drawn. */
  readonly revision: number | null
  readonly voids: readonly number[]
}

interface Size {
  readonly width: number
  readonly height: number
}

/** Millimetres of paper that the drawing has to itself, beside what it says of its zones. */
export function roomFor(paper: Size, zones: StoreyFigures['zones']) {
  return {
    x: margin + air,
    y: margin + headerHeight + air - 2,
    w: paper.width - 2 * (margin + air),
    h: paper.height - 2 * margin - headerHeight - footHeight - 2 * air - legendHigh(zones),
  }
}

/** The largest usual scale at which everything has its place; null where none is small enough. */
export function scaleThatFits(storey: StoreyFigures, paper: Size): number | null {
  return planScales.find(scale => fits(storey, paper, scale)) ?? null
}

export function fits({ box, zones }: StoreyFigures, paper: Size, scale: number): boolean {
  if (box === null) return true
  const room = roomFor(paper, zones)
  return (box.right - box.left) / scale <= room.w && (box.bottom - box.top) / scale <= room.h
}

interface Pen {
  readonly stroke?: string
  readonly fill?: string
  readonly width: number
}

/** Line weights of ISO 128: 0.5 for what is cut, 0.25 for what is seen, 0.13 for the rest; mm. */
const pens: Readonly<Record<PlanLayer, Pen>> = {
  WALLS: { fill: ink.ink, stroke: ink.ink, width: 0.13 },
  'WALLS-UNMEASURED': { fill: ink.line, stroke: ink.line, width: 0.13 },
  ROOMS: { stroke: ink.ink, width: 0.35 },
  OPENINGS: { fill: ink.paper, stroke: ink.ink3, width: 0.13 },
  DOORS: { stroke: ink.ink2, width: 0.18 },
  FIXTURES: { fill: ink.paper, stroke: ink.ink2, width: 0.18 },
  PARTITIONS: { fill: ink.ink2, stroke: ink.ink, width: 0.25 },
  STANDING: { fill: ink.paper, stroke: ink.ink, width: 0.25 },
  TRACKS: { stroke: ink.ink3, width: 0.13 },
  WORKS: { fill: ink.snapped, stroke: ink.snapped, width: 0.13 },
  ZONES: { width: 0 },
  TEXT: { width: 0 },
}

/** What is drawn over what. */
const order: readonly PlanLayer[] = [
  'WALLS-UNMEASURED',
  'WALLS',
  'ROOMS',
  'OPENINGS',
  'DOORS',
  'TRACKS',
  'FIXTURES',
  'STANDING',
  'PARTITIONS',
  'WORKS',
]

export interface PlanSheet {
  readonly page: Page
  /** Of its texts, by name. */
  readonly boxes: readonly NamedBox[]
}

/** The page of a storey whose drawing fits; whoever asks has looked with `fits`. */
export function planSheet(question: PlanSheetQuestion, measure: TextMeasure): PlanSheet {
  const { paper, storey, scale } = question
  const sketch = newSketch(measure)
  const box = storey.box ?? { left: 0, top: 0, right: 0, bottom: 0 }
  const room = roomFor(paper, storey.zones)
  const left = room.x + (room.w - (box.right - box.left) / scale) / 2
  const { top, lines, listed, kept } = heightsFor(question, left, measure)
  const put = putAt(box, left, top, scale)
  drawZones(sketch, storey.zones, scale, point => put(point).map(plain).join(' '))
  for (const layer of order) {
    for (const figure of storey.figures) if (figure.layer === layer) draw(sketch, figure, put, scale)
  }
  drawPlanWords(sketch, question, put, kept)
  drawKeys(sketch, lines, margin, listed)
  drawHead(sketch, question)
  drawFoot(sketch, question)
  return { page: { ...paper, shapes: sketch.shapes }, boxes: sketch.boxes }
}

type Put = (point: readonly [number, number]) => readonly [number, number]

const putAt =
  (box: { readonly left: number; readonly top: number }, left: number, top: number, scale: number): Put =>
  ([x, y]) => [left + (x - box.left) / scale, top + (y - box.top) / scale]

/** Air between the drawing and the list of names below it, and between that and the foot; mm of paper. */
const [overList, underList] = [2, 1.2]

/**
 * Where the drawing begins down the paper, and the list of the names that find no place on it: as many lines as they
 * need, the drawing moved up for them as far as it can be. What is kept free for a list may cost a name its place, so it
 * is looked at again while the list grows.
 */
function heightsFor(question: PlanSheetQuestion, left: number, measure: TextMeasure) {
  const { paper, storey, scale } = question
  const box = storey.box ?? { left: 0, top: 0, right: 0, bottom: 0 }
  const room = roomFor(paper, storey.zones)
  const high = (box.bottom - box.top) / scale
  const middle = room.y + (room.h - high) / 2
  const end = paper.height - margin + 4 - footHeight - legendHigh(storey.zones) - underList
  const most = Math.max(1, Math.floor((end - room.y - high - overList) / keyLineHigh))
  const at = (count: number) => {
    const listed = end - count * keyLineHigh
    const top = Math.max(room.y, Math.min(middle, listed - overList - high))
    const kept = [
      { x: 0, y: 0, w: paper.width, h: room.y - air },
      { x: 0, y: listed, w: paper.width, h: paper.height - listed },
    ]
    const keys = drawPlanWords(newSketch(measure), question, putAt(box, left, top, scale), kept)
    return { top, listed, kept, lines: keyLines(keys, paper.width - 2 * margin, most, measure) }
  }
  let found = at(0)
  for (let count = 1; found.lines.length > 0 && count <= most; count++) {
    if (count < found.lines.length) continue
    found = at(count)
    if (found.lines.length <= count) break
  }
  return found
}

const plain = (value: number) => Math.round(value * 1e4) / 1e4

function draw(sketch: Sketch, figure: Figure, put: Put, scale: number): void {
  const pen = pens[figure.layer]
  const at = (point: readonly [number, number]) => put(point).map(plain).join(' ')
  if (figure.kind === 'line') {
    const { fill, ...open } = pen
    const d = `M${figure.points.map(at).join('L')}${figure.closed ? 'Z' : ''}`
    sketch.add({ kind: 'path', d, ...(figure.closed && fill !== undefined ? { fill } : {}), ...open })
  } else if (figure.kind === 'circle') {
    const r = figure.radius
    const [x, y] = figure.at
    const half = `A${plain(r / scale)} ${plain(r / scale)} 0 1 1 `
    sketch.add({ kind: 'path', d: `M${at([x - r, y])}${half}${at([x + r, y])}${half}${at([x - r, y])}Z`, ...pen })
  } else if (figure.kind === 'quarter') {
    const r = plain(figure.radius / scale)
    const d = `M${at(figure.from)}A${r} ${r} 0 0 ${figure.clockwise ? 1 : 0} ${at(figure.to)}`
    sketch.add({ kind: 'path', d, stroke: ink.ink3, width: 0.13 })
  }
}

function drawHead(sketch: Sketch, question: PlanSheetQuestion): void {
  const { title, about, scale, time, by, paper, revision, voids } = question
  const { measure } = sketch
  const right = paper.width - margin
  const base = margin + 3.5
  const scaleText = `1:${scale}`
  const scaleWidth = sketch.text('scale', right, base + 3, 6.2, 'strong', scaleText, { anchor: 'end' })
  const counted = revision === null ? '' : `revision ${revision}`
  const stamp = [counted, `as of ${time}`, by, voidWords(voids, 'plan')].filter(text => text !== '').join(' · ')
  const stampSize = sizeWithin(stamp, 'plain', 3, revision === null ? 70 : 110, measure)
  const stampWidth = sketch.text('time', right - scaleWidth - 4, base + 3, stampSize, 'plain', stamp, { anchor: 'end' })
  const room = right - margin - scaleWidth - stampWidth - 12
  const titleSize = sizeWithin(title, 'strong', 6.2, room * 0.7, measure)
  const titleWidth = sketch.text('title', margin, base + 3, titleSize, 'strong', title)
  const aboutSize = sizeWithin(about, 'plain', 3, room - titleWidth - 3, measure)
  sketch.text('about', margin + titleWidth + 3, base + 3, aboutSize, 'plain', about, { colour: ink.ink2 })
  sketch.line(margin, margin + 7.5, right, margin + 7.5, 0.5)
}

const cautions =
  'A plan as it stands in the catalogue: look on the spot before anything is built, cut or ordered by it. Bands in grey are walls whose thickness nobody measured. Local codes and licensed practice decide.'

function drawFoot(sketch: Sketch, question: PlanSheetQuestion): void {
  const { paper, storey, scale, north, units } = question
  const y = paper.height - margin + 4 - footHeight
  const right = paper.width - margin
  sketch.line(margin, y, right, y, 0.3)
  drawLegend(sketch, storey.zones, margin, right, y - legendHigh(storey.zones))
  const bar = barFor(scale, units.unit === 'in')
  drawBar(sketch, margin, y + 6, bar, scale)
  const from = margin + bar.mm / scale + 26
  if (north !== null) drawNorth(sketch, from - 8, y + 5.8, north)
  const said = north === null ? 'north is not known' : 'north'
  sketch.text('north', from - (north === null ? 10 : 3), y + 6.6, 2.2, 'plain', said, { colour: ink.ink2 })
  const words = `${units.unit === 'in' ? 'lengths in inches' : `lengths in ${units.unit}`} · print at full size: the bar is the proof`
  const run = sketch.text('units', right, y + 4, 2.4, 'plain', words, { anchor: 'end' })
  const wide = right - run - 6 - (from + 22)
  wrap(cautions, 'plain', 2.2, wide, sketch.measure).forEach((text, index) => {
    sketch.text(`foot ${index}`, from + 22, y + 3.4 + 2.7 * index, 2.2, 'plain', text, { colour: ink.ink2 })
  })
}

/** The longest round length that the bar has room for, mm. */
function barFor(scale: number, imperial: boolean): { readonly mm: number; readonly word: string } {
  const most = 50 * scale
  const choices = imperial
    ? [1, 2, 5, 10, 20, 50, 100, 200, 500].map(feet => ({ mm: feet * 304.8, word: `${feet} ft` }))
    : [0.5, 1, 2, 5, 10, 20, 50, 100, 200].map(metres => ({ mm: metres * 1000, word: `${metres} m` }))
  return choices.findLast(choice => choice.mm <= most) ?? { mm: 500, word: '0.5 m' }
}

function drawBar(
  sketch: Sketch,
  x: number,
  y: number,
  { mm, word }: { mm: number; word: string },
  scale: number,
): void {
  const run = mm / scale
  sketch.add({ kind: 'rect', x, y: y - 1.4, w: run / 2, h: 1.4, fill: ink.ink })
  sketch.add({ kind: 'rect', x, y: y - 1.4, w: run, h: 1.4, stroke: ink.ink, width: 0.18 })
  sketch.text('bar 0', x, y + 2.6, 2.2, 'figure', '0')
  sketch.text('bar', x + run, y + 2.6, 2.2, 'figure', word, { anchor: 'middle' })
}

/** An arrow, turned clockwise from the top of the page. */
function drawNorth(sketch: Sketch, x: number, y: number, degrees: number): void {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)]
  const at = (u: number, v: number) => `${plain(x + u * cos - v * sin)} ${plain(y + u * sin + v * cos)}`
  sketch.add({ kind: 'path', d: `M${at(0, -3.6)}L${at(1.6, 2.6)}L${at(0, 1.4)}Z`, fill: ink.ink })
  sketch.add({ kind: 'path', d: `M${at(0, -3.6)}L${at(-1.6, 2.6)}L${at(0, 1.4)}Z`, stroke: ink.ink, width: 0.2 })
}
