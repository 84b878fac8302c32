/**
 * Condition reports. A draft is written like everything else; once two people have signed what it says it is made
 * complete, and from then on nothing of it changes: a correction is a report of its own that refers to it.
 */
import * as z from 'zod'
import { sides } from '../../record/condition/shape.ts'
import { materials } from '../../record/condition/vocabulary.ts'
import { procedure } from '../procedure.ts'
import { changes, done, handle, hash, id, made, moment, name, page, shortText, updated } from '../shared.ts'
import {
  compared,
  facts,
  headOf,
  kind,
  report,
  role,
  said,
  shape,
  shown,
  strokes,
  takenFrom,
  term,
} from './condition-shape.ts'

export const conditionArea = {
  'condition.words': procedure(
    'read',
    'Lists the words for what is found on works, by material, with those that the house has added.',
    z.strictObject({}),
    z.strictObject({
      words: z.array(
        z.strictObject({
          key: term,
          material: z.enum(materials),
          word: z.string(),
          meaning: z.string(),
          own: z.boolean(),
        }),
      ),
    }),
  ),
  'condition.addWord': procedure(
    'write',
    'Adds a word of the house for what is found on a material.',
    z.strictObject({ material: z.enum(materials), word: name, meaning: shortText }),
    made,
  ),
  'condition.removeWord': procedure(
    'write',
    'Takes a word of the house away that no finding is called by.',
    z.strictObject({ id }),
    done,
  ),
  'condition.list': procedure(
    'read',
    'Lists condition reports, the last first unless asked otherwise: of one work, of the works of a show, or of all.',
    z.strictObject({
      work: id.optional(),
      exhibition: id.optional(),
      /** Each of them stands in the title, the maker, a number or the lender of the work. */
      words: shortText.optional(),
      kind: kind.optional(),
      state: z.enum(['draft', 'complete']).optional(),
      /** The last examined first, or the first number of a work. */
      sort: z.enum(['examined', 'work']).optional(),
      /** The other way round. */
      turned: z.boolean().optional(),
      ...page,
    }),
    /** `drafts`: of all that the words, the kind and the show leave, whatever their state. */
    z.strictObject({ reports: z.array(headOf), total: z.int(), drafts: z.int() }),
  ),
  'condition.get': procedure(
    'read',
    'Tells one condition report with its findings, its signatures and what it lacks to be complete.',
    z.strictObject({ id }),
    report,
  ),
  'condition.compare': procedure(
    'read',
    'Compares two condition reports of one work, finding by finding: same, grown, new, not seen.',
    z.strictObject({ before: id, after: id }),
    z.strictObject({
      lines: z.array(compared),
      counts: z.strictObject({ same: z.int(), grown: z.int(), new: z.int(), notSeen: z.int() }),
      near: z.number(),
      grown: z.number(),
    }),
  ),
  'condition.add': procedure(
    'write',
    'Begins a condition report of a work, on its picture at the size of the work.',
    z.strictObject({
      work: id,
      kind,
      /** Now where left out. */
      examinedAt: moment.optional(),
      place: shortText.optional(),
      /** The person at the desk where left out. */
      examiner: shortText.optional(),
    }),
    made,
  ),
  'condition.update': procedure(
    'write',
    'Changes what a draft says beside its findings, field by field.',
    z.strictObject({ id, changes: changes(facts) }),
    updated,
  ),
  'condition.remove': procedure(
    'write',
    'Takes a draft away that nobody has signed, with its findings.',
    z.strictObject({ id }),
    done,
  ),
  'condition.addFinding': procedure(
    'write',
    'Marks a finding on the face of the work.',
    z.strictObject({
      report: id,
      ...shape.shape,
      /** The front where left out. */
      side: z.enum(sides).optional(),
      term: term.optional(),
      age: said.age.optional(),
      severity: said.severity.optional(),
      stable: said.stable.optional(),
      note: said.note.optional(),
      across: said.across.optional(),
      follows: said.follows.optional(),
    }),
    made,
  ),
  'condition.updateFinding': procedure(
    'write',
    'Changes a finding of a draft, field by field; its place is one field.',
    z.strictObject({ id, changes: changes({ ...said, shape }) }),
    updated,
  ),
  'condition.removeFinding': procedure(
    'write',
    'Takes a finding off a draft; those after it are numbered anew.',
    z.strictObject({ id }),
    done,
  ),
  'condition.addPhoto': procedure(
    'long',
    'Adds an uploaded photograph to a draft, kept at full size by its hash; when it was taken is read from it.',
    z.strictObject({
      report: id,
      handle,
      /** When the file was last changed: told as such where the photograph itself has no date. */
      changedAt: moment.optional(),
    }),
    z.strictObject({
      id,
      hash,
      widthPx: z.int(),
      heightPx: z.int(),
      takenAt: moment.nullable(),
      takenFrom,
      /** Cut off or damaged: part of its picture cannot be read. */
      partial: z.boolean(),
    }),
  ),
  'condition.updatePhoto': procedure(
    'write',
    'Changes what is said of a photograph, field by field: what it shows, of which findings, when and by whom it was taken.',
    z.strictObject({ id, changes: changes(shown) }),
    updated,
  ),
  'condition.movePhoto': procedure(
    'write',
    'Puts a photograph of a draft before another, or last.',
    z.strictObject({ id, before: id.nullable() }),
    done,
  ),
  'condition.removePhoto': procedure(
    'write',
    'Takes a photograph off a draft; its file stays.',
    z.strictObject({ id }),
    done,
  ),
  'condition.sign': procedure(
    'write',
    'Signs what a report says now, with a typed name and a drawn signature.',
    z.strictObject({ report: id, role, name, strokes }),
    made,
  ),
  'condition.complete': procedure(
    'write',
    'Makes a report complete that two people have signed in different roles; nothing of it changes from then on.',
    z.strictObject({ report: id }),
    done,
  ),
  'condition.correct': procedure(
    'write',
    'Begins a report that sets a complete one right and refers to it; it says the same until it is changed.',
    z.strictObject({ report: id, why: name }),
    made,
  ),
} as const
