/**
 * A block of equal parts with one gap each way. Every line of marks is measured from one datum and rounded once: from
 * part to part the roundings of a gap would add up.
 */
import { defaultSteps, minus, print } from '../hang/printing.ts'
import type { GridAnswer, GridQuestion } from './layout-shape.ts'

/** `xl(c) = x0 + c (w + gx)`, `top(r) = top − r (h + gy)`, from centring the block. mm, rows from the top. */
export function layGrid(question: GridQuestion): GridAnswer {
  const { columns, rows, width, height, gapX, gapY, centre } = question
  const steps = question.steps ?? defaultSteps
  const drop = question.drop ?? null
  const blockWidth = columns * width + (columns - 1) * gapX
  const blockHeight = rows * height + (rows - 1) * gapY
  const left = centre.x - blockWidth / 2
  const top = centre.y + blockHeight / 2
  const xs = Array.from({ length: columns }, (_, c) => left + c * (width + gapX))
  const tops = Array.from({ length: rows }, (_, r) => top - r * (height + gapY))
  const drift = (count: number, part: number, gap: number) => {
    const each = print(part, steps)
    const between = print(gap, steps)
    const chained = { mm: (count - 1) * (each.mm + between.mm), inches: (count - 1) * (each.inches + between.inches) }
    return minus(chained, print((count - 1) * (part + gap), steps))
  }
  return {
    width: blockWidth,
    height: blockHeight,
    left,
    top,
    columns: xs.map((x, c) => ({
      left: x,
      centre: x + width / 2,
      printedLeft: print(x, steps),
      printedFromFirst: print(c * (width + gapX), steps),
    })),
    rows: tops.map((y, r) => ({
      top: y,
      bottom: y - height,
      centre: y - height / 2,
      bearing: drop === null ? null : y - drop,
      printedTop: print(y, steps),
      printedFromFirst: print(r * (height + gapY), steps),
      printedBearing: drop === null ? null : print(y - drop, steps),
    })),
    cells: tops.flatMap((y, row) => xs.map((x, column) => ({ row, column, x: x + width / 2, y: y - height / 2 }))),
    chainDrift: { x: drift(columns, width, gapX), y: drift(rows, height, gapY) },
  }
}
