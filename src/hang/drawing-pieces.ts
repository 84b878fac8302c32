/**
 * Pieces that several drawings of a back share: dimension lines that a form types into, small plates, a pair of places.
 * mm from the work's left and top edges, y down. The rule they keep: a measure that nobody took is drawn at its usual
 * place and shows no value.
 */
import type { Point } from '../geometry/rect.ts'
import { numberAt } from './back.ts'
import type { BackDrawing, WorkSize } from './method.ts'

type Path = readonly (string | number)[]
type Dimension = BackDrawing['dimensions'][number]
type Line = BackDrawing['lines'][number]

/** A dimension whose value is what stands at `path` of the half-typed data. */
export function measure(raw: unknown, path: Path, from: Point, to: Point): Dimension {
  return { path, from, to, value: numberAt(raw, path) }
}

/** A small plate drawn about its hole. */
export function plateAt({ x, y }: Point, width: number, height: number): Line {
  const [w, h] = [width / 2, height / 2]
  return {
    kind: 'plate',
    points: [
      { x: x - w, y: y - h },
      { x: x + w, y: y - h },
      { x: x + w, y: y + h },
      { x: x - w, y: y + h },
      { x: x - w, y: y - h },
    ],
  }
}

/** Size of a small plate or bracket on a drawing of this work. */
export function small(work: WorkSize): number {
  return Math.max(8, Math.min(work.width, work.height) / 22)
}

/**
 * A pair of hangers under `at` of the data (empty for the data itself): each with its drop and inset, and the spacing
 * between them. Usual places where nothing was measured.
 */
export function pairDrawing(
  raw: unknown,
  work: WorkSize,
  at: Path,
  usualDrop: number,
): { readonly left: Point; readonly right: Point; readonly dimensions: readonly Dimension[] } {
  const spacing = numberAt(raw, [...at, 'spacing'])
  const usual = spacing === null ? work.width / 12 : (work.width - spacing) / 2
  const insetOf = (side: 'left' | 'right') => numberAt(raw, [...at, side, 'inset']) ?? usual
  const dropOf = (side: 'left' | 'right') => numberAt(raw, [...at, side, 'drop']) ?? usualDrop
  const left = { x: insetOf('left'), y: dropOf('left') }
  const right = { x: work.width - insetOf('right'), y: dropOf('right') }
  return {
    left,
    right,
    dimensions: [
      measure(raw, [...at, 'left', 'drop'], { x: left.x, y: 0 }, left),
      measure(raw, [...at, 'right', 'drop'], { x: right.x, y: 0 }, right),
      measure(raw, [...at, 'left', 'inset'], { x: 0, y: left.y }, left),
      measure(raw, [...at, 'right', 'inset'], right, { x: work.width, y: right.y }),
      measure(raw, [...at, 'spacing'], left, right),
    ],
  }
}
