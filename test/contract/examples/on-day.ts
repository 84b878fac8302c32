/** A work on one day, from all that is on record of it. */
import type { onDayArea } from '../../../src/contract/areas/on-day.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf } from './types.ts'

const by = 'Tamsin Oake'
const idOf = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made
type Earlier = readonly unknown[]

const strokes = [[100, 200, 300, 100, 500, 220]]
const report = (earlier: Earlier) => ({ report: idOf(earlier[5]) })
const stay = (known: Known) =>
  [
    ['loan.add', { party: known.lender, number: 'QC 2031/7', first: '2031-02-20', last: '2031-07-12' }],
    ['loan.addWorks', (earlier: Earlier) => ({ loan: idOf(earlier[0]), works: [known.pans] })],
    [
      'loan.addTerm',
      (earlier: Earlier) => ({ loan: idOf(earlier[0]), kind: 'light', high: 50, said: 'At most 50 lux.' }),
    ],
    [
      'receipt.add',
      (earlier: Earlier) => ({
        loan: idOf(earlier[0]),
        kind: 'received',
        day: '2031-03-02',
        handedBy: 'Ines Farrow',
        works: [{ work: known.pans }],
        by,
      }),
    ],
    ['movement.add', { works: [known.pans], to: known.room, spot: 'the floor', at: '2031-03-02T09:10:00.000Z', by }],
    ['condition.add', { work: known.pans, kind: 'incoming', examinedAt: '2031-03-02T10:00:00.000Z', examiner: by }],
    [
      'condition.update',
      (earlier: Earlier) => ({ id: idOf(earlier[5]), changes: { note: { was: '', to: 'no change' } } }),
    ],
    ['condition.sign', (earlier: Earlier) => ({ ...report(earlier), role: 'registrar', name: by, strokes })],
    ['condition.sign', (earlier: Earlier) => ({ ...report(earlier), role: 'courier', name: 'Bo Lind', strokes })],
    ['condition.complete', report],
    [
      'damage.add',
      { work: known.pans, foundAt: '2031-03-12T10:05:00.000Z', how: 'the frame', reference: 'D-0007', by },
    ],
    ['light.addHours', { exhibition: known.show, kind: 'open', first: '2031-03-03', last: '2031-03-20', hours: 8 }],
    ['light.addReading', { work: known.pans, points: [50], at: '2031-03-03T11:00:00.000Z', by }],
  ] as const

const told = {
  day: '2031-03-12',
  today: '2031-03-14',
  stood: {
    movement: anyId,
    words: 'Room 1',
    spot: 'the floor',
    since: '2031-03-02T09:10:00.000Z',
    people: '',
    condition: '',
    recordedBy: by,
  },
  examined: {
    report: anyId,
    kind: 'incoming',
    examinedAt: '2031-03-02T10:00:00.000Z',
    place: '',
    findings: 0,
    overall: '',
    completeAt: anyMoment,
    signedBy: [
      { role: 'registrar', name: by },
      { role: 'courier', name: 'Bo Lind' },
    ],
  },
  damage: [{ id: anyId, reference: 'D-0007', foundAt: '2031-03-12T10:05:00.000Z', how: 'the frame', whose: '' }],
  loans: [
    {
      loan: anyId,
      number: 'QC 2031/7',
      partyName: 'Quay Collection',
      way: 'in',
      first: '2031-02-20',
      last: '2031-07-12',
      value: null,
      valueThen: null,
      insuredBy: '',
      // All of it was typed on the fourteenth.
      terms: [
        {
          ...{ id: anyId, kind: 'light', low: null, high: 50, choice: '', said: 'At most 50 lux.' },
          written: anyMoment,
          stood: null,
          ...{ word: null, wordThen: null },
        },
      ],
      takenOff: [],
      receipt: {
        id: anyId,
        number: 'R 2031-1',
        kind: 'received',
        day: '2031-03-02',
        handedBy: 'Ines Farrow',
        receivedBy: '',
        recordedBy: by,
      },
    },
  ],
  // By hand: ten days, 3 to 12 March, of 8 h at 50 lx.
  light: { ever: 4000, year: 4000, unknownHours: 0 },
}

export const onDayExamples: ExamplesOf<keyof typeof onDayArea> = {
  'work.onDay': {
    answered: [
      {
        about: 'a day in its stay: place, condition, terms, light and every name',
        first: stay,
        input: known => ({ work: known.pans, day: '2031-03-12' }),
        output: () => told,
      },
      {
        about: 'the day before it came, under its loan alone',
        first: stay,
        input: known => ({ work: known.pans, day: '2031-03-01' }),
        output: () => ({
          ...told,
          day: '2031-03-01',
          stood: null,
          examined: null,
          damage: [],
          loans: told.loans.map(loan => ({ ...loan, receipt: null })),
          light: { ever: 0, year: 0, unknownHours: 0 },
        }),
      },
      {
        about: 'today, of a work of which nothing is on record',
        input: known => ({ work: known.loose }),
        output: () => ({
          day: '2031-03-14',
          today: '2031-03-14',
          stood: null,
          examined: null,
          damage: [],
          loans: [],
          light: null,
        }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: 'zzzzzz' }), code: 'not-found', field: 'work' },
      {
        about: 'a day that is none',
        input: known => ({ work: known.pans, day: '2031-02-30' }),
        code: 'bad-input',
        field: 'day',
      },
    ],
  },
}
