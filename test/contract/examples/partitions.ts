/** Partitions of a show: added, moved with what hangs on them, removed. */
import type { partitionsArea } from '../../../src/contract/areas/partitions.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

const at = (known: Known) => ({ exhibition: known.show, room: known.room })
const faces = { a: anyId, b: anyId }
const midRoom = (known: Known) =>
  ['partition.add', { ...at(known), name: 'screen', from: [3000, 2600], length: 2400, angle: 0 }] as const

function idOf(made: unknown): string {
  return (made as { readonly id: string }).id // partition.add gave it
}

export const partitionsExamples: ExamplesOf<keyof typeof partitionsArea> = {
  'partition.list': {
    answered: [
      {
        about: 'a partition with its two faces, by ends and by length and angle',
        first: known => [midRoom(known)],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          partitions: [
            {
              id: anyId,
              room: known.room,
              exhibition: known.show,
              name: 'screen',
              faces,
              ends: [
                [3000, 2600],
                [5400, 2600],
              ],
              length: 2400,
              angle: 0,
              height: 3450,
              thickness: 100,
              wallType: 'other',
              openings: [],
              works: 0,
            },
          ],
        }),
      },
      {
        about: 'never the partitions of another show',
        first: known => [midRoom(known)],
        input: known => ({ exhibition: known.other }),
        output: () => ({ partitions: [] }),
      },
    ],
    refused: [
      {
        about: 'an exhibition that is not there',
        input: () => ({ exhibition: 'zzzzzz' }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'partition.add': {
    answered: [
      {
        about: 'the new partition by two ends',
        input: known => ({ ...at(known), from: [3000, 1000], to: [3000, 3500], height: 2600, thickness: 120 }),
        output: () => ({ id: anyId, faces }),
      },
      {
        about: 'the new partition by length and angle',
        input: known => ({ ...at(known), name: 'screen', from: [3000, 1000], length: 2500, angle: 90 }),
        output: () => ({ id: anyId, faces }),
      },
    ],
    refused: [
      {
        about: 'one end alone',
        input: known => ({ ...at(known), from: [3000, 1000] }),
        code: 'end-missing',
        field: 'to',
      },
      {
        about: 'its other end said twice',
        input: known => ({ ...at(known), from: [3000, 1000], to: [3000, 3500], length: 2500 }),
        code: 'end-twice',
        field: 'length',
      },
      {
        about: 'two ends in one place',
        input: known => ({ ...at(known), from: [3000, 1000], to: [3000, 1000] }),
        code: 'no-length',
        field: 'to',
      },
      {
        about: 'a show that is closed',
        input: known => ({ ...at(known), exhibition: known.closed, from: [0, 0], length: 2500 }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
      {
        about: 'a room that is not there',
        input: known => ({ ...at(known), room: 'zzzzzz', from: [0, 0], length: 2500 }),
        code: 'not-found',
        field: 'room',
      },
    ],
  },
  'partition.update': {
    answered: [
      {
        about: 'that it is moved as a whole',
        first: known => [midRoom(known)],
        input: (_, [made]) => ({
          id: idOf(made),
          changes: {
            ends: {
              was: [
                [3000, 2600],
                [5400, 2600],
              ],
              to: [
                [3500, 2000],
                [5900, 2000],
              ],
            },
            thickness: { was: 100, to: 150 },
          },
        }),
        output: () => ({ saved: ['thickness', 'ends'], clashes: [], noLongerFits: [] }),
      },
      {
        about: 'that somebody else has moved it meanwhile',
        first: known => [midRoom(known)],
        input: (_, [made]) => ({
          id: idOf(made),
          changes: {
            ends: {
              was: [
                [0, 0],
                [2400, 0],
              ],
              to: [
                [3500, 2000],
                [5900, 2000],
              ],
            },
          },
        }),
        output: () => ({
          saved: [],
          clashes: [
            {
              code: 'clash',
              id: anyId,
              field: 'ends',
              was: [
                [0, 0],
                [2400, 0],
              ],
              yours: [
                [3500, 2000],
                [5900, 2000],
              ],
              theirs: [
                [3000, 2600],
                [5400, 2600],
              ],
            },
          ],
          noLongerFits: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a wall of the building',
        input: known => ({ id: known.north, changes: {} }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'a room that is not there',
        first: known => [midRoom(known)],
        input: (known, [made]) => ({ id: idOf(made), changes: { room: { was: known.room, to: 'zzzzzz' } } }),
        code: 'not-found',
        field: 'changes.room.to',
      },
    ],
  },
  'partition.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [midRoom(known)],
        input: (_, [made]) => ({ id: idOf(made) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a wall of the building', input: known => ({ id: known.north }), code: 'not-found', field: 'id' },
    ],
  },
}
