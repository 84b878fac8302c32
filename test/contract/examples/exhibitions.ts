/** Exhibitions, sections, and works in their order. */
import type { exhibitionsArea } from '../../../src/contract/areas/exhibitions.ts'
import { anyId, type ExamplesOf } from './types.ts'

export const exhibitionsExamples: ExamplesOf<keyof typeof exhibitionsArea> = {
  'exhibition.list': {
    answered: [
      {
        about: 'the shows with their works',
        input: () => ({}),
        output: known => ({
          exhibitions: [
            {
              id: known.show,
              title: 'Low Water',
              venue: 'East rooms',
              opens: '2031-04-01',
              closes: '2031-07-01',
              state: 'planning',
              note: '',
              works: 3,
              placed: 2,
            },
            {
              id: known.other,
              title: 'High Water',
              venue: '',
              opens: '',
              closes: '',
              state: 'planning',
              note: '',
              works: 0,
              placed: 0,
            },
            {
              id: known.closed,
              title: 'Slack Water',
              venue: '',
              opens: '',
              closes: '',
              state: 'closed',
              note: '',
              works: 0,
              placed: 0,
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'exhibition.add': {
    answered: [
      {
        about: 'the new show',
        input: () => ({ title: 'Neap', opens: '2032-01-01', closes: '2032-02-01' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'closing before it opens',
        input: () => ({ title: 'x', opens: '2031-05-02', closes: '2031-05-01' }),
        code: 'bad-input',
        field: 'closes',
      },
      {
        about: 'a day that there is not',
        input: () => ({ title: 'x', opens: '2031-02-30' }),
        code: 'bad-input',
        field: 'opens',
      },
    ],
  },
  'exhibition.update': {
    answered: [
      {
        about: 'that it is renamed',
        input: known => ({ id: known.show, changes: { title: { was: 'Low Water', to: 'Low water' } } }),
        output: () => ({ saved: ['title'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a closed show',
        input: known => ({ id: known.closed, changes: { title: { was: 'Slack Water', to: 'x' } } }),
        code: 'exhibition-closed',
        field: 'id',
      },
    ],
  },
  'exhibition.setState': {
    answered: [
      {
        about: 'that it is installing',
        input: known => ({ id: known.show, was: 'planning', to: 'installing' }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a state that it has left',
        input: known => ({ id: known.show, was: 'open', to: 'closing' }),
        code: 'clash',
        field: 'to',
      },
    ],
  },
  'exhibition.copy': {
    answered: [
      {
        about: 'the copy',
        input: known => ({ id: known.show, title: 'Low Water again', placements: true }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a show that is not there',
        input: () => ({ id: 'zzzzzz', title: 'x', placements: false }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'exhibition.remove': {
    answered: [{ about: 'that it is gone', input: known => ({ id: known.other }), output: () => ({ done: true }) }],
    refused: [{ about: 'a show that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' }],
  },
  'exhibition.frieze': {
    answered: [
      {
        about: 'the works in order with their sections',
        input: known => ({ exhibition: known.show }),
        output: known => ({
          sections: [
            { id: known.shore, title: 'The shore' },
            { id: known.boats, title: 'Boats' },
          ],
          works: [
            {
              entry: known.pansEntry,
              work: known.pans,
              section: known.shore,
              running: '',
              title: 'Salt pans',
              height: 620,
              width: 480,
              picture: known.pansPictureHash,
              face: known.northFace,
              medium: 'etching on paper',
              lender: 'Quay Collection',
              lightLimit: null,
            },
            {
              entry: known.causewayEntry,
              work: known.causeway,
              section: known.shore,
              running: '',
              title: 'Causeway',
              height: 910,
              width: 710,
              picture: null,
              face: known.northFace,
              medium: 'oil on canvas',
              lender: 'Quay Collection',
              lightLimit: null,
            },
            {
              entry: known.rakingEntry,
              work: known.raking,
              section: known.shore,
              running: '',
              title: 'Raking',
              height: 540,
              width: 540,
              picture: null,
              face: null,
              medium: 'gelatin silver print',
              lender: 'Quay Collection',
              lightLimit: null,
            },
          ],
        }),
      },
    ],
    refused: [{ about: 'no show', input: () => ({}), code: 'bad-input', field: 'exhibition' }],
  },
  'exhibition.renumber': {
    answered: [
      { about: 'how many numbers changed', input: known => ({ id: known.show }), output: () => ({ changed: 3 }) },
    ],
    refused: [
      { about: 'a closed show', input: known => ({ id: known.closed }), code: 'exhibition-closed', field: 'id' },
    ],
  },
  'section.add': {
    answered: [
      {
        about: 'the new section',
        input: known => ({ exhibition: known.show, title: 'Storms' }),
        output: () => ({ id: anyId }),
      },
    ],
    refused: [
      {
        about: 'a section without a title',
        input: known => ({ exhibition: known.show, title: '' }),
        code: 'bad-input',
        field: 'title',
      },
    ],
  },
  'section.update': {
    answered: [
      {
        about: 'that it is renamed',
        input: known => ({ id: known.boats, changes: { title: { was: 'Boats', to: 'Hulls' } } }),
        output: () => ({ saved: ['title'], clashes: [] }),
      },
      {
        about: 'that its works hang in stacks',
        input: known => ({
          id: known.boats,
          changes: { hang: { was: 'row', to: 'stacks' }, gapDown: { was: 80, to: 63.5 } },
        }),
        output: () => ({ saved: ['hang', 'gapDown'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'one above nothing',
        input: known => ({ id: known.boats, changes: { rows: { was: 2, to: 1 } } }),
        code: 'bad-input',
        field: 'changes.rows.to',
      },
      {
        about: 'a section that is not there',
        input: () => ({ id: 'zzzzzz', changes: {} }),
        code: 'not-found',
        field: 'id',
      },
    ],
  },
  'section.move': {
    answered: [
      {
        about: 'that it is moved',
        input: known => ({ id: known.boats, before: known.shore }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'before a section of another show',
        input: known => ({ id: known.boats, before: 'zzzzzz' }),
        code: 'not-found',
        field: 'before',
      },
    ],
  },
  'section.remove': {
    answered: [{ about: 'that it is gone', input: known => ({ id: known.shore }), output: () => ({ done: true }) }],
    refused: [
      { about: 'a section that is not there', input: () => ({ id: 'zzzzzz' }), code: 'not-found', field: 'id' },
    ],
  },
  'entry.add': {
    answered: [
      {
        about: 'the new entry and how many stood there already',
        input: known => ({ exhibition: known.show, works: [known.loose, known.pans], section: known.boats }),
        output: () => ({ entries: [anyId], already: 1 }),
      },
    ],
    refused: [
      {
        about: 'a work that is not there',
        input: known => ({ exhibition: known.show, works: [known.loose, 'zzzzzz'] }),
        code: 'not-found',
        field: 'works.1',
      },
    ],
  },
  'entry.move': {
    answered: [
      {
        about: 'that the works are moved',
        input: known => ({ entries: [known.rakingEntry], section: known.shore, before: known.pansEntry }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a work that is not in a show',
        input: () => ({ entries: ['zzzzzz'], section: null, before: null }),
        code: 'not-found',
        field: 'entries.0',
      },
    ],
  },
  'entry.setRunning': {
    answered: [
      {
        about: 'that the number is set',
        input: known => ({ id: known.pansEntry, was: '', to: '12a' }),
        output: () => ({ saved: ['running'], clashes: [] }),
      },
    ],
    refused: [
      {
        about: 'a work that is not in a show',
        input: () => ({ id: 'zzzzzz', was: '', to: '1' }),
        code: 'not-found',
        field: 'entries.0',
      },
    ],
  },
  'entry.setStatus': {
    answered: [
      {
        about: 'how many were marked',
        input: known => ({ entries: [known.pansEntry, known.rakingEntry], to: 'arrived' }),
        output: () => ({ changed: 2 }),
      },
    ],
    refused: [
      {
        about: 'a step that there is not',
        input: known => ({ entries: [known.pansEntry], to: 'lost' }),
        code: 'bad-input',
        field: 'to',
      },
    ],
  },
  'entry.remove': {
    answered: [
      {
        about: 'how many left the show',
        input: known => ({ entries: [known.rakingEntry] }),
        output: () => ({ removed: 1 }),
      },
    ],
    refused: [
      {
        about: 'a work that hangs',
        first: known => [['placement.setState', { placements: [known.pansPlace], to: 'hung' }]],
        input: known => ({ entries: [known.pansEntry] }),
        code: 'hung',
        field: 'entries.0',
      },
    ],
  },
}
