/** All numbers of works, what is doubtful among them, and numbers of the parts of a set. */

import { expect } from 'vitest'
import type { numbersArea } from '../../../src/contract/areas/numbers.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

const nowhere = 'zzzzzz'
const number = (work: string, kind: 'permanent' | 'former' | 'loan', text: string) =>
  ['work.addNumber', { work, kind, text, by: 'Tamsin Oake' }] as const
const makeSet = (known: Known) =>
  ['set.make', { works: [known.pans, known.causeway], exhibition: known.show, form: 'row', gapX: 30, gapY: 0 }] as const
/** The set that the first call made. */
const setOf = (earlier: readonly unknown[]) => (earlier[0] as { id: string }).id // set.make answers with it

const line = { number: anyId, kind: 'permanent' as const, since: '', by: 'Tamsin Oake', note: '', whose: '' }
const pans = { title: 'Salt pans', maker: 'Ada Ruel' }
const causeway = { title: 'Causeway', maker: 'Ada Ruel' }

export const numbersExamples: ExamplesOf<keyof typeof numbersArea> = {
  'number.list': {
    answered: [
      {
        about: 'one number at two works, each beside the other, before what is not doubtful',
        first: known => [
          ['work.changeNumber', { id: known.pansNumber, changes: { text: { was: 'L-1.1', to: 'l-1.2' } } }],
        ],
        input: known => ({ kind: 'lender', exhibition: known.show, limit: 2 }),
        output: known => {
          const given = { ...line, kind: 'lender', by: '', whose: 'Quay Collection' }
          const doubt = (text: string, work: string, title: string) => ({
            code: 'number-twice',
            text: `It is the lender’s number of ${title} too.`,
            subject: anyId,
            figures: expect.stringContaining(`"lender","L-1.2","${work}"`),
            others: [{ number: anyId, kind: 'lender', text, work, title }],
            settled: null,
          })
          return {
            lines: [
              {
                ...given,
                ...pans,
                text: 'l-1.2',
                work: known.pans,
                doubts: [doubt('L-1.2', known.causeway, causeway.title)],
              },
              {
                ...given,
                ...causeway,
                text: 'L-1.2',
                work: known.causeway,
                doubts: [doubt('l-1.2', known.pans, pans.title)],
              },
            ],
            total: 3,
            doubtful: 2,
          }
        },
      },
      {
        about: 'a number found by another way of writing it, nothing of it doubtful',
        first: known => [number(known.pans, 'former', 'Inv. 1961-4')],
        input: () => ({ words: '1961 - 04' }),
        output: known => ({
          lines: [{ ...line, ...pans, kind: 'former', text: 'Inv. 1961-4', work: known.pans, doubts: [] }],
          total: 1,
          doubtful: 0,
        }),
      },
    ],
    refused: [
      {
        about: 'a kind of number that there is not',
        input: () => ({ kind: 'shelf' }),
        code: 'bad-input',
        field: 'kind',
      },
    ],
  },
  'number.ofParts': {
    answered: [
      {
        about: 'the letter that is free, written as the other part is',
        first: known => [makeSet(known), number(known.causeway, 'permanent', '1995.5.2 b')],
        input: (_, earlier) => ({ work: setOf(earlier) }),
        output: known => ({
          said: '1995.5.2 b',
          offered: [{ work: known.pans, title: pans.title, text: '1995.5.2 a' }],
        }),
      },
      {
        about: 'nothing for a work that is no set',
        input: known => ({ work: known.pans }),
        output: () => ({ said: '', offered: [] }),
      },
    ],
    refused: [
      { about: 'a work that is not there', input: () => ({ work: nowhere }), code: 'not-found', field: 'work' },
    ],
  },
  'number.giveParts': {
    answered: [
      {
        about: 'the parts in their order, behind the number of the set',
        first: known => [
          makeSet(known),
          [
            'work.addNumber',
            (earlier: readonly unknown[]) => ({ work: setOf(earlier), kind: 'permanent', text: '2031.7' }),
          ],
        ],
        input: (_, earlier) => ({ set: setOf(earlier) }),
        output: known => ({
          given: [
            { id: anyId, work: known.pans, text: '2031.7a' },
            { id: anyId, work: known.causeway, text: '2031.7b' },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a work without parts', input: known => ({ set: known.pans }), code: 'not-a-set', field: 'set' },
      {
        about: 'a set of which no number is known',
        first: known => [makeSet(known)],
        input: (_, earlier) => ({ set: setOf(earlier) }),
        code: 'no-number',
        field: 'set',
      },
    ],
  },
}
