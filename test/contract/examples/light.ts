/** Hours lit, readings of light, and the ledger of both. */
import type { lightArea } from '../../../src/contract/areas/light.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf } from './types.ts'

const nowhere = 'zzzzzz'
const by = 'Tamsin Oake'
/** The id that the first answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made

const opening = { kind: 'open' as const, first: '2031-04-01', last: '2031-04-28', hours: 8 }
const addOpening = (known: Known) => ['light.addHours', { exhibition: known.show, ...opening }] as const
const read = { points: [47, 61.5, 50], uv: 12, at: '2031-03-10T11:00:00.000Z', meter: 'meter 2', by }
const addRead = (known: Known) => ['light.addReading', { work: known.pans, ...read }] as const

/** Of high sensitivity, on a wall that is planned at 50 lux. */
const planned = (known: Known) =>
  [
    addRead(known),
    addOpening(known),
    ['wall.plan', { exhibition: known.show, face: known.northFace, changes: { plannedLux: { was: null, to: 50 } } }],
    ['work.update', { id: known.pans, changes: { sensitivity: { was: '', to: 'high' } } }],
  ] as const

/** By hand: 28 days × 8 h × 50 lx = 11 200; 400 more a day pass 15 000 on the tenth day after. */
const spent = {
  sensitivity: 'high',
  budgets: [{ luxHours: 15_000, asked: null, ends: null, endsIfLonger: '2031-05-08' }],
  used: 0,
  ever: 0,
  most: 11_200,
  unknownHours: 0,
  violet: { used: 0, ever: 0, most: 0, hours: 0, unknownHours: 0 },
  levels: [],
  violets: [{ most: 75, asked: null, hours: 0, within: 0, unknownHours: 224, first: null, greatest: null }],
}

