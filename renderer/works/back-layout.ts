/**
 * Where the measures of a back stand on its drawing: upright ones beside the work on their own side, level ones in
 * chains under it, and each with a place for the field that it is typed in. Pixels; the origin is the drawing's corner.
 */
import type { BackDrawing } from '../../src/hang/method.ts'
import { keyOf } from './back-data.ts'

export const field = { width: 76, height: 24 } as const
export const margin = { side: 112 } as const

type Dimension = BackDrawing['dimensions'][number]

export interface PlacedMeasure {
  readonly key: string
  /** The dimension line with its ticks, and the thin lines that lead to what is measured. */
  readonly line: string
  readonly leads: string
  readonly x: number
  readonly y: number
  readonly known: boolean
}

export interface Frame {
  readonly x: number
  readonly y: number
  readonly scale: number
  readonly width: number
  readonly height: number
}

const tick = (x: number, y: number) => `M${x - 4} ${y + 4}l8 -8`

/** Room over and under the work: for chains of level measures where there are any, else for the ticks alone. */
export function roomFor(
  dimensions: readonly Dimension[],
  width: number,
): { readonly top: number; readonly bottom: number } {
  const isLevel = dimensions.some(({ from, to }) => from.x !== to.x)
  const isOver = isLevel || dimensions.some(({ to }) => Math.abs(to.x - width / 2) < width / 50)
  return { top: isOver ? 72 : 20, bottom: isLevel ? 92 : 24 }
}

export function placeMeasures(dimensions: readonly Dimension[], frame: Frame): readonly PlacedMeasure[] {
  const taken = { left: 0, right: 0, under: 0, over: 0 }
  const W = frame.width * frame.scale
  const H = frame.height * frame.scale
  const X = (mm: number) => frame.x + mm * frame.scale
  const Y = (mm: number) => frame.y + mm * frame.scale

  /** A measure that would lie on the work's own lines is written above its top edge. */
  const overTop = () => frame.y - 10 - field.height - taken.over++ * 28

  function upright({ from, to }: Dimension) {
    const x = X(to.x)
    const middle = Math.abs(to.x - frame.width / 2) < frame.width / 50
    const left = to.x < frame.width / 2
    const [top, bottom] = [Math.min(Y(from.y), Y(to.y)), Math.max(Y(from.y), Y(to.y))]
    const mid = (top + bottom) / 2 - field.height / 2
    if (middle) return { at: x, top, bottom, edge: x, fx: x - field.width / 2, fy: overTop() }
    const out = 20 + (left ? taken.left++ : taken.right++) * (field.width + 16)
    const at = left ? frame.x - out : frame.x + W + out
    return { at, top, bottom, edge: x, fx: left ? at - 8 - field.width : at + 8, fy: Math.max(frame.y - 6, mid) }
  }

  function level({ from, to }: Dimension) {
    const [a, b] = [X(Math.min(from.x, to.x)), X(Math.max(from.x, to.x))]
    const begin = Y(Math.max(from.y, to.y))
    const row = (n: number) => frame.y + H + 26 + n * 32
    const atLeft = Math.abs(a - frame.x) < 0.5
    const atRight = Math.abs(b - frame.x - W) < 0.5
    if (atLeft !== atRight) {
      const y = row(0)
      return { a, b, y, begin, fx: atLeft ? frame.x - 10 - field.width : frame.x + W + 10, fy: y - field.height / 2 }
    }
    const inside = b - a > field.width + 18
    const y = inside ? row(taken.under++) : frame.y - 16 - taken.over++ * 28
    return {
      a,
      b,
      y,
      begin,
      fx: (a + b) / 2 - field.width / 2,
      fy: inside ? y - field.height / 2 : y - field.height - 4,
    }
  }

  return dimensions.map(one => {
    const key = keyOf(one.path)
    const known = one.value !== null
    if (one.from.x === one.to.x && one.from.y !== one.to.y) {
      const { at, top, bottom, edge, fx, fy } = upright(one)
      const leads = at === edge ? '' : `M${at} ${top}H${at < frame.x ? frame.x : frame.x + W}M${at} ${bottom}H${edge}`
      return { key, known, line: `M${at} ${top}V${bottom}${tick(at, top)}${tick(at, bottom)}`, leads, x: fx, y: fy }
    }
    const { a, b, y, begin, fx, fy } = level(one)
    const leads = `M${a} ${begin}V${y}M${b} ${begin}V${y}`
    return { key, known, line: `M${a} ${y}H${b}${tick(a, y)}${tick(b, y)}`, leads, x: fx, y: fy }
  })
}
