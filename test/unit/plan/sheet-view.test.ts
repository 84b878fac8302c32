import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { bearable, carriage, fromSheet, toSheet, zoomed } from '../../../src/plan/sheet-view.ts'

const view = fc.record({
  scale: fc.double({ min: 0.001, max: 4, noNaN: true }),
  x: fc.integer({ min: -50_000, max: 50_000 }),
  y: fc.integer({ min: -50_000, max: 50_000 }),
})
const point = fc.tuple(fc.integer({ min: -90_000, max: 90_000 }), fc.integer({ min: -90_000, max: 90_000 }))

test('what was drawn at one view is carried to where another has it', () => {
  fc.assert(
    fc.property(view, view, point, (drawn, to, mm) => {
      const { factor, x, y } = carriage(drawn, to)
      const [px, py] = toSheet(drawn, mm)
      const [wantedX, wantedY] = toSheet(to, mm)
      // Floating-point figures of this size agree to about eleven digits.
      const close =
        1e-9 *
        (1 +
          Math.abs(factor) * (Math.abs(px) + Math.abs(py) + Math.abs(drawn.x) + Math.abs(drawn.y)) +
          Math.abs(to.x) +
          Math.abs(to.y))
      expect(Math.abs(px * factor + x - wantedX)).toBeLessThanOrEqual(close)
      expect(Math.abs(py * factor + y - wantedY)).toBeLessThanOrEqual(close)
    }),
  )
})

test('a turn of the wheel leaves the point under the pointer where it is', () => {
  fc.assert(
    fc.property(view, point, fc.double({ min: 0.5, max: 2, noNaN: true }), (from, pointer, factor) => {
      const before = fromSheet(from, pointer)
      const after = fromSheet(zoomed(from, pointer, factor), pointer)
      expect(after[0]).toBeCloseTo(before[0], 3)
      expect(after[1]).toBeCloseTo(before[1], 3)
    }),
  )
})

test('a drawing is carried as long as its letters can be read', () => {
  const at = { scale: 0.1, x: 12, y: 40 }
  const pointer: Point = [300, 200]
  expect(bearable(carriage(at, at))).toBe(true)
  expect(bearable(carriage(at, { ...at, x: 4000 }))).toBe(true)
  expect(bearable(carriage(at, zoomed(at, pointer, 2.9)))).toBe(true)
  expect(bearable(carriage(at, zoomed(at, pointer, 3.1)))).toBe(false)
  expect(bearable(carriage(at, zoomed(at, pointer, 0.3)))).toBe(false)
})
