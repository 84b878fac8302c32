/**
 * Sets: a work whose parts are works, with an order and inner gaps that nothing on a wall may stretch. A set has one
 * entry in a show and one placement on a wall; a part has none of its own while it belongs to a set.
 */
import * as z from 'zod'
import { setForm, setKeeps } from '../../layout/set-shape.ts'
import { procedure } from '../procedure.ts'
import { changes, id, shortText, size, updated } from '../shared.ts'
import { fixingRow } from './fixings-shape.ts'
import { hangingMethod, hangingSize, seenFrom } from './works-shape.ts'

/** How the parts of a set stand to each other. Gaps are clear ones, along and down. */
export const setFacts = z.strictObject({
  form: setForm,
  /** Of a grid; null in a row or a column. */
  columns: z.int().nullable(),
  gapX: z.number(),
  gapY: z.number(),
  keeps: setKeeps,
})
export type SetFacts = z.output<typeof setFacts>

/** One part as its set shows it. */
export const setPart = z.strictObject({
  work: id,
  number: z.string(),
  title: z.string(),
  size: hangingSize.nullable(),
  mass: z.number().nullable(),
})

/** A part as it hangs. What it does not say of its fixings is as its set's placement says. */
export const placedPart = z.strictObject({
  ...setPart.shape,
  picture: z.string().nullable(),
  back: z.strictObject({ method: hangingMethod, data: z.record(z.string(), z.json()), seenFrom }).nullable(),
  fixing: fixingRow.nullable(),
  keeper: fixingRow.nullable(),
  lockTool: z.string(),
  hooksApart: z.number().nullable(),
})

/** Of a placed work that is a set: how it is laid out, and its parts in their order. */
export const placedSet = z.strictObject({ ...setFacts.shape, parts: z.array(placedPart) })
export type PlacedSet = z.output<typeof placedSet>
export type PlacedPart = z.output<typeof placedPart>

const columns = z.int().min(1).max(200).nullable()
const gap = z.number().min(-1e5).max(1e5)
const parts = z.array(id).min(1).max(500)

export const setsArea = {
  'set.make': procedure(
    'write',
    'Makes one set of several works, in this order. It takes the place that its first part had in the show and on the wall; the others lose theirs.',
    z.strictObject({
      works: parts,
      /** The show where the set is to stand; works that stand in another open show are refused. */
      exhibition: id.optional(),
      title: shortText.optional(),
      form: setForm,
      columns: columns.optional(),
      gapX: gap,
      gapY: gap,
      keeps: setKeeps.optional(),
    }),
    z.strictObject({
      id,
      entry: id.nullable(),
      placement: id.nullable(),
      /** Entries and placements that went into those of the set. */
      entriesTaken: z.int(),
      placementsTaken: z.int(),
    }),
  ),
  'set.takeApart': procedure(
    'write',
    'Takes a set apart: its parts are works of their own again, in the show after each other and on the wall where they hung.',
    z.strictObject({ id }),
    z.strictObject({ works: z.array(id), entries: z.int(), placements: z.int() }),
  ),
  'set.update': procedure(
    'write',
    'Changes form, columns, gaps and what is kept where parts differ. Refused while the set hangs or is drilled.',
    z.strictObject({ id, changes: changes({ form: setForm, columns, gapX: gap, gapY: gap, keeps: setKeeps }) }),
    updated,
  ),
  'set.parts': procedure(
    'write',
    'Says which parts a set has and in which order: adds, takes out and moves. Another order there now is a clash.',
    z.strictObject({ id, was: parts, to: parts }),
    updated,
  ),
  'set.fix': procedure(
    'write',
    'Changes what one part of a placed set hangs on; nothing said, it hangs on what the set does.',
    z.strictObject({
      placement: id,
      work: id,
      changes: changes({
        fixing: id.nullable(),
        keeper: id.nullable(),
        lockTool: shortText,
        hooksApart: size.nullable(),
      }),
    }),
    updated,
  ),
} as const
