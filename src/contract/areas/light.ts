/**
 * Light that works receive: hours lit of a show, readings at a work, and the ledger of both. The rule it keeps: a level
 * that nobody read or planned is told as unknown, never counted as darkness.
 */
import * as z from 'zod'
import { litFor } from '../../light/hours.ts'
import { procedure } from '../procedure.ts'
import { changes, day, done, id, lux, made, moment, name, page, shortText, updated } from '../shared.ts'
import { sensitivity } from './works-shape.ts'

const hours = z.number().min(0).max(24, 'a day has 24 hours').meta({ description: 'hours a day' })
const uv = z.number().min(0).max(10_000).meta({ description: 'ultraviolet in microwatts per lumen' })
const uvArea = z
  .number()
  .min(0)
  .max(1e6)
  .meta({ description: 'ultraviolet on a surface in milliwatts per square metre' })
const weekdays = z.int().min(1, 'choose a weekday').max(127).meta({ description: 'a bit a weekday, Monday the lowest' })

const lit = z.strictObject({
  id,
  kind: z.enum(litFor),
  first: day,
  last: day,
  weekdays,
  hours,
  lux: lux.nullable(),
  note: z.string(),
})
export type Lit = z.output<typeof lit>

/** The term of a loan that asks it, quoted; null where it is the house's own word. */
const asked = z
  .strictObject({ term: id, loan: id, loanNumber: z.string(), partyName: z.string(), said: z.string() })
  .nullable()

const budget = z.strictObject({
  /** In any 365 days. */
  luxHours: z.number(),
  asked,
  /** The day on which it has received more than a year's budget; with what is planned, and if its show went on. */
  ends: day.nullable(),
  endsIfLonger: day.nullable(),
})
export type LightBudget = z.output<typeof budget>

const limit = z.strictObject({
  /** Of a level in lx, or of ultraviolet in µW/lm. */
  most: z.number(),
  asked,
  /** Hours lit above it, within it, and of which nobody knows; with what is planned. */
  hours: z.number(),
  within: z.number(),
  unknownHours: z.number(),
  /** The first day with an hour above it. */
  first: day.nullable(),
  greatest: z.number().nullable(),
})
export type LightLimit = z.output<typeof limit>

const spent = {
  sensitivity,
  /** The strictest first: it holds. None where nobody said how sensitive it is, or where it is not. */
  budgets: z.array(budget),
  /** Lux-hours of the last 365 days, of all time, and of the fullest 365 days with what is planned. */
  used: z.number(),
  ever: z.number(),
  most: z.number(),
  /** Hours lit until today of which nobody knows the level. */
  unknownHours: z.number(),
  /** Limits of its level and of its ultraviolet, the strictest first; none where nobody set one. */
  levels: z.array(limit),
  violets: z.array(limit),
  /** mWh/m² of the hours whose ultraviolet was read; hours until today that were, and that were not. */
  violet: z.strictObject({
    used: z.number(),
    ever: z.number(),
    most: z.number(),
    hours: z.number(),
    unknownHours: z.number(),
  }),
} as const

const span = z.strictObject({
  first: day,
  last: day,
  days: z.int(),
  exhibition: id,
  title: z.string(),
  words: z.string(),
  basis: z.enum(['read', 'planned', 'unknown']),
  lux: z.number().nullable(),
  hours: z.number(),
  unknownHours: z.number(),
  luxHours: z.number(),
  /** µW/lm while the show is open; null where nobody read it. */
  uv: z.number().nullable(),
  /** Hours whose ultraviolet was read, and what they brought: mWh/m². */
  uvHours: z.number(),
  uvDose: z.number(),
})
export type LedgerSpan = z.output<typeof span>

const reading = z.strictObject({
  id,
  at: moment,
  points: z.array(lux),
  /** The greatest of its points: what the ledger counts. */
  lux,
  /** µW/lm: as read, or from what was read on the surface. */
  uv: z.number().nullable(),
  /** mW/m², where the meter shows that. */
  uvArea: uvArea.nullable(),
  meter: z.string(),
  note: z.string(),
  recordedAt: moment,
  recordedBy: z.string(),
  /** Why it does not count, and who said so. */
  struck: z.strictObject({ why: z.string(), by: z.string() }).nullable(),
})
export type LightReading = z.output<typeof reading>

const line = z.strictObject({
  id,
  number: z.string(),
  title: z.string(),
  running: z.string(),
  /** Titles of the shows that light it, the first one first. */
  shows: z.array(z.string()),
  ...spent,
})
export type LightLine = z.output<typeof line>

/** `order`: as its show has it, else by number. Whatever is not known stands last, either way round. */
export const lightSorts = ['order', 'title', 'sensitivity', 'share', 'most', 'ever', 'ends', 'uv'] as const
export type LightSort = (typeof lightSorts)[number]

const hoursFields = {
  kind: z.enum(litFor),
  first: day,
  last: day,
  weekdays,
  hours,
  lux: lux.nullable(),
  note: shortText,
}

export const lightArea = {
  'light.hours': procedure(
    'read',
    'Lists when a show is lit: opening, cleaning, installing, events, and days it is closed.',
    z.strictObject({ exhibition: id }),
    z.strictObject({ hours: z.array(lit) }),
  ),
  'light.addHours': procedure(
    'write',
    'Adds hours a day on which a show is lit, or days on which it is closed.',
    z.strictObject({
      exhibition: id,
      kind: z.enum(litFor),
      first: day,
      last: day,
      weekdays: weekdays.optional(),
      hours: hours.optional(),
      lux: lux.optional(),
      note: shortText.optional(),
    }),
    made,
  ),
  'light.updateHours': procedure(
    'write',
    'Changes hours lit: what for, which days, how many hours, which level.',
    z.strictObject({ id, changes: changes(hoursFields) }),
    updated,
  ),
  'light.removeHours': procedure('write', 'Takes hours lit away again.', z.strictObject({ id }), done),
  'light.addReading': procedure(
    'write',
    'Records what a meter showed at a work; a reading is never changed and never taken back, only struck.',
    z.strictObject({
      work: id,
      points: z.array(lux).min(1, 'a reading has one point or more').max(25),
      uv: uv.optional(),
      uvArea: uvArea.optional(),
      at: moment.optional(),
      meter: shortText.optional(),
      note: shortText.optional(),
      by: name.optional(),
    }),
    made,
  ),
  'light.strikeReading': procedure(
    'write',
    'Records that a reading was wrong and why; it stays on record and counts no more.',
    z.strictObject({ reading: id, why: name, by: name.optional() }),
    made,
  ),
  'light.ledger': procedure(
    'read',
    'Tells the light that a work has received and is to receive across its shows, and what house and lenders say of it.',
    z.strictObject({ work: id }),
    z.strictObject({ ...spent, today: day, spans: z.array(span), readings: z.array(reading) }),
  ),
  'light.list': procedure(
    'read',
    'Lists works of a show, or of all shows, with the light they receive; the fullest budget first, or as sorted.',
    z.strictObject({
      exhibition: id.optional(),
      words: shortText.optional(),
      sort: z.enum(lightSorts).optional(),
      /** The other way round. */
      turned: z.boolean().optional(),
      ...page,
    }),
    z.strictObject({ lines: z.array(line), total: z.int() }),
  ),
}
