/** Loans: agreements, people, works and what was agreed for each. */
import type { loansArea } from '../../../src/contract/areas/loans.ts'
import type { Known } from '../fixture.ts'
import { loanTermExamples } from './loan-terms.ts'
import { anyId, type ExamplesOf } from './types.ts'

const nowhere = 'zzzzzz'
const period = { first: '2031-03-10', last: '2031-07-20' }
const agreement = {
  number: 'QC 2031/7',
  purpose: 'Low Water',
  ...period,
  authoriser: 'Ada Quill, director',
  creditLine: 'Lent by the Quay Collection',
}
/** The id that an answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made
/** The ids that `loan.addWorks` gave. */
const firstOf = (answer: unknown) => (answer as { added: readonly { id: string }[] }).added[0]?.id ?? '' // likewise

type Earlier = readonly unknown[]
const addLoan = (known: Known) => ['loan.add', { party: known.lender, ...agreement }] as const
const lent = (known: Known) =>
  [
    addLoan(known),
    ['loan.addWorks', (earlier: Earlier) => ({ loan: idOf(earlier[0]), works: [known.pans, known.causeway] })],
  ] as const
const farrow = { name: 'Ines Farrow', role: 'registrar', reach: 'registrar@quay.example' }
const withFarrow = (known: Known) =>
  [...lent(known), ['loan.addContact', (earlier: Earlier) => ({ loan: idOf(earlier[0]), ...farrow })]] as const
const closed = (known: Known) =>
  [
    ...lent(known),
    [
      'loan.update',
      (earlier: Earlier) => ({ id: idOf(earlier[0]), changes: { closed: { was: '', to: '2031-03-12' } } }),
    ],
  ] as const

const received = (known: Known) =>
  [
    ...lent(known),
    [
      'receipt.add',
      (earlier: Earlier) => ({
        loan: idOf(earlier[0]),
        kind: 'received',
        works: [{ work: known.pans }],
        by: 'Tamsin Oake',
      }),
    ],
  ] as const

const head = (known: Known) => ({
  id: anyId,
  party: known.lender,
  partyName: 'Quay Collection',
  way: 'in',
  number: agreement.number,
  purpose: agreement.purpose,
  ...period,
  closed: '',
  works: 2,
})
const item = { item: '', value: null, insuredBy: '', note: '' }

