/** Scenes indoors and of things: vessels on a table, a lit window, arcs and planes, stones, leaves. */
import { layered } from './random.ts'
import type { Ground, Scene } from './scene.ts'
import { over, put } from './scene.ts'
import type { Rgb } from './surface.ts'
import { blend, clamp, ramp } from './surface.ts'

/** Jars, bowls and bottles on a table, turned as on a wheel: a half-width for every height. */
export function vessels(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const edge = height * random.between(0.58, 0.68)
  const count = random.whole(3, 5)
  const inks: readonly [Rgb, ...Rgb[]] = [
    palette.accent,
    palette.second,
    palette.far,
    palette.light,
    palette.near,
    palette.low,
  ]
  const jars = Array.from({ length: count }, (_, i) => {
    const tall = height * random.between(0.26, 0.52)
    const belly = Math.min(tall * random.between(0.24, 0.5), (width / count) * 0.72)
    return {
      x: width * (0.14 + (0.72 * (i + 0.5)) / count) + random.between(-0.02, 0.02),
      foot: edge + height * random.between(0.05, 0.2),
      tall,
      belly,
      neck: random.between(0.28, 0.8),
      base: random.between(0.45, 0.75),
      low: random.between(0.3, 0.6),
      colour: random.pick(inks),
      band: random.chance(0.5) ? random.between(0.3, 0.6) : 2,
    }
  }).sort((a, b) => b.foot - a.foot)
  const half = (jar: (typeof jars)[number], up: number) => {
    if (up < jar.low) return jar.belly * (jar.base + (1 - jar.base) * Math.sin((Math.PI / 2) * (up / jar.low)))
    const t = (up - jar.low) / (1 - jar.low)
    const lip = ramp(0.88, 1, up) * 0.12
    return jar.belly * (jar.neck + (1 - jar.neck) * (0.5 + 0.5 * Math.cos(Math.PI * Math.min(1, t * 1.15))) + lip)
  }
  return (x, y, spot) => {
    const cloth = layered(noise, x * 3, y * 3, 3)
    if (y < edge)
      put(spot, blend(palette.high, palette.dark, 0.25 + 0.3 * ramp(0, width, x)), 0.9 + cloth, 1 + cloth * 0.3)
    else put(spot, blend(palette.low, palette.middle, ramp(edge, height, y)), 0.05 + cloth * 0.3, 1 + cloth * 0.2)
    if (Math.abs(y - edge) < 0.003) over(spot, palette.dark, 0.5)
    for (const jar of jars) {
      const sx = (x - jar.x - jar.belly * 1.1) / (jar.belly * 2.1)
      const sy = (y - jar.foot) / (jar.belly * 0.34)
      if (sx * sx + sy * sy < 1 && y > edge) over(spot, palette.dark, 0.55 * (1 - sx * sx - sy * sy) ** 0.5)
    }
    for (const jar of jars) {
      const up = (jar.foot - y) / jar.tall
      const reach = half(jar, clamp(up))
      const dx = (x - jar.x) / reach
      const round =
        up < 0 ? dx * dx + (up * up * jar.tall * jar.tall) / (0.05 * jar.belly * jar.belly) < 1 : Math.abs(dx) < 1
      const rim = up > 1 ? dx * dx + ((up - 1) * jar.tall) ** 2 / (0.06 * reach * reach) < 1 : false
      if ((up >= -0.2 && up <= 1 && round) || rim) {
        const lit = clamp(0.62 - 0.62 * dx - 0.25 * dx * dx + 0.1 * noise(x * 20, y * 20))
        const glaze = Math.abs(up - jar.band) < 0.07 ? palette.dark : jar.colour
        put(spot, blend(palette.dark, glaze, 0.22 + 0.78 * lit), Math.PI / 2 + dx * 0.5, 1)
        over(spot, palette.light, Math.exp(-(((dx + 0.42) / 0.12) ** 2)) * 0.6 * ramp(0, 0.25, up))
        if (rim) over(spot, palette.dark, 0.6)
        return
      }
    }
  }
}

