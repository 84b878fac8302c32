/** Examples of the survey: what was measured of a room, in any order. */
import { expect } from 'vitest'
import type { Output } from '../../../src/contract/contract.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

const diagonal = (known: Known, value = 10_516) => ({ room: known.room, from: known.cornerA, to: known.cornerC, value })

const side = (wall: string, from: number, value: number) => ({
  key: `wall:${wall}`,
  id: null,
  kind: 'side',
  from,
  to: (from + 1) % 4,
  value,
  text: '',
  how: 'measured',
  used: true,
  at: expect.stringMatching(/^2031-/),
  by: '',
  note: '',
  fitted: value,
  residual: 0,
  standardised: null,
  checked: 0,
})

/** A wall is measured by its length in the table of walls; the measure that this leaves. */
const measured = (known: Known) =>
  [
    ['wall.update', { id: known.north, changes: { length: { was: 9140, to: 9150 } } }],
    ['survey.get', { room: known.room }],
  ] as const
function measureOf(earlier: readonly unknown[]): string {
  const { measures } = earlier[1] as Output<'survey.get'> // the answer of survey.get
  return measures.find(one => one.used && one.id !== null)?.id ?? ''
}

export const surveyExamples: ExamplesOf<'survey.get' | 'survey.add' | 'survey.update' | 'survey.remove'> = {
  'survey.get': {
    answered: [
      {
        about: 'the four sides of a room whose corners are taken as square, and the diagonal to measure next',
        input: known => ({ room: known.room }),
        output: known => ({
          corners: [
            [0, 0],
            [9140, 0],
            [9140, 5200],
            [0, 5200],
          ].map(at => ({ id: anyId, at, angle: expect.closeTo(90, 6) })),
          measures: [side(known.north, 0, 9140), side(known.east, 1, 5200), expect.anything(), expect.anything()],
          way: 'walked',
          closes: true,
          gap: 0,
          note: 'The walls close exactly.',
          redundancy: 0,
          open: 1,
          spread: null,
          suspects: [],
          bySquare: false,
          next: { kind: 'diagonal', from: 0, to: 2 },
          problems: [],
        }),
      },
    ],
    refused: [
      { about: 'a room that is not there', input: () => ({ room: 'zzzzzz' }), code: 'not-found', field: 'room' },
    ],
  },
  'survey.add': {
    answered: [
      {
        about: 'a diagonal from the first corner to the third',
        input: known => ({ ...diagonal(known), text: '10,516 m' }),
        output: () => ({ id: anyId }),
      },
      {
        about: 'the angle of a corner',
        input: known => ({ room: known.room, from: known.cornerB, to: null, value: 90.5 }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a length from a corner to itself',
        input: known => ({ ...diagonal(known), to: known.cornerA }),
        code: 'same-corner',
        field: 'to',
      },
      {
        about: 'a corner of another room',
        input: known => ({ ...diagonal(known), to: 'zzzzzz' }),
        code: 'not-found',
        field: 'to',
      },
      {
        about: 'an angle that no corner has',
        input: known => ({ room: known.room, from: known.cornerB, to: null, value: 360 }),
        code: 'no-angle',
        field: 'value',
      },
      {
        about: 'a length of nothing',
        input: known => diagonal(known, 0),
        code: 'bad-input',
        field: 'value',
      },
    ],
  },
  'survey.update': {
    answered: [
      {
        about: 'that a measure is put right',
        first: measured,
        input: (_, earlier) => ({
          id: measureOf(earlier),
          changes: { value: { was: 9150, to: 9151 }, used: { was: true, to: false } },
        }),
        output: () => ({ saved: ['value', 'used'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a measure that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'survey.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: measured,
        input: (_, earlier) => ({ id: measureOf(earlier) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a measure that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
}
