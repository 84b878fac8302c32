/** Scenes with water: a weir below hills, a bridge and its reflection, lamps along a quay. */
import { layered } from './random.ts'
import type { Ground, Scene, Spot } from './scene.ts'
import { over, put } from './scene.ts'
import { hills } from './scenes-land.ts'
import { blend, clamp, ramp } from './surface.ts'

/** What stands above the water comes back in it, broken by ripples. */
function water(ground: Ground, line: number, above: Scene, broken: number): Scene {
  const { palette, noise, random } = ground
  const shift = random.between(0, 70)
  return (x, y, spot) => {
    if (y <= line) {
      above(x, y, spot)
      return
    }
    const near = (y - line) / (ground.height - line)
    const ripple = noise(x * 5 + shift, (y * 60) / (0.4 + near)) + 0.5 * noise(x * 14, y * 120)
    above(
      x + ripple * 0.012 * broken,
      Math.max(0, line - (y - line) * 0.9 + ripple * 0.03 * broken * (0.3 + near)),
      spot,
    )
    over(spot, palette.near, 0.14 + 0.26 * near)
    over(spot, palette.light, ramp(0.35, 0.9, ripple) * 0.55 * (1 - 0.5 * near))
    spot.turn = ripple * 0.12
  }
}

/** A river between hills with a weir across it. */
export function weir(ground: Ground): Scene {
  const { palette, noise, random, height } = ground
  const line = height * random.between(0.5, 0.6)
  const land = hills({ ...ground, height: line * 1.25 }, 0.42)
  const still = water(ground, line, land, 1)
  const step = line + (height - line) * random.between(0.3, 0.5)
  const lean = random.between(-0.12, 0.12)
  return (x, y, spot) => {
    still(x, y, spot)
    const fall = y - step - lean * (x - 0.5) - 0.012 * noise(x * 6, 3)
    if (fall < 0) return
    const foam = noise(x * 40, fall * 7) * 0.5 + noise(x * 12 + fall * 6, fall * 30)
    if (fall < 0.07) {
      over(spot, palette.light, 0.55 + 0.45 * clamp(foam))
      spot.turn = Math.PI / 2
    } else {
      over(spot, palette.light, ramp(0.2, 0.8, foam) * Math.exp(-(fall - 0.07) * 7))
    }
  }
}

/** A bridge of several arches with its reflection. */
export function bridge(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const line = height * random.between(0.6, 0.68)
  const deck = line - height * random.between(0.24, 0.32)
  const land = hills({ ...ground, height: line * 1.1 }, 0.5)
  const arches = random.whole(2, 5)
  const pitch = width / arches
  const shift = random.between(-0.5, 0.5) * pitch
  const hump = random.between(0.02, 0.09)
  const stone = blend(palette.dark, blend(palette.low, palette.accent, 0.3), 0.62)
  const above: Scene = (x, y, spot) => {
    const top = deck + hump * ((x / width - 0.5) * 2) ** 2
    if (y < top) {
      land(x, y, spot)
      return
    }
    const across = (x + shift + pitch * 4) % pitch
    const span = pitch * 0.38
    const dx = (across - pitch / 2) / span
    const rise = (line - top) * 0.74
    const open = Math.abs(dx) < 1 && y > line - rise * Math.sqrt(Math.max(0, 1 - dx * dx))
    if (open) {
      land(x, y, spot)
      over(spot, palette.light, 0.3 * (1 - Math.abs(dx)))
      return
    }
    const course = Math.floor(y * 60)
    const block = noise(Math.floor(x * 26 + (course % 2) * 0.5) * 3.7, course * 5.3)
    put(spot, stone, 0, 0.95 + 0.2 * block - 0.25 * ramp(top, line, y))
    over(spot, palette.light, ramp(top + 0.014, top, y) * 0.7)
    over(spot, palette.dark, ramp(1.25, 1.02, Math.abs(dx)) * (y > line - rise * 1.1 ? 0.35 : 0))
  }
  return water(ground, line, above, 1.3)
}

/** Lamps along a quay at night and their long reflections. */
export function lamps(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const line = height * random.between(0.46, 0.58)
  const count = random.whole(4, 7)
  const lights = Array.from({ length: count }, (_, i) => ({
    x: (width * (i + 0.5 + random.between(-0.3, 0.3))) / count,
    y: line - height * random.between(0.05, 0.2),
    strong: random.between(0.6, 1.1),
    colour: random.pick([palette.second, palette.accent, palette.light]),
  }))
  const roofs = random.between(2, 5)
  return (x, y, spot: Spot) => {
    const haze = layered(noise, x * 2.4, y * 4, 3)
    put(spot, blend(palette.high, palette.low, ramp(0, line, y)), 0.1, 1 + haze * 0.3)
    const roof =
      line - 0.1 - 0.07 * Math.floor(2 * noise(Math.floor(x * 14) * 1.7, roofs)) - 0.02 * Math.abs(((x * 28) % 2) - 1)
    if (y > roof && y < line) put(spot, palette.dark, Math.PI / 2, 1)
    if (y >= line) {
      const ripple = noise(x * 6, (y - line) * 90) + 0.6 * noise(x * 18, y * 170)
      put(spot, blend(palette.low, palette.near, ramp(line, height, y)), ripple * 0.1, 0.85 + 0.3 * ripple)
      for (const light of lights) {
        const wide = 0.012 + (y - line) * 0.05
        const dx = (x - light.x + ripple * 0.012) / wide
        over(
          spot,
          light.colour,
          clamp(Math.exp(-dx * dx) * light.strong * (0.45 + 0.8 * ripple) * Math.exp(-(y - line) * 2)),
        )
      }
    } else {
      for (const light of lights) {
        const away = Math.hypot(x - light.x, y - light.y)
        over(spot, light.colour, clamp(light.strong * (0.7 * Math.exp(-away * 26) + ramp(0.012, 0.006, away))))
      }
    }
  }
}
