/** A wall between two rooms moved as one body. Against plane geometry done anew here: distances, areas, lines turned. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { bentWalls } from '../../../src/plan/bend.ts'
import { bendSide, type Deed, followed, otherDeed, type Side, sideAlone } from '../../../src/plan/bend-both.ts'
import { areaOf, crossing } from '../../../src/plan/outline-shape.ts'
import { pivots } from '../../../src/plan/turn-wall.ts'

const side = (points: readonly Point[], index: number): Side => ({
  index,
  placed: true,
  walls: points.map((from, at) => {
    const to = points[(at + 1) % points.length] ?? from
    return { name: `side ${at + 1}`, from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]), angle: null }
  }),
})

const figure = (most: number) => fc.double({ min: -most, max: most, noNaN: true })

/**
 * Two rooms with a wall of some thickness between them, upright on the page, then all of it turned: the west room's
 * second wall is the other side of the east room's fourth. Corners but those of the wall are pushed about.
 */
const pairs = fc
  .record({
    thick: fc.double({ min: 60, max: 600, noNaN: true }),
    turn: figure(180),
    off: fc.array(figure(700), { minLength: 12, maxLength: 12 }),
  })
  .map(({ thick, turn, off }) => {
    const o = (at: number) => off[at] ?? 0
    const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
    const put = ([x, y]: Point): Point => [x * cos - y * sin + 3000, x * sin + y * cos - 800]
    const west: Point[] = [
      [-6000 + o(0), o(1)],
      [0, o(2)],
      [0, 5000 + o(3)],
      [-6000 + o(4), 5000 + o(5)],
    ]
    const east: Point[] = [
      [thick, o(6)],
      [thick + 5000 + o(7), o(8)],
      [thick + 5000 + o(9), 5000 + o(10)],
      [thick, 5000 + o(11)],
    ]
    return { thick, west: side(west.map(put), 1), east: side(east.map(put), 3) }
  })

const deeds: fc.Arbitrary<Deed> = fc.oneof(
  fc.record({ is: fc.constant('shift' as const), by: figure(1200) }),
  fc.record({ is: fc.constant('turn' as const), about: fc.constantFrom(...pivots), by: figure(6) }),
)

function after({ walls, index }: Side, deed: Deed): Side {
  const bent = bendSide({ walls, index, placed: true }, deed)
  if (!bent.ok) throw new Error(bent.problem)
  return { walls: bentWalls(walls, index, bent), index, placed: true }
}
const face = ({ walls, index }: Side) => {
  const wall = walls[index]
  if (wall === undefined) throw new Error('it is one of the walls')
  return wall
}
const cornersOf = ({ walls }: Side) => walls.map(({ from }) => from)
/** From a point to the line of a face. */
function distance([x, y]: Point, { from, to }: { from: Point; to: Point }): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return Math.abs(dx * (y - from[1]) - dy * (x - from[0])) / Math.hypot(dx, dy)
}
const both = (own: Side, other: Side, deed: Deed) => {
  const theirs = otherDeed(own, other, deed)
  if (!theirs.ok) throw new Error(theirs.problem)
  return [after(own, deed), after(other, theirs.deed)] as const
}

