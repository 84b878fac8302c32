/** Sets: made, taken apart, laid out otherwise, their parts changed and fixed. */
import type { setsArea } from '../../../src/contract/areas/sets.ts'
import type { Known } from '../fixture.ts'
import { anyId, type ExamplesOf } from './types.ts'

/** Salt pans and Causeway as a diptych: 480 + 30 + 710 wide, 910 high. */
const diptych = (known: Known) =>
  ['set.make', { works: [known.pans, known.causeway], exhibition: known.show, form: 'row', gapX: 30, gapY: 0 }] as const
const made = (earlier: readonly unknown[]) => earlier[0] as { readonly id: string; readonly placement: string }

export const setsExamples: ExamplesOf<keyof typeof setsArea> = {
  'set.make': {
    answered: [
      {
        about: 'two works that stand on one wall: the set takes the place of the first',
        input: known => ({
          works: [known.pans, known.causeway],
          exhibition: known.show,
          form: 'row',
          gapX: 30,
          gapY: 0,
        }),
        output: known => ({
          id: anyId,
          entry: known.pansEntry,
          placement: anyId,
          entriesTaken: 2,
          placementsTaken: 2,
        }),
      },
      {
        about: 'a grid of three, of which one is not in the show and two stand on a wall',
        input: known => ({
          works: [known.loose, known.pans, known.causeway],
          exhibition: known.show,
          title: 'Tide',
          form: 'grid',
          columns: 2,
          gapX: 20,
          gapY: 20,
          keeps: 'centres',
        }),
        output: known => ({
          id: anyId,
          entry: known.pansEntry,
          placement: anyId,
          entriesTaken: 2,
          placementsTaken: 2,
        }),
      },
    ],
    refused: [
      {
        about: 'one work alone',
        input: known => ({ works: [known.pans], form: 'row', gapX: 30, gapY: 0 }),
        code: 'set-too-small',
        field: 'works',
      },
      {
        about: 'one work twice',
        input: known => ({ works: [known.loose, known.loose], form: 'row', gapX: 30, gapY: 0 }),
        code: 'part-twice',
        field: 'works.1',
      },
      {
        about: 'a grid without columns',
        input: known => ({ works: [known.pans, known.loose], form: 'grid', gapX: 30, gapY: 0 }),
        code: 'grid-without-columns',
        field: 'columns',
      },
      {
        about: 'a gap of less than nothing',
        input: known => ({ works: [known.pans, known.loose], form: 'row', gapX: -1, gapY: 0 }),
        code: 'gap-negative',
        field: 'gapX',
      },
      {
        about: 'a part of another set',
        first: known => [diptych(known)],
        input: known => ({ works: [known.loose, known.pans], form: 'row', gapX: 30, gapY: 0 }),
        code: 'part-of-set',
        field: 'works.1',
      },
      {
        about: 'a set in a set',
        first: known => [diptych(known)],
        input: (known, earlier) => ({ works: [made(earlier).id, known.loose], form: 'row', gapX: 30, gapY: 0 }),
        code: 'set-in-set',
        field: 'works.0',
      },
      {
        about: 'a work that stands in another show',
        input: known => ({
          works: [known.loose, known.pans],
          exhibition: known.other,
          form: 'row',
          gapX: 30,
          gapY: 0,
        }),
        code: 'in-another-show',
        field: 'works.1',
      },
      {
        about: 'a work that hangs',
        first: known => [['placement.setState', { placements: [known.pansPlace], to: 'hung' }]],
        input: known => ({
          works: [known.pans, known.causeway],
          exhibition: known.show,
          form: 'row',
          gapX: 30,
          gapY: 0,
        }),
        code: 'hung',
        field: 'works.0',
      },
    ],
  },
  'set.takeApart': {
    answered: [
      {
        about: 'a diptych: both works stand where they hung',
        first: known => [diptych(known)],
        input: (_, earlier) => ({ id: made(earlier).id }),
        output: known => ({
          works: [known.pans, known.causeway],
          entries: 2,
          placements: 2,
        }),
      },
    ],
    refused: [
      {
        about: 'a work that is no set',
        input: known => ({ id: known.pans }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'set.update': {
    answered: [
      {
        about: 'another gap',
        first: known => [diptych(known)],
        input: (_, earlier) => ({ id: made(earlier).id, changes: { gapX: { was: 30, to: 12.5 } } }),
        output: () => ({ saved: ['gapX'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a grid without columns',
        first: known => [diptych(known)],
        input: (_, earlier) => ({ id: made(earlier).id, changes: { form: { was: 'row', to: 'grid' } } }),
        code: 'grid-without-columns',
        field: 'changes.form.to',
      },
      {
        about: 'a negative gap',
        first: known => [diptych(known)],
        input: (_, earlier) => ({ id: made(earlier).id, changes: { gapX: { was: 30, to: -3 } } }),
        code: 'gap-negative',
        field: 'changes.gapX.to',
      },
    ],
  },
  'set.parts': {
    answered: [
      {
        about: 'the second part before the first, and a third',
        first: known => [diptych(known)],
        input: (known, earlier) => ({
          id: made(earlier).id,
          was: [known.pans, known.causeway],
          to: [known.causeway, known.pans, known.loose],
        }),
        output: () => ({ saved: ['parts'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'one part left',
        first: known => [diptych(known)],
        input: (known, earlier) => ({ id: made(earlier).id, was: [known.pans, known.causeway], to: [known.pans] }),
        code: 'set-too-small',
        field: 'to',
      },
    ],
  },
  'set.fix': {
    answered: [
      {
        about: 'one part on a hook of its own',
        first: known => [diptych(known)],
        input: (known, earlier) => ({
          placement: made(earlier).placement,
          work: known.pans,
          changes: { fixing: { was: null, to: known.hook } },
        }),
        output: () => ({ saved: ['fixing'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a work that is no part of it',
        first: known => [diptych(known)],
        input: (known, earlier) => ({
          placement: made(earlier).placement,
          work: known.loose,
          changes: { fixing: { was: null, to: known.hook } },
        }),
        code: 'not-found',
        field: 'work',
      },
    ],
  },
}
