import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pointAlong, solidStretches } from '../../../src/drawing/stretches.ts'

const door = (x: number, width: number, kind = 'door') => ({ kind, x, width })

describe('the solid stretches of a wall', () => {
  test('a window is no way through', () => {
    expect(solidStretches(5000, [door(1000, 900), door(3000, 600, 'window')])).toEqual([
      [0, 1000],
      [1900, 5000],
    ])
  })

  test('doors at the ends, over each other and beyond the wall', () => {
    expect(solidStretches(5000, [door(0, 800), door(2000, 1000), door(2500, 1000), door(4600, 900)])).toEqual([
      [800, 2000],
      [3500, 4600],
    ])
  })

  test('stretches and openings together are the wall, whatever the openings', () => {
    const opening = fc.record({ x: fc.integer({ min: -500, max: 6000 }), width: fc.integer({ min: 1, max: 3000 }) })
    fc.assert(
      fc.property(fc.array(opening, { maxLength: 6 }), openings => {
        const doors = openings.map(({ x, width }) => door(x, width))
        const solid = solidStretches(5000, doors)
        // Second route: centimetre by centimetre.
        for (let at = 5; at < 5000; at += 10) {
          const open = doors.some(({ x, width }) => at > x && at < x + width)
          const edge = doors.some(({ x, width }) => at === x || at === x + width)
          if (!edge) expect(solid.some(([from, to]) => at > from && at < to)).toBe(!open)
        }
      }),
      { numRuns: 100 },
    )
  })

  test('a wall drawn a little longer than measured is shared by length', () => {
    expect(pointAlong({ from: [0, 0], to: [1010, 0], length: 1000 }, 500)).toEqual([505, 0])
  })
})