describe('a wall between two rooms goes with both its faces', () => {
  test('moved or turned from either room it stays as thick, and both rooms stay plain outlines', () => {
    fc.assert(
      fc.property(pairs, deeds, fc.boolean(), ({ thick, west, east }, deed, fromWest) => {
        const [own, other] = fromWest ? [west, east] : [east, west]
        const [mine, theirs] = both(own, other, deed)
        for (const end of [face(theirs).from, face(theirs).to]) {
          expect(Math.abs(distance(end, face(mine)) - thick)).toBeLessThan(0.05)
        }
        for (const room of [mine, theirs]) {
          expect(crossing(cornersOf(room))).toBeNull()
          expect(areaOf(cornersOf(room))).toBeGreaterThan(0)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('what one room gains in area the other loses, each times the mean length of its own face', () => {
    fc.assert(
      fc.property(pairs, figure(1200), ({ west, east }, by) => {
        const [mine, theirs] = both(west, east, { is: 'shift', by })
        for (const [was, now, way] of [
          [west, mine, by],
          [east, theirs, -by],
        ] as const) {
          // A strip with two parallel sides: its height times the mean of them.
          const mean = (face(was).length + face(now).length) / 2
          const grown = areaOf(cornersOf(now)) - areaOf(cornersOf(was))
          expect(Math.abs(grown - way * mean)).toBeLessThan(100)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('and back again all corners of both rooms are where they were', () => {
    fc.assert(
      fc.property(pairs, deeds, ({ west, east }, deed) => {
        // Its ends have gone along their neighbours, so it is turned back about the same point by its place.
        const there = both(west, east, deed)
        const pivot = deed.is === 'turn' ? pivotBack(face(west), face(there[0]), deed) : 0
        const undone: Deed = deed.is === 'shift' ? { ...deed, by: -deed.by } : { ...deed, about: pivot, by: -deed.by }
        const back = both(...there, undone)
        for (const [at, room] of [west, east].entries()) {
          for (const [place, [x, y]] of cornersOf(room).entries()) {
            const now = cornersOf(back[at] ?? west)[place] ?? [0, 0]
            expect(Math.hypot(now[0] - x, now[1] - y)).toBeLessThan(0.2)
          }
        }
      }),
      { numRuns: 200 },
    )
  })

  test('a doorway through both stays one hole, wherever the ends of its two faces go', () => {
    fc.assert(
      fc.property(pairs, deeds, ({ west, east }, deed) => {
        const [mine, theirs] = both(west, east, deed)
        // A hole 2 m from the left end on one side; on the other wherever a line across the wall comes out.
        const opposite = (a: Side, b: Side, at: number) => {
          const [here, there] = [face(a), face(b)]
          const [ux, uy] = [(here.to[0] - here.from[0]) / here.length, (here.to[1] - here.from[1]) / here.length]
          const [x, y] = [here.from[0] + ux * at, here.from[1] + uy * at]
          const [vx, vy] = [(there.to[0] - there.from[0]) / there.length, (there.to[1] - there.from[1]) / there.length]
          return (x - there.from[0]) * vx + (y - there.from[1]) * vy
        }
        const [was, now] = [opposite(west, east, 2000), opposite(mine, theirs, 2000)]
        const by = followed(
          [
            { wall: face(west), at: 2000 },
            { wall: face(east), at: was },
          ],
          [
            { wall: face(mine), at: 2000 },
            { wall: face(theirs), at: was },
          ],
        )
        expect(Math.abs(was + by - now)).toBeLessThan(0.05)
      }),
      { numRuns: 200 },
    )
  })

  test('turned, the other face needs its place; moved, it does not', () => {
    const [own, other] = fc.sample(pairs, 1).map(({ west, east }) => [west, east] as const)[0] ?? []
    if (own === undefined || other === undefined) throw new Error('one was asked for')
    const loose = { ...other, placed: false }
    expect(otherDeed(own, loose, { is: 'shift', by: 40 })).toEqual({ ok: true, deed: { is: 'shift', by: -40 } })
    expect(otherDeed(own, loose, { is: 'turn', about: 'left', by: 1 })).toMatchObject({ ok: false })
  })

  test('an outline that would cross itself is refused with the two walls', () => {
    // A room with a bay that reaches back over its own way: the bay's end wall moved far meets the wall behind it.
    const points: Point[] = [
      [0, 0],
      [6000, 0],
      [6000, 4000],
      [4000, 4000],
      [4000, 2000],
      [2000, 2000],
      [2000, 4000],
      [0, 4000],
    ]
    // Wall 5 runs along the notch; into the room by 2 m it would lie on the first wall, by more beyond it.
    expect(bendSide(side(points, 4), { is: 'shift', by: -1900 })).toMatchObject({ ok: true })
    expect(bendSide(side(points, 4), { is: 'shift', by: -2100 })).toMatchObject({
      ok: false,
      problem: expect.stringContaining('would cross'),
    })
  })
})

/** Where the point that a wall was turned about lies on it now, from its left end. */
function pivotBack(was: ReturnType<typeof face>, now: ReturnType<typeof face>, deed: Deed & { is: 'turn' }): number {
  const share = { left: 0, middle: 0.5, right: 1 }[deed.about as 'left'] // the deeds made here name it
  const at = (axis: 0 | 1) => was.from[axis] + (was.to[axis] - was.from[axis]) * share - now.from[axis]
  return (at(0) * (now.to[0] - now.from[0]) + at(1) * (now.to[1] - now.from[1])) / now.length
}

describe('one face alone', () => {
  test('makes the wall thinner outwards and thicker into the room, by as much', () => {
    expect(sideAlone(4000, 300, 300, { is: 'shift', by: 120 })).toEqual({ is: 'shared', thickness: 180 })
    expect(sideAlone(4000, 300, null, { is: 'shift', by: -120 })).toEqual({ is: 'shared', thickness: 420 })
    // Nobody measured it: it stays so.
    expect(sideAlone(4000, null, 300, { is: 'shift', by: 120 })).toEqual({ is: 'shared', thickness: null })
    expect(sideAlone(4000, null, null, { is: 'shift', by: 5000 })).toEqual({ is: 'shared', thickness: null })
  })
  test('never comes through the other face; too far off, or askew, it is no longer one wall', () => {
    expect(sideAlone(4000, 300, 300, { is: 'shift', by: 290 })).toEqual({ is: 'through', left: 10 })
    expect(sideAlone(4000, null, 300, { is: 'shift', by: 400 })).toEqual({ is: 'through', left: -100 })
    expect(sideAlone(4000, 300, 300, { is: 'shift', by: -600 })).toEqual({ is: 'parted', why: 'far' })
    expect(sideAlone(4000, 300, 300, { is: 'turn', about: 'left', by: 2 })).toEqual({ is: 'parted', why: 'askew' })
  })
  test('turned by a hair it is as thick as in its middle', () => {
    // 2000 mm from the left end, 0.2° clockwise: 2000 sin 0.2° = 6.98 into the room. By hand.
    expect(sideAlone(4000, 300, 300, { is: 'turn', about: 'left', by: 0.2 })).toEqual({ is: 'shared', thickness: 307 })
    expect(sideAlone(4000, 300, 300, { is: 'turn', about: 'middle', by: 0.2 })).toEqual({
      is: 'shared',
      thickness: 300,
    })
  })
})
