/**
 * Three rooms with fourteen walls. Walls run clockwise as seen from above, so that each is read from left to right as
 * seen from inside. Lengths and heights are millimetres, angles are at a wall's right end.
 */
import type { Input } from '../../../src/contract/contract.ts'

type Opening = Omit<Input<'opening.add'>, 'wall'>
type KeepClear = Omit<Input<'keepClear.add'>, 'wall'>

type Places = readonly number[]
type Heights = readonly (readonly [x: number, height: number])[]

interface Behind {
  readonly seen: string
  /** Found one by one, in place of the comb. */
  readonly studs?: Places
  readonly joints?: Places
  readonly ceiling?: Heights
  readonly rail?: Heights
  readonly railKgPerMetre?: number
  /** Which floor the level line is measured from; the left end where left out. */
  readonly datumBy?: 'high' | 'middle' | 'ramp'
}

export interface DemoWall {
  readonly key: string
  readonly name: string
  readonly length: number
  readonly lengthText?: string
  readonly angle: number
  readonly type: NonNullable<Input<'room.add'>['wallType']>
  readonly studs?: readonly [first: number, spacing: number]
  readonly backing?: readonly [from: number, to: number]
  readonly skirting: number
  /** Floor at x against the floor at the left end. */
  readonly floor?: readonly (readonly [number, number])[]
  /** What is behind, above and on it, and how anybody knows. */
  readonly behind?: Behind
  readonly openings?: readonly Opening[]
  readonly keepClears?: readonly KeepClear[]
}

export interface DemoRoom {
  readonly name: string
  readonly number: string
  readonly height: number
  readonly walls: readonly DemoWall[]
}

function door(x: number, width: number, label: string): Opening {
  return { kind: 'door', x, y: 0, width, height: 2150, label }
}

function passage(x: number, width: number, label: string): Opening {
  return { kind: 'passage', x, y: 0, width, height: 2300, label }
}

function sash(x: number, width: number): Opening {
  return { kind: 'window', x, y: 950, width, height: 1500, label: 'sash window, blind down' }
}

function light(x: number): KeepClear {
  return {
    kind: 'switch',
    x,
    y: 1060,
    width: 85,
    height: 85,
    margin: 60,
    label: 'light switch',
    reason: 'staff use it',
  }
}

function outlet(x: number): KeepClear {
  return { kind: 'outlet', x, y: 280, width: 85, height: 85, margin: 50, label: 'outlet', reason: '' }
}

function exit(x: number, y: number): KeepClear {
  return {
    kind: 'sign',
    x,
    y,
    width: 420,
    height: 160,
    margin: 100,
    label: 'way out',
    reason: 'must be seen from anywhere',
  }
}

/** 4 ft to 12 ft, or to the top of the wall: common practice. */
const ply = [1219, 2900] as const

