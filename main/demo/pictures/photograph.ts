/** Photographs: silver in gelatine from a scene, shadows of things laid on the paper, and ripples in sand or water. */

import type { Random } from './random.ts'
import { noiseFrom } from './random.ts'
import type { Scene } from './scene.ts'
import { between, look, stretched } from './scene.ts'
import type { Rgb, Surface } from './surface.ts'
import { clamp, fieldOf, ramp, surface } from './surface.ts'

export interface Silver {
  /** Tint of the darkest and the lightest tone. */
  readonly dark: Rgb
  readonly light: Rgb
  readonly contrast: number
  readonly grain: number
  readonly vignette: number
  /** Pixels by which the lens draws softly away from the middle. */
  readonly soft: number
  /** White paper round the image, as a share of the longer side. */
  readonly border: number
}

export function silver(scene: Scene, width: number, height: number, how: Silver, random: Random): Surface {
  const seen = look(scene, width, height, 2)
  return develop(stretched(seen), seen, width, height, how, random)
}

type Grid = Pick<ReturnType<typeof look>, 'width' | 'height' | 'rgb' | 'turn' | 'tone'>

function develop(tone: Float32Array, seen: Grid, width: number, height: number, how: Silver, random: Random): Surface {
  const noise = noiseFrom(random)
  const picture = surface(width, height)
  const blurred = soften(tone, seen.width, seen.height, Math.max(1, Math.round(how.soft / 2)))
  const border = Math.round(how.border * Math.max(width, height))
  const uneven = fieldOf(width, height, 8, (x, y) => noise(x / 190, y / 190))
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const i = y * width + x
      if (x < border || y < border || x >= width - border || y >= height - border) {
        for (let k = 0; k < 3; k += 1) picture.rgb[i * 3 + k] = (how.light[k] ?? 1) * 0.985
        continue
      }
      const u = (x / width - 0.5) * 2
      const v = (y / height - 0.5) * 2
      const away = u * u + v * v
      const edge = Math.min(1, away * 0.7)
      const sharp = between(tone, seen, x / 2, y / 2)
      const dull = between(blurred, seen, x / 2, y / 2)
      let t = sharp + (dull - sharp) * (0.25 + 0.75 * edge)
      t = clamp(0.5 + (t - 0.5) * how.contrast + (uneven[i] ?? 0) * 0.03)
      t = t * t * (3 - 2 * t) * 0.55 + t * 0.45
      t *= 1 - how.vignette * ramp(0.25, 1.9, away)
      t += (random.next() + random.next() - 1) * how.grain * (0.4 + 1.6 * t * (1 - t) * 2)
      t = 0.04 + 0.93 * clamp(t)
      for (let k = 0; k < 3; k += 1)
        picture.rgb[i * 3 + k] = (how.dark[k] ?? 0) + ((how.light[k] ?? 1) - (how.dark[k] ?? 0)) * t
    }
  }
  return picture
}

/** Box blur along both axes, twice. */
function soften(field: Float32Array, width: number, height: number, radius: number): Float32Array {
  let from = field
  for (let pass = 0; pass < 2; pass += 1) {
    const rows = new Float32Array(from.length)
    for (let y = 0; y < height; y += 1) line(from, rows, y * width, 1, width, radius)
    const both = new Float32Array(from.length)
    for (let x = 0; x < width; x += 1) line(rows, both, x, width, height, radius)
    from = both
  }
  return from
}

function line(
  from: Float32Array,
  to: Float32Array,
  start: number,
  stride: number,
  count: number,
  radius: number,
): void {
  const value = (i: number) => from[start + Math.min(count - 1, Math.max(0, i)) * stride] ?? 0
  let sum = 0
  for (let i = -radius; i <= radius; i += 1) sum += value(i)
  for (let i = 0; i < count; i += 1) {
    to[start + i * stride] = sum / (2 * radius + 1)
    sum += value(i + radius + 1) - value(i - radius)
  }
}

/** Discs, rings and slips of glass laid on paper and lit: each lets some light through. */
export function shadows(
  width: number,
  height: number,
  how: Silver & { readonly things: number; readonly long: boolean },
  random: Random,
): Surface {
  const long = Math.max(width, height)
  const things = Array.from({ length: how.things }, () => ({
    x: random.between(0.02, 0.98) * width,
    y: random.between(0.02, 0.98) * height,
    size: (random.chance(0.25) ? random.between(0.12, 0.24) : random.between(0.025, 0.11)) * long,
    clear: random.between(0.25, 0.8),
    soft: random.between(0.01, 0.28),
    ring: random.chance(0.35),
    shape: how.long && random.chance(0.6) ? random.between(4, 9) : 1,
    turn: random.between(0, Math.PI),
  })).map(thing => ({
    ...thing,
    c: Math.cos(thing.turn),
    s: Math.sin(thing.turn),
    reach: (1.3 * thing.size) ** 2,
  }))
  const scene: Scene = (px, py, spot) => {
    const x = px * long
    const y = py * long
    let light = 1
    for (const thing of things) {
      const dx = x - thing.x
      const dy = y - thing.y
      // A thing is nowhere wider than its size, so most of them are passed by at once.
      if (dx * dx + dy * dy > thing.reach) continue
      const { c, s } = thing
      const d = Math.hypot(dx * c + dy * s, (-dx * s + dy * c) * thing.shape) / thing.size
      if (d > 1.3) continue
      const body = ramp(1 + thing.soft, 1 - thing.soft, d)
      const cover = thing.ring ? body * ramp(0.55, 0.85, d) : body * (0.75 + 0.25 * d * d)
      light *= 1 - cover * (1 - thing.clear)
    }
    // What is covered stays white on the paper.
    const t = 1 - light * 0.96
    spot.r = t
    spot.g = t
    spot.b = t
    spot.turn = 0
  }
  const seen = look(scene, width, height, 2)
  return develop(seen.tone, seen, width, height, how, random)
}

/** Ridges of sand or water lit from one side at a low angle. */
export function ripples(
  width: number,
  height: number,
  how: Silver & { readonly often: number; readonly turn: number; readonly wander: number },
  random: Random,
): Surface {
  const noise = noiseFrom(random)
  const c = Math.cos(how.turn)
  const s = Math.sin(how.turn)
  const rise = (x: number, y: number) => {
    const far = 0.5 + y * 1.1
    const along = (x * c + y * s + how.wander * (noise(x * 2.1, y * 2.1) + 0.25 * noise(x * 5, y * 5))) * how.often
    const wave = Math.sin((along * 6.283) / far)
    return (
      (wave + 0.3 * Math.sin((along * 12.566) / far + 1)) * far * 0.4 +
      0.03 * noise(x * 40, y * 50) +
      noise(x * 1.2, y * 1.2) * 0.8
    )
  }
  const scene: Scene = (x, y, spot) => {
    const e = 0.004
    const t = clamp(
      0.46 +
        ((rise(x + e, y) - rise(x - e, y)) * 0.8 + (rise(x, y + e) - rise(x, y - e)) * 0.5) * (5.4 / how.often) * 2,
    )
    spot.r = t
    spot.g = t
    spot.b = t
    spot.turn = how.turn
  }
  const seen = look(scene, width, height, 2)
  return develop(stretched(seen), seen, width, height, how, random)
}
