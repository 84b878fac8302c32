/**
 * Where things are, on any day. Rooms and walls of the building are places by themselves; a person agrees names for the
 * rest. The rule it keeps: a movement is a record, never changed or taken back; what was wrong in it is set right by
 * another that refers to it.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { changes, done, finding, id, longText, made, moment, name, page, shortText, size, updated } from '../shared.ts'

/** `place`: a store, a bench, a shelf. `elsewhere`: an address outside. `lift`: what is carried up and down in it. */
export const locationKind = z.enum(['place', 'elsewhere', 'lift', 'crate', 'vehicle'])
export type LocationKind = z.output<typeof locationKind>
/** What is named as a place: one of those, or a room or a wall of the building. */
export const placeKind = z.enum([...locationKind.options, 'room', 'face'])

const holdHours = z.number().min(0).max(720).meta({ description: 'hours a crate stays shut after a move' })
const figures = {
  /** Of a crate its outer size, of a lift its cabin: across, up, along. */
  width: size.nullable(),
  height: size.nullable(),
  depth: size.nullable(),
  holdHours: holdHours.nullable(),
} as const

const place = z.strictObject({
  /** The key of a location, a room or a face. */
  place: id,
  kind: placeKind,
  name: z.string(),
  /** From the whole to the part: `The Maltings, Room 1, north`. */
  words: z.string(),
  parent: id.nullable(),
  address: z.string(),
  note: z.string(),
  ...figures,
  /** Named in a record: its name may change, it cannot be removed. */
  recorded: z.boolean(),
})
export type Place = z.output<typeof place>

const what = {
  /** A set is carried with its parts, each a thing of the movement; what is last of its parts takes the set with it. */
  works: z.array(id).max(2000).optional(),
  crates: z.array(id).max(200).optional(),
  /** Parts of these sets that were not carried. */
  staying: z.array(id).max(2000).optional(),
} as const
const arrived = z
  .array(z.strictObject({ id, condition: shortText }))
  .max(2000)
  .meta({ description: 'condition of single works or crates on arrival, in a few words' })
const how = {
  to: id,
  /** Where in it: a position on a wall, a shelf, the floor. */
  spot: shortText.optional(),
  /** When it was put down there; now where left out. */
  at: moment.optional(),
  method: shortText.optional(),
  people: shortText.optional(),
  reason: shortText.optional(),
  /** Condition as it arrived, in a few words. */
  condition: shortText.optional(),
} as const
/** How a thing went all the same that by the plan does not pass; kept with the reason. */
const despite = shortText.optional()
/** Who records it: the person at the desk where left out. */
const by = name.optional()

const movement = z.strictObject({
  movement: id,
  at: moment,
  place: id,
  words: z.string(),
  spot: z.string(),
  method: z.string(),
  people: z.string(),
  reason: z.string(),
  condition: z.string(),
  recordedAt: moment,
  recordedBy: z.string(),
  /** The movement that it sets right, and the one that sets it right. */
  corrects: id.nullable(),
  correctedBy: id.nullable(),
  /** Says that what it corrects never was. */
  struck: z.boolean(),
})

const thing = {
  kind: z.enum(['work', 'crate']),
  id,
  number: z.string(),
  title: z.string(),
} as const
/** The set that it was carried in; null where it went by itself. */
const partOf = z.string().nullable()

const way = z.strictObject({
  kind: thing.kind,
  id,
  name: z.string(),
  /**
   * `way`: through doorways and lifts. `same`: it stays in its room. `outside`: neither end is in a room of the plan.
   * `none`: the plan joins the two by nothing. `no-size`: the thing has no size to be held against doorways.
   */
  told: z.enum(['way', 'same', 'outside', 'none', 'no-size']),
  /** Of its worst passage; null where there is no way. */
  fit: z.enum(['upright', 'turned', 'tipped', 'leaning', 'no']).nullable(),
  /** In the order of the way; `depth` is of a lift. `over`: too large, held straight; `spare`: room left. Millimetres. */
  through: z.array(
    z.strictObject({
      kind: z.enum(['door', 'lift']),
      words: z.string(),
      width: size,
      height: size,
      depth: size.nullable(),
      fit: z.enum(['upright', 'turned', 'tipped', 'leaning', 'no']),
      over: z.number(),
      spare: z.number(),
    }),
  ),
  /** Which of them is the tightest. */
  tightest: z.int().nullable(),
  /** In a sentence; empty where it stays in its room. */
  text: z.string(),
})
export type CarriedWay = z.output<typeof way>

const whereLine = z.strictObject({
  ...thing,
  /** In the show that was asked for; empty without one. */
  running: z.string(),
  maker: z.string(),
  /** Null where no movement of it was recorded by then. */
  movement: id.nullable(),
  place: id.nullable(),
  /** Where it was, through every crate and vehicle: `Crate 5, in Van 1, at Room 2`. */
  words: z.string(),
  spot: z.string(),
  since: moment.nullable(),
  people: z.string(),
  /** The outermost place, which does not move. */
  stands: id.nullable(),
  /** How many parts it has, as a set. */
  parts: z.int(),
  findings: z.array(finding),
})
export type WhereLine = z.output<typeof whereLine>