export const rooms: readonly DemoRoom[] = [
  {
    name: 'River Room',
    number: '1',
    height: 3200,
    walls: [
      {
        key: 'river north',
        name: 'north wall',
        length: 7200,
        lengthText: '7.20 m',
        angle: 90,
        type: 'plaster',
        skirting: 180,
        behind: {
          seen: 'plaster on lath of 1903; found with a detector and a nail in the skirting',
          ceiling: [
            [0, 3200],
            [3600, 3188],
            [7200, 3171],
          ],
        },
        openings: [sash(900, 1100), sash(5200, 1100)],
        keepClears: [
          {
            kind: 'grille',
            x: 3300,
            y: 190,
            width: 600,
            height: 180,
            margin: 200,
            label: 'warm air',
            reason: 'blows upwards',
          },
        ],
      },
      {
        key: 'river east',
        name: 'east wall',
        length: 5400,
        angle: 90,
        type: 'drywall',
        studs: [285, 406],
        skirting: 140,
        behind: {
          seen: 'detector along 1.5 m, each edge marked twice',
          studs: [285, 688, 1097, 1503, 1911, 2316, 2724, 3128, 3533, 3940, 5120],
          joints: [1503, 2724],
        },
        openings: [door(4100, 1000, 'to the Long Gallery')],
        keepClears: [light(3930), exit(4390, 2260), outlet(150)],
      },
      {
        key: 'river south',
        name: 'south wall',
        length: 7200,
        angle: 90,
        type: 'drywall on ply',
        studs: [310, 610],
        backing: ply,
        skirting: 140,
        keepClears: [
          {
            kind: 'extinguisher',
            x: 6860,
            y: 900,
            width: 170,
            height: 520,
            margin: 150,
            label: 'extinguisher',
            reason: 'fire plan',
            depth: 180,
            reachable: true,
          },
          outlet(300),
        ],
      },
      {
        key: 'river west',
        name: 'west wall',
        length: 5400,
        angle: 90,
        type: 'drywall',
        studs: [285, 406],
        skirting: 140,
        behind: {
          seen: 'rail put up in the works of the hall; its maker’s sheet lies in the wall file',
          rail: [
            [0, 2712],
            [2700, 2716],
            [5400, 2709],
          ],
          railKgPerMetre: 60,
        },
        openings: [passage(2000, 1400, 'from the hall')],
        keepClears: [exit(2490, 2400)],
      },
    ],
  },
  {
    name: 'Long Gallery',
    number: '2',
    height: 3600,
    walls: [
      {
        key: 'long north',
        name: 'north wall',
        length: 9200,
        lengthText: '9200',
        angle: 90,
        type: 'drywall on ply',
        studs: [205, 610],
        backing: ply,
        skirting: 120,
        behind: {
          seen: 'drawings of the ply from its fitting, and a magnet on the screws',
          joints: [1220, 2440, 3660, 4880, 6100, 7320, 8540],
        },
        keepClears: [
          {
            kind: 'thermostat',
            x: 5381,
            y: 1420,
            width: 120,
            height: 120,
            margin: 150,
            label: 'thermostat',
            reason: 'air must reach it',
          },
          outlet(1310),
          outlet(7580),
        ],
      },
      {
        key: 'long east',
        name: 'east wall',
        length: 4400,
        angle: 135,
        type: 'drywall on ply',
        studs: [300, 610],
        backing: ply,
        skirting: 120,
        openings: [passage(2900, 1100, 'to the Mill Room')],
        keepClears: [exit(3240, 2400)],
      },
      {
        key: 'long corner',
        name: 'corner wall',
        length: 2404,
        lengthText: '2.404 m',
        angle: 135,
        type: 'drywall on ply',
        studs: [190, 406],
        backing: [1219, 3300],
        skirting: 120,
      },
      {
        key: 'long south',
        name: 'south wall',
        length: 7500,
        angle: 90,
        type: 'drywall on ply',
        studs: [250, 406],
        backing: [1219, 3300],
        skirting: 120,
        keepClears: [
          { kind: 'grille', x: 3500, y: 150, width: 500, height: 160, margin: 150, label: 'return air', reason: '' },
        ],
      },
      {
        key: 'long west',
        name: 'west wall',
        length: 6100,
        angle: 90,
        type: 'drywall',
        studs: [260, 406],
        skirting: 120,
        behind: {
          seen: 'detector along 1.5 m; the boards’ joints seen when the skirting was off',
          joints: [1478, 2696, 3914, 5132],
        },
        openings: [door(400, 1000, 'to the River Room')],
        keepClears: [light(1490), exit(690, 2260)],
      },
    ],
  },
  {
    name: 'Mill Room',
    number: '3',
    height: 2950,
    walls: [
      {
        key: 'mill north',
        name: 'north wall',
        length: 4200,
        angle: 157.4,
        type: 'drywall on ply',
        studs: [240, 406],
        backing: [1219, 2700],
        skirting: 90,
      },
      {
        key: 'mill slant',
        name: 'slant wall',
        length: 2600,
        lengthText: '260 cm',
        angle: 112.6,
        type: 'plywood',
        studs: [160, 406],
        skirting: 90,
        behind: {
          seen: 'the roof comes down here; taped at both ends and at the beam',
          ceiling: [
            [0, 2950],
            [1500, 2950],
            [2600, 2610],
          ],
        },
      },
      {
        key: 'mill east',
        name: 'east wall',
        length: 4200,
        angle: 90,
        type: 'drywall on ply',
        studs: [260, 406],
        backing: [1219, 2700],
        skirting: 90,
        keepClears: [
          {
            kind: 'call point',
            x: 3960,
            y: 1380,
            width: 95,
            height: 95,
            margin: 200,
            label: 'alarm',
            reason: 'fire plan',
            depth: 60,
            reachable: true,
          },
        ],
      },
      {
        key: 'mill south',
        name: 'south wall',
        length: 6600,
        angle: 90,
        type: 'drywall on ply',
        studs: [300, 610],
        backing: [1219, 2700],
        skirting: 90,
        behind: { seen: 'drawings of the ply from its fitting' },
        openings: [{ kind: 'window', x: 5300, y: 1000, width: 900, height: 1200, label: 'mill window, shuttered' }],
        keepClears: [outlet(2300)],
      },
      {
        key: 'mill west',
        name: 'west wall',
        length: 5200,
        angle: 90,
        type: 'brick',
        skirting: 0,
        behind: { seen: 'old fair-faced brick, pipes cut off and marked in chalk', datumBy: 'middle' },
        floor: [
          [0, 0],
          [2600, -9],
          [5200, -22],
        ],
        openings: [passage(3700, 1100, 'from the Long Gallery')],
        keepClears: [exit(4040, 2400), light(3530)],
      },
    ],
  },
]
