/**
 * Labels of the works of a show: what they say, their size, where they stand, how far they are made. The rule it keeps:
 * a label was proofed for the words it had; other words make it unproofed again.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, id, lengthUnit, updated } from '../shared.ts'
import { labelSide } from './walls.ts'

/** How far a label is made, in this order. */
export const labelStage = z.enum(['', 'proofed', 'printed', 'mounted'])

const labelText = z.string().max(4000)
const cardSide = z.number().gt(0).max(2000)
const gap = z.number().min(0).max(2000)

const labelRow = z.strictObject({
  entry: id,
  work: id,
  running: z.string(),
  number: z.string(),
  title: z.string(),
  /** As a person wrote it; empty where nobody has. */
  text: z.string(),
  /** What it would say from maker, title, date, medium and credit line. */
  suggestion: z.string(),
  /** From the text, or the suggestion where there is none, unless a person gave a size. mm. */
  width: z.number(),
  height: z.number(),
  lines: z.array(z.string()),
  ownWidth: z.number().nullable(),
  ownHeight: z.number().nullable(),
  ownGap: z.number().nullable(),
  gap: z.number(),
  stage: labelStage,
  /** When and by whom it was said to be at that stage. */
  stageAt: z.string(),
  stageBy: z.string(),
  /** Null where the work is not on a wall. */
  placed: z
    .strictObject({
      placement: id,
      face: id,
      room: z.string(),
      wall: z.string(),
      side: labelSide,
      /** Height of its centre above the floor at the wall’s left end; null where it has no side yet. */
      centreY: z.number().nullable(),
      troubles: z.array(z.string()),
    })
    .nullable(),
})
export type LabelRow = z.output<typeof labelRow>

export const labelsArea = {
  'label.list': procedure(
    'read',
    'Lists the labels of a show with their lines, size, place and stage, in the order of the show.',
    z.strictObject({ exhibition: id, unit: lengthUnit.optional() }),
    z.strictObject({ labels: z.array(labelRow) }),
  ),
  'label.update': procedure(
    'write',
    'Changes what one label says, its size, or its distance from the work. Other words make it unproofed.',
    z.strictObject({
      entry: id,
      changes: changes({
        text: labelText,
        width: cardSide.nullable(),
        height: cardSide.nullable(),
        gap: gap.nullable(),
      }),
    }),
    updated,
  ),
  'label.setMany': procedure(
    'write',
    'Gives many labels a side, a size or a distance, and those without words the suggested ones, as one edit.',
    z.strictObject({
      entries: z.array(id).min(1).max(5000),
      side: labelSide.optional(),
      width: cardSide.nullable().optional(),
      height: cardSide.nullable().optional(),
      gap: gap.nullable().optional(),
      /** Writes the suggestion where a label says nothing yet; never over words that are there. */
      suggest: z.literal(true).optional(),
    }),
    z.strictObject({
      changed: z.int(),
      /** Works that are not on a wall and so got no side. */
      notPlaced: z.array(id),
    }),
  ),
  'label.setStage': procedure(
    'write',
    'Says that labels are proofed, printed or mounted, or takes that back. A label that says nothing is refused.',
    z.strictObject({ entries: z.array(id).min(1).max(5000), to: labelStage }),
    z.strictObject({ changed: z.int() }),
  ),
} as const
