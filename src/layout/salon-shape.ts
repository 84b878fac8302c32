/** What a salon hang is asked and answers, as schemas of the contract. Millimetres throughout. */
import * as z from 'zod'
import { rowCure } from './layout-shape.ts'

const mm = z.number().min(-1e6).max(1e6)
const size = z.number().gt(0).max(1e5)
const positive = z.number().min(0).max(1e5)
const rect = { x: mm, y: mm, width: size, height: size } as const

export const salonQuestion = z.strictObject({
  /** The stretch of wall and the heights that it must stay within. */
  from: mm,
  to: mm,
  bottom: mm,
  top: mm,
  /** A work with `heldAt` keeps that left and bottom edge, and the others are built round it. */
  works: z
    .array(
      z.strictObject({
        id: z.string(),
        width: size,
        height: size,
        heldAt: z.strictObject({ x: mm, y: mm }).nullable().optional(),
      }),
    )
    .min(1)
    .max(100)
    .readonly(),
  /** Least clear distance of any two, edge to edge or corner to corner. */
  gap: positive,
  /** Where the middle of the whole hang shall be. */
  centre: z.strictObject({ x: mm, y: mm }),
  /** What else to keep clear of, each with its own distance: openings, things on the wall, works that stay. */
  keeps: z
    .array(z.strictObject({ ...rect, margin: positive }))
    .max(2000)
    .readonly()
    .optional(),
})

const pair = z.strictObject({ gap: z.number(), a: z.string(), b: z.string() })

export const salonAnswer = z.strictObject({
  fits: z.boolean(),
  /** By how much longer the stretch would have to be, as far as this way of laying finds, or higher for its highest work. mm. */
  shortBy: z.number(),
  way: z.enum(['longer', 'higher']),
  cures: z.array(rowCure).readonly(),
  /** Left and bottom edges, in the order of the question; none where it does not fit. */
  works: z.array(z.strictObject({ id: z.string(), x: z.number(), y: z.number() })).readonly(),
  /** The rectangle round all of them. */
  box: z.strictObject({ x: z.number(), y: z.number(), width: z.number(), height: z.number() }).nullable(),
  /** The two that are nearest to each other, and the work that is farthest from its nearest neighbour, with it. */
  nearest: pair.nullable(),
  widest: pair.nullable(),
  /** Of each work's distance to its nearest neighbour. */
  mean: z.number().nullable(),
})

export type SalonQuestion = z.output<typeof salonQuestion>
export type SalonAnswer = z.output<typeof salonAnswer>
