/**
 * What a column of a list can be. One table: the field, the words a person reads, and the column of a work that it
 * fills, where it fills one directly.
 */

export const fields = {
  permanent: 'Permanent number',
  lenderNumber: 'Lender’s number',
  loan: 'Loan number',
  entryNumber: 'Entry number',
  exhibitionNumber: 'Exhibition number',
  formerNumber: 'Former number',
  running: 'Running number of the list',
  title: 'Title',
  maker: 'Maker',
  date: 'Date',
  medium: 'Medium',
  credit: 'Credit line',
  lender: 'Lender',
  size: 'Size in one cell',
  height: 'Height',
  width: 'Width',
  depth: 'Depth',
  diameter: 'Diameter',
  mass: 'Weight',
  value: 'Value',
  lightLimit: 'Light limit',
  uvLimit: 'UV limit',
  glazing: 'Glazing',
  sensitivity: 'Sensitivity to light',
  kind: 'Kind of work',
  objectName: 'Object name',
  titleTranslation: 'Title in translation',
  titleLanguage: 'Language of the title',
  inscriptions: 'Inscriptions and marks',
  subject: 'Subject',
  description: 'Description',
  placeOfOrigin: 'Place of origin',
  distinguishing: 'Distinguishing features',
  department: 'Owner’s department',
  section: 'Section',
  place: 'Room and wall',
  status: 'Status',
  handling: 'Handling',
  loanTerms: 'Loan terms',
  notBeside: 'Not beside',
  method: 'How it hangs',
  note: 'Note',
  other: 'Kept as written',
  ignore: 'Left out',
} as const

export type Field = keyof typeof fields

export const fieldNames = Object.keys(fields) as [Field, ...Field[]] // Object.keys forgets the literal names

/** Fields that fill one column of a work as plain text, in the order in which a person reads them. */
export const textFields = [
  'title',
  'maker',
  'date',
  'medium',
  'credit',
  'objectName',
  'titleTranslation',
  'titleLanguage',
  'inscriptions',
  'subject',
  'description',
  'placeOfOrigin',
  'distinguishing',
  'department',
  'handling',
  'loanTerms',
  'notBeside',
  'note',
] as const satisfies readonly Field[]

/** Fields that fill one column of a work through a word or figure that must be understood first. */
export const readFields = [
  'lightLimit',
  'uvLimit',
  'glazing',
  'sensitivity',
  'kind',
] as const satisfies readonly Field[]

export type FactField = (typeof textFields)[number] | (typeof readFields)[number]

/** The column of `work` that each fills. */
export const factColumns = {
  title: 'title',
  maker: 'maker',
  date: 'date_text',
  medium: 'medium',
  credit: 'credit_line',
  objectName: 'object_name',
  titleTranslation: 'title_translation',
  titleLanguage: 'title_language',
  inscriptions: 'inscriptions',
  subject: 'subject',
  description: 'description',
  placeOfOrigin: 'place_of_origin',
  distinguishing: 'distinguishing',
  department: 'department',
  handling: 'handling',
  loanTerms: 'loan_terms',
  notBeside: 'not_beside',
  note: 'note',
  lightLimit: 'light_limit',
  uvLimit: 'uv_limit',
  glazing: 'glazing',
  sensitivity: 'sensitivity',
  kind: 'kind',
} as const satisfies Readonly<Record<FactField, string>>

export const numberFields = {
  permanent: 'permanent',
  lenderNumber: 'lender',
  loan: 'loan',
  entryNumber: 'entry',
  exhibitionNumber: 'exhibition',
  formerNumber: 'former',
} as const satisfies Partial<Record<Field, string>>
export type NumberField = keyof typeof numberFields

/** Sides of a size that stand in columns of their own. */
export const sideFields = ['height', 'width', 'depth', 'diameter'] as const satisfies readonly Field[]
export type SideField = (typeof sideFields)[number]

export const parts = ['framed', 'overall', 'mount', 'support', 'sheet', 'plate', 'image', 'sight', 'base'] as const
export type ListPart = (typeof parts)[number]

/** Units that a heading may state. */
export const listUnits = ['mm', 'cm', 'm', 'in', 'ft', 'kg', 'g', 'lb'] as const
export type ListUnit = (typeof listUnits)[number]

/** One column as it is taken: which field, and for sizes and weights the part and the unit that its heading states. */
export interface ColumnUse {
  /** From 0. */
  readonly column: number
  readonly heading: string
  readonly field: Field | null
  readonly unit: ListUnit | null
  readonly part: ListPart | null
  /** How that was found. */
  readonly by: 'heading' | 'contents' | 'remembered' | 'given' | ''
}

export function isField(text: string): text is Field {
  return Object.hasOwn(fields, text)
}
