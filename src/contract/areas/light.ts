/**
 * Light that works receive: hours lit of a show, readings at a work, and the ledger of both. The rule it keeps: a level
 * that nobody read or planned is told as unknown, never counted as darkness.
 */
import * as z from 'zod'
import { litFor } from '../../light/hours.ts'
import { procedure } from '../procedure.ts'
import { day, done, id, lux, made, moment, name, page, shortText } from '../shared.ts'
import { sensitivity } from './works-shape.ts'

const hours = z.number().min(0).max(24, 'a day has 24 hours').meta({ description: 'hours a day' })
const uv = z.number().min(0).max(10_000).meta({ description: 'ultraviolet in microwatts per lumen' })
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

const budget = z.strictObject({
  /** Lux-hours in any 365 days; null where nobody said how sensitive it is, or it needs none. */
  luxHours: z.number().nullable(),
  sensitivity,
})

const spent = {
  budget,
  /** Lux-hours of the last 365 days, of all time, and of the fullest 365 days with what is planned. */
  used: z.number(),
  ever: z.number(),
  most: z.number(),
  /** Hours lit until today of which nobody knows the level. */
  unknownHours: z.number(),
  /** The day on which it has received more than a year's budget; with what is planned, and if its show went on. */
  ends: day.nullable(),
  endsIfLonger: day.nullable(),
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
})
export type LedgerSpan = z.output<typeof span>

const reading = z.strictObject({
  id,
  at: moment,
  points: z.array(lux),
  /** The greatest of its points: what the ledger counts. */
  lux,
  uv: uv.nullable(),
  meter: z.string(),
  note: z.string(),
  recordedAt: moment,
  recordedBy: z.string(),
  /** Why it does not count, and who said so. */
  struck: z.strictObject({ why: z.string(), by: z.string() }).nullable(),
})
export type LightReading = z.output<typeof reading>

const line = z.strictObject({ id, number: z.string(), title: z.string(), running: z.string(), ...spent })
export type LightLine = z.output<typeof line>

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
  'light.removeHours': procedure('write', 'Takes hours lit away again.', z.strictObject({ id }), done),
  'light.addReading': procedure(
    'write',
    'Records what a meter showed at a work; a reading is never changed and never taken back, only struck.',
    z.strictObject({
      work: id,
      points: z.array(lux).min(1, 'a reading has one point or more').max(25),
      uv: uv.optional(),
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
    'Tells the light that a work has received and is to receive across its shows, and what its budget says of it.',
    z.strictObject({ work: id }),
    z.strictObject({ ...spent, today: day, spans: z.array(span), readings: z.array(reading) }),
  ),
  'light.list': procedure(
    'read',
    'Lists works of a show by the share of their yearly budget of light that they use, the fullest first.',
    z.strictObject({ exhibition: id, words: shortText.optional(), ...page }),
    z.strictObject({ lines: z.array(line), total: z.int() }),
  ),
}
