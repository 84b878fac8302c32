/** Receipts of loans: written, set right, told, and what is outstanding. The calls are on 14 March 2031. */
import type { receiptsArea } from '../../../src/contract/areas/receipts.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf, unknownField } from './types.ts'

const nowhere = 'zzzzzz'
const by = 'Tamsin Oake'
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made
type Earlier = readonly unknown[]

const lent = (known: Known) =>
  [
    ['loan.add', { party: known.lender, number: 'QC 2031/7', first: '2031-02-20', last: '2031-03-12' }],
    ['loan.addWorks', (earlier: Earlier) => ({ loan: idOf(earlier[0]), works: [known.pans, known.causeway] })],
  ] as const
const handed = { place: 'Dock', handedBy: 'Ines Farrow', receivedBy: by }
const pans = (known: Known) => ({ work: known.pans, condition: 'as when it left', crate: 'crate 5' })
const came = (known: Known) =>
  [
    ...lent(known),
    [
      'receipt.add',
      (earlier: Earlier) => ({
        loan: idOf(earlier[0]),
        kind: 'received',
        day: '2031-03-02',
        ...handed,
        works: [pans(known)],
        by,
      }),
    ],
  ] as const
const moved = (known: Known) =>
  [
    ...came(known),
    [
      'receipt.correct',
      (earlier: Earlier) => ({ receipt: idOf(earlier[2]), why: 'came a day later', day: '2031-03-03', by }),
    ],
  ] as const

const told = (known: Known) => ({
  id: anyId,
  number: 'R 2031-1',
  kind: 'received',
  day: '2031-03-02',
  ...handed,
  note: '',
  corrects: null,
  correctedBy: anyId,
  struck: false,
  why: '',
  recordedAt: anyMoment,
  recordedBy: by,
  works: [{ ...pans(known), number: 'L-1.1', title: 'Salt pans' }],
})
const right = (known: Known) => ({
  ...told(known),
  number: 'R 2031-2',
  day: '2031-03-03',
  corrects: anyId,
  correctedBy: null,
  why: 'came a day later',
})
const here = { state: 'here', since: '2031-03-03', days: 11, late: 2 }
const toCome = { state: 'to come', since: '2031-02-20', days: 22, late: 2 }

