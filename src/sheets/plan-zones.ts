/**
 * Climate and light zones of a plan on paper: each hatched over its rooms in a way of its own, with a legend that says
 * which it is and what its limits are.
 */
import type { StoreyFigures, ZoneDrawn } from '../plan/figures.ts'
import { hatch } from '../plan/hatch.ts'
import { ink } from './ink.ts'
import { firstLines } from './lines.ts'
import type { Shape } from './shapes.ts'
import type { Sketch } from './sketch.ts'

type Zones = StoreyFigures['zones']

/** Climate rises to the right, light falls: where a room is in one of each, the lines cross. Degrees, y down. */
const angles: Readonly<Record<ZoneDrawn['kind'], number>> = { climate: -45, light: 45 }
/** From line to line, mm of paper; the first zone of a kind has the first, and so on round. */
const distances = [3.2, 1.8, 4.6, 2.4] as const

/** Lines of the legend, mm of paper; more zones than this are not told one by one. */
const lineHigh = 3.7
const most = 12

/** Millimetres of paper that the legend takes above the foot. */
export function legendHigh(zones: Zones): number {
  const lines = Math.min(zones.length, most + 1)
  return lines === 0 ? 0 : lineHigh * lines + 1.6
}

interface Hatched {
  readonly angle: number
  readonly apart: number
}

function hatchings(zones: Zones): readonly Hatched[] {
  const count = { climate: 0, light: 0 }
  return zones.map(({ kind }) => {
    const apart = distances[count[kind] % distances.length] ?? 3
    count[kind] += 1
    return { angle: angles[kind], apart }
  })
}

type At = (point: readonly [number, number]) => string

/** Over the floor and under everything else. */
export function drawZones(sketch: Sketch, zones: Zones, scale: number, at: At): void {
  for (const [index, { angle, apart }] of hatchings(zones).entries()) {
    for (const room of zones[index]?.rooms ?? []) sketch.add(...lines(hatch(room.corners, angle, apart * scale), at))
  }
}

function lines(pieces: ReturnType<typeof hatch>, at: At): Shape[] {
  if (pieces.length === 0) return []
  const d = pieces.map(([from, to]) => `M${at(from)}L${at(to)}`).join('')
  return [{ kind: 'path', d, stroke: ink.line, width: 0.13 }]
}

/** @param y where the legend begins; its lines run to `right` */
export function drawLegend(sketch: Sketch, zones: Zones, left: number, right: number, y: number): void {
  const size = 2.4
  const swatch = { w: 9, h: 2.6 }
  const plain = ([x, down]: readonly [number, number]) => `${Math.round(x * 1e4) / 1e4} ${Math.round(down * 1e4) / 1e4}`
  for (const [index, { kind, name, note }] of zones.slice(0, most).entries()) {
    const { angle, apart } = hatchings(zones)[index] ?? { angle: 45, apart: 3 }
    const top = y + lineHigh * index
    const corners = [
      [left, top],
      [left + swatch.w, top],
      [left + swatch.w, top + swatch.h],
      [left, top + swatch.h],
    ] as const
    sketch.add(...lines(hatch(corners, angle, apart), plain))
    sketch.add({ kind: 'rect', x: left, y: top, ...swatch, stroke: ink.ink3, width: 0.13 })
    const from = left + swatch.w + 2.4
    const base = top + 2.2
    const wide = right - from
    const [called = ''] = firstLines(name, 1, 'strong', size, wide * 0.4, sketch.measure)
    const run = sketch.text(`zone ${index}`, from, base, size, 'strong', called)
    const limits = [`${kind} zone`, note].filter(text => text.trim() !== '').join(': ')
    const [said = ''] = firstLines(limits, 1, 'plain', size, wide - run - 2, sketch.measure)
    sketch.text(`limits ${index}`, from + run + 2, base, size, 'plain', said, { colour: ink.ink2 })
  }
  const unsaid = zones.length - most
  if (unsaid > 0) {
    const words = `and ${unsaid} more: the catalogue tells them room by room`
    sketch.text('more zones', left, y + lineHigh * most + 2.2, size, 'plain', words, { colour: ink.ink2 })
  }
}