export const loansExamples: ExamplesOf<keyof typeof loansArea> = {
  ...loanTermExamples,
  'loan.list': {
    answered: [
      {
        about: 'a lender with the loans, by number as people count',
        first: known => [
          ['loan.add', { party: known.lender, number: 'QC 10' }],
          ['loan.add', { party: known.lender, number: 'QC 2', way: 'out' }],
        ],
        input: () => ({}),
        output: known => {
          const empty = { ...head(known), purpose: '', first: '', last: '', works: 0 }
          const loans = [
            { ...empty, number: 'QC 2', way: 'out' },
            { ...empty, number: 'QC 10' },
          ]
          return { parties: [{ id: known.lender, name: 'Quay Collection', kind: 'lender', loans }], total: 2 }
        },
      },
      {
        about: 'nobody, where no lender, number or work is called so',
        first: lent,
        input: () => ({ words: 'quay nowhere' }),
        output: () => ({ parties: [], total: 1 }),
      },
      {
        about: 'a loan found by one of its works',
        first: lent,
        input: () => ({ words: 'causeway' }),
        output: known => ({
          parties: [{ id: known.lender, name: 'Quay Collection', kind: 'lender', loans: [head(known)] }],
          total: 1,
        }),
      },
    ],
    refused: [
      { about: 'words too long', input: () => ({ words: 'x'.repeat(501) }), code: 'bad-input', field: 'words' },
    ],
  },
  'loan.get': {
    answered: [
      {
        about: 'the agreement, its people and its works by item number',
        first: withFarrow,
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: known => ({
          ...head(known),
          agreed: '',
          authoriser: agreement.authoriser,
          creditLine: agreement.creditLine,
          note: '',
          contact: '',
          today: '2031-03-14',
          contacts: [{ id: anyId, ...farrow }],
          items: [
            {
              id: anyId,
              work: known.pans,
              number: 'L-1.1',
              title: 'Salt pans',
              maker: 'Ada Ruel',
              lender: known.lender,
              ...item,
            },
            {
              id: anyId,
              work: known.causeway,
              number: 'L-1.2',
              title: 'Causeway',
              maker: 'Ada Ruel',
              lender: known.lender,
              ...item,
            },
          ],
        }),
      },
    ],
    refused: [{ about: 'a loan that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
  'loan.periods': {
    answered: [
      {
        about: 'the show for which it begins too late and ends too early',
        first: known => [
          ['loan.add', { party: known.lender, number: 'QC 7', first: '2031-04-03', last: '2031-06-30' }],
          ['loan.addWorks', (earlier: readonly unknown[]) => ({ loan: idOf(earlier[0]), works: [known.raking] })],
        ],
        input: (_, earlier) => ({ loan: idOf(earlier[0]) }),
        output: known => ({
          shows: [
            {
              exhibition: known.show,
              title: 'Low Water',
              findings: [
                {
                  severity: 'settle',
                  code: 'loan-begins-late',
                  subject: { kind: 'work', id: known.raking },
                  text: 'L-1.3 is lent from 3 April 2031 on, by loan QC 7 of Quay Collection; the show opens on 1 April 2031, 2 days before. Ask for an earlier beginning, or hang it later.',
                  figures: { loan: anyId, first: '2031-04-03', opens: '2031-04-01', days: 2 },
                },
                {
                  severity: 'settle',
                  code: 'loan-ends-early',
                  subject: { kind: 'work', id: known.raking },
                  text: 'L-1.3 is lent until 30 June 2031, by loan QC 7 of Quay Collection; the show closes on 1 July 2031, one day later. Ask for a longer loan, or take it down before.',
                  figures: { loan: anyId, last: '2031-06-30', closes: '2031-07-01', days: 1 },
                },
              ],
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a loan that there is not', input: () => ({ loan: nowhere }), code: 'not-found', field: 'loan' },
    ],
  },
  'loan.ofWork': {
    answered: [
      {
        about: 'the loan, with what was agreed for the work',
        first: lent,
        input: known => ({ work: known.pans }),
        output: known => ({ loans: [{ ...head(known), item: '', value: null, insuredBy: '' }] }),
      },
      {
        about: 'none of a work that nobody lent',
        input: known => ({ work: known.loose }),
        output: () => ({ loans: [] }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: nowhere }), code: 'not-found', field: 'work' },
    ],
  },
  'loan.add': {
    answered: [
      { about: 'the new loan', input: known => ({ party: known.lender, ...agreement }), output: () => ({ id: anyId }) },
    ],
    refused: [
      {
        about: 'days reversed',
        input: known => ({ party: known.lender, number: '7', first: '2031-07-20', last: '2031-03-10' }),
        code: 'reversed',
        field: 'last',
      },
      {
        about: 'the number of another loan of this lender, written otherwise',
        first: known => [addLoan(known)],
        input: known => ({ party: known.lender, number: 'qc 2031 / 07' }),
        code: 'number-taken',
        field: 'number',
      },
      {
        about: 'no number',
        input: known => ({ party: known.lender, number: ' ' }),
        code: 'bad-input',
        field: 'number',
      },
      {
        about: 'a day that no calendar has',
        input: known => ({ party: known.lender, number: '7', first: '2031-02-30' }),
        code: 'bad-input',
        field: 'first',
      },
      {
        about: 'a lender that there is not',
        input: () => ({ party: nowhere, number: '7' }),
        code: 'not-found',
        field: 'party',
      },
    ],
  },
  'loan.update': {
    answered: [
      {
        about: 'what went through, and the clash of what somebody else wrote',
        first: known => [addLoan(known)],
        input: (_, earlier) => ({
          id: idOf(earlier[0]),
          changes: { last: { was: '2031-07-20', to: '2031-08-01' }, purpose: { was: 'High Water', to: 'Slack Water' } },
        }),
        output: () => ({
          saved: ['last'],
          clashes: [
            {
              code: 'clash',
              id: anyId,
              field: 'purpose',
              was: 'High Water',
              yours: 'Slack Water',
              theirs: 'Low Water',
            },
          ],
        }),
      },
      {
        about: 'a closed loan opened again',
        first: closed,
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { closed: { was: '2031-03-12', to: '' } } }),
        output: () => ({ saved: ['closed'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'an end before the beginning',
        first: known => [addLoan(known)],
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { last: { was: '2031-07-20', to: '2031-03-01' } } }),
        code: 'reversed',
        field: 'changes.last',
      },
      {
        about: 'the other side of a loan that there are receipts of',
        first: received,
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { way: { was: 'in', to: 'out' } } }),
        code: 'recorded',
        field: 'changes.way',
      },
      {
        about: 'a loan that is closed',
        first: closed,
        input: (_, earlier) => ({ id: idOf(earlier[0]), changes: { note: { was: '', to: 'late' } } }),
        code: 'loan-closed',
        field: 'id',
      },
    ],
  },
  'loan.remove': {
    answered: [
      {
        about: 'that it is gone',
        first: lent,
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a loan that there are receipts of',
        first: received,
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        code: 'recorded',
        field: 'id',
      },
      {
        about: 'a loan that is closed',
        first: closed,
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        code: 'loan-closed',
        field: 'id',
      },
    ],
  },
  'loan.addContact': {
    answered: [
      {
        about: 'the new person',
        first: known => [addLoan(known)],
        input: (_, earlier) => ({ loan: idOf(earlier[0]), name: 'Ines Farrow', role: 'registrar' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'nobody',
        first: known => [addLoan(known)],
        input: (_, earlier) => ({ loan: idOf(earlier[0]), name: '' }),
        code: 'bad-input',
        field: 'name',
      },
    ],
  },
  'loan.updateContact': {
    answered: [
      {
        about: 'what went through',
        first: withFarrow,
        input: (_, earlier) => ({ id: idOf(earlier[2]), changes: { role: { was: 'registrar', to: 'courier' } } }),
        output: () => ({ saved: ['role'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a person that there is not',
        input: () => ({ id: nowhere, changes: { role: { was: '', to: 'courier' } } }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'loan.removeContact': {
    answered: [
      {
        about: 'that they are off it',
        first: withFarrow,
        input: (_, earlier) => ({ id: idOf(earlier[2]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'a person that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
  'loan.addWorks': {
    answered: [
      {
        about: 'those that were not in it',
        first: lent,
        input: (known, earlier) => ({ loan: idOf(earlier[0]), works: [known.pans, known.raking, known.raking] }),
        output: () => ({ added: [{ id: anyId }] }),
      },
    ],
    refused: [
      {
        about: 'a work that there is not',
        first: known => [addLoan(known)],
        input: (known, earlier) => ({ loan: idOf(earlier[0]), works: [known.pans, nowhere] }),
        code: 'not-found',
        field: 'works',
      },
      {
        about: 'no work',
        first: known => [addLoan(known)],
        input: (_, earlier) => ({ loan: idOf(earlier[0]), works: [] }),
        code: 'bad-input',
        field: 'works',
      },
    ],
  },
  'loan.updateWork': {
    answered: [
      {
        about: 'a value with its currency, item number and who insures it',
        first: lent,
        input: (_, earlier) => ({
          id: firstOf(earlier[1]),
          changes: {
            item: { was: '', to: '3' },
            insuredBy: { was: '', to: 'borrower' },
            value: { was: null, to: { minor: 4_500_000, currency: 'EUR' } },
          },
        }),
        output: () => ({ saved: ['item', 'insuredBy', 'value'], clashes: [] }),
      },
      {
        about: 'the clash of a value that somebody else wrote',
        first: lent,
        input: (_, earlier) => ({
          id: firstOf(earlier[1]),
          changes: { value: { was: { minor: 100, currency: 'EUR' }, to: { minor: 200, currency: 'EUR' } } },
        }),
        output: () => ({
          saved: [],
          clashes: [
            {
              code: 'clash',
              id: anyId,
              field: 'value',
              was: { minor: 100, currency: 'EUR' },
              yours: { minor: 200, currency: 'EUR' },
              theirs: null,
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a value without a currency',
        first: lent,
        input: (_, earlier) => ({
          id: firstOf(earlier[1]),
          changes: { value: { was: null, to: { minor: 100, currency: '' } } },
        }),
        code: 'bad-input',
        field: 'changes.value.to.currency',
      },
      {
        about: 'a part of a cent',
        first: lent,
        input: (_, earlier) => ({
          id: firstOf(earlier[1]),
          changes: { value: { was: null, to: { minor: 0.5, currency: 'EUR' } } },
        }),
        code: 'bad-input',
        field: 'changes.value.to.minor',
      },
    ],
  },
  'loan.removeWork': {
    answered: [
      {
        about: 'that it is out of it',
        first: lent,
        input: (_, earlier) => ({ id: firstOf(earlier[1]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a work that there is not in it', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' },
      {
        about: 'a work that a receipt names',
        first: received,
        input: (_, earlier) => ({ id: firstOf(earlier[1]) }),
        code: 'recorded',
        field: 'id',
      },
    ],
  },
}
