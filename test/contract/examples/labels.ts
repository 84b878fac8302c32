/** Labels of the show's works: their words, sizes, places and stages. */
import type { labelsArea } from '../../../src/contract/areas/labels.ts'
import type { Known } from '../fixture.ts'
import type { ExamplesOf } from './types.ts'

const nowhere = 'zzzzzz'

/** 45 characters × 0.5 × 6.35 + 2 × 1.25 × 6.35 = 158.75, cut to 159; three lines: 3 × 1.35 × 6.35 + 15.875 = 41.6. */
const card = { width: 159, height: 42, ownWidth: null, ownHeight: null, ownGap: null, gap: 60 }
const unmade = { stage: '', stageAt: '', stageBy: '' }

function northOf(known: Known, placement: string | undefined) {
  return { placement, face: known.northFace, room: 'Room 1', wall: 'north' }
}

const pansWords = 'Ada Ruel\nSalt pans\netching on paper'

export const labelsExamples: ExamplesOf<keyof typeof labelsArea> = {
  'label.list': {
    answered: [
      {
        about: 'words of a person, suggested words, a place, and a gap that is too narrow for its label',
        first: known => [
          ['label.update', { entry: known.pansEntry, changes: { text: { was: '', to: 'Salt pans' } } }],
          ['placement.update', { id: known.pansPlace, changes: { labelSide: { was: '', to: 'right' } } }],
          [
            'placement.put',
            {
              exhibition: known.show,
              places: [
                {
                  entry: known.causewayEntry,
                  face: known.northFace,
                  x: 1971,
                  rule: 'face',
                  y: null,
                  was: { face: known.northFace, x: 2367, rule: 'face', y: null },
                },
              ],
            },
          ],
        ],
        input: known => ({ exhibition: known.show ?? '', unit: 'mm' as const }),
        output: known => ({
          labels: [
            {
              entry: known.pansEntry,
              work: known.pans,
              running: '',
              number: 'L-1.1',
              title: 'Salt pans',
              text: 'Salt pans',
              suggestion: pansWords,
              lines: ['Salt pans'],
              ...card,
              height: 25,
              ...unmade,
              placed: {
                ...northOf(known, known.pansPlace),
                side: 'right',
                centreY: 1370,
                // Right edge 1 140 + 240 = 1 380, next left edge 1 971 − 355 = 1 616: 236 of 60 + 159 + 40 = 259.
                troubles: [
                  'The gap right of L-1.1, to L-1.2, is too narrow for its label by 23 mm. On the left it would stand free.',
                ],
              },
            },
            {
              entry: known.causewayEntry,
              work: known.causeway,
              running: '',
              number: 'L-1.2',
              title: 'Causeway',
              text: '',
              suggestion: 'Ada Ruel\nCauseway\noil on canvas',
              lines: ['Ada Ruel', 'Causeway', 'oil on canvas'],
              ...card,
              ...unmade,
              placed: { ...northOf(known, known.causewayPlace), side: '', centreY: null, troubles: [] },
            },
            {
              entry: known.rakingEntry,
              work: known.raking,
              running: '',
              number: 'L-1.3',
              title: 'Raking',
              text: '',
              suggestion: 'unknown maker\nRaking\ngelatin silver print',
              lines: ['unknown maker', 'Raking', 'gelatin silver print'],
              ...card,
              ...unmade,
              placed: null,
            },
          ],
        }),
      },
      {
        about: 'that other words take back that a label was proofed',
        first: known => [
          ['label.setMany', { entries: [known.rakingEntry, known.causewayEntry], suggest: true }],
          ['label.setStage', { entries: [known.causewayEntry], to: 'proofed' }],
          [
            'label.update',
            {
              entry: known.causewayEntry,
              changes: { text: { was: 'Ada Ruel\nCauseway\noil on canvas', to: 'Causeway' } },
            },
          ],
          ['entry.remove', { entries: [known.pansEntry] }],
        ],
        input: known => ({ exhibition: known.show ?? '' }),
        output: known => ({
          labels: [
            {
              entry: known.causewayEntry,
              work: known.causeway,
              running: '',
              number: 'L-1.2',
              title: 'Causeway',
              text: 'Causeway',
              suggestion: 'Ada Ruel\nCauseway\noil on canvas',
              lines: ['Causeway'],
              ...card,
              height: 25,
              ...unmade,
              placed: {
                ...northOf(known, known.causewayPlace),
                side: '',
                centreY: null,
                troubles: ['L-1.2 has a label and no side for it yet. Choose left, right or below.'],
              },
            },
            {
              entry: known.rakingEntry,
              work: known.raking,
              running: '',
              number: 'L-1.3',
              title: 'Raking',
              text: 'unknown maker\nRaking\ngelatin silver print',
              suggestion: 'unknown maker\nRaking\ngelatin silver print',
              lines: ['unknown maker', 'Raking', 'gelatin silver print'],
              ...card,
              ...unmade,
              placed: null,
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: () => ({ exhibition: nowhere }),
        code: 'not-found',
        field: 'exhibition',
      },
    ],
  },
  'label.update': {
    answered: [
      {
        about: 'that words and size are saved',
        input: known => ({
          entry: known.pansEntry ?? '',
          changes: { text: { was: '', to: 'Salt pans' }, width: { was: null, to: 140 }, gap: { was: null, to: 80 } },
        }),
        output: () => ({ saved: ['text', 'width', 'gap'], clashes: [] }),
      },
      {
        about: 'a clash with what somebody else wrote meanwhile',
        first: known => [['label.update', { entry: known.pansEntry, changes: { text: { was: '', to: 'theirs' } } }]],
        input: known => ({ entry: known.pansEntry ?? '', changes: { text: { was: '', to: 'mine' } } }),
        output: known => ({
          saved: [],
          clashes: [{ code: 'clash', id: known.pansEntry, field: 'text', was: '', yours: 'mine', theirs: 'theirs' }],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that is in no show',
        input: () => ({ entry: nowhere, changes: {} }),
        code: 'not-found',
        field: 'entry',
      },
      {
        about: 'a card without width',
        input: known => ({ entry: known.pansEntry, changes: { width: { was: null, to: 0 } } }),
        code: 'bad-input',
        field: 'changes.width.to',
      },
    ],
  },
  'label.setMany': {
    answered: [
      {
        about: 'a side for those on a wall, and suggested words for all',
        input: known => ({
          entries: [known.pansEntry ?? '', known.rakingEntry ?? ''],
          side: 'right' as const,
          suggest: true as const,
        }),
        output: known => ({ changed: 2, notPlaced: [known.rakingEntry] }),
      },
    ],
    refused: [
      { about: 'nothing to do', input: known => ({ entries: [known.pansEntry] }), code: 'bad-input', field: null },
      {
        about: 'a work that is in no show',
        input: known => ({ entries: [known.pansEntry, nowhere], side: 'left' }),
        code: 'not-found',
        field: 'entries.1',
      },
    ],
  },
  'label.setStage': {
    answered: [
      {
        about: 'that it is printed',
        first: known => [['label.setMany', { entries: [known.pansEntry], suggest: true }]],
        input: known => ({ entries: [known.pansEntry ?? ''], to: 'printed' as const }),
        output: () => ({ changed: 1 }),
      },
    ],
    refused: [
      {
        about: 'a label that says nothing',
        first: known => [['label.setMany', { entries: [known.pansEntry], suggest: true }]],
        input: known => ({ entries: [known.pansEntry, known.causewayEntry], to: 'proofed' }),
        code: 'label-says-nothing',
        field: 'entries.1',
      },
    ],
  },
}
