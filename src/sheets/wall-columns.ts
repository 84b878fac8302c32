/** The columns of a wall sheet's table: their shares of its width, and the heading over them. */
import type { Units } from './figures.ts'
import { ink } from './ink.ts'
import type { TextMeasure } from './shapes.ts'
import type { Sketch } from './sketch.ts'
import { ticks } from './wall-states.ts'

/** Shares of the table's width; what is left goes to the working. */
const shares = {
  number: 9,
  work: 44,
  floor: 29.5,
  line: 27.5,
  left: 29,
  right: 29,
  apart: 11,
  working: 66,
  ticks: 32,
} as const
const total = Object.values(shares).reduce((sum, share) => sum + share, 0)

export type Column = keyof typeof shares
export type Columns = Readonly<Record<Column, { readonly x: number; readonly w: number }>>

export function columnsOf(x: number, width: number): Columns {
  let at = x
  const entries = Object.entries(shares).map(([key, share]) => {
    const w = (share * width) / total
    const column = [key, { x: at, w }] as const
    at += w
    return column
  })
  return Object.fromEntries(entries) as Columns // the keys are those of `shares`
}

export interface TableStyle {
  readonly units: Units
  readonly k: number
  readonly measure: TextMeasure
}

/** Size of small words and from one of their lines to the next, before the sheet's own factor. mm. */
export const small = 2.25
export const leading = 2.7

export const headHeight = 11.5

export function drawHead(sketch: Sketch, x: number, y: number, width: number, { units, k }: TableStyle): void {
  const columns = columnsOf(x, width)
  const base = y + (headHeight - 1.8) * k
  const put = (column: Column, text: string, under: string) => {
    sketch.text(`heading ${column}`, columns[column].x, base - 2.8 * k, 2.3 * k, 'strong', text, { colour: ink.ink })
    sketch.text(`heading ${column} more`, columns[column].x, base, small * k, 'narrow', under, { colour: ink.ink2 })
  }
  put('work', 'Work', `height × width × depth, ${units.unit}`)
  put('floor', 'Bears at', 'from the floor under the mark')
  put('line', 'From the line', '+ above, − below')
  put('left', 'Left mark', 'from the wall’s left end')
  put('right', 'Right mark', 'from the wall’s left end')
  put('apart', 'Apart', units.unit)
  put('working', 'Working, second route, what carries', 'the two routes must agree')
  const step = columns.ticks.w / ticks.length
  ticks.forEach((tick, index) => {
    const words = tick.split(' ')
    for (const [line, word] of words.entries()) {
      const at = columns.ticks.x + step * (index + 0.5) + (0.65 + 2.3 * (line - (words.length - 1) / 2)) * k
      sketch.text(`heading ${tick} ${line}`, at, base + 0.6 * k, 2.1 * k, 'narrow', word, { upright: true })
    }
  })
  sketch.line(x, y + headHeight * k, x + width, y + headHeight * k, 0.4 * k)
}
