/** Planned movements: planned by hand and from a show, changed, put on another day, fulfilled. */
import { expect } from 'vitest'
import type { plannedArea } from '../../../src/contract/areas/planned.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

const nowhere = 'zzzzzz'
const by = 'Tamsin Oake'
const day = '2031-05-12'
/** The ids that the first answer gave. */
const idsOf = (answer: unknown) => (answer as { plans: { id: string }[] }).plans.map(({ id }) => id) // each such call answers with what it made
const idOf = (answer: unknown) => (answer as { id: string }).id // likewise

const arrived = (known: Known) =>
  ['movement.add', { works: [known.pans], to: known.room, at: '2031-03-02T09:10:00.000Z', by }] as const
const hanging = (known: Known) =>
  ['planned.add', { works: [known.pans], to: known.northFace, day, hour: '09:30', hands: 2 }] as const
const today = (known: Known) =>
  ['planned.add', { works: [known.pans], to: known.northFace, day: '2031-03-14' }] as const
const done = (known: Known) =>
  ['movement.add', { works: [known.pans], to: known.northFace, at: '2031-03-14T09:10:00.000Z', by }] as const

const lineOf = (known: Known) => ({
  id: anyId,
  kind: 'work',
  thing: known.pans,
  number: 'L-1.1',
  title: 'Salt pans',
  fromWords: 'Room 1',
  place: known.northFace,
  words: 'Room 1, north',
  spot: '',
  day,
  hour: '09:30',
  method: '',
  people: '',
  hands: 2,
  reason: '',
  note: '',
  overdue: false,
  way: '',
  done: null,
  findings: [],
})

const notThere = { about: 'a planned movement that there is not', code: 'not-found' } as const

