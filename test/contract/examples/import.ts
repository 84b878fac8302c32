/** Lists from outside: previewed, taken in, settled. */
import type { importArea } from '../../../src/contract/areas/import.ts'
import { anyId, anyMoment, type ExamplesOf, unknownField } from './types.ts'

const list =
  'Lender’s no.\tArtist\tTitle\tDimensions\nL-1.2\tAda Ruel\tCauseway\t910 x 710 mm\nL-9\tBo Lind\tNets at night\t61 x 91.5\n'

const unitQuestion = "“61 x 91.5” has no unit. This lender's other sizes are in millimetres."

/** Millimetres come first, since the list's other size states them. */
const unitOptions = [
  { answer: '1', label: 'millimetres: 61 mm high, 91.5 mm wide' },
  { answer: '2', label: 'centimetres: 610 mm high, 915 mm wide' },
  { answer: '3', label: 'inches: 1\u2009549.4 mm high, 2\u2009324.1 mm wide' },
]

const csv = (text: string) => ({ name: 'list.csv', bytes: new TextEncoder().encode(text) })

/** The first question of the answer before. */
function firstQuestion(earlier: readonly unknown[] | undefined): string {
  const answered = earlier?.at(-1) as { readonly questions: readonly { readonly id: string }[] } | undefined // import.questions gave it
  return answered?.questions[0]?.id ?? ''
}

