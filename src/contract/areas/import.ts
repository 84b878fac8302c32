/**
 * Lists from outside: what a file says, what was understood of it, what is still to settle. A preview writes nothing;
 * accepting the same input writes it in one edit.
 */
import * as z from 'zod'
import { fieldNames, listUnits, parts } from '../../checklist/fields.ts'
import { procedure } from '../procedure.ts'
import { handle, id, lengthUnit, name, page, typed } from '../shared.ts'

export const listField = z.enum(fieldNames)
const listUnit = z.enum(listUnits)
const listPart = z.enum(parts)

/** What a person says about one column: its number from 1, or its heading as it stands in the list. */
export const columnMapping = z.strictObject({
  column: z.union([z.int().min(1).max(16_384), z.string().trim().min(1).max(500)]),
  field: listField,
  unit: listUnit.optional(),
  part: listPart.optional(),
})

export const encoding = z.enum([
  'utf-8',
  'utf-16le',
  'utf-16be',
  'windows-1250',
  'windows-1251',
  'windows-1252',
  'windows-1253',
  'windows-1254',
  'windows-1257',
  'macintosh',
  'ibm850',
  'ibm437',
])

/**
 * One answer given in the preview: which row, which of its questions, and the chosen option or the words typed; or
 * `ask the lender`, which leaves the question open and puts it to the lender.
 */
const previewAnswer = z.strictObject({
  row: z.int().min(1).max(2_000_000),
  field: z.string().max(40),
  /** The question's own words, where a row has several about one field; left out, the answer is for all of them. */
  question: z.string().max(2000).optional(),
  answer: typed,
})

const list = {
  /** Exactly one of the two: an uploaded file, or a table pasted as text. */
  handle: handle.optional(),
  text: z.string().max(20_000_000).optional(),
  sheet: z.string().max(200).optional(),
  /** The row of the headings, from 1; 0 for none. Left out, it is found. */
  headingRow: z.int().min(0).max(1_000_000).optional(),
  encoding: encoding.optional(),
  separator: z.enum([',', ';', '\t']).optional(),
  /** The exhibition whose checklist this is: one that is there, or the title of one to be made. */
  exhibition: id.optional(),
  exhibitionTitle: name.optional(),
  /** Whose list it is, where the list itself has no column for it: one that is there, or the name of a new one. */
  lender: id.optional(),
  lenderName: name.optional(),
  /** The unit of sizes that state none, if the person knows it. */
  unit: lengthUnit.optional(),
  mapping: z.array(columnMapping).max(500).optional(),
  answers: z.array(previewAnswer).max(100_000).optional(),
} as const

const listedColumn = z.strictObject({
  column: z.int(),
  letters: z.string(),
  heading: z.string(),
  field: listField.nullable(),
  unit: listUnit.nullable(),
  part: listPart.nullable(),
  by: z.enum(['heading', 'contents', 'remembered', 'given', '']),
  sample: z.array(z.string()),
})

const option = z.strictObject({ answer: z.string(), label: z.string() })
export const questionKind = z.enum([
  'size',
  'unit',
  'order',
  'date',
  'digits',
  'mass',
  'value',
  'light',
  'word',
  'same work',
  'number',
])

const rowQuestion = z.strictObject({
  field: z.string(),
  column: z.string(),
  kind: questionKind,
  text: z.string(),
  question: z.string(),
  options: z.array(option),
  answer: z.string().nullable(),
})

/** A size as understood, in millimetres. */
const understoodSize = z.strictObject({
  part: z.string(),
  label: z.string(),
  height: z.number().nullable(),
  width: z.number().nullable(),
  depth: z.number().nullable(),
  diameter: z.number().nullable(),
  count: z.int(),
  approximate: z.boolean(),
  raw: z.string(),
  remarks: z.array(z.string()),
})

const difference = z.strictObject({ field: z.string(), label: z.string(), list: z.string(), yours: z.string() })

const outcome = z.enum(['add', 'update', 'unchanged', 'refused', 'section'])

const previewRow = z.strictObject({
  row: z.int(),
  outcome,
  /** The work it belongs to, where it is there already. */
  work: z.strictObject({ id, title: z.string(), maker: z.string() }).nullable(),
  /** As read, column by column. */
  cells: z.array(z.string()),
  understood: z.strictObject({
    facts: z.array(z.strictObject({ field: listField, label: z.string(), text: z.string() })),
    sizes: z.array(understoodSize),
    masses: z.array(z.strictObject({ kg: z.number(), approximate: z.boolean(), raw: z.string() })),
  }),
  /** What the list would change in a work that is there. */
  changes: z.array(difference),
  /** Fields that a person changed since the last list: they keep their value. */
  kept: z.array(difference),
  questions: z.array(rowQuestion),
  remarks: z.array(z.string()),
  /** Why a row is refused. */
  reason: z.string(),
})

const storedQuestion = z.strictObject({
  id,
  run: id,
  list: z.string(),
  work: id,
  title: z.string(),
  maker: z.string(),
  number: z.string(),
  row: z.int(),
  column: z.string(),
  field: z.string(),
  text: z.string(),
  question: z.string(),
  kind: questionKind,
  options: z.array(option),
  answer: z.string().nullable(),
  answeredBy: z.string().nullable(),
  answeredAt: z.string().nullable(),
  /** Since when it is put to the lender, and by whom; it stays open. */
  askedAt: z.string().nullable(),
  askedBy: z.string().nullable(),
})

