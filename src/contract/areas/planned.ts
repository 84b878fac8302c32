/**
 * Movements that are planned: what is to go where on which day. The rule it keeps: a plan is ordinary and can be changed
 * and undone; it is done while a movement in force fulfils it, and open again once that is struck or goes elsewhere.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, day, done, finding, id, longText, made, page, shortText, updated } from '../shared.ts'

const hour = z
  .string()
  .regex(/^(([01]\d|2[0-3]):[0-5]\d)?$/, 'expected an hour such as 09:30')
  .meta({ description: 'by the clocks of the house; empty where the day says enough' })
const hands = z.int().min(1).max(50).meta({ description: 'how many carry' })

/** What can be said of how, beside where to and when. */
const how = {
  hour: hour.optional(),
  method: shortText.optional(),
  people: shortText.optional(),
  hands: hands.optional(),
  reason: shortText.optional(),
  note: longText.optional(),
} as const

const what = {
  /** A set is planned as one and goes with its parts. */
  works: z.array(id).max(2000).optional(),
  crates: z.array(id).max(200).optional(),
  to: id,
  spot: shortText.optional(),
  day,
} as const

const line = z.strictObject({
  id,
  kind: z.enum(['work', 'crate']),
  /** The work or crate. */
  thing: id,
  number: z.string(),
  title: z.string(),
  /** Where it will be taken from: by the plan before this one, else by the record; empty where neither knows. */
  fromWords: z.string(),
  place: id,
  words: z.string(),
  spot: z.string(),
  day,
  hour: z.string(),
  method: z.string(),
  people: z.string(),
  hands: z.int().nullable(),
  reason: z.string(),
  note: z.string(),
  /** Its day is over and it is open. */
  overdue: z.boolean(),
  /** How it passes, in a few words; of a set, of each part that passes otherwise. */
  way: z.string(),
  /** The movement that fulfilled it, and where that went; null while it is open. */
  done: z.strictObject({ movement: id, at: z.iso.datetime(), words: z.string() }).nullable(),
  /** What is to be said of it; nothing of what is done. */
  findings: z.array(finding),
})
export type PlannedLine = z.output<typeof line>

export const plannedArea = {
  'planned.list': procedure(
    'read',
    'Lists planned movements, overdue ones first, each with where it comes from, how it passes and what is to settle.',
    z.strictObject({
      /** Days, both included; overdue ones before them count in where the last of them is today or later. */
      from: day.optional(),
      to: day.optional(),
      state: z.enum(['open', 'done', 'all']).optional(),
      words: shortText.optional(),
      /** Of this work or crate alone. */
      thing: id.optional(),
      /** Tells of this show how many works are on walls of the plan, not there yet and not planned to go there. */
      exhibition: id.optional(),
      order: z.enum(['day', 'work', 'place']).optional(),
      ...page,
    }),
    z.strictObject({
      lines: z.array(line),
      total: z.int(),
      overdue: z.int(),
      /** Of the show that was asked for; 0 without one. */
      toPlan: z.int(),
    }),
  ),
  'planned.check': procedure(
    'read',
    'Tells what is to be said of a planned movement before it is planned.',
    z.strictObject({ ...what, hour: hour.optional() }),
    z.strictObject({ notes: z.array(finding) }),
  ),
  'planned.add': procedure(
    'write',
    'Plans that works, sets or crates go to a place on a day, one planned movement each.',
    z.strictObject({ ...what, ...how }),
    z.strictObject({ plans: z.array(made) }),
  ),
  'planned.fromShow': procedure(
    'write',
    'Plans for a day that every work placed on a wall of a show, and not yet there, goes to its wall.',
    z.strictObject({ exhibition: id, day, works: z.array(id).min(1).max(2000).optional(), ...how }),
    z.strictObject({ plans: z.array(made) }),
  ),
  'planned.update': procedure(
    'write',
    'Changes a planned movement that is open.',
    z.strictObject({
      id,
      changes: changes({
        to: id,
        spot: shortText,
        day,
        hour,
        method: shortText,
        people: shortText,
        hands: hands.nullable(),
        reason: shortText,
        note: longText,
      }),
    }),
    updated,
  ),
  'planned.setDay': procedure(
    'write',
    'Puts planned movements that are open on another day.',
    z.strictObject({ ids: z.array(id).min(1).max(2000), day, hour: hour.optional() }),
    done,
  ),
  'planned.remove': procedure(
    'write',
    'Takes planned movements off the plan that no record fulfils.',
    z.strictObject({ ids: z.array(id).min(1).max(2000) }),
    done,
  ),
} as const
