/** What was done: the list of edits, what one changed, one record's history. */
import type { historyArea } from '../../../src/contract/areas/history.ts'
import type { Known } from '../fixture.ts'
import { anyId, anyMoment, type ExamplesOf } from './types.ts'

/** The edit by which the fixture says how Causeway is fixed. */
const fixedAt = 25

const because = { edit: fixedAt, why: 'the wire slipped', by: 'Tamsin Oake' }

const field = (column: string, called: string, to: unknown, name: string | null = null) => ({
  column,
  called,
  unit: '',
  from: null,
  to,
  names: [null, name],
})

const fixed = (known: Known) => ({
  edit: fixedAt,
  at: anyMoment,
  person: '',
  label: 'Change how Causeway is fixed',
  kind: 'changed',
  table: 'placement',
  key: known.causewayPlace,
  one: 'place of a work',
  called: 'Causeway',
  fields: [field('fixing', 'fixing', known.hook, 'two-nail hook, 50 lb')],
})

export const historyExamples: ExamplesOf<keyof typeof historyArea> = {
  'edit.list': {
    answered: [
      {
        about: 'an edit found by why it was made',
        first: () => [['edit.explain', because]],
        input: () => ({ find: 'SLIPPED fix' }),
        output: () => ({
          total: 1,
          people: [],
          edits: [
            {
              edit: fixedAt,
              label: 'Change how Causeway is fixed',
              person: '',
              at: anyMoment,
              takenBack: false,
              reasons: [{ why: because.why, by: because.by, at: anyMoment }],
            },
          ],
        }),
      },
      {
        about: 'the newest edits and how many there are',
        input: () => ({ limit: 2 }),
        output: () => ({
          total: 30,
          people: [],
          edits: [
            {
              edit: 30,
              label: 'Slack Water: planning → closed',
              person: '',
              at: anyMoment,
              takenBack: false,
              reasons: [],
            },
            {
              edit: 29,
              label: 'Attach terms.txt to Salt pans',
              person: '',
              at: anyMoment,
              takenBack: false,
              reasons: [],
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'more than a page', input: () => ({ limit: 501 }), code: 'bad-input', field: 'limit' },
      {
        about: 'days in the wrong order',
        input: () => ({ from: '2031-03-02T00:00:00.000Z', until: '2031-03-01T00:00:00.000Z' }),
        code: 'dates-reversed',
        field: 'until',
      },
    ],
  },
  'edit.changes': {
    answered: [
      {
        about: 'what fixing Causeway changed, in words',
        input: () => ({ edit: fixedAt }),
        output: known => ({ total: 1, reasons: [], changes: [fixed(known)] }),
      },
    ],
    refused: [{ about: 'an edit that never was', input: () => ({ edit: 9999 }), code: 'not-found', field: 'edit' }],
  },
  'edit.history': {
    answered: [
      {
        about: 'every change of one placement, the newest first',
        input: known => ({ table: 'placement', id: known.causewayPlace }),
        output: known => ({
          total: 2,
          changes: [
            { ...fixed(known), reasons: [] },
            {
              ...fixed(known),
              reasons: [],
              edit: fixedAt - 1,
              label: 'Place 2 works on Room 1 north',
              kind: 'added',
              // As it was written: what was changed after is told by the change.
              fields: [
                field('exhibition', 'show', known.show, 'Low Water'),
                field('entry', 'entry', known.causewayEntry, 'Causeway'),
                field('face', 'face', known.northFace, 'north'),
                { ...field('x', 'from the left end', 2367), unit: 'mm' },
                field('rule', 'height by', 'face'),
                field('held', 'held', 0),
                field('state', 'state', 'planned'),
              ],
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'no table', input: known => ({ id: known.pans }), code: 'bad-input', field: 'table' },
      {
        about: 'a table that is not journaled',
        input: known => ({ table: 'edit', id: known.pans }),
        code: 'not-found',
        field: 'table',
      },
    ],
  },
  'edit.explain': {
    answered: [{ about: 'why an edit was made, said afterwards', input: () => because, output: () => ({ id: anyId }) }],
    refused: [
      {
        about: 'an edit that never was',
        input: () => ({ ...because, edit: 9999 }),
        code: 'not-found',
        field: 'edit',
      },
      { about: 'no reason', input: () => ({ ...because, why: '  ' }), code: 'bad-input', field: 'why' },
      {
        about: 'nobody who says it',
        input: () => ({ edit: because.edit, why: because.why }),
        code: 'no-name',
        field: 'by',
      },
    ],
  },
}
