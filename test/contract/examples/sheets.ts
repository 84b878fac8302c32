/** What each procedure about sheets answers and refuses. */
import { expect } from 'vitest'
import type { sheetsArea } from '../../../src/contract/areas/sheets.ts'
import { anyHandle, anyMoment, type ExamplesOf, type Refused } from './types.ts'

const nowhere = 'zzzzzz'
const logged = new TextEncoder().encode(
  'Time,Temp °C,RH %\n2031-03-10T11:00Z,20,50\n2031-03-10T11:05Z,20.5,62\n2031-03-10T11:10Z,20,51\n',
)
const noShow: Refused = {
  about: 'an exhibition that is not there',
  input: () => ({ exhibition: nowhere }),
  code: 'not-found',
  field: 'exhibition',
}
const planFile = {
  kind: 'plan',
  handle: anyHandle,
  name: 'The Maltings Low Water plan revision 1.pdf',
  face: null,
  pages: 1,
  revision: 1,
}
const checklistFile = {
  kind: 'checklist',
  handle: anyHandle,
  name: 'Low Water checklist.xlsx',
  face: null,
  pages: null,
  revision: null,
}
const hangListFile = {
  kind: 'hang list',
  handle: anyHandle,
  name: 'Low Water hang list.xlsx',
  face: null,
  pages: null,
  revision: null,
}
const wallFile = (face: string | undefined, revision: number) => ({
  kind: 'wall sheet',
  handle: anyHandle,
  name: `Low Water Room 1, north revision ${revision}.pdf`,
  face,
  pages: 1,
  revision,
})

/** The id that an answer gave. */
const made = (answer: unknown) => (answer as { id: string }).id // each such call answers with the id it made

const pageSaying = (text: string, [width, height]: readonly [number, number]) => ({
  width,
  height,
  shapes: expect.arrayContaining([expect.objectContaining({ kind: 'text', text })]),
})

const onePdf = (kind: string, name: string, pages: number) => ({
  kind,
  handle: anyHandle,
  name: `${name}.pdf`,
  face: null,
  pages,
  revision: null,
})

/** A table as a workbook and on paper. */
const pairOf = (kind: string, pages: number, show = 'Low Water') =>
  [null, pages].map(each => ({
    kind,
    handle: anyHandle,
    name: `${show} ${kind}.${each === null ? 'xlsx' : 'pdf'}`,
    face: null,
    pages: each,
    revision: null,
  }))

