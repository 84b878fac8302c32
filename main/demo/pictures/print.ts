/** Prints: lines bitten into a plate, blocks cut with a gouge, and flat inks one over the other. */

import type { Random } from './random.ts'
import { noiseFrom } from './random.ts'
import type { Scene } from './scene.ts'
import { between, look, stretched } from './scene.ts'
import type { Rgb, Surface } from './surface.ts'
import { fieldOf, paper, ramp, shade, stain } from './surface.ts'

/** Clear paper round the printed area, as a share of the longer side. */
export interface Margins {
  readonly side: number
  readonly top: number
  readonly foot: number
}

interface Area {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly foot: number
}

function areaOf(width: number, height: number, margins: Margins): Area {
  const long = Math.max(width, height)
  return {
    left: Math.round(margins.side * long),
    right: Math.round(width - margins.side * long),
    top: Math.round(margins.top * long),
    foot: Math.round(height - margins.foot * long),
  }
}

export interface Etching {
  readonly margins: Margins
  readonly ink: Rgb
  readonly paper: Rgb
  /** Lines across the longer side. */
  readonly lines: number
  /** Ink that was left on the plate. */
  readonly plateTone: number
}

/** Rows of lines in up to four directions: the darker, the thicker and the more of them. */
export function etch(scene: Scene, width: number, height: number, how: Etching, random: Random): Surface {
  const noise = noiseFrom(random)
  const sheet = paper(width, height, how.paper, noise, 0.018)
  const area = areaOf(width, height, how.margins)
  const seen = look(scene, area.right - area.left, area.foot - area.top, 2)
  const tone = stretched(seen)
  const pitch = Math.max(width, height) / how.lines
  const wobble = fieldOf(width, height, 4, (x, y) => noise(x / 46, y / 46) * 2.6 + noise(x / 12, y / 12) * 0.7)
  const weight = fieldOf(width, height, 3, (x, y) => noise(x / 9, y / 9))
  const wipe = fieldOf(width, height, 8, (x, y) => noise(x / 240, y / 170) + 0.5 * noise(x / 30, y / 220))
  const sets = [
    { turn: random.between(-0.12, 0.12), from: 0.93, wide: 0.62, own: true },
    { turn: random.between(0.6, 0.95), from: 0.62, wide: 0.5, own: false },
    { turn: random.between(-0.95, -0.6), from: 0.42, wide: 0.5, own: false },
    { turn: random.between(1.4, 1.7), from: 0.24, wide: 0.6, own: false },
  ].map(set => ({ ...set, c: Math.cos(set.turn), s: Math.sin(set.turn) }))
  for (let y = area.top; y < area.foot; y += 1) {
    for (let x = area.left; x < area.right; x += 1) {
      const i = y * width + x
      const gx = (x - area.left) / 2
      const gy = (y - area.top) / 2
      const t = between(tone, seen, gx, gy)
      let ink = how.plateTone * (0.6 + 0.5 * (wipe[i] ?? 0))
      for (const set of sets) {
        if (t > set.from) break
        // The first set bends with the forms, so that a hill reads as a hill.
        const bend = set.own ? (1 - t) * 16 : 0
        const across = (-x * set.s + y * set.c + (wobble[i] ?? 0) * 1.3 + bend) / pitch
        const off = Math.abs(across - Math.floor(across) - 0.5)
        const thick = set.wide * 0.5 * ((set.from - t) / set.from) ** 0.75 + 0.03 * (weight[i] ?? 0)
        ink += (1 - ink) * ramp(thick + 0.11, thick - 0.05, off) * (0.9 + 0.1 * (weight[i] ?? 0))
      }
      stain(sheet, i, how.ink, Math.min(1, ink))
    }
  }
  emboss(sheet, area, pitch)
  return sheet
}

/** The plate's edge pressed into the paper. */
function emboss(sheet: Surface, area: Area, pitch: number): void {
  const grow = Math.round(pitch * 1.6)
  for (let y = area.top - grow; y <= area.foot + grow; y += 1) {
    for (let x = area.left - grow; x <= area.right + grow; x += 1) {
      const dx = Math.max(area.left - x, x - area.right)
      const dy = Math.max(area.top - y, y - area.foot)
      const d = Math.max(dx, dy)
      if (d <= 0 || d > grow || x < 0 || y < 0 || x >= sheet.width || y >= sheet.height) continue
      const lit = (dx >= dy ? x > area.right : y > area.foot) ? 1 : -1
      shade(sheet, y * sheet.width + x, 1 + lit * 0.05 * Math.sin((Math.PI * d) / grow) - 0.02)
    }
  }
}

