/**
 * The schemas that several areas use. Ranges are minimum and maximum, objects are strict, nothing is transformed on
 * the way out, so that each schema can also be shown as JSON Schema.
 */
import * as z from 'zod'

export const id = z
  .string()
  .regex(/^[0-9a-z]{1,40}$/, 'expected an id of the catalogue')
  .meta({ description: 'id of a row of the catalogue' })

/** A length or a position: ± 1 km. */
export const millimetres = z.number().min(-1e6).max(1e6).meta({ description: 'length in millimetres' })
/** A size: more than nothing, 100 m at most. */
export const size = z
  .number()
  .gt(0, 'it must be more than 0. Measure it again')
  .max(1e5)
  .meta({ description: 'size in millimetres' })
export const kilograms = z
  .number()
  .gt(0, 'it must be more than 0. Weigh it again')
  .max(1e5)
  .meta({ description: 'mass in kilograms' })
export const degrees = z.number().min(-360).max(360).meta({ description: 'angle in degrees' })
export const lux = z.number().min(0).max(1e6).meta({ description: 'illuminance in lux' })
export const share = z.number().min(0).max(1)
/** What a person typed, kept so that it comes back as it was written. */
export const typed = z.string().max(2000)
export const shortText = z.string().trim().max(500)
export const name = z.string().trim().min(1, 'expected a name').max(200)
export const longText = z.string().max(20_000)
/** A moment, ISO 8601 in UTC. */
export const moment = z.iso.datetime()
export const day = z.iso.date()
/** Names a file that a person gave or that the program made; never a path. */
export const handle = z
  .string()
  .regex(/^[0-9a-zA-Z._-]{1,100}$/, 'expected the handle of a file')
  .meta({ description: 'handle of an uploaded or made file' })
export const hash = z.string().regex(/^[0-9a-f]{64}$/)

export const lengthUnit = z.enum(['mm', 'cm', 'in'])
export const paper = z.enum(['A4', 'A3', 'Letter', 'Tabloid'])

/** How a value was come by. */
export const origin = z.enum(['listed', 'measured'])

/** One changed field: the value it was based on and the value it shall have. */
export function change<T extends z.ZodType>(value: T) {
  return z.strictObject({ was: value, to: value })
}

/** The changed fields of an update: every field may be left out, none may be unknown. */
export function changes<S extends Readonly<Record<string, z.ZodType>>>(shape: S) {
  const entries = Object.entries(shape).map(([key, value]) => [key, change(value).optional()])
  // The mapped type below is what Object.fromEntries cannot say.
  return z.strictObject(
    Object.fromEntries(entries) as { [K in keyof S]: z.ZodOptional<ReturnType<typeof change<S[K]>>> },
  )
}

/** A field that was not changed because somebody else had changed it meanwhile. */
export const clash = z.strictObject({
  code: z.literal('clash'),
  id: z.string(),
  field: z.string(),
  was: z.json(),
  yours: z.json(),
  theirs: z.json(),
})

/** What an update answers: the fields that went through and those that clashed. */
export const updated = z.strictObject({ saved: z.array(z.string()), clashes: z.array(clash) })

export const finding = z.strictObject({
  severity: z.enum(['stop', 'settle', 'fits']),
  code: z.string(),
  /** What it is about: `work`, `placement`, `wall` … and its id. */
  subject: z.strictObject({ kind: z.string(), id: z.string() }),
  text: z.string(),
  figures: z.record(z.string(), z.json()),
  /** Of a loan that says it alike of several works: which, and what is said of each by itself. */
  works: z.array(z.strictObject({ id, called: z.string(), text: z.string() })).optional(),
})
export type Finding = z.output<typeof finding>

export const made = z.strictObject({ id })
export const done = z.strictObject({ done: z.literal(true) })
export const page = {
  offset: z.int().min(0).max(1e7).optional(),
  limit: z.int().min(1).max(500).optional(),
} as const
