/**
 * Chance for the demo's pictures: a seeded generator and gradient noise made from it. Nothing here looks at a clock or at
 * the machine's randomness, so that the same seed always gives the same picture.
 */

export interface Random {
  /** 0 up to, but without, 1. */
  readonly next: () => number
  readonly between: (least: number, most: number) => number
  /** A whole number from `least` to `most`, both possible. */
  readonly whole: (least: number, most: number) => number
  readonly pick: <T>(from: readonly [T, ...T[]]) => T
  readonly chance: (share: number) => boolean
  /** Bell-shaped about 0 with a deviation of about 1. */
  readonly bell: () => number
}

/** A small counter-based generator on 32 bits; its mixing constants are those of the murmur finaliser (from memory). */
export function seeded(seed: number): Random {
  let state = seed >>> 0
  function next(): number {
    state = (state + 0x9e3779b9) >>> 0
    return mix(state) / 4294967296
  }
  return {
    next,
    between: (least, most) => least + (most - least) * next(),
    whole: (least, most) => least + Math.floor(next() * (most - least + 1)),
    pick: from => from[Math.floor(next() * from.length)] ?? from[0],
    chance: share => next() < share,
    bell: () => (next() + next() + next() + next() - 2) * 1.73,
  }
}

function mix(value: number): number {
  let h = value | 0
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}

/** A seed from words, so that a work's picture hangs on its key and not on its place in a list. */
export function seedOf(words: string, seed: number): number {
  let h = mix(seed >>> 0)
  for (let i = 0; i < words.length; i += 1) h = mix((h ^ words.charCodeAt(i)) + 0x27d4eb2f)
  return h
}

/** Smooth noise about −1 to 1. */
export type Noise = (x: number, y: number) => number

export function noiseFrom(random: Random): Noise {
  const order = new Uint8Array(512)
  const gx = new Float32Array(256)
  const gy = new Float32Array(256)
  for (let i = 0; i < 256; i += 1) {
    order[i] = i
    const turn = random.next() * Math.PI * 2
    gx[i] = Math.cos(turn)
    gy[i] = Math.sin(turn)
  }
  for (let i = 255; i > 0; i -= 1) {
    const j = random.whole(0, i)
    const kept = order[i] ?? 0
    order[i] = order[j] ?? 0
    order[j] = kept
  }
  for (let i = 0; i < 256; i += 1) order[256 + i] = order[i] ?? 0
  const at = (i: number, x: number, y: number) => (gx[i] ?? 0) * x + (gy[i] ?? 0) * y
  return (x, y) => {
    const x0 = Math.floor(x)
    const y0 = Math.floor(y)
    const dx = x - x0
    const dy = y - y0
    const u = dx * dx * dx * (dx * (dx * 6 - 15) + 10)
    const v = dy * dy * dy * (dy * (dy * 6 - 15) + 10)
    const left = order[x0 & 255] ?? 0
    const right = order[(x0 + 1) & 255] ?? 0
    const row = y0 & 255
    const a = at(order[left + row] ?? 0, dx, dy)
    const b = at(order[right + row] ?? 0, dx - 1, dy)
    const c = at(order[left + ((row + 1) & 255)] ?? 0, dx, dy - 1)
    const d = at(order[right + ((row + 1) & 255)] ?? 0, dx - 1, dy - 1)
    const top = a + u * (b - a)
    return (top + v * (c + u * (d - c) - top)) * 1.5
  }
}

/** Several octaves of noise, each half as strong and twice as fine. */
export function layered(noise: Noise, x: number, y: number, octaves: number): number {
  let sum = 0
  let strength = 0.5
  let scale = 1
  for (let i = 0; i < octaves; i += 1) {
    sum += strength * noise(x * scale + i * 17.3, y * scale - i * 9.1)
    strength /= 2
    scale *= 2
  }
  return sum
}
