/** The plan of a room as shapes: bands outside the measured line, mitred, and cut where something opens. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type PlanWall, type Point, planShapes, planWalls, readable } from '../../../src/drawing/room-plan.ts'
import { outlineOf } from '../../../src/model/outline.ts'

type Typed = readonly [length: number, angle: number, openings?: PlanWall['openings']]

function room(...typed: readonly Typed[]): readonly PlanWall[] {
  const walls = typed.map(([length, angle, openings = []], index) => ({
    key: String(index),
    name: `wall ${index + 1}`,
    length,
    angle,
    openings,
  }))
  return planWalls(walls, outlineOf(walls, 20).corners)
}

/** To hundredths; a zero is a plain zero. */
const hundredth = (value: number) => Math.round(value * 100) / 100 + 0
const rounded = (points: readonly Point[] | undefined) => points?.map(([x, y]) => [hundredth(x), hundredth(y)])

/** Shoelace formula. */
function areaOf(points: readonly Point[]): number {
  let twice = 0
  for (const [index, [x, y]] of points.entries()) {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y]
    twice += x * nextY - nextX * y
  }
  return Math.abs(twice) / 2
}

describe('the bands of a room', () => {
  test('lie outside its outline and meet at mitred corners', () => {
    const [north, east, south, west] = planShapes(room([4000, 90], [3000, 90], [4000, 90], [3000, 90]), 200)
    expect(rounded(north?.solid[0])).toEqual([
      [0, 0],
      [4000, 0],
      [4200, -200],
      [-200, -200],
    ])
    expect(rounded(east?.solid[0])).toEqual([
      [4000, 0],
      [4000, 3000],
      [4200, 3200],
      [4200, -200],
    ])
    expect([south?.out, west?.out].map(out => rounded(out && [out])?.[0])).toEqual([
      [0, 1],
      [-1, 0],
    ])
  })

  test('together have the area between the outline and one as thick outside it', () => {
    const shapes = planShapes(room([4000, 90], [3000, 90], [4000, 90], [3000, 90]), 200)
    const area = shapes.flatMap(shape => shape.solid).reduce((sum, band) => sum + areaOf(band), 0)
    expect(area).toBeCloseTo(4400 * 3400 - 4000 * 3000, 3)
  })

  test('turn inwards at a re-entrant corner', () => {
    const shapes = planShapes(room([6000, 90], [2000, 90], [3000, 270], [2000, 90], [3000, 90], [4000, 90]), 100)
    // The inner corner of the L is at 3 000, 2 000; the bands meet outside the room, to its right and below.
    expect(rounded(shapes[2]?.solid[0])?.[2]).toEqual([3100, 2100])
  })

  test('end square where the walls do not come round, and where two walls run on in one line', () => {
    const [left, right] = planShapes(room([3000, 90], [2000, 90]), 100)
    expect(rounded(left?.solid[0])).toEqual([
      [0, 0],
      [3000, 0],
      [3100, -100],
      [0, -100],
    ])
    expect(rounded(right?.solid[0])?.[2]).toEqual([3100, 2000])
    const straight = planShapes(room([2000, 180], [2000, 90], [3000, 90], [4000, 90], [3000, 90]), 100)
    expect(rounded(straight[0]?.solid[0])?.slice(1, 3)).toEqual([
      [2000, 0],
      [2000, -100],
    ])
  })

  test('are cut at openings in the order they stand, and only where the wall is', () => {
    const openings = [
      { kind: 'window', x: 3500, width: 900 },
      { kind: 'door', x: 500, width: 1000 },
      { kind: 'niche', x: 5000, width: 100 },
    ]
    const [north] = planShapes(room([4000, 90, openings], [3000, 90], [4000, 90], [3000, 90]), 200)
    expect(north?.solid.map(band => rounded(band.slice(0, 2)))).toEqual([
      [
        [0, 0],
        [500, 0],
      ],
      [
        [1500, 0],
        [3500, 0],
      ],
    ])
    expect(north?.openings.map(({ kind }) => kind)).toEqual(['door', 'window'])
    expect(north?.stops).toEqual([0, 500, 1500, 3500, 4000])
  })

  test('leave nothing between two openings that lie over each other', () => {
    const openings = [
      { kind: 'door', x: 500, width: 1000 },
      { kind: 'passage', x: 900, width: 300 },
    ]
    const [north] = planShapes(room([4000, 90, openings], [3000, 90], [4000, 90], [3000, 90]), 200)
    expect(north?.solid.map(band => rounded(band.slice(0, 2))?.map(([x]) => x))).toEqual([
      [0, 500],
      [1500, 4000],
    ])
  })

  test('follow a gap that was shared out: an opening lies at its share of the wall as drawn', () => {
    const openings = [{ kind: 'door', x: 0, width: 2060 }]
    const walls = room([4000, 90], [3000, 90], [4120, 90, openings], [3000, 90])
    const south = planShapes(walls, 100)[2]
    const drawn = Math.hypot(
      (walls[2]?.to[0] ?? 0) - (walls[2]?.from[0] ?? 0),
      (walls[2]?.to[1] ?? 0) - (walls[2]?.from[1] ?? 0),
    )
    const [a = [0, 0], b = [0, 0]] = south?.openings[0]?.band ?? []
    expect(drawn).not.toBeCloseTo(4120, 0)
    expect(Math.hypot(b[0] - a[0], b[1] - a[1])).toBeCloseTo(drawn / 2, 6)
  })

  test('always take up the whole wall between them, and words on it are never upside down', () => {
    const angle = fc.integer({ min: 30, max: 330 })
    const wall = fc.record({ length: fc.integer({ min: 500, max: 9000 }), angle, x: fc.nat(9000), width: fc.nat(2000) })
    fc.assert(
      fc.property(fc.array(wall, { minLength: 3, maxLength: 8 }), drawn => {
        const walls = room(...drawn.map((one): Typed => [one.length, one.angle, [{ kind: 'door', ...one }]]))
        for (const [index, shape] of planShapes(walls, 150).entries()) {
          const along = ([a = [0, 0], b = [0, 0]]: readonly Point[]) => Math.hypot(b[0] - a[0], b[1] - a[1])
          const bands = [...shape.solid, ...shape.openings.map(opening => opening.band)]
          const { from = [0, 0], to = [0, 0] } = walls[index] ?? {}
          const whole = Math.hypot(to[0] - from[0], to[1] - from[1])
          expect(bands.reduce((sum, band) => sum + along(band), 0)).toBeCloseTo(whole, 3)
          const turn = readable(shape.along)
          expect(turn).toBeGreaterThanOrEqual(-90.5)
          expect(turn).toBeLessThanOrEqual(89.5)
        }
      }),
    )
  })
})
