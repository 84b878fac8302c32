/**
 * The back of a work as it was measured for hanging, drawn as it is seen from behind: what a finding on the back is
 * marked on where nobody has photographed it.
 */
import type { Point } from '../../geometry/rect.ts'
import { methodOf } from '../../hang/methods.ts'
import type { Face } from './shape.ts'

export interface Behind {
  /** Middles of rings and plates, mm from the left and the top edge as seen from behind. */
  readonly rings: Point[]
  /** Wires, bars, cleats and braces. */
  readonly lines: Point[][]
}

interface MeasuredBack {
  readonly method: string
  readonly seenFrom: 'front' | 'back'
  readonly data: unknown
}

export function behindOf({ method, seenFrom, data }: MeasuredBack, face: Face): Behind {
  const { rings, lines, blocks } = methodOf(method).draw(data, face)
  const within = (value: number, most: number) => Math.min(Math.max(value, 0), most)
  // A plate stands out over the edge; it is drawn as far as the back goes.
  const seen = ({ x, y }: Point): Point => ({
    x: within(seenFrom === 'back' ? x : face.width - x, face.width),
    y: within(y, face.height),
  })
  const upright = (x: number): Point[] => [
    { x, y: 0 },
    { x, y: face.height },
  ]
  const braces = blocks.flatMap(({ from, to }) => [upright(from), upright(to)])
  return {
    rings: rings.map(seen),
    lines: [...lines.map(({ points }) => points), ...braces].map(points => points.map(seen)),
  }
}
