/**
 * A picture being made: red, green and blue as numbers from 0 to 1 in rows. Lengths are pixels; a medium works on the
 * whole surface and `encode` turns it into a JPEG at the end.
 */
import sharp from 'sharp'
import type { Noise } from './random.ts'

export interface Surface {
  readonly width: number
  readonly height: number
  /** Three numbers a pixel. */
  readonly rgb: Float32Array
}

export type Rgb = readonly [number, number, number]

export function surface(width: number, height: number, ground: Rgb = [1, 1, 1]): Surface {
  const rgb = new Float32Array(width * height * 3)
  for (let i = 0; i < rgb.length; i += 3) {
    rgb[i] = ground[0]
    rgb[i + 1] = ground[1]
    rgb[i + 2] = ground[2]
  }
  return { width, height, rgb }
}

export function colour(hex: string): Rgb {
  const n = Number.parseInt(hex.slice(1), 16)
  return [((n >> 16) & 255) / 255, ((n >> 8) & 255) / 255, (n & 255) / 255]
}

export function blend(a: Rgb, b: Rgb, share: number): Rgb {
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share, a[2] + (b[2] - a[2]) * share]
}

/** From 0 below `from` to 1 above `to`, smoothly; also downwards. */
export function ramp(from: number, to: number, value: number): number {
  const t = Math.min(1, Math.max(0, (value - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

export function clamp(value: number): number {
  return Math.min(1, Math.max(0, value))
}

/** One number a pixel, computed on every `step`-th pixel and drawn out between: noise is dear, its detail is not. */
export function fieldOf(
  width: number,
  height: number,
  step: number,
  at: (x: number, y: number) => number,
): Float32Array {
  const columns = Math.ceil(width / step) + 2
  const rows = Math.ceil(height / step) + 2
  const coarse = new Float32Array(columns * rows)
  for (let r = 0; r < rows; r += 1)
    for (let c = 0; c < columns; c += 1) coarse[r * columns + c] = at(c * step, r * step)
  if (step === 1) {
    const exact = new Float32Array(width * height)
    for (let y = 0; y < height; y += 1) exact.set(coarse.subarray(y * columns, y * columns + width), y * width)
    return exact
  }
  const field = new Float32Array(width * height)
  for (let y = 0; y < height; y += 1) {
    const r = Math.floor(y / step)
    const v = y / step - r
    for (let x = 0; x < width; x += 1) {
      const c = Math.floor(x / step)
      const u = x / step - c
      const i = r * columns + c
      const a = coarse[i] ?? 0
      const b = coarse[i + 1] ?? 0
      const d = coarse[i + columns] ?? 0
      const e = coarse[i + columns + 1] ?? 0
      const top = a + (b - a) * u
      field[y * width + x] = top + (d + (e - d) * u - top) * v
    }
  }
  return field
}

/** Paper: a warm ground with a faint mottle. */
export function paper(width: number, height: number, ground: Rgb, noise: Noise, strength = 0.02): Surface {
  const sheet = surface(width, height, ground)
  const mottle = fieldOf(width, height, 2, (x, y) => noise(x / 5, y / 5) * 0.6 + noise(x / 60, y / 60))
  for (let i = 0; i < mottle.length; i += 1) {
    const shade = (mottle[i] ?? 0) * strength
    for (let k = 0; k < 3; k += 1) sheet.rgb[i * 3 + k] = (sheet.rgb[i * 3 + k] ?? 0) + shade * (k === 2 ? 1.3 : 1)
  }
  return sheet
}

/** Lays colour over a pixel: `share` 0 leaves it, 1 covers it. */
export function lay(on: Surface, pixel: number, over: Rgb, share: number): void {
  const i = pixel * 3
  const { rgb } = on
  rgb[i] = (rgb[i] ?? 0) + (over[0] - (rgb[i] ?? 0)) * share
  rgb[i + 1] = (rgb[i + 1] ?? 0) + (over[1] - (rgb[i + 1] ?? 0)) * share
  rgb[i + 2] = (rgb[i + 2] ?? 0) + (over[2] - (rgb[i + 2] ?? 0)) * share
}

/** Inks a pixel as a transparent ink does: it can only darken. */
export function stain(on: Surface, pixel: number, ink: Rgb, share: number): void {
  const i = pixel * 3
  const { rgb } = on
  for (let k = 0; k < 3; k += 1) rgb[i + k] = (rgb[i + k] ?? 0) * (1 - share + share * (ink[k] ?? 0))
}

/** Makes every pixel lighter or darker by a factor. */
export function shade(on: Surface, pixel: number, factor: number): void {
  const i = pixel * 3
  for (let k = 0; k < 3; k += 1) on.rgb[i + k] = (on.rgb[i + k] ?? 0) * factor
}

export async function encode(picture: Surface, quality: number): Promise<Buffer> {
  // A clamped array rounds and bounds by itself.
  const bytes = new Uint8ClampedArray(picture.rgb.length)
  for (let i = 0; i < picture.rgb.length; i += 1) bytes[i] = (picture.rgb[i] ?? 0) * 255
  return sharp(bytes, { raw: { width: picture.width, height: picture.height, channels: 3 } })
    .jpeg({ quality, chromaSubsampling: '4:2:0' })
    .toBuffer()
}
