/** Drawings: graphite or chalk in strokes, ink wash with a pen over it, and contours that follow the form. */

import type { Random } from './random.ts'
import { noiseFrom } from './random.ts'
import type { Looked, Scene } from './scene.ts'
import { between, look, stretched } from './scene.ts'
import type { Rgb, Surface } from './surface.ts'
import { clamp, fieldOf, lay, paper, ramp, stain } from './surface.ts'

export interface Chalk {
  readonly paper: Rgb
  readonly ink: Rgb
  /** Chalk for the lights; null where the paper is the light. */
  readonly lights: Rgb | null
  /** Length of a stroke against the longer side. */
  readonly stroke: number
  readonly turn: number
  /** How firmly outlines are drawn, 0 to 1. */
  readonly outline: number
  /** How much tooth of the paper shows, 0 to 1. */
  readonly tooth: number
}

/** Thousands of strokes, more and heavier where it is dark; they keep off an uneven border. */
export function chalk(scene: Scene, width: number, height: number, how: Chalk, random: Random): Surface {
  const noise = noiseFrom(random)
  const sheet = paper(width, height, how.paper, noise, 0.022)
  const seen = look(scene, width, height, 3)
  const tone = stretched(seen)
  const long = Math.max(width, height)
  const tooth = fieldOf(width, height, 1, (x, y) => noise(x / 2.3, y / 2.3) * 0.7 + noise(x / 5.2, y / 5.2) * 0.5)
  const length = how.stroke * long
  const count = Math.round(((width * height) / length) * 1.25)
  const directions = [how.turn, how.turn + 0.75, how.turn - 0.6]
  for (let i = 0; i < count; i += 1) {
    const x = random.next() * width
    const y = random.next() * height
    const t = between(tone, seen, x / 3, y / 3)
    const margin = Math.min(x, y, width - x, height - y) / long
    if (margin < 0.035 + 0.03 * noise(x / 70, y / 70)) continue
    const dark = ramp(0.72, 0.05, t)
    if (random.next() < dark * 1.1) {
      const along = random.chance(0.45)
        ? between(seen.turn, seen, x / 3, y / 3)
        : (directions[random.whole(0, dark > 0.5 ? 2 : dark > 0.25 ? 1 : 0)] ?? how.turn)
      drag(
        sheet,
        tooth,
        how,
        x,
        y,
        along + random.bell() * 0.07,
        length * random.between(0.5, 1.2),
        how.ink,
        0.25 + 0.6 * dark,
        random.between(0.9, 1.9),
      )
    } else if (how.lights !== null && t > 0.76 && random.next() < (t - 0.7) * 1.6) {
      drag(sheet, tooth, how, x, y, how.turn + random.bell() * 0.1, length * 0.7, how.lights, 0.5, 1.8)
    }
  }
  penLines(sheet, seen, tone, how.ink, random, how.outline)
  return sheet
}

function drag(
  sheet: Surface,
  tooth: Float32Array,
  how: Chalk,
  x: number,
  y: number,
  turn: number,
  length: number,
  ink: Rgb,
  press: number,
  thick: number,
): void {
  const c = Math.cos(turn)
  const s = Math.sin(turn)
  const steps = Math.ceil(length)
  const reach = Math.ceil(thick)
  for (let step = 0; step < steps; step += 1) {
    const t = step / steps
    const strength = press * Math.sin(Math.PI * (0.08 + 0.9 * t)) ** 0.6
    const cx = x + c * (step - length / 2)
    const cy = y + s * (step - length / 2) + Math.sin(t * 3.1) * 1.4
    for (let across = -reach; across <= reach; across += 1) {
      const px = Math.round(cx - s * across)
      const py = Math.round(cy + c * across)
      if (px < 0 || py < 0 || px >= sheet.width || py >= sheet.height) continue
      const pixel = py * sheet.width + px
      const grip = clamp(0.75 + (tooth[pixel] ?? 0) * 1.9 * how.tooth)
      lay(sheet, pixel, ink, clamp(strength * grip * (1 - Math.abs(across) / (reach + 0.6)) * 0.8))
    }
  }
}

export interface Wash {
  readonly paper: Rgb
  readonly washes: readonly { readonly ink: Rgb; readonly below: number }[]
  readonly pen: Rgb | null
}

