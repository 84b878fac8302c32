/** What the geometry of a set is asked and answers, as schemas of the contract; types are read off them. Millimetres. */
import * as z from 'zod'
import { printed, steps } from '../hang/marks-shape.ts'

const list = <T extends z.ZodType>(item: T) => z.array(item).readonly()
const gap = z.number().min(-1e5).max(1e5)

export const setForm = z.enum(['row', 'column', 'grid'])
/** Which stays equal where parts differ in size; empty while nobody has said. */
export const setKeeps = z.enum(['', 'gaps', 'centres'])

export const setQuestion = z.strictObject({
  form: setForm,
  /** Of a grid, which is filled row by row from its upper left corner. */
  columns: z.int().min(1).max(200).nullable().optional(),
  gapX: gap,
  gapY: gap,
  keeps: setKeeps.optional(),
  /** Outer sizes in their order; null for a size that is not known. */
  parts: z
    .array(
      z.strictObject({
        id: z.string().min(1).max(60),
        width: z.number().gt(0).max(1e5).nullable(),
        height: z.number().gt(0).max(1e5).nullable(),
      }),
    )
    .max(500)
    .readonly(),
  steps: steps.optional(),
})

/** From the least to the greatest; null where there is no such neighbour. */
const span = z.strictObject({ least: z.number(), most: z.number() }).nullable()

export const setAnswer = z.strictObject({
  width: z.number(),
  height: z.number(),
  rows: z.int(),
  columns: z.int(),
  /** Places from the left edge of the set and down from its top edge; printed ones are rounded once each. */
  parts: list(
    z.strictObject({
      id: z.string(),
      row: z.int(),
      column: z.int(),
      left: z.number(),
      right: z.number(),
      top: z.number(),
      bottom: z.number(),
      printed: z.strictObject({ left: printed, right: printed, top: printed, bottom: printed }),
    }),
  ),
  /** Clear gaps and distances of centres between neighbours, along and down. */
  gapsX: span,
  gapsY: span,
  centresX: span,
  centresY: span,
  /** Keeping gaps and keeping centres give different places here. */
  differ: z.boolean(),
})

export type SetForm = z.output<typeof setForm>
export type SetKeeps = z.output<typeof setKeeps>
export type SetQuestion = z.output<typeof setQuestion>
export type SetAnswer = z.output<typeof setAnswer>
