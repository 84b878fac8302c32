/**
 * What stands in the three rooms: the mill's iron column and the tracks are the house's, benches, a plinth, a case and a
 * partition with works on both its faces are the show's. Room-local mm; doors by the wall they are in.
 */
import type { Input } from '../../../src/contract/contract.ts'
import type { FixingKey } from './fixings.ts'

type Thing = Omit<Input<'standing.add'>, 'room' | 'exhibition'>
type Track = Omit<Input<'track.add'>, 'room'>

export interface DemoThing extends Thing {
  readonly room: string
  readonly whose: 'house' | 'show'
}

export const things: readonly DemoThing[] = [
  {
    room: 'Mill Room',
    whose: 'house',
    kind: 'column',
    name: 'iron column',
    at: [5300, 3400],
    width: 220,
    depth: 220,
    round: true,
    note: 'carries the hoist beam; nothing is fixed to it',
  },
  {
    room: 'Long Gallery',
    whose: 'show',
    kind: 'bench',
    name: 'bench 1',
    at: [2400, 3050],
    width: 1600,
    depth: 450,
    height: 440,
  },
  {
    room: 'Long Gallery',
    whose: 'show',
    kind: 'bench',
    name: 'bench 2',
    at: [4700, 3050],
    width: 1600,
    depth: 450,
    height: 440,
  },
  {
    room: 'Long Gallery',
    whose: 'show',
    kind: 'case',
    name: 'sample case',
    at: [6900, 3300],
    turn: 90,
    width: 1200,
    depth: 600,
    height: 950,
    note: 'pattern books, opened anew each month',
  },
  {
    room: 'River Room',
    whose: 'show',
    kind: 'plinth',
    name: 'plinth',
    at: [4900, 2300],
    width: 500,
    depth: 500,
    height: 1000,
  },
]

export const tracks: readonly (Track & { readonly room: string })[] = [
  {
    room: 'Long Gallery',
    name: 'north track',
    ends: [
      [600, 1250],
      [8600, 1250],
    ],
    height: 3480,
  },
  {
    room: 'River Room',
    name: 'north track',
    ends: [
      [900, 1100],
      [6300, 1100],
    ],
    height: 3080,
  },
]

export const zones: readonly {
  readonly kind: 'climate' | 'light'
  readonly name: string
  readonly note: string
  readonly rooms: readonly string[]
}[] = [
  {
    kind: 'climate',
    name: 'paper and cloth',
    note: '50 % ± 5 relative humidity, 20 °C ± 2',
    rooms: ['River Room', 'Long Gallery'],
  },
  { kind: 'light', name: 'no daylight', note: 'blinds stay down', rooms: ['Long Gallery', 'Mill Room'] },
]

export const partition = {
  room: 'Mill Room',
  name: 'loom screen',
  from: [1900, 2750],
  length: 2400,
  angle: 0,
  height: 2400,
  thickness: 120,
  wallType: 'drywall on ply',
} as const

/** Centres along each face from its own left end. */
export const onPartition: readonly {
  readonly side: 'a' | 'b'
  readonly work: string
  readonly x: number
  readonly fixing: FixingKey
}[] = [
  { side: 'a', work: 'tamble-lines', x: 720, fixing: 'hook22' },
  { side: 'a', work: 'glass-slips', x: 1700, fixing: 'hook22' },
  { side: 'b', work: 'ledger-flood', x: 1200, fixing: 'hook22' },
]

/** Holes that two rooms share, each by its wall, and how the leaf turns as seen in the first. */
export const doorways: readonly { readonly of: readonly [string, string]; readonly swing: 'out left' | '' }[] = [
  { of: ['river east', 'long west'], swing: 'out left' },
  { of: ['long east', 'mill west'], swing: '' },
]
