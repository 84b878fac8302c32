/** A room drawn corner by corner. Lengths and angles are checked against plane geometry written out beside them. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { outlineOf } from '../../../src/model/outline.ts'
import {
  addCorner,
  close,
  cornerTo,
  type Draft,
  emptyDraft,
  headingBy,
  pointBy,
  takeBack,
} from '../../../src/plan/draft.ts'
import { toBuilding } from '../../../src/plan/place.ts'

function drawn(...points: readonly Point[]): Draft {
  return points.reduce((draft, at) => {
    const step = addCorner(draft, at)
    if (!step.ok) throw new Error(step.problem)
    return step.draft
  }, emptyDraft)
}

/** By figures alone, each as length and corner; the first corner is the way on the page. */
function typed(from: Point, ...sides: readonly (readonly [number, number])[]): Draft {
  return sides.reduce((draft, [length, corner]) => {
    const last = draft.corners.at(-1)?.at ?? from
    const step = addCorner(draft, pointBy(last, headingBy(draft, corner), length), String(length))
    if (!step.ok) throw new Error(step.problem)
    return step.draft
  }, drawn(from))
}

describe('a room drawn', () => {
  test('by figures: a corner of 90 turns to the right, one of 270 to the left', () => {
    const draft = typed([1000, 500], [6000, 0], [4000, 90], [2000, 90], [1000, 270])
    expect(draft.corners.map(corner => corner.at)).toEqual([
      [1000, 500],
      [7000, 500],
      [7000, 4500],
      [5000, 4500],
      [5000, 5500],
    ])
    expect(cornerTo(draft, [3000, 5500])).toBe(90)
  })

  test('an equilateral triangle by two typed sides closes with 60° at each corner', () => {
    const closed = close(typed([0, 0], [3000, 0], [3000, 60]))
    if (!closed.ok) throw new Error(closed.problem)
    expect(closed.drawn.walls.map(wall => wall.angle)).toEqual([60, 60, 60])
    for (const { length } of closed.drawn.walls) expect(length).toBeCloseTo(3000, 2)
    expect(closed.drawn.walls.map(wall => wall.lengthText)).toEqual(['3000', '3000', ''])
  })

  test('drawn against the clock, it comes out clockwise and stands where it was drawn', () => {
    const points: Point[] = [
      [0, 0],
      [0, 3000],
      [4000, 3000],
      [4000, 0],
    ]
    const closed = close(drawn(...points))
    if (!closed.ok) throw new Error(closed.problem)
    expect(closed.drawn.walls.map(({ length, angle }) => [length, angle])).toEqual([
      [4000, 90],
      [3000, 90],
      [4000, 90],
      [3000, 90],
    ])
    expect(closed.drawn.place).toEqual({ at: [0, 0], turn: 0 })
  })

  test('what room.add makes of its figures stands on the corners that were drawn', () => {
    // Points about a centre in the order of their angle never cross.
    const outline = fc
      .array(
        fc.record({ turn: fc.double({ min: 0.3, max: 1, noNaN: true }), far: fc.integer({ min: 2000, max: 9000 }) }),
        {
          minLength: 5,
          maxLength: 12,
        },
      )
      .map(parts => {
        const whole = parts.reduce((sum, part) => sum + part.turn, 0)
        let angle = 0
        return parts.map(({ turn, far }): Point => {
          angle += (turn / whole) * 2 * Math.PI
          return [Math.round(far * Math.cos(angle)), Math.round(far * Math.sin(angle))]
        })
      })
    fc.assert(
      fc.property(outline, fc.boolean(), (points, backwards) => {
        const closed = close(drawn(...(backwards ? [...points].reverse() : points)))
        if (!closed.ok) throw new Error(closed.problem)
        const { walls, place, corners } = closed.drawn
        const { corners: own, closes } = outlineOf(walls, 20)
        expect(closes).toBe(true)
        for (const [index, corner] of own.entries()) {
          const [x, y] = toBuilding(place, corner)
          expect(Math.hypot(x - (corners[index]?.[0] ?? 0), y - (corners[index]?.[1] ?? 0))).toBeLessThan(1)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('a side that crosses another, runs back or has no length is refused in words, and nothing is lost', () => {
    const draft = drawn([0, 0], [4000, 0], [4000, 3000], [2000, 3000])
    expect(addCorner(draft, [2000, -500])).toEqual({
      ok: false,
      problem: 'This side would cross side 1. Go round it, or take a corner back.',
    })
    expect(addCorner(draft, [3000, 3000])).toEqual({
      ok: false,
      problem: 'This side would run back over side 3. Choose another angle.',
    })
    expect(addCorner(draft, [2000, 3000])).toMatchObject({ ok: false, problem: /needs a length/ })
    expect(draft.corners).toHaveLength(4)
    expect(takeBack(draft).corners).toHaveLength(3)
    // A corner on an earlier side touches it, which is no room either.
    expect(addCorner(draft, [1000, 0])).toMatchObject({ ok: false })
  })

  test('a last side that would cross is refused, and so are two corners', () => {
    expect(close(drawn([0, 0], [4000, 0]))).toMatchObject({ ok: false, problem: /three walls/ })
    // From the last corner the way back to the first leads through side 4.
    const hooked = drawn([0, 0], [4000, 0], [4000, 3000], [1000, 3000], [1000, 1000], [3000, 1000], [3000, 2000])
    expect(close(hooked)).toMatchObject({ ok: false, problem: /cross side [45]/ })
  })
})
