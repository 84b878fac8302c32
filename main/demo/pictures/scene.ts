/**
 * What a scene is: for any point it says which colour is there and which way a brush or a burin would run. A medium
 * decides how that looks. x runs right and y down, the longer side of the picture being 1.
 */

import type { Palette } from './palettes.ts'
import type { Noise, Random } from './random.ts'
import type { Rgb } from './surface.ts'
import { clamp } from './surface.ts'

export interface Ground {
  readonly width: number
  readonly height: number
  readonly palette: Palette
  readonly random: Random
  readonly noise: Noise
}

/** Written by a scene: the colour and the direction in radians. */
export interface Spot {
  r: number
  g: number
  b: number
  turn: number
}

export type Scene = (x: number, y: number, spot: Spot) => void

export function put(spot: Spot, colour: Rgb, turn: number, light = 1): void {
  spot.r = colour[0] * light
  spot.g = colour[1] * light
  spot.b = colour[2] * light
  spot.turn = turn
}

export function over(spot: Spot, colour: Rgb, share: number): void {
  spot.r += (colour[0] - spot.r) * share
  spot.g += (colour[1] - spot.g) * share
  spot.b += (colour[2] - spot.b) * share
}

/** A scene looked up on a grid, so that a medium may ask often. */
export interface Looked {
  readonly width: number
  readonly height: number
  readonly rgb: Float32Array
  readonly turn: Float32Array
  /** Lightness, 0 to 1. */
  readonly tone: Float32Array
}

export function look(scene: Scene, width: number, height: number, step: number): Looked {
  const columns = Math.ceil(width / step)
  const rows = Math.ceil(height / step)
  const long = Math.max(width, height)
  const rgb = new Float32Array(columns * rows * 3)
  const turn = new Float32Array(columns * rows)
  const tone = new Float32Array(columns * rows)
  const spot: Spot = { r: 0, g: 0, b: 0, turn: 0 }
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      scene(((column + 0.5) * step) / long, ((row + 0.5) * step) / long, spot)
      const i = row * columns + column
      rgb[i * 3] = spot.r
      rgb[i * 3 + 1] = spot.g
      rgb[i * 3 + 2] = spot.b
      turn[i] = spot.turn
      tone[i] = clamp(0.3 * spot.r + 0.59 * spot.g + 0.11 * spot.b)
    }
  }
  return { width: columns, height: rows, rgb, turn, tone }
}

/** A number of the grid at a point given in pixels of the picture, drawn out between the grid's points. */
export function between(field: Float32Array, of: Looked, x: number, y: number): number {
  const cx = Math.min(of.width - 1.001, Math.max(0, x))
  const cy = Math.min(of.height - 1.001, Math.max(0, y))
  const c = Math.floor(cx)
  const r = Math.floor(cy)
  const u = cx - c
  const v = cy - r
  const i = r * of.width + c
  const right = c + 1 < of.width ? 1 : 0
  const down = r + 1 < of.height ? of.width : 0
  const a = field[i] ?? 0
  const b = field[i + right] ?? 0
  const d = field[i + down] ?? 0
  const e = field[i + down + right] ?? 0
  const top = a + (b - a) * u
  return top + (d + (e - d) * u - top) * v
}

/** Stretches the tones to the whole range from 0 to 1, leaving out the outermost hundredth on both sides. */
export function stretched(of: Looked): Float32Array {
  const counts = new Uint32Array(256)
  for (const tone of of.tone) counts[Math.floor(tone * 255)] = (counts[Math.floor(tone * 255)] ?? 0) + 1
  const least = of.tone.length / 100
  let low = 0
  let high = 255
  for (let sum = counts[0] ?? 0; sum < least && low < 254; sum += counts[low] ?? 0) low += 1
  for (let sum = counts[255] ?? 0; sum < least && high > low + 1; sum += counts[high] ?? 0) high -= 1
  return of.tone.map(tone => clamp((tone * 255 - low) / (high - low)))
}
