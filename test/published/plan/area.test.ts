/** Areas, perimeters and what lies within an outline, against d3-polygon (npm), which is planar and no part of this. */
import { polygonArea, polygonContains, polygonLength } from 'd3'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { areaOf, perimeterOf, within } from '../../../src/plan/outline-shape.ts'
import { starRoom } from '../../unit/plan/lettered.ts'

test('area, perimeter and inside agree with d3-polygon for rooms of any shape', () => {
  const point = fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 }))
  fc.assert(
    fc.property(starRoom(3, 12), point, (corners, asked) => {
      const pairs = corners.map(([x, y]): [number, number] => [x, y])
      expect(Math.abs(areaOf(corners))).toBeCloseTo(Math.abs(polygonArea(pairs)), 3)
      expect(perimeterOf(corners)).toBeCloseTo(polygonLength(pairs), 6)
      expect(areaOf(corners)).toBeGreaterThan(0)
      expect(within(corners, asked)).toBe(polygonContains(pairs, asked))
    }),
  )
})
