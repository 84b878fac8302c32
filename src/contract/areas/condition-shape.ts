/** What condition reports are told as: findings, photographs, signatures, a report, two compared. */
import * as z from 'zod'
import { ages, reportKinds, roles, severities, stabilities } from '../../record/condition/report.ts'
import { forms, sides } from '../../record/condition/shape.ts'
import { hash, id, longText, moment, shortText, size } from '../shared.ts'

export const kind = z.enum(reportKinds)
export const role = z.enum(roles)
/** Of the vocabulary: `painting.loss`, or the id of a house's own word; empty while nobody has said one. */
export const term = z.string().regex(/^[a-z0-9.-]{0,60}$/, 'expected a word of the vocabulary')
const orEmpty = <const T extends readonly [string, ...string[]]>(words: T) => z.enum(['', ...words])

const point = z.strictObject({ x: z.number(), y: z.number() })
const along = z.number().min(0).max(1e5)
/** mm from the left edge and from the top edge of the face. */
const spot = z.strictObject({ x: along, y: along })

/** What is said of a finding. */
export const said = {
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

export const shape = z.strictObject({ form: z.enum(forms), points: z.array(spot).min(1).max(400) })

/** What is said of a report. */
export const facts = {
  kind,
  examinedAt: moment,
  place: shortText,
  examiner: shortText,
  packing: longText,
  note: longText,
  /** The photograph that its back is drawn on: of this report or of the work. */
  backPicture: hash.nullable(),
} as const

/** Strokes of a pen over a field 1000 wide and 320 high, each its points: x, y, x, y … */
export const strokes = z
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
  side: z.enum(sides),
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
export const takenFrom = z.enum(takenFroms)

/** What is said of a photograph. */
export const shown = {
  shows: longText,
  /** Findings of the report, by their ids. */
  findings: z.array(id).max(500),
  takenAt: moment.nullable(),
  takenBy: shortText,
} as const

export const photo = z.strictObject({
  id,
  hash,
  name: z.string(),
  widthPx: z.int(),
  heightPx: z.int(),
  /** Shown, and measured in pixels, by the preview in a file that can't be decoded itself. */
  preview: z.boolean(),
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
export const headOf = z.strictObject(head)
export type ReportHead = z.output<typeof headOf>

export const report = z.strictObject({
  ...head,
  /** The picture that marks are drawn on; null where there was none. */
  picture: hash.nullable(),
  /** The face of the work that day, mm. */
  width: size,
  height: size,
  /** How deep it was; null where nobody had measured it. */
  depth: size.nullable(),
  /** Where the picture stands in its frame as both are measured now, mm; null where that is not known. */
  opening: z.strictObject({ left: z.number(), top: z.number(), width: z.number(), height: z.number() }).nullable(),
  /** Its back as measured for hanging, mm, as seen from behind; null where nobody measured it. */
  behind: z.strictObject({ rings: z.array(point), lines: z.array(z.array(point)) }).nullable(),
  findings: z.array(finding),
  photos: z.array(photo),
  signatures: z.array(signature),
  /** SHA-256 of all that it says now; what a signature names. */
  content: hash,
  /** What is missing before it can be made complete; empty for a complete one. */
  lacks: z.array(z.strictObject({ code: z.string(), finding: id.nullable(), text: z.string() })),
})
export type Report = z.output<typeof report>

export const compared = z.strictObject({
  outcome: z.enum(['same', 'grown', 'new', 'not seen']),
  before: id.nullable(),
  after: id.nullable(),
  by: z.enum(['said', 'place']).nullable(),
  remarks: z.array(z.enum(['larger', 'more serious', 'called new', 'size not taken', 'smaller'])),
  text: z.string(),
})
export type ConditionLine = z.output<typeof compared>
