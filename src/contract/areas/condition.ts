/**
 * Condition reports. A draft is written like everything else; once two people have signed what it says it is made
 * complete, and from then on nothing of it changes: a correction is a report of its own that refers to it.
 */
import * as z from 'zod'
import { ages, reportKinds, roles, severities, stabilities } from '../../record/condition/report.ts'
import { forms } from '../../record/condition/shape.ts'
import { materials } from '../../record/condition/vocabulary.ts'
import { procedure } from '../procedure.ts'
import {
  changes,
  done,
  handle,
  hash,
  id,
  longText,
  made,
  moment,
  name,
  page,
  shortText,
  size,
  updated,
} from '../shared.ts'

const kind = z.enum(reportKinds)
const role = z.enum(roles)
/** Of the vocabulary: `painting.loss`, or the id of a house's own word; empty while nobody has said one. */
const term = z.string().regex(/^[a-z0-9.-]{0,60}$/, 'expected a word of the vocabulary')
const orEmpty = <const T extends readonly [string, ...string[]]>(words: T) => z.enum(['', ...words])

const along = z.number().min(0).max(1e5)
/** mm from the left edge and from the top edge of the face. */
const spot = z.strictObject({ x: along, y: along })

/** What is said of a finding. */
const said = {
  term,
  age: orEmpty(ages),
  severity: orEmpty(severities),
  stable: orEmpty(stabilities),
  note: longText,
  /** Of a mark, taken with a rule: its greatest measure. */
  across: size.nullable(),
  /** The finding of an earlier, complete report that it goes on from. */
  follows: id.nullable(),
} as const

const shape = z.strictObject({ form: z.enum(forms), points: z.array(spot).min(1).max(400) })

/** What is said of a report. */
const facts = {
  kind,
  examinedAt: moment,
  place: shortText,
  examiner: shortText,
  packing: longText,
  note: longText,
} as const

/** Strokes of a pen over a field 1000 wide and 320 high, each its points: x, y, x, y … */
const strokes = z
  .array(z.array(z.int().min(0).max(1000)).min(4).max(2000))
  .min(1, 'draw the signature')
  .max(60)

const signature = z.strictObject({
  id,
  role,
  name: z.string(),
  at: moment,
  strokes,
  /** It signs what the report says now, and is the last of its role. */
  counts: z.boolean(),
})

const finding = z.strictObject({
  id,
  /** From 1, in the order of the report. */
  number: z.int(),
  ...said,
  /** As the vocabulary had it when it was said. */
  word: z.string(),
  ...shape.shape,
  /** By thirds of the face: `upper left`. */
  third: z.string(),
  /** mm: the greatest straight measure; null where nobody took it. */
  reach: z.number().nullable(),
  /** mm: along an outline, around an area; 0 for a mark. */
  along: z.number(),
  /** mm²: what an area encloses; else 0. */
  area: z.number(),
})
export type ConditionFindingTold = z.output<typeof finding>

/** Who says when a photograph was taken: the camera, the file's last change, a person. */
export const takenFroms = ['', 'camera', 'file', 'person'] as const
const takenFrom = z.enum(takenFroms)

/** What is said of a photograph. */
const shown = {
  shows: longText,
  /** Findings of the report, by their ids. */
  findings: z.array(id).max(500),
  takenAt: moment.nullable(),
  takenBy: shortText,
} as const

const photo = z.strictObject({
  id,
  hash,
  name: z.string(),
  widthPx: z.int(),
  heightPx: z.int(),
  ...shown,
  takenFrom,
})
export type ReportPhoto = z.output<typeof photo>

const head = {
  id,
  work: id,
  workTitle: z.string(),
  workNumber: z.string(),
  ...facts,
  findings: z.int(),
  /** As serious as the most serious finding; empty where none says. */
  overall: orEmpty(severities),
  /** Null while it is a draft. */
  completeAt: moment.nullable(),
  signedBy: z.array(z.strictObject({ role, name: z.string() })),
  corrects: id.nullable(),
  correctedBy: id.nullable(),
  why: z.string(),
} as const
const headOf = z.strictObject(head)
export type ReportHead = z.output<typeof headOf>

const report = z.strictObject({
  ...head,
  /** The picture that marks are drawn on; null where there was none. */
  picture: hash.nullable(),
  /** The face of the work that day, mm. */
  width: size,
  height: size,
  findings: z.array(finding),
  photos: z.array(photo),
  signatures: z.array(signature),
  /** What is missing before it can be made complete; empty for a complete one. */
  lacks: z.array(z.strictObject({ code: z.string(), finding: id.nullable(), text: z.string() })),
})
export type Report = z.output<typeof report>

const compared = z.strictObject({
  outcome: z.enum(['same', 'grown', 'new', 'not seen']),
  before: id.nullable(),
  after: id.nullable(),
  by: z.enum(['said', 'place']).nullable(),
  remarks: z.array(z.enum(['larger', 'more serious', 'called new', 'size not taken', 'smaller'])),
  text: z.string(),
})
export type ConditionLine = z.output<typeof compared>

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
    'Takes a word of the house away; reports keep the words that they were made with.',
    z.strictObject({ id }),
    done,
  ),
  'condition.list': procedure(
    'read',
    'Lists condition reports, the last first: of one work, or of all.',
    z.strictObject({ work: id.optional(), ...page }),
    z.strictObject({ reports: z.array(headOf), total: z.int() }),
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
    z.strictObject({ id, hash, widthPx: z.int(), heightPx: z.int(), takenAt: moment.nullable(), takenFrom }),
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
