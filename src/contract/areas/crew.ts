/**
 * The crew: what people may lift, who hangs what when, the hardware, the order up and down, what is patched. Plans are
 * computed from the walls each time; only the crew's size, its times, its equipment and its stock are kept.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, done, id, kilograms, longText, made, name, shortText, size, updated } from '../shared.ts'
import { count, crewHardware, crewOrders, crewPlan, equipmentRow, liftLimit, liftPoint } from './crew-shape.ts'

const ofShow = z.strictObject({ exhibition: id })

export const crewArea = {
  'crew.lifting': procedure(
    'pure',
    'Computes what one person and a team may lift by the 1991 equation, and how far a load is over it.',
    z.strictObject({
      mass: kilograms,
      origin: liftPoint,
      /** Where it is set down; left out: where it was picked up. */
      destination: liftPoint.optional(),
      /** Lifts a minute; 0.2 where left out. */
      perMinute: z.number().min(0).max(60).optional(),
      /** Up to 1, 2 or 8 hours with the rest that each asks for; short where left out. */
      duration: z.enum(['short', 'moderate', 'long']).optional(),
      /** How it can be gripped; fair where left out. */
      coupling: z.enum(['good', 'fair', 'poor']).optional(),
      people: z.int().min(1).max(100).optional(),
      /** Whose constants and tables: they are no conversions of each other. */
      system: z.enum(['metric', 'us']).optional(),
      /** By the formula, or by the printed tables. */
      from: z.enum(['formula', 'table']).optional(),
    }),
    z.strictObject({
      origin: liftLimit,
      destination: liftLimit,
      limitKg: z.number(),
      teamFactor: z.number(),
      teamSource: z.string(),
      teamLimitKg: z.number(),
      index: z.number(),
      within: z.boolean(),
      peopleNeeded: z.int().nullable(),
      cautions: z.array(z.string()).readonly(),
    }),
  ),
  'crew.plan': procedure(
    'read',
    'Plans who hangs what when: people, equipment, minutes, the order, the days, the idle time.',
    ofShow,
    crewPlan,
  ),
  'crew.hardware': procedure(
    'read',
    'Lists the hardware of a show: a box for each wall, spares, what is in stock and what to get.',
    ofShow,
    crewHardware,
  ),
  'crew.orders': procedure(
    'read',
    'Gives the order in which works hang with their tags, the order in which they come down, and what is patched then.',
    ofShow,
    crewOrders,
  ),
  'crew.set': procedure(
    'write',
    'Sets the crew of a show: its teams of two, hours of a day, spare hardware; nothing means the house rule.',
    z.strictObject({
      exhibition: id,
      changes: changes({
        teams: z.int().min(1).max(50).nullable(),
        hours: z.number().gt(0).max(24).nullable(),
        spare: z.number().min(0).max(5).nullable(),
      }),
    }),
    updated,
  ),
  'crew.setMinutes': procedure(
    'write',
    'Sets how long the house takes for a method or what comes with it; nothing brings the given time back.',
    z.strictObject({
      key: z.string().min(1).max(60),
      /** The house’s own time as it was; null where it had none. */
      was: z.number().nullable(),
      to: z.number().min(0).max(10_000).nullable(),
      source: shortText.optional(),
    }),
    done,
  ),
  'equipment.list': procedure(
    'read',
    'Lists lifts, hoists and other equipment.',
    z.strictObject({}),
    z.strictObject({ equipment: z.array(equipmentRow) }),
  ),
  'equipment.add': procedure(
    'write',
    'Adds equipment with what its plate says.',
    z.strictObject({
      name,
      carriesKg: kilograms.nullable().optional(),
      reaches: size.nullable().optional(),
      count: count.optional(),
      people: z.int().min(1).max(50).optional(),
      note: longText.optional(),
    }),
    made,
  ),
  'equipment.update': procedure(
    'write',
    'Changes equipment.',
    z.strictObject({
      id,
      changes: changes({
        name,
        carriesKg: kilograms.nullable(),
        reaches: size.nullable(),
        count,
        people: z.int().min(1).max(50),
        note: longText,
      }),
    }),
    updated,
  ),
  'equipment.remove': procedure('write', 'Removes equipment.', z.strictObject({ id }), done),
  'fixing.stock': procedure(
    'write',
    'Says how many of a kind of fixing are in stock; nothing means that nobody has counted.',
    z.strictObject({ id, changes: changes({ inStock: count.nullable() }) }),
    updated,
  ),
} as const