export const sheetsExamples: ExamplesOf<keyof typeof sheetsArea> = {
  'sheet.wall': {
    answered: [
      {
        about: 'the first print of a face is its revision 1',
        input: known => ({ exhibition: known.show ?? '', faces: [known.northFace ?? ''], paper: 'A4' }),
        output: known => ({ files: [wallFile(known.northFace, 1)], findings: [] }),
      },
      {
        about: 'a work that moved makes the next revision',
        first: known => [
          ['sheet.wall', { exhibition: known.show, faces: [known.northFace] }],
          [
            'placement.put',
            {
              exhibition: known.show,
              places: [
                {
                  entry: known.causewayEntry,
                  face: known.northFace,
                  x: 2400,
                  rule: 'face',
                  y: null,
                  was: { face: known.northFace, x: 2367, rule: 'face', y: null },
                },
              ],
            },
          ],
        ],
        input: known => ({ exhibition: known.show ?? '', faces: [known.northFace ?? ''], unit: 'in' }),
        output: known => ({ files: [wallFile(known.northFace, 2)], findings: [] }),
      },
    ],
    refused: [
      {
        about: 'a face that is not there',
        input: known => ({ exhibition: known.show, faces: [known.northFace, nowhere] }),
        code: 'not-found',
        field: 'faces.1',
      },
      {
        about: 'a wall with two datums: a work’s own height from the left end, a line from the high point',
        first: known => [
          [
            'wall.update',
            {
              id: known.north,
              changes: {
                floor: {
                  was: [],
                  to: [
                    [0, 0],
                    [4000, 30],
                  ],
                },
                datumBy: { was: '', to: 'high' },
              },
            },
          ],
          [
            'placement.put',
            {
              exhibition: known.show,
              places: [
                {
                  entry: known.causewayEntry,
                  face: known.northFace,
                  x: 2367,
                  rule: 'top',
                  y: 1900,
                  was: { face: known.northFace, x: 2367, rule: 'face', y: null },
                },
              ],
            },
          ],
        ],
        input: known => ({ exhibition: known.show, faces: [known.northFace] }),
        code: 'datum-mixed',
        field: 'faces.0',
      },
      {
        about: 'a paper that nobody has',
        input: known => ({ exhibition: known.show, faces: [known.northFace], paper: 'B4' }),
        code: 'bad-input',
        field: 'paper',
      },
      { ...noShow, input: known => ({ exhibition: nowhere, faces: [known.northFace] }) },
    ],
  },
  'sheet.checklist': {
    answered: [
      {
        about: 'a workbook of the show',
        input: known => ({ exhibition: known.show ?? '' }),
        output: () => ({ files: [checklistFile], findings: [] }),
      },
      {
        about: 'the same with what each work is worth',
        input: known => ({ exhibition: known.show ?? '', withValues: true }),
        output: () => ({ files: [checklistFile], findings: [] }),
      },
    ],
    refused: [
      noShow,
      {
        about: 'a choice that is neither yes nor no',
        input: known => ({ exhibition: known.show ?? '', withValues: 'some' }),
        code: 'bad-input',
        field: 'withValues',
      },
    ],
  },
  'sheet.hangList': {
    answered: [
      {
        about: 'a workbook, room by room',
        input: known => ({ exhibition: known.show ?? '', unit: 'in', fraction: 32 }),
        output: () => ({ files: [hangListFile], findings: [] }),
      },
    ],
    refused: [noShow],
  },
  'sheet.hardware': {
    answered: [
      {
        about: 'a workbook and the same on paper',
        input: known => ({ exhibition: known.show ?? '' }),
        // In total, small parts, boxes, and the work whose back nobody has measured.
        output: () => ({ files: pairOf('hardware list', 4), findings: [] }),
      },
    ],
    refused: [noShow],
  },
  'sheet.hangingOrder': {
    answered: [
      {
        about: 'the order up and down, and tags for the backs',
        input: known => ({ exhibition: known.show ?? '', paper: 'Letter' }),
        output: () => ({
          files: [
            ...pairOf('hanging order', 4),
            {
              kind: 'back tags',
              handle: anyHandle,
              name: 'Low Water tags for the backs.pdf',
              face: null,
              pages: 1,
              revision: null,
            },
          ],
          findings: [],
        }),
      },
      {
        about: 'a show with nothing on its walls has no tags',
        input: known => ({ exhibition: known.other ?? '' }),
        output: () => ({ files: pairOf('hanging order', 3, 'High Water'), findings: [] }),
      },
    ],
    refused: [noShow],
  },
  'sheet.patchList': {
    answered: [
      {
        about: 'holes wall by wall',
        input: known => ({ exhibition: known.show ?? '', unit: 'in' }),
        output: () => ({ files: pairOf('patch list', 1), findings: [] }),
      },
    ],
    refused: [noShow],
  },
  'sheet.locks': {
    answered: [
      {
        about: 'the register of a show without locks, on paper and as a workbook',
        input: known => ({ exhibition: known.show ?? '', unit: 'in' }),
        output: () => ({ files: pairOf('lock register', 1), findings: [] }),
      },
    ],
    refused: [noShow],
  },
  'sheet.movements': {
    answered: [
      {
        about: 'the sheet of a day without movements, on paper and as a workbook',
        input: () => ({ from: '2031-03-02T00:00:00Z', to: '2031-03-02T23:59:59Z' }),
        output: () => ({ files: pairOf('movement sheet', 1, '2 March 2031'), findings: [] }),
      },
    ],
    refused: [
      {
        about: 'an end before the beginning',
        input: () => ({ from: '2031-03-02T00:00:00Z', to: '2031-03-01T00:00:00Z' }),
        code: 'dates-reversed',
        field: 'to',
      },
    ],
  },
  'sheet.outgoing': {
    answered: [
      {
        about: 'the outgoing list of a show, on paper and as a workbook',
        input: known => ({ exhibition: known.show ?? '', unit: 'in' }),
        output: () => ({ files: pairOf('outgoing list', 1), findings: [] }),
      },
    ],
    refused: [noShow],
  },
  'sheet.insured': {
    answered: [
      {
        about: 'sums of a day, its works and the period, on paper and as a workbook',
        first: known => [
          ['insured.addValue', { work: known.pans, value: { minor: 4_500_000, currency: 'EUR' }, day: '2031-01-01' }],
          ['insured.addRate', { from: 'EUR', to: 'CHF', rate: '0.95', day: '2031-03-01' }],
          ['insured.addLimit', { scope: 'all', amount: { minor: 4_000_000, currency: 'CHF' } }],
        ],
        input: known => ({ day: '2031-04-02', exhibition: known.show, currency: 'CHF', last: '2031-04-05' }),
        output: () => ({ files: pairOf('insured values', 3, 'Low Water, 2031-04-02'), findings: [] }),
      },
    ],
    refused: [
      {
        about: 'a period reversed',
        input: () => ({ day: '2031-04-02', first: '2031-04-02', last: '2031-04-01' }),
        code: 'reversed',
        field: 'last',
      },
      { ...noShow, input: () => ({ day: '2031-04-02', exhibition: nowhere }) },
    ],
  },
  'sheet.climate': {
    answered: [
      {
        about: 'the air of a room, drawn, and as a workbook',
        files: [{ name: 'east.csv', bytes: logged }],
        first: known => [['climate.takeFile', { handle: '$1', room: known.room, logger: 'L7', by: 'Tamsin Oake' }]],
        input: known => ({ room: known.room, unit: 'in' }),
        output: () => ({ files: pairOf('climate', 2, 'Room 1'), findings: [] }),
      },
    ],
    refused: [
      { about: 'a room that there is not', input: () => ({ room: nowhere }), code: 'not-found', field: 'room' },
      {
        about: 'a room in which nothing was read',
        input: known => ({ room: known.room }),
        code: 'nothing-read',
        field: 'room',
      },
    ],
  },
  'sheet.objectFile': {
    answered: [
      {
        about: 'the whole file of a work, on paper and as a workbook',
        input: known => ({ work: known.pans, unit: 'in' }),
        output: () => ({ files: pairOf('object file', 5, 'L-1.1'), findings: [] }),
      },
      {
        about: 'a copy to give away, without values, places and every change',
        input: known => ({ work: known.pans, unit: 'in', withValues: false }),
        output: () => ({ files: pairOf('object file', 3, 'L-1.1'), findings: [] }),
      },
    ],
    refused: [
      { about: 'a work that there is not', input: () => ({ work: 'nowhere' }), code: 'not-found', field: 'work' },
    ],
  },
  'sheet.damage': {
    answered: [
      {
        about: 'a record of which nobody was told yet',
        first: known => [
          [
            'damage.add',
            { work: known.pans, foundAt: '2031-03-14T10:05:00.000Z', reference: 'D-0007', by: 'Tamsin Oake' },
          ],
        ],
        input: (_, earlier) => ({ damage: made(earlier[0]) }),
        output: () => ({ files: pairOf('damage report', 2, 'D-0007'), findings: [] }),
      },
    ],
    refused: [
      { about: 'a record that there is not', input: () => ({ damage: 'nowhere' }), code: 'not-found', field: 'damage' },
    ],
  },
  'sheet.condition': {
    answered: [
      {
        about: 'a draft with one finding on one page',
        first: known => [
          ['condition.add', { work: known.pans, kind: 'incoming', examinedAt: '2031-03-02T09:10:00.000Z' }],
          [
            'condition.addFinding',
            (earlier: readonly unknown[]) => ({ report: made(earlier[0]), form: 'mark', points: [{ x: 10, y: 20 }] }),
          ],
        ],
        input: (_, earlier) => ({ report: made(earlier[0]) }),
        output: () => ({
          files: [onePdf('condition report', 'L-1.1 Salt pans incoming report 2 March 2031', 1)],
          findings: [],
        }),
      },
    ],
    refused: [
      { about: 'a report that is not there', input: () => ({ report: nowhere }), code: 'not-found', field: 'report' },
    ],
  },
  'sheet.receipt': {
    answered: [
      {
        about: 'a receipt with two lines to sign on one page',
        first: known => [
          ['loan.add', { party: known.lender, number: 'QC 2031/7' }],
          ['loan.addWorks', (earlier: readonly unknown[]) => ({ loan: made(earlier[0]), works: [known.pans] })],
          [
            'receipt.add',
            (earlier: readonly unknown[]) => ({
              loan: made(earlier[0]),
              kind: 'received',
              day: '2031-03-02',
              works: [{ work: known.pans, condition: 'as when it left', crate: 'crate 5' }],
              by: 'Tamsin Oake',
            }),
          ],
        ],
        input: (_, earlier) => ({ receipt: made(earlier[2]) }),
        output: () => ({ files: [onePdf('receipt', 'receipt R 2031-1 Quay Collection', 1)], findings: [] }),
      },
    ],
    refused: [
      {
        about: 'a receipt that is not there',
        input: () => ({ receipt: nowhere }),
        code: 'not-found',
        field: 'receipt',
      },
    ],
  },
  'sheet.compared': {
    answered: [
      {
        about: 'both drawn, and a table',
        first: known => [
          ['condition.add', { work: known.pans, kind: 'incoming', examinedAt: '2031-03-02T09:10:00.000Z' }],
          ['condition.add', { work: known.pans, kind: 'outgoing', examinedAt: '2031-03-05T09:10:00.000Z' }],
        ],
        input: (_, earlier) => ({ before: made(earlier[0]), after: made(earlier[1]), unit: 'in' }),
        output: () => ({
          files: [
            onePdf('condition comparison', 'L-1.1 Salt pans condition compared 2 March 2031 and 5 March 2031', 2),
          ],
          findings: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a report with itself',
        first: known => [['condition.add', { work: known.pans, kind: 'incoming' }]],
        input: (_, earlier) => ({ before: made(earlier[0]), after: made(earlier[0]) }),
        code: 'bad-input',
        field: 'after',
      },
    ],
  },
  'sheet.loanFile': {
    answered: [
      {
        about: 'the whole file of a loan of two works, on paper and as a workbook',
        first: known => [
          ['loan.add', { party: known.lender ?? '', number: 'A 12' }],
          [
            'loan.addWorks',
            (earlier: readonly unknown[]) => ({
              loan: (earlier[0] as { id: string }).id, // the loan just added
              works: [known.pans ?? '', known.causeway ?? ''],
            }),
          ],
        ],
        input: (_, earlier) => ({ loan: (earlier[0] as { id: string }).id }), // the same
        output: () => ({ files: pairOf('loan file', 3, 'A 12'), findings: [] }),
      },
    ],
    refused: [
      { about: 'a loan that there is not', input: () => ({ loan: 'nowhere' }), code: 'not-found', field: 'loan' },
    ],
  },
  'sheet.labels': {
    answered: [
      {
        about: 'a workbook of the labels',
        input: known => ({ exhibition: known.show ?? '', unit: 'in' }),
        output: () => ({
          files: [
            {
              kind: 'label list',
              handle: anyHandle,
              name: 'Low Water label list.xlsx',
              face: null,
              pages: null,
              revision: null,
            },
          ],
          findings: [],
        }),
      },
    ],
    refused: [noShow],
  },
  'sheet.plan': {
    answered: [
      {
        about: 'the building alone, at the largest scale that fits',
        input: () => ({ exhibition: null, formats: ['pdf', 'svg', 'dxf'] }),
        output: () => ({
          files: [
            { kind: 'plan', handle: anyHandle, name: 'The Maltings plan.pdf', face: null, pages: 1, revision: null },
            { kind: 'plan', handle: anyHandle, name: 'The Maltings plan.svg', face: null, pages: null, revision: null },
            { kind: 'plan', handle: anyHandle, name: 'The Maltings plan.dxf', face: null, pages: null, revision: null },
          ],
          findings: [],
          scale: 50,
        }),
      },
      {
        about: 'with a show, as its next revision',
        input: known => ({ exhibition: known.show ?? '', formats: ['dxf'] }),
        output: () => ({
          files: [
            {
              kind: 'plan',
              handle: anyHandle,
              name: expect.stringMatching(/plan revision 1\.dxf$/),
              face: null,
              pages: null,
              revision: 1,
            },
          ],
          findings: [],
          scale: 50,
        }),
      },
    ],
    refused: [
      { ...noShow, input: () => ({ exhibition: nowhere, formats: ['pdf'] }) },
      {
        about: 'a scale that the paper has no room for',
        input: () => ({ exhibition: null, formats: ['pdf'], scale: 5 }),
        code: 'plan-too-large',
        field: 'scale',
      },
      {
        about: 'a storey that is not there',
        input: () => ({ exhibition: null, storey: 'attic', formats: ['dxf'] }),
        code: 'nothing-drawn',
        field: 'storey',
      },
    ],
  },
  'sheet.template': {
    answered: [
      {
        about: 'two marks 600 mm apart over three sheets',
        input: known => ({ placement: known.causewayPlace ?? '', paper: 'A4' }),
        output: known => ({
          files: [
            {
              kind: 'paper template',
              handle: anyHandle,
              name: 'Low Water L-1.2 paper template.pdf',
              face: known.northFace,
              pages: 3,
              revision: null,
            },
          ],
          findings: [],
          sheets: ['A1', 'A2', 'A3'],
        }),
      },
    ],
    refused: [
      {
        about: 'a work whose back nobody has measured',
        input: known => ({ placement: known.pansPlace }),
        code: 'no-marks',
        field: 'placement',
      },
      {
        about: 'a placement that is not there',
        input: () => ({ placement: nowhere }),
        code: 'not-found',
        field: 'placement',
      },
      {
        about: 'a part of a work that is no set',
        input: known => ({ placement: known.causewayPlace ?? '', part: known.pans }),
        code: 'not-found',
        field: 'part',
      },
    ],
  },
  'sheet.set': {
    answered: [
      {
        about: 'walls that have works, the plan, checklist and hang list',
        input: known => ({ exhibition: known.show ?? '' }),
        output: known => ({
          files: [wallFile(known.northFace, 1), planFile, checklistFile, hangListFile],
          findings: [],
        }),
      },
      {
        about: 'a show without works has the plan, empty tables and no wall sheet',
        input: known => ({ exhibition: known.other ?? '' }),
        output: () => ({
          files: [
            { ...planFile, name: 'The Maltings High Water plan revision 1.pdf' },
            { ...checklistFile, name: 'High Water checklist.xlsx' },
            { ...hangListFile, name: 'High Water hang list.xlsx' },
          ],
          findings: [],
        }),
      },
    ],
    refused: [noShow],
  },
  'sheet.state': {
    answered: [
      {
        about: 'a face that was never printed',
        input: known => ({ exhibition: known.show ?? '' }),
        output: known => ({
          faces: [
            { face: known.northFace, name: 'Room 1, north', works: 2, printed: null, upToDate: false, voids: [] },
          ],
          plans: [{ storey: '', rooms: 1, printed: null, upToDate: false, voids: [] }],
        }),
      },
      {
        about: 'a face that has just been printed',
        first: known => [['sheet.wall', { exhibition: known.show, faces: [known.northFace] }]],
        input: known => ({ exhibition: known.show ?? '' }),
        output: known => ({
          faces: [
            {
              face: known.northFace,
              name: 'Room 1, north',
              works: 2,
              printed: { revision: 1, at: anyMoment, by: expect.any(String) },
              upToDate: true,
              voids: [],
            },
          ],
          plans: expect.anything(),
        }),
      },
      {
        about: 'a plan that has just gone out',
        first: known => [['sheet.plan', { exhibition: known.show, formats: ['dxf'] }]],
        input: known => ({ exhibition: known.show ?? '' }),
        output: () => ({
          faces: expect.anything(),
          plans: [
            {
              storey: '',
              rooms: 1,
              printed: { revision: 1, at: anyMoment, by: expect.any(String) },
              upToDate: true,
              voids: [],
            },
          ],
        }),
      },
    ],
    refused: [noShow],
  },
  'sheet.preview': {
    answered: [
      {
        about: 'the pages as they would be printed now',
        input: known => ({ exhibition: known.show ?? '', face: known.northFace ?? '', paper: 'Letter' }),
        output: () => ({
          title: 'Room 1, north, revision 1',
          revision: 1,
          upToDate: false,
          pages: [
            {
              width: 279.4,
              height: 215.9,
              shapes: expect.arrayContaining([expect.objectContaining({ kind: 'text', text: 'Room 1, north' })]),
            },
          ],
          findings: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a face that is not there',
        input: known => ({ exhibition: known.show, face: nowhere }),
        code: 'not-found',
        field: 'face',
      },
    ],
  },
  'sheet.previewPaper': {
    answered: [
      {
        about: 'the page of a draft as it would be printed now',
        first: known => [
          ['condition.add', { work: known.pans, kind: 'incoming', examinedAt: '2031-03-02T09:10:00.000Z' }],
        ],
        input: (_, earlier) => ({ of: { kind: 'condition report', report: made(earlier[0]) }, paper: 'Letter' }),
        output: () => ({ title: 'Incoming report', pages: [pageSaying('No finding', [279.4, 215.9])] }),
      },
      {
        about: 'a record of damage',
        first: known => [
          [
            'damage.add',
            { work: known.pans, foundAt: '2031-03-14T10:05:00.000Z', reference: 'D-0007', by: 'Tamsin Oake' },
          ],
        ],
        input: (_, earlier) => ({ of: { kind: 'damage report', damage: made(earlier[0]) } }),
        output: () => ({ title: 'D-0007', pages: [expect.anything(), expect.anything()] }),
      },
      {
        about: 'the whole file of a work, its lengths in inches',
        input: known => ({ of: { kind: 'object file', work: known.pans ?? '' }, unit: 'in' }),
        output: () => ({ title: 'L-1.1', pages: Array.from({ length: 5 }, () => expect.anything()) }),
      },
      {
        about: 'the whole file of a loan',
        first: known => [['loan.add', { party: known.lender ?? '', number: 'A 12' }]],
        input: (_, earlier) => ({ of: { kind: 'loan file', loan: made(earlier[0]) } }),
        output: () => ({ title: 'A 12', pages: expect.arrayContaining([expect.anything()]) }),
      },
      {
        about: 'the sheet of a day without movements',
        input: () => ({ of: { kind: 'movement sheet', from: '2031-03-02T00:00:00Z', to: '2031-03-02T23:59:59Z' } }),
        output: () => ({ title: '2 March 2031', pages: [expect.anything()] }),
      },
      {
        about: 'the air of a room, drawn',
        files: [{ name: 'east.csv', bytes: logged }],
        first: known => [['climate.takeFile', { handle: '$1', room: known.room, logger: 'L7', by: 'Tamsin Oake' }]],
        input: known => ({ of: { kind: 'climate', room: known.room ?? '' } }),
        output: () => ({ title: 'Room 1', pages: [expect.anything(), expect.anything()] }),
      },
    ],
    refused: [
      {
        about: 'a report that there is not',
        input: () => ({ of: { kind: 'condition report', report: nowhere } }),
        code: 'not-found',
        field: 'of.report',
      },
      {
        about: 'a record of damage that there is not',
        input: () => ({ of: { kind: 'damage report', damage: nowhere } }),
        code: 'not-found',
        field: 'of.damage',
      },
      {
        about: 'a room in which nothing was read',
        input: known => ({ of: { kind: 'climate', room: known.room ?? '' } }),
        code: 'nothing-read',
        field: 'of.room',
      },
    ],
  },
  'sheet.previewPlan': {
    answered: [
      {
        about: 'the building alone, at the largest scale that fits',
        input: () => ({ exhibition: null, paper: 'A4' }),
        output: () => ({
          title: 'The Maltings: plan',
          revision: null,
          upToDate: false,
          scale: 50,
          pages: [
            {
              width: 297,
              height: 210,
              shapes: expect.arrayContaining([expect.objectContaining({ kind: 'text', text: '1:50' })]),
            },
          ],
        }),
      },
      {
        about: 'with a show, as its next revision would be, at a scale that was asked for',
        input: known => ({ exhibition: known.show ?? '', scale: 200 }),
        output: () => ({
          title: expect.stringMatching(/: plan: revision 1$/),
          revision: 1,
          upToDate: false,
          scale: 200,
          pages: [
            expect.objectContaining({
              shapes: expect.arrayContaining([expect.objectContaining({ kind: 'text', text: '1:200' })]),
            }),
          ],
        }),
      },
    ],
    refused: [
      {
        about: 'a storey that has no room',
        input: () => ({ exhibition: null, storey: 'attic' }),
        code: 'nothing-drawn',
        field: 'storey',
      },
      {
        about: 'a scale at which it is larger than the paper',
        input: () => ({ exhibition: null, scale: 1 }),
        code: 'plan-too-large',
        field: 'scale',
      },
    ],
  },
}
