/**
 * Records of damage: what was found, who was told when, what was done. The rule it keeps: they are only added to, and a
 * work stays in the house while one of its is open.
 */
import * as z from 'zod'
import { factKinds, wordKinds } from '../../record/damage/damage.ts'
import { procedure } from '../procedure.ts'
import { id, longText, made, moment, name, page, shortText } from '../shared.ts'
import { photo, kind as reportKind } from './condition-shape.ts'

const reference = z.string().trim().min(1, 'expected a reference').max(60)
/** Who records it: the person at the desk where left out. */
const by = name.optional()

const head = z.strictObject({
  id,
  reference,
  work: id,
  workTitle: z.string(),
  workNumber: z.string(),
  /** Its owner; empty for a work of the house. */
  lender: z.string(),
  lent: z.boolean(),
  foundAt: moment,
  reportedAt: moment,
  reporter: z.string(),
  how: z.string(),
  circumstances: z.string(),
  recordedAt: moment,
  recordedBy: z.string(),
  /** Null while it is open. */
  closedAt: moment.nullable(),
  /** Its owner's; null for a work of the house. Hours. */
  clock: z
    .strictObject({ due: moment, toldAt: moment.nullable(), waited: z.number(), late: z.number(), within: z.number() })
    .nullable(),
  /** What is missing before it can be closed; empty for a closed one. */
  lacks: z.array(z.strictObject({ code: z.string(), text: z.string() })),
})
export type DamageHead = z.output<typeof head>

const word = z.strictObject({
  id,
  kind: z.enum(wordKinds),
  at: moment,
  whom: z.string(),
  how: z.string(),
  said: z.string(),
  report: id.nullable(),
  strikes: id.nullable(),
  /** Why it counts no more, and who said so. */
  struck: z.strictObject({ why: z.string(), by: z.string() }).nullable(),
  recordedAt: moment,
  recordedBy: z.string(),
})
export type DamageWordTold = z.output<typeof word>

const report = z.strictObject({
  id,
  kind: reportKind,
  examinedAt: moment,
  complete: z.boolean(),
  photos: z.array(photo),
})

const told = head.extend({
  /** In the order in which they were recorded, struck ones among them. */
  words: z.array(word),
  /** Condition reports that belong to it, with their photographs. */
  reports: z.array(report),
  /** When it was first moved after it was found, where no photograph is known to be older; else null. */
  movedFirst: moment.nullable(),
})
export type DamageTold = z.output<typeof told>

export const damageArea = {
  'damage.list': procedure(
    'read',
    'Lists records of damage, open ones first, with what is missing and how long the owner has waited to be told.',
    z.strictObject({
      work: id.optional(),
      /** Works of this show. */
      exhibition: id.optional(),
      state: z.enum(['open', 'closed']).optional(),
      words: shortText.optional(),
      ...page,
    }),
    z.strictObject({
      lines: z.array(head),
      total: z.int(),
      /** Of all that was asked for, in either state. */
      open: z.int(),
      /** The reference that the next one has by the house's pattern. */
      next: z.string(),
    }),
  ),
  'damage.get': procedure(
    'read',
    'Tells one record of damage with every word on it, its condition reports and their photographs.',
    z.strictObject({ id }),
    told,
  ),
  'damage.add': procedure(
    'write',
    'Records that a work was found damaged, under a reference of its own; never changed and never taken back.',
    z.strictObject({
      work: id,
      foundAt: moment,
      /** Now where left out. */
      reportedAt: moment.optional(),
      /** Who reported it: the person at the desk where left out. */
      reporter: name.optional(),
      how: shortText.optional(),
      circumstances: longText.optional(),
      /** Goes on from the last one where left out. */
      reference: reference.optional(),
      report: id.optional(),
      by,
    }),
    z.strictObject({ id, reference }),
  ),
  'damage.say': procedure(
    'write',
    'Records a word on a damage: the owner or the insurer was told, what was done, a condition report, a note.',
    z.strictObject({
      damage: id,
      kind: z.enum(factKinds),
      /** Now where left out. */
      at: moment.optional(),
      /** Who was told, or who did it. */
      whom: shortText.optional(),
      how: shortText.optional(),
      said: longText.optional(),
      report: id.optional(),
      by,
    }),
    made,
  ),
  'damage.strike': procedure(
    'write',
    'Records that a word on a damage was wrong and why; it stays on record and counts no more.',
    z.strictObject({ word: id, why: name, by }),
    made,
  ),
  'damage.close': procedure(
    'write',
    'Closes a record of damage, with its reason; from then on the work may leave the house.',
    z.strictObject({
      damage: id,
      why: name,
      /** Now where left out. */
      at: moment.optional(),
      by,
    }),
    made,
  ),
  'damage.reopen': procedure(
    'write',
    'Opens a closed record of damage again, with its reason; the work stays in the house until it is closed.',
    z.strictObject({
      damage: id,
      why: name,
      /** Now where left out. */
      at: moment.optional(),
      by,
    }),
    made,
  ),
} as const
