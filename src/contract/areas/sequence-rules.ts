/** Rules of a hang: what a coordinator gives a show, and what works carry with them; held or broken as it hangs today. */
import * as z from 'zod'
import { mostWorks, placeKinds, ruleKinds, withins } from '../../sequence/hang-rule.ts'
import { procedure } from '../procedure.ts'
import { changes, id, shortText, updated } from '../shared.ts'

const kind = z.enum(ruleKinds)
const within = z.enum(withins)
const works = z.array(id).min(1).max(mostWorks)
/** A wall by its face, a room, a doorway by its opening, a bench. */
const place = z.strictObject({ kind: z.enum(placeKinds), id })
const places = z.array(place).max(200)
const noteField = z.enum(['notBeside', 'loanTerms'])

/** Rules that can't hold together, and from which none can be left out. */
export const contradiction = z.strictObject({
  rules: z.array(z.string()),
  says: z.string(),
  /** False where the limit of the search was reached: one of them might be left out. */
  minimal: z.boolean(),
})

const namedWork = z.strictObject({
  work: id,
  /** Null for a work that is not in the show. */
  entry: id.nullable(),
  running: z.string(),
  title: z.string(),
})

export const hangRule = z.strictObject({
  /** Of what works carry: `light:` and the limit. */
  id: z.string(),
  kind: z.enum([...ruleKinds, 'light', 'held']),
  works: z.array(namedWork),
  places: z.array(place.extend({ name: z.string() })),
  within: within.nullable(),
  says: z.string(),
  /** As it hangs today. Open: some of its works hang nowhere yet. */
  state: z.enum(['held', 'broken', 'open', 'rests', 'off']),
  /** Of a broken rule where its works hang, of a resting one why; empty else. */
  why: z.string(),
  /** Who gives it: a person, the works' light limits, the hand that held them on the wall. */
  from: z.enum(['given', 'light limit', 'wall']),
  reason: z.string(),
  /** The note of a work that it was made from, or a sentence of it, and whether the work still says so. */
  said: z.strictObject({ of: id.nullable(), field: noteField, text: z.string(), still: z.boolean() }).nullable(),
})

/** One sentence of what a work says in words, and what it would be as a rule: offered, given by a person alone. */
const termRead = z.strictObject({
  /** As it was written. */
  quoted: z.string(),
  offers: z.array(z.strictObject({ kind, works, places, says: z.string() })),
  /** Lux that it names as the most, where the work's own limit says otherwise or nothing. */
  limit: z.number().nullable(),
  /** What a person is asked of it; empty where it is plain. */
  asks: z.string(),
  /** Why nothing is to be done; empty else. */
  kept: z.string(),
  /** Rules that were made of it. */
  rules: z.array(z.string()),
  /** By a person, with a reason, without a rule; taken back by `finding.unsettle`. */
  settled: z.strictObject({ id, reason: z.string(), by: z.string() }).nullable(),
})

export const sequenceRulesArea = {
  'sequence.rules': procedure(
    'read',
    'Lists the rules of a hang, each as one sentence: given ones, those of light limits, works held on the wall; whether each is held today, notes of works that nobody has made a rule of, and rules that can’t hold together.',
    z.strictObject({ exhibition: id }),
    z.strictObject({
      rules: z.array(hangRule),
      /** What works say in words, read sentence by sentence; `rules`: those made of it as a whole. */
      notes: z.array(
        z.strictObject({
          work: id,
          entry: id,
          running: z.string(),
          title: z.string(),
          field: noteField,
          text: z.string(),
          rules: z.array(z.string()),
          terms: z.array(termRead),
        }),
      ),
      /** Works let hang in more light than their limit, each with its reason; taken back by `finding.unsettle`. */
      exceptions: z.array(
        z.strictObject({
          id,
          entry: id,
          running: z.string(),
          title: z.string(),
          limit: z.number(),
          reason: z.string(),
          by: z.string(),
        }),
      ),
      contradiction: contradiction.nullable(),
      /** False where whether all can hold together was not found out within the limit of the search. */
      answered: z.boolean(),
    }),
  ),
  'sequence.addRule': procedure(
    'write',
    'Gives a show a rule of its hang; tells at once where it can’t hold together with others. A work that stays, stays on the wall where it hangs now.',
    z.strictObject({
      exhibition: id,
      kind,
      works,
      places: places.optional(),
      within: within.optional(),
      reason: shortText.optional(),
      /** The note of a work that it is made from, or the sentence of it that is quoted. */
      said: z.strictObject({ work: id, field: noteField, quoted: z.string().max(20_000).optional() }).optional(),
    }),
    z.strictObject({ id, says: z.string(), contradiction: contradiction.nullable() }),
  ),
  'sequence.changeRule': procedure(
    'write',
    'Changes a rule of a hang: its works in their order, its places, its reason; switches it off or on.',
    z.strictObject({ id, changes: changes({ inForce: z.boolean(), reason: shortText, works, places }) }),
    updated,
  ),
  'sequence.removeRules': procedure(
    'write',
    'Removes rules of a hang that were given.',
    z.strictObject({ rules: z.array(id).min(1).max(1000) }),
    z.strictObject({ removed: z.int() }),
  ),
  'sequence.exceptLight': procedure(
    'write',
    'Lets a work hang in more light than its limit, with a reason, as an exception that is shown with the rules. It ends when the limit changes.',
    z.strictObject({ entry: id, reason: z.string().trim().min(3, 'expected the reason, and who agreed').max(500) }),
    /** The limit that it is excepted from, lux. */
    z.strictObject({ limit: z.number() }),
  ),
} as const
