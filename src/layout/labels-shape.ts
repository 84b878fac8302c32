/**
 * What labels are laid from and what comes of it, as schemas of the contract. Types are read off them. mm; x to the
 * right from the wall's left end, y up from the floor at x = 0.
 */
import * as z from 'zod'
import { finding, millimetres, size } from '../contract/shared.ts'
import { lengthUnit, wallFacts } from '../hang/marks-shape.ts'

const positive = z.number().min(0).max(1e5)

/** House rules of labels; what each says, its default and its source stand in `src/model/label-rules.ts`. */
export const labelRulesShape = z.strictObject({
  line: z.number().min(0).max(1e4),
  level: z.enum(['line', 'bottom']),
  lowest: positive,
  highest: positive,
  gap: positive,
  clear: positive,
  type: z.number().gt(0).max(1000),
  perLine: z.int().min(1).max(1000),
})

/** What a work's label says, or would say; sizes and distance where a person gave them. */
export const labelFacts = z.strictObject({
  text: z.string(),
  suggestion: z.string(),
  width: z.number().nullable(),
  height: z.number().nullable(),
  gap: z.number().nullable(),
})

/** Where a label stands by its work. */
export const side = z.enum(['left', 'right', 'below'])

const labelled = z.strictObject({
  id: z.string().max(60),
  /** What people call the work on the drawing. */
  name: z.string().max(200),
  /** Left and bottom edge, width and height of the work. */
  x: millimetres,
  y: millimetres,
  width: size,
  height: size,
  /** Null where it has no label; it is in the way of others all the same. */
  side: side.nullable(),
  text: z.string().max(20_000),
  /** As somebody measured or ordered the label; from its text where left out. */
  labelWidth: size.nullable().optional(),
  labelHeight: size.nullable().optional(),
  /** From the work's edge; the house's where left out. */
  gap: positive.nullable().optional(),
  /** Edges of the stack or grid that it hangs in, and which one that is: labels of one stand in a column beside it. */
  stack: z
    .strictObject({ id: z.string().max(60), left: millimetres, right: millimetres })
    .nullable()
    .optional(),
  /** Plates, locks and holes of this work. */
  holes: z
    .array(z.strictObject({ name: z.string(), x: millimetres, y: millimetres, keeps: z.boolean() }))
    .max(200)
    .readonly(),
})

export const labelsQuestion = z.strictObject({
  wall: wallFacts,
  works: z.array(labelled).max(2000).readonly(),
  rules: labelRulesShape.partial().optional(),
  /** Centre of the labels above the floor at x = 0; the house's where left out. */
  line: millimetres.optional(),
  unit: lengthUnit.optional(),
})

export const labelPlace = z.strictObject({
  id: z.string(),
  side,
  x: z.number(),
  y: z.number(),
  width: z.number(),
  height: z.number(),
  lines: z.array(z.string()).readonly(),
  /** The nearest other side where nothing is in its way; null where there is none or none is needed. */
  better: side.nullable(),
})

export const labelsAnswer = z.strictObject({
  labels: z.array(labelPlace).readonly(),
  findings: z.array(finding).readonly(),
})

export type LabelRules = z.output<typeof labelRulesShape>
export type LabelSide = z.output<typeof side>
export type LabelledWork = z.output<typeof labelled>
export type LabelsQuestion = z.output<typeof labelsQuestion>
export type LabelPlace = z.output<typeof labelPlace>
export type LabelsAnswer = z.output<typeof labelsAnswer>
