/** Records of damage: found, told, done, closed, opened again. */
import type { damageArea } from '../../../src/contract/areas/damage.ts'
import type { Name } from '../../../src/contract/contract.ts'
import { type Known, onePixel } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf } from './types.ts'

const nowhere = 'zzzzzz'
const by = 'Tamsin Oake'
/** The id that an answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made

type Calls = readonly (readonly [Name, unknown])[]
type Earlier = readonly unknown[]
/** Every chain begins with the record that it is about. */
const damage = (earlier: Earlier) => idOf(earlier[0])

const foundAt = '2031-03-14T10:05:00.000Z'
const reportedAt = '2031-03-14T10:20:00.000Z'
const found = {
  foundAt,
  reportedAt,
  reporter: 'Bo Lind',
  how: 'caught on a trolley',
  circumstances: 'At the east wall.',
  by,
}
const begun = (known: Known): Calls => [['damage.add', { work: known.pans, ...found, reference: 'D-0007' }]]
/** By hand: 24 hours after it was found; its owner was told half an hour after it. */
const due = '2031-03-15T10:05:00.000Z'

const ownerTold = {
  kind: 'owner told' as const,
  at: '2031-03-14T10:35:00.000Z',
  whom: 'Ines Maro',
  how: 'by telephone',
  by,
}
const treated = {
  kind: 'action' as const,
  at: '2031-03-14T11:00:00.000Z',
  said: 'Laid flat in the store, nothing treated.',
  by,
}
const told = (known: Known): Calls => [
  ...begun(known),
  ['damage.say', (earlier: Earlier) => ({ damage: damage(earlier), ...ownerTold })],
]
/** With a photograph in a report, its owner told, and what was done. */
const complete = (known: Known): Calls => [
  ...told(known),
  ['condition.add', { work: known.pans, kind: 'check', examinedAt: reportedAt, examiner: by }],
  ['condition.addPhoto', (earlier: Earlier) => ({ report: idOf(earlier[2]), handle: '$1' })],
  ['damage.say', (earlier: Earlier) => ({ damage: damage(earlier), kind: 'report', report: idOf(earlier[2]), by })],
  ['damage.say', (earlier: Earlier) => ({ damage: damage(earlier), ...treated })],
]
const strokes = [[100, 200, 300, 100, 500, 220]]
const signing = (role: 'registrar' | 'courier', name: string) => (earlier: Earlier) => ({
  report: idOf(earlier[2]),
  ...{ role, name, strokes },
})
/** What it shows can be lost no more. */
const signed = (known: Known): Calls => [
  ...complete(known),
  [
    'condition.update',
    (earlier: Earlier) => ({ id: idOf(earlier[2]), changes: { note: { was: '', to: 'A joint has opened, 2 mm.' } } }),
  ],
  ['condition.sign', signing('registrar', by)],
  ['condition.sign', signing('courier', 'Bo Lind')],
  ['condition.complete', (earlier: Earlier) => ({ report: idOf(earlier[2]) })],
]
const closedOn = '2031-03-14T11:30:00.000Z'
const closed = (known: Known): Calls => [
  ...signed(known),
  [
    'damage.close',
    (earlier: Earlier) => ({ damage: damage(earlier), why: 'its owner agrees to the journey', at: closedOn, by }),
  ],
]
const corner = [{ name: 'corner.png', bytes: onePixel }]

const noReport = {
  code: 'no-report',
  text: 'No condition report belongs to it: begin one, or link one, and put its photographs there.',
}
const noAction = { code: 'no-action', text: 'Nobody has said what was done about it.' }

const head = (known: Known) => ({
  id: anyId,
  reference: 'D-0007',
  work: known.pans,
  workTitle: 'Salt pans',
  workNumber: 'L-1.1',
  lender: 'Quay Collection',
  lent: true,
  foundAt,
  reportedAt,
  reporter: 'Bo Lind',
  how: 'caught on a trolley',
  circumstances: 'At the east wall.',
  recordedAt: anyMoment,
  recordedBy: by,
  closedAt: null,
})
const toldSoon = { due, toldAt: ownerTold.at, waited: 0.5, late: 0, within: 24 }

