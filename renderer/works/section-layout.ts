/**
 * Which pieces of a section are shown how large: a high thin section in two pieces, about the bearing point and about the
 * bottom edge, a small one or one that stands on the floor as a whole. Pixels in each piece, y down.
 */

import type { Point } from '../../src/geometry/rect.ts'
import type { SectionDrawing } from '../../src/hang/method.ts'

export interface SectionPiece {
  readonly title: string
  readonly width: number
  readonly height: number
  /** Pixels for a millimetre. */
  readonly scale: number
  readonly wall: { readonly x: number; readonly width: number }
  readonly parts: readonly { readonly kind: SectionDrawing['parts'][number]['kind']; readonly d: string }[]
  readonly dimensions: readonly {
    readonly label: string
    readonly value: number | null
    readonly d: string
    readonly x: number
    readonly y: number
    readonly level: boolean
  }[]
}

interface Window {
  readonly title: string
  readonly from: Point
  readonly to: Point
}

/** What is higher than this is cut in two pieces; each shows so much above and below its point. mm. */
const WHOLE = 480
const ABOVE = 70
const BELOW = 75
const most = { width: 230, height: 250 } as const

export function pieceSection(section: SectionDrawing, stands: boolean): readonly SectionPiece[] {
  const points = section.parts.flatMap(part => part.points)
  const ys = points.map(point => point.y)
  const xs = [...points.map(point => point.x), -10]
  const [left, right] = [Math.min(...xs) - 12, Math.max(...xs) + 34]
  const [bottom, top] = [Math.min(...ys), Math.max(...ys)]
  const windows: readonly Window[] =
    stands || top - bottom < WHOLE
      ? [{ title: '', from: { x: left, y: bottom - (stands ? 110 : 26) }, to: { x: right, y: top + 30 } }]
      : [
          { title: 'where it bears', from: { x: left, y: -BELOW }, to: { x: right, y: Math.min(top + 24, ABOVE) } },
          { title: 'at the bottom', from: { x: left, y: bottom - 26 }, to: { x: right, y: bottom + ABOVE } },
        ]
  return windows.map(window => piece(section, window))
}

function piece(section: SectionDrawing, { title, from, to }: Window): SectionPiece {
  const scale = Math.min(most.width / (to.x - from.x), most.height / (to.y - from.y))
  const [width, height] = [(to.x - from.x) * scale, (to.y - from.y) * scale]
  const X = (x: number) => round((x - from.x) * scale)
  const Y = (y: number) => round((to.y - y) * scale)
  const path = (points: readonly Point[], closed: boolean) =>
    `M${points.map(({ x, y }) => `${X(x)} ${Y(y)}`).join('L')}${closed ? 'Z' : ''}`
  return {
    title,
    width: round(width),
    height: round(height),
    scale,
    wall: { x: 0, width: X(0) },
    parts: section.parts.map(({ kind, points, closed }) => ({ kind, d: path(points, closed) })),
    dimensions: section.dimensions
      .filter(one => inside(one.from.y, one.to.y, from.y, to.y))
      .map(one => {
        const level = Math.abs(one.from.y - one.to.y) < 1e-9
        const [a, b] = [clamp(one.from.y, from.y, to.y), clamp(one.to.y, from.y, to.y)]
        return {
          label: one.label,
          value: one.value,
          level,
          d: path(
            [
              { x: one.from.x, y: a },
              { x: one.to.x, y: b },
            ],
            false,
          ),
          x: level ? (X(one.from.x) + X(one.to.x)) / 2 : X(one.to.x) + 4,
          y: level ? Y(one.from.y) - 4 : (Y(a) + Y(b)) / 2 + 4,
        }
      }),
  }
}

function inside(a: number, b: number, from: number, to: number): boolean {
  return Math.max(a, b) >= from && Math.min(a, b) <= to
}

function clamp(value: number, from: number, to: number): number {
  return Math.min(to, Math.max(from, value))
}

function round(value: number): number {
  return Math.round(value * 10) / 10
}
