/**
 * What stands in the way in a room of 6000 × 4000 with a door of 900 in its north wall, 1000 from the left, hung on the
 * left and turning in. Figures by hand; 915 is the house rule, a walkway of 36 in: common practice, no source.
 */
import { describe, expect, test } from 'vitest'
import type { WallRow } from '../../../src/contract/areas/rooms.ts'
import { type RoomStands, type StandingThing, standFindings } from '../../../src/plan/room-stands.ts'
import { seenFromBehind } from '../../../src/plan/seen-from-behind.ts'

const door: WallRow['openings'][number] = {
  id: 'door',
  kind: 'door',
  x: 1000,
  y: 0,
  width: 900,
  height: 2100,
  label: '',
  swing: 'in left',
  leadsTo: null,
  other: null,
  depth: null,
}
const extinguisher: WallRow['keepClears'][number] = {
  id: 'ext',
  kind: 'extinguisher',
  x: 4000,
  y: 900,
  width: 200,
  height: 500,
  margin: 100,
  label: '',
  reason: '',
  depth: 180,
  reachable: true,
}

function wallOf(name: string, from: [number, number], to: [number, number], more: Partial<WallRow> = {}): WallRow {
  return {
    id: name,
    face: `${name}-a`,
    name,
    length: Math.hypot(to[0] - from[0], to[1] - from[1]),
    lengthText: '',
    height: 3000,
    heightText: '',
    wallType: 'drywall',
    studFirst: null,
    studSpacing: null,
    backingFrom: null,
    backingTo: null,
    skirting: null,
    datum: null,
    datumBy: '',
    studs: [],
    joints: [],
    ceiling: [],
    rail: [],
    railKgPerMetre: null,
    behindSeen: '',
    floor: [],
    from,
    to,
    angle: 90,
    side: 'a',
    exhibition: null,
    thickness: null,
    openings: [],
    keepClears: [],
    ...more,
  }
}
const thing = (more: Partial<StandingThing>): StandingThing => ({
  id: 't',
  kind: 'plinth',
  name: '',
  x: 3000,
  y: 2000,
  turn: 0,
  width: 400,
  depth: 400,
  round: false,
  bottom: 0,
  height: 1000,
  ...more,
})

function room(more: Partial<RoomStands>): RoomStands {
  return {
    name: 'Room 1',
    walls: [
      wallOf('north', [0, 0], [6000, 0], { openings: [door], keepClears: [extinguisher] }),
      wallOf('east', [6000, 0], [6000, 4000]),
      wallOf('south', [6000, 4000], [0, 4000]),
      wallOf('west', [0, 4000], [0, 0]),
    ],
    closed: true,
    partitions: [],
    faces: [],
    things: [],
    ...more,
  }
}
const told = (more: Partial<RoomStands>) =>
  standFindings(room(more), { within: 20, clearBefore: 915 }, mm => `${Math.round(mm)} mm`)
const codes = (more: Partial<RoomStands>) => told(more).map(({ code, subject }) => `${subject.id} ${code}`)

describe('a thing in a room', () => {
  test('in the middle of it says nothing', () => {
    expect(codes({ things: [thing({})] })).toEqual([])
  })

  test('through a wall says by how much and which; a column may stand half in one', () => {
    // Its right side is at 5900 + 200 = 6100.
    expect(told({ things: [thing({ x: 5900 })] })[0]).toMatchObject({
      severity: 'stop',
      code: 'outside-room',
      text: 'Room 1: the plinth stands 100 mm beyond east.',
    })
    expect(codes({ things: [thing({ x: 5900, kind: 'column' })] })).toEqual([])
    // What the tape may be off is no finding.
    expect(codes({ things: [thing({ x: 5815 })] })).toEqual([])
    expect(codes({ things: [thing({ x: 5900 })], closed: false })).toEqual([])
  })

  test('in another is told once, unless one stands upon the other', () => {
    const two = (bottom: number) => [thing({ id: 'a' }), thing({ id: 'b', kind: 'case', x: 3350, bottom })]
    expect(told({ things: two(0) })).toMatchObject([
      { code: 'stand-in-one-another', subject: { id: 'b' }, text: 'Room 1: the case stands 50 mm in the plinth.' },
    ])
    expect(codes({ things: two(1000) })).toEqual([])
  })
})

