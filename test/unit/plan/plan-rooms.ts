/** Rectangular rooms as `plan.get` gives them, for what is computed from the building's plan. */
import type { PlanPartitionRow, PlanRoomRow, PlanWallRow } from '../../../src/contract/areas/plan.ts'

type Opening = PlanWallRow['openings'][number]
type Side = 'north' | 'east' | 'south' | 'west'

export function openingAt(id: string, kind: Opening['kind'], x: number, width: number): Opening {
  const nothing = { label: '', swing: '', depth: null, leadsTo: null, other: null }
  return { ...nothing, id, kind, x, y: kind === 'window' ? 900 : 0, width, height: kind === 'window' ? 1200 : 2100 }
}

/** Its walls run clockwise from the north-western corner, which stands at `at`. */
export function roomOf(
  name: string,
  [left, top]: readonly [number, number],
  wide: number,
  deep: number,
  openings: Partial<Record<Side, Opening[]>> = {},
  thickness: number | null = null,
): PlanRoomRow {
  const corners: readonly [number, number][] = [
    [left, top],
    [left + wide, top],
    [left + wide, top + deep],
    [left, top + deep],
  ]
  const walls = (['north', 'east', 'south', 'west'] as const).map(
    (side, index): PlanWallRow => ({
      id: `${name} ${side}`,
      face: `${name} ${side} a`,
      name: side,
      length: index % 2 === 0 ? wide : deep,
      height: 3000,
      angle: 90,
      wallType: 'other',
      thickness,
      backs: null,
      from: corners[index] ?? [0, 0],
      to: corners[(index + 1) % 4] ?? [0, 0],
      openings: openings[side] ?? [],
      fixtures: [],
      works: [],
    }),
  )
  return {
    id: name,
    name,
    number: '',
    height: 3000,
    at: [left, top],
    turn: 0,
    storey: '',
    floorLevel: null,
    closed: true,
    closes: true,
    gap: 0,
    note: '',
    area: (wide * deep) / 1e6,
    walls,
    partitions: [],
    things: [],
    tracks: [],
  }
}

type At = readonly [number, number]

export function partitionOf(
  id: string,
  from: At,
  to: At,
  thickness: number,
  openings: Opening[] = [],
): PlanPartitionRow {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return {
    id,
    name: id,
    from: [...from],
    to: [...to],
    length: Math.hypot(dx, dy),
    angle: (Math.atan2(dy, dx) * 180) / Math.PI,
    height: 2400,
    thickness,
    wallType: 'drywall',
    openings,
    sides: (['a', 'b'] as const).map(side => ({ side, face: `${id} ${side}`, fixtures: [], works: [] })),
  }
}

type Thing = PlanRoomRow['things'][number]

export function thingOf(over: Omit<Partial<Thing>, 'at'> & { readonly at: At }): Thing {
  const usual = { id: 't', exhibition: null, kind: 'other', name: '', turn: 0, width: 500, depth: 500 } as const
  return { ...usual, height: null, bottom: 0, round: false, note: '', ...over, at: [...over.at] }
}