export const plannedExamples: ExamplesOf<keyof typeof plannedArea> = {
  'planned.list': {
    answered: [
      {
        about: 'the one that is planned, and how many works on walls are neither there nor planned to be',
        first: known => [arrived(known), hanging(known)],
        input: known => ({ exhibition: known.show, words: 'salt north' }),
        output: known => ({ lines: [lineOf(known)], total: 1, overdue: 0, toPlan: 1 }),
      },
      {
        about: 'what is to settle: a work that never came, planned to go to two places on one day',
        first: known => [hanging(known), ['planned.add', { works: [known.pans], to: known.room, day }]],
        input: known => ({ thing: known.pans, from: day, to: day, order: 'place' }),
        output: known => {
          const note = (code: string, text: string) => ({
            severity: 'settle',
            code,
            subject: { kind: 'work', id: known.pans },
            text,
            figures: {},
          })
          const rest = 'no hour says which comes first. Give both their hours, or take one off.'
          return {
            lines: [
              {
                ...lineOf(known),
                fromWords: '',
                way: 'upright: by the doorway out of Room 1, 1\u2009000 mm to spare',
                place: known.room,
                words: 'Room 1',
                hour: '',
                hands: null,
                findings: [
                  note(
                    'plans-contradict',
                    `Salt pans is planned to go to Room 1, and that day to Room 1, north: ${rest}`,
                  ),
                  note(
                    'not-arrived',
                    'Salt pans has not arrived: the record has it in no place. Record its arrival first.',
                  ),
                ],
              },
              {
                ...lineOf(known),
                findings: [
                  note(
                    'plans-contradict',
                    `Salt pans is planned to go to Room 1, north, and that day to Room 1: ${rest}`,
                  ),
                ],
              },
            ],
            total: 2,
            overdue: 0,
            toPlan: 0,
          }
        },
      },
      {
        about: 'what a movement fulfilled, with where it was put down',
        first: known => [arrived(known), today(known), done(known)],
        input: () => ({ state: 'done' }),
        output: known => ({
          lines: [
            {
              ...lineOf(known),
              day: '2031-03-14',
              hour: '',
              hands: null,
              done: { movement: anyId, at: '2031-03-14T09:10:00.000Z', words: 'Room 1, north' },
            },
          ],
          total: 1,
          overdue: 0,
          toPlan: 0,
        }),
      },
    ],
    refused: [
      {
        about: 'days turned round',
        input: () => ({ from: '2031-05-12', to: '2031-05-11' }),
        code: 'dates-reversed',
        field: 'to',
      },
      {
        about: 'a show that there is not',
        input: () => ({ exhibition: nowhere }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'planned.check': {
    answered: [
      {
        about: 'that it stands there already',
        first: known => [arrived(known)],
        input: known => ({ works: [known.pans ?? ''], to: known.room ?? '', day }),
        output: known => ({
          notes: [
            {
              severity: 'settle',
              code: 'there-already',
              subject: { kind: 'work', id: known.pans },
              text: expect.stringMatching(
                /^Salt pans is at Room 1 already, since 2 March 2031, .*\. Take this off the plan, or plan where it goes\.$/,
              ),
              figures: {},
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'nothing that is to be moved',
        input: known => ({ to: known.room, day }),
        code: 'bad-input',
        field: 'works',
      },
    ],
  },
  'planned.add': {
    answered: [
      {
        about: 'one planned movement for each of two works',
        input: known => ({ works: [known.pans ?? '', known.causeway ?? ''], to: known.northFace ?? '', day }),
        output: () => ({ plans: [{ id: anyId }, { id: anyId }] }),
      },
    ],
    refused: [
      {
        about: 'a day that is over',
        input: known => ({ works: [known.pans], to: known.northFace, day: '2031-03-13' }),
        code: 'in-the-past',
        field: 'day',
      },
      {
        about: 'an hour that no clock shows',
        input: known => ({ works: [known.pans], to: known.northFace, day, hour: '24:10' }),
        code: 'bad-input',
        field: 'hour',
      },
      {
        about: 'a lift, which is on the way',
        first: () => [['location.add', { kind: 'lift', name: 'Goods lift' }]],
        input: (known, earlier) => ({ works: [known.pans], to: idOf(earlier[0]), day }),
        code: 'bad-input',
        field: 'to',
      },
      {
        about: 'a crate put into itself',
        first: () => [['location.add', { kind: 'crate', name: 'Crate 5' }]],
        input: (_, earlier) => ({ crates: [idOf(earlier[0])], to: idOf(earlier[0]), day }),
        code: 'inside-itself',
        field: 'to',
      },
    ],
  },
  'planned.fromShow': {
    answered: [
      {
        about: 'the two works on walls, of which one is planned already',
        first: known => [hanging(known)],
        input: known => ({ exhibition: known.show ?? '', day, people: 'Ulla Brandt', hands: 2 }),
        output: () => ({ plans: [{ id: anyId }] }),
      },
    ],
    refused: [
      {
        about: 'a show without a work on a wall',
        input: known => ({ exhibition: known.other, day }),
        code: 'nothing-to-plan',
        field: null,
      },
      {
        about: 'a show that is closed',
        input: known => ({ exhibition: known.closed, day }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
    ],
  },
  'planned.update': {
    answered: [
      {
        about: 'what was changed, and what somebody else had changed meanwhile',
        first: known => [hanging(known)],
        input: (known, earlier) => ({
          id: idsOf(earlier[0])[0] ?? '',
          changes: { to: { was: known.northFace ?? '', to: known.room ?? '' }, hands: { was: 3, to: 4 } },
        }),
        output: () => ({
          saved: ['to'],
          clashes: [{ code: 'clash', id: anyId, field: 'hands', was: 3, yours: 4, theirs: 2 }],
        }),
      },
    ],
    refused: [
      { ...notThere, input: () => ({ id: nowhere, changes: {} }), field: 'id' },
      {
        about: 'one that a movement on record fulfils',
        first: known => [arrived(known), today(known), done(known)],
        input: (_, earlier) => ({ id: idsOf(earlier[1])[0], changes: { note: { was: '', to: 'x' } } }),
        code: 'done-already',
        field: 'id',
      },
    ],
  },
  'planned.setDay': {
    answered: [
      {
        about: 'that it is on the next day',
        first: known => [hanging(known)],
        input: (_, earlier) => ({ ids: idsOf(earlier[0]), day: '2031-05-13' }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a day that is over',
        first: known => [hanging(known)],
        input: (_, earlier) => ({ ids: idsOf(earlier[0]), day: '2031-03-01' }),
        code: 'in-the-past',
        field: 'day',
      },
      { ...notThere, input: () => ({ ids: [nowhere], day }), field: 'ids.0' },
    ],
  },
  'planned.remove': {
    answered: [
      {
        about: 'that it is off the plan',
        first: known => [hanging(known)],
        input: (_, earlier) => ({ ids: idsOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ ...notThere, input: () => ({ ids: [nowhere] }), field: 'ids.0' }],
  },
}