export const receiptsExamples: ExamplesOf<keyof typeof receiptsArea> = {
  'receipt.list': {
    answered: [
      {
        about: 'a receipt and what sets it right, the next number, and where each work stands',
        first: moved,
        input: (_, earlier) => ({ loan: idOf(earlier[0]) }),
        output: known => ({
          receipts: [told(known), right(known)],
          works: [
            { work: known.pans, ...here, next: ['sent', 'acknowledged'] },
            { work: known.causeway, ...toCome, next: ['received'] },
          ],
          next: 'R 2031-3',
          today: '2031-03-14',
        }),
      },
    ],
    refused: [
      { about: 'a loan that there is not', input: () => ({ loan: nowhere }), code: 'not-found', field: 'loan' },
    ],
  },
  'receipt.ofWork': {
    answered: [
      {
        about: 'the receipts that name the work, with their loan',
        first: moved,
        input: known => ({ work: known.pans }),
        output: known => {
          const loan = { loan: anyId, loanNumber: 'QC 2031/7', partyName: 'Quay Collection', way: 'in' }
          return {
            receipts: [
              { ...told(known), ...loan },
              { ...right(known), ...loan },
            ],
          }
        },
      },
      {
        about: 'none of a work that none names',
        first: moved,
        input: known => ({ work: known.causeway }),
        output: () => ({ receipts: [] }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: nowhere }), code: 'not-found', field: 'work' },
    ],
  },
  'receipt.outstanding': {
    answered: [
      {
        about: 'what is longest outstanding first; not a loan that has not begun',
        first: known => [
          ...moved(known),
          ['loan.add', { party: known.lender, number: 'QC 2031/8', first: '2031-05-01' }],
          ['loan.addWorks', (earlier: Earlier) => ({ loan: idOf(earlier[4]), works: [known.raking] })],
        ],
        input: () => ({}),
        output: known => {
          const loan = {
            loan: anyId,
            loanNumber: 'QC 2031/7',
            partyName: 'Quay Collection',
            way: 'in',
            last: '2031-03-12',
          }
          return {
            lines: [
              { ...loan, work: known.causeway, number: 'L-1.2', title: 'Causeway', ...toCome },
              { ...loan, work: known.pans, number: 'L-1.1', title: 'Salt pans', ...here },
            ],
            today: '2031-03-14',
          }
        },
      },
    ],
    refused: [unknownField],
  },
  'receipt.add': {
    answered: [
      {
        about: 'the new receipt with the next number of the house’s own kind',
        first: known => [
          ...lent(known),
          [
            'receipt.add',
            (earlier: Earlier) => ({
              loan: idOf(earlier[0]),
              kind: 'received',
              number: 'Dock 0099',
              day: '2031-03-02',
              works: [pans(known)],
              by,
            }),
          ],
        ],
        input: (known, earlier) => ({
          loan: idOf(earlier[0]),
          kind: 'sent',
          day: '2031-03-12',
          works: [{ work: known.pans }],
          by,
        }),
        output: () => ({ id: anyId, number: 'Dock 0100' }),
      },
    ],
    refused: [
      {
        about: 'a number that another receipt has, written otherwise',
        first: came,
        input: (known, earlier) => ({
          loan: idOf(earlier[0]),
          kind: 'received',
          number: 'r2031 - 01',
          works: [{ work: known.causeway }],
          by,
        }),
        code: 'number-taken',
        field: 'number',
      },
      {
        about: 'a day that is not yet',
        first: lent,
        input: (known, earlier) => ({
          loan: idOf(earlier[0]),
          kind: 'received',
          day: '2031-03-15',
          works: [{ work: known.pans }],
          by,
        }),
        code: 'in-the-future',
        field: 'day',
      },
      {
        about: 'a work sent back that never came',
        first: came,
        input: (known, earlier) => ({
          loan: idOf(earlier[0]),
          kind: 'sent',
          works: [{ work: known.pans }, { work: known.causeway }],
          by,
        }),
        code: 'out-of-order',
        field: 'works',
      },
      {
        about: 'a work that is not in the loan',
        first: lent,
        input: (known, earlier) => ({
          loan: idOf(earlier[0]),
          kind: 'received',
          works: [{ work: known.pans }, { work: known.raking }],
          by,
        }),
        code: 'not-in-the-loan',
        field: 'works.1.work',
      },
      {
        about: 'no work',
        first: lent,
        input: (_, earlier) => ({ loan: idOf(earlier[0]), kind: 'received', works: [], by }),
        code: 'bad-input',
        field: 'works',
      },
      {
        about: 'a loan that there is not',
        input: known => ({ loan: nowhere, kind: 'received', works: [{ work: known.pans }], by }),
        code: 'not-found',
        field: 'loan',
      },
    ],
  },
  'receipt.correct': {
    answered: [
      {
        about: 'the receipt that strikes another',
        first: came,
        input: (_, earlier) => ({ receipt: idOf(earlier[2]), why: 'of another house', struck: true, by }),
        output: () => ({ id: anyId, number: 'R 2031-2' }),
      },
    ],
    refused: [
      {
        about: 'a receipt that was set right already',
        first: moved,
        input: (_, earlier) => ({ receipt: idOf(earlier[2]), why: 'again', day: '2031-03-04', by }),
        code: 'corrected-already',
        field: 'receipt',
      },
      {
        about: 'a correction that does not say why',
        first: came,
        input: (_, earlier) => ({ receipt: idOf(earlier[2]), why: ' ', struck: true, by }),
        code: 'bad-input',
        field: 'why',
      },
      {
        about: 'a day after the work was sent back',
        first: known => [
          ...came(known),
          [
            'receipt.add',
            (earlier: Earlier) => ({
              loan: idOf(earlier[0]),
              kind: 'sent',
              day: '2031-03-10',
              works: [{ work: known.pans }],
              by,
            }),
          ],
        ],
        input: (_, earlier) => ({ receipt: idOf(earlier[2]), why: 'came later', day: '2031-03-11', by }),
        code: 'out-of-order',
        field: 'day',
      },
      {
        about: 'a receipt that there is not',
        input: () => ({ receipt: nowhere, why: 'x' }),
        code: 'not-found',
        field: 'receipt',
      },
    ],
  },
}
