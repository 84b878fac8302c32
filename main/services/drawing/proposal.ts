/**
 * What a drawing proposes: its lines on the page's coordinates in millimetres, and the outlines that the chosen ones
 * enclose. The same question gives the same outlines, so that one can be taken by its key.
 */
import type { FoundOutlineRow } from '../../../src/contract/areas/drawing.ts'
import type { Received } from '../../../src/contract/contract.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { cornerBounds } from '../../../src/model/corner.ts'
import { type DrawingUnit, millimetresIn } from '../../../src/plan/drawing-units.ts'
import { TooDense } from '../../../src/plan/network.ts'
import { type FoundOutline, outlinesOf, usualOutlineRules } from '../../../src/plan/outlines-from-lines.ts'
import { namesWithin, type PlacedWords, roomFromOutline } from '../../../src/plan/room-from-outline.ts'
import { wallLayers } from '../../../src/plan/wall-layers.ts'
import type { Drawing } from '../../files/dxf/read.ts'

/** More lines than the walls of any house; what has more is a whole drawing, furniture and all. */
const mostLines = 60_000
/** `room.add` takes no more. */
const mostWalls = 60

export interface OnPage {
  readonly unit: DrawingUnit | null
  /** Millimetres in a unit of the drawing; 1 while nobody knows. */
  readonly scale: number
  /** The drawing's point that is 0, 0 of the page: its left edge and its top. */
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

export interface Proposal {
  readonly page: OnPage
  readonly chosen: readonly number[]
  readonly counted: readonly { readonly lines: number; readonly length: number; readonly words: number }[]
  readonly found: readonly FoundOutline[]
  readonly outlines: readonly FoundOutlineRow[]
  readonly ask: 'unit' | 'layers' | 'fewer layers' | ''
}

type Asked = Omit<Received<'drawing.read'>, 'handle'>

/** Refuses `not-found` where a layer is named that the drawing does not have. */
export function proposalOf(drawing: Drawing, asked: Asked, watch: () => void): Proposal {
  const unit = asked.unit ?? drawing.unit
  const page = onPage(drawing, unit)
  const counted = countLayers(drawing, page.scale)
  const chosen = chosenLayers(drawing, asked.layers, counted)
  const none = { page, chosen, counted, found: [], outlines: [] }
  if (unit === null) return { ...none, ask: 'unit' }
  if (chosen.length === 0) return { ...none, ask: 'layers' }
  const lines = linesOn(drawing, page, chosen)
  if (lines.length / 4 > mostLines) return { ...none, ask: 'fewer layers' }
  const rules = {
    join: asked.join ?? usualOutlineRules.join,
    thickest: asked.thickest ?? usualOutlineRules.thickest,
    widest: asked.widest ?? usualOutlineRules.widest,
    smallest: usualOutlineRules.smallest,
  }
  try {
    const found = outlinesOf(lines, rules, watch)
    const words = drawing.words.map(({ text, x, y }): PlacedWords => ({ text, ...toPage(page, x, y) }))
    const outlines = found.map((outline, at) => ({
      key: String(at + 1),
      ...namesWithin(outline, words),
      area: outline.area,
      about: outline.about,
      refused: refusedFor(outline),
      // As they will be numbered in the room.
      walls: roomFromOutline(outline).walls.map(wall => ({
        ...wall,
        from: [...wall.from] as [number, number],
        to: [...wall.to] as [number, number],
        openings: wall.openings.map(opening => ({ ...opening })),
      })),
    }))
    return { page, chosen, counted, found, outlines, ask: '' }
  } catch (error) {
    if (error instanceof TooDense) return { ...none, ask: 'fewer layers' }
    throw error
  }
}

function refusedFor({ walls }: FoundOutline): string {
  if (walls.length > mostWalls) return `It has ${walls.length} walls; a room has ${mostWalls} at most.`
  if (walls.some(({ length }) => length > 1e5)) return 'A wall of it is longer than 100 m. Is the unit right?'
  if (walls.some(({ angle }) => angle <= cornerBounds.least || angle >= cornerBounds.most))
    return 'Two of its walls lie on one another.'
  return ''
}

export function toPage({ left, top, scale }: OnPage, x: number, y: number): { readonly x: number; readonly y: number } {
  return { x: (x - left) * scale, y: (top - y) * scale }
}

function onPage({ pieces }: Drawing, unit: DrawingUnit | null): OnPage {
  const scale = unit === null ? 1 : millimetresIn[unit]
  const across = spanOf(pieces.xy, 0)
  const down = spanOf(pieces.xy, 1)
  return {
    unit,
    scale,
    left: across.from,
    top: down.to,
    width: (across.to - across.from) * scale,
    height: (down.to - down.from) * scale,
  }
}

/** A few strays lie far off in many drawings; a thousandth at either end is not counted where it widens the whole so. */
const strays = 0.001
const farOff = 10

function spanOf(xy: Float64Array, axis: 0 | 1): { readonly from: number; readonly to: number } {
  const values = new Float64Array(xy.length / 2)
  for (let at = 0; at < values.length; at++) values[at] = xy[at * 2 + axis] ?? 0
  values.sort()
  const off = Math.floor(values.length * strays)
  const whole = { from: values[0] ?? 0, to: values.at(-1) ?? 0 }
  const most = { from: values[off] ?? 0, to: values[values.length - 1 - off] ?? 0 }
  return whole.to - whole.from > farOff * (most.to - most.from) && most.to > most.from ? most : whole
}

function countLayers({ layers, pieces, words }: Drawing, scale: number) {
  const counted = layers.map(() => ({ lines: 0, length: 0, words: 0 }))
  for (let at = 0; at < pieces.count; at++) {
    const layer = counted[pieces.layer[at] ?? 0]
    if (layer === undefined) continue
    const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = pieces.xy.subarray(at * 4, at * 4 + 4)
    layer.lines += 1
    layer.length += Math.hypot(x2 - x1, y2 - y1) * scale
  }
  for (const { layer } of words) {
    const own = counted[layer]
    if (own !== undefined) own.words += 1
  }
  return counted
}

function chosenLayers(
  { layers }: Drawing,
  named: readonly string[] | undefined,
  counted: readonly { readonly lines: number }[],
): readonly number[] {
  if (named === undefined) return wallLayers(layers.map((layer, at) => ({ ...layer, lines: counted[at]?.lines ?? 0 })))
  return named.map((name, at) => {
    const place = layers.findIndex(layer => layer.name === name)
    if (place === -1) throw new Refusal('not-found', `The drawing has no layer “${name}”.`, { field: `layers.${at}` })
    return place
  })
}

function linesOn({ pieces, layers }: Drawing, page: OnPage, chosen: readonly number[]): Float64Array {
  const wanted = layers.map((_, at) => chosen.includes(at))
  const lines = new Float64Array(pieces.count * 4)
  let end = 0
  for (let at = 0; at < pieces.count; at++) {
    if (wanted[pieces.layer[at] ?? 0] !== true) continue
    for (let k = 0; k < 4; k += 2) {
      const { x, y } = toPage(page, pieces.xy[at * 4 + k] ?? 0, pieces.xy[at * 4 + k + 1] ?? 0)
      lines[end] = x
      lines[end + 1] = y
      end += 2
    }
  }
  return lines.subarray(0, end)
}
