/** What is fixed on walls: openings, and what works keep clear of. */
import type { fixturesArea } from '../../../src/contract/areas/fixtures.ts'
import { anyId, type ExamplesOf } from './types.ts'

export const fixturesExamples: ExamplesOf<keyof typeof fixturesArea> = {
  'opening.add': {
    answered: [
      {
        about: 'the new opening',
        input: known => ({ wall: known.north, kind: 'window', x: 7000, y: 900, width: 1200, height: 1500 }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'on a wall that is not there',
        input: () => ({ wall: 'zzzzzz', kind: 'door', x: 0, y: 0, width: 900, height: 2000 }),
        code: 'not-found',
        field: 'wall',
      },
    ],
  },
  'opening.update': {
    answered: [
      {
        about: 'that it is moved',
        input: known => ({ id: known.door, changes: { x: { was: 2000, to: 2100 } } }),
        output: () => ({ saved: ['x'], clashes: [] }),
      },
      {
        about: 'how its leaf turns',
        input: known => ({
          id: known.door,
          changes: { swing: { was: '', to: 'in left' }, depth: { was: null, to: 240 } },
        }),
        output: () => ({ saved: ['swing', 'depth'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'an opening that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'a door that leads to its own room',
        input: known => ({ id: known.door, changes: { leadsTo: { was: null, to: known.room } } }),
        code: 'leads-nowhere',
        field: 'changes.leadsTo.to',
      },
      {
        about: 'a swing that there is not',
        input: known => ({ id: known.door, changes: { swing: { was: '', to: 'round' } } }),
        code: 'bad-input',
        field: 'changes.swing.to',
      },
    ],
  },
  'opening.pair': {
    answered: [
      {
        about: 'that it is no longer one with any other',
        input: known => ({ id: known.door, other: null }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'two openings of one room',
        first: known => [['opening.add', { wall: known.north, kind: 'door', x: 100, y: 0, width: 900, height: 2100 }]],
        input: (known, [made]) => ({ id: known.door, other: idOf(made) }),
        code: 'same-room',
        field: 'other',
      },
      {
        about: 'an opening that is not there',
        input: known => ({ id: known.door, other: 'zzzzzz' }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'opening.remove': {
    answered: [{ about: 'that it is gone', input: known => ({ id: known.door }), output: () => ({ done: true }) }],
    refused: [
      { about: 'an opening that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'keepClear.add': {
    answered: [
      {
        about: 'the new thing to keep clear of',
        input: known => ({ wall: known.east, kind: 'switch', x: 1800, y: 1000, width: 80, height: 80, margin: 100 }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'on the back of a wall of a room',
        input: known => ({
          wall: known.east,
          side: 'b',
          kind: 'switch',
          x: 1800,
          y: 1000,
          width: 80,
          height: 80,
          margin: 100,
        }),
        code: 'one-face',
        field: 'side',
      },
      {
        about: 'a kind that there is not',
        input: known => ({ wall: known.north, kind: 'ghost', x: 0, y: 0, width: 1, height: 1, margin: 0 }),
        code: 'bad-input',
        field: 'kind',
      },
    ],
  },
  'keepClear.update': {
    answered: [
      {
        about: 'that the margin is smaller, with a reason',
        input: known => ({
          id: known.thermostat,
          changes: { margin: { was: 150, to: 106 }, reason: { was: '', to: 'agreed with the building' } },
        }),
        output: () => ({ saved: ['margin', 'reason'], clashes: [] }),
      },
      {
        about: 'that it must stay reachable and how deep it is',
        input: known => ({
          id: known.thermostat,
          changes: { depth: { was: null, to: 35 }, reachable: { was: false, to: true } },
        }),
        output: () => ({ saved: ['depth', 'reachable'], clashes: [] }),
      },
    ],
    refused: [
      { about: 'what is not there', input: () => ({ id: 'zzzzzz', changes: {} }), code: 'not-found', field: 'id' },
    ],
  },
  'keepClear.remove': {
    answered: [
      { about: 'that it is gone', input: known => ({ id: known.thermostat }), output: () => ({ done: true }) },
    ],
    refused: [{ about: 'what is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
}

function idOf(made: unknown): string {
  return (made as { readonly id: string }).id // opening.add gave it
}
