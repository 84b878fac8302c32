/**
 * Kinds of fixing in the house's drawers, with what drills and drives them, and how many lie there. Ratings are invented
 * packets' figures, never a maker's; where a packet is lost there is none, and the demo shows what follows from that.
 */
import type { Input } from '../../../src/contract/contract.ts'

type Rating = Omit<Input<'fixing.rate'>, 'id'>
export type DemoFixing = Input<'fixing.add'> & {
  /** Further ratings, one a wall type. */
  readonly ratings?: readonly Rating[]
  /** Counted in the drawer; left out where nobody has counted. */
  readonly inStock?: number
}

const HAMMER = 'light hammer'
const TRIAL = 'trial of the house on its own 18 mm ply'
const notInBrick = {
  wallType: 'brick',
  ratedKg: null,
  source: 'packet in drawer 2, invented: not for masonry',
} as const

export const fixings = {
  hook13: {
    name: 'hook, 13.6 kg (30 lb)',
    kind: 'hook',
    holeOffset: 12,
    ratedKg: 13.6,
    shank: 1.8,
    length: 30,
    head: 4,
    tool: HAMMER,
    source: 'packet in drawer 2, invented',
    note: 'One angled nail.',
    ratings: [notInBrick],
    inStock: 24,
  },
  hook22: {
    name: 'hook, 22.7 kg (50 lb)',
    kind: 'hook',
    holeOffset: 14,
    ratedKg: 22.7,
    shank: 2.2,
    length: 38,
    head: 5,
    tool: HAMMER,
    source: 'packet in drawer 2, invented',
    note: 'One angled nail. The usual hook of the house.',
    ratings: [notInBrick],
    inStock: 30,
  },
  hook45: {
    name: 'hook, 45.4 kg (100 lb)',
    kind: 'hook',
    holeOffset: 18,
    ratedKg: 45.4,
    shank: 2.4,
    length: 44,
    head: 5,
    tool: HAMMER,
    source: 'packet in drawer 3, invented',
    note: 'Three angled nails.',
    inStock: 6,
  },
  oldHook: {
    name: 'brass hook from the old stock',
    kind: 'hook',
    holeOffset: 13,
    ratedKg: null,
    shank: 2,
    length: 32,
    source: '',
    note: 'The packet is lost. Weigh nothing on it before somebody has found out what it holds.',
  },
  screw50: {
    name: 'screw 5 × 60 in ply',
    kind: 'screw',
    holeOffset: -2.5,
    ratedKg: 40,
    shank: 5,
    length: 60,
    head: 9.5,
    wallType: 'drywall on ply',
    bit: '3 mm wood',
    tool: 'driver, cross 2',
    source: TRIAL,
    note: 'Head stands out 9 mm.',
    inStock: 60,
  },
  screw40: {
    name: 'pan-head screw 4 × 40',
    kind: 'screw',
    holeOffset: -2,
    ratedKg: 24,
    shank: 4,
    length: 40,
    head: 8,
    wallType: 'drywall on ply',
    bit: '2.5 mm wood',
    tool: 'driver, cross 2',
    source: TRIAL,
    note: 'For stretcher bars.',
    inStock: 40,
  },
  nail31: {
    name: 'nail 3.1 × 50',
    kind: 'nail',
    holeOffset: -1.55,
    ratedKg: 16,
    shank: 3.1,
    length: 50,
    head: 7,
    bit: '2 mm wood',
    tool: HAMMER,
    source: TRIAL,
    note: 'For stretcher bars of light canvases.',
  },
  cleat: {
    name: 'cleat, 30 mm aluminium',
    kind: 'cleat',
    holeOffset: -11,
    ratedKg: 120,
    length: 40,
    bit: '3.5 mm wood',
    tool: 'driver, cross 2',
    source: 'packet in the long drawer, invented',
    note: 'Rated for the pair, every screw in.',
    inStock: 4,
  },
  hangerPlate: {
    name: 'security hanger plate',
    kind: 'plate',
    holeOffset: -6,
    ratedKg: 48,
    shank: 4.5,
    length: 55,
    wallType: 'drywall on ply',
    bit: '3 mm wood; 6 mm masonry',
    tool: 'driver, cross 2',
    source: 'packet in the locked drawer, invented',
    note: 'Two to a work; the lock below comes from the same packet.',
    ratings: [{ wallType: 'plaster', ratedKg: 40, source: 'packet in the locked drawer, invented: with its plug' }],
    inStock: 6,
  },
  lock: {
    name: 'lock screw, quarter turn',
    kind: 'lock',
    holeOffset: 0,
    ratedKg: null,
    shank: 5,
    length: 50,
    head: 14,
    bit: '3 mm wood; 6 mm masonry',
    tool: 'hex key, red tag',
    source: 'packet in the locked drawer, invented',
    note: 'Keeps, carries nothing.',
    inStock: 2,
  },
  railHook: {
    name: 'rail hook, brass',
    kind: 'rail-hook',
    holeOffset: 0,
    ratedKg: 20,
    source: 'packet in drawer 5, invented',
    note: 'For the moulded rail of the River Room only.',
    inStock: 10,
  },
  steelPoint: {
    name: 'steel point 12 mm',
    kind: 'steel-point',
    holeOffset: 0,
    ratedKg: 2,
    shank: 2.5,
    length: 25,
    head: 12,
    bit: '2 mm wood',
    tool: 'light hammer with a nylon face',
    source: 'packet in drawer 6, invented',
    note: 'For the encased magnets.',
    inStock: 24,
  },
  bracket: {
    name: 'shelf bracket 240',
    kind: 'bracket',
    holeOffset: 0,
    ratedKg: null,
    shank: 6,
    length: 60,
    bit: '8 mm masonry',
    tool: 'driver, star 25',
    source: 'packet in drawer 7, invented',
    note: 'Each bracket, upper screw in a plug.',
    ratings: [
      { wallType: 'brick', ratedKg: 45, source: 'packet in drawer 7, invented: full brick, plug 8 × 50' },
      { wallType: 'drywall', ratedKg: null, source: 'packet in drawer 7, invented: not in board alone' },
    ],
    inStock: 4,
  },
  bracketScrew: {
    name: 'screw 6 × 60 for masonry',
    kind: 'screw',
    holeOffset: -3,
    ratedKg: 45,
    shank: 6,
    length: 60,
    head: 11,
    wallType: 'brick',
    bit: '8 mm masonry',
    tool: 'driver, star 25',
    source: 'packet in drawer 7, invented',
    note: '',
  },
} as const satisfies Record<string, DemoFixing>

export type FixingKey = keyof typeof fixings

/** Lifts and hoists; one has lost its plate, and so nothing counts on it. */
export const equipment: readonly Input<'equipment.add'>[] = [
  {
    name: 'lift table on wheels',
    carriesKg: 250,
    reaches: 1500,
    count: 1,
    people: 1,
    note: 'Plate read in spring; the brake sticks.',
  },
  {
    name: 'pair of hoists on a beam',
    carriesKg: 160,
    reaches: 3200,
    count: 1,
    people: 2,
    note: 'Slings in the box beside.',
  },
  {
    name: 'old stacker from the mill',
    carriesKg: null,
    reaches: 1800,
    count: 1,
    people: 2,
    note: 'Its plate is worn off.',
  },
]

export const crew = { teams: 2, hours: 7, spare: 0.1 } as const

/** What the house has timed itself. */
export const timed: Omit<Input<'crew.setMinutes'>, 'was'> = {
  key: 'cleat',
  to: 35,
  source: 'timed over four hangs of cloth',
}
