import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { hatch } from '../../../src/plan/hatch.ts'
import { within } from '../../../src/plan/outline-shape.ts'

const square: readonly Point[] = [
  [0, 0],
  [1000, 0],
  [1000, 1000],
  [0, 1000],
]
/** An L: 3,000 by 2,000 less its corner of 1,000 by 800, 5.2 m² by hand. */
const bent: readonly Point[] = [
  [0, 0],
  [3000, 0],
  [3000, 1200],
  [2000, 1200],
  [2000, 2000],
  [0, 2000],
]
const long = (pieces: ReturnType<typeof hatch>) =>
  pieces.reduce((sum, [[ax, ay], [bx, by]]) => sum + Math.hypot(bx - ax, by - ay), 0)

describe('lines of a hatching', () => {
  test('at 45° through a square are as long as the diagonal of what they cut off', () => {
    // Falling at 45°: the line through 0, 0 is the diagonal, √2 · 1,000.
    const pieces = hatch(square, 45, 1000)
    expect(long(pieces)).toBeCloseTo(1000 * Math.SQRT2, 6)
  })

  test('times their distance cover the area, in an L too, at any angle', () => {
    fc.assert(
      fc.property(fc.double({ min: -90, max: 90, noNaN: true }), angle => {
        expect(Math.abs(long(hatch(bent, angle, 2)) * 2 - 5_200_000)).toBeLessThan(5_200_000 * 0.002)
      }),
      { numRuns: 30 },
    )
  })

  test('lie inside', () => {
    for (const angle of [-45, 45, 30]) {
      for (const [[ax, ay], [bx, by]] of hatch(bent, angle, 170))
        expect(within(bent, [(ax + bx) / 2, (ay + by) / 2])).toBe(true)
    }
  })

  test('run on from one outline into its neighbour', () => {
    const right = square.map(([x, y]): Point => [x + 1000, y])
    const ends = hatch(square, 45, 90).map(([, [x, y]]) => [x, y].map(Math.round).join(' '))
    const begins = hatch(right, 45, 90).map(([[x, y]]) => [x, y].map(Math.round).join(' '))
    const met = ends.filter(end => end.startsWith('1000 '))
    expect(met.length).toBeGreaterThan(6)
    expect(met.filter(end => !begins.includes(end))).toEqual([])
  })
})
