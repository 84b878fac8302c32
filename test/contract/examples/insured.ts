/** What works are worth: valuations, rates, limits, and sums by day. */
import { expect } from 'vitest'
import type { insuredArea } from '../../../src/contract/areas/insured.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf, unknownField } from './types.ts'

const nowhere = 'zzzzzz'
/** The id that an answer gave. */
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made
/** The ids that `loan.addWorks` gave. */
const addedOf = (answer: unknown) => (answer as { added: readonly { id: string }[] }).added.map(({ id }) => id) // likewise
const firstOf = (answer: unknown) => addedOf(answer)[0] ?? ''
type Earlier = readonly unknown[]

const euros = (minor: number) => ({ minor, currency: 'EUR' })
const francs = (minor: number) => ({ minor, currency: 'CHF' })
const valuePans = (known: Known) =>
  [
    'insured.addValue',
    { work: known.pans, value: euros(4_500_000), day: '2031-01-01', source: 'auction of 2030' },
  ] as const
const rate = { from: 'EUR', to: 'CHF', rate: '0.95', day: '2031-03-01', source: 'bank of the house' }
const policy = { scope: 'all' as const, amount: francs(12_000_000), source: 'house policy 2031' }
/** Causeway is lent from 25 March at CHF 100 000, the show opens on 1 April. */
const all = (known: Known) =>
  [
    valuePans(known),
    ['insured.addRate', rate],
    ['insured.addLimit', policy],
    ['loan.add', { party: known.lender, number: 'QC 7', first: '2031-03-25', last: '2031-07-20' }],
    ['loan.addWorks', (earlier: Earlier) => ({ loan: idOf(earlier[3]), works: [known.causeway] })],
    [
      'loan.updateWork',
      (earlier: Earlier) => ({
        id: firstOf(earlier[4]),
        changes: { value: { was: null, to: francs(10_000_000) } },
      }),
    ],
  ] as const
const head = { currency: 'CHF', currencies: ['CHF', 'EUR'], today: '2031-03-14' }
const none = { minor: 0, apart: [], works: 0, without: 0 }

