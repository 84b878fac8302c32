/** The building's plan: rooms put where they stand. */
import type { planArea } from '../../../src/contract/areas/plan.ts'
import { anyId, type ExamplesOf } from './types.ts'

const wall = {
  length: 9140,
  height: 3450,
  angle: 90,
  wallType: 'drywall on ply',
  thickness: null,
  backs: null,
  openings: [],
  fixtures: [],
  works: [],
}

export const planExamples: ExamplesOf<keyof typeof planArea> = {
  'plan.get': {
    answered: [
      {
        about: 'a room placed and turned, with what is on its walls; a work hangs in a niche',
        first: known => [
          ['opening.add', { wall: known.north, kind: 'niche', x: 800, y: 1000, width: 700, height: 1000, depth: 90 }],
          [
            'plan.placeRoom',
            {
              rooms: [
                {
                  id: known.room,
                  changes: {
                    at: { was: null, to: [20_000, 1000] },
                    turn: { was: 0, to: 90 },
                    floorLevel: { was: null, to: 150 },
                  },
                },
              ],
            },
          ],
          ['plan.setNorth', { was: null, to: 350 }],
        ],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          building: { id: anyId, name: 'The Maltings', north: 350 },
          storeys: [''],
          rooms: [
            {
              id: known.room,
              name: 'Room 1',
              number: '',
              height: 3450,
              at: [20_000, 1000],
              turn: 90,
              storey: '',
              floorLevel: 150,
              closed: true,
              closes: true,
              gap: 0,
              note: 'The walls close exactly.',
              area: 47.528,
              walls: [
                {
                  ...wall,
                  id: known.north,
                  face: known.northFace,
                  name: 'north',
                  from: [20_000, 1000],
                  to: [20_000, 10_140],
                  openings: [
                    {
                      id: anyId,
                      kind: 'niche',
                      x: 800,
                      y: 1000,
                      width: 700,
                      height: 1000,
                      label: '',
                      swing: '',
                      depth: 90,
                      leadsTo: null,
                      other: null,
                    },
                  ],
                  fixtures: [
                    {
                      id: known.thermostat,
                      kind: 'thermostat',
                      x: 4300,
                      y: 1400,
                      width: 120,
                      height: 120,
                      margin: 150,
                      label: '',
                      depth: null,
                      reachable: false,
                    },
                  ],
                  works: [
                    {
                      placement: known.pansPlace,
                      work: known.pans,
                      number: 'L-1.1',
                      title: 'Salt pans',
                      x: 1140,
                      width: 480,
                      depth: null,
                      niche: anyId,
                    },
                    {
                      placement: known.causewayPlace,
                      work: known.causeway,
                      number: 'L-1.2',
                      title: 'Causeway',
                      x: 2367,
                      width: 710,
                      depth: null,
                      niche: null,
                    },
                  ],
                },
                {
                  ...wall,
                  id: known.east,
                  face: known.eastFace,
                  name: 'east',
                  length: 5200,
                  from: [20_000, 10_140],
                  to: [14_800, 10_140],
                  openings: [
                    {
                      id: known.door,
                      kind: 'door',
                      x: 2000,
                      y: 0,
                      width: 1000,
                      height: 2100,
                      label: '',
                      swing: '',
                      depth: null,
                      leadsTo: null,
                      other: null,
                    },
                  ],
                },
                { ...wall, id: anyId, face: anyId, name: 'south', from: [14_800, 10_140], to: [14_800, 1000] },
                {
                  ...wall,
                  id: anyId,
                  face: anyId,
                  name: 'west',
                  length: 5200,
                  from: [14_800, 1000],
                  to: [20_000, 1000],
                },
              ],
              partitions: [],
              things: [],
              tracks: [],
            },
          ],
          zones: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: () => ({ exhibition: 'zzzzzz' }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'plan.placeRoom': {
    answered: [
      {
        about: 'what was placed',
        input: known => ({
          rooms: [{ id: known.room, changes: { at: { was: null, to: [0, 0] }, turn: { was: 0, to: -90 } } }],
        }),
        output: () => ({ saved: ['at', 'turn'], clashes: [] }),
      },
      {
        about: 'a place that somebody else has changed meanwhile',
        first: known => [
          ['plan.placeRoom', { rooms: [{ id: known.room, changes: { at: { was: null, to: [5, 5] } } }] }],
        ],
        input: known => ({ rooms: [{ id: known.room, changes: { at: { was: null, to: [9, 9] } } }] }),
        output: known => ({
          saved: [],
          clashes: [{ code: 'clash', id: known.room, field: 'at', was: null, yours: [9, 9], theirs: [5, 5] }],
        }),
      },
    ],
    refused: [
      {
        about: 'a room that is not there',
        input: known => ({
          rooms: [
            { id: known.room, changes: { at: { was: null, to: [0, 0] } } },
            { id: 'zzzzzz', changes: {} },
          ],
        }),
        code: 'not-found',
        field: 'rooms.1.id',
      },
      {
        about: 'walls of one room, which are never the two sides of one wall',
        input: known => ({
          rooms: [{ id: known.room, changes: { at: { was: null, to: [0, 0] } } }],
          walls: [{ id: known.east, with: known.north, thickness: null }],
        }),
        code: 'same-room',
        field: 'with',
      },
    ],
  },
  'plan.setNorth': {
    answered: [
      {
        about: 'that north is said',
        input: () => ({ was: null, to: -10 }),
        output: () => ({ saved: ['north'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'an angle beyond a turn',
        input: () => ({ was: null, to: 400 }),
        code: 'bad-input',
        field: 'to',
      },
    ],
  },
}
