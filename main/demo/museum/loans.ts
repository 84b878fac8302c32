/**
 * The demo's loans of three lenders and what works are worth. Days count from today, amounts are whole units of their
 * currency; the item number of a work is the end of its loan number. All of it is invented.
 */
import type { Input } from '../../../src/contract/contract.ts'
import { exhibition, type LenderKey } from './house.ts'

type Bearer = 'lender' | 'borrower' | 'indemnity'

export interface DemoTerm extends Omit<Input<'loan.addTerm'>, 'loan' | 'item'> {
  /** The work it is about; left out, all of them. */
  readonly work?: string
}

export interface DemoReceipt extends Pick<Input<'receipt.add'>, 'number' | 'place' | 'handedBy' | 'receivedBy'> {
  /** Days from today. */
  readonly on: number
  readonly crate: string
  readonly works: readonly string[]
}

export interface DemoLoan extends Pick<Input<'loan.add'>, 'number' | 'purpose' | 'note'> {
  readonly lender: LenderKey
  /** Days from today. */
  readonly agreed: number
  readonly first: number
  readonly last: number
  readonly currency: string
  readonly bearer: Bearer
  /** Works by key, or by number for those that came with a list; null for one whose value is still awaited. */
  readonly works: readonly (readonly [work: string, item: string, worth: number | null])[]
  readonly contacts: readonly Omit<Input<'loan.addContact'>, 'loan'>[]
  readonly terms: readonly DemoTerm[]
  readonly receipts: readonly DemoReceipt[]
}

const closes = exhibition.opensIn + exhibition.openFor

export const loans: readonly DemoLoan[] = [
  {
    lender: 'thornquill',
    number: 'L.31.1',
    purpose: exhibition.title,
    note: 'The family writes by post; leave two weeks for an answer.',
    agreed: -48,
    first: -26,
    last: closes + 21,
    currency: 'GBP',
    bearer: 'borrower',
    works: [
      ['ferry-rope', '1', 68_000],
      ['dye-yard', '2', 42_500],
      ['steps-night', '3', 31_000],
      ['orchard-bank', '4', 54_000],
      ['bleaching', '5', 75_000],
      ['room-above', '6', 36_500],
    ],
    contacts: [
      { name: 'R. Thornquill', role: 'owner', reach: 'by letter' },
      { name: 'Ansel Gorringe', role: 'courier', reach: 'through the owner' },
    ],
    terms: [
      { kind: 'light', high: 200, said: 'At no time above 200 lux.' },
      {
        kind: 'humidity',
        low: 40,
        high: 62,
        said: 'The air of the rooms stays between 40 and 62 per cent of relative humidity.',
      },
      {
        kind: 'barrier',
        low: 600,
        work: 'bleaching',
        said: 'A barrier keeps hands off Bleaching ground, whose surface is unvarnished.',
      },
      { kind: 'journey', high: 40_000_000, choice: 'GBP', said: 'No more than £400,000 on any one journey.' },
    ],
    receipts: [
      {
        number: 'Dock 0118',
        on: -25,
        crate: 'two travelling frames',
        place: 'Goods door',
        handedBy: 'Ansel Gorringe',
        receivedBy: 'Dov Hasterley',
        works: ['ferry-rope', 'dye-yard', 'steps-night', 'orchard-bank', 'bleaching'],
      },
    ],
  },
  {
    lender: 'wexholt',
    number: 'L.31.3',
    purpose: exhibition.title,
    note: '',
    agreed: -52,
    first: -24,
    last: closes + 28,
    currency: 'EUR',
    bearer: 'indemnity',
    works: [
      ['after-rain', '1', 62_000],
      ['flood-sallowford', '2', 185_000],
      ['mill-lane', '3', 58_000],
      ['two-kilns', '4', 44_000],
      ['quay-evening', '5', 120_000],
      ['high-street', '6', 96_500],
    ],
    contacts: [
      { name: 'Lisbet Quarrell', role: 'secretary of the trustees', reach: 'mornings' },
      { name: 'Maud Ellersby', role: 'courier', reach: 'through the secretary' },
    ],
    terms: [
      { kind: 'light', high: 200, said: 'Oil paintings: 200 lux at most.' },
      { kind: 'glazing', choice: 'any', work: 'quay-evening', said: 'Quay, evening is shown glazed.' },
      { kind: 'indemnity', high: 80_000_000, choice: 'EUR', said: 'Certificate 31/117, to EUR 800 000.' },
      { kind: 'vehicle', high: 30_000_000, choice: 'EUR', said: 'Not above EUR 300 000 in one vehicle.' },
    ],
    receipts: [
      {
        number: 'Dock 0119',
        on: -23,
        crate: 'Crates 1 to 3 of the lender',
        place: 'Goods door',
        handedBy: 'Maud Ellersby',
        receivedBy: 'Dov Hasterley',
        works: ['after-rain', 'mill-lane', 'flood-sallowford'],
      },
      {
        number: 'Dock 0124',
        on: -7,
        crate: 'Crate 4',
        place: 'Goods door',
        handedBy: 'Maud Ellersby',
        receivedBy: 'Dov Hasterley',
        works: ['two-kilns', 'quay-evening', 'high-street'],
      },
    ],
  },
  {
    lender: 'navigation',
    number: 'L.31.5',
    purpose: exhibition.title,
    note: 'Four works of the list are not settled yet.',
    agreed: -20,
    first: exhibition.opensIn - 21,
    last: closes + 14,
    currency: 'EUR',
    bearer: 'lender',
    works: [
      ['TNA 1904/3', '1', 1_800],
      ['TNA 1911/17', '2', 1_200],
      ['TNA 1926/8', '3', 2_400],
      ['TNA 1952/40', '4', null],
    ],
    contacts: [{ name: 'The archivist', role: 'lends', reach: 'Sallow Lock' }],
    terms: [{ kind: 'light', high: 50, said: 'Photographs at 50 lux or below.' }],
    receipts: [],
  },
]

/** What the house's own works are worth: by the work, how many days ago it was said, in euros. */
export const worth: readonly (readonly [work: string, daysAgo: number, euros: number, source: string])[] = [
  ['valley', 1460, 140_000, 'stocktaking'],
  ['valley', 52, 165_000, 'valuer, for the policy'],
  ['shallows', 52, 26_000, 'valuer, for the policy'],
  ['sluice-red', 52, 18_500, 'purchase price'],
  ['tamble-lines', 1460, 7_500, 'stocktaking'],
  ['sluice-winter', 1460, 9_000, 'stocktaking'],
  ['reeds-lock', 1460, 6_800, 'stocktaking'],
  ['jars-i', 1460, 2_200, 'stocktaking'],
  ['jars-ii', 1460, 2_200, 'stocktaking'],
  ['jars-iii', 1460, 2_200, 'stocktaking'],
  ['new-bank', 52, 31_000, 'purchase price'],
  ['low-sun', 52, 34_000, 'purchase price'],
  ['long-stripe', 1460, 15_000, 'stocktaking'],
]

/** One pound in euros as the house counts it. */
export const rate = { from: 'GBP', to: 'EUR', rate: '1.15', daysAgo: 50, source: 'house, by hand' } as const
