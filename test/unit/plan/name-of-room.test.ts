import { describe, expect, test } from 'vitest'
import { middleOf } from '../../../src/plan/within.ts'

const room = [
  [0, 0],
  [9000, 0],
  [9000, 6000],
  [0, 6000],
] as const

const box = (left: number, top: number, right: number, bottom: number) => ({ left, top, right, bottom })

describe('where a room’s name stands', () => {
  test('in the middle of an empty room', () => {
    expect(middleOf(room)).toEqual({ at: [4500, 3000], wide: 9000 })
  })

  test('on another line where a row of benches takes the middle', () => {
    const benches = [box(1000, 2800, 2600, 3200), box(3700, 2800, 5300, 3200), box(6400, 2800, 8000, 3200)]
    const { at, wide } = middleOf(room, benches)
    expect(wide).toBe(9000)
    // 900 of words are clear of the benches.
    expect(Math.abs(at[1] - 3000)).toBeGreaterThanOrEqual(450 + 200)
  })

  test('beside a screen that stands upright through the room', () => {
    expect(middleOf(room, [box(2900, 0, 3100, 6000)])).toEqual({ at: [6050, 3000], wide: 5900 })
  })

  test('clear of the corner that an L turns about', () => {
    const bent = [
      [0, 0],
      [5000, 0],
      [5000, 4000],
      [2000, 4000],
      [2000, 2000],
      [0, 2000],
    ] as const
    const { at, wide } = middleOf(bent)
    // Below the corner only 3000 are left; above it a name of 900 has all 5000.
    expect(wide).toBe(5000)
    expect(at[0]).toBe(2500)
    expect(at[1]).toBeLessThanOrEqual(2000 - 450)
  })

  test('where all is taken, at a corner, without room', () => {
    expect(middleOf(room, [box(-100, -100, 9100, 6100)])).toEqual({ at: [0, 0], wide: 0 })
  })
})
