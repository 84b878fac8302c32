import { describe, expect, test } from 'vitest'
import type { Rect } from '../../../src/geometry/rect.ts'
import { overlap } from '../../../src/geometry/rect.ts'
import { markConflicts } from '../../../src/hang/mark-checks.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import type { MarksQuestion } from '../../../src/hang/marks-shape.ts'
import { nearestMoves } from '../../../src/hang/nearest.ts'
import type { WallFacts } from '../../../src/hang/wall.ts'
import { insideMargin } from '../../../src/layout/shifts.ts'
import { hook, plainWall, question } from './sample.ts'

const unrated = { ...hook, ratedKg: null }

/** Repeatable figures from 0 to 1 (mulberry32, public domain). */
function figures(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

function conflicts(asked: MarksQuestion): readonly string[] {
  return marksFor(asked)
    .findings.filter(found => markConflicts.has(found.code))
    .map(found => found.code)
}

function shifted(asked: MarksQuestion, dx: number): MarksQuestion {
  return { ...asked, centre: { x: asked.centre.x + dx, y: asked.centre.y } }
}

/** Whether the work itself may stand there, by a route of its own. */
function stands({ work, centre, wall }: MarksQuestion, others: readonly Rect[]): boolean {
  const rect = { x: centre.x - work.width / 2, y: centre.y - work.height / 2, width: work.width, height: work.height }
  return (
    rect.x >= -1e-6 &&
    rect.x + rect.width <= wall.length + 1e-6 &&
    wall.keepClears.every(item => insideMargin(rect, item) < 1e-5) &&
    [...wall.openings, ...others].every(other => !overlap(rect, other, 1e-5))
  )
}

const thermostat = {
  id: 'k1',
  kind: 'thermostat',
  x: 4300,
  y: 1400,
  width: 120,
  height: 120,
  margin: 150,
  label: '',
  reason: '',
}

describe('the nearest shift', () => {
  test('scenario 2: the thermostat asks the work for 44 mm, its marks are 166 mm off it', () => {
    // The work at 4 526 is 106 from the thermostat, margin 150; its left mark is at 4 586.
    const asked = question({
      work: { height: 1220, width: 960, mass: 31 },
      back: {
        method: 'd-rings',
        seenFrom: 'front',
        data: { left: { drop: 210, inset: 60 }, right: { drop: 210, inset: 60 } },
      },
      centre: { x: 4526 + 480, y: 1480 },
      wall: { ...plainWall, keepClears: [{ ...thermostat, y: 1840 }], joints: [4590] },
      fixings: [hook],
    })
    // A joint at 4 590 is 4 from the left mark: the marks alone want −21 or 29; to the left is the thermostat, and its margin asks for 44.
    expect(conflicts(asked)).toEqual(['mark-near-joint'])
    const found = nearestMoves(asked)
    expect(found.offers.map(offer => offer.dx)).toEqual([44])
    expect(found.offers[0]?.gapLeft).toEqual({ was: 4526, becomes: 4570 })
    expect(found.offers[0]?.gapRight).toEqual({ was: 3654, becomes: 3610 })
    expect(nearestMoves({ ...asked, wall: { ...plainWall, joints: [4590] } }).offers[0]?.dx).toBeCloseTo(-21, 9)
  })

  test('rings 406.4 apart both come onto studs on that spacing', () => {
    const asked = question({
      work: { height: 600, width: 516.4, mass: 9 },
      centre: { x: 2000, y: 1480 },
      wall: { ...plainWall, studFirst: 300, studSpacing: 406.4 },
      fixings: [unrated],
    })
    // Left mark 1 796.8; studs at 1 519.2 and 1 925.6: 128.8 to the right, less half a stud.
    const offer = nearestMoves(asked).offers[0]
    expect(offer?.dx).toBeCloseTo(128.8 - 19.05, 9)
    expect(nearestMoves({ ...asked, wall: { ...asked.wall, studs: [1796.8, 2203.2] } }).clear).toBe(true)
  })

  test('rings that fit no two studs are offered nothing', () => {
    const wall = { ...plainWall, studs: [1000, 1600], backingFrom: 2000, backingTo: 3000 }
    const found = nearestMoves(question({ wall, fixings: [unrated], work: { height: 600, width: 500, mass: 5 } }))
    expect(found).toEqual({ clear: false, conflicts: ['mark-off-backing'], offers: [] })
  })

  test('no nearer place on a grid of 1 mm, and no conflict at the offered one', () => {
    let offers = 0
    let none = 0
    for (let seed = 1; seed <= 60; seed += 1) {
      const next = figures(seed)
      const between = (from: number, to: number) => from + next() * (to - from)
      const length = between(1500, 2600)
      const things = (count: number, kinds: readonly string[], margin: boolean) =>
        Array.from({ length: count }, (_, index) => ({
          id: `t${index}`,
          kind: kinds[Math.floor(next() * kinds.length)] ?? '',
          x: between(0, length - 100),
          y: between(0, 2400),
          width: between(60, 160),
          height: between(60, 300),
          margin: margin ? between(0, 120) : 0,
          label: '',
          reason: '',
        }))
      const wall: WallFacts = {
        ...plainWall,
        length,
        height: 2600,
        skirting: between(50, 1500),
        floor: [
          [0, 0],
          [length / 2, between(-60, 60)],
          [length, between(-60, 60)],
        ],
        ceiling: [
          [0, between(1650, 2600)],
          [length, between(1650, 2600)],
        ],
        joints: [between(0, length), between(0, length)],
        studs:
          seed % 3 === 0
            ? []
            : seed % 7 === 0
              ? [100]
              : Array.from({ length: 9 }, (_, index) => 80 + index * between(190, 210)),
        openings: things(1, ['niche'], false).map(({ margin: _, reason: __, ...opening }) => opening),
        keepClears: things(3, ['switch', 'outlet', 'thermostat', 'grille'], true),
        backingFrom: seed % 2 === 0 ? 1500 : null,
      }
      const width = between(250, 420)
      const asked = question({
        work: { height: 300, width, mass: 6 },
        back: {
          method: 'd-rings',
          seenFrom: 'front',
          data: { left: { drop: 60, inset: 40 }, right: { drop: 75, inset: width - 40 - between(180, 210) } },
        },
        centre: { x: between(width / 2, length - width / 2), y: 1480 },
        wall,
        fixings: [seed % 4 === 0 ? hook : unrated],
      })
      const others = seed % 5 === 0 ? [{ x: 0, y: 1300, width: 200, height: 400 }] : []
      const found = nearestMoves(asked, others)
      const offer = found.offers[0]
      if (found.clear) {
        expect(conflicts(asked)).toEqual([])
        continue
      }
      if (offer !== undefined) {
        offers += 1
        expect(conflicts(shifted(asked, offer.dx)), `seed ${seed}`).toEqual([])
        expect(stands(shifted(asked, offer.dx), others), `seed ${seed}`).toBe(true)
      } else none += 1
      // The offer keeps off an edge by 0.1 mm; the grid is held against that.
      const reach = offer === undefined ? length : Math.abs(offer.dx) - 0.2
      for (let dx = -Math.floor(reach); dx <= reach; dx += 1) {
        const there = shifted(asked, dx)
        if (stands(there, others)) expect(conflicts(there), `seed ${seed} at ${dx}`).not.toEqual([])
      }
    }
    // The data must try both.
    expect(offers).toBeGreaterThan(10)
    expect(none).toBeGreaterThan(1)
  })
})

describe('the nearest spacing of hooks', () => {
  const wired = (wall: Partial<WallFacts>, hooksApart: number) =>
    question({
      work: { height: 640, width: 560, mass: 11 },
      back: {
        method: 'wire',
        seenFrom: 'front',
        data: { left: { drop: 180, inset: 30 }, right: { drop: 180, inset: 30 }, wire: { by: 'length', length: 540 } },
      },
      centre: { x: 2000, y: 1480 },
      wall: { ...plainWall, ...wall },
      fixings: [unrated],
      hooksApart,
    })

  test('hooks 200 apart go to 262 for studs at 1 850 and 2 150', () => {
    const asked = wired({ studs: [1850, 2150] }, 200)
    const found = nearestMoves(asked)
    // Each hook is within 19.05 of its stud from 261.9 on: 262 in whole millimetres; no shift does it.
    expect(found.offers).toHaveLength(1)
    expect(found.offers[0]).toMatchObject({ dx: 0, hooksApart: 262, cost: 62 })
    expect(found.offers[0]?.hooksWere).toBeCloseTo(200, 9)
    expect(conflicts({ ...asked, hooksApart: 262 })).toEqual([])
    expect(conflicts({ ...asked, hooksApart: 261 })).toContain('mark-off-backing')
  })

  test('where neither is enough both are moved, for the least together', () => {
    const asked = wired({ studs: [1900, 2200] }, 200)
    const offer = nearestMoves(asked).offers[0]
    expect(offer?.dx).not.toBe(0)
    expect(offer?.hooksApart).not.toBeNull()
    const moved = { ...shifted(asked, offer?.dx ?? 0), hooksApart: offer?.hooksApart ?? null }
    expect(conflicts(moved)).toEqual([])
    let least = Number.POSITIVE_INFINITY
    for (let apart = 150; apart <= 330; apart += 2) {
      for (let dx = -120; dx <= 120; dx += 1) {
        const cost = Math.abs(apart - 200) + Math.abs(dx)
        if (cost >= least || cost > (offer?.cost ?? 0) + 2) continue
        if (conflicts({ ...shifted(asked, dx), hooksApart: apart }).length === 0) least = cost
      }
    }
    expect(offer?.cost).toBeLessThanOrEqual(least + 1e-6)
    expect(offer?.cost).toBeGreaterThan(least - 1)
  })

  test('a spacing that makes the wire too flat is not offered in its stead', () => {
    const asked = wired({ studs: [1760, 2240] }, 200)
    for (const offer of nearestMoves(asked).offers) {
      const answer = marksFor({ ...shifted(asked, offer.dx), hooksApart: offer.hooksApart ?? 200 })
      const known = marksFor(asked).findings.map(found => found.code)
      expect(answer.findings.filter(found => found.severity === 'stop' && !known.includes(found.code))).toEqual([])
    }
  })
})