export interface Block {
  readonly margins: Margins
  readonly paper: Rgb
  /** From the lightest to the darkest; each printed where the scene is darker than its `below`. */
  readonly inks: readonly { readonly ink: Rgb; readonly below: number; readonly grain: number }[]
  /** Cuts of the gouge across the longer side. */
  readonly cuts: number
  /** How much of the tone the gouge's marks carry: little leaves hard shapes, much makes lines of everything. */
  readonly carved: number
  /** How far one block may be off another, pixels. */
  readonly off: number
}

/** Blocks of wood or linoleum: hard edges, marks of the gouge where tone turns, grain in the solid. */
export function cut(scene: Scene, width: number, height: number, how: Block, random: Random): Surface {
  const noise = noiseFrom(random)
  const sheet = paper(width, height, how.paper, noise, 0.02)
  const area = areaOf(width, height, how.margins)
  const seen = look(scene, area.right - area.left, area.foot - area.top, 2)
  const tone = stretched(seen)
  const pitch = Math.max(width, height) / how.cuts
  const edge = fieldOf(width, height, 2, (x, y) => noise(x / 16, y / 16) * 2.2)
  const grain = fieldOf(width, height, 2, (x, y) => noise(x / 90, y / 2.6) + 0.6 * noise(x / 30, y / 7))
  const press = fieldOf(width, height, 2, (x, y) => noise(x / 3.1, y / 3.1) + noise(x / 120, y / 120))
  for (const [layer, block] of how.inks.entries()) {
    const offX = random.bell() * how.off
    const offY = random.bell() * how.off
    const c = Math.cos(layer * 0.9)
    const s = Math.sin(layer * 0.9)
    for (let y = area.top; y < area.foot; y += 1) {
      for (let x = area.left; x < area.right; x += 1) {
        const i = y * width + x
        const gx = (x - area.left + offX + (edge[i] ?? 0)) / 2
        const gy = (y - area.top + offY) / 2
        const t = between(tone, seen, gx, gy)
        const turn =
          (seen.turn[
            Math.min(
              seen.turn.length - 1,
              Math.floor(Math.max(0, gy)) * seen.width + Math.floor(Math.min(seen.width - 1, Math.max(0, gx))),
            )
          ] ?? 0) * 0.12
        const across = (-x * (s + turn) + y * c + (edge[i] ?? 0) * 1.4) / pitch
        const gouge = Math.abs(across - Math.floor(across) - 0.5) * 2
        const along = (x * c + y * s) / (pitch * 7) + Math.floor(across) * 0.37
        const taper = Math.abs(along - Math.floor(along) - 0.5)
        const printed = ramp(0.035, -0.035, t - block.below + (0.5 - gouge) * how.carved * (1 - taper * 0.7))
        if (printed <= 0) continue
        const worn = ramp(0.55, 1.2, (grain[i] ?? 0) * block.grain + (press[i] ?? 0) * 0.5)
        stain(sheet, i, block.ink, printed * (0.96 - 0.6 * worn + 0.04 * (press[i] ?? 0)))
      }
    }
  }
  return sheet
}

export interface FlatInks {
  readonly margins: Margins
  readonly paper: Rgb
  readonly inks: readonly { readonly ink: Rgb; readonly from: number; readonly to: number }[]
  /** Size of the grain, pixels. */
  readonly grain: number
}

/** Inks in a grain that thins out from dark to light, as from a stone or through a mesh. */
export function flatInks(scene: Scene, width: number, height: number, how: FlatInks, random: Random): Surface {
  const noise = noiseFrom(random)
  const sheet = paper(width, height, how.paper, noise, 0.015)
  const area = areaOf(width, height, how.margins)
  const seen = look(scene, area.right - area.left, area.foot - area.top, 2)
  const tone = stretched(seen)
  for (const { ink, from, to } of how.inks) {
    const offX = random.bell() * 2.4
    const offY = random.bell() * 2.4
    const shift = random.between(0, 200)
    const grain = fieldOf(width, height, 1, (x, y) => noise(x / how.grain + shift, y / how.grain))
    for (let y = area.top; y < area.foot; y += 1) {
      for (let x = area.left; x < area.right; x += 1) {
        const i = y * width + x
        const t = between(tone, seen, (x - area.left + offX) / 2, (y - area.top + offY) / 2)
        const share = ramp(to, from, t)
        stain(
          sheet,
          i,
          ink,
          0.92 * ramp(-0.25, 0.35, share * 2.4 - 1.2 + (grain[i] ?? 0) * (share > 0.995 ? 0.25 : 0.9)),
        )
      }
    }
  }
  return sheet
}
