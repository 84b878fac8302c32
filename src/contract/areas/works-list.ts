/** Lists of works: searched, filtered, sorted, counted, and one field of many set at once. */
import * as z from 'zod'
import { manyFacts } from '../../model/work-facts.ts'
import { procedure } from '../procedure.ts'
import { hash, id, page, updated } from '../shared.ts'
import { hangingSize, sensitivity, workKind } from './works-shape.ts'

/** One line of a list of works. */
export const workLine = z.strictObject({
  id,
  number: z.string(),
  title: z.string(),
  maker: z.string(),
  dateText: z.string(),
  medium: z.string(),
  kind: workKind,
  lender: z.string(),
  size: hangingSize.nullable(),
  mass: z.number().nullable(),
  method: z.string(),
  lightLimit: z.number().nullable(),
  sensitivity,
  picture: hash.nullable(),
  questions: z.int(),
  /** In the exhibition asked for, if one was. */
  entry: z
    .strictObject({
      id,
      section: id.nullable(),
      running: z.string(),
      status: z.string(),
      where: z.strictObject({ face: id, name: z.string(), place: z.int() }).nullable(),
    })
    .nullable(),
  /** Its parts in their order, where it is a set. */
  parts: z.array(z.strictObject({ id, number: z.string(), title: z.string() })),
  /** The set that it is part of. */
  partOf: id.nullable(),
  /** Listed and measured disagree: words for the list, such as "52 wider than listed" in millimetres. */
  differs: z.strictObject({ height: z.number(), width: z.number() }).nullable(),
})
export type WorkLine = z.output<typeof workLine>

export const workSort = z.enum(['order', 'number', 'title', 'maker', 'date', 'size', 'mass', 'limit', 'where'])

const listInput = z.strictObject({
  search: z.string().max(500).optional(),
  exhibition: id.optional(),
  /** Only works that are not in the exhibition. */
  outside: z.boolean().optional(),
  lender: id.optional(),
  kind: workKind.optional(),
  section: id.optional(),
  settle: z.enum(['questions', 'differs', 'unmeasured', 'unplaced']).optional(),
  sort: workSort.optional(),
  descending: z.boolean().optional(),
  ...page,
})

export const workListArea = {
  'work.list': procedure(
    'read',
    'Lists works: searched, filtered, sorted, a page at a time.',
    listInput,
    z.strictObject({
      total: z.int(),
      offset: z.int(),
      works: z.array(workLine),
    }),
  ),
  'work.counts': procedure(
    'read',
    'Counts the works of an exhibition, or of the catalogue, by lender and kind, and what is to settle.',
    z.strictObject({ exhibition: id.optional() }),
    z.strictObject({
      works: z.int(),
      frames: z.number().meta({ description: 'sum of the widths that hang, millimetres' }),
      wall: z.number().meta({ description: 'sum of the lengths of the walls, millimetres' }),
      lenders: z.array(z.strictObject({ id: id.nullable(), name: z.string(), works: z.int() })),
      kinds: z.array(z.strictObject({ kind: workKind, works: z.int() })),
      questions: z.int(),
      differs: z.int(),
      unmeasured: z.int(),
      unplaced: z.int(),
    }),
  ),
  'work.updateMany': procedure(
    'write',
    'Sets one field of many works at once, as one edit.',
    z.strictObject({
      works: z
        .array(z.strictObject({ id, was: z.json() }))
        .min(1)
        .max(5000),
      field: z.enum(manyFacts),
      to: z.json(),
    }),
    updated,
  ),
} as const