/** A room with a window's light thrown across floor and wall. */
export function room(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const corner = width * random.between(0.28, 0.44)
  const floor = height * random.between(0.64, 0.74)
  const panes = random.whole(2, 3)
  const lean = random.between(0.25, 0.6)
  const fromX = corner + (width - corner) * random.between(0.12, 0.3)
  const fromY = floor - height * random.between(0.42, 0.5)
  const wide = (width - corner) * random.between(0.34, 0.5)
  const tall = height * random.between(0.3, 0.36)
  const door = random.chance(0.6)
  const lit = (x: number, y: number) => {
    const u = (x - fromX - lean * (y - fromY) * 0.5) / wide
    const v = (y - fromY) / tall
    if (u < 0 || u > 1 || v < 0 || v > 1) return 0
    const bar = Math.min(Math.abs((u * panes) % 1), 1 - ((u * panes) % 1), (v * 2) % 1, 1 - ((v * 2) % 1))
    return ramp(0.03, 0.09, bar) * (0.75 + 0.25 * noise(x * 4, y * 4))
  }
  return (x, y, spot) => {
    const base = floor + (x < corner ? ((corner - x) * (height - floor)) / corner / 1.2 : 0)
    const plaster = layered(noise, x * 6, y * 6, 4)
    if (y > base) {
      const far = (y - floor) / (height - floor)
      const board = Math.abs((((x - corner) / (0.35 + far)) * 9) % 1)
      put(spot, blend(palette.middle, palette.near, far), 0.1, 0.9 + 0.25 * plaster - (board < 0.05 ? 0.3 : 0))
    } else if (x < corner) {
      put(spot, blend(palette.far, palette.dark, 0.35 + 0.4 * (1 - x / corner)), Math.PI / 2, 1 + 0.2 * plaster)
      if (door && x > corner * 0.25 && x < corner * 0.75 && y > height * 0.24)
        put(spot, palette.dark, Math.PI / 2, 0.9 + 0.2 * plaster)
    } else {
      put(spot, blend(palette.low, palette.far, 0.3 + 0.4 * ramp(corner, width, x)), plaster * 2, 0.95 + 0.22 * plaster)
      over(spot, palette.light, lit(x, y) * 0.85)
    }
    if (y > base) over(spot, palette.second, lit(x - 0.16, y - 0.17) * 0.6)
    if (Math.abs(x - corner) < 0.003 && y < base) over(spot, palette.dark, 0.4)
    if (y > base - 0.02 && y < base) over(spot, palette.dark, 0.35)
  }
}

/** Arcs and planes that cut each other, each piece in its own colour. */
export function arcs(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const inks: readonly Rgb[] = [
    palette.high,
    palette.low,
    palette.middle,
    palette.accent,
    palette.second,
    palette.dark,
    palette.light,
    palette.near,
    palette.far,
  ]
  const cuts = Array.from({ length: random.whole(5, 8) }, () => ({
    x: random.between(-0.2, 1.2) * width,
    y: random.between(-0.2, 1.2) * height,
    radius: random.between(0.16, 0.62),
    straight: random.chance(0.35),
    turn: random.between(0, Math.PI),
  }))
  const ring = random.between(0.02, 0.06)
  const order = inks.map(ink => ({ ink, by: random.next() })).sort((a, b) => a.by - b.by)
  return (x, y, spot) => {
    let code = 0
    let turn = 0
    let close = 1
    for (const cut of cuts) {
      const dx = x - cut.x
      const dy = y - cut.y
      const wave = noise(x * 5, y * 5) * 0.004
      const d = cut.straight ? dx * Math.cos(cut.turn) + dy * Math.sin(cut.turn) : Math.hypot(dx, dy) - cut.radius
      code = (code * 2 + (d + wave > 0 ? 1 : 0)) % 8191
      if (Math.abs(d) < close) {
        close = Math.abs(d)
        turn = cut.straight ? cut.turn + Math.PI / 2 : Math.atan2(dy, dx) + Math.PI / 2
      }
    }
    const ink = order[(code * 7 + Math.floor(code / 5)) % order.length]?.ink ?? palette.middle
    const mottle = layered(noise, x * 5 + (code % 13), y * 5, 3)
    put(spot, ink, turn, 1 + 0.22 * mottle)
    if (close < ring * 0.06) over(spot, palette.dark, 0.6)
  }
}

