/**
 * Sight lines. Eye heights: ANSUR II, 2012 (NATICK/TR-15/007). Values of the normal distribution: Abramowitz and Stegun,
 * Handbook of Mathematical Functions, table 26.1 (from memory). The shares served were computed by another program.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { below, coverage, eyes, leastServed, servedEyes } from '../../../src/sequence/sight.ts'

const triptych = { centre: 1480, height: 1000 }

describe('whom a work serves', () => {
  test('eyes from 1,480 to 2,207.9 mm at 2 m, ten degrees down, cones of 10 and 30', () => {
    const served = servedEyes(triptych, 2000, { line: -10, inner: 10, outer: 30 })
    expect(served.from).toBeCloseTo(1480, 6)
    expect(served.to).toBeCloseTo(2207.9, 1)
    const [men, women] = eyes.standing
    if (men === undefined || women === undefined) throw new Error('two groups stand')
    expect(coverage([{ ...men, share: 1 }], served)).toBeCloseTo(0.9927, 4)
    expect(coverage([{ ...women, share: 1 }], served)).toBeCloseTo(0.739, 4)
  })

  test('level, with cones of 5 and 20', () => {
    const served = servedEyes(triptych, 2000, { line: 0, inner: 5, outer: 20 })
    const [men, women] = eyes.standing
    if (men === undefined || women === undefined) throw new Error('two groups stand')
    expect(coverage([{ ...men, share: 1 }], served)).toBeCloseTo(0.5747, 4)
    expect(coverage([{ ...women, share: 1 }], served)).toBeCloseTo(0.9856, 4)
  })

  test('the normal distribution', () => {
    expect(below(0)).toBeCloseTo(0.5, 6)
    expect(below(1)).toBeCloseTo(0.8413447, 6)
    expect(below(1.645)).toBeCloseTo(0.950015, 5)
    expect(below(-2.326)).toBeCloseTo(0.010009, 5)
  })

  test('a share is a share, and more groups are never better served', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 2500, noNaN: true }),
        fc.double({ min: 50, max: 3000, noNaN: true }),
        fc.double({ min: 500, max: 8000, noNaN: true }),
        (centre, height, distance) => {
          const sight = { line: -10, inner: 10, outer: 30 }
          const one = leastServed(['standing'], { centre, height }, distance, sight)
          const both = leastServed(['standing', 'wheelchair'], { centre, height }, distance, sight)
          expect(one).toBeGreaterThanOrEqual(0)
          expect(one).toBeLessThanOrEqual(1)
          expect(both).toBeLessThanOrEqual(one)
        },
      ),
    )
  })
})
