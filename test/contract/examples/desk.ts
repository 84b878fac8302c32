/** The desk: people, edits, house rules, backups. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect } from 'vitest'
import type { deskArea } from '../../../src/contract/areas/desk.ts'
import { climateRuleRows } from './climate-rules.ts'
import { crewRuleRows } from './crew-rules.ts'
import { labelRuleRows } from './label-rules.ts'
import { lateRuleRows } from './late-rules.ts'
import { lightRuleRows } from './light-rules.ts'
import { recordRuleRows } from './record-rules.ts'
import { planRuleRows, surveyRuleRows } from './survey-rules.ts'
import { anyId, type ExamplesOf } from './types.ts'
import { sequenceRuleRows, weightRuleRows } from './weight-rules.ts'

/** The key that an earlier call gave: of a backup, or of the newest recent catalogue. */
function keyIn(answered: unknown): string {
  const { key, catalogues } = answered as { key?: string; catalogues?: { key: string }[] } // the two answers it is used on
  return key ?? catalogues?.[0]?.key ?? ''
}

const elsewhere: string[] = []
process.once('exit', () => {
  for (const folder of elsewhere) rmSync(folder, { recursive: true, force: true })
})

/** A folder outside the copy that an example runs on. */
function ownFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'hangwright-elsewhere-'))
  elsewhere.push(folder)
  return folder
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
  'catalogue.saveCopy': {
    answered: [
      {
        about: 'the copy with its files in another folder',
        input: () => ({ folder: ownFolder(), name: 'Low Water, spare' }),
        output: () => ({
          file: expect.stringMatching(/elsewhere-.*Low Water, spare\.hangwright$/),
          bytes: expect.any(Number),
          works: 4,
          files: 2,
          fileBytes: 81,
          missing: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a folder that is not there',
        input: () => ({ folder: join(tmpdir(), 'hangwright', 'nowhere'), name: 'spare' }),
        code: 'no-such-folder',
        field: 'folder',
      },
    ],
  },
  'catalogue.takeOut': {
    answered: [
      {
        about: 'tables, works and files in one',
        input: () => ({ files: true }),
        output: () => ({
          handle: expect.stringMatching(/\.zip$/),
          name: 'fixture 2031-03-14.zip',
          bytes: expect.any(Number),
          tables: expect.any(Number),
          rows: expect.any(Number),
          files: 2,
        }),
      },
    ],
    refused: [{ about: 'nothing said of files', input: () => ({}), code: 'bad-input', field: 'files' }],
  },
  'catalogue.move': {
    answered: [
      {
        about: 'where the catalogue and its files are now',
        input: () => ({ folder: ownFolder(), name: 'Low Water' }),
        output: () => ({
          name: 'Low Water',
          file: expect.stringMatching(/elsewhere-.*Low Water\.hangwright$/),
          files: 2,
          missing: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a folder that is not said in full',
        input: () => ({ folder: 'shows', name: 'Low Water' }),
        code: 'bad-input',
        field: 'folder',
      },
      {
        about: 'a folder that is not there',
        input: () => ({ folder: join(tmpdir(), 'hangwright', 'nowhere'), name: 'Low Water' }),
        code: 'no-such-folder',
        field: 'folder',
      },
    ],
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
              group: 'Where works hang',
              value: 1480,
              default: 1480,
              says: 'Centres of works hang at this height above the floor.',
              reason: 'One line through all works makes a row calm. A wall may have its own.',
              unit: 'mm',
              least: 300,
              most: 4000,
              choices: [],
              source: 'within the 49 to 66 in that are in use; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'heightRule',
              group: 'Where works hang',
              value: 'centre',
              default: 'centre',
              says: 'What of a work stands on the line: its centre, top, bottom, or a point a fraction of its height down.',
              reason: 'A new wall begins with it; a wall and a work may each have another.',
              unit: '',
              least: null,
              most: null,
              choices: [
                { value: 'centre', label: 'its centre' },
                { value: 'top', label: 'its top' },
                { value: 'bottom', label: 'its bottom' },
                { value: 'eye', label: 'where the eye falls' },
              ],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'eyeFraction',
              group: 'Where works hang',
              value: 0.5,
              default: 0.5,
              says: 'How far down a work the eye falls where works hang to the eye: half is the centre.',
              reason: 'Tall works hang lower by it than by their centre.',
              unit: 'of its height',
              least: 0,
              most: 1,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'minimumGap',
              group: 'Room between works',
              value: 75,
              default: 75,
              says: 'Neighbouring works stand at least this far apart.',
              reason: 'Closer, frames touch when one is lifted off, and a label has no place.',
              unit: 'mm',
              least: 0,
              most: 5000,
              choices: [],
              source: '3 to 6 in for a single row; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'minimumMargin',
              group: 'Room between works',
              value: 150,
              default: 150,
              says: 'Works stay at least this far from the end of a wall.',
              reason: 'People brush along corners and door frames.',
              unit: 'mm',
              least: 0,
              most: 5000,
              choices: [],
              source: '6 to 12 in clear at both ends; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'liftOn',
              group: 'Room between works',
              value: 25,
              default: 25,
              says: 'Free height needed above a work to lift it onto its fixing.',
              reason: 'Under a ceiling or a beam a work cannot be raised over its hooks or cleat.',
              unit: 'mm',
              least: 0,
              most: 1000,
              choices: [],
              source: '10 to 25 mm for a cleat; from memory',
              since: '',
              by: '',
              changed: false,
            },
            ...weightRuleRows,
            ...sequenceRuleRows,
            {
              key: 'markFromEnd',
              group: 'Marks',
              value: 25,
              default: 25,
              says: 'A hole is at least this far from the end of a wall or a board joint.',
              reason: 'Near an edge plaster and board break out.',
              unit: 'mm',
              least: 0,
              most: 1000,
              choices: [],
              source: 'from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'besideService',
              group: 'Marks',
              value: 25,
              default: 25,
              says: 'A hole above or below a switch or an outlet stays this far to its side, or is asked about.',
              reason: 'Cables run straight up and down from them. Look for them before drilling in any case.',
              unit: 'mm',
              least: 0,
              most: 1000,
              choices: [],
              source: 'from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'boardFace',
              group: 'Marks',
              value: 12.7,
              default: 12.7,
              says: 'The face of a drywall is this thick, with or without ply behind it.',
              reason: 'What a nail or screw has in stud or backing is its length less this. Measure it on the spot.',
              unit: 'mm',
              least: 3,
              most: 100,
              choices: [],
              source: '1/2 in board; from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'plasterFace',
              group: 'Marks',
              value: 22,
              default: 22,
              says: 'The face of a plaster wall is this thick.',
              reason: 'What a nail or screw has in stud or backing is its length less this. Measure it on the spot.',
              unit: 'mm',
              least: 3,
              most: 100,
              choices: [],
              source: 'plaster on lath; from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'leastBehind',
              group: 'Marks',
              value: 18,
              default: 18,
              says: 'A nail or screw finds at least this much stud or backing behind the face.',
              reason: 'One that is shorter holds by the face alone.',
              unit: 'mm',
              least: 1,
              most: 200,
              choices: [],
              source: 'the thickness of 3/4 in ply, the usual backing; from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'nailsIn',
              group: 'Marks',
              value: 1 / 3,
              default: 1 / 3,
              says: 'Nails under a stretcher bar stand this far in from each side of the work.',
              reason:
                'A third in carries an ordinary bar; a quarter is steadier for a long one. Braces move a nail aside.',
              unit: 'of its width',
              least: 0.05,
              most: 0.45,
              choices: [],
              source: 'a third and a quarter are both in use; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'clearOfBrace',
              group: 'Marks',
              value: 10,
              default: 10,
              says: 'A nail under a stretcher bar stays this far from a brace or a key, beside its own half thickness.',
              reason: 'A nail against a brace or a key splits it, or lifts the bar off the other nail.',
              unit: 'mm',
              least: 0,
              most: 200,
              choices: [],
              source: 'from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'cleatShorter',
              group: 'Marks',
              value: 19.05,
              default: 19.05,
              says: 'The wall’s part of a cleat is this much shorter than the work’s, where nobody measured it.',
              reason: 'The work slides sideways on it by half of this to either side.',
              unit: 'mm',
              least: 0,
              most: 500,
              choices: [],
              source: '1/2 to 1 in; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'screwsApart',
              group: 'Marks',
              value: 127,
              default: 127,
              says: 'Screws of a cleat’s wall part are at most this far apart where no studs decide.',
              reason: 'The bar must not bow between them.',
              unit: 'mm',
              least: 25,
              most: 1000,
              choices: [],
              source: '4 to 6 in; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'houseFactor',
              group: 'Loads',
              value: 4,
              default: 4,
              says: 'A fixing carries at most its rated load divided by this.',
              reason: 'A rating holds for the maker’s wall and a good installation; yours may be worse.',
              unit: '×',
              least: 1,
              most: 20,
              choices: [],
              source: 'framing trade; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'leastWireAngle',
              group: 'Loads',
              value: 30,
              default: 30,
              says: 'A wire’s legs stand at least this steep, counted from the horizontal.',
              reason: 'At 30° each ring is pulled with the whole weight of the work; flatter, with more.',
              unit: '°',
              least: 1,
              most: 89,
              choices: [],
              source: 'the load factor 1 / sin of published sling tables; the limit is common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'hookHidden',
              group: 'Loads',
              value: 50.8,
              default: 50.8,
              says: 'A wire on its hooks stays at least this far below the top edge of its work.',
              reason: 'Nearer, the hooks show over the frame.',
              unit: 'mm',
              least: 0,
              most: 1000,
              choices: [],
              source: '2 in; common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'onePersonKg',
              group: 'Loads',
              value: 30,
              default: 30,
              says: 'A heavier work is carried and hung by two people or more.',
              reason: 'It is said on the wall sheet. Local rules on lifting come first.',
              unit: 'kg',
              least: 1,
              most: 100,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'onePersonSize',
              group: 'Loads',
              value: 1500,
              default: 1500,
              says: 'A larger work is carried and hung by two people or more, whatever it weighs.',
              reason: 'Nobody can see round it or hold both its ends.',
              unit: 'mm',
              least: 100,
              most: 10000,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'liftingPlanKg',
              group: 'Loads',
              value: 150,
              default: 150,
              says: 'For a heavier work a competent person makes the lifting plan.',
              reason: 'It is said with the marks and on the wall sheet. Local rules on lifting come first.',
              unit: 'kg',
              least: 1,
              most: 2000,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'measureTolerance',
              group: 'Measures and sheets',
              value: 1,
              default: 1,
              says: 'Two ways to one spacing on the back may differ by this before it is measured again.',
              reason: 'Hangers that are off by more do not meet their fixings.',
              unit: 'mm',
              least: 0,
              most: 50,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'dropTolerance',
              group: 'Measures and sheets',
              value: 2,
              default: 2,
              says: 'Two drops of one work, or the floor beneath it, may be off level by this before it is a finding.',
              reason: 'More than this is seen: the work hangs crooked, or wrong against its neighbours.',
              unit: 'mm',
              least: 0,
              most: 50,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'differsBy',
              group: 'Measures and sheets',
              value: 3,
              default: 3,
              says: 'Listed and measured sizes that differ by more than this are a finding.',
              reason: 'Frames are larger than lists say; gaps and marks follow the measured size.',
              unit: 'mm',
              least: 0,
              most: 500,
              choices: [],
              source: 'from memory',
              since: '',
              by: '',
              changed: false,
            },
            {
              key: 'closesWithin',
              group: 'Measures and sheets',
              value: 20,
              default: 20,
              says: 'A room whose measured walls fail to close by more than this has one to measure again.',
              reason: 'A tape read wrong shows here before works are hung by it.',
              unit: 'mm',
              least: 0,
              most: 2000,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            ...surveyRuleRows,
            ...planRuleRows,
            {
              key: 'sheetStepMm',
              group: 'Measures and sheets',
              value: 1,
              default: 1,
              says: 'Sheets in millimetres round to this step.',
              reason: 'What a pencil and a tape can keep.',
              unit: 'mm',
              least: 0.1,
              most: 10,
              choices: [],
              source: 'common practice, no source',
              since: '',
              by: '',
              changed: false,
            },
            ...labelRuleRows,
            ...crewRuleRows,
            ...lateRuleRows,
            ...recordRuleRows,
            ...lightRuleRows,
            ...climateRuleRows,
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
        about: 'a value beyond the rule’s bounds',
        input: () => ({ key: 'leastWireAngle', was: 30, to: 90, source: '' }),
        code: 'bad-input',
        field: 'to',
      },
      {
        about: 'a choice that there is not',
        input: () => ({ key: 'heightRule', was: 'centre', to: 'nose', source: '' }),
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
      {
        about: 'the name as the person wrote it',
        files: [{ name: 'Leihvertrag für Ödön (2. Fassung).txt', bytes: new TextEncoder().encode('no daylight') }],
        input: () => ({ handle: '$1' }),
        output: () => ({ name: 'Leihvertrag für Ödön (2. Fassung).txt', bytes: 11 }),
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
