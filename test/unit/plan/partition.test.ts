/** A partition by its two ends. Figures by hand, in plan coordinates: x to the right, y down the page. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { besideOf, type Ends, lengthOf, sideOf } from '../../../src/plan/partition.ts'

/** To the right of the page: face a looks down it, towards greater y. */
const screen: Ends = [
  [3000, 2600],
  [5400, 2600],
]

test('a point lies before the face that looks at it', () => {
  expect(sideOf(screen, [4000, 2700])).toBe('a')
  expect(sideOf(screen, [4000, 2500])).toBe('b')
  expect(sideOf([screen[1], screen[0]], [4000, 2700])).toBe('b')
})

test('a line beside it runs from left to right as it is seen', () => {
  expect(besideOf(screen, 'a', 50)).toEqual([
    [3000, 2650],
    [5400, 2650],
  ])
  expect(besideOf(screen, 'b', 50)).toEqual([
    [5400, 2550],
    [3000, 2550],
  ])
})

test('whichever way it runs, the line on a side is as long, and lies on that side', () => {
  const at = fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 }))
  fc.assert(
    fc.property(at, at, fc.constantFrom('a' as const, 'b' as const), (from, to, side) => {
      fc.pre(lengthOf([from, to]) > 10)
      const beside = besideOf([from, to], side, 50)
      expect(lengthOf(beside)).toBeCloseTo(lengthOf([from, to]), 6)
      for (const end of beside) expect(sideOf([from, to], end)).toBe(side)
      // Seen from there it is before its own face a: left is left.
      expect(sideOf(beside, from)).toBe('b')
    }),
  )
})
