import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { crosses, within } from '../../../src/plan/outline-shape.ts'
import { bendsOf, distance, isFree, type Segment, shortestWay } from '../../../src/plan/ways.ts'

/** An L of 8 × 6 m, drawn clockwise; its inner corner is at 4000, 3000. */
const corners: readonly Point[] = [
  [0, 0],
  [8000, 0],
  [8000, 3000],
  [4000, 3000],
  [4000, 6000],
  [0, 6000],
]
const bars = corners.map((corner, at): Segment => [corner, corners[(at + 1) % corners.length] ?? corner])
const bends = bendsOf(corners, 300)
const point = fc.record({ x: fc.integer({ min: 50, max: 7950 }), y: fc.integer({ min: 50, max: 5950 }) })
const floor = point.map(({ x, y }): Point => [x, y]).filter(at => within(corners, at))

/** Second route: steps on a grid of 100 mm to the eight neighbours, never through a wall; never shorter than the way. */
function byGrid(from: Point, to: Point): number {
  const step = 100
  const key = (x: number, y: number) => y * 100 + x
  const start: Point = [Math.round(from[0] / step), Math.round(from[1] / step)]
  const best = new Map([[key(...start), 0]])
  const open: (readonly [number, number, number])[] = [[0, ...start]]
  while (open.length > 0) {
    open.sort((a, b) => b[0] - a[0])
    const [so, x, y] = open.pop() ?? [0, 0, 0]
    if (Math.abs(x * step - to[0]) <= 50 && Math.abs(y * step - to[1]) <= 50) return so
    if (so > (best.get(key(x, y)) ?? Infinity)) continue
    for (let dx = -1; dx <= 1; dx += 1) {
      for (let dy = -1; dy <= 1; dy += 1) {
        const next: Point = [(x + dx) * step, (y + dy) * step]
        if ((dx === 0 && dy === 0) || !within(corners, next) || !isFree([x * step, y * step], next, bars)) continue
        const length = so + Math.hypot(dx, dy) * step
        if (length < (best.get(key(x + dx, y + dy)) ?? Infinity)) {
          best.set(key(x + dx, y + dy), length)
          open.push([length, x + dx, y + dy])
        }
      }
    }
  }
  return Infinity
}

describe('ways on foot', () => {
  test('bend round the inner corner alone, at the clear distance', () => {
    expect(bends.length).toBe(1)
    const [bend] = bends
    // Into the room from the corner, along the diagonal: 300 mm off.
    expect(bend?.[0]).toBeCloseTo(4000 - 300 / Math.SQRT2, 6)
    expect(bend?.[1]).toBeCloseTo(3000 - 300 / Math.SQRT2, 6)
  })

  test('are straight where nothing stands between', () => {
    fc.assert(
      fc.property(floor, floor, (from, to) => {
        const way = shortestWay(from, to, { bars, bends })
        expect(way).not.toBeNull()
        const straight = distance(from, to)
        if (isFree(from, to, bars)) expect(way?.length).toBeCloseTo(straight, 6)
        else expect(way?.length).toBeGreaterThan(straight)
        for (const [at, here] of (way?.points ?? []).entries()) {
          const next = way?.points[at + 1]
          if (next !== undefined) expect(bars.some(([a, b]) => crosses(here, next, a, b, 1e-3))).toBe(false)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('there and back are as long', () => {
    fc.assert(
      fc.property(floor, floor, (from, to) => {
        const there = shortestWay(from, to, { bars, bends })?.length ?? 0
        expect(shortestWay(to, from, { bars, bends })?.length).toBeCloseTo(there, 6)
      }),
      { numRuns: 100 },
    )
  })

  test('a grid finds no shorter one, but for its coarseness and the bend’s distance', () => {
    for (const [from, to] of [
      [
        [7500, 2500],
        [3500, 5500],
      ],
      [
        [600, 5400],
        [7400, 400],
      ],
    ] as const) {
      const way = shortestWay(from, to, { bars, bends })?.length ?? 0
      const grid = byGrid(from, to)
      // Eight directions are at most 8.3 % longer than the straight line; the bend is at most 2 × 300 mm of detour.
      expect(way).toBeLessThan(grid + 600)
      expect(grid).toBeLessThan(way * 1.083 + 200)
    }
  })

  test('there is none through a wall', () => {
    const wall: Segment = [
      [2000, 0],
      [2000, 6000],
    ]
    expect(shortestWay([1000, 1000], [3000, 1000], { bars: [...bars, wall], bends })).toBeNull()
  })
})
