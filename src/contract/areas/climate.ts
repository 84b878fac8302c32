/**
 * The air of rooms: loggers' files, their readings, limits, and where they were left. The rule it keeps: what a file
 * leaves open is asked before anything is written, and what was left out of it is told.
 */
import * as z from 'zod'
import { columnRoles, temperatureUnits } from '../../climate/columns.ts'
import { dateOrders } from '../../climate/date-text.ts'
import { limitKeys } from '../../climate/limits.ts'
import { procedure } from '../procedure.ts'
import { changes, done, handle, id, moment, name, shortText, updated } from '../shared.ts'

const percent = z.number().min(0).max(100, 'relative humidity is 0 to 100 %').meta({ description: 'per cent' })
const celsius = z.number().min(-40).max(80).meta({ description: '°C' })
const kelvins = z.number().gt(0).max(100).meta({ description: 'a span in K' })
const column = z.int().min(1).max(60).meta({ description: 'column, from 1' })

const read = {
  handle,
  /** What columns are, where the headings do not tell it; those not named are nothing then. */
  columns: z
    .array(z.strictObject({ column, is: z.enum(columnRoles) }))
    .max(60)
    .optional(),
  order: z.enum(dateOrders).optional(),
  unit: z.enum(temperatureUnits).optional(),
  /** The logger's clock: `+01:00`, or a zone with summer time by its name in the IANA database. */
  zone: z.string().trim().min(1).max(60).optional(),
} as const

const ask = z.strictObject({
  code: z.enum(['columns', 'order', 'unit', 'zone', 'hour that never was', 'nothing']),
  words: z.string(),
})

const limits = {
  humidityLow: percent.nullable(),
  humidityHigh: percent.nullable(),
  humidityChange: percent.nullable(),
  celsiusLow: celsius.nullable(),
  celsiusHigh: celsius.nullable(),
  celsiusChange: kelvins.nullable(),
} as const

const summary = z.strictObject({
  least: z.number(),
  leastAt: moment,
  most: z.number(),
  mostAt: moment,
  mean: z.number(),
})

const stretch = z.strictObject({
  limit: z.enum(limitKeys),
  from: moment,
  until: moment,
  worst: z.number(),
  worstAt: moment,
  /** How many times were joined to it, as the house rule says; hours beyond, without those between. */
  times: z.int(),
  hoursBeyond: z.number(),
})

const file = z.strictObject({
  id,
  name: z.string(),
  logger: z.string(),
  count: z.int(),
  first: moment,
  last: moment,
  /** What was left out or settled when it was brought in, in sentences. */
  told: z.array(z.string()),
  recordedAt: moment,
  recordedBy: z.string(),
  /** Why it does not count, and who said so. */
  withdrawn: z.strictObject({ why: z.string(), by: z.string() }).nullable(),
})
export type ClimateFile = z.output<typeof file>

const logger = z.strictObject({
  logger: z.string(),
  count: z.int(),
  first: moment,
  last: moment,
  humidity: summary.nullable(),
  celsius: summary.nullable(),
  /** Dew point in °C and water in the air in g/m³, of the means. */
  dewPoint: z.number().nullable(),
  water: z.number().nullable(),
  /** Hours for which something is known, and those of them beyond a limit. */
  hoursKnown: z.number(),
  hoursOut: z.number(),
  /** Beyond a limit, the first one first; a thousand at most, and how many there are. */
  out: z.array(stretch),
  outCount: z.int(),
  /** How many those were before any were joined. */
  outApart: z.int(),
  gaps: z.array(z.strictObject({ from: moment, until: moment })),
  gapCount: z.int(),
})
export type ClimateLogger = z.output<typeof logger>

const packedDay = z.strictObject({
  day: z.int().meta({ description: 'days since 1 January 1970, UTC' }),
  seconds: z.string(),
  celsius: z.string(),
  humidity: z.string(),
})

export const climateArea = {
  'climate.readFile': procedure(
    'long',
    'Reads a logger’s file and tells what was understood of it and what is to settle; writes nothing.',
    z.strictObject(read),
    z.strictObject({
      name: z.string(),
      headingRow: z.int(),
      columns: z.array(
        z.strictObject({
          column,
          letters: z.string(),
          heading: z.string(),
          is: z.enum(columnRoles),
          sample: z.string(),
        }),
      ),
      order: z.enum(dateOrders).nullable(),
      unit: z.enum(temperatureUnits).nullable(),
      asks: z.array(ask),
      count: z.int(),
      first: moment.nullable(),
      last: moment.nullable(),
      bad: z.array(z.strictObject({ row: z.int(), words: z.string() })),
      told: z.array(z.string()),
    }),
  ),
  'climate.takeFile': procedure(
    'long',
    'Brings a logger’s readings in for a room. They are never changed; a wrong file is withdrawn.',
    z.strictObject({ ...read, room: id, logger: name, by: name.optional() }),
    z.strictObject({ id, count: z.int(), told: z.array(z.string()) }),
  ),
  'climate.withdrawFile': procedure(
    'write',
    'Records that a logger’s file was wrong and why; it stays on record and counts no more.',
    z.strictObject({ file: id, why: name, by: name.optional() }),
    done,
  ),
  'climate.setLimits': procedure(
    'write',
    'Changes what the air of a room is held to; an empty limit is the house rule’s.',
    z.strictObject({ room: id, changes: changes({ ...limits, why: shortText }) }),
    updated,
  ),
  'climate.rooms': procedure(
    'read',
    'Lists rooms with how much is known of their air.',
    z.strictObject({}),
    z.strictObject({
      rooms: z.array(
        z.strictObject({
          id,
          name: z.string(),
          number: z.string(),
          count: z.int(),
          first: moment.nullable(),
          last: moment.nullable(),
        }),
      ),
    }),
  ),
  'climate.room': procedure(
    'read',
    'Tells the limits of a room, its loggers’ files, and where and for how long readings were beyond a limit.',
    z.strictObject({ room: id, from: moment.optional(), until: moment.optional() }),
    z.strictObject({
      own: z.strictObject({ ...limits, why: z.string() }),
      inForce: z.strictObject(limits),
      files: z.array(file),
      loggers: z.array(logger),
    }),
  ),
  'climate.readings': procedure(
    'read',
    'Gives the readings of a room, packed by days: whole numbers told by their differences, `5x287` the same 287 times, `-` none; seconds of the day, hundredths of °C and of per cent.',
    z.strictObject({ room: id, from: moment.optional(), until: moment.optional() }),
    z.strictObject({
      loggers: z.array(z.strictObject({ logger: z.string(), days: z.array(packedDay) })),
    }),
  ),
}
