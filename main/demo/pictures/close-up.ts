/**
 * Photographs of a frame's lower right corner as a registrar takes them: near, in even light, with a rule of millimetres
 * laid beside it. Lengths are millimetres; what is broken is drawn as large as its report says.
 */

import type { Noise } from './random.ts'
import { layered, noiseFrom, seeded, seedOf } from './random.ts'
import type { RenderedPicture } from './render.ts'
import { LONG_SIDE } from './render.ts'
import { blend, clamp, colour, encode, type Rgb, ramp, surface } from './surface.ts'

export interface CloseUp {
  /** Its file's name without an ending; the picture hangs on it and on the seed. */
  readonly key: string
  readonly wood: 'walnut' | 'lime'
  /** What is seen from left to right. */
  readonly field: number
  /** How wide the mitre stands open at the frame's outer edge; 0 where it is shut. */
  readonly open: number
  /** How far along the edge a piece is missing; 0 where none is. */
  readonly chip: number
}

/** Width of the frame's members. */
const MEMBER = 60
const woods = { walnut: ['#3b2617', '#6b4a2e'], lime: ['#8a6a35', '#c9a65c'] } as const
const [table, canvas, bare, paper, ink] = [
  colour('#8d9092'),
  colour('#6d6a55'),
  colour('#d8c39a'),
  colour('#f2f0e8'),
  colour('#2c2c2c'),
]

/** Light on the profile at so many mm from the frame's inner edge: a bead, a hollow, a flat outer edge. */
const relief = (d: number) =>
  0.86 + 0.22 * ramp(0, 5, d) - 0.3 * ramp(6, 16, d) + 0.26 * ramp(18, 42, d) - 0.24 * ramp(52, MEMBER, d)

/** Longer every fifth, longest every tenth. */
const tick = (mm: number) => (mm % 10 === 0 ? 9 : mm % 5 === 0 ? 6.5 : 4)

/** Colour at a spot, mm right of and below the corner's outer point: nothing of the frame lies right or below. */
function seen(x: number, y: number, { wood, open, chip }: CloseUp, noise: Noise): Rgb {
  if (y > 12 && y < 28) {
    const along = x + 400
    const line = Math.abs(along - Math.round(along)) < 0.16 && y - 12 < tick(Math.round(along))
    return line ? ink : paper
  }
  const [right, down] = [-x, -y]
  const shadow = 1 - 0.45 * ramp(9, 0, Math.max(x, y)) * ramp(-40, 0, Math.max(-right, -down) + 40)
  if (right < 0 || down < 0) {
    const felt = 1 + 0.1 * noise(x / 1.5, y / 1.5)
    return blend([0, 0, 0], table, felt * shadow)
  }
  const out = Math.min(right, down)
  if (out > MEMBER) {
    const stroke = 1 + 0.16 * layered(noise, x / 14, y / 6, 3)
    return blend([0, 0, 0], canvas, stroke * (0.7 + 0.3 * ramp(MEMBER, MEMBER + 7, out)))
  }
  const ragged = 1.6 * layered(noise, x / 4, y / 4, 3)
  if (chip > 0 && Math.hypot((right - chip * 0.9) / (chip / 2), down / (chip / 3.2)) + ragged / 4 < 1) {
    return blend(bare, ink, clamp(0.12 + 0.25 * noise(x / 2, y / 0.7) + 0.3 * ramp(chip / 3.2, 0, chip / 3.2 - down)))
  }
  // Measured across the mitre; it opens towards the outer point.
  const across = Math.abs(right - down) / Math.SQRT2
  const gap = (open / 2) * ramp(MEMBER * 1.05, 0, out) + 0.12
  if (across < gap + 0.25 * noise(out / 3, 4)) return [0.05, 0.04, 0.035]
  const upright = right < down
  const [dark, light] = woods[wood]
  const grain = upright ? layered(noise, x / 1.1, y / 30, 3) : layered(noise, x / 30, y / 1.1, 3)
  const lit = relief(MEMBER - out) * (upright ? 0.94 : 1.04) * (1 - 0.35 * ramp(gap + 1.6, gap, across))
  return blend([0, 0, 0], blend(colour(dark), colour(light), clamp(0.55 + grain)), lit)
}

/** The same close-up and seed give the same bytes. */
export async function renderCloseUp(what: CloseUp, seed: number, longSide = LONG_SIDE): Promise<RenderedPicture> {
  const [width, height] = [longSide, Math.round(longSide * 0.75)]
  const random = seeded(seedOf(what.key, seed))
  const noise = noiseFrom(random)
  const picture = surface(width, height)
  const mm = what.field / width
  const [left, top] = [-what.field * 0.72, -what.field * 0.75 + 34]
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const rgb = seen(left + x * mm, top + y * mm, what, noise)
      const away = Math.hypot(x / width - 0.45, y / height - 0.4)
      const light = 1.06 - 0.3 * away + 0.012 * random.bell()
      for (let k = 0; k < 3; k += 1) picture.rgb[(y * width + x) * 3 + k] = (rgb[k] ?? 0) * light
    }
  }
  const bytes = await encode(picture, 76)
  return { name: `${what.key}.jpg`, mime: 'image/jpeg', widthPx: width, heightPx: height, bytes }
}
