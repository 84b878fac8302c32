/**
 * The face of a work as a report is drawn on it, to scale: its picture, rules along two edges, every finding where it
 * lies with its number. What is new is drawn bold, what nobody is sure of in a broken line.
 */
import type { ConditionFindingTold } from '../contract/areas/condition-shape.ts'
import type { Behind } from '../record/condition/behind.ts'
import { boxOf, type Spot } from '../record/condition/shape.ts'
import { mitresOf, type Opening } from '../record/condition/sides.ts'
import type { LengthUnit } from './figures.ts'
import { ink } from './ink.ts'
import { type Box, boxesMeet, type Shape } from './shapes.ts'
import type { Sketch } from './sketch.ts'

export interface FaceDrawn {
  /** mm. */
  readonly width: number
  readonly height: number
  /** The hash of a picture that can be shown; null for the bare face. */
  readonly picture: string | null
  /** Of a back without a picture, what was measured of it. */
  readonly behind: Behind | null
  /** Of the frame, where the picture stands in it. */
  readonly opening: Opening | null
  readonly findings: readonly Pick<ConditionFindingTold, 'number' | 'form' | 'points' | 'age'>[]
}

/** Usual ratios, so that a rule finds on paper what the report says: twice as large to a hundredth. */
const scales = [
  0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 200, 500, 1000,
] as const

/** For the rules along the left and the upper edge, mm of paper. */
const edge = 9
/** Radius of a number's ring, mm of paper. */
const ring = 2.3

/** The largest usual scale at which the face with its rules fits: 4 stands for 1:4. */
export function faceScale(face: Pick<FaceDrawn, 'width' | 'height'>, room: Pick<Box, 'w' | 'h'>): number {
  // A number at the edge may stand out by its ring.
  const besides = edge + 2 * ring
  const needed = Math.max(face.width / (room.w - besides), face.height / (room.h - besides))
  return scales.find(scale => scale >= needed) ?? Math.ceil(needed)
}

export const scaleSaid = (scale: number) => (scale < 1 ? `${1 / scale}:1` : `1:${scale}`)

/** Draws the face into the upper left of the room; answers the box that it takes. */
export function drawFace(sketch: Sketch, face: FaceDrawn, room: Box, scale: number, unit: LengthUnit): Box {
  const [left, top] = [room.x + edge, room.y + edge]
  const at = ({ x, y }: Spot): Spot => ({ x: left + x / scale, y: top + y / scale })
  const box = { x: left, y: top, w: face.width / scale, h: face.height / scale }
  if (face.picture !== null) sketch.add({ kind: 'image', ...box, hash: face.picture })
  if (face.behind !== null) sketch.add(...behindShapes(face.behind, at))
  if (face.opening !== null) sketch.add(...openingShapes(face, face.opening, at))
  sketch.add({ kind: 'rect', ...box, stroke: ink.ink, width: 0.25 })
  drawRules(sketch, face, box, scale, unit)
  // All places first: no line may cross a number.
  for (const finding of face.findings) sketch.add(...placeShapes(finding, at))
  const taken: Box[] = []
  for (const finding of face.findings) {
    const { left: x, top: y, width, height } = boxOf(finding)
    const centre = at({ x: x + width / 2, y: y + height / 2 })
    const number = freeSpot(centre, taken, box)
    taken.push(number)
    drawNumber(sketch, finding.number, centre, { x: number.x + ring, y: number.y + ring })
  }
  return { x: room.x, y: room.y, w: edge + box.w, h: edge + box.h }
}

function behindShapes({ rings, lines }: Behind, at: (spot: Spot) => Spot): Shape[] {
  const pen = { stroke: ink.ink3, width: 0.2 } as const
  return [
    ...lines.map(points => ({ kind: 'path', d: pathOf(points.map(at)), ...pen }) as const),
    ...rings.map(point => {
      const { x, y } = at(point)
      return {
        kind: 'path',
        d: `M ${x - 1} ${y} A 1 1 0 1 0 ${x + 1} ${y} A 1 1 0 1 0 ${x - 1} ${y} Z`,
        ...pen,
      } as const
    }),
  ]
}

/** The opening and the mitres, which say that it is a frame. */
function openingShapes(face: Pick<FaceDrawn, 'width' | 'height'>, opening: Opening, at: (spot: Spot) => Spot): Shape[] {
  const pen = { stroke: ink.ink3, width: 0.2 } as const
  const { x, y } = at({ x: opening.left, y: opening.top })
  const end = at({ x: opening.left + opening.width, y: opening.top + opening.height })
  const mitres = mitresOf(face, opening).map(line => ({ kind: 'path', d: pathOf(line.map(at)), ...pen }) as const)
  return [{ kind: 'rect', x, y, w: end.x - x, h: end.y - y, ...pen }, ...mitres]
}