describe('before a door', () => {
  test('a bench in the swing of its leaf stops; one beyond the swing in the free strip is to settle', () => {
    // The leaf sweeps a quarter of 900 about (1000, 0); (1100, 700) is 707 from the hinge.
    expect(codes({ things: [thing({ x: 1200, y: 900, name: 'bench 1', kind: 'bench' })] })).toEqual(['t in-swing'])
    // Its nearest corner, (1750, 650), is hypot(750, 650) = 992 from the hinge: beside the swing, but before the door.
    const [found] = told({ things: [thing({ x: 1950, y: 850 })] })
    expect(found).toMatchObject({ severity: 'settle', code: 'before-opening', figures: { by: 150, clear: 915 } })
  })

  test('nothing is in a swing that turns the other way, and a ramp may lead up to the door', () => {
    const away = room({}).walls.map(wall => ({
      ...wall,
      openings: wall.openings.map(one => ({ ...one, swing: 'out left' as const })),
    }))
    expect(codes({ walls: away, things: [thing({ x: 1200, y: 900 })] })).toEqual(['t before-opening'])
    expect(codes({ walls: away, things: [thing({ x: 1200, y: 900, kind: 'ramp', height: 100 })] })).toEqual([])
  })
})

describe('before what must stay reachable', () => {
  test('nothing stands, as deep as the thing itself and the free strip', () => {
    // Free to 180 + 915 = 1095 from the wall; the backs of these are at 1096 and 1090.
    expect(codes({ things: [thing({ x: 4100, y: 1296 })] })).toEqual([])
    expect(codes({ things: [thing({ x: 4100, y: 1290 })] })).toEqual(['t before-reachable'])
    expect(codes({ things: [thing({ x: 4100, y: 350 })] })).toEqual(['t in-fixture'])
  })
})

describe('partitions', () => {
  const screen = {
    id: 'p',
    name: 'screen',
    ends: [
      [3000, 1000],
      [3000, 3000],
    ],
    thickness: 100,
    height: 2500,
  } as const

  test('through a wall, out of the room, and through one another', () => {
    const through = {
      ...screen,
      ends: [
        [3000, 1000],
        [3000, 4300],
      ],
    } as const
    expect(told({ partitions: [through] })).toMatchObject([
      { code: 'partition-crosses-wall', text: 'Room 1: screen crosses south and ends 300 mm beyond it.' },
    ])
    const away = {
      ...screen,
      ends: [
        [7000, 1000],
        [7000, 3000],
      ],
    } as const
    expect(codes({ partitions: [away] })).toEqual(['p partition-outside'])
    const across = {
      ...screen,
      id: 'q',
      name: 'other',
      ends: [
        [2000, 2000],
        [4000, 2000],
      ],
    } as const
    expect(codes({ partitions: [screen, across] })).toEqual(['q partitions-cross'])
    // Joined by their middle lines, end to end or end to face.
    const joined = {
      ...across,
      ends: [
        [3000, 2000],
        [4000, 2000],
      ],
    } as const
    expect(codes({ partitions: [screen, joined] })).toEqual([])
    // Built on to a wall.
    expect(
      codes({
        partitions: [
          {
            ...screen,
            ends: [
              [3000, 0],
              [3000, 2000],
            ],
          },
        ],
      }),
    ).toEqual([])
  })

  test('are in the way of doors and things, and have doors of their own on both faces', () => {
    expect(codes({ partitions: [screen], things: [thing({ x: 3200 })] })).toEqual(['t stands-in-partition'])
    const before = {
      ...screen,
      ends: [
        [500, 600],
        [2500, 600],
      ],
    } as const
    expect(codes({ partitions: [before] })).toEqual(['p in-swing'])

    const a = wallOf('screen, side a', [3000, 1000], [3000, 3000], {
      id: 'p',
      exhibition: 'show',
      openings: [{ ...door, id: 'hole', x: 500 }],
    })
    const b: WallRow = { ...seenFromBehind(a), side: 'b', name: 'screen, side b', from: a.to, to: a.from }
    // Face a looks to the left of the page: its leaf turns into x < 2950. The other side keeps its strip free.
    const on = (x: number) => told({ partitions: [screen], faces: [a, b], things: [thing({ x, y: 1700 })] })
    expect(on(2500).map(({ code }) => code)).toEqual(['in-swing'])
    expect(on(3500).map(({ code }) => code)).toEqual(['before-opening'])
  })

  test('a door wider than its partition stops, one beyond its end or above it is to settle', () => {
    const face = (opening: Partial<typeof door>) =>
      wallOf('screen, side a', [3000, 1000], [3000, 3000], {
        id: 'p',
        height: 2500,
        openings: [{ ...door, ...opening }],
      })
    const of = (opening: Partial<typeof door>) =>
      told({ partitions: [screen], faces: [face(opening)] }).map(({ severity, code }) => [severity, code])
    expect(of({ x: 0, width: 2100, swing: '' })).toEqual([['stop', 'opening-wider']])
    expect(of({ x: 1500, swing: '' })).toEqual([['settle', 'opening-off-wall']])
    expect(of({ height: 2600, swing: '' })).toEqual([['settle', 'opening-too-high']])
  })
})
