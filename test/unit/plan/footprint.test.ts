/** What things take up of the floor. Figures by hand; areas of circles from π r². */
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { measuredByWall, placedByWall } from '../../../src/plan/by-wall.ts'
import { bandOf, footprintOf, halfAlong, outsideOf, overlapBy } from '../../../src/plan/footprint.ts'
import { stripBefore, sweptBefore } from '../../../src/plan/kept-free.ts'
import { areaOf } from '../../../src/plan/outline-shape.ts'
import { angleOf, endBy, lengthened, lengthOf, turnedTo } from '../../../src/plan/partition.ts'

const box = { x: 0, y: 0, turn: 0, width: 600, depth: 400, round: false }
const room: readonly Point[] = [
  [0, 0],
  [6000, 0],
  [6000, 4000],
  [0, 4000],
]

describe('a footprint', () => {
  test('of a turned box keeps its area; of a round thing it is about the circle and hardly larger', () => {
    expect(areaOf(footprintOf({ ...box, turn: 37 }))).toBeCloseTo(240_000, 6)
    const circle = areaOf(footprintOf({ ...box, width: 500, depth: 500, round: true }))
    expect(circle).toBeGreaterThan(Math.PI * 250 ** 2)
    expect(circle).toBeLessThan(Math.PI * 250 ** 2 * 1.003)
  })

  test('reaches half its diagonal along it, and half its diameter any way when it is round', () => {
    const way: Point = [600 / Math.hypot(600, 400), 400 / Math.hypot(600, 400)]
    expect(halfAlong(box, way)).toBeCloseTo((600 * 600 + 400 * 400) / Math.hypot(600, 400) / 2, 9)
    expect(halfAlong({ ...box, width: 500, depth: 500, round: true, turn: 12 }, way)).toBeCloseTo(250, 9)
  })

  test('overlaps another by the least way that parts them, and not where they touch', () => {
    expect(overlapBy(footprintOf(box), footprintOf({ ...box, x: 550 }))).toBeCloseTo(50, 9)
    expect(overlapBy(footprintOf(box), footprintOf({ ...box, x: 600 }))).toBe(0)
    // A square on its corner: half its diagonal of 400 √2 / 2 = 282.84 reaches to x = 317.16, 17.16 past none.
    const square = { ...box, width: 400, depth: 400, turn: 45, x: 600 }
    expect(overlapBy(footprintOf(box), footprintOf(square))).toBe(0)
    expect(overlapBy(footprintOf(box), footprintOf({ ...square, x: 570 }))).toBeCloseTo(300 + 282.8427 - 570, 3)
  })
})

describe('out of a room', () => {
  test('a box within is not; one over a wall is, by how far and which wall', () => {
    expect(outsideOf(footprintOf({ ...box, x: 300, y: 200 }), room)).toBeNull()
    expect(outsideOf(footprintOf({ ...box, x: 5800, y: 2000 }), room)).toMatchObject({ side: 1, by: 100 })
  })

  test('a line that cuts a corner of the wall between two points inside is found where it is farthest out', () => {
    // An L whose inner corner is at (3000, 2000); the line from (2900, 3500) to (5500, 1900) passes above it outside.
    const bent: readonly Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 2000],
      [3000, 2000],
      [3000, 4000],
      [0, 4000],
    ]
    const found = outsideOf(
      [
        [2900, 3500],
        [5500, 1900],
      ],
      bent,
    )
    expect(found?.by).toBeGreaterThan(300)
    expect([2, 3]).toContain(found?.side)
  })
})

test('a place by a wall and the place itself are each other’s, for any turn', () => {
  const wall = { from: [6000, 0], to: [6000, 4000] } as const
  for (const turn of [0, 15, 90, 200]) {
    const thing = { ...box, turn }
    const [x, y] = placedByWall(thing, wall, { along: 700, off: 1200 })
    expect(measuredByWall({ ...thing, x, y }, wall).along).toBeCloseTo(700, 5)
    expect(measuredByWall({ ...thing, x, y }, wall).off).toBeCloseTo(1200, 5)
  }
  // Unturned: 600 along x is off the wall, 400 along y is along it.
  expect(placedByWall(box, wall, { along: 700, off: 1200 })).toEqual([6000 - 1200 - 300, 900])
})

describe('a partition by its ends', () => {
  const ends = [
    [1000, 1000],
    [1000, 3000],
  ] as const
  test('is found by length and angle, turned about its middle, lengthened from its left end', () => {
    expect([lengthOf(ends), angleOf(ends)]).toEqual([2000, 90])
    expect(endBy([1000, 1000], 2000, 90)).toEqual([1000, 3000])
    expect(turnedTo(ends, 0)).toEqual([
      [0, 2000],
      [2000, 2000],
    ])
    expect(lengthened(ends, 2500)).toEqual([
      [1000, 1000],
      [1000, 3500],
    ])
    expect(areaOf(bandOf(ends, 120))).toBeCloseTo(240_000, 6)
  })
})

describe('what a door needs', () => {
  const face = { from: [0, 0], to: [6000, 0], length: 6000, before: 0 } as const
  test('is a quarter circle before it, on the side of its hinge, and none when it turns the other way', () => {
    const [leaf] = sweptBefore(face, { x: 1000, width: 900, swing: 'in left' })
    const quarter = (Math.PI / 4) * 900 ** 2
    expect(areaOf(leaf ?? [])).toBeGreaterThan(quarter)
    expect(areaOf(leaf ?? [])).toBeLessThan(quarter * 1.01)
    expect(Math.min(...(leaf ?? []).map(([x]) => x))).toBe(1000)
    expect(sweptBefore(face, { x: 1000, width: 900, swing: 'both in' })).toHaveLength(2)
    for (const swing of ['', 'out left', 'both out', 'sliding']) {
      expect(sweptBefore(face, { x: 1000, width: 900, swing })).toEqual([])
    }
  })

  test('lies before the face of a partition, half its thickness off the line', () => {
    expect(stripBefore({ ...face, before: 50 }, { x: 1000, width: 900 }, 915)).toEqual([
      [1000, 50],
      [1900, 50],
      [1900, 965],
      [1000, 965],
    ])
  })
})
