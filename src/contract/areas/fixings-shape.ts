/** A kind of fixing as the library has it. */
import * as z from 'zod'
import { fixingShapes } from '../../hang/fixing-shapes.ts'
import { id } from '../shared.ts'

export const fixingRow = z.strictObject({
  id,
  name: z.string(),
  kind: z.enum(fixingShapes),
  /** From bearing point to hole, up positive. */
  holeOffset: z.number(),
  /** As the user's packet says, for the wall type it says; null where nobody has said. */
  ratedKg: z.number().nullable(),
  wallType: z.string(),
  shank: z.number().nullable(),
  length: z.number().nullable(),
  /** Diameter of its head. */
  head: z.number().nullable(),
  /** What drills its hole and what drives it, in words. */
  bit: z.string(),
  tool: z.string(),
  source: z.string(),
  note: z.string(),
  /** Further ratings, one a wall type, each as a packet says; null where it says: not in this wall. */
  ratings: z.array(z.strictObject({ wallType: z.string(), ratedKg: z.number().nullable(), source: z.string() })),
})