/** Stones on a river bed, each lit from the left. */
export function stones(ground: Ground): Scene {
  const { palette, noise, random } = ground
  const pitch = random.between(0.08, 0.15)
  const shift = random.between(0, 99)
  const colours: readonly [Rgb, ...Rgb[]] = [
    palette.low,
    palette.far,
    palette.middle,
    palette.light,
    palette.near,
    palette.second,
  ]
  return (x, y, spot) => {
    const wx = x / pitch + noise(x * 4, y * 4) * 0.25
    const wy = y / (pitch * 0.8) + noise(x * 4 + 9, y * 4) * 0.25
    const cx = Math.floor(wx)
    const cy = Math.floor(wy)
    let best = 9
    let second = 9
    let bx = 0
    let by = 0
    let which = 0
    for (let j = -1; j <= 1; j += 1) {
      for (let i = -1; i <= 1; i += 1) {
        const px = cx + i + 0.5 + 0.42 * noise((cx + i) * 3.71 + shift, (cy + j) * 5.13)
        const py = cy + j + 0.5 + 0.42 * noise((cx + i) * 5.37, (cy + j) * 3.91 + shift)
        const d = Math.hypot(wx - px, wy - py)
        if (d < best) {
          second = best
          best = d
          bx = wx - px
          by = wy - py
          which = Math.floor(50 + 50 * noise((cx + i) * 7.1, (cy + j) * 2.3 + shift))
        } else if (d < second) second = d
      }
    }
    const inside = ramp(0.02, 0.24, second - best)
    const lit = clamp(0.6 - bx * 0.7 - by * 0.6)
    put(
      spot,
      colours[which % colours.length] ?? palette.low,
      Math.atan2(by, bx) + Math.PI / 2,
      0.45 + 0.75 * lit + 0.12 * noise(x * 40, y * 40),
    )
    over(spot, palette.dark, 1 - inside)
  }
}

/** Fern and leaf shapes laid over each other. `depth` says how many cover a point, for a medium that prints light. */
export function leaves(ground: Ground): Scene {
  const { palette, noise, random, width, height } = ground
  const sprays = Array.from({ length: random.whole(6, 9) }, (_, i) => ({
    x: (0.15 + 0.7 * ((i * 0.382) % 1) + random.between(-0.05, 0.05)) * width,
    y: (0.98 - 0.5 * ((i * 0.618) % 1)) * height,
    turn: random.between(-0.9, 0.9) - Math.PI / 2,
    long: random.between(0.32, 0.62),
    leaf: random.between(0.05, 0.11),
    pitch: random.between(0.03, 0.055),
    open: random.between(0.7, 1.15),
    bend: random.between(-0.8, 0.8),
    colour: random.pick([palette.light, palette.low, palette.second, palette.far]),
  }))
  return (x, y, spot) => {
    const air = layered(noise, x * 2, y * 2, 3)
    put(spot, blend(palette.dark, palette.near, 0.35 + air * 0.6), air * 3, 1)
    for (const spray of sprays) {
      const dx = x - spray.x
      const dy = y - spray.y
      const c = Math.cos(spray.turn)
      const s = Math.sin(spray.turn)
      const along = dx * c + dy * s
      if (along < -0.02 || along > spray.long) continue
      const t = along / spray.long
      const side = -dx * s + dy * c - spray.bend * along * along
      const stem = Math.abs(side) < 0.0022 * (1.4 - t)
      const place = along - Math.abs(side) * spray.open
      const near = Math.abs(place / spray.pitch - Math.round(place / spray.pitch)) * spray.pitch
      const reach = spray.leaf * Math.sin(Math.PI * Math.min(1, t * 0.9 + 0.1)) ** 0.7
      const v = Math.abs(side) / (reach + 1e-6)
      const leaf = v < 1 && near < spray.pitch * 0.36 * Math.sin(Math.PI * (0.12 + 0.86 * v)) ** 0.8
      if (stem || leaf) {
        over(spot, spray.colour, 0.5)
        spot.turn = spray.turn + (side > 0 ? 0.7 : -0.7)
      }
    }
  }
}
