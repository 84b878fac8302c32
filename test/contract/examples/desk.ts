/** The desk: people, edits, house rules, backups. */
import { expect } from 'vitest'
import type { deskArea } from '../../../src/contract/areas/desk.ts'
import { crewRuleRows } from './crew-rules.ts'
import { anyId, anyMoment, type ExamplesOf } from './types.ts'

/** The key that an earlier call gave: of a backup, or of the newest recent catalogue. */
function keyIn(answered: unknown): string {
  const { key, catalogues } = answered as { key?: string; catalogues?: { key: string }[] } // the two answers it is used on
  return key ?? catalogues?.[0]?.key ?? ''
}

export const deskExamples: ExamplesOf<keyof typeof deskArea> = {
  'desk.state': {
    answered: [
      {
        about: 'which catalogue is open and that nobody sits here yet',
        input: () => ({}),
        output: () => ({
          host: 'loopback',
          catalogue: { name: 'fixture', file: expect.stringContaining('fixture.hangwright'), demo: false },
          person: null,
          version: '0.1.0',
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'desk.recent': {
    answered: [
      {
        about: 'no recent catalogue on a machine that remembers none',
        input: () => ({}),
        output: () => ({ catalogues: [] }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'desk.new': {
    answered: [
      {
        about: 'the new catalogue, open',
        input: () => ({ name: 'Spring shows' }),
        output: () => ({ name: 'Spring shows', file: expect.stringContaining('Spring shows.hangwright') }),
      },
    ],
    refused: [{ about: 'a name without letters', input: () => ({ name: '///' }), code: 'bad-input', field: 'name' }],
  },
  'desk.open': {
    answered: [
      {
        about: 'the catalogue that was opened before',
        first: () => [
          ['desk.new', { name: 'Next' }],
          ['desk.recent', {}],
        ],
        input: (_known, earlier) => ({ key: keyIn(earlier[1]) }),
        output: () => ({ name: 'Next', file: expect.stringContaining('Next.hangwright') }),
      },
    ],
    refused: [
      {
        about: 'a catalogue that is not among the recent ones',
        input: () => ({ key: 'none' }),
        code: 'not-found',
        field: 'key',
      },
    ],
  },
  'catalogue.backups': {
    answered: [
      {
        about: 'no backup of a catalogue that nobody has opened yet',
        input: () => ({}),
        output: () => ({ backups: [] }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'catalogue.backup': {
    answered: [
      {
        about: 'the copy with its files, every hash verified',
        input: () => ({ name: 'before the move' }),
        output: () => ({
          file: expect.stringContaining('before the move.hangwright'),
          bytes: expect.any(Number),
          works: 4,
          files: 2,
          fileBytes: 81,
          missing: [],
        }),
      },
    ],
    refused: [{ about: 'an empty name', input: () => ({ name: ' ' }), code: 'bad-input', field: 'name' }],
  },
  'catalogue.keepBackup': {
    answered: [
      {
        about: 'the key of the new backup',
        input: () => ({}),
        output: () => ({ key: '20310314T162000000Z-30-opening.hangwright' }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'catalogue.restore': {
    answered: [
      {
        about: 'where the catalogue before was put',
        first: () => [['catalogue.keepBackup', {}]],
        input: (_known, earlier) => ({ key: keyIn(earlier[0]) }),
        output: () => ({
          file: expect.stringContaining('fixture.hangwright'),
          putAside: expect.stringContaining('20310314T162000000Z-30-restore.hangwright'),
        }),
      },
    ],
    refused: [{ about: 'a backup that is not there', input: () => ({ key: 'none' }), code: 'not-found', field: 'key' }],
  },
  'catalogue.check': {
    answered: [
      {
        about: 'that file, references, text index and files are whole',
        input: () => ({}),
        output: () => ({ ok: true, integrity: [] }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'catalogue.tidy': {
    answered: [{ about: 'that nothing is left over', input: () => ({}), output: () => ({ removed: 0, bytes: 0 }) }],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'desk.sit': {
    answered: [
      {
        about: 'who sits at the desk from now on',
        input: known => ({ person: known.person }),
        output: known => ({
          id: known.person,
          name: 'Tamsin Oake',
          role: 'technician',
          paper: 'A4',
          fraction: 16,
          lengthUnit: 'mm',
        }),
      },
    ],
    refused: [{ about: 'somebody unknown', input: () => ({ person: 'zzzzzz' }), code: 'not-found', field: 'person' }],
  },
  'desk.cancel': {
    answered: [
      {
        about: 'that there is no such work to cancel',
        input: () => ({ job: 'none' }),
        output: () => ({ cancelled: false }),
      },
    ],
    refused: [
      { about: 'a name that is too long', input: () => ({ job: 'x'.repeat(65) }), code: 'bad-input', field: 'job' },
    ],
  },
  'person.list': {
    answered: [
      {
        about: 'the people of this desk',
        input: () => ({}),
        output: known => ({
          people: [
            { id: known.person, name: 'Tamsin Oake', role: 'technician', paper: 'A4', fraction: 16, lengthUnit: 'mm' },
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'person.add': {
    answered: [
      {
        about: 'the person as added',
        input: () => ({ name: 'Ned Farr', role: 'registrar', lengthUnit: 'in', paper: 'Letter', fraction: 8 }),
        output: () => ({
          id: anyId,
          name: 'Ned Farr',
          role: 'registrar',
          lengthUnit: 'in',
          paper: 'Letter',
          fraction: 8,
        }),
      },
    ],
    refused: [
      {
        about: 'a person without a name',
        input: () => ({ name: '  ', role: '', lengthUnit: 'mm', paper: 'A4', fraction: 16 }),
        code: 'bad-input',
        field: 'name',
      },
      {
        about: 'a fraction that no tape has',
        input: () => ({ name: 'Ned', role: '', lengthUnit: 'mm', paper: 'A4', fraction: 10 }),
        code: 'bad-input',
        field: 'fraction',
      },
    ],
  },
  'person.update': {
    answered: [
      {
        about: 'the person with another unit',
        input: known => ({ id: known.person, lengthUnit: 'cm' }),
        output: known => ({
          id: known.person,
          name: 'Tamsin Oake',
          role: 'technician',
          paper: 'A4',
          fraction: 16,
          lengthUnit: 'cm',
        }),
      },
    ],
    refused: [
      { about: 'somebody unknown', input: () => ({ id: 'zzzzzz', role: 'x' }), code: 'not-found', field: 'id' },
    ],
  },
  'edit.state': {
    answered: [
      {
        about: 'what undo would take back',
        input: () => ({}),
        output: () => ({ undo: 'Slack Water: planning → closed', redo: null, last: 30 }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'edit.list': {
    answered: [
      {
        about: 'the newest edits and how many there are',
        input: () => ({ limit: 2 }),
        output: () => ({
          total: 30,
          edits: [
            { edit: 30, label: 'Slack Water: planning → closed', person: '', at: anyMoment, takenBack: false },
            { edit: 29, label: 'Attach terms.txt to Salt pans', person: '', at: anyMoment, takenBack: false },
          ],
        }),
      },
    ],
    refused: [{ about: 'more than a page', input: () => ({ limit: 501 }), code: 'bad-input', field: 'limit' }],
  },
  'edit.history': {
    answered: [
      {
        about: 'every change of one placement',
        input: known => ({ table: 'placement', id: known.causewayPlace }),
        output: known => ({
          changes: [
            { at: anyMoment, person: '', label: 'Place 2 works on Room 1 north', kind: 'added', fields: {} },
            {
              at: anyMoment,
              person: '',
              label: 'Change how Causeway is fixed',
              kind: 'changed',
              fields: { fixing: [null, known.hook] },
            },
          ],
        }),
      },
    ],
    refused: [{ about: 'no table', input: known => ({ id: known.pans }), code: 'bad-input', field: 'table' }],
  },
  'edit.undo': {
    answered: [
      { about: 'what was undone', input: () => ({}), output: () => ({ undone: 'Slack Water: planning → closed' }) },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'edit.redo': {
    answered: [
      {
        about: 'what was done again',
        first: () => [['edit.undo', {}]],
        input: () => ({}),
        output: () => ({ redone: 'Slack Water: planning → closed' }),
      },
    ],
    refused: [{ about: 'to do again what nobody has undone', input: () => ({}), code: 'nothing-to-redo', field: null }],
  },
  'rule.list': {
    answered: [
      {
        about: 'every house rule with its origin',
        input: () => ({}),
        output: () => ({
          rules: [
            {
              key: 'centreLine',
              value: 1480,
              says: 'Centres of works hang at this height above the floor.',
              unit: 'mm',
              source: 'within the 49 to 66 in that are in use; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'heightRule',
              value: 'centre',
              says: 'What of a work stands on the line: its centre, top, bottom, or a point a fraction of its height down.',
              unit: '',
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'eyeFraction',
              value: 0.5,
              says: 'How far down a work the eye falls where works hang to the eye: 0.5 is the centre.',
              unit: '',
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'minimumGap',
              value: 75,
              says: 'Neighbouring works stand at least this far apart.',
              unit: 'mm',
              source: '3 to 6 in for a single row; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'minimumMargin',
              value: 150,
              says: 'Works stay at least this far from the end of a wall.',
              unit: 'mm',
              source: '6 to 12 in clear at both ends; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'houseFactor',
              value: 4,
              says: 'A fixing carries at most its rated load divided by this.',
              unit: '×',
              source: 'framing trade; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'markFromEnd',
              value: 25,
              says: 'A hole is at least this far from the end of a wall or a board joint.',
              unit: 'mm',
              source: 'from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'liftOn',
              value: 25,
              says: 'Free height needed above a work to lift it onto its fixing.',
              unit: 'mm',
              source: '10 to 25 mm for a cleat; from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'sheetStepMm',
              value: 1,
              says: 'Sheets in millimetres round to this step.',
              unit: 'mm',
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'differsBy',
              value: 3,
              says: 'Listed and measured sizes that differ by more than this are a finding.',
              unit: 'mm',
              source: 'from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'closesWithin',
              value: 20,
              says: 'A room whose measured walls fail to close by more than this has one to measure again.',
              unit: 'mm',
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            ...crewRuleRows,
          ],
        }),
      },
    ],
    refused: [
      { about: 'a field that it does not know', input: () => ({ nonsense: 1 }), code: 'bad-input', field: 'nonsense' },
    ],
  },
  'rule.set': {
    answered: [
      {
        about: 'that a house rule is set',
        input: () => ({ key: 'centreLine', was: 1480, to: 1450, source: 'children’s room' }),
        output: () => ({ done: true }),
      },
    ],
    refused: [
      {
        about: 'a rule that is none',
        input: () => ({ key: 'toString', was: 1, to: 2, source: '' }),
        code: 'not-found',
        field: 'key',
      },
      {
        about: 'a value of another kind',
        input: () => ({ key: 'centreLine', was: 1480, to: 'high', source: '' }),
        code: 'bad-input',
        field: 'to',
      },
      {
        about: 'a value that somebody has changed meanwhile',
        input: () => ({ key: 'centreLine', was: 1500, to: 1450, source: '' }),
        code: 'clash',
        field: 'to',
      },
    ],
  },
  'file.describe': {
    answered: [
      {
        about: 'name and size of an uploaded file',
        files: [{ name: 'terms.txt', bytes: new TextEncoder().encode('no daylight') }],
        input: () => ({ handle: '$1' }),
        output: () => ({ name: 'terms.txt', bytes: 11 }),
      },
    ],
    refused: [
      {
        about: 'a handle that is a path',
        input: () => ({ handle: '../../etc/passwd' }),
        code: 'bad-input',
        field: 'handle',
      },
    ],
  },
}
