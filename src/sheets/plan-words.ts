/**
 * Words on the sheet of a plan: rooms, lengths of walls, what stands. Nothing is written over other words: what comes
 * first keeps its place. A thing's name lies on the thing while it fits there, else beside it with a leader that ends in
 * a dot on the thing (ISO 128-2, leader lines; from memory), else its number stands there and the name in a list.
 */
import { print } from '../hang/printing.ts'
import type { StoreyFigures } from '../plan/figures.ts'
import { within } from '../plan/outline-shape.ts'
import { figure as lengthFigure, type Units } from './figures.ts'
import { ink } from './ink.ts'
import { sizeWithin, wrap } from './lines.ts'
import { type Ground, groundOf, groundOfThing, type Spot } from './plan-ground.ts'
import { type Key, numberSaid } from './plan-keys.ts'
import { type Box, type TextShape, textBox } from './shapes.ts'
import type { Sketch } from './sketch.ts'

interface Question {
  readonly storey: StoreyFigures
  /** One to so many. */
  readonly scale: number
  readonly units: Units
}
type Put = (point: Spot) => Spot

/**
 * @param put the building's millimetres to those of the paper
 * @param kept what else is on the paper, where no words go
 * @returns the names that found no place, in the order of their numbers
 */
export function drawPlanWords(sketch: Sketch, question: Question, put: Put, kept: readonly Box[]): readonly Key[] {
  const ground = groundOf(question.storey, question.scale, put)
  for (const box of kept) ground.write(box)
  const small = drawRoomWords(sketch, question, put, ground)
  drawLengths(sketch, question, put, ground)
  const nowhere = drawNames(sketch, question, put, ground)
  let last = 0
  return [...small, ...nowhere].map(({ text, thing, spot }) => {
    const placed = drawNumber(sketch, last + 1, thing, spot, put, ground)
    if (placed) last += 1
    return { number: placed ? last : null, text }
  })
}

/** A name without a place. */
interface Unplaced {
  readonly text: string
  readonly spot: Spot
  /** What it names, where that is no room. */
  readonly thing: { readonly room: Room; readonly thing: Thing } | null
}

/** A number in the place of a name; false where it has none either. */
function drawNumber(
  sketch: Sketch,
  number: number,
  of: Unplaced['thing'],
  spot: Spot,
  put: Put,
  ground: Ground,
): boolean {
  const text = numberSaid(number)
  const [size] = sizes
  const near = [0, 2.2, -2.2].flatMap(down => [0, 2.2, -2.2].map((across): Spot => [spot[0] + across, spot[1] + down]))
  for (const [x, y] of near) {
    const shape: Written = { ...plain, face: 'strong', x, y: y + size * 0.26, size, text }
    const box = textBox(shape, sketch.measure)
    if (ground.written(box)) continue
    clean(sketch, box)
    write(sketch, ground, `key ${number}`, shape)
    return true
  }
  const beside = of === null ? null : besideThing(sketch, of.room, { ...of.thing, name: text }, spot, put, ground)
  if (beside !== null) drawBeside(sketch, ground, `key ${number}`, beside)
  return beside !== null
}

/** Writes a text and keeps others off it. */
function write(sketch: Sketch, ground: Ground, name: string, text: Written): void {
  const { x, y, size, face, anchor, colour, upright } = text
  sketch.text(name, x, y, size, face, text.text, { anchor, colour, ...(upright === true ? { upright } : {}) })
  ground.write(textBox(text, sketch.measure))
}
type Written = TextShape

const plain = { kind: 'text', face: 'plain', anchor: 'middle', colour: ink.ink2 } as const

function drawRoomWords(sketch: Sketch, { storey, scale }: Question, put: Put, ground: Ground): readonly Unplaced[] {
  const wide = new Map(storey.rooms.map(room => [room.middle.at, room.middle.wide / scale - 2]))
  const zoned = new Set(storey.zones.flatMap(zone => zone.rooms.map(room => room.middle.at)))
  const words = storey.figures.filter(figure => figure.kind === 'words')
  const small = new Map<Spot, string[]>()
  let count = 0
  for (const { role, at, text } of words) {
    if (role === 'thing') continue
    const [x, y] = put(at)
    const most = { room: 3.4, below: 2.4, zones: 2.1 }[role]
    const size = sizeWithin(text, 'plain', most, wide.get(at) ?? 30, sketch.measure)
    // Smaller than this nobody reads it.
    if (size < 1.2) {
      small.set(at, [...(small.get(at) ?? []), text])
      continue
    }
    const down = { room: 0, below: 3.4, zones: 6.4 }[role]
    const named = role === 'room' ? ({ face: 'strong', colour: ink.ink } as const) : {}
    const shape: Written = { ...plain, ...named, x, y: y + down, size, text }
    if (zoned.has(at)) clean(sketch, textBox(shape, sketch.measure))
    write(sketch, ground, `words ${count++}`, shape)
  }
  return [...small].map(([at, texts]) => {
    const name = words.find(one => one.role === 'room' && one.at === at)?.text ?? ''
    const rest = texts.filter(text => text !== name).join(', ')
    return { text: [name, rest].filter(text => text !== '').join(': '), spot: put(at), thing: null }
  })
}

