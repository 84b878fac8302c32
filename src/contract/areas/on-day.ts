/**
 * A work on any day: where it was, in which condition, under whose terms, with how much light behind it, who signed. The
 * rule it keeps: of a day that is over it tells what the records say of it, the last of that day.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { day, id, moment } from '../shared.ts'
import { headOf, role } from './condition-shape.ts'
import { money } from './insured.ts'
import { insuredBy, loanTerm, loanWay, termWord } from './loans.ts'
import { receiptKind } from './receipts.ts'

const dayOrNone = z.union([z.literal(''), day])

/** The last movement until the end of that day that nothing set right. */
const stood = z.strictObject({
  movement: id,
  /** Through every crate and vehicle: `Crate 5, in Van 1, at Room 2`. */
  words: z.string(),
  spot: z.string(),
  since: moment,
  people: z.string(),
  /** As it arrived there, in a few words. */
  condition: z.string(),
  recordedBy: z.string(),
})

/** The last complete report of that day or before it. */
const examined = z.strictObject({
  report: id,
  kind: headOf.shape.kind,
  examinedAt: moment,
  place: z.string(),
  findings: z.int(),
  overall: headOf.shape.overall,
  completeAt: moment,
  signedBy: z.array(z.strictObject({ role, name: z.string() })),
})

const term = loanTerm.omit({ item: true, confirmed: true })

const lent = z.strictObject({
  loan: id,
  number: z.string(),
  partyName: z.string(),
  way: loanWay,
  first: dayOrNone,
  last: dayOrNone,
  value: money.nullable(),
  /** What was written down as agreed at the end of that day, where that was another value. */
  valueThen: z.strictObject({ value: money.nullable() }).nullable(),
  insuredBy,
  /**
   * As the agreement is written down today, those of the whole loan and of this work. `written`: when that was after
   * that day; `stood`: as it read at the end of that day, where it was changed since. `word`: what a person said of it by
   * that day, as written down today; `wordThen`: what was written of that at the end of that day, where it was otherwise.
   */
  terms: z.array(
    term.extend({
      written: z.union([z.literal(''), moment]),
      stood: term.nullable(),
      word: termWord.nullable(),
      wordThen: z.strictObject({ word: termWord.nullable() }).nullable(),
    }),
  ),
  /** What stood in the agreement at the end of that day and was taken off since, with what a person had said of it. */
  takenOff: z.array(term.extend({ word: termWord.nullable(), at: moment, person: z.string() })),
  /** The last of that day or before it that nothing set right; null where there was none. */
  receipt: z
    .strictObject({
      id,
      number: z.string(),
      kind: receiptKind,
      day,
      handedBy: z.string(),
      receivedBy: z.string(),
      recordedBy: z.string(),
    })
    .nullable(),
})
export type LentOnDay = z.output<typeof lent>

export const onDayArea = {
  'work.onDay': procedure(
    'read',
    'Tells of one day where a work was, in which condition, under whose terms, with how much light behind it, who signed.',
    z.strictObject({
      work: id,
      /** By the clock of this machine; today where left out. */
      day: day.optional(),
    }),
    z.strictObject({
      day,
      today: day,
      /** Null where no movement of it is on record by then. */
      stood: stood.nullable(),
      /** Null where no report of it was complete. */
      examined: examined.nullable(),
      /** Records of damage that were open at the end of that day: its own, of its set or of its parts by their title. */
      damage: z.array(
        z.strictObject({ id, reference: z.string(), foundAt: moment, how: z.string(), whose: z.string() }),
      ),
      /** Loans whose period has that day, or that have no period. */
      loans: z.array(lent),
      /** By the end of that day; null where nobody said when a show of it is lit. */
      light: z
        .strictObject({
          /** Lux-hours, of all time and of the 365 days until then. */
          ever: z.number(),
          year: z.number(),
          unknownHours: z.number(),
        })
        .nullable(),
    }),
  ),
} as const
