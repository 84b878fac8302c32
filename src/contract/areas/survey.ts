/**
 * What was measured of a room, in any order: sides, diagonals between any two corners, angles, each with who, when and
 * as it was typed. Drawn and measured values both stay; the corners follow from the measured ones.
 */
import * as z from 'zod'
import { cornerBounds } from '../../model/corner.ts'
import { measureKinds } from '../../plan/survey.ts'
import { procedure } from '../procedure.ts'
import { changes, done, id, made, shortText, typed, updated } from '../shared.ts'

const how = z.enum(['drawn', 'measured'])
/** A length, or the angle of a corner in degrees; which bounds hold follows from what it is of. */
const value = z
  .number()
  .gt(0, 'it must be more than 0. Measure it again')
  .max(1e5)
  .meta({ description: `millimetres, or degrees between ${cornerBounds.least} and ${cornerBounds.most}` })
const place = z.int().min(0)

export const measureRow = z.strictObject({
  /** Names it among the suspects; a wall or corner that has no row of its own is in it with the figure in force. */
  key: z.string(),
  id: id.nullable(),
  kind: z.enum(measureKinds),
  /** Places of its corners in the order of the walls, from 0; an angle has its corner twice. */
  from: place,
  to: place,
  value: z.number(),
  text: z.string(),
  how,
  used: z.boolean(),
  at: z.string(),
  by: z.string(),
  note: z.string(),
  /** In the outline as it is drawn; millimetres or degrees. Null where it is not counted. */
  fitted: z.number().nullable(),
  /** Measured less fitted. */
  residual: z.number().nullable(),
  /** The residual over its own standard deviation; null where no other measure checks it. */
  standardised: z.number().nullable(),
  /** 0: nothing checks it; 1: the others fix it wholly. */
  checked: z.number().nullable(),
})
export type MeasureRow = z.output<typeof measureRow>

const problem = z.discriminatedUnion('code', [
  z.strictObject({ code: z.enum(['no-size', 'no-corner', 'no-angle']), key: z.string() }),
  z.strictObject({
    code: z.literal('impossible'),
    key: z.string(),
    by: z.array(z.string()),
    over: z.number(),
  }),
  z.strictObject({ code: z.literal('crosses'), sides: z.tuple([z.int(), z.int()]) }),
  z.strictObject({ code: z.literal('unsettled') }),
])

export const surveyArea = {
  'survey.get': procedure(
    'read',
    'Gives what was measured of a room, how it fits, which measure stands out and what to measure next.',
    z.strictObject({ room: id }),
    z.strictObject({
      /** In order from the left end of the first wall: A, B, C …; room-local, with the angle as drawn. */
      corners: z.array(z.strictObject({ id, at: z.tuple([z.number(), z.number()]), angle: z.number().nullable() })),
      measures: z.array(measureRow),
      /** How the corners are drawn: walked by the compass rule, or fitted by least squares. */
      way: z.enum(['walked', 'fitted']),
      closes: z.boolean(),
      gap: z.number(),
      note: z.string(),
      redundancy: z.int(),
      open: z.int().meta({ description: 'ways that the measured values leave the outline to move' }),
      spread: z.number().nullable(),
      suspects: z.array(z.strictObject({ key: z.string(), should: z.number(), over: z.number(), gap: z.number() })),
      /** Only the squareness of corners nobody measured makes the first suspect likelier than the rest. */
      bySquare: z.boolean(),
      next: z.strictObject({ kind: z.enum(measureKinds), from: place, to: place }).nullable(),
      problems: z.array(problem),
    }),
  ),
  'survey.add': procedure(
    'write',
    'Adds a measure of a room: between two corners, or the angle at one; the corners are drawn anew.',
    z.strictObject({
      room: id,
      from: id,
      to: id.nullable().meta({ description: 'the other corner; null for the angle at the first' }),
      value,
      text: typed.optional(),
      how: how.optional(),
      note: shortText.optional(),
    }),
    made,
  ),
  'survey.update': procedure(
    'write',
    'Changes a measure: its value, whether it counts, its note; the corners are drawn anew.',
    z.strictObject({
      id,
      changes: changes({ value, text: typed, used: z.boolean(), note: shortText }),
    }),
    updated,
  ),
  'survey.remove': procedure('write', 'Removes a measure; the corners are drawn anew.', z.strictObject({ id }), done),
} as const