export const importExamples: ExamplesOf<keyof typeof importArea> = {
  'import.preview': {
    answered: [
      {
        about: 'a file with a size for a work that is there and a new work with a question',
        files: [csv(list)],
        input: known => ({ handle: '$1', lender: known.lender ?? '', show: 'questions' }),
        output: () => ({
          name: 'list.csv',
          kind: 'csv',
          encoding: 'utf-8',
          separator: '\t',
          sheets: [{ name: '', hidden: false, recognised: 4 }],
          sheet: '',
          headingRow: 1,
          language: 'en',
          columns: [
            ['Lender’s no.', 'lenderNumber', ['L-1.2', 'L-9']],
            ['Artist', 'maker', ['Ada Ruel', 'Bo Lind']],
            ['Title', 'title', ['Causeway', 'Nets at night']],
            ['Dimensions', 'size', ['910 x 710 mm', '61 x 91.5']],
          ].map(([heading, field, sample], i) => ({
            column: i + 1,
            letters: 'ABCD'[i],
            heading,
            field,
            unit: null,
            part: null,
            by: 'heading',
            sample,
          })),
          remarks: [],
          counts: { rows: 2, add: 1, update: 1, unchanged: 0, kept: 0, questions: 1, refused: 0 },
          total: 1,
          offset: 0,
          rows: [
            {
              row: 3,
              outcome: 'add',
              work: null,
              cells: ['L-9', 'Bo Lind', 'Nets at night', '61 x 91.5'],
              understood: {
                facts: [
                  { field: 'lenderNumber', label: 'Lender’s number', text: 'L-9' },
                  { field: 'title', label: 'Title', text: 'Nets at night' },
                  { field: 'maker', label: 'Maker', text: 'Bo Lind' },
                  { field: 'lender', label: 'Lender', text: 'Quay Collection' },
                ],
                sizes: [],
                masses: [],
              },
              changes: [],
              kept: [],
              questions: [
                {
                  field: 'size',
                  column: 'Dimensions',
                  kind: 'unit',
                  text: '61 x 91.5',
                  question: unitQuestion,
                  options: unitOptions,
                  answer: null,
                },
              ],
              remarks: [],
              reason: '',
            },
          ],
        }),
      },
    ],
    refused: [
      { about: 'neither file nor pasted table', input: () => ({}), code: 'one-source', field: 'handle' },
      {
        about: 'a PDF that is called a workbook',
        files: [{ name: 'list.xlsx', bytes: new TextEncoder().encode('%PDF-1.7\n') }],
        input: () => ({ handle: '$1' }),
        code: 'pdf-file',
        field: 'handle',
      },
    ],
  },
  'import.accept': {
    answered: [
      {
        about: 'a pasted table: a new work with a question, and a size for one that is there already',
        input: known => ({ text: list, lender: known.lender ?? '', exhibition: known.show ?? '' }),
        output: known => ({
          run: anyId,
          exhibition: known.show,
          rows: 2,
          added: 1,
          updated: 1,
          unchanged: 0,
          questions: [{ row: 3, column: 'Dimensions', text: '61 x 91.5', question: unitQuestion }],
          refused: [],
          kept: [],
          remarks: [],
        }),
      },
      {
        about: 'values with their currency in the heading, one of them asked',
        input: known => ({
          text: 'Lender’s no.\tTitle\tInsurance value (EUR)\nL-1.2\tCauseway\t12,000\nL-9\tNets at night\ton request\n',
          lender: known.lender ?? '',
        }),
        output: () => ({
          run: anyId,
          exhibition: null,
          rows: 2,
          added: 1,
          updated: 1,
          unchanged: 0,
          questions: [
            {
              row: 3,
              column: 'Insurance value (EUR)',
              text: 'on request',
              question: 'Value: “on request” has no figure. Write it like CHF 45 000.',
            },
          ],
          refused: [],
          kept: [],
          remarks: [],
        }),
      },
      {
        about: 'the same table a second time: nothing new, and nothing written',
        first: known => [['import.accept', { text: list, lender: known.lender, exhibition: known.show }]],
        input: known => ({ text: list, lender: known.lender ?? '', exhibition: known.show ?? '' }),
        output: known => ({
          run: null,
          exhibition: known.show,
          rows: 2,
          added: 0,
          updated: 0,
          unchanged: 2,
          questions: [],
          refused: [],
          kept: [],
          remarks: [],
        }),
      },
    ],
    refused: [
      {
        about: 'a table without headings',
        input: () => ({ text: 'red\tblue\n1\t2\n' }),
        code: 'no-headings',
        field: 'headingRow',
      },
      {
        about: 'an exhibition that is closed',
        input: known => ({ text: list, exhibition: known.closed }),
        code: 'exhibition-closed',
        field: 'exhibition',
      },
      {
        about: 'a lender that is not there',
        input: () => ({ text: list, lender: 'nobody' }),
        code: 'not-found',
        field: 'lender',
      },
    ],
  },
  'import.questions': {
    answered: [
      {
        about: 'what a list left open',
        first: known => [['import.accept', { text: list, lender: known.lender, exhibition: known.show }]],
        input: known => ({ exhibition: known.show ?? '' }),
        output: () => ({
          total: 1,
          offset: 0,
          questions: [
            {
              id: anyId,
              run: anyId,
              list: 'a pasted table',
              work: anyId,
              title: 'Nets at night',
              maker: 'Bo Lind',
              number: 'L-9',
              row: 3,
              column: 'Dimensions',
              field: 'size',
              text: '61 x 91.5',
              question: unitQuestion,
              kind: 'unit',
              options: unitOptions,
              answer: null,
              answeredBy: null,
              answeredAt: null,
              askedAt: null,
              askedBy: null,
            },
          ],
        }),
      },
    ],
    refused: [unknownField],
  },
  'import.answer': {
    answered: [
      {
        about: 'a unit, in words of one’s own',
        first: known => [
          ['import.accept', { text: list, lender: known.lender, exhibition: known.show }],
          ['import.questions', {}],
        ],
        input: (_known, earlier) => ({ id: firstQuestion(earlier), answer: 'cm' }),
        output: () => ({ work: anyId, said: 'cm', open: 0 }),
      },
    ],
    refused: [
      {
        about: 'a question that is not there',
        input: () => ({ id: 'nothing', answer: '1' }),
        code: 'not-found',
        field: 'id',
      },
      {
        about: 'an answer that leaves it open',
        first: known => [
          ['import.accept', { text: list, lender: known.lender, exhibition: known.show }],
          ['import.questions', {}],
        ],
        input: (_known, earlier) => ({ id: firstQuestion(earlier), answer: 'about so big' }),
        code: 'still-unclear',
        field: 'answer',
      },
    ],
  },
  'import.ask': {
    answered: [
      {
        about: 'one question for the lender',
        first: known => [
          ['import.accept', { text: list, lender: known.lender, exhibition: known.show }],
          ['import.questions', {}],
        ],
        input: (_known, earlier) => ({ questions: [firstQuestion(earlier)], lender: true }),
        output: () => ({ changed: 1 }),
      },
    ],
    refused: [
      {
        about: 'a question that is not there',
        input: () => ({ questions: ['nothing'], lender: true }),
        code: 'not-found',
        field: 'questions',
      },
    ],
  },
  'import.letters': {
    answered: [
      {
        about: 'a lender who is asked about one size',
        first: known => [
          [
            'import.accept',
            {
              text: list,
              lender: known.lender,
              exhibition: known.show,
              answers: [{ row: 3, field: 'size', answer: 'ask the lender' }],
            },
          ],
        ],
        input: known => ({ exhibition: known.show ?? '' }),
        output: known => ({
          letters: [
            {
              lender: known.lender,
              name: 'Quay Collection',
              questions: 1,
              text: `To Quay Collection\n\nOne thing in your list is not clear to us. Please tell us:\n\n1. L-9, Nets at night, Bo Lind\n   Your list a pasted table, row 3, Dimensions, says: 61 x 91.5\n   ${unitQuestion}\n   It could be: ${unitOptions.map(({ label }) => label).join('; ')}.\n   Your answer:\n`,
            },
          ],
        }),
      },
    ],
    refused: [unknownField],
  },
  'import.listed': {
    answered: [
      {
        about: 'a work that came with no list',
        input: known => ({ work: known.loose ?? '' }),
        output: () => ({ list: null, at: null, values: [] }),
      },
    ],
    refused: [
      { about: 'a work that is not there', input: () => ({ work: 'nothing' }), code: 'not-found', field: 'work' },
    ],
  },
  'import.mapping': {
    answered: [
      {
        about: 'the columns of a lender’s last list',
        first: known => [['import.accept', { text: list, lender: known.lender }]],
        input: known => ({ lender: known.lender ?? '' }),
        output: () => ({
          mapping: [
            { heading: 'Lender’s no.', field: 'lenderNumber', unit: null, part: null },
            { heading: 'Artist', field: 'maker', unit: null, part: null },
            { heading: 'Title', field: 'title', unit: null, part: null },
            { heading: 'Dimensions', field: 'size', unit: null, part: null },
          ],
          at: anyMoment,
        }),
      },
    ],
    refused: [
      { about: 'a lender that is not there', input: () => ({ lender: 'nobody' }), code: 'not-found', field: 'lender' },
    ],
  },
  'import.runs': {
    answered: [
      {
        about: 'the imports there have been',
        first: known => [['import.accept', { text: list, lender: known.lender, exhibition: known.show }]],
        input: () => ({}),
        output: () => ({
          total: 1,
          runs: [
            {
              id: anyId,
              name: 'a pasted table',
              lender: 'Quay Collection',
              exhibition: 'Low Water',
              added: 1,
              updated: 1,
              unchanged: 0,
              open: 1,
              at: anyMoment,
              by: '',
            },
          ],
        }),
      },
    ],
    refused: [unknownField],
  },
}
