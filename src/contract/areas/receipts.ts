/**
 * Receipts of loans: works received, sent out, acknowledged by the other side. A receipt is a record: it is only added
 * to, and what was wrong is set right by another that refers to it.
 */
import * as z from 'zod'
import { outstandingStates } from '../../loan/receipts/outstanding.ts'
import { receiptKinds } from '../../loan/receipts/receipt.ts'
import { procedure } from '../procedure.ts'
import { day, id, longText, moment, name, shortText } from '../shared.ts'
import { loanWay } from './loans.ts'

export const receiptKind = z.enum(receiptKinds)
const dayOrNone = z.union([z.literal(''), day])

const named = z.strictObject({
  work: id,
  /** In words, as it was handed over. */
  condition: shortText.optional(),
  /** In words: what it lay in. */
  crate: shortText.optional(),
})
const works = z.array(named).min(1, 'name a work').max(2000)

const said = {
  /** Left out, the next as the house wrote the last. */
  number: name.optional(),
  place: shortText.optional(),
  handedBy: shortText.optional(),
  receivedBy: shortText.optional(),
  note: longText.optional(),
  /** Who records it; left out, the person at the desk. */
  by: name.optional(),
} as const

const receipt = z.strictObject({
  id,
  number: z.string(),
  kind: receiptKind,
  day,
  place: z.string(),
  handedBy: z.string(),
  receivedBy: z.string(),
  note: z.string(),
  corrects: id.nullable(),
  correctedBy: id.nullable(),
  struck: z.boolean(),
  why: z.string(),
  recordedAt: moment,
  recordedBy: z.string(),
  works: z.array(
    z.strictObject({ work: id, number: z.string(), title: z.string(), condition: z.string(), crate: z.string() }),
  ),
})
export type ReceiptTold = z.output<typeof receipt>

const standing = {
  state: z.enum(outstandingStates),
  /** The day since which it stands so; nothing where that is not known. */
  since: dayOrNone,
  days: z.int(),
  /** Days past the last of the loan. */
  late: z.int(),
} as const

const line = z.strictObject({
  loan: id,
  loanNumber: z.string(),
  partyName: z.string(),
  way: loanWay,
  last: dayOrNone,
  work: id,
  number: z.string(),
  title: z.string(),
  ...standing,
})
export type OutstandingLine = z.output<typeof line>

const written = z.strictObject({ id, number: z.string() })

export const receiptsArea = {
  'receipt.list': procedure(
    'read',
    'Lists the receipts of a loan as they were recorded, the next number, and where each of its works stands today.',
    z.strictObject({ loan: id }),
    z.strictObject({
      receipts: z.array(receipt),
      /** Each with what a receipt of it can be for next. */
      works: z.array(z.strictObject({ work: id, ...standing, next: z.array(receiptKind) })),
      next: z.string(),
      today: day,
    }),
  ),
  'receipt.ofWork': procedure(
    'read',
    'Lists the receipts that name a work, as they were recorded, each with its loan.',
    z.strictObject({ work: id }),
    z.strictObject({
      receipts: z.array(
        z.strictObject({ ...receipt.shape, loan: id, loanNumber: z.string(), partyName: z.string(), way: loanWay }),
      ),
    }),
  ),
  'receipt.outstanding': procedure(
    'read',
    'Lists what is outstanding of all loans today: not received, not back, not acknowledged; the longest first.',
    z.strictObject({}),
    z.strictObject({ lines: z.array(line), today: day }),
  ),
  'receipt.add': procedure(
    'write',
    'Records that works of a loan were received, sent out, or acknowledged by the other side.',
    z.strictObject({ loan: id, kind: receiptKind, works, day: day.optional(), ...said }),
    written,
  ),
  'receipt.correct': procedure(
    'write',
    'Sets a receipt right by another that refers to it, or strikes it; what is left out stays as it was.',
    z.strictObject({
      receipt: id,
      why: shortText.min(1, 'say what was wrong'),
      /** It never was. */
      struck: z.boolean().optional(),
      kind: receiptKind.optional(),
      works: works.optional(),
      day: day.optional(),
      ...said,
    }),
    written,
  ),
} as const
