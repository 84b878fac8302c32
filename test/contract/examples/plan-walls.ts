/** Walls on the plan: shared by two rooms, and moved with their neighbours. */
import type { planWallsArea } from '../../../src/contract/areas/plan-walls.ts'
import type { Output } from '../../../src/contract/contract.ts'
import type { Known } from '../fixture.ts'
import type { ExamplesOf } from './types.ts'

/** A second room east of the first, 300 mm of wall between them. */
const beside = (known: Known) =>
  [
    ['plan.placeRoom', { rooms: [{ id: known.room, changes: { at: { was: null, to: [0, 0] } } }] }],
    [
      'room.add',
      {
        name: 'Room 2',
        height: 3450,
        place: { at: [9440, 0], turn: 0, storey: '' },
        walls: [{ length: 4000 }, { length: 5200 }, { length: 4000 }, { length: 5200 }],
      },
    ],
  ] as const
// What `room.add` answered, second of them.
const west = (earlier: readonly unknown[]) => (earlier[1] as Output<'room.add'>).walls[3] ?? ''

export const planWallsExamples: ExamplesOf<keyof typeof planWallsArea> = {
  'wall.share': {
    answered: [
      {
        about: 'how many doorways go through both',
        first: beside,
        input: (known, earlier) => ({ id: known.east, with: west(earlier), thickness: 300 }),
        output: () => ({ doorways: 0 }),
      },
    ],
    refused: [
      {
        about: 'two walls of one room',
        input: known => ({ id: known.east, with: known.north, thickness: null }),
        code: 'same-room',
        field: 'with',
      },
    ],
  },
  'wall.unshare': {
    answered: [{ about: 'that it is parted', input: known => ({ id: known.east }), output: () => ({ done: true }) }],
    refused: [{ about: 'a wall that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'wall.shift': {
    answered: [
      {
        about: 'that it has moved outwards',
        input: known => ({ id: known.north, by: 200, setAside: true }),
        output: () => ({ done: true }),
      },
      {
        about: 'that this side alone has moved',
        input: known => ({ id: known.north, by: -40, setAside: true, alone: true }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a wall whose neighbours were measured, until that may be set aside',
        input: known => ({ id: known.north, by: 200 }),
        code: 'measured-otherwise',
        field: 'setAside',
      },
      {
        about: 'a move that leaves its neighbours nothing',
        input: known => ({ id: known.north, by: -5200 }),
        code: 'no-room',
        field: 'by',
      },
    ],
  },
  'wall.turn': {
    answered: [
      {
        about: 'that it has turned about its left end',
        input: known => ({ id: known.north, about: 'left', by: 2, setAside: true }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a turn that measured corners and lengths contradict',
        input: known => ({ id: known.north, about: 'middle', by: -2 }),
        code: 'measured-otherwise',
        field: 'setAside',
      },
      {
        about: 'a turn after which its neighbour has no length left',
        input: known => ({ id: known.north, about: 'left', by: 60, setAside: true }),
        code: 'no-room',
        field: 'by',
      },
    ],
  },
}