export const lightExamples: ExamplesOf<keyof typeof lightArea> = {
  'light.hours': {
    answered: [
      {
        about: 'what was added, of all weekdays where none was named',
        first: known => [addOpening(known)],
        input: known => ({ exhibition: known.show }),
        output: () => ({ hours: [{ id: anyId, ...opening, weekdays: 127, lux: null, note: '' }] }),
      },
    ],
    refused: [
      {
        about: 'a show that there is not',
        input: () => ({ exhibition: nowhere }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'light.addHours': {
    answered: [
      {
        about: 'the new entry',
        input: known => ({ exhibition: known.show, ...opening }),
        output: () => ({ id: anyId }),
      },
      {
        about: 'closed days without hours',
        input: known => ({ exhibition: known.show, kind: 'closed', first: '2031-04-04', last: '2031-04-04' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'dates reversed',
        input: known => ({ exhibition: known.show, ...opening, last: '2031-03-01' }),
        code: 'reversed',
        field: 'last',
      },
      {
        about: 'more hours than a day has, with what is there',
        first: known => [addOpening(known)],
        input: known => ({ exhibition: known.show, ...opening, kind: 'event', hours: 17 }),
        code: 'too-many-hours',
        field: 'hours',
      },
      {
        about: 'a year of another century',
        input: known => ({ exhibition: known.show, ...opening, last: '2131-04-28' }),
        code: 'too-long',
        field: 'last',
      },
      {
        about: 'opening without hours',
        input: known => ({ exhibition: known.show, kind: 'open', first: '2031-04-01', last: '2031-04-02' }),
        code: 'no-hours',
        field: 'hours',
      },
    ],
  },
  'light.updateHours': {
    answered: [
      {
        about: 'what was changed',
        first: known => [addOpening(known)],
        input: (_, earlier) => ({
          id: idOf(earlier[0]),
          changes: { last: { was: opening.last, to: '2031-05-31' }, hours: { was: 8, to: 9.5 } },
        }),
        output: () => ({ saved: ['last', 'hours'], clashes: [] }),
      },
      {
        about: 'what somebody else had changed meanwhile',
        first: known => [addOpening(known)],
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { hours: { was: 7, to: 9 } } }),
        output: () => ({
          saved: [],
          clashes: [{ code: 'clash', id: anyId, field: 'hours', was: 7, yours: 9, theirs: 8 }],
        }),
      },
    ],
    refused: [
      {
        about: 'days reversed by one of them alone',
        first: known => [addOpening(known)],
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { last: { was: opening.last, to: '2031-03-01' } } }),
        code: 'reversed',
        field: 'changes.last',
      },
      {
        about: 'more hours than a day has, with the entry beside it',
        first: known => [
          addOpening(known),
          ['light.addHours', { exhibition: known.show, ...opening, kind: 'cleaning', hours: 1 }],
        ],
        input: (_, earlier) => ({ id: idOf(earlier[1]), changes: { hours: { was: 1, to: 17 } } }),
        code: 'too-many-hours',
        field: 'changes.hours',
      },
      {
        about: 'an entry that there is not',
        input: () => ({ id: nowhere, changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'light.removeHours': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [addOpening(known)],
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'an entry that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
  'light.addReading': {
    answered: [
      {
        about: 'the record of three points',
        input: known => ({ work: known.pans, ...read }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a level below nothing',
        input: known => ({ work: known.pans, ...read, points: [-1] }),
        code: 'bad-input',
        field: 'points.0',
      },
      {
        about: 'a level that no lamp and no sun gives',
        input: known => ({ work: known.pans, ...read, points: [50, 200_000_000] }),
        code: 'bad-input',
        field: 'points.1',
      },
      {
        about: 'a day that has not come',
        input: known => ({ work: known.pans, ...read, at: '2031-04-10T11:00:00.000Z' }),
        code: 'in-the-future',
        field: 'at',
      },
      {
        about: 'ultraviolet said twice',
        input: known => ({ work: known.pans, ...read, uvArea: 0.6 }),
        code: 'two-figures',
        field: 'uvArea',
      },
      {
        about: 'a work that there is not',
        input: () => ({ work: nowhere, ...read }),
        code: 'not-found',
        field: 'work',
      },
    ],
  },
  'light.strikeReading': {
    answered: [
      {
        about: 'the record that says so',
        first: known => [addRead(known)],
        input: (_, earlier) => ({ reading: idOf(earlier[0]), why: 'the meter was in footcandles', by }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a reading that there is not',
        input: () => ({ reading: nowhere, why: 'a slip', by }),
        code: 'not-found',
        field: 'reading',
      },
    ],
  },
  'light.ledger': {
    answered: [
      {
        about: 'what is planned for it, and a reading from before the show, which says nothing of it',
        first: planned,
        input: known => ({ work: known.pans }),
        output: known => ({
          ...spent,
          today: '2031-03-14',
          spans: [
            {
              first: '2031-04-01',
              last: '2031-04-28',
              days: 28,
              exhibition: known.show,
              title: 'Low Water',
              words: 'Room 1, north',
              basis: 'planned',
              lux: 50,
              hours: 224,
              unknownHours: 0,
              luxHours: 11_200,
              uv: null,
              uvHours: 0,
              uvDose: 0,
            },
          ],
          readings: [
            {
              id: anyId,
              at: read.at,
              points: read.points,
              lux: 61.5,
              uv: 12,
              uvArea: null,
              meter: 'meter 2',
              note: '',
              recordedAt: anyMoment,
              recordedBy: by,
              struck: null,
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: nowhere }), code: 'not-found', field: 'work' },
    ],
  },
  'light.list': {
    answered: [
      {
        about: 'the works found by a word, with their share',
        first: planned,
        input: known => ({ exhibition: known.show, words: 'salt' }),
        output: known => ({
          lines: [{ id: known.pans, number: 'L-1.1', title: 'Salt pans', running: '', shows: ['Low Water'], ...spent }],
          total: 1,
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
    ],
  },
}
