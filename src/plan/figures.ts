/**
 * What of a storey goes out of the house: one list of plain figures by layer, from which the DXF, the PDF and the SVG
 * are all made, so that they cannot differ. The building's millimetres, x to the right and y down the page.
 */
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import type { ZoneRow } from '../contract/areas/standing.ts'
import type { Point, WallShape } from '../drawing/room-plan.ts'
import { type DrawnRoom, drawRooms } from './drawn-room.ts'
import { footprintOf } from './footprint.ts'
import { workOn } from './hit.ts'
import { type Box, boxOf } from './place.ts'
import { glassOf, onFace, partitionShapes, shapesOf } from './poche.ts'

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
    ...openingFigures(shape),
  ])
  const fixed = [...room.walls, ...room.faces].flatMap(wall => [
    ...wall.fixtures.map(each => loop('FIXTURES', onFace(wall, each.x, each.width, each.depth ?? flat))),
    ...wall.works.flatMap(work => (work.width === null ? [] : [loop('WORKS', workOn(wall, work))])),
  ])
  return [
    { kind: 'line', layer: 'ROOMS', points: room.corners, closed: room.closed },
    ...walls,
    ...pathFigures('DOORS', room.lines.leaves),
    ...pathFigures('DOORS', room.lines.swings),
    ...fixed,
  ]
}

/** An opening from face to face, a niche to its back; a window with its glass. */
function openingFigures(shape: WallShape): Figure[] {
  return shape.openings.flatMap(({ kind, band }) => [
    loop('OPENINGS', band),
    ...(kind === 'window' ? glassOf(shape, band).map(pane => line('OPENINGS', pane)) : []),
  ])
}

/** What is fixed flat on a wall still needs a line, mm; of the drawing alone. */
const flat = 20

/** The paths of a room: lines and loops, and quarters of a circle from where the line stands. */
function pathFigures(layer: PlanLayer, path: string): Figure[] {
  return path
    .split('M')
    .filter(text => text !== '')
    .map((part): Figure => {
      const [lines = '', arc] = part.split('A')
      const closed = lines.endsWith('Z')
      const points = lines.replace('Z', '').split('L').map(asPoint)
      if (arc === undefined) return { kind: 'line', layer, points, closed }
      const [radius = 0, , , , sweep = 0, x = 0, y = 0] = arc.trim().split(/\s+/).map(Number)
      const from = points.at(-1) ?? [0, 0]
      return { kind: 'quarter', layer, from, to: [x, y], radius, clockwise: sweep === 1 }
    })
}

function asPoint(text: string): Point {
  const [x = 0, y = 0] = text.trim().split(/\s+/).map(Number)
  return [x, y]
}

/** What stands on the floor and hangs from the ceiling, with the lines that tell what it is. */
function standingFigures(room: DrawnRoom): Figure[] {
  const things = room.things.flatMap(thing => {
    const [x, y] = thing.at
    const body: Figure =
      thing.round && thing.width === thing.depth
        ? { kind: 'circle', layer: 'STANDING', at: [x, y], radius: thing.width / 2 }
        : loop('STANDING', footprintOf({ ...thing, x, y }))
    const called: Figure = { kind: 'words', layer: 'TEXT', at: [x, y], text: thing.name, role: 'thing' }
    return thing.name === '' ? [body] : [body, called]
  })
  return [
    ...partitionShapes(room.partitions).flatMap(shape => [
      ...shape.solid.map(band => loop('PARTITIONS', band)),
      ...openingFigures(shape),
    ]),
    ...things,
    ...pathFigures('STANDING', room.stands.marks),
    ...room.tracks.map(track => line('TRACKS', [track.from, track.to])),
  ]
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
