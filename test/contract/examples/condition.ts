/** Condition reports: drafted, signed by two, complete, compared, set right by another. */
import { expect } from 'vitest'
import type { conditionArea } from '../../../src/contract/areas/condition.ts'
import type { Name } from '../../../src/contract/contract.ts'
import { vocabulary } from '../../../src/record/condition/vocabulary.ts'
import { type Known, onePixel } from '../fixture.ts'
import { anyId, type ExamplesOf, unknownField } from './types.ts'

const nowhere = 'zzzzzz'
/** The id that an answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made

type Calls = readonly (readonly [Name, unknown])[]
type Earlier = readonly unknown[]
/** Every chain begins with the report that it is about. */
const report = (earlier: Earlier) => idOf(earlier[0])

const at = '2031-03-02T09:10:00.000Z'
const begin = (known: Known): Calls => [
  ['condition.add', { work: known.pans, kind: 'incoming', examinedAt: at, examiner: 'Tamsin Oake' }],
]
const stain = {
  form: 'area' as const,
  points: [
    { x: 100, y: 100 },
    { x: 130, y: 100 },
    { x: 130, y: 140 },
  ],
}
const mark = { form: 'mark' as const, points: [{ x: 470, y: 610 }] }
const marked = (known: Known): Calls => [
  ...begin(known),
  [
    'condition.addFinding',
    (earlier: Earlier) => ({ report: report(earlier), ...stain, term: 'paper.stain', age: 'old', severity: 'slight' }),
  ],
]
const strokes = [[100, 200, 300, 100, 500, 220]]
const oake = { role: 'registrar' as const, name: 'Tamsin Oake', strokes }
const signedOnce = (known: Known): Calls => [
  ...marked(known),
  ['condition.sign', (earlier: Earlier) => ({ report: report(earlier), ...oake })],
]
const signed = (known: Known): Calls => [
  ...signedOnce(known),
  ['condition.sign', (earlier: Earlier) => ({ report: report(earlier), role: 'courier', name: 'Bo Lind', strokes })],
]
const complete = (known: Known): Calls => [
  ...signed(known),
  ['condition.complete', (earlier: Earlier) => ({ report: report(earlier) })],
]
const photographed = (known: Known): Calls => [
  ...marked(known),
  ['condition.addPhoto', (earlier: Earlier) => ({ report: report(earlier), handle: '$1' })],
]
const corner = { name: 'corner.png', bytes: onePixel }
const photo = (earlier: Earlier) => idOf(earlier[2])

const word = { material: 'frame' as const, word: 'lifting veneer', meaning: 'thin wood that parts from the core' }

const head = (known: Known) => ({
  id: anyId,
  work: known.pans,
  workTitle: 'Salt pans',
  workNumber: 'L-1.1',
  kind: 'incoming',
  examinedAt: at,
  place: '',
  examiner: 'Tamsin Oake',
  packing: '',
  note: '',
  backPicture: null,
  overall: 'slight',
  completeAt: null,
  corrects: null,
  correctedBy: null,
  why: '',
})