export const movementsArea = {
  'location.list': procedure(
    'read',
    'Lists every place with an agreed name: rooms and walls of the building, stores, crates, vehicles, lifts, addresses.',
    z.strictObject({}),
    z.strictObject({ places: z.array(place) }),
  ),
  'location.add': procedure(
    'write',
    'Agrees the name of a place: a store, a shelf in it, a crate, a vehicle, a lift, an address outside.',
    z.strictObject({
      kind: locationKind,
      name,
      parent: id.optional(),
      address: shortText.optional(),
      width: size.optional(),
      height: size.optional(),
      depth: size.optional(),
      holdHours: holdHours.optional(),
      note: longText.optional(),
    }),
    made,
  ),
  'location.update': procedure(
    'write',
    'Changes what a place is called and its figures; records keep the words that they were made with.',
    z.strictObject({ id, changes: changes({ name, address: shortText, note: longText, ...figures }) }),
    updated,
  ),
  'location.remove': procedure(
    'write',
    'Removes a place that no record names and that holds no other.',
    z.strictObject({ id }),
    done,
  ),
  'movement.check': procedure(
    'read',
    'Tells what is to be said about a movement before it is recorded: doors, lifts, hold hours, parts, later entries.',
    z.strictObject({ ...what, ...how }),
    z.strictObject({ notes: z.array(finding) }),
  ),
  'movement.way': procedure(
    'read',
    'Tells by which doorways and lifts works or crates go from where they are to a place, and which is the tightest.',
    z.strictObject({
      works: what.works,
      crates: what.crates,
      /** Out of the building where left out. */
      to: id.optional(),
      at: moment.optional(),
    }),
    z.strictObject({ ways: z.array(way) }),
  ),
  'movement.wholes': procedure(
    'read',
    'Tells which sets, and which numbers with parts, these works belong to, with every part and where it was.',
    z.strictObject({ works: z.array(id).max(2000), at: moment.optional() }),
    z.strictObject({
      wholes: z.array(
        z.strictObject({
          /** Null where numbers alone say that they belong together. */
          set: id.nullable(),
          name: z.string(),
          parts: z.array(z.strictObject({ work: id, number: z.string(), title: z.string(), words: z.string() })),
        }),
      ),
    }),
  ),
  'movement.add': procedure(
    'write',
    'Records that works, or crates with all in them, were moved; a record is never changed and never taken back.',
    z.strictObject({
      ...what,
      ...how,
      arrived: arrived.optional(),
      despite,
      /** Planned movements that it fulfils, beside those to this place whose day has come. */
      plans: z.array(id).max(2000).optional(),
      by,
    }),
    z.strictObject({ id, notes: z.array(finding) }),
  ),
  'movement.correct': procedure(
    'write',
    'Sets a record right by another that refers to it: with other facts, or struck because it never was.',
    z.strictObject({
      movement: id,
      why: name,
      struck: z.boolean().optional(),
      to: id.optional(),
      spot: shortText.optional(),
      at: moment.optional(),
      method: shortText.optional(),
      people: shortText.optional(),
      condition: shortText.optional(),
      /** Of those it names; the others keep what was said of them. */
      arrived: arrived.optional(),
      despite,
      by,
    }),
    z.strictObject({ id, notes: z.array(finding) }),
  ),
  'movement.takeHung': procedure(
    'write',
    'Takes works that are said to hang into the record, each on its wall with the time and name of its tick.',
    z.strictObject({ exhibition: id, works: z.array(id).min(1).max(2000).optional(), despite, by }),
    z.strictObject({ recorded: z.int() }),
  ),
  'movement.where': procedure(
    'read',
    'Tells where everything was at a moment, by place or by work, with works that have two places or none.',
    z.strictObject({
      /** Now where left out. */
      at: moment.optional(),
      /** Works of this show; without it all works and crates of the catalogue. */
      exhibition: id.optional(),
      words: shortText.optional(),
      /** The line of this work or crate alone. */
      thing: id.optional(),
      order: z.enum(['work', 'place', 'since']).optional(),
      ...page,
    }),
    z.strictObject({
      at: moment,
      lines: z.array(whereLine),
      /** Of all that was asked for, before the page was cut. */
      total: z.int(),
      without: z.int(),
      twice: z.int(),
      /** Works on walls whose hanging is not in the record yet. */
      unrecorded: z.int(),
      /** How many works stood in each outermost place, most first. */
      places: z.array(z.strictObject({ place: id, words: z.string(), works: z.int() })),
    }),
  ),
  'movement.history': procedure(
    'read',
    'Tells every movement of one work or crate, the first one first, with what was set right and what does not join.',
    z.strictObject({ kind: z.enum(['work', 'crate']), id }),
    z.strictObject({
      movements: z.array(
        movement.extend({
          fromWords: z.string(),
          /** The crate or vehicle that it was in when that was moved; empty where it was moved itself. */
          within: z.string(),
          /** The set that it was carried in; empty where it went by itself. */
          withSet: z.string(),
          /** Of itself, where that was said beside the condition of all. */
          ownCondition: z.string(),
          /** The planned movement that it fulfilled, in words; empty where it fulfilled none. */
          planned: z.string(),
          /** Where it left from another place than the one before says; empty where all joins. */
          finding: z.string(),
        }),
      ),
    }),
  ),
  'movement.list': procedure(
    'read',
    'Lists the movements between two moments, each with all that was moved.',
    z.strictObject({ from: moment, to: moment }),
    z.strictObject({
      movements: z.array(
        movement.extend({
          things: z.array(
            z.strictObject({ ...thing, fromWords: z.string(), partOf, condition: z.string(), planned: z.string() }),
          ),
        }),
      ),
    }),
  ),
} as const
