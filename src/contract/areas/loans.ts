/**
 * Loans: who lends what to whom, until when, at which agreed value. The rule it keeps: a value is whole minor units of
 * a named currency, or nothing; it is never a figure alone.
 */
import * as z from 'zod'
import { termStates } from '../../loan/terms/planned.ts'
import { termKinds } from '../../loan/terms/term.ts'
import { greatestMinor } from '../../money/read-figure.ts'
import { procedure } from '../procedure.ts'
import { changes, day, done, finding, id, lengthUnit, longText, made, name, shortText, updated } from '../shared.ts'
import { money } from './insured.ts'

/** Ours to us, seen from this house. */
export const loanWay = z.enum(['in', 'out'])
/** Who bears the loss. `indemnity`: a state's, in place of insurance. */
export const insuredBy = z.enum(['', 'lender', 'borrower', 'indemnity', 'nobody'])
/** Nothing where nobody said. */
const dayOrNone = z.union([z.literal(''), day])

export type Amount = z.output<typeof money>

const loanFields = {
  way: loanWay,
  number: name,
  purpose: shortText,
  first: dayOrNone,
  last: dayOrNone,
  agreed: dayOrNone,
  authoriser: shortText,
  creditLine: shortText,
  note: longText,
  closed: dayOrNone,
} as const

const head = z.strictObject({
  id,
  party: id,
  partyName: z.string(),
  way: loanWay,
  number: z.string(),
  purpose: z.string(),
  first: dayOrNone,
  last: dayOrNone,
  closed: dayOrNone,
  works: z.int(),
})
export type LoanHead = z.output<typeof head>

const contact = z.strictObject({ id, name: z.string(), role: z.string(), reach: z.string() })
export type LoanContact = z.output<typeof contact>

const loanWork = z.strictObject({
  id,
  work: id,
  number: z.string(),
  title: z.string(),
  maker: z.string(),
  lender: id.nullable(),
  item: z.string(),
  value: money.nullable(),
  insuredBy,
  note: z.string(),
})
export type LoanWork = z.output<typeof loanWork>

const figure = z.number().min(-1e9).max(greatestMinor)
const termFields = {
  low: figure.nullable(),
  high: figure.nullable(),
  choice: shortText,
  said: longText,
} as const

/** What a named person said of a term that no plan tells. `kept`: false where it is not so. */
export const termWord = z.strictObject({ kept: z.boolean(), by: name, on: day, note: shortText })

export const loanTerm = z.strictObject({
  id,
  /** The work of the loan that it is about; null for all of them. */
  item: id.nullable(),
  kind: z.enum(termKinds),
  ...termFields,
  confirmed: termWord.nullable(),
})
export type LoanTerm = z.output<typeof loanTerm>

const termState = { state: z.enum(termStates), text: z.string() } as const

