/**
 * Painting: a scene laid on in strokes, large ones first. Each stroke has bristles, a body that catches light, and takes
 * its colour and direction from the scene under its middle.
 */

import type { Noise, Random } from './random.ts'
import { noiseFrom } from './random.ts'
import type { Looked, Scene } from './scene.ts'
import { between, look } from './scene.ts'
import type { Rgb, Surface } from './surface.ts'
import { fieldOf, shade, surface } from './surface.ts'

export interface Handling {
  /** Width of the largest brush against the longer side. */
  readonly brush: number
  /** How much body the paint has, 0 thin to 1 thick. */
  readonly body: number
  /** How far colours stray. */
  readonly stray: number
  /** How much the stroke turns away from the scene's direction. */
  readonly restless: number
  readonly ground: Rgb
  /** How much of the weave of the canvas shows. */
  readonly weave: number
}

const STEP = 3
/** How often each layer, from the largest brush to the finest, goes over the picture. */
const COVERS = [2.9, 1.6, 1.5, 1.5] as const

export function paint(scene: Scene, width: number, height: number, handling: Handling, random: Random): Surface {
  const noise = noiseFrom(random)
  const seen = look(scene, width, height, STEP)
  const picture = surface(width, height, handling.ground)
  const body = new Float32Array(width * height)
  const long = Math.max(width, height)
  const sizes = [1, 0.55, 0.3, 0.17]
  for (const [layer, size] of sizes.entries()) {
    const wide = Math.max(3.2, handling.brush * long * size)
    const length = wide * (layer === 0 ? 4.5 : 3.6)
    const cover = COVERS[layer] ?? 1
    const count = Math.round((width * height * cover) / (wide * length))
    for (let i = 0; i < count; i += 1) {
      const x = random.next() * width
      const y = random.next() * height
      // Fine brushes go where there is something fine to paint.
      const fine = layer === 0 ? 0 : detail(seen, x / STEP, y / STEP)
      if (layer > 1 && fine < 0.03 * layer + random.next() * 0.06) continue
      const short = 1 / (1 + 5 * Math.min(0.3, fine))
      stroke(
        picture,
        body,
        seen,
        noise,
        random,
        handling,
        x,
        y,
        wide * random.between(0.7, 1.2),
        length * short * random.between(0.6, 1.3),
      )
    }
  }
  relief(picture, body, handling, noise)
  return picture
}

/** How much lightness changes about a point of the grid. */
function detail(seen: Looked, x: number, y: number): number {
  const a = between(seen.tone, seen, x - 2, y)
  const b = between(seen.tone, seen, x + 2, y)
  const c = between(seen.tone, seen, x, y - 2)
  const d = between(seen.tone, seen, x, y + 2)
  return Math.abs(a - b) + Math.abs(c - d)
}

