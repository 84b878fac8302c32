/** What stands in rooms, ceiling tracks and zones. */
import type { standingArea } from '../../../src/contract/areas/standing.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

const bench = (known: Known) =>
  [
    'standing.add',
    { room: known.room, exhibition: known.show, kind: 'bench', at: [3000, 2600], width: 1600, depth: 450, height: 440 },
  ] as const
const track = (known: Known) =>
  [
    'track.add',
    {
      room: known.room,
      name: 'T1',
      ends: [
        [1000, 1200],
        [8000, 1200],
      ],
      height: 3300,
    },
  ] as const
const zone = (known: Known) =>
  ['zone.add', { kind: 'climate', name: 'paper', note: '50 % ± 5', rooms: [known.room] }] as const

function idOf(made: unknown): string {
  return (made as { readonly id: string }).id // an add gave it
}
const gone = { input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' } as const
const notThere = { input: () => ({ id: 'zzzzzz', changes: {} }), code: 'not-found', field: 'id' } as const

export const standingExamples: ExamplesOf<keyof typeof standingArea> = {
  'standing.list': {
    answered: [
      {
        about: 'what stands in the rooms for a show',
        first: known => [bench(known)],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          things: [
            {
              id: anyId,
              room: known.room,
              exhibition: known.show,
              kind: 'bench',
              name: '',
              at: [3000, 2600],
              turn: 0,
              width: 1600,
              depth: 450,
              height: 440,
              bottom: 0,
              round: false,
              note: '',
            },
          ],
          tracks: [],
          zones: [],
        }),
      },
      {
        about: 'ceiling tracks',
        first: known => [track(known)],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          things: [],
          tracks: [
            {
              id: anyId,
              room: known.room,
              name: 'T1',
              ends: [
                [1000, 1200],
                [8000, 1200],
              ],
              length: 7000,
              height: 3300,
              note: '',
            },
          ],
          zones: [],
        }),
      },
      {
        about: 'zones with their rooms',
        first: known => [zone(known)],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          things: [],
          tracks: [],
          zones: [{ id: anyId, kind: 'climate', name: 'paper', note: '50 % ± 5', rooms: [known.room] }],
        }),
      },
      {
        about: 'never the furniture of another show',
        first: known => [bench(known)],
        input: known => ({ exhibition: known.other }),
        output: () => ({ things: [], tracks: [], zones: [] }),
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
  'standing.add': {
    answered: [
      {
        about: 'the new column of the building, by its middle',
        input: known => ({
          room: known.room,
          exhibition: null,
          kind: 'column',
          at: [4000, 2600],
          width: 400,
          depth: 400,
          round: true,
        }),
        output: () => ({ id: anyId }),
      },
      {
        about: 'the new plinth of a show, measured from a wall',
        input: known => ({
          room: known.room,
          exhibition: known.show,
          kind: 'plinth',
          byWall: { wall: known.north, along: 2000, off: 1200 },
          width: 500,
          depth: 500,
          height: 1000,
        }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a thing without a place',
        input: known => ({ room: known.room, exhibition: null, kind: 'column', width: 400, depth: 400 }),
        code: 'place-missing',
        field: 'at',
      },
      {
        about: 'a place said twice',
        input: known => ({
          room: known.room,
          exhibition: null,
          kind: 'column',
          at: [0, 0],
          byWall: { wall: known.north, along: 0, off: 0 },
          width: 400,
          depth: 400,
        }),
        code: 'place-twice',
        field: 'byWall',
      },
      {
        about: 'measured from a wall of no room',
        input: known => ({
          room: known.room,
          exhibition: null,
          kind: 'column',
          byWall: { wall: 'zzzzzz', along: 0, off: 0 },
          width: 400,
          depth: 400,
        }),
        code: 'not-found',
        field: 'byWall.wall',
      },
      {
        about: 'a show that is closed',
        input: known => ({ room: known.room, exhibition: known.closed, kind: 'bench', at: [0, 0], width: 9, depth: 9 }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
    ],
  },
  'standing.update': {
    answered: [
      {
        about: 'that it is moved and turned',
        first: known => [bench(known)],
        input: (_, [made]) => ({
          id: idOf(made),
          changes: { at: { was: [3000, 2600], to: [3010, 2600] }, turn: { was: 0, to: 90 } },
        }),
        output: () => ({ saved: ['turn', 'at'], clashes: [] }),
      },
      {
        about: 'that somebody else has moved it meanwhile',
        first: known => [bench(known)],
        input: (_, [made]) => ({ id: idOf(made), changes: { at: { was: [0, 0], to: [3010, 2600] } } }),
        output: () => ({
          saved: [],
          clashes: [{ code: 'clash', id: anyId, field: 'at', was: [0, 0], yours: [3010, 2600], theirs: [3000, 2600] }],
        }),
      },
    ],
    refused: [
      { about: 'a thing that is not there', ...notThere },
      {
        about: 'a width of nothing',
        first: known => [bench(known)],
        input: (_, [made]) => ({ id: idOf(made), changes: { width: { was: 1600, to: 0 } } }),
        code: 'bad-input',
        field: 'changes.width.to',
      },
    ],
  },
  'standing.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [bench(known)],
        input: (_, [made]) => ({ id: idOf(made) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'a thing that is not there', ...gone }],
  },
  'track.add': {
    answered: [
      {
        about: 'the new track',
        input: known => ({
          room: known.room,
          ends: [
            [1000, 1200],
            [8000, 1200],
          ],
        }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'two ends in one place',
        input: known => ({
          room: known.room,
          ends: [
            [1000, 1200],
            [1000, 1200],
          ],
        }),
        code: 'no-length',
        field: 'ends',
      },
    ],
  },
  'track.update': {
    answered: [
      {
        about: 'that it is moved',
        first: known => [track(known)],
        input: (_, [made]) => ({
          id: idOf(made),
          changes: {
            ends: {
              was: [
                [1000, 1200],
                [8000, 1200],
              ],
              to: [
                [1000, 1500],
                [8000, 1500],
              ],
            },
            height: { was: 3300, to: 3250 },
          },
        }),
        output: () => ({ saved: ['height', 'ends'], clashes: [] }),
      },
    ],
    refused: [{ about: 'a track that is not there', ...notThere }],
  },
  'track.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [track(known)],
        input: (_, [made]) => ({ id: idOf(made) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'a track that is not there', ...gone }],
  },
  'zone.add': {
    answered: [
      {
        about: 'the new zone',
        input: known => ({ kind: 'climate', name: 'paper', rooms: [known.room] }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a room that is not there',
        input: () => ({ kind: 'light', name: 'dim', rooms: ['zzzzzz'] }),
        code: 'not-found',
        field: 'rooms.0',
      },
    ],
  },
  'zone.update': {
    answered: [
      {
        about: 'that it is renamed and empty',
        first: known => [zone(known)],
        input: (known, [made]) => ({
          id: idOf(made),
          changes: { name: { was: 'paper', to: 'prints' }, rooms: { was: [known.room], to: [] } },
        }),
        output: () => ({ saved: ['name', 'rooms'], clashes: [] }),
      },
    ],
    refused: [{ about: 'a zone that is not there', ...notThere }],
  },
  'zone.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [zone(known)],
        input: (_, [made]) => ({ id: idOf(made) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'a zone that is not there', ...gone }],
  },
}
