/** Scenes out of doors on dry land: sky and hills, orchards, a town, reeds. */
import { depth } from './palettes.ts'
import { layered } from './random.ts'
import type { Ground, Scene } from './scene.ts'
import { over, put } from './scene.ts'
import { blend, clamp, ramp } from './surface.ts'

/** The sky alone: light towards the horizon, with clouds and, by chance, a sun. */
export function sky(ground: Ground, horizon: number): Scene {
  const { palette, noise, random, width } = ground
  const stretch = random.between(1.6, 3.4)
  const shift = random.between(0, 50)
  const sun = random.chance(0.55)
    ? { x: random.between(0.2, 0.8) * width, y: horizon * random.between(0.35, 0.8) }
    : null
  const size = random.between(0.025, 0.05)
  return (x, y, spot) => {
    const t = clamp(y / horizon)
    const cloud = layered(noise, x * stretch + shift, y * stretch * 3.2, 4)
    put(spot, blend(palette.high, palette.low, t ** 1.3), cloud * 1.4)
    over(spot, palette.light, ramp(0.02, 0.42, cloud) * 0.6)
    over(spot, palette.far, ramp(-0.05, -0.4, cloud) * 0.45)
    if (sun !== null) {
      const away = Math.hypot(x - sun.x, y - sun.y)
      over(spot, palette.second, Math.exp(-away * 9) * 0.55)
      over(spot, palette.light, ramp(size * 1.1, size * 0.9, away) * 0.95)
    }
  }
}

/** Ridges one behind the other, each in strata that follow its own outline. */
export function hills(ground: Ground, horizonShare?: number): Scene {
  const { palette, noise, random, height } = ground
  const horizon = height * (horizonShare ?? random.between(0.3, 0.46))
  const above = sky(ground, horizon * 1.1)
  const count = random.whole(5, 8)
  const ridges = Array.from({ length: count }, (_, i) => {
    const share = i / (count - 1)
    return {
      base: horizon + (height - horizon) * share ** 1.25 * 0.86,
      rise: (0.1 - 0.05 * share) * random.between(0.6, 1.4),
      often: random.between(1.4, 3.2),
      shift: random.between(0, 90),
      colour: depth(palette, share),
      band: random.between(14, 34),
      warm: random.chance(0.4) ? palette.second : palette.accent,
      mark: random.between(0, 0.5),
    }
  })
  const outline = (ridge: (typeof ridges)[number], x: number) =>
    ridge.base - ridge.rise * (0.4 + layered(noise, x * ridge.often + ridge.shift, ridge.shift, 3) * 1.6)
  return (x, y, spot) => {
    above(x, y, spot)
    for (let i = ridges.length - 1; i >= 0; i -= 1) {
      const ridge = ridges[i]
      if (ridge === undefined) continue
      const top = outline(ridge, x)
      if (y < top) continue
      const below = y - top
      const slope = Math.atan2(outline(ridge, x + 0.01) - top, 0.01)
      const strata = noise(x * 3 + ridge.shift, below * ridge.band)
      put(spot, ridge.colour, slope, 1 + 0.14 * strata)
      over(spot, palette.light, ramp(0.018, 0, below) * 0.4)
      over(spot, ridge.warm, ramp(0.25, 0.7, strata) * ridge.mark)
      over(spot, palette.dark, ramp(0.1, 0.7, noise(x * 9, y * 14 + ridge.shift)) * 0.3)
      return
    }
  }
}

/** Trees in a row: trunks, crowns in clumps, shadows on the ground. */
export function orchard(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const line = height * random.between(0.5, 0.62)
  const land = hills({ ...ground, height: line * 1.15 }, 0.55)
  const count = random.whole(4, 8)
  const trees = Array.from({ length: count }, (_, i) => {
    const near = random.between(0, 1)
    const foot = line + (height - line) * (0.1 + 0.6 * near)
    return {
      x: (width * (i + 0.5 + random.between(-0.3, 0.3))) / count,
      foot,
      tall: height * (0.24 + 0.26 * near),
      round: height * (0.09 + 0.1 * near),
      lean: random.between(-0.1, 0.1),
      colour: random.pick([palette.middle, palette.near, palette.accent, palette.second]),
      shift: random.between(0, 60),
    }
  }).sort((a, b) => b.foot - a.foot)
  return (x, y, spot) => {
    if (y < line) land(x, y, spot)
    else {
      const grass = layered(noise, x * 12, y * 34, 3)
      put(spot, blend(palette.middle, palette.near, ramp(line, height, y)), 0.2 + grass, 1 + 0.35 * grass)
      over(spot, palette.second, ramp(0.15, 0.5, noise(x * 4, y * 10)) * 0.45)
    }
    for (const tree of trees) {
      const up = tree.foot - y
      const middle = tree.x + tree.lean * up
      const dx = x - middle
      const dy = y - (tree.foot - tree.tall)
      const edge = noise(x * 13 + tree.shift, y * 13) * 0.32 + noise(x * 38, y * 38 + tree.shift) * 0.16
      const crown = Math.hypot(dx, dy * 1.25) / tree.round
      if (crown < 1 + edge) {
        const lit = clamp(0.55 - (dx + dy) / tree.round / 2.2 + edge * 0.7)
        put(spot, blend(palette.dark, tree.colour, 0.25 + 0.75 * lit), 2.2 + edge * 3, 0.9 + 0.3 * lit)
        over(spot, palette.light, ramp(0.75, 1.1, lit) * 0.35)
        return
      }
      const thick = tree.round * 0.09 * (1 + up * 0.1)
      if (up > 0 && up < tree.tall && Math.abs(dx) < thick) {
        put(spot, palette.dark, Math.PI / 2, 1 + 0.5 * ramp(0, thick, -dx))
        return
      }
      if (up < 0 && up > -0.05 && Math.hypot((x - tree.x - 0.03) / tree.round, up / 0.03) < 0.9)
        over(spot, palette.dark, 0.4)
    }
  }
}