function placeShapes({ form, points, age }: FaceDrawn['findings'][number], at: (spot: Spot) => Spot): Shape[] {
  const d =
    form === 'mark'
      ? crossAt(at(points[0] ?? { x: 0, y: 0 }))
      : `${pathOf(points.map(at))}${form === 'area' ? ' Z' : ''}`
  const width = age === 'new' ? 0.75 : 0.35
  return [
    { kind: 'path', d, stroke: ink.paper, width: width + 0.7 },
    { kind: 'path', d, stroke: ink.ink, width, ...(age === 'unsure' ? { dash: [1.3, 0.8] as const } : {}) },
  ]
}

const two = (value: number) => value.toFixed(2)
const pathOf = (spots: readonly Spot[]) =>
  spots.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'} ${two(x)} ${two(y)}`).join(' ')
const crossAt = ({ x, y }: Spot) =>
  `M ${two(x - 1.8)} ${two(y)} L ${two(x + 1.8)} ${two(y)} M ${two(x)} ${two(y - 1.8)} L ${two(x)} ${two(y + 1.8)}`

/** Where a number stands clear of all before it, near what it names; beside it at the upper right where nothing is. */
function freeSpot(centre: Spot, taken: readonly Box[], face: Box): Box {
  const boxAt = (x: number, y: number): Box => ({ x: x - ring, y: y - ring, w: 2 * ring, h: 2 * ring })
  const inside = (b: Box) =>
    b.x >= face.x && b.y >= face.y && b.x + b.w <= face.x + face.w + 2 * ring && b.y + b.h <= face.y + face.h + 2 * ring
  for (let far = 4.6; far < 60; far += 3.4) {
    const turns = Math.round((2 * Math.PI * far) / 4.6)
    for (let turn = 0; turn < turns; turn++) {
      const angle = -Math.PI / 4 + (2 * Math.PI * turn) / turns
      const box = boxAt(centre.x + far * Math.cos(angle), centre.y + far * Math.sin(angle))
      if (inside(box) && !taken.some(other => boxesMeet(box, other))) return box
    }
  }
  return boxAt(centre.x + 4.6, centre.y - 4.6)
}

function drawNumber(sketch: Sketch, number: number, centre: Spot, spot: Spot): void {
  const far = Math.hypot(spot.x - centre.x, spot.y - centre.y)
  if (far > 7) {
    const share = (far - ring) / far
    const end = { x: centre.x + (spot.x - centre.x) * share, y: centre.y + (spot.y - centre.y) * share }
    sketch.line(centre.x, centre.y, end.x, end.y, 0.55, ink.paper)
    sketch.line(centre.x, centre.y, end.x, end.y, 0.18, ink.ink)
  }
  sketch.add(ringAt(spot))
  sketch.text(`mark ${number}`, spot.x, spot.y + 0.95, 2.7, 'figure', String(number), { anchor: 'middle' })
}

/** The ring that a finding's number stands in, about a middle. */
export function ringAt({ x, y }: Spot): Shape {
  const d = `M ${x - ring} ${y} A ${ring} ${ring} 0 1 0 ${x + ring} ${y} A ${ring} ${ring} 0 1 0 ${x - ring} ${y} Z`
  return { kind: 'path', d, fill: ink.paper, stroke: ink.ink, width: 0.2 }
}

function drawRules(sketch: Sketch, face: FaceDrawn, box: Box, scale: number, unit: LengthUnit): void {
  const inch = unit === 'in'
  const mm = inch ? 25.4 : 1
  const steps = inch ? [0.5, 1, 2, 6, 12, 24, 48] : [5, 10, 20, 50, 100, 200, 500, 1000]
  const step = steps.find(each => (each * mm) / scale >= 10) ?? 2000
  const said = (at: number) => String(unit === 'cm' ? at / 10 : at)
  const ticks = (long: number) => Array.from({ length: Math.floor(long / (step * mm) + 1e-9) + 1 }, (_, n) => n * step)
  const [above, before] = [box.y - 2, box.x - 2]
  sketch.line(box.x, above, box.x + box.w, above, 0.15, ink.ink3)
  sketch.line(before, box.y, before, box.y + box.h, 0.15, ink.ink3)
  for (const each of ticks(face.width)) {
    const x = box.x + (each * mm) / scale
    sketch.line(x, above - 1, x, above, 0.15, ink.ink3)
    sketch.text(`across ${each}`, x, above - 1.6, 2.3, 'narrow', said(each), { anchor: 'middle', colour: ink.ink3 })
  }
  for (const each of ticks(face.height)) {
    const y = box.y + (each * mm) / scale
    sketch.line(before - 1, y, before, y, 0.15, ink.ink3)
    if (each > 0) {
      sketch.text(`down ${each}`, before - 1.6, y + 0.8, 2.3, 'narrow', said(each), { anchor: 'end', colour: ink.ink3 })
    }
  }
}
