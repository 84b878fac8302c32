/** Lenders and other parties. */
import type { partiesArea } from '../../../src/contract/areas/parties.ts'
import { anyId, type ExamplesOf } from './types.ts'

export const partiesExamples: ExamplesOf<keyof typeof partiesArea> = {
  'party.list': {
    answered: [
      {
        about: 'the lenders with their works',
        input: () => ({}),
        output: known => ({
          parties: [
            { id: known.lender, kind: 'lender', name: 'Quay Collection', contact: '', creditLine: '', works: 3 },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'party.add': {
    answered: [
      {
        about: 'the new lender',
        input: () => ({ kind: 'lender', name: 'Marram Trust' }),
        output: () => ({ id: anyId, clashes: [] }),
      },
      {
        about: 'the new lender, chosen for a work that has another meanwhile',
        input: known => ({
          kind: 'lender',
          name: 'Marram Trust',
          work: { id: known.pans, was: 'aaaaaaaaaaaaaaaaaaaa' },
        }),
        output: known => ({
          id: anyId,
          clashes: [
            {
              code: 'clash',
              id: known.pans,
              field: 'lender',
              was: 'aaaaaaaaaaaaaaaaaaaa',
              yours: anyId,
              theirs: known.lender,
            },
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a work that there is not',
        input: () => ({ kind: 'lender', name: 'Marram Trust', work: { id: 'zz', was: null } }),
        code: 'not-found',
        field: 'work.id',
      },
      {
        about: 'a kind that there is not',
        input: () => ({ kind: 'friend', name: 'x' }),
        code: 'bad-input',
        field: 'kind',
      },
    ],
  },
  'party.update': {
    answered: [
      {
        about: 'that the name is changed',
        input: known => ({
          id: known.lender,
          changes: { name: { was: 'Quay Collection', to: 'The Quay Collection' } },
        }),
        output: () => ({ saved: ['name'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a party that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
}
