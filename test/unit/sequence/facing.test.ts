/** Which walls face each other: rooms whose answer is seen at a glance, and any room against looking along many rays. */
import { describe, expect, test } from 'vitest'
import { chanceFrom } from '../../../src/sequence/chance.ts'
import { type FaceEnds, facingAmong } from '../../../src/sequence/facing.ts'

type Point = readonly [number, number]

const face = (name: string, from: Point, to: Point): FaceEnds => ({ face: name, ends: [from, to] })
/** 8 m by 5 m, walls as seen from inside from left to right. */
const room = [
  face('north', [0, 0], [8000, 0]),
  face('east', [8000, 0], [8000, 5000]),
  face('south', [8000, 5000], [0, 5000]),
  face('west', [0, 5000], [0, 0]),
]
const whole = (name: string, length: number) => ({ face: name, from: 0, to: length })

describe('walls that face each other', () => {
  test('across a room, not round its corner', () => {
    const facing = facingAmong(room)
    expect(facing(whole('north', 8000), whole('south', 8000))).toBe(true)
    expect(facing(whole('east', 5000), whole('west', 5000))).toBe(true)
    expect(facing(whole('north', 8000), whole('east', 5000))).toBe(false)
    expect(facing(whole('north', 8000), whole('north', 8000))).toBe(false)
    // The left end of the north wall looks at the right end of the south wall.
    expect(facing({ face: 'north', from: 0, to: 3000 }, { face: 'south', from: 5000, to: 8000 })).toBe(true)
    expect(facing({ face: 'north', from: 0, to: 3000 }, { face: 'south', from: 0, to: 5000 })).toBe(false)
  })

  test('a partition between is faced in their stead', () => {
    const parted = [
      ...room,
      // Side a looks north, side b south; 100 mm thick, 3 m long.
      face('a', [5000, 2450], [2000, 2450]),
      face('b', [2000, 2550], [5000, 2550]),
    ]
    const facing = facingAmong(parted)
    expect(facing(whole('north', 8000), whole('a', 3000))).toBe(true)
    expect(facing(whole('south', 8000), whole('b', 3000))).toBe(true)
    expect(facing(whole('north', 8000), whole('b', 3000))).toBe(false)
    expect(facing({ face: 'north', from: 2200, to: 4800 }, whole('south', 8000))).toBe(false)
    expect(facing({ face: 'north', from: 0, to: 2200 }, whole('south', 8000))).toBe(true)
  })

  test('looking along many rays finds the same, in 80 rooms with slanted walls and partitions', () => {
    let [seen, not] = [0, 0]
    for (let seed = 1; seed <= 80; seed += 1) {
      const chance = chanceFrom(seed)
      const about = (x: number) => x + 1600 * (chance() - 0.5)
      const corners: Point[] = [
        [about(0), about(0)],
        [about(8000), about(0)],
        [about(8000), about(6000)],
        [about(0), about(6000)],
      ]
      const faces = corners.map((corner, index) => face(`w${index}`, corner, corners[(index + 1) % 4] ?? corner))
      const [x, y, turn] = [about(4000), about(3000), 6.283 * chance()]
      const [ux, uy] = [1200 * Math.cos(turn), 1200 * Math.sin(turn)]
      // 100 mm thick: each side lies half of it before the middle, to the right of its way.
      const [nx, ny] = [-50 * Math.sin(turn), 50 * Math.cos(turn)]
      faces.push(
        face('a', [x - ux + nx, y - uy + ny], [x + ux + nx, y + uy + ny]),
        face('b', [x + ux - nx, y + uy - ny], [x - ux - nx, y - uy - ny]),
      )
      const facing = facingAmong(faces)
      const ends = ({ ends: [from, to] }: FaceEnds, from_: number, to_: number) => {
        const run = Math.hypot(to[0] - from[0], to[1] - from[1])
        return { from: from_ * run, to: to_ * run }
      }
      for (const one of faces) {
        for (const other of faces) {
          const [a, b] = [chance() * 0.5, chance() * 0.5]
          const here = { face: one.face, ...ends(one, a, a + 0.5) }
          const there = { face: other.face, ...ends(other, b, b + 0.5) }
          const looks = byRays(faces, one, here, other, there) + byRays(faces, other, there, one, here)
          // Strips of which the rays may miss all are left out.
          if (looks > 0 && looks < 6) continue
          expect(facing(here, there), `seed ${seed}: ${one.face} ${other.face}`).toBe(looks > 0)
          if (looks > 0) seen += 1
          else not += 1
        }
      }
    }
    expect(seen).toBeGreaterThan(100)
    expect(not).toBeGreaterThan(100)
  })
})

/** Rays from one to the other that meet it first, of one each 5 mm; none where the two turn away by more than 45°. */
function byRays(
  faces: readonly FaceEnds[],
  one: FaceEnds,
  here: { readonly from: number; readonly to: number },
  other: FaceEnds,
  there: { readonly from: number; readonly to: number },
): number {
  const way = ({ ends: [from, to] }: FaceEnds): Point => {
    const run = Math.hypot(to[0] - from[0], to[1] - from[1])
    return [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  }
  const [u, v] = [way(one), way(other)]
  const apart = Math.abs(Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]))
  if (one.face === other.face || apart < (3 * Math.PI) / 4) return 0
  let met = 0
  for (let s = here.from + 2.5; s < here.to; s += 5) {
    const start: Point = [one.ends[0][0] + u[0] * s, one.ends[0][1] + u[1] * s]
    const look: Point = [-u[1], u[0]]
    let first = { away: Number.POSITIVE_INFINITY, face: '', along: 0 }
    for (const each of faces) {
      if (each.face === one.face) continue
      const w = way(each)
      const [px, py] = [each.ends[0][0] - start[0], each.ends[0][1] - start[1]]
      const cross = look[0] * w[1] - look[1] * w[0]
      if (Math.abs(cross) < 1e-9) continue
      const away = (px * w[1] - py * w[0]) / cross
      const along = (px * look[1] - py * look[0]) / cross
      const length = Math.hypot(each.ends[1][0] - each.ends[0][0], each.ends[1][1] - each.ends[0][1])
      if (away > 1e-6 && along > 0 && along < length && away < first.away) first = { away, face: each.face, along }
    }
    if (first.face === other.face && first.along >= there.from && first.along <= there.to) met += 1
  }
  return met
}
