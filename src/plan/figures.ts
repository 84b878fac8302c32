/**
 * What of a storey goes out of the house: one list of plain figures by layer, from which the DXF, the PDF and the SVG
 * are all made, so that they cannot differ. The building's millimetres, x to the right and y down the page.
 */
import type { PlanPartitionRow, PlanRoomRow } from '../contract/areas/plan.ts'
import type { ZoneRow } from '../contract/areas/standing.ts'
import type { Point } from '../drawing/room-plan.ts'
import { type DrawnRoom, drawRooms } from './drawn-room.ts'
import { footprintOf } from './footprint.ts'
import { type Box, boxOf, toBuilding } from './place.ts'
import { onFace, shapesOf } from './poche.ts'

export const planLayers = [
  'ROOMS',
  'WALLS',
  'WALLS-UNMEASURED',
  'OPENINGS',
  'DOORS',
  'FIXTURES',
  'PARTITIONS',
  'STANDING',
  'TRACKS',
  'WORKS',
  'ZONES',
  'TEXT',
] as const
export type PlanLayer = (typeof planLayers)[number]

export type Figure =
  | { readonly kind: 'line'; readonly layer: PlanLayer; readonly points: readonly Point[]; readonly closed: boolean }
  | { readonly kind: 'circle'; readonly layer: PlanLayer; readonly at: Point; readonly radius: number }
  /** A quarter of a circle, clockwise on the page or against it. */
  | {
      readonly kind: 'quarter'
      readonly layer: PlanLayer
      readonly from: Point
      readonly to: Point
      readonly radius: number
      readonly clockwise: boolean
    }
  | {
      readonly kind: 'words'
      readonly layer: PlanLayer
      readonly at: Point
      readonly text: string
      readonly role: Role
    }

/** What words are: a room's name, its number and area below it, its zones below that, or what a thing is called. */
export type Role = 'room' | 'below' | 'zones' | 'thing'

export interface StoreyFigures {
  readonly figures: readonly Figure[]
  readonly rooms: readonly DrawnRoom[]
  /** Zones that have rooms here; of each its rooms that are drawn. */
  readonly zones: readonly ZoneDrawn[]
  /** Of all that is drawn; null where nothing is. */
  readonly box: Box | null
}

export interface ZoneDrawn extends Pick<ZoneRow, 'kind' | 'name' | 'note'> {
  readonly rooms: readonly DrawnRoom[]
}

/** @param area writes square metres as the sheet says them. */
export function figuresOf(
  rooms: readonly PlanRoomRow[],
  storey: string,
  area: (squareMetres: number) => string,
  zones: readonly ZoneRow[] = [],
): StoreyFigures {
  const drawn = drawRooms(
    rooms.filter(room => room.storey === storey),
    new Map(),
  )
  const here = zones.flatMap(({ kind, name, note, rooms: those }) => {
    const inIt = drawn.filter(room => those.includes(room.id))
    return inIt.length === 0 ? [] : [{ kind, name, note, rooms: inIt }]
  })
  const figures = [
    ...drawn.flatMap(room => [...roomFigures(room), ...standingFigures(room), ...wordsOf(room, area)]),
    ...zoneFigures(drawn, here),
  ]
  const points = figures.flatMap(figure => (figure.kind === 'line' ? figure.points : []))
  return { figures, rooms: drawn, zones: here, box: boxOf(points) }
}

const loop = (layer: PlanLayer, points: readonly Point[]): Figure => ({ kind: 'line', layer, points, closed: true })
const line = (layer: PlanLayer, points: readonly Point[]): Figure => ({ kind: 'line', layer, points, closed: false })

function roomFigures(room: DrawnRoom): Figure[] {
  const walls = shapesOf(room.walls).flatMap(shape => [
    ...shape.solid.map(band => loop(shape.wall.thickness === null ? 'WALLS-UNMEASURED' : 'WALLS', band)),
    ...shape.openings.map(opening => loop('OPENINGS', opening.band)),
  ])
  const fixed = room.walls.flatMap(wall => [
    ...wall.fixtures.map(each => loop('FIXTURES', onFace(wall, each.x, each.width, each.depth ?? flat))),
    ...wall.works.flatMap(work =>
      work.width === null
        ? []
        : [loop('WORKS', onFace(wall, work.x - work.width / 2, work.width, Math.max(work.depth ?? flat, flat)))],
    ),
  ])
  return [
    { kind: 'line', layer: 'ROOMS', points: room.corners, closed: room.closed },
    ...walls,
    ...pathFigures(room.lines.leaves),
    ...pathFigures(room.lines.swings),
    ...fixed,
  ]
}

