/**
 * Balance against the published deviation of the centre of mass (DCM): Hübner & Fillinger, "Comparison of Objective
 * Measures for Predicting Perceptual Balance and Visual Aesthetic Preference", Frontiers in Psychology 7:335 (2016).
 * There on the pixels of a picture; on rectangles the sums are integrals, and the values those without rounding to
 * pixels. The lever is the paper's own idea of balance.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { balanceOf, deviationOfCentre, deviationWithin, type Standing } from '../../../src/sequence/balance.ts'

const frame = { left: 0, bottom: 0, width: 100, height: 100 }
const square = (left: number, bottom: number, width = 20, height = 20) => ({ left, bottom, width, height })

/** By summing cells of one unit: another route to the same integral. */
function bySummation(rects: readonly ReturnType<typeof square>[]): number {
  let mass = 0
  let x = 0
  let y = 0
  for (let across = 0.5; across < 100; across += 1) {
    for (let up = 0.5; up < 100; up += 1) {
      const at = rects.filter(
        rect =>
          across > rect.left && across < rect.left + rect.width && up > rect.bottom && up < rect.bottom + rect.height,
      ).length
      mass += at
      x += at * across
      y += at * up
    }
  }
  return (Math.hypot(0.5 - x / mass / 100, 0.5 - y / mass / 100) / 0.5) * 100
}

describe('deviation of the centre of mass', () => {
  test('a square in the middle of a square is 0, one at the left with its middle at 20 of 100 is 60', () => {
    expect(deviationWithin([square(40, 40)], frame)).toBeCloseTo(0, 9)
    expect(deviationWithin([square(10, 40)], frame)).toBeCloseTo(60, 9)
  })

  test('two equal squares mirrored are as centred', () => {
    expect(deviationWithin([square(10, 40), square(70, 40)], frame)).toBeCloseTo(0, 9)
  })

  test('a lever balances: 20 wide at 20 to 40, 10 wide at twice the distance', () => {
    // Middles 30 and 90: 20 · (30 − 50) + 10 · (90 − 50) = 0.
    expect(deviationWithin([square(20, 40, 20), square(85, 40, 10)], frame)).toBeCloseTo(0, 9)
  })

  test('a point in a corner is 141.4', () => {
    expect(deviationWithin([square(0, 0, 1e-6, 1e-6)], frame)).toBeCloseTo(100 * Math.SQRT2, 3)
  })

  test('agrees with the summation of cells', () => {
    const side = fc.integer({ min: 1, max: 40 })
    const rect = fc.tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }), side, side)
    fc.assert(
      fc.property(fc.array(rect, { minLength: 1, maxLength: 4 }), given => {
        const rects = given.map(([left, bottom, width, height]) => square(left, bottom, width, height))
        expect(deviationWithin(rects, frame)).toBeCloseTo(bySummation(rects), 6)
      }),
      { numRuns: 25 },
    )
  })

  test('without a frame, what bounds the works is the frame', () => {
    expect(deviationOfCentre([square(500, 700, 80, 60)])).toBeCloseTo(0, 9)
    expect(deviationOfCentre([])).toBe(0)
  })
})

describe('balance of a wall', () => {
  const standing = (id: string, middle: number, width: number, height: number, weight: number): Standing => ({
    id,
    left: middle - width / 2,
    bottom: 1480 - height / 2,
    width,
    height,
    weight,
    right: 0,
    up: 0,
    lightness: null,
  })

  test('the lever on a wall: half the weight at twice the distance', () => {
    const works = [standing('a', 2000, 600, 600, 2), standing('b', 5000, 300, 600, 1)]
    const balance = balanceOf({ from: 0, to: 6000, axis: 3000, works })
    expect(balance?.off).toBeCloseTo(0, 9)
    expect(balance?.cause).toBeNull()
  })

  test('pulls add up to the deviation', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 300, max: 8700 }), fc.double({ min: 0.01, max: 4, noNaN: true })), {
          minLength: 1,
          maxLength: 12,
        }),
        given => {
          const works = given.map(([middle, weight], at) => standing(String(at), middle, 400, 300, weight))
          const balance = balanceOf({ from: 0, to: 9000, axis: 4500, works })
          const sum = balance?.pulls.reduce((total, one) => total + one.pull, 0) ?? Number.NaN
          expect(sum).toBeCloseTo(balance?.off ?? 0, 6)
        },
      ),
    )
  })
})