/** Letters stand on clean paper, not on the lines of a zone or of a thing. */
function clean(sketch: Sketch, { x, y, w, h }: Box): void {
  sketch.add({ kind: 'rect', x: x - 0.4, y: y - 0.3, w: w + 0.8, h: h + 0.6, fill: ink.paper })
}

/** A shorter wall has its length only where nothing at all is in its way, and a tiny one none; mm of paper. */
const [short, tiny] = [11, 5]
const lengthSize = 2.1

/**
 * The length of each wall, just inside: along walls that run across or down the page, level beside slanting ones. It
 * makes way along the wall and into the room for what is there.
 */
function drawLengths(sketch: Sketch, { storey, scale, units }: Question, put: Put, ground: Ground): void {
  let count = 0
  for (const wall of storey.rooms.flatMap(room => room.walls)) {
    if (wall.length / scale < tiny) continue
    const spots = lengthSpots(sketch, wall, lengthFigure(print(wall.length, units.steps), units).main, put)
    const boxes = spots.map(spot => textBox(spot, sketch.measure))
    const free = boxes.findIndex(box => !ground.taken(box))
    const unwritten = wall.length / scale < short ? -1 : boxes.findIndex(box => !ground.written(box))
    const found = spots[free === -1 ? unwritten : free]
    if (found !== undefined) write(sketch, ground, `length ${count++}`, found)
  }
}

/** Where a wall's length may stand, the best place first. */
function lengthSpots(
  sketch: Sketch,
  { from, to, length }: Room['walls'][number],
  text: string,
  put: Put,
): readonly Written[] {
  const size = lengthSize
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const upright = Math.abs(ux) < 0.01
  const wide = sketch.measure.width('figure', size, text)
  // How far a level figure reaches towards a wall that slants.
  const reach = upright || Math.abs(uy) < 0.01 ? 0 : (Math.abs(uy) * wide + Math.abs(ux) * size * 0.7) / 2 - 1
  return [2, 4.4].flatMap(off =>
    [0.5, 0.36, 0.64, 0.24, 0.76].map((share): Written => {
      const [x, y] = put([from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share])
      // The room lies to the right of the way.
      const [inX, inY] = [-uy * (off + reach), ux * (off + reach)]
      const at = upright ? { x: x + inX + size * 0.35, y, upright: true } : { x: x + inX, y: y + inY + size * 0.35 }
      return { ...plain, ...at, face: 'figure', size, text }
    }),
  )
}

type Thing = StoreyFigures['rooms'][number]['things'][number]
type Room = StoreyFigures['rooms'][number]

/** Sizes of a name, mm: as it is meant to be, and the least that is still read. */
const sizes = [1.9, 1.6] as const
const lineHigh = 1.15

/** @returns what has no place beside its thing either */
function drawNames(sketch: Sketch, { storey, scale }: Question, put: Put, ground: Ground): readonly Unplaced[] {
  const named = storey.rooms.flatMap(room =>
    room.things.filter(({ name }) => name !== '').map(thing => ({ room, thing, spot: put(thing.at) })),
  )
  const left = named.filter(({ thing, spot }, index) => {
    const lines = onThing(sketch, thing, spot, scale, put, ground)
    for (const [at, line] of (lines ?? []).entries()) {
      clean(sketch, textBox(line, sketch.measure))
      write(sketch, ground, `thing ${index} ${at}`, line)
    }
    return lines === null
  })
  return left.flatMap(({ room, thing, spot }, index) => {
    const found = besideThing(sketch, room, thing, spot, put, ground)
    if (found === null) return [{ text: thing.name, spot, thing: { room, thing } }]
    drawBeside(sketch, ground, `beside ${index}`, found)
    return []
  })
}

