/**
 * All the numbers of works in one list, what is doubtful first. The rule it keeps: a doubt is told and never mended by
 * itself; that both are right is said with a reason, and holds until one of the numbers changes.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { id, page, shortText } from '../shared.ts'
import { numberKind } from './works-shape.ts'

const settled = z.strictObject({ id, reason: z.string(), by: z.string(), at: z.string() })

const doubt = z.strictObject({
  code: z.enum(['number-twice', 'number-kinds', 'number-two', 'number-near']),
  text: z.string(),
  /** What `finding.settle` takes: the first number's id and the figures as text. */
  subject: id,
  figures: z.string(),
  /** The other numbers that it is about, 20 at most. */
  others: z.array(z.strictObject({ number: id, kind: numberKind, text: z.string(), work: id, title: z.string() })),
  settled: settled.nullable(),
})

const numberLine = z.strictObject({
  number: id,
  kind: numberKind,
  text: z.string(),
  since: z.string(),
  by: z.string(),
  note: z.string(),
  /** Whose number it is: a lender, an owner. */
  whose: z.string(),
  work: id,
  title: z.string(),
  maker: z.string(),
  doubts: z.array(doubt),
})
export type NumberLine = z.output<typeof numberLine>

export const numbersArea = {
  'number.list': procedure(
    'read',
    'Lists all numbers of all works in their natural order, those with an open doubt first.',
    z.strictObject({
      /** Only those of this work. */
      work: id.optional(),
      /** Only those of works of this show, and of parts of its sets. */
      exhibition: id.optional(),
      /** Of a number, a title, a maker, whose it is. */
      words: shortText.optional(),
      kind: numberKind.optional(),
      doubtful: z.boolean().optional(),
      ...page,
    }),
    z.strictObject({
      lines: z.array(numberLine),
      /** Of all that was asked for, before the page was cut. */
      total: z.int(),
      /** With an open doubt, of all that was asked for. */
      doubtful: z.int(),
    }),
  ),
  'number.ofParts': procedure(
    'read',
    'Says the numbers of the parts of a set, and offers those that lack one the next free letter behind its number.',
    z.strictObject({ work: id }),
    z.strictObject({
      /** The set’s number with its parts, `1995.5.2 a–c`; empty where no number is known. */
      said: z.string(),
      /** Of the parts of this set, or of this part alone; a part with a permanent number is not offered another. */
      offered: z.array(z.strictObject({ work: id, title: z.string(), text: z.string() })),
    }),
  ),
  'number.giveParts': procedure(
    'write',
    'Gives each part of a set that has no permanent number the next free letter behind the number of the set.',
    z.strictObject({ set: id }),
    z.strictObject({ given: z.array(z.strictObject({ id, work: id, text: z.string() })) }),
  ),
} as const
