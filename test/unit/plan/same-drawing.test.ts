/** By how much a drawing is carried, and what stands in whose way. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { overlap } from '../../../src/plan/overlap.ts'
import { shiftOfDrawing } from '../../../src/plan/same-drawing.ts'

const rect = (x: number, y: number, w: number, h: number): Point[] => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]
const named = (name: string, corners: readonly Point[]) => ({ name, corners })
const by = (corners: readonly Point[], dx: number, dy: number): Point[] => corners.map(([x, y]) => [x + dx, y + dy])

describe('where a drawing lies', () => {
  const size = fc.integer({ min: 2000, max: 9000 })
  const far = fc.integer({ min: -50_000, max: 50_000 })

  test('is told by any room of it that stands, wherever its outline begins', () => {
    fc.assert(
      fc.property(
        fc.array(size, { minLength: 1, maxLength: 6 }),
        size,
        far,
        far,
        fc.nat(3),
        (widths, depth, x, y, begin) => {
          let left = 0
          // Widths are unlike by more than a tape and a drawing are.
          const outlines = widths.map((width, at) => {
            const wide = 2000 + 9000 * at + width
            const corners = rect(left, 0, wide, depth)
            left += wide + 200
            return named(`Room ${at}`, corners)
          })
          const stood = by(outlines[0]?.corners ?? [], x, y)
          const room = named('', [...stood.slice(begin), ...stood.slice(0, begin)])
          const [dx = NaN, dy = NaN] = shiftOfDrawing(outlines, [room]) ?? []
          expect(dx).toBeCloseTo(x, 6)
          expect(dy).toBeCloseTo(y, 6)
        },
      ),
    )
  })

  test('is not known from one of two like cabinets, unless it is called as there', () => {
    const outlines = [named('West', rect(0, 0, 4000, 3000)), named('East', rect(4200, 0, 4000, 3000))]
    const stands = rect(14_200, 1000, 4000, 3000)
    expect(shiftOfDrawing(outlines, [named('Cabinet', stands)])).toBeNull()
    expect(shiftOfDrawing(outlines, [named('East', stands)])).toEqual([10_000, 1000])
    // Both of them leave no doubt.
    const both = [named('', stands), named('', rect(10_000, 1000, 4000, 3000))]
    expect(shiftOfDrawing(outlines, both)).toEqual([10_000, 1000])
  })

  test('is told by a room that a tape has made 20 mm longer, to the mean of its corners', () => {
    const outlines = [named('Hall', rect(0, 0, 8000, 5000))]
    expect(shiftOfDrawing(outlines, [named('Hall', rect(500, 0, 8020, 5000))])).toEqual([510, 0])
    expect(shiftOfDrawing(outlines, [named('Hall', rect(500, 0, 8300, 5000))])).toBeNull()
  })
})

describe('rooms that stand in each other’s way', () => {
  test.each([
    ['beside one another with a wall between', rect(5200, 0, 4000, 4000), false],
    ['with one face in common', rect(5000, 0, 4000, 4000), false],
    ['one over the corner of the other', rect(4000, 3000, 4000, 4000), true],
    ['one in the other', rect(1000, 1000, 500, 500), true],
    ['the same', rect(0, 0, 5000, 4000), true],
    ['crosswise, no corner within', rect(2000, -1000, 800, 6000), true],
  ])('%s', (_, other, answer) => {
    expect(overlap(rect(0, 0, 5000, 4000), other)).toBe(answer)
    expect(overlap(other, rect(0, 0, 5000, 4000))).toBe(answer)
  })
})
