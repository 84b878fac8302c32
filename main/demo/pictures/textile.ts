/** Textiles: every thread is there. A pattern says which colour a warp or a weft thread has; the weave says which is on top. */

import type { Noise, Random } from './random.ts'
import { noiseFrom } from './random.ts'
import type { Rgb, Surface } from './surface.ts'
import { clamp, ramp, surface } from './surface.ts'

export interface Cloth {
  readonly inks: readonly [Rgb, ...Rgb[]]
  readonly ground: Rgb
  /** Threads across the longer side. */
  readonly threads: number
  /** How uneven the yarn is. */
  readonly slub: number
}

export type Pattern = 'blocks' | 'stripes' | 'resist' | 'pieces' | 'bands'

type ColourAt = (column: number, row: number) => Rgb

/** A cloth in one of the patterns. Its edge threads stand a little free at top and bottom. */
export function weave(pattern: Pattern, width: number, height: number, cloth: Cloth, random: Random): Surface {
  const noise = noiseFrom(random)
  const pitch = Math.max(width, height) / cloth.threads
  const columns = Math.ceil(width / pitch)
  const rows = Math.ceil(height / pitch)
  const colourAt = patterns[pattern](columns, rows, cloth, random, noise)
  const picture = surface(width, height, cloth.ground)
  const dye = Array.from({ length: Math.max(columns, rows) + 2 }, () => 1 + random.bell() * cloth.slub * 0.5)
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const sway = noise(x / 90, y / 90) * pitch * 0.35
      const u = (x + sway) / pitch
      const v = (y + noise(x / 80 + 40, y / 80) * pitch * 0.35) / pitch
      const column = Math.floor(u)
      const row = Math.floor(v)
      const weftOnTop = pattern === 'resist' ? (column + row * 2) % 4 === 0 : (column + row) % 2 === 0
      const across = weftOnTop ? v - row - 0.5 : u - column - 0.5
      const along = weftOnTop ? u - column - 0.5 : v - row - 0.5
      const slub = noise((weftOnTop ? x : y) / 34, (weftOnTop ? row : column) * 7.7) * cloth.slub
      const round = clamp(1 - (across / (0.56 + slub * 0.18)) ** 2) * (1 - along * along * 0.9)
      const colour = colourAt(column, row)
      const lit = (0.5 + 0.62 * round - across * 0.18) * (dye[weftOnTop ? row : column] ?? 1) * (1 + slub * 0.22)
      const twist = 1 + 0.07 * Math.sin((along + across) * 14)
      const i = (y * width + x) * 3
      for (let k = 0; k < 3; k += 1) picture.rgb[i + k] = (colour[k] ?? 0) * lit * twist
    }
  }
  return picture
}

type MakePattern = (columns: number, rows: number, cloth: Cloth, random: Random, noise: Noise) => ColourAt

const blocks: MakePattern = (columns, rows, cloth, random) => {
  const across = random.whole(7, 11)
  const size = Math.max(4, Math.round(columns / across))
  const tall = Math.max(3, Math.round(size * random.between(0.55, 1.2)))
  const down = Math.ceil(rows / tall) + 1
  const fold = random.chance(0.5)
  const cells = Array.from({ length: (across + 2) * down }, () => random.pick(cloth.inks))
  return (column, row) => {
    const c = Math.floor(column / size)
    const r = Math.floor(row / tall)
    const x = fold ? Math.min(c, across - c) : c
    if ((c + r) % 3 === 0 && (column % size < 2 || row % tall < 2)) return cloth.ground
    return cells[Math.abs(x + r * (across + 1)) % cells.length] ?? cloth.ground
  }
}

const stripes: MakePattern = (_columns, rows, cloth, random, noise) => {
  const inkOf: Rgb[] = []
  while (inkOf.length < rows + 40) {
    const ink = random.chance(0.3) ? cloth.ground : random.pick(cloth.inks)
    const wide = random.chance(0.25) ? random.whole(14, 34) : random.whole(1, 8)
    const pair = random.chance(0.3) ? random.pick(cloth.inks) : null
    for (let i = 0; i < wide; i += 1) inkOf.push(pair !== null && i % 2 === 1 ? pair : ink)
  }
  return (column, row) => inkOf[Math.max(0, row + 12 + Math.round(noise(column / 60, row / 90) * 2.4))] ?? cloth.ground
}

