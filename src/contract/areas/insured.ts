/**
 * What works are worth, day by day, by lender, room, crate and vehicle, against limits. The rule it keeps: a work
 * without a value and money without a rate stand apart and are told; they are never counted as nought.
 */
import * as z from 'zod'
import { bearers } from '../../insurance/bearer.ts'
import { groupKinds } from '../../insurance/groups.ts'
import { limitScopes } from '../../insurance/limits.ts'
import { isCurrency } from '../../money/currency.ts'
import { readRate } from '../../money/exchange.ts'
import { greatestMinor } from '../../money/read-figure.ts'
import { procedure } from '../procedure.ts'
import { day, done, id, made, page, shortText } from '../shared.ts'

export const currency = z
  .string()
  .refine(isCurrency, 'expected a currency by ISO 4217, such as EUR')
  .meta({ description: 'currency by ISO 4217' })
export const money = z.strictObject({
  minor: z
    .int()
    .min(0)
    .max(greatestMinor)
    .meta({ description: 'whole minor units of the currency: cents, or its whole unit where it has none' }),
  currency,
})
/** As sums are told: they may be greater than what one work may be worth. */
const told = z.strictObject({ minor: z.int(), currency: z.string() })
const dayOrNone = z.union([z.literal(''), day])
const rateText = z
  .string()
  .trim()
  .refine(text => readRate(text) === text, 'expected a rate above nought, such as 0.9412')

const rate = z.strictObject({
  id,
  from: z.string(),
  to: z.string(),
  rate: z.string(),
  day,
  source: z.string(),
  by: z.string(),
})

const scope = z.enum(limitScopes)
const bearer = z.enum(bearers)
/** Empty: whoever bears the loss. */
const bearerOrAny = z.enum(['', 'house', 'lender', 'borrower', 'indemnity', 'nobody'])
const limit = z.strictObject({
  id,
  scope,
  lender: id.nullable(),
  place: id.nullable(),
  /** Whose works alone it counts, by who bears their loss. */
  bearer: bearerOrAny,
  /** What it is for: `everything`, `Quay Collection`, `Room 2`, `each crate`. */
  words: z.string(),
  amount: told,
  first: dayOrNone,
  last: dayOrNone,
  source: z.string(),
  by: z.string(),
})

/**
 * `all`, or a kind and a key: `lender:` (of nobody), `room:r7`, `crate:c2`, `vehicle:v1`, `journey:v1`; `room:` is a
 * place not known. A part of it: `all/house`, `vehicle:v1/indemnity`, by who bears it, or `all/term-t4`, by a term.
 */
const group = z
  .string()
  .regex(
    new RegExp(
      `^(all|(${groupKinds.slice(1).join('|')}):[0-9a-z]{0,40})(/(${bearers.join('|')}|term-[0-9a-z]{1,40}))?$`,
    ),
    'expected all, or a kind and a key',
  )
/** Parts of everything are kinds of their own: by who bears it, by a loan's term. */
export const lineKinds = ['all', 'bearer', 'loan', 'lender', 'room', 'crate', 'vehicle', 'journey'] as const
export type LineKind = (typeof lineKinds)[number]

const against = z.strictObject({
  limit: id,
  words: z.string(),
  source: z.string(),
  amount: told,
  /** In the currency of the sums; null where no rate of the day leads there. */
  minor: z.int().nullable(),
  verdict: z.enum(['within', 'over', 'unsure']),
  over: z.int(),
})

const sum = {
  /** In the currency of the answer: the greatest that was together at any moment of the day, rounded half to even. */
  minor: z.int(),
  /** The greatest of each currency that no rate of the day leads from. */
  apart: z.array(told),
  works: z.int(),
  without: z.int(),
} as const

const line = z.strictObject({
  group: z.string(),
  kind: z.enum(lineKinds),
  words: z.string(),
  ...sum,
  against: z.array(against),
  /** Its greatest day of the period that was asked for, with that day's sum. */
  greatest: z.strictObject({ day, minor: z.int() }),
})
export type InsuredLine = z.output<typeof line>