/** What is fixed flat on a wall still needs a line, mm; of the drawing alone. */
const flat = 20

/** The paths of a room's doors: lines, and quarters of a circle from where the line stands. */
function pathFigures(path: string): Figure[] {
  const found: Figure[] = []
  for (const part of path.split('M').filter(text => text !== '')) {
    const [lines = '', arc] = part.split('A')
    const points = lines.split('L').map(asPoint)
    if (arc === undefined) {
      found.push(line('DOORS', points))
      continue
    }
    const [radius = 0, , , , sweep = 0, x = 0, y = 0] = arc.trim().split(/\s+/).map(Number)
    const from = points.at(-1) ?? [0, 0]
    found.push({ kind: 'quarter', layer: 'DOORS', from, to: [x, y], radius, clockwise: sweep === 1 })
  }
  return found
}

function asPoint(text: string): Point {
  const [x = 0, y = 0] = text.trim().split(/\s+/).map(Number)
  return [x, y]
}

/** What stands on the floor and hangs from the ceiling; of a room without a place it is still room-local. */
function standingFigures(room: DrawnRoom): Figure[] {
  const put = (point: Point): Point => (room.placed ? point : toBuilding(room.place, point))
  const things = room.things.flatMap(thing => {
    const [x, y] = put(thing.at)
    const turn = room.placed ? thing.turn : thing.turn + room.place.turn
    const body: Figure =
      thing.round && thing.width === thing.depth
        ? { kind: 'circle', layer: 'STANDING', at: [x, y], radius: thing.width / 2 }
        : loop('STANDING', footprintOf({ ...thing, x, y, turn }))
    const called: Figure = { kind: 'words', layer: 'TEXT', at: [x, y], text: thing.name, role: 'thing' }
    return thing.name === '' ? [body] : [body, called]
  })
  return [
    ...room.partitions.flatMap(partition => partitionFigures(partition, put)),
    ...things,
    ...room.tracks.map(track => line('TRACKS', [put(track.from), put(track.to)])),
  ]
}

/** The partition between its openings, which go through it. */
function partitionFigures(partition: PlanPartitionRow, put: (point: Point) => Point): Figure[] {
  const [from, to] = [put(partition.from), put(partition.to)]
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const [ux, uy] = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  const half = partition.thickness / 2
  const band = (a: number, b: number): readonly Point[] =>
    (
      [
        [a, -half],
        [b, -half],
        [b, half],
        [a, half],
      ] as const
    ).map(([along, off]) => [from[0] + ux * along - uy * off, from[1] + uy * along + ux * off])
  const holes = [...partition.openings].sort((a, b) => a.x - b.x)
  const figures: Figure[] = holes.map(({ x, width }) => loop('OPENINGS', band(x, x + width)))
  let at = 0
  for (const { x, width } of holes) {
    if (x > at) figures.push(loop('PARTITIONS', band(at, x)))
    at = Math.max(at, x + width)
  }
  if (at < run) figures.push(loop('PARTITIONS', band(at, run)))
  return figures
}

function wordsOf(room: DrawnRoom, area: (squareMetres: number) => string): Figure[] {
  const below = [room.number, room.closed ? area(room.area) : ''].filter(text => text !== '').join(' · ')
  const named: Figure = { kind: 'words', layer: 'TEXT', at: room.middle.at, text: room.name, role: 'room' }
  return below === ''
    ? [named]
    : [named, { kind: 'words', layer: 'TEXT', at: room.middle.at, text: below, role: 'below' }]
}

/** The floor of each room of a zone, and below its name in which zones a room is. */
function zoneFigures(rooms: readonly DrawnRoom[], zones: readonly ZoneDrawn[]): Figure[] {
  const floors = zones.flatMap(zone => zone.rooms.map(room => loop('ZONES', room.corners)))
  const words = rooms.flatMap((room): Figure[] => {
    const names = zones.flatMap(zone => (zone.rooms.includes(room) ? [zone.name] : []))
    if (names.length === 0) return []
    return [{ kind: 'words', layer: 'ZONES', at: room.middle.at, text: names.join(' · '), role: 'zones' }]
  })
  return [...floors, ...words]
}
