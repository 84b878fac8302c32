import { describe, expect, test } from 'vitest'
import type { PlanPartitionRow, PlanRoomRow, PlanWallRow } from '../../../src/contract/areas/plan.ts'
import { routePast } from '../../../src/plan/route.ts'
import { routeRooms } from '../../../src/plan/route-of-plan.ts'

const ends = [
  [
    [0, 0],
    [8000, 0],
  ],
  [
    [8000, 0],
    [8000, 6000],
  ],
  [
    [8000, 6000],
    [0, 6000],
  ],
  [
    [0, 6000],
    [0, 0],
  ],
] as const

const walls = ends.map(
  ([from, to], at): PlanWallRow => ({
    id: `w${at}`,
    face: `f${at}`,
    name: `wall ${at + 1}`,
    length: Math.hypot(to[0] - from[0], to[1] - from[1]),
    height: 3500,
    angle: 90,
    wallType: 'drywall',
    thickness: null,
    backs: null,
    from: [...from],
    to: [...to],
    openings: [],
    fixtures: [],
    works: [],
  }),
)

/** Across the room from wall to wall but for a door in its middle. */
const partition: PlanPartitionRow = {
  id: 'p',
  name: 'partition 1',
  from: [4000, 0],
  to: [4000, 6000],
  length: 6000,
  angle: 90,
  height: 2800,
  thickness: 200,
  wallType: 'drywall',
  openings: [
    {
      id: 'd',
      kind: 'passage',
      x: 2500,
      y: 0,
      width: 1000,
      height: 2200,
      label: '',
      swing: '',
      depth: null,
      leadsTo: null,
      other: null,
    },
  ],
  sides: [
    { side: 'a', face: 'pa', fixtures: [], works: [] },
    { side: 'b', face: 'pb', fixtures: [], works: [] },
  ],
}

const room: PlanRoomRow = {
  id: 'r',
  name: 'Room',
  number: '',
  height: 3500,
  at: [0, 0],
  turn: 0,
  storey: '',
  floorLevel: null,
  closed: true,
  closes: true,
  gap: 0,
  note: '',
  area: 48,
  walls,
  partitions: [],
  things: [],
  tracks: [],
}

describe('a plan as a visitor meets it', () => {
  test('a partition is gone through at its passage', () => {
    const route = routePast(['f3', 'f1'], routeRooms([{ ...room, partitions: [partition] }]))
    const [leg] = route.legs
    expect(leg?.lost).toBe(false)
    for (const [at, [x1, y1]] of (leg?.points ?? []).entries()) {
      const next = leg?.points[at + 1]
      if (next === undefined || Math.sign(x1 - 4000) === Math.sign(next[0] - 4000)) continue
      const y = y1 + ((4000 - x1) / (next[0] - x1)) * (next[1] - y1)
      expect(y).toBeGreaterThanOrEqual(2500)
      expect(y).toBeLessThanOrEqual(3500)
    }
    const shut = { ...partition, openings: [] }
    expect(routePast(['f3', 'f1'], routeRooms([{ ...room, partitions: [shut] }])).legs[0]?.lost).toBe(true)
  })

  test('who looks at face a of it stands to the right of the way from its left end, at b on the other side', () => {
    const route = routePast(['pa', 'pb'], routeRooms([{ ...room, partitions: [partition] }]))
    const [a, b] = route.stops
    // Down the page is the way from left to right; to its right is the smaller x.
    expect(a?.at[0]).toBeLessThan(3900)
    expect(b?.at[0]).toBeGreaterThan(4100)
    expect(a?.at[1]).toBe(3000)
  })

  test('a column is gone round; a ramp, and a lamp that hangs high, are not', () => {
    const thing = (over: Partial<PlanRoomRow['things'][number]>): PlanRoomRow['things'][number] => ({
      id: 't',
      exhibition: null,
      kind: 'column',
      name: '',
      at: [4000, 3000],
      turn: 30,
      width: 600,
      depth: 600,
      height: null,
      bottom: 0,
      round: true,
      note: '',
      ...over,
    })
    const past = (over: Partial<PlanRoomRow['things'][number]>) =>
      routePast(['f3', 'f1'], routeRooms([{ ...room, things: [thing(over)] }])).legs[0]
    expect(past({})?.points.length).toBeGreaterThan(2)
    expect(past({})?.lost).toBe(false)
    expect(past({ kind: 'ramp' })?.points.length).toBe(2)
    expect(past({ kind: 'other', bottom: 2600 })?.points.length).toBe(2)
  })

  test('rooms that have no place are left out where others have one', () => {
    expect(routeRooms([{ ...room, at: null, id: 'x' }, room]).map(one => one.id)).toEqual(['r'])
    expect(routeRooms([{ ...room, at: null, id: 'x' }]).map(one => one.id)).toEqual(['x'])
  })
})