/** Pools of thinned ink, darker at their edges, with a pen line where the tone turns. */
export function wash(scene: Scene, width: number, height: number, how: Wash, random: Random): Surface {
  const noise = noiseFrom(random)
  const sheet = paper(width, height, how.paper, noise, 0.026)
  const seen = look(scene, width, height, 3)
  const tone = stretched(seen)
  const long = Math.max(width, height)
  const bleed = fieldOf(width, height, 3, (x, y) => noise(x / 60, y / 60) * 9 + noise(x / 18, y / 18) * 4)
  const bloom = fieldOf(width, height, 4, (x, y) => noise(x / 120, y / 120) + 0.5 * noise(x / 30, y / 30))
  const grit = fieldOf(width, height, 1, (x, y) => noise(x / 2.6, y / 2.6))
  for (const [layer, { ink, below }] of how.washes.entries()) {
    const shift = layer * 1.7
    for (let y = 0; y < height; y += 1) {
      for (let x = 0; x < width; x += 1) {
        const i = y * width + x
        const margin = (Math.min(x, y, width - x, height - y) + (bleed[i] ?? 0) * 1.5) / long
        const t = between(tone, seen, (x + (bleed[i] ?? 0)) / 3, (y + (bleed[(i + 997) % bleed.length] ?? 0)) / 3)
        const inside = Math.min((below - t) * 5, (margin - 0.04) * 40)
        if (inside <= -0.2) continue
        const edge = Math.exp(-(((inside - 0.12) / 0.12) ** 2)) * 0.32
        const pool = 0.5 + 0.25 * (bloom[i] ?? 0) * Math.cos(shift) + 0.09 * (grit[i] ?? 0)
        stain(sheet, i, ink, clamp(ramp(-0.1, 0.12, inside) * pool + edge))
      }
    }
  }
  if (how.pen !== null) penLines(sheet, seen, tone, how.pen, random, 0.5)
  return sheet
}

/** A pen follows the places where tone changes most, breaking off now and then. */
function penLines(sheet: Surface, seen: Looked, tone: Float32Array, ink: Rgb, random: Random, press: number): void {
  const long = Math.max(sheet.width, sheet.height)
  const steep = (x: number, y: number): [number, number] => [
    between(tone, seen, x + 1, y) - between(tone, seen, x - 1, y),
    between(tone, seen, x, y + 1) - between(tone, seen, x, y - 1),
  ]
  for (let i = 0; i < 3200; i += 1) {
    let x = random.next() * seen.width
    let y = random.next() * seen.height
    const [ax, ay] = steep(x, y)
    if (Math.hypot(ax, ay) < 0.12) continue
    const thick = random.between(0.5, 1.1)
    for (let step = 0; step < 46; step += 1) {
      const [gx, gy] = steep(x, y)
      const force = Math.hypot(gx, gy)
      if (force < 0.05) break
      x += (-gy / force) * 0.34
      y += (gx / force) * 0.34
      const px = Math.round(x * 3)
      const py = Math.round(y * 3)
      const margin = Math.min(px, py, sheet.width - px, sheet.height - py) / long
      if (margin < 0.04) break
      for (let dy = 0; dy <= 1; dy += 1) lay(sheet, (py + dy) * sheet.width + px, ink, press * thick)
    }
  }
}

export interface Contours {
  readonly paper: Rgb
  readonly inks: readonly [Rgb, ...Rgb[]]
  /** How many lines down the sheet. */
  readonly lines: number
}

/** Lines from side to side that rise over what is light, as if drawn round the form. */
export function contours(scene: Scene, width: number, height: number, how: Contours, random: Random): Surface {
  const noise = noiseFrom(random)
  const sheet = paper(width, height, how.paper, noise, 0.02)
  const seen = look(scene, width, height, 3)
  const tone = stretched(seen)
  const long = Math.max(width, height)
  const pitch = (height * 0.86) / how.lines
  const horizon = new Float32Array(width).fill(Number.POSITIVE_INFINITY)
  const inset = Math.round(long * 0.06)
  for (let n = how.lines; n >= 0; n -= 1) {
    const base = height * 0.08 + n * pitch
    const ink = how.inks[n % how.inks.length] ?? how.inks[0]
    const left = inset + random.between(0, inset)
    const right = width - inset - random.between(0, inset)
    let last = 0
    for (let x = Math.round(left); x < right; x += 1) {
      const t = between(tone, seen, x / 3, base / 3)
      const y = base - (t - 0.3) * pitch * 8 + noise(x / 26, n * 3.1) * 1.6
      const top = Math.min(y, last === 0 ? y : last)
      const foot = Math.max(y, last === 0 ? y : last)
      const press = 0.55 + 0.35 * noise(x / 60, n * 5.7) + 0.35 * (1 - t)
      if (y < (horizon[x] ?? 0)) {
        for (let py = Math.floor(top); py <= Math.ceil(foot) + 1; py += 1) {
          if (py < 0 || py >= height) continue
          const share = clamp(1.3 - Math.abs(py - Math.min(foot, Math.max(top, py)))) * clamp(press)
          lay(sheet, py * width + x, ink, share * 0.85)
        }
        horizon[x] = y
      }
      last = y
    }
  }
  return sheet
}