export const insuredExamples: ExamplesOf<keyof typeof insuredArea> = {
  'insured.days': {
    answered: [
      {
        about: 'each day with its limit, and what is over it from the day on which the show opens',
        first: all,
        input: known => ({ exhibition: known.show, first: '2031-03-24', last: '2031-04-01', currency: 'CHF' }),
        output: () => {
          const before = { minor: 10_000_000, apart: [], works: 1, without: 0, limit: 12_000_000, over: false }
          const days = [25, 26, 27, 28, 29, 30, 31].map(day => ({ day: `2031-03-${day}`, ...before }))
          return {
            ...{ ...head, first: '2031-03-24', last: '2031-04-01' },
            days: [
              { day: '2031-03-24', ...none, limit: 12_000_000, over: false },
              ...days,
              { day: '2031-04-01', ...before, minor: 14_275_000, works: 3, without: 1, over: true },
            ],
            over: [
              {
                group: 'all',
                words: 'Everything',
                source: policy.source,
                day: '2031-04-01',
                days: 1,
                over: 2_275_000,
              },
            ],
          }
        },
      },
      {
        about: 'a sum apart where no rate is valid yet, in the currency of most values',
        first: known => [valuePans(known)],
        input: known => ({ exhibition: known.show, first: '2031-04-01', last: '2031-04-01', currency: 'CHF' }),
        output: () => ({
          ...{ ...head, first: '2031-04-01', last: '2031-04-01' },
          days: [
            { day: '2031-04-01', minor: 0, apart: [euros(4_500_000)], works: 3, without: 2, limit: null, over: false },
          ],
          over: [],
        }),
      },
    ],
    refused: [
      {
        about: 'days reversed',
        input: known => ({ exhibition: known.show, first: '2031-04-02', last: '2031-04-01' }),
        code: 'reversed',
        field: 'last',
      },
      {
        about: 'a period of four years',
        input: () => ({ first: '2031-01-01', last: '2035-01-01' }),
        code: 'too-long',
        field: 'last',
      },
      {
        about: 'a show that there is not',
        input: () => ({ exhibition: nowhere }),
        code: 'not-found',
        field: 'exhibition',
      },
      {
        about: 'a currency that there is not',
        input: () => ({ currency: 'XYZ' }),
        code: 'bad-input',
        field: 'currency',
      },
    ],
  },
  'insured.day': {
    answered: [
      {
        about: 'every group with its limits and its greatest day, the rates in use, and works in the order they came',
        first: all,
        input: known => ({
          ...{ exhibition: known.show, first: '2031-03-24', last: '2031-04-30' },
          ...{ day: '2031-04-02', currency: 'CHF', limit: 2 },
        }),
        output: known => {
          const sum = { minor: 14_275_000, apart: [], works: 3, without: 1 }
          const greatest = { day: '2031-04-01', minor: 14_275_000 }
          const work = { lender: 'Quay Collection', words: 'Room 1, north', basis: 'plan' }
          return {
            ...{ ...head, first: '2031-03-24', last: '2031-04-30', day: '2031-04-02' },
            lines: [
              {
                ...{ group: 'all', kind: 'all', words: 'Everything', ...sum, greatest },
                against: [
                  {
                    ...{ limit: anyId, words: 'everything', source: policy.source, amount: policy.amount },
                    ...{ minor: 12_000_000, verdict: 'over', over: 2_275_000 },
                  },
                ],
              },
              { group: 'all/unsaid', kind: 'bearer', words: 'Nobody said who bears it', ...sum, against: [], greatest },
              {
                group: `lender:${known.lender}`,
                kind: 'lender',
                words: 'Quay Collection',
                ...sum,
                against: [],
                greatest,
              },
              {
                ...{ group: `room:${known.room}`, kind: 'room', words: 'Room 1', ...sum, works: 2, without: 0 },
                ...{ against: [], greatest },
              },
              {
                ...{ group: 'room:', kind: 'room', words: 'Place not known yet', ...none, works: 1, without: 1 },
                ...{ against: [], greatest: { day: '2031-03-25', minor: 10_000_000 } },
              },
            ],
            rates: [{ id: anyId, ...rate, by: '' }],
            works: [
              {
                ...{ work: known.causeway, number: 'L-1.2', title: 'Causeway', ...work },
                ...{
                  value: francs(10_000_000),
                  minor: 10_000_000,
                  why: 'loan QC 7',
                  since: null,
                  bearer: 'unsaid',
                  over: false,
                },
              },
              {
                ...{ work: known.pans, number: 'L-1.1', title: 'Salt pans', ...work, value: euros(4_500_000) },
                ...{ minor: 4_275_000, why: 'auction of 2030', since: '2031-01-01', bearer: 'unsaid', over: true },
              },
            ],
            ...{ total: 3, outside: 0, nowhere: 0 },
          }
        },
      },
      {
        about: 'what each bears, against a limit of its own and the terms of a loan for one vehicle and one journey',
        first: known => [
          ['location.add', { kind: 'vehicle', name: 'Van 1' }],
          ['loan.add', { party: known.lender, number: 'QC 7', first: '2031-03-01', last: '2031-07-20' }],
          [
            'loan.addWorks',
            (earlier: Earlier) => ({ loan: idOf(earlier[1]), works: [known.pans, known.causeway, known.raking] }),
          ],
          ...[0, 1, 2].map(
            at =>
              [
                'loan.updateWork',
                (earlier: Earlier) => ({
                  id: addedOf(earlier[2])[at] ?? '',
                  changes: {
                    value: { was: null, to: francs(1_000_000) },
                    ...(at === 2 ? { insuredBy: { was: '', to: 'borrower' } } : {}),
                  },
                }),
              ] as const,
          ),
          ...(['indemnity', 'vehicle', 'journey'] as const).map(
            kind =>
              [
                'loan.addTerm',
                (earlier: Earlier) => ({ loan: idOf(earlier[1]), kind, high: 2_500_000, choice: 'CHF' }),
              ] as const,
          ),
          ['insured.addLimit', { scope: 'all', bearer: 'house', amount: francs(900_000), source: 'house policy' }],
          // Two leave together; one gets out at noon, and then the third gets in.
          ...[
            [known.pans, 0, 7],
            [known.causeway, 0, 7],
            [known.pans, 1, 12],
            [known.raking, 0, 12],
          ].map(
            ([work, to, hour]) =>
              [
                'movement.add',
                (earlier: Earlier) => ({
                  ...{ works: [`${work}`], to: to === 0 ? idOf(earlier[0]) : known.room, by: 'Tamsin Oake' },
                  at: `2031-03-10T${String(hour).padStart(2, '0')}:00:00.000Z`,
                }),
              ] as const,
          ),
        ],
        input: known => ({
          ...{ exhibition: known.show, first: '2031-03-10', last: '2031-03-10' },
          ...{ day: '2031-03-10', currency: 'CHF', group: 'all/house' },
        }),
        output: known => {
          const line = (minor: number, works: number) => ({
            ...{ minor, apart: [], works, without: 0, greatest: { day: '2031-03-10', minor } },
          })
          const quoted = (words: string, over: number) => ({
            ...{ limit: anyId, words: 'loan QC 7', source: `loan QC 7, “at most CHF\u00a025\u2009000 ${words}”` },
            ...{ amount: francs(2_500_000), minor: 2_500_000, verdict: over > 0 ? 'over' : 'within', over },
          })
          const [term, van] = [expect.stringMatching(/^all\/term-/), expect.stringMatching(/^vehicle:[0-9a-z]+\/term-/)]
          return {
            ...{ ...head, currencies: ['CHF'], first: '2031-03-10', last: '2031-03-10', day: '2031-03-10' },
            lines: [
              { group: 'all', kind: 'all', words: 'Everything', ...line(3_000_000, 3), against: [] },
              {
                ...{ group: 'all/indemnity', kind: 'bearer', words: 'State indemnity', ...line(2_000_000, 2) },
                against: [],
              },
              {
                ...{ group: 'all/house', kind: 'bearer', words: 'This house’s policy', ...line(1_000_000, 1) },
                against: [
                  {
                    ...{ limit: anyId, words: 'everything, this house’s policy', source: 'house policy' },
                    ...{ amount: francs(900_000), minor: 900_000, verdict: 'over', over: 100_000 },
                  },
                ],
              },
              {
                ...{ group: term, kind: 'loan', words: 'Loan QC 7, the indemnity', ...line(2_000_000, 2) },
                against: [quoted('together under a state’s indemnity', 0)],
              },
              {
                group: `lender:${known.lender}`,
                kind: 'lender',
                words: 'Quay Collection',
                ...line(3_000_000, 3),
                against: [],
              },
              { group: `room:${known.room}`, kind: 'room', words: 'Room 1', ...line(1_000_000, 1), against: [] },
              {
                group: expect.stringMatching(/^vehicle:[0-9a-z]+$/),
                kind: 'vehicle',
                words: 'Van 1',
                ...line(2_000_000, 2),
                against: [],
              },
              {
                ...{
                  group: van,
                  kind: 'vehicle',
                  words: 'Van 1: loan QC 7, value in one vehicle',
                  ...line(2_000_000, 2),
                },
                against: [quoted('together in one vehicle', 0)],
              },
              {
                ...{ group: expect.stringMatching(/^journey:[0-9a-z]+\/term-/), kind: 'journey' },
                ...{ words: 'Van 1, one journey: loan QC 7, value on one journey', ...line(3_000_000, 3) },
                against: [quoted('on one journey of a vehicle', 500_000)],
              },
            ],
            rates: [],
            works: [
              {
                ...{ work: known.raking, number: 'L-1.3', title: 'Raking', lender: 'Quay Collection', words: 'Van 1' },
                ...{ basis: 'record', value: francs(1_000_000), minor: 1_000_000, why: 'loan QC 7', since: null },
                ...{ bearer: 'house', over: true },
              },
            ],
            ...{ total: 1, outside: 0, nowhere: 0 },
          }
        },
      },
      {
        about: 'what the record says of a day past: a crate in a van, and a work at an address outside',
        first: known => [
          valuePans(known),
          ['location.add', { kind: 'vehicle', name: 'Van 1' }],
          ['location.add', { kind: 'crate', name: 'Crate 5' }],
          ['location.add', { kind: 'elsewhere', name: 'Harbour stores' }],
          [
            'movement.add',
            (earlier: Earlier) => ({
              ...{ works: [known.pans], to: idOf(earlier[2]), at: '2031-03-10T07:00:00.000Z', by: 'Tamsin Oake' },
            }),
          ],
          [
            'movement.add',
            (earlier: Earlier) => ({
              ...{
                crates: [idOf(earlier[2])],
                to: idOf(earlier[1]),
                at: '2031-03-10T08:00:00.000Z',
                by: 'Tamsin Oake',
              },
            }),
          ],
          [
            'movement.add',
            (earlier: Earlier) => ({
              ...{ works: [known.raking], to: idOf(earlier[3]), at: '2031-03-10T09:00:00.000Z', by: 'Tamsin Oake' },
            }),
          ],
        ],
        input: known => ({
          ...{ exhibition: known.show, first: '2031-03-11', last: '2031-03-11' },
          ...{ day: '2031-03-11', group: `lender:${known.lender}` },
        }),
        output: known => {
          const sum = { minor: 4_500_000, apart: [], works: 1, without: 0, against: [] }
          const same = { ...sum, greatest: { day: '2031-03-11', minor: 4_500_000 } }
          return {
            ...{ ...head, currency: 'EUR', currencies: ['EUR'], first: '2031-03-11', last: '2031-03-11' },
            day: '2031-03-11',
            lines: [
              { group: 'all', kind: 'all', words: 'Everything', ...same },
              { group: 'all/unsaid', kind: 'bearer', words: 'Nobody said who bears it', ...same },
              { group: `lender:${known.lender}`, kind: 'lender', words: 'Quay Collection', ...same },
              { group: expect.stringMatching(/^crate:[0-9a-z]+$/), kind: 'crate', words: 'Crate 5', ...same },
              { group: expect.stringMatching(/^vehicle:[0-9a-z]+$/), kind: 'vehicle', words: 'Van 1', ...same },
            ],
            rates: [],
            works: [
              {
                ...{ work: known.pans, number: 'L-1.1', title: 'Salt pans', lender: 'Quay Collection' },
                ...{ words: 'Crate 5, in Van 1', basis: 'record', value: euros(4_500_000), minor: 4_500_000 },
                ...{ why: 'auction of 2030', since: '2031-01-01', bearer: 'unsaid', over: false },
              },
            ],
            ...{ total: 1, outside: 1, nowhere: 1 },
          }
        },
      },
    ],
    refused: [
      {
        about: 'a group of no kind',
        input: () => ({ day: '2031-04-02', group: 'wall:f1' }),
        code: 'bad-input',
        field: 'group',
      },
      { about: 'a day that no calendar has', input: () => ({ day: '2031-02-30' }), code: 'bad-input', field: 'day' },
    ],
  },
  'insured.values': {
    answered: [
      {
        about: 'the valuations of a work, the newest first',
        first: known => [
          valuePans(known),
          ['insured.addValue', { work: known.pans, value: francs(5), day: '2031-02-01' }],
        ],
        input: known => ({ work: known.pans }),
        output: () => ({
          counts: { kind: 'own', id: anyId },
          values: [
            { id: anyId, value: francs(5), day: '2031-02-01', source: '', by: '' },
            { id: anyId, value: euros(4_500_000), day: '2031-01-01', source: 'auction of 2030', by: '' },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: nowhere }), code: 'not-found', field: 'work' },
    ],
  },
  'insured.addValue': {
    answered: [
      {
        about: 'the new valuation, from today',
        input: known => ({ work: known.pans, value: euros(4_500_000) }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a value without a currency',
        input: known => ({ work: known.pans, value: { minor: 4_500_000, currency: '' } }),
        code: 'bad-input',
        field: 'value.currency',
      },
      {
        about: 'a currency that there is not',
        input: known => ({ work: known.pans, value: { minor: 4_500_000, currency: 'XYZ' } }),
        code: 'bad-input',
        field: 'value.currency',
      },
      {
        about: 'a value below nought',
        input: known => ({ work: known.pans, value: euros(-1) }),
        code: 'bad-input',
        field: 'value.minor',
      },
      {
        about: 'a second valuation from one day',
        first: known => [valuePans(known)],
        input: known => ({ work: known.pans, value: euros(1), day: '2031-01-01' }),
        code: 'day-taken',
        field: 'day',
      },
    ],
  },
  'insured.removeValue': {
    answered: [
      {
        about: 'that it is gone',
        first: known => [valuePans(known)],
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      { about: 'a valuation that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' },
    ],
  },
  'insured.rates': {
    answered: [
      {
        about: 'rates, the newest first, as they were typed',
        first: () => [
          ['insured.addRate', rate],
          ['insured.addRate', { ...rate, rate: '0.9400', day: '2031-03-10' }],
        ],
        input: () => ({}),
        output: () => ({
          rates: [
            { id: anyId, ...rate, rate: '0.9400', day: '2031-03-10', by: '' },
            { id: anyId, ...rate, by: '' },
          ],
        }),
      },
    ],
    refused: [unknownField],
  },
  'insured.addRate': {
    answered: [{ about: 'the new rate', input: () => rate, output: () => ({ id: anyId }) }],
    refused: [
      { about: 'a rate of nothing', input: () => ({ ...rate, rate: '0.00' }), code: 'bad-input', field: 'rate' },
      { about: 'a rate in words', input: () => ({ ...rate, rate: 'about 1' }), code: 'bad-input', field: 'rate' },
      {
        about: 'a currency in itself',
        input: () => ({ ...rate, to: 'EUR' }),
        code: 'same-currency',
        field: 'to',
      },
      {
        about: 'a second rate of two currencies from one day',
        first: () => [['insured.addRate', rate]],
        input: () => ({ ...rate, rate: '0.96' }),
        code: 'day-taken',
        field: 'day',
      },
    ],
  },
  'insured.removeRate': {
    answered: [
      {
        about: 'that it is gone',
        first: () => [['insured.addRate', rate]],
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'a rate that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
  'insured.limits': {
    answered: [
      {
        about: 'limits with what each is for, that for everything first',
        first: known => [
          ['insured.addLimit', { scope: 'journey', bearer: 'indemnity', amount: francs(9_000_000) }],
          ['insured.addLimit', { scope: 'vehicle', amount: francs(2_000_000), last: '2031-12-31' }],
          ['insured.addLimit', { scope: 'place', place: known.room, amount: francs(3_000_000) }],
          ['insured.addLimit', { scope: 'lender', lender: known.lender, amount: euros(5_000_000) }],
          ['insured.addLimit', policy],
        ],
        input: () => ({}),
        output: known => {
          const each = { id: anyId, lender: null, place: null, bearer: '', first: '', last: '', source: '', by: '' }
          return {
            limits: [
              { ...each, ...policy, words: 'everything' },
              { ...each, scope: 'lender', lender: known.lender, words: 'Quay Collection', amount: euros(5_000_000) },
              { ...each, scope: 'place', place: known.room, words: 'Room 1', amount: francs(3_000_000) },
              { ...each, scope: 'vehicle', words: 'each vehicle', amount: francs(2_000_000), last: '2031-12-31' },
              {
                ...{ ...each, scope: 'journey', bearer: 'indemnity', words: 'each journey, state indemnity' },
                amount: francs(9_000_000),
              },
            ],
          }
        },
      },
    ],
    refused: [unknownField],
  },
  'insured.addLimit': {
    answered: [
      {
        about: 'the new limit, for a while',
        input: () => ({ ...policy, first: '2031-01-01', last: '2031-12-31' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'days reversed',
        input: () => ({ ...policy, first: '2031-12-31', last: '2031-01-01' }),
        code: 'reversed',
        field: 'last',
      },
      {
        about: 'one who bears nothing here',
        input: () => ({ ...policy, bearer: 'unsaid' }),
        code: 'bad-input',
        field: 'bearer',
      },
      {
        about: 'a limit of nothing',
        input: () => ({ ...policy, amount: francs(0) }),
        code: 'no-limit',
        field: 'amount',
      },
      {
        about: 'one lender, and which is not said',
        input: () => ({ ...policy, scope: 'lender' }),
        code: 'no-lender',
        field: 'lender',
      },
      {
        about: 'one place, and which is not said',
        input: () => ({ ...policy, scope: 'place' }),
        code: 'no-place',
        field: 'place',
      },
      {
        about: 'a wall, whose works no sum is made of',
        input: known => ({ ...policy, scope: 'place', place: known.northFace }),
        code: 'wall-no-limit',
        field: 'place',
      },
      {
        about: 'a place that there is not',
        input: () => ({ ...policy, scope: 'place', place: nowhere }),
        code: 'not-found',
        field: 'place',
      },
    ],
  },
  'insured.removeLimit': {
    answered: [
      {
        about: 'that it is gone',
        first: () => [['insured.addLimit', policy]],
        input: (_, earlier) => ({ id: idOf(earlier[0]) }),
        output: () => ({ done: true }),
      },
    ],
    refused: [{ about: 'a limit that there is not', input: () => ({ id: nowhere }), code: 'not-found', field: 'id' }],
  },
}
