/** What is asked for and offered as the nearest move that clears the marks of a work, as schemas of the contract; mm. */
import * as z from 'zod'
import { marksQuestion } from './marks-shape.ts'

const mm = z.number().min(-1e6).max(1e6)
const size = z.number().gt(0).max(1e5)
const gap = z.strictObject({ was: z.number(), becomes: z.number() })

export const nearestQuestion = z.strictObject({
  marks: marksQuestion,
  /** The other works on the wall: left edge, bottom edge, width, height. */
  others: z
    .array(z.strictObject({ x: mm, y: mm, width: size, height: size }))
    .max(2000)
    .readonly()
    .optional(),
})

export const offer = z.strictObject({
  /** Along the wall, right is positive; 0 where only the hooks move. */
  dx: z.number(),
  /** Between the hooks in this offer; null where they stay as they are. */
  hooksApart: z.number().nullable(),
  hooksWere: z.number().nullable(),
  /** mm moved along plus mm between the hooks. */
  cost: z.number(),
  /** Clear distance to the next work, or the end of the wall, on each side. */
  gapLeft: gap,
  gapRight: gap,
})

export const offers = z.strictObject({
  /** No mark is in conflict as it is. */
  clear: z.boolean(),
  /** Codes of the findings that the offers cure. */
  conflicts: z.array(z.string()).readonly(),
  /** Cheapest first; empty where it is clear or nothing helps. */
  offers: z.array(offer).readonly(),
})

export type Offer = z.output<typeof offer>
export type Offers = z.output<typeof offers>
