/**
 * Rooms found in the lines of a drawing: what the chosen lines enclose and is wider than a wall. A proposal, never a
 * fact; a person looks at it and takes what is right. Millimetres, x to the right and y down the page; the walls of an
 * outline go clockwise, so that the room lies to the right of the way.
 */
import type { Point } from '../drawing/room-plan.ts'
import { boxIndex } from './box-index.ts'
import { type BridgeRules, bridgesOf } from './bridges.ts'
import { type Face, facesOf } from './faces.ts'
import { footOn, networkOf } from './network.ts'
import { areaOf, within } from './outline-shape.ts'
import { boxOf } from './place.ts'
import { type Facing, thicknessFinder } from './wall-thickness.ts'

export interface OutlineRules extends BridgeRules {
  /** The smallest room, square metres. */
  readonly smallest: number
}

/** What is right for most plans; a person may say otherwise. From memory. */
export const usualOutlineRules: OutlineRules = { join: 10, thickest: 600, widest: 2500, smallest: 1 }

export interface FoundWall {
  readonly from: Point
  readonly to: Point
  readonly length: number
  /** Interior angle at its end. */
  readonly angle: number
  /** To the line that runs beside it outside the room; null where there is none within a wall's thickness. */
  readonly thickness: number | null
  /** Gaps that were bridged, from its left end. */
  readonly openings: readonly { readonly x: number; readonly width: number }[]
}

export interface FoundOutline {
  readonly walls: readonly FoundWall[]
  /** Square metres within the outline. */
  readonly area: number
  /** It lies about other outlines: a border of the sheet, or the ground about the house. */
  readonly about: boolean
}

/**
 * @param lines x1, y1, x2, y2 of each chosen line
 * @param watch called now and then; may throw, which ends the search
 * @throws TooDense where they are no plan
 */
export function outlinesOf(
  lines: ArrayLike<number>,
  rules: OutlineRules,
  watch: () => void = () => undefined,
): readonly FoundOutline[] {
  const network = networkOf(lines, rules.join)
  watch()
  const bridges = bridgesOf(network, rules)
  watch()
  const { x, y } = network
  const bridged = new Set(bridges.map(([a, b]) => keyOf(a, b)))
  const faces = facesOf({ x, y, edges: [...network.edges, ...bridges] })
  const rooms = faces.filter(face => isRoom(face, rules))
  const facing = thicknessFinder(network, rules)
  const at = (node: number): Point => [x[node] ?? 0, y[node] ?? 0]
  const all = rooms
    .map(face => {
      watch()
      return outline(face.nodes.map(at), index => isBridge(face.nodes, index), facing, rules.join)
    })
    .filter(({ walls }) => walls.length >= 3)
    .sort((a, b) => topOf(a) - topOf(b) || leftOf(a) - leftOf(b))
  return markAbout(all)

  function isBridge(nodes: readonly number[], index: number): boolean {
    return bridged.has(keyOf(nodes[index] ?? 0, nodes[(index + 1) % nodes.length] ?? 0))
  }
}

type Shape = Pick<FoundOutline, 'walls' | 'area'>

function keyOf(a: number, b: number): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`
}

/** Wider than a wall: twice the area over what lies about it is the mean width of a long strip. */
function isRoom(face: Face, { thickest, smallest }: OutlineRules): boolean {
  return face.area >= smallest * 1e6 && (2 * face.area) / face.around > thickest * 1.05
}

/** Outlines that have another one within; a point just inside of the inner one tells. */
function markAbout(all: readonly Shape[]): readonly FoundOutline[] {
  const corners = all.map(({ walls }) => walls.map(wall => wall.from))
  const boxes = boxIndex(corners.map(each => boxOf(each) ?? { left: 0, top: 0, right: 0, bottom: 0 }))
  const about = new Set<number>()
  for (const [index, { walls }] of all.entries()) {
    const [wall] = walls
    if (wall === undefined) continue
    const { from, to, length } = wall
    const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
    const inside: Point = [(from[0] + to[0]) / 2 - uy, (from[1] + to[1]) / 2 + ux]
    for (const other of boxes(...inside)) {
      if (other !== index && within(corners[other] ?? [], inside)) about.add(other)
    }
  }
  return all.map(({ walls, area }, index) => ({ walls, area, about: about.has(index) }))
}

/** Corners of a face that are no corners of the room lie on a straight wall: within the joining distance of it. */
function outline(corners: readonly Point[], isBridge: (index: number) => boolean, facing: Facing, join: number): Shape {
  const kept = straightened(corners, join)
  const walls = kept.map((from, at): Omit<FoundWall, 'angle'> => {
    const to = kept[(at + 1) % kept.length] ?? from
    const [a, b]: [Point, Point] = [corners[from] ?? [0, 0], corners[to] ?? [0, 0]]
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    const along = (point: Point) => ((point[0] - a[0]) * (b[0] - a[0]) + (point[1] - a[1]) * (b[1] - a[1])) / length
    const openings: { x: number; width: number }[] = []
    for (let side = from; side !== to; side = (side + 1) % corners.length) {
      const [begin, end] = [corners[side] ?? a, corners[(side + 1) % corners.length] ?? b]
      if (isBridge(side)) openings.push({ x: along(begin), width: along(end) - along(begin) })
    }
    return { from: a, to: b, length, thickness: facing(a, b), openings }
  })
  return {
    walls: walls.map((wall, at) => ({ ...wall, angle: angleAt(wall, walls[(at + 1) % walls.length] ?? wall) })),
    area: areaOf(walls.map(wall => wall.from)) / 1e6,
  }
}

/** The places of the corners that stay. */
function straightened(corners: readonly Point[], join: number): readonly number[] {
  let kept = corners.map((_, at) => at)
  for (;;) {
    // The least corner goes first, so that a curve of many chords is not worn away from one end.
    let least = join
    let leastAt = -1
    for (const [at, corner] of kept.entries()) {
      const before = corners[kept.at(at - 1) ?? 0] ?? [0, 0]
      const after = corners[kept[(at + 1) % kept.length] ?? 0] ?? [0, 0]
      const { t, far } = footOn(before, after, ...(corners[corner] ?? [0, 0]))
      if (t > 0 && t < 1 && far <= Math.min(least, nearlyStraight * nearer(before, after, corners[corner] ?? [0, 0]))) {
        least = far
        leastAt = at
      }
    }
    if (leastAt === -1 || kept.length <= 3) return kept
    kept = kept.filter((_, at) => at !== leastAt)
  }
}

/** A corner this flat, as a share of the shorter of its two sides, is none: 1°. From memory. */
const nearlyStraight = Math.tan(Math.PI / 180)

function nearer([ax, ay]: Point, [bx, by]: Point, [x, y]: Point): number {
  return Math.min(Math.hypot(x - ax, y - ay), Math.hypot(x - bx, y - by))
}

/** Interior angle where one wall ends and the next begins, from 0 to 360. */
function angleAt(wall: Pick<FoundWall, 'from' | 'to'>, next: Pick<FoundWall, 'from' | 'to'>): number {
  const heading = (each: Pick<FoundWall, 'from' | 'to'>) =>
    Math.atan2(each.to[1] - each.from[1], each.to[0] - each.from[0])
  const turn = ((heading(next) - heading(wall)) * 180) / Math.PI
  const around = ((turn % 360) + 540) % 360
  return 180 - (around - 180)
}

function topOf({ walls }: Shape): number {
  return Math.round(Math.min(...walls.map(wall => wall.from[1])) / 500)
}

function leftOf({ walls }: Shape): number {
  return Math.min(...walls.map(wall => wall.from[0]))
}
