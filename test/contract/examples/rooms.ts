/** The building: rooms, walls, and what is fixed on them. */
import { expect } from 'vitest'
import type { roomsArea } from '../../../src/contract/areas/rooms.ts'
import { anyId, type ExamplesOf } from './types.ts'

export const roomsExamples: ExamplesOf<keyof typeof roomsArea> = {
  'room.list': {
    answered: [
      {
        about: 'the building with its walls',
        input: () => ({}),
        output: known => ({
          building: { id: anyId, name: 'The Maltings' },
          rooms: [
            {
              id: known.room,
              name: 'Room 1',
              number: '',
              height: 3450,
              labelLine: null,
              walls: [
                {
                  id: known.north,
                  face: known.northFace,
                  name: 'north',
                  length: 9140,
                  lengthText: '',
                  height: 3450,
                  heightText: '',
                  wallType: 'drywall on ply',
                  studFirst: null,
                  studSpacing: null,
                  backingFrom: null,
                  backingTo: null,
                  skirting: null,
                  datum: null,
                  angle: 90,
                  floor: [],
                  datumBy: '',
                  studs: [],
                  joints: [],
                  ceiling: [],
                  rail: [],
                  railKgPerMetre: null,
                  behindSeen: '',
                  side: 'a',
                  exhibition: null,
                  thickness: null,
                  from: [0, 0],
                  to: [9140, 0],
                  openings: [],
                  keepClears: [
                    {
                      id: known.thermostat,
                      kind: 'thermostat',
                      x: 4300,
                      y: 1400,
                      width: 120,
                      height: 120,
                      margin: 150,
                      label: '',
                      reason: '',
                      depth: null,
                      reachable: false,
                    },
                  ],
                },
                {
                  id: known.east,
                  face: known.eastFace,
                  name: 'east',
                  length: 5200,
                  lengthText: '',
                  height: 3450,
                  heightText: '',
                  wallType: 'drywall on ply',
                  studFirst: null,
                  studSpacing: null,
                  backingFrom: null,
                  backingTo: null,
                  skirting: null,
                  datum: null,
                  angle: 90,
                  floor: [],
                  datumBy: '',
                  studs: [],
                  joints: [],
                  ceiling: [],
                  rail: [],
                  railKgPerMetre: null,
                  behindSeen: '',
                  side: 'a',
                  exhibition: null,
                  thickness: null,
                  from: [9140, 0],
                  to: [9140, 5200],
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
                      leadsTo: null,
                      other: null,
                      depth: null,
                    },
                  ],
                  keepClears: [],
                },
                {
                  id: anyId,
                  face: anyId,
                  name: 'south',
                  length: 9140,
                  lengthText: '',
                  height: 3450,
                  heightText: '',
                  wallType: 'drywall on ply',
                  studFirst: null,
                  studSpacing: null,
                  backingFrom: null,
                  backingTo: null,
                  skirting: null,
                  datum: null,
                  angle: 90,
                  floor: [],
                  datumBy: '',
                  studs: [],
                  joints: [],
                  ceiling: [],
                  rail: [],
                  railKgPerMetre: null,
                  behindSeen: '',
                  side: 'a',
                  exhibition: null,
                  thickness: null,
                  from: [9140, 5200],
                  to: [0, 5200],
                  openings: [],
                  keepClears: [],
                },
                {
                  id: anyId,
                  face: anyId,
                  name: 'west',
                  length: 5200,
                  lengthText: '',
                  height: 3450,
                  heightText: '',
                  wallType: 'drywall on ply',
                  studFirst: null,
                  studSpacing: null,
                  backingFrom: null,
                  backingTo: null,
                  skirting: null,
                  datum: null,
                  angle: 90,
                  floor: [],
                  datumBy: '',
                  studs: [],
                  joints: [],
                  ceiling: [],
                  rail: [],
                  railKgPerMetre: null,
                  behindSeen: '',
                  side: 'a',
                  exhibition: null,
                  thickness: null,
                  from: [0, 5200],
                  to: [0, 0],
                  openings: [],
                  keepClears: [],
                },
              ],
              closure: { closes: true, gap: 0, note: 'The walls close exactly.', way: 'walked' },
              area: 47.528,
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'room.plan': {
    answered: [
      {
        about: 'the key plan of a show',
        input: known => ({ exhibition: known.show }),
        output: known => ({
          rooms: [
            {
              id: known.room,
              name: 'Room 1',
              number: '',
              walls: [
                {
                  id: known.north,
                  face: known.northFace,
                  name: 'north',
                  from: [0, 0],
                  to: [9140, 0],
                  length: 9140,
                  openings: [],
                  works: 2,
                  filled: expect.closeTo(0.130196937, 6),
                  settle: 0,
                  stop: 0,
                  order: null,
                  partition: false,
                },
                {
                  id: known.east,
                  face: known.eastFace,
                  name: 'east',
                  from: [9140, 0],
                  to: [9140, 5200],
                  length: 5200,
                  openings: [{ kind: 'door', x: 2000, width: 1000 }],
                  works: 0,
                  filled: 0,
                  settle: 0,
                  stop: 0,
                  order: null,
                  partition: false,
                },
                {
                  id: anyId,
                  face: anyId,
                  name: 'south',
                  from: [9140, 5200],
                  to: [0, 5200],
                  length: 9140,
                  openings: [],
                  works: 0,
                  filled: 0,
                  settle: 0,
                  stop: 0,
                  order: null,
                  partition: false,
                },
                {
                  id: anyId,
                  face: anyId,
                  name: 'west',
                  from: [0, 5200],
                  to: [0, 0],
                  length: 5200,
                  openings: [],
                  works: 0,
                  filled: 0,
                  settle: 0,
                  stop: 0,
                  order: null,
                  partition: false,
                },
              ],
            },
          ],
        }),
      },
    ],
    refused: [{ about: 'no show said', input: () => ({}), code: 'bad-input', field: 'exhibition' }],
  },
  'room.setBuilding': {
    answered: [{ about: 'the building', input: () => ({ name: 'The Old Maltings' }), output: () => ({ id: anyId }) }],
    refused: [{ about: 'a building without a name', input: () => ({ name: '' }), code: 'bad-input', field: 'name' }],
  },
  'room.add': {
    answered: [
      {
        about: 'the new room with its walls',
        input: () => ({
          name: 'Room 2',
          height: 3000,
          walls: [
            { length: 3000, angle: 60 },
            { length: 3000, angle: 60 },
            { length: 3000, angle: 60 },
          ],
        }),
        output: () => ({ id: anyId, walls: [anyId, anyId, anyId] }),
      },
      {
        about: 'one that was drawn where it stands',
        input: () => ({
          name: 'Room 3',
          height: 3000,
          walls: [{ length: 4000 }, { length: 3000 }, { length: 4000 }, { length: 3000 }],
          place: { at: [9260, 0], turn: 90, storey: '' },
        }),
        output: () => ({ id: anyId, walls: [anyId, anyId, anyId, anyId] }),
      },
    ],
    refused: [
      {
        about: 'a wall without length',
        input: () => ({ name: 'x', height: 3000, walls: [{ length: 3000 }, { length: 0 }] }),
        code: 'bad-input',
        field: 'walls.1.length',
      },
    ],
  },
  'room.update': {
    answered: [
      {
        about: 'that the height is changed',
        input: known => ({ id: known.room, changes: { height: { was: 3450, to: 3400 } } }),
        output: () => ({ saved: ['height'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a room that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'room.copy': {
    answered: [
      {
        about: 'the copy, called as one likes',
        input: known => ({ id: known.room, name: 'Room 2' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [{ about: 'a room that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'room.move': {
    answered: [
      { about: 'that it is moved', input: known => ({ id: known.room, before: null }), output: () => ({ done: true }) },
    ],
    refused: [
      {
        about: 'before a room that is not there',
        input: known => ({ id: known.room, before: 'zzzzzz' }),
        code: 'not-found',
        field: 'before',
      },
    ],
  },
  'room.remove': {
    answered: [
      {
        about: 'that an empty room is gone',
        first: known => [['placement.remove', { placements: [known.pansPlace, known.causewayPlace] }]],
        input: known => ({ id: known.room }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a room with works on its walls',
        input: known => ({ id: known.room }),
        code: 'wall-in-use',
        field: 'id',
      },
    ],
  },
  'room.check': {
    answered: [
      {
        about: 'that a rectangle closes',
        input: () => ({
          walls: [
            { length: 4000, angle: 90 },
            { length: 3000, angle: 90 },
            { length: 4000, angle: 90 },
            { length: 3000, angle: 90 },
          ],
        }),
        output: () => ({
          closes: true,
          gap: 0,
          note: 'The walls close exactly.',
          corners: [
            [0, 0],
            [4000, 0],
            [4000, 3000],
            [0, 3000],
          ],
          area: 12,
        }),
      },
      {
        about: 'that the same gap closes where the house allows more, and names instead of numbers',
        first: () => [['rule.set', { key: 'closesWithin', was: 20, to: 150, source: 'a yard with rough walls' }]],
        input: () => ({
          walls: [
            { length: 4000, angle: 90, name: 'street' },
            { length: 3000, angle: 90, name: 'gable' },
            { length: 4120, angle: 90, name: 'yard' },
            { length: 3000, angle: 90, name: 'party wall' },
          ],
        }),
        output: () => ({
          closes: true,
          gap: 120,
          note: 'The walls close within 120 mm.',
          corners: [
            [0, 0],
            [4033.994334, 0],
            [4059.490085, 3000],
            [-25.495751, 3000],
          ],
          area: expect.closeTo(12.178470255, 6),
        }),
      },
      {
        about: 'by how much walls fail to close and which to measure again',
        input: () => ({
          walls: [
            { length: 4000, angle: 90 },
            { length: 3000, angle: 90 },
            { length: 4120, angle: 90 },
            { length: 3000, angle: 90 },
          ],
        }),
        output: () => ({
          closes: false,
          gap: 120,
          note: 'The walls fail to close by 120 mm. Measure walls 1 and 3 again first; they run along the gap.',
          corners: [
            [0, 0],
            [4033.994334, 0],
            [4059.490085, 3000],
            [-25.495751, 3000],
          ],
          area: expect.closeTo(12.178470255, 6),
        }),
      },
    ],
    refused: [
      {
        about: 'an angle that no corner has',
        input: () => ({ walls: [{ length: 1, angle: 360 }] }),
        code: 'bad-input',
        field: 'walls.0.angle',
      },
    ],
  },
  'wall.add': {
    answered: [
      {
        about: 'the new wall',
        input: known => ({ room: known.room, after: known.east, wall: { name: 'pier', length: 400 } }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'after a wall of another room',
        input: known => ({ room: known.room, after: 'zzzzzz', wall: { length: 100 } }),
        code: 'not-found',
        field: 'after',
      },
    ],
  },
  'wall.update': {
    answered: [
      {
        about: 'which fields were saved',
        input: known => ({
          id: known.north,
          changes: {
            length: { was: 9140, to: 9120 },
            lengthText: { was: '', to: '9 120' },
            floor: {
              was: [],
              to: [
                [0, 0],
                [6000, -38],
              ],
            },
          },
        }),
        output: () => ({ saved: ['length', 'lengthText', 'floor'], clashes: [] }),
      },
      {
        about: 'that what is behind and above the wall is kept',
        input: known => ({
          id: known.north,
          changes: {
            studs: { was: [], to: [310, 722, 1118] },
            joints: { was: [], to: [1220, 2440] },
            ceiling: {
              was: [],
              to: [
                [0, 3450],
                [9140, 3410],
              ],
            },
            rail: { was: [], to: [[0, 2900]] },
            railKgPerMetre: { was: null, to: 40 },
            datumBy: { was: '', to: 'high' },
            behindSeen: { was: '', to: 'detector, 4 March' },
          },
        }),
        output: () => ({
          saved: ['datumBy', 'studs', 'joints', 'ceiling', 'rail', 'railKgPerMetre', 'behindSeen'],
          clashes: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a stud beyond the end of the wall',
        input: known => ({ id: known.north, changes: { studs: { was: [], to: [310, 9141] } } }),
        code: 'off-the-wall',
        field: 'changes.studs.to.1',
      },
      {
        about: 'joints that do not run from left to right',
        input: known => ({ id: known.north, changes: { joints: { was: [], to: [2440, 1220] } } }),
        code: 'not-in-order',
        field: 'changes.joints.to.1',
      },
      {
        about: 'a rail above the ceiling',
        input: known => ({ id: known.north, changes: { rail: { was: [], to: [[0, 3460]] } } }),
        code: 'height-wrong',
        field: 'changes.rail.to.0.1',
      },
      {
        about: 'a wall that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'a height below nothing',
        input: known => ({ id: known.north, changes: { height: { was: 3450, to: -1 } } }),
        code: 'bad-input',
        field: 'changes.height.to',
      },
    ],
  },
  'wall.move': {
    answered: [
      {
        about: 'that it is moved',
        input: known => ({ id: known.east, before: known.north }),
        output: () => ({ done: true }),
      },
      {
        about: 'that it is moved to the end',
        input: known => ({ id: known.north, before: null }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a wall that is not there',
        input: known => ({ id: 'zzzzzz', before: known.north }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'before a wall of another room',
        input: known => ({ id: known.north, before: 'zzzzzz' }),
        code: 'not-found',
        field: 'before',
      },
    ],
  },
  'wall.split': {
    answered: [
      {
        about: 'the new wall at the right',
        input: known => ({ id: known.north, x: 4000 }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a place where a door is',
        input: known => ({ id: known.east, x: 2500 }),
        code: 'opening-across',
        field: 'x',
      },
      {
        about: 'a place beyond the end of the wall',
        input: known => ({ id: known.north, x: 9140 }),
        code: 'off-the-wall',
        field: 'x',
      },
      { about: 'a wall that is not there', input: () => ({ id: 'zzzzzz', x: 100 }), code: 'not-found', field: 'id' },
    ],
  },
  'wall.join': {
    answered: [
      {
        about: 'that the two parts of a wall are one again',
        first: known => [['wall.split', { id: known.north, x: 4000 }]],
        input: known => ({ id: known.north }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'walls with a corner between them',
        input: known => ({ id: known.north }),
        code: 'not-straight',
        field: 'id',
      },
      { about: 'a wall that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'wall.remove': {
    answered: [{ about: 'that it is gone', input: known => ({ id: known.east }), output: () => ({ done: true }) }],
    refused: [
      { about: 'a wall with works on it', input: known => ({ id: known.north }), code: 'wall-in-use', field: 'id' },
    ],
  },
  'room.findings': {
    answered: [
      { about: 'nothing to settle in a room that closes', input: () => ({}), output: () => ({ findings: [] }) },
      {
        about: 'what a show has standing before a door',
        first: known => [
          [
            'standing.add',
            { room: known.room, exhibition: known.show, kind: 'bench', at: [8600, 2500], width: 500, depth: 1600 },
          ],
        ],
        input: known => ({ exhibition: known.show }),
        output: known => ({
          findings: [
            {
              severity: 'settle',
              code: 'before-opening',
              subject: { kind: 'standing', id: anyId },
              text: 'Room 1: the bench stands 625 mm in the 915 mm kept free before the door of east.',
              figures: { opening: known.door, by: 625, clear: 915 },
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
}