function stroke(
  picture: Surface,
  body: Float32Array,
  seen: Looked,
  noise: Noise,
  random: Random,
  handling: Handling,
  x: number,
  y: number,
  wide: number,
  length: number,
): void {
  const { width, height, rgb } = picture
  const column = Math.min(seen.width - 1, Math.floor(x / STEP))
  const row = Math.min(seen.height - 1, Math.floor(y / STEP))
  const place = row * seen.width + column
  const stray = handling.stray
  const lift = 1 + random.bell() * stray
  const colour: Rgb = [
    (seen.rgb[place * 3] ?? 0) * lift + random.bell() * stray * 0.25,
    (seen.rgb[place * 3 + 1] ?? 0) * lift + random.bell() * stray * 0.18,
    (seen.rgb[place * 3 + 2] ?? 0) * lift + random.bell() * stray * 0.25,
  ]
  const turn =
    (seen.turn[place] ?? 0) + noise(x / 140, y / 140) * handling.restless + random.bell() * handling.restless * 0.3
  const bend = (random.bell() * 0.35) / length
  const c = Math.cos(turn)
  const s = Math.sin(turn)
  const half = length / 2
  const reach = wide / 2
  const boxY = Math.abs(s) * half + Math.abs(c) * reach + wide * 0.5
  const sag = Math.abs(bend) * half * half
  const top = Math.max(0, Math.floor(y - boxY))
  const foot = Math.min(height - 1, Math.ceil(y + boxY))
  const seed = random.next() * 500
  const bristles: number[] = []
  const lines = Math.max(4, Math.ceil(wide * 0.7))
  for (let i = 0; i <= lines; i += 1) bristles.push(random.next())
  for (let py = top; py <= foot; py += 1) {
    const dy = py - y
    const [from, to] = crossing(c, s, dy, half, reach + sag, x, width)
    for (let px = from; px <= to; px += 1) {
      const dx = px - x
      const along = dx * c + dy * s
      if (along < -half || along > half) continue
      const across = -dx * s + dy * c - bend * along * along
      if (across < -reach || across > reach) continue
      const line = ((across + reach) / wide) * lines
      const first = Math.floor(line)
      const bristle = (bristles[first] ?? 0) + ((bristles[first + 1] ?? 0) - (bristles[first] ?? 0)) * (line - first)
      const t = along / half
      // The paint runs out towards the end, bristle by bristle.
      const aside = (across / reach) * (across / reach)
      const load = 1.25 - 0.5 * (t + 1) * 0.5 - bristle * 0.35 - aside * aside * aside
      const end = (1 - Math.abs(t)) * 5 + bristle * 1.2 - 0.6
      const share = Math.min(1, Math.max(0, load * 1.6)) * Math.min(1, Math.max(0, end))
      if (share <= 0.02) continue
      const pixel = py * width + px
      const tint = 0.94 + 0.12 * bristle
      const cover = share * 0.94
      const at = pixel * 3
      // As `lay` does, without a list made for each of millions of pixels.
      rgb[at] = (rgb[at] ?? 0) * (1 - cover) + colour[0] * tint * cover
      rgb[at + 1] = (rgb[at + 1] ?? 0) * (1 - cover) + colour[1] * tint * cover
      rgb[at + 2] = (rgb[at + 2] ?? 0) * (1 - cover) + colour[2] * tint * cover
      const ridge = bristle * 0.7 + aside * aside * 0.5 + (t > 0.75 ? (t - 0.75) * 1.2 : 0) + ((seed * 7) % 1) * 0.3
      body[pixel] = (body[pixel] ?? 0) * (1 - share) + ridge * share
    }
  }
}

/** The pixels of a row that may lie inside a stroke: where the row crosses both the length and the width of it. */
function crossing(
  c: number,
  s: number,
  dy: number,
  half: number,
  reach: number,
  x: number,
  width: number,
): [number, number] {
  let from = -x
  let to = width - 1 - x
  if (Math.abs(c) > 1e-6) {
    const a = (-half - dy * s) / c
    const b = (half - dy * s) / c
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  if (Math.abs(s) > 1e-6) {
    const a = (dy * c - reach) / s
    const b = (dy * c + reach) / s
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  return [Math.max(0, Math.floor(x + from)), Math.min(width - 1, Math.ceil(x + to))]
}

/** Light from the upper left on the paint's body and on the weave under it. */
function relief(picture: Surface, body: Float32Array, handling: Handling, noise: Noise): void {
  const { width, height } = picture
  const uneven = fieldOf(width, height, 8, (x, y) => noise(x / 210, y / 210))
  const warp = Float32Array.from({ length: Math.max(width, height) }, (_, i) => Math.sin(i * 1.9))
  for (let y = 1; y < height - 1; y += 1) {
    for (let x = 1; x < width - 1; x += 1) {
      const i = y * width + x
      const slope = (body[i + 1] ?? 0) - (body[i - 1] ?? 0) + ((body[i + width] ?? 0) - (body[i - width] ?? 0)) * 1.2
      const thread = (warp[x] ?? 0) * (warp[y] ?? 0) * handling.weave * (1 - 0.6 * Math.min(1, body[i] ?? 0))
      shade(
        picture,
        i,
        1 + Math.max(-0.3, Math.min(0.34, slope * 0.34 * handling.body)) + thread * 0.05 + (uneven[i] ?? 0) * 0.03,
      )
    }
  }
}
