import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import {
  groundOf,
  type RouteFace,
  type RouteOpening,
  type RouteRoom,
  routePast,
  stopBefore,
} from '../../../src/plan/route.ts'
import { proposeOrder } from '../../../src/plan/visit.ts'

const door = (id: string, x: number, to: Partial<RouteOpening> = {}): RouteOpening => ({
  id,
  kind: 'door',
  x,
  width: 1000,
  leadsTo: null,
  other: null,
  ...to,
})

function box(
  id: string,
  [left, top]: Point,
  wide: number,
  high: number,
  doors: Readonly<Record<string, RouteOpening>>,
): RouteRoom {
  const corners: readonly Point[] = [
    [left, top],
    [left + wide, top],
    [left + wide, top + high],
    [left, top + high],
  ]
  const walls = corners.map((from, at): RouteFace => {
    const to = corners[(at + 1) % 4] ?? from
    const name = `${id}-${['n', 'e', 's', 'w'][at]}`
    const opening = doors[name]
    return {
      face: name,
      from,
      to,
      length: Math.hypot(to[0] - from[0], to[1] - from[1]),
      openings: opening ? [opening] : [],
    }
  })
  return { id, name: id, walls, free: [], footprints: [] }
}

/** Two rooms side by side, 200 mm of wall between them, a door in it; in from the south into the first. */
const rooms = [
  box('a', [0, 0], 6000, 4000, { 'a-s': door('in', 2500), 'a-e': door('a-b', 1500, { leadsTo: 'b', other: 'b-a' }) }),
  box('b', [6200, 0], 5000, 4000, { 'b-w': door('b-a', 1500, { leadsTo: 'a', other: 'a-b' }) }),
] as const

describe('the visitor’s route', () => {
  test('stops before the middle of each wall, and goes through the door into the next room', () => {
    const route = routePast(['a-w', 'a-n', 'b-n'], rooms)
    expect(route.stops.map(stop => [stop.face, stop.at])).toEqual([
      ['a-w', [1500, 2000]],
      ['a-n', [3000, 1500]],
      ['b-n', [8700, 1500]],
    ])
    expect(route.legs.every(leg => !leg.lost)).toBe(true)
    // Through the door's middle on both faces of the wall: 1500 + 500 from the corner it is measured from.
    expect(route.legs[1]?.points).toEqual([
      [3000, 1500],
      [6000, 2000],
      [6200, 2000],
      [8700, 1500],
    ])
    const by = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])
    expect(route.length).toBeCloseTo(
      by([1500, 2000], [3000, 1500]) + by([3000, 1500], [6000, 2000]) + 200 + by([6200, 2000], [8700, 1500]),
      6,
    )
  })

  test('a visitor stands half-way where the room is narrow', () => {
    const narrow = box('c', [0, 0], 6000, 1800, {})
    const north = narrow.walls[0]
    if (north === undefined) throw new Error('it has walls')
    const at = stopBefore(north, groundOf(narrow))
    expect(at[0]).toBe(3000)
    expect(Math.abs(at[1] - 900)).toBeLessThan(10)
  })

  test('where no door leads the way is drawn straight and told as lost', () => {
    const shut = [rooms[0], box('b', [6200, 0], 5000, 4000, {})]
    const route = routePast(['a-n', 'b-n'], shut)
    expect(route.legs[0]?.lost).toBe(true)
    expect(route.legs[0]?.points.length).toBe(2)
  })

  test('a doorway that nobody paired is found where both rooms have one at one place', () => {
    const unsaid = [
      box('a', [0, 0], 6000, 4000, { 'a-e': door('x', 1500) }),
      box('b', [6200, 0], 5000, 4000, { 'b-w': door('y', 1500) }),
    ]
    expect(routePast(['a-n', 'b-n'], unsaid).legs[0]?.lost).toBe(false)
  })

  test('goes round what stands on the floor', () => {
    const [a] = rooms
    const block: readonly Point[] = [
      [2500, 500],
      [3500, 500],
      [3500, 3500],
      [2500, 3500],
    ]
    const free = routePast(['a-w', 'a-e'], [a])
    const barred = routePast(['a-w', 'a-e'], [{ ...a, footprints: [block] }])
    expect(barred.legs[0]?.lost).toBe(false)
    expect(barred.length).toBeGreaterThan(free.length)
    expect(barred.legs[0]?.points.length).toBeGreaterThan(2)
  })

  test('a face that is in no room is left out', () => {
    expect(routePast(['nowhere', 'a-n'], rooms).stops.map(stop => stop.face)).toEqual(['a-n'])
  })
})

describe('a proposed order', () => {
  test('to the left hand: clockwise from the door, its own wall last, then through the next doorway', () => {
    expect(proposeOrder(rooms, 'a', 'left')).toEqual(['a-w', 'a-n', 'a-e', 'a-s', 'b-n', 'b-e', 'b-s', 'b-w'])
  })

  test('to the right hand: the other way round', () => {
    expect(proposeOrder(rooms, 'a', 'right')).toEqual(['a-e', 'a-n', 'a-w', 'a-s', 'b-s', 'b-e', 'b-n', 'b-w'])
  })

  test('the way in is the door behind which there is nothing, also where nobody said where doors lead', () => {
    const unsaid = [
      box('a', [0, 0], 6000, 4000, { 'a-e': door('x', 1500), 'a-s': door('in', 2500) }),
      box('b', [6200, 0], 5000, 4000, { 'b-w': door('y', 1500) }),
    ]
    expect(proposeOrder(unsaid, 'a', 'left').slice(0, 5)).toEqual(['a-w', 'a-n', 'a-e', 'a-s', 'b-n'])
  })

  test('every face once, from whichever room', () => {
    for (const start of ['a', 'b', 'nowhere']) {
      const faces = proposeOrder(rooms, start, 'left')
      expect(new Set(faces).size).toBe(8)
      expect(faces.length).toBe(8)
    }
  })
})
