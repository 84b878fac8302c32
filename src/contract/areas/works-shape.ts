/** What the procedures about works share: the words a fact may be, the plain facts, the size that hangs. */
import * as z from 'zod'
import { methodKeys } from '../../hang/method-keys.ts'
import { id, longText, lux, origin, shortText } from '../shared.ts'

export const workKind = z.enum(['', 'painting', 'drawing', 'print', 'photograph', 'textile', 'object', 'other'])
export const sensitivity = z.enum(['', 'high', 'medium', 'low', 'none'])
export const glazing = z.enum(['', 'none', 'glass', 'acrylic', 'laminated'])
export const sizePart = z.enum([
  'framed',
  'overall',
  'mount',
  'support',
  'sheet',
  'plate',
  'image',
  'sight',
  'base',
  'part',
])
export const numberKind = z.enum(['permanent', 'lender', 'loan', 'entry', 'exhibition', 'former'])
export type NumberKind = z.output<typeof numberKind>
/** Of an exhibition's or an old card's number often only the year is known. */
export const since = z
  .string()
  .trim()
  .regex(
    /^(\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?)?$/,
    'expected a day, a month or a year: 2031-03-04, 2031-03 or 2031',
  )
export const numberText = z.string().trim().min(1, 'A number needs a letter or a figure.').max(100)
export const seenFrom = z.enum(['front', 'back'])
export const hangingMethod = z.enum(methodKeys)

/** As `#RRGGBB`, or nothing where nobody said. */
export const colour = z.string().regex(/^(#[0-9a-fA-F]{6})?$/, 'expected a colour like #4A4038 or nothing')

/** The plain facts of a work, each changed on its own. */
export const workFields = {
  title: shortText,
  maker: shortText,
  dateText: shortText,
  medium: shortText,
  creditLine: shortText,
  lender: id.nullable(),
  kind: workKind,
  objectName: shortText,
  titleTranslation: shortText,
  titleLanguage: shortText,
  inscriptions: longText,
  subject: longText,
  description: longText,
  placeOfOrigin: shortText,
  distinguishing: longText,
  department: shortText,
  sensitivity,
  lightLimit: lux.nullable(),
  glazing,
  frameColour: colour,
  handWeight: z.number().min(0.1).max(10).nullable(),
  notBeside: longText,
  loanTerms: longText,
  handling: longText,
  note: longText,
} as const

/** The size that hangs, chosen by rule among the sizes known: framed, else overall, mount, support, sheet, image, sight. */
export const hangingSize = z.strictObject({
  height: z.number(),
  width: z.number(),
  depth: z.number().nullable(),
  diameter: z.number().nullable(),
  part: sizePart,
  kind: origin,
  at: z.string(),
})
