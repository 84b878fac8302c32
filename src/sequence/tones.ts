/**
 * How a picture reads from some way off: its colour and its restlessness, cell by cell of a grid laid over it. Read
 * once from its pixels and kept; everything that asks how much a picture weighs works from these.
 */
import type { Lab } from './colour.ts'
import { labOfRgb } from './colour.ts'

export interface Tone extends Lab {
  /** Local contrast, 0 (even) to 1. */
  readonly detail: number
}

/** Cells across and down. */
export const cellsAcross = 8
/** Pixels across and down that a cell is read from. */
export const pixelsOfCell = 12
/** Pixels across and down that a whole picture is brought to, whatever its shape, before it is read. */
export const pixelsAcross = cellsAcross * pixelsOfCell

/** An L* that strays by so much within a cell (as a standard deviation) is as restless as it gets: stripes of two
 * greys 60 apart. Our choice; there is no published scale. */
const restless = 30

/**
 * Cells row by row from the top left. `rgb` holds `pixelsAcross` rows of as many pixels, three bytes each, sRGB.
 * Throws RangeError for any other length.
 */
export function tonesOfPixels(rgb: Uint8Array): Tone[] {
  if (rgb.length !== pixelsAcross * pixelsAcross * 3) throw new RangeError('pixels of another size')
  const tones: Tone[] = []
  for (let down = 0; down < cellsAcross; down += 1) {
    for (let across = 0; across < cellsAcross; across += 1) tones.push(toneOfCell(rgb, across, down))
  }
  return tones
}

function toneOfCell(rgb: Uint8Array, across: number, down: number): Tone {
  const sum = { l: 0, a: 0, b: 0, squares: 0 }
  for (let y = 0; y < pixelsOfCell; y += 1) {
    for (let x = 0; x < pixelsOfCell; x += 1) {
      const at = 3 * ((down * pixelsOfCell + y) * pixelsAcross + across * pixelsOfCell + x)
      const { l, a, b } = labOfRgb(rgb[at] ?? 0, rgb[at + 1] ?? 0, rgb[at + 2] ?? 0)
      sum.l += l
      sum.a += a
      sum.b += b
      sum.squares += l * l
    }
  }
  const of = pixelsOfCell * pixelsOfCell
  const l = sum.l / of
  const strays = Math.sqrt(Math.max(0, sum.squares / of - l * l))
  return { l, a: sum.a / of, b: sum.b / of, detail: Math.min(1, strays / restless) }
}

/** Colour of the whole, mean over the cells. */
export function meanTone(tones: readonly Tone[]): Tone {
  const mean = (of: (tone: Tone) => number) => tones.reduce((sum, tone) => sum + of(tone), 0) / tones.length
  return { l: mean(t => t.l), a: mean(t => t.a), b: mean(t => t.b), detail: mean(t => t.detail) }
}