export const loansArea = {
  'loan.list': procedure(
    'read',
    'Lists lenders and borrowers with their loans, in the order of names and numbers; with words, those found by them.',
    z.strictObject({ words: shortText.optional() }),
    z.strictObject({
      parties: z.array(z.strictObject({ id, name: z.string(), kind: z.string(), loans: z.array(head) })),
      /** Of all loans, whatever is looked for. */
      total: z.int(),
    }),
  ),
  'loan.get': procedure(
    'read',
    'Gives one loan: agreement, period, people, and its works with the value agreed for each.',
    z.strictObject({ id }),
    z.strictObject({
      ...head.shape,
      agreed: dayOrNone,
      /** Who signed for the other house. */
      authoriser: z.string(),
      creditLine: z.string(),
      note: z.string(),
      contact: z.string(),
      today: day,
      contacts: z.array(contact),
      items: z.array(loanWork),
    }),
  ),
  'loan.periods': procedure(
    'read',
    'Tells for which shows a loan begins too late or ends too early, work by work; loans that follow one another are one.',
    z.strictObject({ loan: id }),
    z.strictObject({
      shows: z.array(z.strictObject({ exhibition: id, title: z.string(), findings: z.array(finding) })),
    }),
  ),
  'loan.ofWork': procedure(
    'read',
    'Lists the loans that a work is in, the newest first, with the value agreed for each.',
    z.strictObject({ work: id }),
    z.strictObject({
      loans: z.array(z.strictObject({ ...head.shape, item: z.string(), value: money.nullable(), insuredBy })),
    }),
  ),
  'loan.add': procedure(
    'write',
    'Adds a loan of a lender or to a borrower.',
    z.strictObject({
      party: id,
      number: name,
      way: loanWay.optional(),
      purpose: shortText.optional(),
      first: dayOrNone.optional(),
      last: dayOrNone.optional(),
      agreed: dayOrNone.optional(),
      authoriser: shortText.optional(),
      creditLine: shortText.optional(),
      note: longText.optional(),
    }),
    made,
  ),
  'loan.update': procedure('write', 'Changes a loan.', z.strictObject({ id, changes: changes(loanFields) }), updated),
  'loan.remove': procedure(
    'write',
    'Removes a loan with all that belongs to it; its works stay.',
    z.strictObject({ id }),
    done,
  ),
  'loan.addContact': procedure(
    'write',
    'Adds a person of a loan and how to reach them.',
    z.strictObject({ loan: id, name, role: shortText.optional(), reach: shortText.optional() }),
    made,
  ),
  'loan.updateContact': procedure(
    'write',
    'Changes a person of a loan.',
    z.strictObject({ id, changes: changes({ name, role: shortText, reach: shortText }) }),
    updated,
  ),
  'loan.removeContact': procedure('write', 'Takes a person off a loan.', z.strictObject({ id }), done),
  'loan.addWorks': procedure(
    'write',
    'Puts works into a loan; those that are in it already stay as they are.',
    z.strictObject({ loan: id, works: z.array(id).min(1, 'name a work').max(2000) }),
    z.strictObject({ added: z.array(made) }),
  ),
  'loan.updateWork': procedure(
    'write',
    'Changes what was agreed for one work of a loan: its item number, its value, who insures it.',
    z.strictObject({
      id,
      changes: changes({ item: shortText, value: money.nullable(), insuredBy, note: longText }),
    }),
    updated,
  ),
  'loan.terms': procedure(
    'read',
    'Lists the terms of a loan, and of each whether it holds for each of its works as a show is planned and known today.',
    z.strictObject({ loan: id, exhibition: id.nullable(), unit: lengthUnit.optional() }),
    z.strictObject({
      terms: z.array(
        z.strictObject({
          ...loanTerm.shape,
          works: z.array(z.strictObject({ work: id, title: z.string(), number: z.string(), ...termState })),
        }),
      ),
    }),
  ),
  'loan.termsOfWork': procedure(
    'read',
    'Lists the terms that a work is lent under by loans that are not closed, and whether each holds in a show today.',
    z.strictObject({ work: id, exhibition: id.nullable(), unit: lengthUnit.optional() }),
    z.strictObject({
      terms: z.array(
        z.strictObject({ ...loanTerm.shape, loan: id, loanNumber: z.string(), partyName: z.string(), ...termState }),
      ),
    }),
  ),
  'loan.addTerm': procedure(
    'write',
    'Adds a term of a loan, for all its works or for one of them: kind, figures, the words of the agreement.',
    z.strictObject({
      loan: id,
      item: id.optional(),
      kind: z.enum(termKinds),
      low: figure.optional(),
      high: figure.optional(),
      choice: shortText.optional(),
      said: longText.optional(),
    }),
    made,
  ),
  'loan.updateTerm': procedure(
    'write',
    'Changes the figures or the words of a term, or what a named person said of it where no plan tells it; what is asked anew is confirmed anew.',
    z.strictObject({ id, changes: changes({ ...termFields, confirmed: termWord.nullable() }) }),
    updated,
  ),
  'loan.removeTerm': procedure('write', 'Takes a term off a loan.', z.strictObject({ id }), done),
  'loan.removeWork': procedure(
    'write',
    'Takes a work out of a loan; it stays in the catalogue.',
    z.strictObject({ id }),
    done,
  ),
} as const