const held = z.strictObject({
  work: id,
  number: z.string(),
  title: z.string(),
  lender: z.string(),
  /** Where it is, the innermost place first; empty where nobody knows. */
  words: z.string(),
  basis: z.enum(['record', 'plan']),
  value: told.nullable(),
  /** In the currency of the answer; null without a value or a rate. */
  minor: z.int().nullable(),
  /** The loan that agrees it, or the source of the valuation. */
  why: z.string(),
  /** The day from which the valuation holds; null where a loan says it. */
  since: day.nullable(),
  /** Who bears its loss. */
  bearer,
  /** Limits of its group that it, or a work that came before it, has brought over. */
  over: z.boolean(),
})
export type InsuredWork = z.output<typeof held>

const about = {
  /** Works of this show; without it all works of the catalogue. */
  exhibition: id.optional(),
  /** Of the sums; that of most values where left out. */
  currency: currency.optional(),
} as const
const period = { first: day.optional(), last: day.optional() } as const

const counts = {
  currency: z.string(),
  /** Every currency that a value, a rate or a limit has. */
  currencies: z.array(z.string()),
  today: day,
  first: day,
  last: day,
} as const

export const insuredArea = {
  'insured.days': procedure(
    'read',
    'Tells what works together are worth on each day of a period: all of them, or those of one lender or place.',
    z.strictObject({ ...about, ...period, group: group.optional() }),
    z.strictObject({
      ...counts,
      /** `limit`: the least one in force that day, in the currency of the sums; null without one. */
      days: z.array(z.strictObject({ day, ...sum, limit: z.int().nullable(), over: z.boolean() })),
      /** Every group over a limit on any day, the first such day first. */
      over: z.array(
        z.strictObject({ group: z.string(), words: z.string(), source: z.string(), day, days: z.int(), over: z.int() }),
      ),
    }),
  ),
  'insured.day': procedure(
    'read',
    'Tells what works together are worth on one day by who bears the loss, lender, room, crate and vehicle, and the works of one of these.',
    z.strictObject({ day, ...about, ...period, group: group.optional(), ...page }),
    z.strictObject({
      ...counts,
      day,
      lines: z.array(line),
      rates: z.array(rate),
      /** Of the group that was asked for, at the moment of its greatest sum, in the order in which they came. */
      works: z.array(held),
      total: z.int(),
      /** Works at addresses outside, and works that are in no place and expected in none: in no sum. */
      outside: z.int(),
      nowhere: z.int(),
    }),
  ),
  'insured.values': procedure(
    'read',
    'Lists the valuations of a work, the newest first, and says which of them, or which loan, counts today.',
    z.strictObject({ work: id }),
    z.strictObject({
      /** A loan or a valuation of its own; null where it has no value today. */
      counts: z.strictObject({ kind: z.enum(['loan', 'own']), id }).nullable(),
      values: z.array(z.strictObject({ id, value: told, day, source: z.string(), by: z.string() })),
    }),
  ),
  'insured.addValue': procedure(
    'write',
    'Adds what a work is worth from a day on; a loan’s agreed value goes before it on the days of the loan.',
    z.strictObject({ work: id, value: money, day: day.optional(), source: shortText.optional() }),
    made,
  ),
  'insured.removeValue': procedure('write', 'Takes a valuation away.', z.strictObject({ id }), done),
  'insured.rates': procedure(
    'read',
    'Lists rates of exchange that were entered, the newest first.',
    z.strictObject({}),
    z.strictObject({ rates: z.array(rate) }),
  ),
  'insured.addRate': procedure(
    'write',
    'Adds a rate of exchange from a day on: one of a currency in another.',
    z.strictObject({ from: currency, to: currency, rate: rateText, day: day.optional(), source: shortText.optional() }),
    made,
  ),
  'insured.removeRate': procedure('write', 'Takes a rate of exchange away.', z.strictObject({ id }), done),
  'insured.limits': procedure(
    'read',
    'Lists limits of what may be together.',
    z.strictObject({}),
    z.strictObject({ limits: z.array(limit) }),
  ),
  'insured.addLimit': procedure(
    'write',
    'Adds a limit: for everything, one lender, one place, each crate, vehicle or journey; of all works, or of those that one bears.',
    z.strictObject({
      scope,
      lender: id.optional(),
      place: id.optional(),
      bearer: bearerOrAny.optional(),
      amount: money,
      first: dayOrNone.optional(),
      last: dayOrNone.optional(),
      source: shortText.optional(),
    }),
    made,
  ),
  'insured.removeLimit': procedure('write', 'Takes a limit away.', z.strictObject({ id }), done),
} as const
