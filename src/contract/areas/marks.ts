/**
 * Marks that have been made, locks, and late changes. A mark is computed until somebody makes it; from then on it is a
 * fact with a time and a name. A hole stays a fact whatever happens to the work that hung on it.
 */
import * as z from 'zod'
import { methodKeys } from '../../hang/method-keys.ts'
import { procedure } from '../procedure.ts'
import { done, id, lengthUnit, longText, millimetres, moment, shortText, size } from '../shared.ts'

export const markState = z.enum(['planned', 'marked', 'drilled'])

/** When and who; null where it has not been done. */
const tick = z.strictObject({ at: moment, by: z.string() }).nullable()

export const madeMark = z.strictObject({
  id,
  /** Null once its work has left the wall. */
  placement: id.nullable(),
  /** Which mark of the work: `left`, `right`, `middle`, or its own name such as `lock`. */
  slot: z.string(),
  /** Of the hole, from the wall’s left end and above the floor at x = 0. */
  x: z.number(),
  y: z.number(),
  bearingY: z.number(),
  fixing: z.string(),
  kind: z.string(),
  state: z.enum(['marked', 'drilled']),
  services: tick,
  marked: tick,
  drilled: tick,
  filled: tick,
  note: z.string(),
})
export type MadeMark = z.output<typeof madeMark>

const slots = z
  .array(z.strictObject({ placement: id, slot: z.string().min(1).max(60) }))
  .min(1)
  .max(4000)

/** What changes late. Lengths in millimetres; works are named by their entry in the show. */
export const lateChange = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('different'),
    entry: id,
    /** Of a set, which of its parts came otherwise: size and back are that part’s, and the set follows. */
    part: id.optional(),
    width: size,
    height: size,
    depth: size.nullable().optional(),
    /** The back as measured again; as it was where left out. */
    back: z
      .strictObject({
        method: z.enum(methodKeys),
        seenFrom: z.enum(['front', 'back']),
        data: z.record(z.string(), z.json()),
      })
      .optional(),
  }),
  /** On one wall or on two. */
  z.strictObject({ kind: z.literal('swap'), one: id, other: id }),
  z.strictObject({ kind: z.literal('drop'), entry: id }),
  /** Every work of these walls; a negative figure raises them. */
  z.strictObject({ kind: z.literal('lower'), by: millimetres, faces: z.array(id).min(1).max(200) }),
])
export type LateChange = z.output<typeof lateChange>

const lateCost = z.strictObject({
  hungMoved: z.int(),
  moved: z.int(),
  newHoles: z.int(),
  deadHoles: z.int(),
  labels: z.int(),
  gapSpread: z.number(),
  ends: z.number(),
  offLine: z.number(),
})

const at = { x: z.number(), y: z.number() } as const

export const lateOffer = z.strictObject({
  key: z.string(),
  says: z.array(z.string()),
  cost: lateCost,
  price: z.number(),
  /** Centres: where each work stands afterwards and stood before, by its entry. */
  moves: z.array(
    z.strictObject({
      entry: id,
      placement: id,
      face: id,
      name: z.string(),
      ...at,
      /** As large as it is after the change. */
      width: z.number(),
      height: z.number(),
      wasX: z.number(),
      wasY: z.number(),
    }),
  ),
  off: z.array(z.strictObject({ entry: id, placement: id, name: z.string() })),
  newHoles: z.array(z.strictObject({ face: id, name: z.string(), slot: z.string(), ...at })),
  deadHoles: z.array(z.strictObject({ face: id, mark: id, ...at })),
})
export type LateOffer = z.output<typeof lateOffer>

export const lockRegister = z.strictObject({
  locks: z.array(
    z.strictObject({
      placement: id,
      entry: id,
      name: z.string(),
      running: z.string(),
      number: z.string(),
      title: z.string(),
      room: z.string(),
      wall: z.string(),
      called: z.string(),
      /** Along the wall from its left end, and above the floor right under the lock, as the wall sheet has it. */
      ...at,
      /** As the library names it; empty while nobody has chosen one. */
      fixing: z.string(),
      tool: z.string(),
      locked: tick,
    }),
  ),
})
export type LockRegister = z.output<typeof lockRegister>

export const marksArea = {
  'mark.ofFace': procedure(
    'read',
    'Gives every mark of a wall: where it is planned, whether it is marked or drilled, and holes that serve nothing.',
    z.strictObject({ exhibition: id, face: id }),
    z.strictObject({
      marks: z.array(
        z.strictObject({
          placement: id,
          entry: id,
          name: z.string(),
          slot: z.string(),
          called: z.string(),
          /** Of the hole; null where its marks cannot be computed any more. */
          planned: z.strictObject(at).nullable(),
          state: markState,
          made: madeMark.nullable(),
          /** From where it was made to where it would be now. */
          away: z.number().nullable(),
        }),
      ),
      /** Holes that nothing hangs on, and those that were filled. */
      dead: z.array(madeMark),
      filled: z.array(madeMark),
      problems: z.array(z.strictObject({ placement: id, name: z.string(), text: z.string() })),
    }),
  ),
  'mark.set': procedure(
    'write',
    'Says that marks are planned, marked or drilled. Drilled needs services checked, and only a reason takes it back.',
    z.strictObject({ exhibition: id, face: id, marks: slots, to: markState, reason: shortText.optional() }),
    z.strictObject({ changed: z.int() }),
  ),
  'mark.services': procedure(
    'write',
    'Says that pipes and cables were looked for at marks, or takes that back.',
    z.strictObject({ exhibition: id, face: id, marks: slots, checked: z.boolean() }),
    z.strictObject({ changed: z.int() }),
  ),
  'mark.fill': procedure(
    'write',
    'Says that holes which nothing hangs on are filled, or takes that back.',
    z.strictObject({ marks: z.array(id).min(1).max(4000), filled: z.boolean() }),
    z.strictObject({ changed: z.int() }),
  ),
  'mark.note': procedure(
    'write',
    'Writes a note on a mark that was made.',
    z.strictObject({ id, note: longText }),
    done,
  ),
  'lock.list': procedure(
    'read',
    'Lists every lock of a show: where it is, what kind, which tool opens it, whether it is shut.',
    z.strictObject({ exhibition: id }),
    lockRegister,
  ),
  'late.offer': procedure(
    'read',
    'Offers ways out of a late change, cheapest first, each with its price in holes and moved works, in the unit asked for, else in that of the desk.',
    z.strictObject({ exhibition: id, change: lateChange, unit: lengthUnit.optional() }),
    z.strictObject({
      offers: z.array(lateOffer),
      problem: z.string(),
      /** Sheets that any of these would make void. */
      voids: z.array(z.strictObject({ face: id, wall: z.string(), revision: z.int() })),
    }),
  ),
  'late.take': procedure(
    'write',
    'Takes one way out of a late change, as one edit. Refused where the wall has changed since it was offered.',
    z.strictObject({
      exhibition: id,
      change: lateChange,
      key: z.string().max(400),
      /** The moves that were offered, by entry: so that nothing else happens than what was shown. */
      moves: z.array(z.strictObject({ entry: id, ...at })).max(2000),
    }),
    z.strictObject({ moved: z.int(), taken: z.int() }),
  ),
} as const
