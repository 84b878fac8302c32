/** Parallel lines within an outline, as a drawing marks an area without filling it. */
import type { Point } from '../drawing/room-plan.ts'

/**
 * The pieces of parallel lines that lie inside. Lines are counted from 0, 0, so that they run on from one outline into
 * the next.
 *
 * @param angle clockwise on the page (y down), degrees
 * @param apart from line to line, in the unit of the corners
 */
export function hatch(
  corners: readonly Point[],
  angle: number,
  apart: number,
): readonly (readonly [from: Point, to: Point])[] {
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)]
  // Turned back, so that the lines run along x.
  const level = corners.map(([x, y]): Point => [x * cos + y * sin, y * cos - x * sin])
  const turned = (x: number, y: number): Point => [x * cos - y * sin, x * sin + y * cos]
  const ys = level.map(([, y]) => y)
  const pieces: (readonly [Point, Point])[] = []
  for (let step = Math.ceil(Math.min(...ys) / apart); step * apart <= Math.max(...ys); step += 1) {
    const y = step * apart
    const crossings = level
      .flatMap(([ax, ay], index) => {
        const [bx, by] = level[(index + 1) % level.length] ?? [ax, ay]
        return ay > y === by > y ? [] : [((bx - ax) * (y - ay)) / (by - ay) + ax]
      })
      .sort((a, b) => a - b)
    for (let at = 0; at + 1 < crossings.length; at += 2)
      pieces.push([turned(crossings[at] ?? 0, y), turned(crossings[at + 1] ?? 0, y)])
  }
  return pieces
}
