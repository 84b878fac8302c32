/** What was done to a catalogue: edits, what each changed, and every change of one record with what belongs to it. */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { id, made, moment, name } from '../shared.ts'

/** Why an edit was made; the first that was said comes first. */
const reasons = z.array(z.strictObject({ why: z.string(), by: z.string(), at: moment }))
export type Reasons = z.output<typeof reasons>

/** One row that was added, changed or removed, in the words of the data dictionary. */
export const recordChange = z.strictObject({
  edit: z.int(),
  at: moment,
  person: z.string(),
  label: z.string(),
  kind: z.enum(['added', 'changed', 'removed']),
  table: z.string(),
  key: z.string(),
  /** What a row of the table is: "size of a work". */
  one: z.string(),
  /** What people know it by, or the record it belongs to; '' where nobody named either. */
  called: z.string(),
  fields: z.array(
    z.strictObject({
      column: z.string(),
      called: z.string(),
      unit: z.string().meta({ description: 'of figures: mm, kg, lx …; empty where it has none' }),
      /** Null before an addition and after a removal. */
      from: z.json(),
      to: z.json(),
      /** Of keys of other rows: what those are called; of money the amount with its currency. */
      names: z.tuple([z.string().nullable(), z.string().nullable()]),
    }),
  ),
})
export type RecordChange = z.output<typeof recordChange>

export const historyArea = {
  'edit.list': procedure(
    'read',
    'Lists edits, newest first: what, who, when, why, whether taken back; by one person, within days, or with words in what was done and why.',
    z.strictObject({
      find: z.string().max(200).optional(),
      person: z.string().max(200).optional().meta({ description: 'their name, as it stands beside the edit' }),
      from: moment.optional(),
      until: moment.optional().meta({ description: 'the first moment that is not asked for' }),
      offset: z.int().min(0).optional(),
      limit: z.int().min(1).max(500).optional(),
    }),
    z.strictObject({
      total: z.int(),
      /** Names of all who edited, in the order of the alphabet. */
      people: z.array(z.string()),
      edits: z.array(
        z.strictObject({
          edit: z.int(),
          label: z.string(),
          person: z.string(),
          at: moment,
          takenBack: z.boolean(),
          reasons,
        }),
      ),
    }),
  ),
  'edit.changes': procedure(
    'read',
    'Tells what one edit changed, row by row, field by field, in its order, a page at a time.',
    z.strictObject({
      edit: z.int().min(1),
      offset: z.int().min(0).optional(),
      limit: z.int().min(1).max(500).optional(),
    }),
    z.strictObject({ total: z.int(), reasons, changes: z.array(recordChange) }),
  ),
  'edit.history': procedure(
    'read',
    'Tells every change of one record and of what belongs to it, newest first: who, when, each field before and after, and why where somebody said it.',
    z.strictObject({ table: z.string().max(60), id, limit: z.int().min(1).max(5000).optional() }),
    z.strictObject({ total: z.int(), changes: z.array(recordChange.extend({ reasons })) }),
  ),
  'edit.explain': procedure(
    'write',
    'Records why an edit was made; one that was said before stays beside it.',
    z.strictObject({
      edit: z.int().min(1),
      why: z.string().trim().min(1, 'expected a reason').max(1000),
      by: name.optional(),
    }),
    made,
  ),
} as const