/** Gabled houses stepping up a slope. */
export function town(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const horizon = height * 0.34
  const above = sky(ground, horizon * 1.4)
  const walls = [palette.light, palette.low, palette.second, palette.far, palette.accent, palette.middle] as const
  const houses: {
    x: number
    y: number
    w: number
    h: number
    roof: number
    wall: readonly [number, number, number]
    rows: number
    columns: number
    lit: number
  }[] = []
  for (let row = 0; row < 6; row += 1) {
    const foot = horizon + ((height - horizon) * (row + 1)) / 5.4
    for (let x = -0.05 - random.next() * 0.05; x < width; ) {
      const w = random.between(0.07, 0.15) * (0.75 + row * 0.12)
      houses.push({
        x,
        y: foot + random.between(-0.02, 0.02),
        w,
        h: w * random.between(0.8, 1.5),
        roof: w * random.between(0.3, 0.62),
        wall: blend(random.pick([...walls]), palette.middle, 0.3 - row * 0.04),
        rows: random.whole(1, 3),
        columns: random.whole(2, 3),
        lit: random.next(),
      })
      x += w * random.between(0.86, 1.2)
    }
  }
  houses.reverse()
  return (x, y, spot) => {
    for (const house of houses) {
      const dx = (x - house.x) / house.w
      if (dx < 0 || dx > 1 || y > house.y + 0.05) continue
      const eaves = house.y - house.h
      if (y > eaves) {
        const grain = noise(x * 30, y * 30)
        put(spot, house.wall, Math.PI / 2, (dx < 0.5 ? 1.04 : 0.84) + grain * 0.06)
        const c = dx * house.columns
        const r = ((y - eaves) / house.h) * house.rows
        const inColumn = Math.abs(c - Math.floor(c) - 0.5)
        const inRow = Math.abs(r - Math.floor(r) - 0.5)
        if (inColumn < 0.2 && inRow < 0.28 && y < house.y) {
          const glow = noise(Math.floor(c) * 7.7 + house.lit * 40, Math.floor(r) * 5.1) > 0.25
          put(spot, glow ? palette.second : palette.dark, 0, 1)
        }
        return
      }
      if (y > eaves - house.roof * (1 - Math.abs(dx - 0.5) * 2)) {
        const tile = noise(x * 50, y * 110)
        put(
          spot,
          blend(palette.near, palette.accent, house.lit * 0.7),
          dx < 0.5 ? -0.8 : 0.8,
          (dx < 0.5 ? 1 : 0.72) + 0.15 * tile,
        )
        return
      }
    }
    above(x, y, spot)
  }
}

/** Stems and seed heads in front of water or mist. */
export function reeds(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const count = random.whole(26, 44)
  const stems = Array.from({ length: count }, () => ({
    foot: random.between(-0.05, width + 0.05),
    lean: random.between(-0.22, 0.22),
    bend: random.between(-0.25, 0.25),
    tall: height * random.between(0.45, 0.95),
    thick: random.between(0.0018, 0.0048),
    head: random.chance(0.55) ? random.between(0.05, 0.1) : 0,
    colour: random.pick([palette.near, palette.dark, palette.middle, palette.accent]),
  }))
  const shift = random.between(0, 40)
  return (x, y, spot) => {
    const t = y / height
    const mist = layered(noise, x * 2 + shift, y * 9, 3)
    put(spot, blend(palette.high, palette.low, ramp(0, 0.75, t)), mist, 1 + mist * 0.16)
    over(spot, palette.middle, ramp(0.6, 1.05, t + 0.1 * mist) * 0.75)
    for (const stem of stems) {
      const up = (height - y) / stem.tall
      if (up > 1.02) continue
      const middle = stem.foot + stem.lean * up * stem.tall + stem.bend * up * up * stem.tall
      const dx = Math.abs(x - middle)
      if (stem.head > 0 && up > 1 - stem.head / stem.tall) {
        const along = (1 - up) * stem.tall
        if (dx < 0.011 * Math.sin((Math.PI * along) / stem.head) ** 0.6) {
          put(spot, palette.accent, Math.PI / 2, 0.7 + (30 * (middle - x) + 0.3) * 0.8)
          return
        }
      }
      if (dx < stem.thick * (1.1 - up * 0.7)) {
        put(spot, stem.colour, Math.PI / 2, 1)
        return
      }
    }
  }
}
