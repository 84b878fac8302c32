/** Places with agreed names, and the record of movements. */
import type { movementsArea } from '../../../src/contract/areas/movements.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf, unknownField } from './types.ts'

const nowhere = 'zzzzzz'
const by = 'Tamsin Oake'
const bare = { address: '', note: '', width: null, height: null, depth: null, holdHours: null }
/** The id that the first answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made

const crate = { kind: 'crate' as const, name: 'Crate 5', width: 1200, height: 1000, depth: 300 }
const addCrate = ['location.add', crate] as const
const largeCase = ['location.add', { ...crate, width: 1600, height: 2300, depth: 1050 }] as const
const outOfRoom = { kind: 'door', words: 'the doorway out of Room 1', width: 1000, height: 2100, depth: null }
const arrived = (known: Known) =>
  ['movement.add', { works: [known.pans], to: known.room, at: '2031-03-02T09:10:00.000Z', by }] as const

const diptych = (known: Known) =>
  ['set.make', { works: [known.pans, known.causeway], exhibition: known.show, form: 'row', gapX: 30, gapY: 0 }] as const

const faceNames = ['north', 'east', 'south', 'west'] as const

const recordOf = (known: Known) => ({
  movement: anyId,
  at: '2031-03-02T09:10:00.000Z',
  place: known.room,
  words: 'Room 1',
  spot: '',
  method: '',
  people: '',
  reason: '',
  condition: '',
  recordedAt: anyMoment,
  recordedBy: by,
  corrects: null,
  correctedBy: null,
  struck: false,
})

const lineOf = (known: Known) => ({
  kind: 'work',
  id: known.pans,
  number: 'L-1.1',
  title: 'Salt pans',
  running: '',
  maker: 'Ada Ruel',
  movement: anyId,
  place: known.room,
  words: 'Room 1',
  spot: '',
  since: '2031-03-02T09:10:00.000Z',
  people: '',
  stands: known.room,
  parts: 0,
  findings: [],
})

export const movementsExamples: ExamplesOf<keyof typeof movementsArea> = {
  'location.list': {
    answered: [
      {
        about: 'the room with its walls, named by the building, and a crate after them',
        first: () => [addCrate],
        input: () => ({}),
        output: known => ({
          places: [
            {
              place: known.room,
              kind: 'room',
              name: 'Room 1',
              words: 'Room 1',
              parent: null,
              ...bare,
              recorded: false,
            },
            ...faceNames.map(name => ({
              place: anyId,
              kind: 'face',
              name,
              words: `Room 1, ${name}`,
              parent: known.room,
              ...bare,
              recorded: false,
            })),
            { place: anyId, ...bare, ...crate, words: 'Crate 5', parent: null, recorded: false },
          ],
        }),
      },
    ],
    refused: [unknownField],
  },
  'location.add': {
    answered: [
      { about: 'the new crate', input: () => crate, output: () => ({ id: anyId }) },
      {
        about: 'a shelf in a store',
        first: () => [['location.add', { kind: 'place', name: 'Store 2' }]],
        input: (_, earlier) => ({ kind: 'place', name: 'shelf 3', parent: idOf(earlier[0]) }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a name that a room has',
        input: () => ({ kind: 'place', name: 'room 1' }),
        code: 'same-name',
        field: 'name',
      },
      {
        about: 'a shelf in what moves',
        first: () => [addCrate],
        input: (_, earlier) => ({ kind: 'place', name: 'shelf', parent: idOf(earlier[0]) }),
        code: 'bad-input',
        field: 'parent',
      },
    ],
  },
  'location.update': {
    answered: [
      {
        about: 'that the hold hours are set',
        first: () => [addCrate],
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { holdHours: { was: null, to: 24 } } }),
        output: () => ({ saved: ['holdHours'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a room, which is named with its building',
        input: known => ({ id: known.room, changes: { name: { was: 'Room 1', to: 'Hall' } } }),
        code: 'of-the-building',
        field: 'id',
      },
    ],
  },
  'location.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: () => [addCrate],
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a place that there is not',
        input: () => ({ id: nowhere }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'movement.check': {
    answered: [
      {
        about: 'a case that does not pass the only door, 1 000 wide and 2 100 high, whichever side is foremost',
        first: () => [largeCase],
        input: (known, earlier) => ({ crates: [idOf(earlier[0])], to: known.room ?? '' }),
        output: () => ({
          notes: [
            {
              severity: 'settle',
              code: 'does-not-pass',
              subject: { kind: 'crate', id: anyId },
              text: 'Crate 5, 2\u2009300 mm × 1\u2009600 mm × 1\u2009050 mm, does not pass through the doorway out of Room 1, 2\u2009100 mm high and 1\u2009000 mm wide: 50 mm too large. What lies beyond the rooms the plan does not show.',
              figures: { through: [{ ...outOfRoom, fit: 'no', over: 50, spare: 0 }], tightest: 0 },
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'nothing that was moved',
        input: known => ({ to: known.room }),
        code: 'bad-input',
        field: 'works',
      },
    ],
  },
  'movement.way': {
    answered: [
      {
        about: 'the only doorway, which the crate passes on edge: 1 200 high, and 300 of it across 1 000',
        first: () => [['location.add', { ...crate, height: 1200, depth: 300 }]],
        input: (known, earlier) => ({ crates: [idOf(earlier[0])], to: known.room }),
        output: () => ({
          ways: [
            {
              kind: 'crate',
              id: anyId,
              name: 'Crate 5',
              told: 'way',
              fit: 'upright',
              through: [{ ...outOfRoom, fit: 'upright', over: 0, spare: 700 }],
              tightest: 0,
              text: 'Crate 5, 1\u2009200 mm × 1\u2009200 mm × 300 mm, passes upright through the doorway out of Room 1, 2\u2009100 mm high and 1\u2009000 mm wide: 700 mm to spare. What lies beyond the rooms the plan does not show.',
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a place that there is not',
        input: () => ({ to: nowhere }),
        code: 'not-found',
        field: 'to',
      },
    ],
  },
  'movement.wholes': {
    answered: [
      {
        about: 'the set with both its parts, of which one came before they were a set',
        first: known => [arrived(known), diptych(known)],
        input: known => ({ works: [known.causeway ?? ''] }),
        output: known => ({
          wholes: [
            {
              set: anyId,
              name: 'Salt pans and 1 more',
              parts: [
                { work: known.pans, number: 'L-1.1', title: 'Salt pans', words: 'Room 1' },
                { work: known.causeway, number: 'L-1.2', title: 'Causeway', words: '' },
              ],
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that there is not',
        input: () => ({ works: [nowhere] }),
        code: 'not-found',
        field: 'works.0',
      },
    ],
  },
  'movement.add': {
    answered: [
      {
        about: 'the movement, with nothing to say about it',
        input: known => ({ works: [known.pans ?? '', known.causeway ?? ''], to: known.northFace ?? '', by }),
        output: () => ({ id: anyId, notes: [] }),
      },
      {
        about: 'a set without one of its parts, which stays where it came to, and how the other arrived',
        first: known => [arrived(known), diptych(known)],
        input: (known, earlier) => ({
          works: [idOf(earlier[1])],
          staying: [known.pans ?? ''],
          to: known.northFace ?? '',
          arrived: [{ id: known.causeway ?? '', condition: 'dust on the glazing' }],
          by,
        }),
        output: known => ({
          id: anyId,
          notes: [
            {
              severity: 'settle',
              code: 'part-stays',
              subject: { kind: 'work', id: known.pans },
              text: 'Salt pans and 1 more is not whole at Room 1, north: Salt pans stays behind at Room 1.',
              figures: { parts: [known.pans] },
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a case that by the plan does not pass, with no word on how it went all the same',
        first: () => [largeCase],
        input: (known, earlier) => ({ crates: [idOf(earlier[0])], to: known.room, by }),
        code: 'does-not-pass',
        field: 'despite',
      },
      {
        about: 'a plan that there is not',
        input: known => ({ works: [known.pans], to: known.room, plans: [nowhere], by }),
        code: 'not-found',
        field: 'plans.0',
      },
      {
        about: 'a plan of what was not carried',
        first: known => [['planned.add', { works: [known.causeway], to: known.room, day: '2031-05-12' }]],
        input: (known, earlier) => ({
          works: [known.pans],
          to: known.room,
          plans: (earlier[0] as { plans: { id: string }[] }).plans.map(({ id }) => id), // the answer of that name
          by,
        }),
        code: 'not-carried',
        field: 'plans.0',
      },
      {
        about: 'a set of which nothing goes',
        first: known => [diptych(known)],
        input: (known, earlier) => ({
          works: [idOf(earlier[0])],
          staying: [known.pans, known.causeway],
          to: known.room,
          by,
        }),
        code: 'bad-input',
        field: 'staying',
      },
      {
        about: 'a work that stays and is part of nothing that goes',
        input: known => ({ works: [known.pans], staying: [known.causeway], to: known.room, by }),
        code: 'bad-input',
        field: 'staying.0',
      },
      {
        about: 'how something arrived that was not carried',
        input: known => ({
          works: [known.pans],
          arrived: [{ id: known.causeway, condition: 'x' }],
          to: known.room,
          by,
        }),
        code: 'not-carried',
        field: 'arrived.0.id',
      },
      {
        about: 'a movement by nobody',
        input: known => ({ works: [known.pans], to: known.room }),
        code: 'no-name',
        field: 'by',
      },
      {
        about: 'a movement that has not been yet',
        input: known => ({ works: [known.pans], to: known.room, at: '2031-05-01T09:00:00Z', by }),
        code: 'in-the-future',
        field: 'at',
      },
      {
        about: 'one before the work arrived',
        first: known => [arrived(known)],
        input: known => ({ works: [known.pans], to: known.northFace, at: '2031-03-01T09:00:00Z', by }),
        code: 'before-arrival',
        field: 'at',
      },
      {
        about: 'another place at the very moment',
        first: known => [arrived(known)],
        input: known => ({ works: [known.pans], to: known.northFace, at: '2031-03-02T09:10:00Z', by }),
        code: 'two-places',
        field: 'at',
      },
      {
        about: 'a crate put into itself',
        first: () => [addCrate],
        input: (_, earlier) => ({ crates: [idOf(earlier[0])], to: idOf(earlier[0]), by }),
        code: 'inside-itself',
        field: 'to',
      },
      {
        about: 'a place that there is not',
        input: known => ({ works: [known.pans], to: nowhere, by }),
        code: 'not-found',
        field: 'to',
      },
    ],
  },
  'movement.correct': {
    answered: [
      {
        about: 'the record that sets the first right',
        first: known => [arrived(known)],
        input: (known, earlier) => ({
          movement: idOf(earlier[0]),
          why: 'it was the wall',
          to: known.northFace ?? '',
          by,
        }),
        output: () => ({ id: anyId, notes: [] }),
      },
      {
        about: 'the record that strikes it',
        first: known => [arrived(known)],
        input: (_, earlier) => ({ movement: idOf(earlier[0]), why: 'another work', struck: true, by }),
        output: () => ({ id: anyId, notes: [] }),
      },
    ],
    refused: [
      {
        about: 'a movement that there is not',
        input: () => ({ movement: nowhere, why: 'x', by }),
        code: 'not-found',
        field: 'movement',
      },
      {
        about: 'a case set right to where by the plan it does not pass, with no word on how it went all the same',
        first: () => [
          largeCase,
          ['location.add', { kind: 'place', name: 'Store 2' }],
          ['movement.add', (earlier: readonly unknown[]) => ({ crates: [idOf(earlier[0])], to: idOf(earlier[1]), by })],
        ],
        input: (known, earlier) => ({ movement: idOf(earlier[2]), why: 'the other room', to: known.room, by }),
        code: 'does-not-pass',
        field: 'despite',
      },
      {
        about: 'a correction without its reason',
        first: known => [arrived(known)],
        input: (_, earlier) => ({ movement: idOf(earlier[0]), why: '', struck: true, by }),
        code: 'bad-input',
        field: 'why',
      },
    ],
  },
  'movement.takeHung': {
    answered: [
      {
        about: 'that one hung work is in the record',
        first: known => [['placement.setState', { placements: [known.pansPlace], to: 'hung' }]],
        input: known => ({ exhibition: known.show ?? '', by }),
        output: () => ({ recorded: 1 }),
      },
    ],
    refused: [
      {
        about: 'a show where nothing hangs',
        input: known => ({ exhibition: known.show, by }),
        code: 'nothing-to-record',
        field: null,
      },
    ],
  },
  'movement.where': {
    answered: [
      {
        about: 'the one work that moved, and how many of the show have no place',
        first: known => [arrived(known)],
        input: known => ({ exhibition: known.show ?? '', at: '2031-03-05T00:00:00Z', words: 'room 1' }),
        output: known => ({
          at: '2031-03-05T00:00:00.000Z',
          lines: [lineOf(known)],
          total: 1,
          without: 2,
          twice: 0,
          unrecorded: 0,
          places: [{ place: known.room, words: 'Room 1', works: 1 }],
        }),
      },
      {
        about: 'nothing of one work on the day before it came',
        first: known => [arrived(known)],
        input: known => ({ exhibition: known.show ?? '', at: '2031-03-01T23:00:00Z', thing: known.pans }),
        output: known => ({
          at: '2031-03-01T23:00:00.000Z',
          lines: [
            {
              ...lineOf(known),
              movement: null,
              place: null,
              words: '',
              since: null,
              stands: null,
              findings: [
                {
                  severity: 'settle',
                  code: 'no-place',
                  subject: { kind: 'work', id: known.pans },
                  text: 'No movement of it is recorded: nobody can say where it was.',
                  figures: {},
                },
              ],
            },
          ],
          total: 1,
          without: 3,
          twice: 0,
          unrecorded: 0,
          places: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a show that there is not',
        input: () => ({ exhibition: nowhere }),
        code: 'not-found',
        field: 'exhibition',
      },
      {
        about: 'a work that there is not',
        input: () => ({ thing: nowhere }),
        code: 'not-found',
        field: 'thing',
      },
    ],
  },
  'movement.history': {
    answered: [
      {
        about: 'its one movement',
        first: known => [arrived(known)],
        input: known => ({ kind: 'work', id: known.pans ?? '' }),
        output: known => ({
          movements: [
            { ...recordOf(known), fromWords: '', within: '', withSet: '', ownCondition: '', planned: '', finding: '' },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that there is not',
        input: () => ({ kind: 'work', id: nowhere }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'movement.list': {
    answered: [
      {
        about: 'what was moved that day',
        first: known => [arrived(known)],
        input: () => ({ from: '2031-03-02T00:00:00Z', to: '2031-03-02T23:59:59Z' }),
        output: known => ({
          movements: [
            {
              ...recordOf(known),
              things: [
                {
                  kind: 'work',
                  id: known.pans,
                  number: 'L-1.1',
                  title: 'Salt pans',
                  fromWords: '',
                  partOf: null,
                  condition: '',
                  planned: '',
                },
              ],
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'an end before the beginning',
        input: () => ({ from: '2031-03-02T00:00:00Z', to: '2031-03-01T00:00:00Z' }),
        code: 'dates-reversed',
        field: 'to',
      },
    ],
  },
}
