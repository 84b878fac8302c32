/** A room told from other axes: in the building nothing moves. Figures by hand, and for any place by chance. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { axesBy, placeByAxes, pointByAxes, turnByAxes } from '../../../src/plan/new-axes.ts'
import { endBy } from '../../../src/plan/partition.ts'
import { toBuilding } from '../../../src/plan/place.ts'

test('the east wall of a room of 5000 × 4000 becomes its first', () => {
  // It ran down the page from 5000, 0 and lies along the new x axis.
  const axes = axesBy(
    [
      [5000, 0],
      [5000, 4000],
    ],
    [
      [0, 0],
      [4000, 0],
    ],
  )
  expect(axes).toEqual({ at: [5000, 0], turn: 90 })
  // 1000 from the east wall and 500 down it.
  expect(pointByAxes(axes, [4000, 500])).toEqual([500, 1000])
  expect(turnByAxes(axes, 30)).toBe(300)
  expect(placeByAxes({ at: [100, 200], turn: 0 }, axes)).toEqual({ at: [5100, 200], turn: 90 })
})

test('wherever the axes come to lie, a point and what stands there stay in the building', () => {
  const mm = fc.integer({ min: -20_000, max: 20_000 })
  const point = fc.tuple(mm, mm)
  const degrees = fc.integer({ min: 0, max: 3599 }).map(tenth => tenth / 10)
  fc.assert(
    fc.property(
      fc.record({ at: point, turn: degrees }),
      point,
      point,
      degrees,
      degrees,
      fc.integer({ min: 100, max: 20_000 }),
      point,
      degrees,
      (place, from, to, was, now, long, thing, turned) => {
        const axes = axesBy([from, endBy(from, long, was)], [to, endBy(to, long, now)])
        const after = placeByAxes(place, axes)
        // The wall that holds the room stays where it is, and so does what stands in it.
        const [heldX, heldY] = toBuilding(place, from)
        const [x, y] = toBuilding(after, to)
        expect(Math.hypot(x - heldX, y - heldY)).toBeLessThan(0.01)
        const [wasX, wasY] = toBuilding(place, thing)
        const [isX, isY] = toBuilding(after, pointByAxes(axes, thing))
        expect(Math.hypot(isX - wasX, isY - wasY)).toBeLessThan(0.01)
        const off = (after.turn + turnByAxes(axes, turned) - place.turn - turned) % 360
        expect(Math.abs(Math.round(off * 1e3) % 360_000)).toBeLessThan(1)
      },
    ),
  )
})