export const damageExamples: ExamplesOf<keyof typeof damageArea> = {
  'damage.list': {
    answered: [
      {
        about: 'an open one with what it lacks, and the reference that goes on from it',
        first: told,
        input: known => ({ exhibition: known.show, words: 'trolley d-0007', state: 'open' }),
        output: known => ({
          lines: [{ ...head(known), clock: toldSoon, lacks: [noReport, noAction] }],
          total: 1,
          open: 1,
          next: 'D-0008',
        }),
      },
      {
        about: 'none in a catalogue without damage, and the first reference',
        input: () => ({}),
        output: () => ({ lines: [], total: 0, open: 0, next: 'D-0001' }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: nowhere }), code: 'not-found', field: 'work' },
      {
        about: 'a show that there is not',
        input: () => ({ exhibition: nowhere }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'damage.get': {
    answered: [
      {
        about: 'one of which the owner was told half an hour after it was found',
        first: told,
        input: (_, earlier) => ({ id: damage(earlier) }),
        output: known => ({
          ...head(known),
          clock: toldSoon,
          lacks: [noReport, noAction],
          words: [
            {
              id: anyId,
              kind: 'owner told',
              at: ownerTold.at,
              whom: 'Ines Maro',
              how: 'by telephone',
              said: '',
              report: null,
              strikes: null,
              struck: null,
              recordedAt: anyMoment,
              recordedBy: by,
            },
          ],
          reports: [],
          movedFirst: null,
        }),
      },
    ],
    refused: [{ about: 'one that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
  'damage.add': {
    answered: [
      {
        about: 'a record under the next reference of the house',
        first: begun,
        input: known => ({ work: known.causeway, ...found }),
        output: () => ({ id: anyId, reference: 'D-0008' }),
      },
    ],
    refused: [
      {
        about: 'a reference that was used, in other letters',
        first: begun,
        input: known => ({ work: known.causeway, ...found, reference: 'd-0007' }),
        code: 'same-reference',
        field: 'reference',
      },
      {
        about: 'dates reversed',
        input: known => ({ work: known.pans, ...found, reportedAt: '2031-03-14T10:00:00.000Z' }),
        code: 'dates-reversed',
        field: 'reportedAt',
      },
      {
        about: 'a moment that has not come',
        input: known => ({ work: known.pans, ...found, foundAt: '2031-03-15T10:00:00.000Z' }),
        code: 'in-the-future',
        field: 'foundAt',
      },
      {
        about: 'a report of another work',
        first: known => [['condition.add', { work: known.causeway, kind: 'check' }]],
        input: (known, earlier) => ({ work: known.pans, ...found, report: idOf(earlier[0]) }),
        code: 'bad-input',
        field: 'report',
      },
      {
        about: 'a work that there is not',
        input: () => ({ work: nowhere, ...found }),
        code: 'not-found',
        field: 'work',
      },
    ],
  },
  'damage.say': {
    answered: [
      {
        about: 'the entry that its owner was told',
        first: begun,
        input: (_, earlier) => ({ damage: damage(earlier), ...ownerTold }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'nobody who was told',
        first: begun,
        input: (_, earlier) => ({ damage: damage(earlier), ...ownerTold, whom: ' ' }),
        code: 'bad-input',
        field: 'whom',
      },
      {
        about: 'an owner told before anything was found',
        first: begun,
        input: (_, earlier) => ({ damage: damage(earlier), ...ownerTold, at: '2031-03-14T09:00:00.000Z' }),
        code: 'dates-reversed',
        field: 'at',
      },
      {
        about: 'a report that belongs to it already',
        files: corner,
        first: complete,
        input: (_, earlier) => ({ damage: damage(earlier), kind: 'report', report: idOf(earlier[2]), by }),
        code: 'linked-already',
        field: 'report',
      },
      {
        about: 'a record that is closed',
        files: corner,
        first: closed,
        input: (_, earlier) => ({ damage: damage(earlier), ...treated }),
        code: 'closed',
        field: 'damage',
      },
    ],
  },
  'damage.strike': {
    answered: [
      {
        about: 'the entry that says so',
        first: told,
        input: (_, earlier) => ({ word: idOf(earlier[1]), why: 'it was another lender', by }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'one that was struck already',
        first: known => [
          ...told(known),
          ['damage.strike', (earlier: Earlier) => ({ word: idOf(earlier[1]), why: 'it was another lender', by })],
        ],
        input: (_, earlier) => ({ word: idOf(earlier[1]), why: 'again', by }),
        code: 'corrected-already',
        field: 'word',
      },
      {
        about: 'an entry that there is not',
        input: () => ({ word: nowhere, why: 'never was', by }),
        code: 'not-found',
        field: 'word',
      },
    ],
  },
  'damage.close': {
    answered: [
      {
        about: 'one that has its photograph in a report that two have signed, its owner told and what was done',
        files: corner,
        first: signed,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'its owner agrees to the journey', by }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'one without a photograph',
        first: told,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'done', by }),
        code: 'incomplete',
        field: 'damage',
      },
      {
        about: 'one whose photographs stand in a draft',
        files: corner,
        first: complete,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'done', by }),
        code: 'incomplete',
        field: 'damage',
      },
      {
        about: 'a time before anything was done about it',
        files: corner,
        first: signed,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'done', at: '2031-03-14T10:59:00.000Z', by }),
        code: 'dates-reversed',
        field: 'at',
      },
      {
        about: 'one that is closed',
        files: corner,
        first: closed,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'again', by }),
        code: 'closed',
        field: 'damage',
      },
    ],
  },
  'damage.reopen': {
    answered: [
      {
        about: 'the entry that opens it again',
        files: corner,
        first: closed,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'the joint opens further', by }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'one that is open',
        first: begun,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'again', by }),
        code: 'open',
        field: 'damage',
      },
      {
        about: 'a time before it was closed',
        files: corner,
        first: closed,
        input: (_, earlier) => ({ damage: damage(earlier), why: 'again', at: treated.at, by }),
        code: 'dates-reversed',
        field: 'at',
      },
    ],
  },
}