/** Dyed before weaving: the figure runs along the warp, a little off from thread to thread. */
const resist: MakePattern = (columns, _rows, cloth, random, noise) => {
  const wide = Math.round(columns / random.whole(3, 5))
  const tall = Math.round(wide * random.between(1.1, 1.9))
  const off = Array.from({ length: columns + 4 }, (_, i) => noise(i / 7, 3) * 9 + random.bell() * 3.4)
  const feather = random.between(0.02, 0.06)
  return (column, row) => {
    const y = row + (off[Math.max(0, column)] ?? 0)
    const u = Math.abs((((column % wide) + wide) % wide) / wide - 0.5) * 2
    const v = Math.abs((((y % tall) + tall) % tall) / tall - 0.5) * 2
    const lozenge = u + v
    const ring = lozenge * 3.2
    const step = Math.floor(ring)
    const soft = ramp(0, feather * 6, ring - step)
    const a = cloth.inks[step % cloth.inks.length] ?? cloth.ground
    const b = cloth.inks[(step + cloth.inks.length - 1) % cloth.inks.length] ?? cloth.ground
    const stripe = column % wide < 3
    if (stripe) return cloth.ground
    return [b[0] + (a[0] - b[0]) * soft, b[1] + (a[1] - b[1]) * soft, b[2] + (a[2] - b[2]) * soft]
  }
}

/** Triangles sewn together, with quilting lines. */
const pieces: MakePattern = (columns, rows, cloth, random) => {
  const size = Math.max(8, Math.round(columns / random.whole(5, 8)))
  const down = Math.ceil(rows / size) + 1
  const across = Math.ceil(columns / size) + 1
  const cells = Array.from({ length: across * down * 2 }, () => random.pick(cloth.inks))
  const turned = Array.from({ length: across * down }, () => random.chance(0.5))
  return (column, row) => {
    const c = Math.floor(Math.max(0, column) / size)
    const r = Math.floor(Math.max(0, row) / size)
    const u = column - c * size
    const v = row - r * size
    const cell = r * across + c
    const diagonal = turned[cell] === true ? u + v - size : u - v
    const ink = cells[(cell * 2 + (diagonal > 0 ? 1 : 0)) % cells.length] ?? cloth.ground
    const seam = Math.min(u, v) < 1 || Math.abs(diagonal) < 1
    const stitch = (column + row) % 12 < 1 && (column - row + 1200) % 4 < 2
    const dim = seam ? 0.62 : stitch ? 1.28 : 1
    return [ink[0] * dim, ink[1] * dim, ink[2] * dim]
  }
}

/** Figured bands: small stepped motifs between plain ground. */
const bands: MakePattern = (_columns, rows, cloth, random) => {
  const list: { from: number; tall: number; kind: number; ink: Rgb; second: Rgb; repeat: number }[] = []
  for (let row = random.whole(2, 8); row < rows; ) {
    const tall = random.whole(8, 26)
    list.push({
      from: row,
      tall,
      kind: random.whole(0, 3),
      ink: random.pick(cloth.inks),
      second: random.pick(cloth.inks),
      repeat: random.whole(10, 26),
    })
    row += tall + random.whole(4, 16)
  }
  return (column, row) => {
    const band = list.find(each => row >= each.from && row < each.from + each.tall)
    if (band === undefined) return cloth.ground
    const v = row - band.from
    const u = ((column % band.repeat) + band.repeat) % band.repeat
    const d = Math.abs(u - band.repeat / 2)
    const h = Math.abs(v - band.tall / 2)
    if (v < 2 || v >= band.tall - 2) return band.second
    if (band.kind === 0) return Math.floor(d) + Math.floor(h) < band.tall / 2 ? band.ink : cloth.ground
    if (band.kind === 1) return Math.floor((d * band.tall) / band.repeat + v) % 6 < 3 ? band.ink : band.second
    if (band.kind === 2) return (Math.floor(u / 3) + Math.floor(v / 3)) % 2 === 0 ? band.ink : cloth.ground
    return Math.abs(d - h) < 2 || h < 2 ? band.ink : band.second
  }
}

const patterns: Readonly<Record<Pattern, MakePattern>> = { blocks, stripes, resist, pieces, bands }