function drawBeside(sketch: Sketch, ground: Ground, name: string, { lines, from, to }: Beside): void {
  const d = `M${from.join(' ')}L${to.join(' ')}`
  sketch.add({ kind: 'path', d, stroke: ink.ink3, width: 0.13 })
  const [x, y] = from
  sketch.add({ kind: 'rect', x: x - 0.25, y: y - 0.25, w: 0.5, h: 0.5, fill: ink.ink3 })
  ground.draw([from, to])
  for (const [at, line] of lines.entries()) write(sketch, ground, `${name} ${at}`, line)
}

/** The lines of a name about a middle, level or turned to be read from the right. */
function block([x, y]: Spot, texts: readonly string[], size: number, upright: boolean): readonly Written[] {
  return texts.map((text, at): Written => {
    const off = (at - (texts.length - 1) / 2) * size * lineHigh + size * 0.26
    return upright ? { ...plain, x: x + off, y, size, text, upright: true } : { ...plain, x, y: y + off, size, text }
  })
}

/** A name broken at its words so that no line is longer; null where a word alone is. */
function broken(sketch: Sketch, text: string, size: number, width: number): readonly string[] | null {
  if (text.split(' ').some(word => sketch.measure.width('plain', size, word) > width)) return null
  return wrap(text, 'plain', size, width, sketch.measure)
}

/** The name on its thing: in one line, turned, or in as many as there is room for; null where it has none. */
function onThing(
  sketch: Sketch,
  thing: Thing,
  spot: Spot,
  scale: number,
  put: Put,
  ground: Ground,
): readonly Written[] | null {
  const outline = groundOfThing(thing, put)
  const fits = (lines: readonly Written[]) =>
    lines.every(line => {
      const { x, y, w, h } = textBox(line, sketch.measure)
      const box = { x: x - 0.4, y: y - 0.3, w: w + 0.8, h: h + 0.6 }
      const corners: readonly Spot[] = [
        [box.x, box.y],
        [box.x + box.w, box.y],
        [box.x + box.w, box.y + box.h],
        [box.x, box.y + box.h],
      ]
      return corners.every(corner => within(outline, corner)) && !ground.written(box)
    })
  const longest = Math.max(thing.width, thing.depth) / scale
  for (const size of sizes) {
    const one = [thing.name]
    const texts = [Infinity, longest - 1, longest * 0.7, longest * 0.5].flatMap(width => {
      const lines = width === Infinity ? one : broken(sketch, thing.name, size, width)
      return lines === null ? [] : [lines]
    })
    for (const lines of texts) {
      for (const upright of [false, true]) {
        const made = block(spot, lines, size, upright)
        if (fits(made)) return made
      }
    }
  }
  return null
}

/** How far a name may stand from its thing, mm of paper, and how wide its lines run there. */
const away = [1.6, 3, 5, 8, 12, 17] as const
const besideWide = 22

interface Beside {
  readonly lines: readonly Written[]
  readonly from: Spot
  readonly to: Spot
}

/** The name beside its thing, in its room if it can be; null where there is nowhere. */
function besideThing(sketch: Sketch, room: Room, thing: Thing, spot: Spot, put: Put, ground: Ground): Beside | null {
  const [size] = sizes
  const texts = wrap(thing.name, 'plain', size, besideWide, sketch.measure)
  const w = Math.max(...texts.map(text => sketch.measure.width('plain', size, text)))
  const h = texts.length * size * lineHigh
  const outline = groundOfThing(thing, put)
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)]
  const reach = [(Math.max(...xs) - Math.min(...xs)) / 2, (Math.max(...ys) - Math.min(...ys)) / 2] as const
  const floor = room.corners.map(put)
  const spots = away.flatMap(off =>
    ways.map(([ux, uy]): Spot => [spot[0] + ux * (reach[0] + off + w / 2), spot[1] + uy * (reach[1] + off + h / 2)]),
  )
  const found = spots.flatMap((middle): { readonly indoors: boolean; readonly beside: Beside }[] => {
    const box = { x: middle[0] - w / 2 - 0.3, y: middle[1] - h / 2 - 0.3, w: w + 0.6, h: h + 0.6 }
    if (ground.taken(box)) return []
    const to: Spot = [
      Math.min(Math.max(spot[0], box.x), box.x + box.w),
      Math.min(Math.max(spot[1], box.y), box.y + box.h),
    ]
    if (ground.crosses(spot, to)) return []
    const indoors = [box.x, box.x + box.w].every(x => [box.y, box.y + box.h].every(y => within(floor, [x, y])))
    return [{ indoors, beside: { lines: block(middle, texts, size, false), from: spot, to } }]
  })
  return (found.find(({ indoors }) => indoors) ?? found[0])?.beside ?? null
}

const ways: readonly Spot[] = [
  [1, 0],
  [-1, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [1, 1],
  [-1, -1],
  [-1, 1],
]
