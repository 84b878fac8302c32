/** What layouts are asked and answer, as schemas of the contract; types are read off them. Millimetres throughout. */
import * as z from 'zod'
import { printed, steps } from '../hang/marks-shape.ts'

const mm = z.number().min(-1e6).max(1e6)
const size = z.number().gt(0).max(1e5)
const positive = z.number().min(0).max(1e5)
const list = <T extends z.ZodType>(item: T) => z.array(item).readonly()
const point = z.strictObject({ x: mm, y: mm })

/**
 * `equal`: one gap, ends too. `margins`: ends given, equal gaps between. `ends`: ends are `times` the gap. `gap`: the
 * gap is given, the group centred or about `axis`. `by-size`: each gap is `factor` times the mean width of its two
 * neighbours, between `least` and `most`.
 */
export const rowRule = z.discriminatedUnion('rule', [
  z.strictObject({ rule: z.literal('equal') }),
  z.strictObject({ rule: z.literal('margins'), left: positive, right: positive }),
  z.strictObject({ rule: z.literal('ends'), times: z.number().min(0).max(20) }),
  z.strictObject({ rule: z.literal('gap'), gap: positive, axis: mm.nullable().optional() }),
  z.strictObject({
    rule: z.literal('by-size'),
    factor: z.number().min(0).max(10),
    least: positive,
    most: positive,
    axis: mm.nullable().optional(),
  }),
])

export const rowQuestion = z.strictObject({
  from: mm,
  to: mm,
  /** In their order from left to right. A work with `heldAt` keeps that left edge. */
  works: z
    .array(z.strictObject({ id: z.string(), width: size, heldAt: mm.nullable().optional() }))
    .max(2000)
    .readonly(),
  rule: rowRule,
  /** Smaller gaps count as not fitting; 0 where left out. */
  leastGap: positive.optional(),
})

export const rowCure = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('gap'), mm: z.number() }),
  z.strictObject({ kind: z.literal('least-gap'), mm: z.number() }),
  z.strictObject({ kind: z.literal('times'), times: z.number() }),
  z.strictObject({ kind: z.literal('factor'), times: z.number() }),
  z.strictObject({ kind: z.literal('axis'), mm: z.number() }),
  z.strictObject({ kind: z.literal('margins'), mm: z.number() }),
  z.strictObject({ kind: z.literal('leave-out'), mm: z.number(), id: z.string() }),
  z.strictObject({ kind: z.literal('let-go'), mm: z.number(), id: z.string() }),
  z.strictObject({ kind: z.literal('longer'), mm: z.number() }),
])

export const rowAnswer = z.strictObject({
  fits: z.boolean(),
  shortBy: z.number(),
  works: list(z.strictObject({ id: z.string(), left: z.number(), right: z.number(), centre: z.number() })),
  /** Before each work and after the last: gaps and widths add up to the stretch. */
  gaps: list(z.number()),
  filled: z.number(),
  cures: list(rowCure),
})

export const stackQuestion = z.strictObject({
  /** From the top down. */
  works: z
    .array(
      z.strictObject({
        id: z.string(),
        height: size,
        /** Its bottom edge, where it is held there. */
        heldAt: mm.nullable().optional(),
      }),
    )
    .min(1)
    .max(200)
    .readonly(),
  gap: positive,
  /** Height that the stack's middle, top or bottom comes to; without effect where a work is held. */
  line: mm,
  /** Which of the three; the middle where left out. */
  by: z.enum(['middle', 'top', 'bottom']).optional(),
  /** From the lowest edge to the highest that there may be. */
  room: z.strictObject({ from: mm, to: mm }).optional(),
  steps: steps.optional(),
})

const tall = { top: z.number(), bottom: z.number(), centre: z.number() } as const
export const stackAnswer = z.strictObject({
  fits: z.boolean(),
  /** By how much the room would have to be higher. */
  shortBy: z.number(),
  /** As a row's; `axis` is the height that the line would have to have, `longer` is higher. */
  cures: list(rowCure),
  height: z.number(),
  top: z.number(),
  bottom: z.number(),
  works: list(
    z.strictObject({
      id: z.string(),
      ...tall,
      /** Running dimensions from the top of the stack down, and heights from the floor; each rounded once. */
      printed: z.strictObject({ fromTop: printed, toBottom: printed, top: printed, bottom: printed }),
    }),
  ),
})

export const gridQuestion = z.strictObject({
  columns: z.int().min(1).max(200),
  rows: z.int().min(1).max(200),
  /** Of one part, with frame. */
  width: size,
  height: size,
  gapX: positive,
  gapY: positive,
  /** Of the whole block. */
  centre: point,
  /** Top edge to bearing point of each part; gives the height of each row of marks. */
  drop: positive.optional(),
  steps: steps.optional(),
})

export const gridAnswer = z.strictObject({
  width: z.number(),
  height: z.number(),
  left: z.number(),
  top: z.number(),
  /** One per column, running from the wall’s left end; one per row, from the floor. */
  columns: list(
    z.strictObject({ left: z.number(), centre: z.number(), printedLeft: printed, printedFromFirst: printed }),
  ),
  rows: list(
    z.strictObject({
      ...tall,
      bearing: z.number().nullable(),
      printedTop: printed,
      printedFromFirst: printed,
      printedBearing: printed.nullable(),
    }),
  ),
  cells: list(z.strictObject({ row: z.int(), column: z.int(), x: z.number(), y: z.number() })),
  /** What rounding each gap instead, one after the other, would add up to at the last part. */
  chainDrift: z.strictObject({ x: printed, y: printed }),
})

export type RowRule = z.output<typeof rowRule>
export type RowQuestion = z.output<typeof rowQuestion>
export type RowAnswer = z.output<typeof rowAnswer>
export type RowCure = z.output<typeof rowCure>
export type StackQuestion = z.output<typeof stackQuestion>
export type StackAnswer = z.output<typeof stackAnswer>
export type GridQuestion = z.output<typeof gridQuestion>
export type GridAnswer = z.output<typeof gridAnswer>
