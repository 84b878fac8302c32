/** Rooms that lie over one another, and by how much: worked by hand. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { overlap, overlapDepth } from '../../../src/plan/overlap.ts'

const box = (x: number, y: number, wide: number, deep: number): Point[] => [
  [x, y],
  [x + wide, y],
  [x + wide, y + deep],
  [x, y + deep],
]

test('two rooms wall to wall lie apart; one pushed into the other lies in it by as much', () => {
  const room = box(0, 0, 6000, 4000)
  expect(overlapDepth(room, box(6000, 0, 3000, 4000))).toBe(0)
  expect(overlapDepth(room, box(5880, 500, 3000, 3000))).toBeCloseTo(120, 6)
  expect(overlapDepth(room, box(7000, 0, 3000, 4000))).toBe(0)
})

test('a room within another is as deep in it as its furthest corner; corridors that cross have no depth', () => {
  expect(overlapDepth(box(0, 0, 6000, 4000), box(2500, 1500, 1000, 1000))).toBeCloseTo(2000, 6)
  const [long, across] = [box(0, 0, 9000, 1000), box(2000, -3000, 800, 9000)]
  expect(overlap(long, across)).toBe(true)
  expect(overlapDepth(long, across)).toBe(null)
})

test('it is the same asked either way, and grows as one is pushed in', () => {
  const size = fc.integer({ min: 2000, max: 9000 })
  fc.assert(
    fc.property(
      size,
      size,
      size,
      fc.integer({ min: 20, max: 900 }),
      fc.constantFrom(0, 100),
      (wide, deep, next, by, beside) => {
        const room = box(0, 0, wide, deep)
        const into = (depth: number) => overlapDepth(room, box(wide - depth, beside, next, deep - 2 * beside))
        expect(into(by)).toBeCloseTo(by, 6)
        expect(overlapDepth(box(wide - by, beside, next, deep - 2 * beside), room)).toBeCloseTo(by, 6)
      },
    ),
    { numRuns: 300 },
  )
})
