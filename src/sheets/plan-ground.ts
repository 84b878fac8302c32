/** What of a plan's sheet is taken: by what is drawn, which words make way for where they can, and by words. mm of paper. */
import type { Figure, PlanLayer, StoreyFigures } from '../plan/figures.ts'
import { footprintOf, overlapBy } from '../plan/footprint.ts'
import { type Box, boxesMeet } from './shapes.ts'

export type Spot = readonly [number, number]

export interface Ground {
  /** Words are there. */
  readonly written: (box: Box) => boolean
  /** Words are there, or something that is drawn. */
  readonly taken: (box: Box) => boolean
  /** A line would cross words or another leader. */
  readonly crosses: (from: Spot, to: Spot) => boolean
  readonly write: (box: Box) => void
  /** Draws a leader. */
  readonly draw: (line: readonly [Spot, Spot]) => void
}

interface Obstacle {
  readonly shape: readonly Spot[]
  readonly box: Box
}

/** Floors of rooms and zones are what words stand on; all else that is drawn is in the way. */
const under: ReadonlySet<PlanLayer> = new Set<PlanLayer>(['ROOMS', 'ZONES', 'TEXT'])

/** @param put the building's millimetres to those of the paper */
export function groundOf({ figures }: StoreyFigures, scale: number, put: (point: Spot) => Spot): Ground {
  const drawn = figures.flatMap(figure => (under.has(figure.layer) ? [] : shapesOf(figure, scale, put)))
  const leaders: Obstacle[] = []
  const boxes: Box[] = []
  const hits = (corners: readonly Spot[], box: Box, obstacles: readonly Obstacle[]) =>
    obstacles.some(other => boxesMeet(box, other.box) && overlapBy(corners, other.shape) > 0)
  const written = (box: Box) => boxes.some(other => boxesMeet(box, other)) || hits(cornersOf(box), box, leaders)
  return {
    written,
    taken: box => written(box) || hits(cornersOf(box), box, drawn),
    crosses: (from, to) => {
      const line = obstacle([from, to])
      return (
        boxes.some(box => boxesMeet(line.box, box) && overlapBy(line.shape, cornersOf(box)) > 0) ||
        hits(line.shape, line.box, leaders)
      )
    },
    write: box => {
      boxes.push(box)
    },
    draw: line => {
      leaders.push(obstacle(line))
    },
  }
}

/** What a thing takes up of the paper. */
export function groundOfThing(
  { at: [x, y], ...thing }: StoreyFigures['rooms'][number]['things'][number],
  put: (point: Spot) => Spot,
): readonly Spot[] {
  return footprintOf({ ...thing, x, y }).map(put)
}

function shapesOf(figure: Figure, scale: number, put: (point: Spot) => Spot): Obstacle[] {
  if (figure.kind === 'words') return []
  if (figure.kind === 'circle') {
    const [x, y] = put(figure.at)
    const [w, h] = [2 * (figure.radius / scale), 2 * (figure.radius / scale)]
    const turned = footprintOf({ x, y, turn: 0, width: w, depth: h, round: true })
    return [obstacle(turned)]
  }
  if (figure.kind === 'quarter') return [obstacle(quarter(figure).map(put))]
  return [obstacle(figure.points.map(put))]
}

/** Hinge, tip, what it sweeps farthest, and where it shuts. */
function quarter({ from, to, clockwise }: Figure & { kind: 'quarter' }): readonly Spot[] {
  const [mx, my] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const [vx, vy] = [(to[0] - from[0]) / 2, (to[1] - from[1]) / 2]
  const side = clockwise ? 1 : -1
  const hinge: Spot = [mx - vy * side, my + vx * side]
  const far: Spot = [hinge[0] + (mx - hinge[0]) * Math.SQRT2, hinge[1] + (my - hinge[1]) * Math.SQRT2]
  return [hinge, from, far, to]
}

/** Lines have a thickness: a box of none meets nothing. */
const thin = 0.05

function obstacle(shape: readonly Spot[]): Obstacle {
  const [xs, ys] = [shape.map(([x]) => x), shape.map(([, y]) => y)]
  const [left, top] = [Math.min(...xs) - thin, Math.min(...ys) - thin]
  return { shape, box: { x: left, y: top, w: Math.max(...xs) + thin - left, h: Math.max(...ys) + thin - top } }
}

function cornersOf({ x, y, w, h }: Box): readonly Spot[] {
  return [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ]
}