export const conditionExamples: ExamplesOf<keyof typeof conditionArea> = {
  'condition.words': {
    answered: [
      {
        about: 'what the program brings, and a word of the house after it',
        first: () => [['condition.addWord', word]],
        input: () => ({}),
        output: () => ({
          words: [...vocabulary.map(each => ({ ...each, own: false })), { key: anyId, ...word, own: true }],
        }),
      },
    ],
    refused: [unknownField],
  },
  'condition.addWord': {
    answered: [{ about: 'the new word', input: () => word, output: () => ({ id: anyId }) }],
    refused: [
      {
        about: 'a word that is there',
        input: () => ({ ...word, word: 'Open Joint' }),
        code: 'same-name',
        field: 'word',
      },
    ],
  },
  'condition.removeWord': {
    answered: [
      {
        about: 'that it is gone',
        first: () => [['condition.addWord', word]],
        input: (_, earlier) => ({ id: report(earlier) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a word that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' },
      {
        about: 'a word that a finding is called by',
        first: known => [
          ['condition.addWord', word],
          ['condition.add', { work: known.pans, kind: 'check' }],
          [
            'condition.addFinding',
            (earlier: Earlier) => ({ report: idOf(earlier[1]), ...mark, term: idOf(earlier[0]) }),
          ],
        ],
        input: (_, earlier) => ({ id: report(earlier) }),
        code: 'in-use',
        field: 'id',
      },
    ],
  },
  'condition.list': {
    answered: [
      {
        about: 'a report that one person has signed',
        first: signedOnce,
        input: known => ({ work: known.pans }),
        output: known => ({
          reports: [{ ...head(known), findings: 1, signedBy: [{ role: 'registrar', name: 'Tamsin Oake' }] }],
          total: 1,
          drafts: 1,
        }),
      },
      {
        about: 'none of a show whose works nobody has examined',
        first: signedOnce,
        input: known => ({ exhibition: known.other ?? '' }),
        output: () => ({ reports: [], total: 0, drafts: 0 }),
      },
      {
        about: 'found by words of its work in any case; of that name a draft, nothing complete',
        first: signedOnce,
        input: () => ({ words: 'PANS salt', state: 'complete' }),
        output: () => ({ reports: [], total: 0, drafts: 1 }),
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
  'condition.get': {
    answered: [
      {
        about: 'all of it, and that nobody has signed it',
        first: marked,
        input: (_, earlier) => ({ id: report(earlier) }),
        output: known => ({
          ...head(known),
          picture: known.pansPictureHash,
          width: 480,
          height: 620,
          depth: null,
          opening: null,
          behind: null,
          signedBy: [],
          findings: [
            {
              id: anyId,
              number: 1,
              side: 'front',
              term: 'paper.stain',
              word: 'stain',
              ...stain,
              age: 'old',
              severity: 'slight',
              stable: '',
              note: '',
              across: null,
              follows: null,
              third: 'upper left',
              // A right angle of 30 and 40: 50 across, 120 around, 600 mm².
              reach: 50,
              along: 120,
              area: 600,
            },
          ],
          photos: [],
          signatures: [],
          content: expect.stringMatching(/^[0-9a-f]{64}$/),
          lacks: [{ code: 'signatures', finding: null, text: 'Nobody has signed this. It takes two people.' }],
        }),
      },
    ],
    refused: [{ about: 'a report that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
  'condition.compare': {
    answered: [
      {
        about: 'the stain as before, and a mark that is new',
        first: known => [
          ...complete(known),
          ['condition.add', { work: known.pans, kind: 'outgoing', examinedAt: '2031-03-05T10:00:00.000Z' }],
          ['condition.addFinding', (earlier: Earlier) => ({ report: idOf(earlier[5]), ...stain, term: 'paper.stain' })],
          [
            'condition.addFinding',
            (earlier: Earlier) => ({
              report: idOf(earlier[5]),
              ...mark,
              term: 'frame.open-joint',
              across: 2,
              age: 'new',
            }),
          ],
        ],
        input: (_, earlier) => ({ before: report(earlier), after: idOf(earlier[5]) }),
        output: () => ({
          lines: [
            {
              outcome: 'same',
              before: anyId,
              after: anyId,
              by: 'place',
              remarks: [],
              text: 'stain: as before, 50 mm.',
            },
            {
              outcome: 'new',
              before: null,
              after: anyId,
              by: null,
              remarks: [],
              text: 'open joint, 2 mm: stands in no earlier report.',
            },
          ],
          counts: { same: 1, grown: 0, new: 1, notSeen: 0 },
          near: 20,
          grown: 3,
        }),
      },
    ],
    refused: [
      {
        about: 'a report with itself',
        first: begin,
        input: (_, earlier) => ({ before: report(earlier), after: report(earlier) }),
        code: 'bad-input',
        field: 'after',
      },
      {
        about: 'the later one named first',
        first: known => [
          ...begin(known),
          ['condition.add', { work: known.pans, kind: 'check', examinedAt: '2031-03-01T09:00:00.000Z' }],
        ],
        input: (_, earlier) => ({ before: report(earlier), after: idOf(earlier[1]) }),
        code: 'dates-reversed',
        field: 'after',
      },
    ],
  },
  'condition.add': {
    answered: [
      {
        about: 'a draft at the size of the work',
        input: known => ({ work: known.pans, kind: 'incoming' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a work without a size, on which nothing can be measured',
        input: known => ({ work: known.loose, kind: 'incoming' }),
        code: 'no-size',
        field: 'work',
      },
      {
        about: 'a day that has not come',
        input: known => ({ work: known.pans, kind: 'incoming', examinedAt: '2031-05-01T09:00:00Z' }),
        code: 'in-the-future',
        field: 'examinedAt',
      },
    ],
  },
  'condition.update': {
    answered: [
      {
        about: 'the place, and the note as a clash with what stands there',
        first: known => [
          ...begin(known),
          [
            'condition.update',
            (earlier: Earlier) => ({ id: report(earlier), changes: { note: { was: '', to: 'theirs' } } }),
          ],
        ],
        input: (_, earlier) => ({
          id: report(earlier),
          changes: { place: { was: '', to: 'Room 1' }, note: { was: '', to: 'mine' } },
        }),
        output: () => ({
          saved: ['place'],
          clashes: [{ code: 'clash', id: anyId, field: 'note', was: '', yours: 'mine', theirs: 'theirs' }],
        }),
      },
    ],
    refused: [
      {
        about: 'a complete report',
        first: complete,
        input: (_, earlier) => ({ id: report(earlier), changes: { note: { was: '', to: 'later' } } }),
        code: 'complete',
        field: 'id',
      },
    ],
  },
  'condition.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: marked,
        input: (_, earlier) => ({ id: report(earlier) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a report that somebody has signed',
        first: signedOnce,
        input: (_, earlier) => ({ id: report(earlier) }),
        code: 'recorded',
        field: 'id',
      },
      {
        about: 'a complete report',
        first: complete,
        input: (_, earlier) => ({ id: report(earlier) }),
        code: 'complete',
        field: 'id',
      },
    ],
  },
  'condition.addFinding': {
    answered: [
      {
        about: 'the new finding',
        first: begin,
        input: (_, earlier) => ({ report: report(earlier), ...mark, across: 2 }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a place beside the work',
        first: begin,
        input: (_, earlier) => ({ report: report(earlier), form: 'mark', points: [{ x: 481, y: 10 }] }),
        code: 'bad-input',
        field: 'points',
      },
      {
        about: 'a side of a work whose depth nobody has measured',
        first: begin,
        input: (_, earlier) => ({ report: report(earlier), ...mark, side: 'left' }),
        code: 'no-depth',
        field: 'side',
      },
      {
        about: 'a word that there is not',
        first: begin,
        input: (_, earlier) => ({ report: report(earlier), ...mark, term: 'paper.nonsense' }),
        code: 'bad-input',
        field: 'term',
      },
      {
        about: 'one more in a complete report',
        first: complete,
        input: (_, earlier) => ({ report: report(earlier), ...mark }),
        code: 'complete',
        field: 'report',
      },
      {
        about: 'one that goes on from a draft’s',
        first: marked,
        input: (_, earlier) => ({ report: report(earlier), ...mark, follows: idOf(earlier[1]) }),
        code: 'bad-input',
        field: 'follows',
      },
    ],
  },
  'condition.updateFinding': {
    answered: [
      {
        about: 'its severity and its place',
        first: marked,
        input: (_, earlier) => ({
          id: idOf(earlier[1]),
          changes: { severity: { was: 'slight', to: 'marked' }, shape: { was: stain, to: mark } },
        }),
        output: () => ({ saved: ['severity', 'shape'], clashes: [] }),
      },
      {
        about: 'a clash of its place, which is one field',
        first: marked,
        input: (_, earlier) => ({ id: idOf(earlier[1]), changes: { shape: { was: mark, to: mark } } }),
        output: () => ({
          saved: [],
          clashes: [{ code: 'clash', id: anyId, field: 'shape', was: mark, yours: mark, theirs: stain }],
        }),
      },
    ],
    refused: [
      {
        about: 'an area of two points',
        first: marked,
        input: (_, earlier) => ({
          id: idOf(earlier[1]),
          changes: { shape: { was: stain, to: { form: 'area', points: stain.points.slice(0, 2) } } },
        }),
        code: 'bad-input',
        field: 'changes.shape.to',
      },
      {
        about: 'a finding of a complete report',
        first: complete,
        input: (_, earlier) => ({ id: idOf(earlier[1]), changes: { age: { was: 'old', to: 'new' } } }),
        code: 'complete',
        field: 'id',
      },
    ],
  },
  'condition.removeFinding': {
    answered: [
      {
        about: 'that it is gone',
        first: marked,
        input: (_, earlier) => ({ id: idOf(earlier[1]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a finding of a complete report',
        first: complete,
        input: (_, earlier) => ({ id: idOf(earlier[1]) }),
        code: 'complete',
        field: 'id',
      },
    ],
  },
  'condition.addPhoto': {
    answered: [
      {
        about: 'the photograph as kept, with the date of its file, as it has none of its own',
        first: begin,
        files: [corner],
        input: (_, earlier) => ({ report: report(earlier), handle: '$1', changedAt: at }),
        output: known => ({
          id: anyId,
          hash: known.pansPictureHash,
          widthPx: 1,
          heightPx: 1,
          takenAt: at,
          takenFrom: 'file',
          partial: false,
        }),
      },
    ],
    refused: [
      {
        about: 'the same photograph twice',
        first: photographed,
        files: [corner, corner],
        input: (_, earlier) => ({ report: report(earlier), handle: '$2' }),
        code: 'same-photograph',
        field: 'handle',
      },
      {
        about: 'a picture that is no picture',
        first: begin,
        files: [{ name: 'corner.jpg', bytes: new TextEncoder().encode('The corner, as I remember it.') }],
        input: (_, earlier) => ({ report: report(earlier), handle: '$1' }),
        code: 'no-picture',
        field: 'handle',
      },
      {
        about: 'a photograph for a complete report',
        first: complete,
        files: [corner],
        input: (_, earlier) => ({ report: report(earlier), handle: '$1' }),
        code: 'complete',
        field: 'report',
      },
    ],
  },
  'condition.updatePhoto': {
    answered: [
      {
        about: 'that all of it is saved',
        first: photographed,
        files: [corner],
        input: (_, earlier) => ({
          id: photo(earlier),
          changes: {
            shows: { was: '', to: 'the stain in raking light' },
            findings: { was: [], to: [idOf(earlier[1])] },
            takenAt: { was: null, to: at },
          },
        }),
        output: () => ({ saved: ['shows', 'findings', 'takenAt'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a finding that the report does not have',
        first: photographed,
        files: [corner],
        input: (_, earlier) => ({ id: photo(earlier), changes: { findings: { was: [], to: [nowhere] } } }),
        code: 'not-found',
        field: 'changes.findings.to',
      },
    ],
  },
  'condition.movePhoto': {
    answered: [
      {
        about: 'that it is the last',
        first: photographed,
        files: [corner],
        input: (_, earlier) => ({ id: photo(earlier), before: null }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a place before a photograph that there is not',
        first: photographed,
        files: [corner],
        input: (_, earlier) => ({ id: photo(earlier), before: nowhere }),
        code: 'not-found',
        field: 'before',
      },
    ],
  },
  'condition.removePhoto': {
    answered: [
      {
        about: 'that it is off',
        first: photographed,
        files: [corner],
        input: (_, earlier) => ({ id: photo(earlier) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a photograph that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' },
    ],
  },
  'condition.sign': {
    answered: [
      {
        about: 'the signature',
        first: marked,
        input: (_, earlier) => ({ report: report(earlier), ...oake }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'one without a name',
        first: marked,
        input: (_, earlier) => ({ report: report(earlier), ...oake, name: '  ' }),
        code: 'bad-input',
        field: 'name',
      },
      {
        about: 'a dot',
        first: marked,
        input: (_, earlier) => ({ report: report(earlier), ...oake, strokes: [[500, 100, 501, 100]] }),
        code: 'bad-input',
        field: 'strokes',
      },
      {
        about: 'a report that says nothing yet',
        first: begin,
        input: (_, earlier) => ({ report: report(earlier), ...oake }),
        code: 'incomplete',
        field: 'report',
      },
      {
        about: 'a complete report',
        first: complete,
        input: (_, earlier) => ({ report: report(earlier), ...oake }),
        code: 'complete',
        field: 'report',
      },
    ],
  },
  'condition.complete': {
    answered: [
      {
        about: 'that it is complete',
        first: signed,
        input: (_, earlier) => ({ report: report(earlier) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a report with one signature',
        first: signedOnce,
        input: (_, earlier) => ({ report: report(earlier) }),
        code: 'incomplete',
        field: 'report',
      },
      {
        about: 'one that was changed under its signatures',
        first: known => [
          ...signed(known),
          [
            'condition.update',
            (earlier: Earlier) => ({ id: report(earlier), changes: { note: { was: '', to: 'later' } } }),
          ],
        ],
        input: (_, earlier) => ({ report: report(earlier) }),
        code: 'incomplete',
        field: 'report',
      },
    ],
  },
  'condition.correct': {
    answered: [
      {
        about: 'a draft that refers to it',
        first: complete,
        input: (_, earlier) => ({ report: report(earlier), why: 'the stain is older' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a draft, which is simply changed',
        first: marked,
        input: (_, earlier) => ({ report: report(earlier), why: 'a slip' }),
        code: 'not-complete',
        field: 'report',
      },
    ],
  },
}
