/** Why a hang is as it is: what a work and a wall have of its quality, and what would change it. Points are hundredths. */
import * as z from 'zod'
import { id, millimetres } from '../shared.ts'

/** Each from 0 to 1. */
export const termValues = z.strictObject({
  order: z.number(),
  balance: z.number(),
  evenness: z.number(),
  light: z.number(),
  sight: z.number(),
  rhythm: z.number(),
})
const counts = z.number().min(0).max(100)

/** How much each term counts; all alike where left out. */
export const termWeights = z.strictObject({
  order: counts,
  balance: counts,
  evenness: counts,
  light: counts,
  sight: counts,
  rhythm: counts,
})

/** What hangs where, wall by wall. */
export const hangFaces = z.array(
  z.strictObject({
    face: id,
    works: z
      .array(
        z.strictObject({
          entry: id,
          x: millimetres,
          /** Height of its middle above the floor, of a work in a stack or grid or on a base; others follow their wall. */
          y: millimetres.nullable().optional(),
        }),
      )
      .max(5000),
  }),
)

const otherPlace = z.strictObject({
  face: id,
  x: z.number(),
  /** The work that comes to where it was; null where it only moves. */
  swapped: id.nullable(),
  /** Points lost by going there; below 0 it would be better. */
  price: z.number(),
  /** What of the price each term has. */
  lost: termValues,
})

export const workExplained = z.strictObject({
  entry: id,
  /** The wall where it hangs; null where it is left out. */
  face: id.nullable(),
  stays: z.boolean(),
  /** The stack or grid that it hangs in, with its other works; null where it hangs by itself. */
  unit: z.strictObject({ kind: z.enum(['single', 'stack', 'grid']), with: z.array(id) }).nullable(),
  /** Of the least served viewers, here and where it would be seen best. */
  served: z.strictObject({ here: z.number().nullable(), most: z.number().nullable() }),
  /** Axes of doorways that it stands on. */
  axes: z.array(z.number()),
  /** Lux: what it may receive, what its wall is planned at, what its neighbours may receive (null: nobody said). */
  light: z.strictObject({
    limit: z.number().nullable(),
    planned: z.number().nullable(),
    beside: z.array(z.strictObject({ entry: id, limit: z.number().nullable() })),
  }),
  /** Stretches of wall, and how many of them it may not hang on, by why. */
  stretches: z.int(),
  barred: z.strictObject({
    tooWide: z.int(),
    tooMuchLight: z.int(),
    tooHigh: z.int(),
    tooLow: z.int(),
    byRule: z.int(),
  }),
  /** Rules in force that name it, by their sentences. */
  rules: z.array(z.strictObject({ id: z.string(), says: z.string() })),
  /** The cheapest of all other places, and the cheapest on another wall; null where none is allowed. */
  next: otherPlace.nullable(),
  elsewhere: otherPlace.nullable(),
  /** Moves and exchanges that were compared. */
  looked: z.int(),
})

export const wallExplained = z.strictObject({
  face: id,
  /** Points that it loses by each term. */
  lost: termValues,
  stretches: z.array(
    z.strictObject({
      from: z.number(),
      to: z.number(),
      works: z.int(),
      /** Σ widths, and what an even hang would put there. */
      width: z.number(),
      share: z.number(),
      left: z.number(),
      /** Centre of visual weight from the middle; to the right is positive. */
      off: z.number(),
      served: z.number().nullable(),
      axes: z.array(z.strictObject({ x: z.number(), entry: id.nullable() })),
    }),
  ),
  /** What would make the hang better by most: none of it is done. Gains are points. */
  drop: z.strictObject({ entry: id, gain: z.number() }).nullable(),
  longer: z.strictObject({ by: z.number(), gain: z.number(), fits: z.array(id) }).nullable(),
  /** Without something that is kept clear. */
  cleared: z
    .strictObject({
      label: z.string(),
      from: z.number(),
      to: z.number(),
      /** Free length that its stretch would have, and the longest beside it now. */
      gives: z.number(),
      was: z.number(),
      gain: z.number(),
    })
    .nullable(),
  /** A partition of its room, moved along itself or across; and how many axes of doorways meet walls of the room then. */
  partition: z
    .strictObject({
      name: z.string(),
      by: z.number(),
      way: z.enum(['towards its right end', 'towards its left end', 'towards side a', 'towards side b']),
      gain: z.number(),
      axes: z.strictObject({ now: z.int(), moved: z.int() }),
    })
    .nullable(),
})