export const importArea = {
  'import.preview': procedure(
    'long',
    'Reads a list and shows each row as read, as understood, its questions and what it would do; writes nothing.',
    z.strictObject({
      ...list,
      /** Only the rows that need a look. */
      show: z.enum(['questions', 'add', 'update', 'unchanged', 'kept', 'refused']).optional(),
      ...page,
    }),
    z.strictObject({
      name: z.string(),
      kind: z.enum(['csv', 'xlsx', 'text']),
      encoding: z.string(),
      separator: z.string(),
      sheets: z.array(z.strictObject({ name: z.string(), hidden: z.boolean(), recognised: z.int() })),
      sheet: z.string(),
      headingRow: z.int(),
      language: z.enum(['en', 'fr', 'de', '']),
      columns: z.array(listedColumn),
      remarks: z.array(z.string()),
      counts: z.strictObject({
        rows: z.int(),
        add: z.int(),
        update: z.int(),
        unchanged: z.int(),
        kept: z.int(),
        questions: z.int(),
        refused: z.int(),
      }),
      total: z.int(),
      offset: z.int(),
      rows: z.array(previewRow),
    }),
  ),
  'import.accept': procedure(
    'long',
    'Takes a list into the catalogue as one edit; rows with questions come in with what they do say.',
    z.strictObject(list),
    z.strictObject({
      run: id.nullable(),
      exhibition: id.nullable(),
      rows: z.int(),
      added: z.int(),
      updated: z.int(),
      unchanged: z.int(),
      questions: z.array(z.strictObject({ row: z.int(), column: z.string(), text: z.string(), question: z.string() })),
      refused: z.array(z.strictObject({ row: z.int(), column: z.string(), reason: z.string() })),
      /** Fields that a person changed since the last list and that kept their value. */
      kept: z.array(z.strictObject({ row: z.int(), column: z.string(), list: z.string(), yours: z.string() })),
      remarks: z.array(z.string()),
    }),
  ),
  'import.questions': procedure(
    'read',
    'Lists what lists left to settle, a page at a time: of one work, one exhibition, one import, or all.',
    z.strictObject({
      work: id.optional(),
      run: id.optional(),
      exhibition: id.optional(),
      /** Also those that are answered. */
      answered: z.boolean().optional(),
      /** Only those put to the lender. */
      asked: z.boolean().optional(),
      ...page,
    }),
    z.strictObject({ total: z.int(), offset: z.int(), questions: z.array(storedQuestion) }),
  ),
  'import.answer': procedure(
    'write',
    'Answers one question of a list: by one of its options or in words; the raw text stays beside the value.',
    z.strictObject({ id, answer: z.string().trim().min(1, 'expected an answer').max(2000) }),
    z.strictObject({
      /** The work that has the value now; another one if two turned out to be the same. */
      work: id,
      /** What was understood, in words. */
      said: z.string(),
      /** What is still to settle for this work. */
      open: z.int(),
    }),
  ),
  'import.ask': procedure(
    'write',
    'Puts questions of lists to their lenders, or takes them back; they stay open until they are answered.',
    z.strictObject({ questions: z.array(id).min(1).max(500), lender: z.boolean() }),
    z.strictObject({ changed: z.int() }),
  ),
  'import.letters': procedure(
    'read',
    'Writes what is put to each lender as a text to send: the works, what the list says, what is asked.',
    z.strictObject({ exhibition: id.optional() }),
    z.strictObject({
      letters: z.array(
        z.strictObject({
          /** Null where no lender is named. */
          lender: id.nullable(),
          name: z.string(),
          questions: z.int(),
          text: z.string(),
        }),
      ),
    }),
  ),
  'import.listed': procedure(
    'read',
    'Tells what the last list said about a work, as written, beside what the catalogue says now.',
    z.strictObject({ work: id }),
    z.strictObject({
      list: z.string().nullable(),
      at: z.string().nullable(),
      values: z.array(
        z.strictObject({
          field: z.string(),
          label: z.string(),
          text: z.string(),
          /** What the catalogue says, where a person changed it since; null where it says the same. */
          yours: z.string().nullable(),
        }),
      ),
    }),
  ),
  'import.mapping': procedure(
    'read',
    'Gives the columns as they were last taken for a lender.',
    z.strictObject({ lender: id.optional() }),
    z.strictObject({
      mapping: z.array(
        z.strictObject({
          heading: z.string(),
          field: listField,
          unit: listUnit.nullable(),
          part: listPart.nullable(),
        }),
      ),
      at: z.string().nullable(),
    }),
  ),
  'import.runs': procedure(
    'read',
    'Lists the imports there have been, newest first.',
    z.strictObject({ ...page }),
    z.strictObject({
      total: z.int(),
      runs: z.array(
        z.strictObject({
          id,
          name: z.string(),
          lender: z.string(),
          exhibition: z.string(),
          added: z.int(),
          updated: z.int(),
          unchanged: z.int(),
          open: z.int(),
          at: z.string(),
          by: z.string(),
        }),
      ),
    }),
  ),
} as const
