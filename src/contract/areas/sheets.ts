/**
 * The papers the crew works from. Printing a wall sheet is a record: it makes the next revision only if what the sheet
 * says has changed since the last print of that face, and makes the older ones void.
 */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import { day, finding, handle, id, lengthUnit, moment, paper } from '../shared.ts'
import { currency } from './insured.ts'

export const sheetKind = z.enum([
  'wall sheet',
  'checklist',
  'hang list',
  'hardware list',
  'hanging order',
  'back tags',
  'patch list',
  'lock register',
  'label list',
  'movement sheet',
  'object file',
  'insured values',
  'loan file',
  'outgoing list',
  'paper template',
  'plan',
  'condition report',
  'condition comparison',
  'damage report',
  'receipt',
  'climate',
])

/** A paper that was made. */
export const sheetFile = z.strictObject({
  kind: sheetKind,
  handle,
  name: z.string(),
  /** The face it is about; null for a table of the whole show. */
  face: id.nullable(),
  /** Pages of a PDF; null for a table, whose pages its reader makes. */
  pages: z.int().nullable(),
  revision: z.int().nullable(),
})
export type SheetFile = z.output<typeof sheetFile>

/** Left out, they are as the person at the desk likes them, else A4, millimetres, sixteenths. */
const wishes = {
  paper: paper.optional(),
  unit: lengthUnit.optional(),
  fraction: z.union([z.literal(8), z.literal(16), z.literal(32)]).optional(),
} as const

/** Values are on a checklist, which goes to builders and lenders alike, only where this is said. */
const inConfidence = { withValues: z.boolean().optional() } as const
/** A whole file is whole; false makes the copy to give away, without values, contacts, places and changes. */
const wholeOrCopy = { withValues: z.boolean().optional() } as const

const mm = z.number()
const dash = z.tuple([z.number(), z.number()]).readonly().optional()

/** The shapes of src/sheets/shapes.ts, millimetres of paper. */
export const shape = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('line'), x1: mm, y1: mm, x2: mm, y2: mm, width: mm, colour: z.string(), dash }),
  z.strictObject({
    kind: z.literal('rect'),
    x: mm,
    y: mm,
    w: mm,
    h: mm,
    stroke: z.string().optional(),
    fill: z.string().optional(),
    width: mm.optional(),
    dash,
  }),
  z.strictObject({
    kind: z.literal('path'),
    d: z.string(),
    stroke: z.string().optional(),
    fill: z.string().optional(),
    width: mm.optional(),
    dash,
  }),
  z.strictObject({ kind: z.literal('image'), x: mm, y: mm, w: mm, h: mm, hash: z.string() }),
  z.strictObject({
    kind: z.literal('text'),
    x: mm,
    y: mm,
    size: mm,
    face: z.enum(['plain', 'strong', 'figure', 'narrow', 'title']),
    text: z.string(),
    anchor: z.enum(['start', 'middle', 'end']),
    colour: z.string(),
    upright: z.boolean().optional(),
  }),
])

const pages = z.array(z.strictObject({ width: mm, height: mm, shapes: z.array(shape).readonly() })).readonly()
/** A plan's; left out, that of rooms which have none. */
const storey = z.string().trim().max(60).optional()
/** One to so many. */
const planScale = z.int().min(1).max(5000)
const printedSheet = z.strictObject({ revision: z.int(), at: moment, by: z.string() })
const standing = {
  printed: printedSheet.nullable(),
  upToDate: z.boolean(),
  /** Older revisions, that a later print made void. */
  voids: z.array(z.int()).readonly(),
} as const

const made = z.strictObject({
  files: z.array(sheetFile).readonly(),
  /** Characters that no face can print, by work. */
  findings: z.array(finding).readonly(),
})

/** A paper of the record, by its kind, with what the procedure that makes it is asked. */
const recordPaper = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('condition report'), report: id }),
  z.strictObject({ kind: z.literal('condition comparison'), before: id, after: id }),
  z.strictObject({ kind: z.literal('damage report'), damage: id }),
  z.strictObject({ kind: z.literal('object file'), work: id, ...wholeOrCopy }),
  z.strictObject({ kind: z.literal('loan file'), loan: id, ...wholeOrCopy }),
  z.strictObject({ kind: z.literal('movement sheet'), from: moment, to: moment }),
  z.strictObject({ kind: z.literal('climate'), room: id, from: moment.optional(), until: moment.optional() }),
])
export type RecordPaper = z.output<typeof recordPaper>

export const sheetsArea = {
  'sheet.wall': procedure(
    'long',
    'Prints the wall sheets of faces as PDF and records which revision each is.',
    z.strictObject({ exhibition: id, faces: z.array(id).min(1).max(500), ...wishes }),
    made,
  ),
  'sheet.checklist': procedure(
    'long',
    'Makes the checklist of a show as a workbook that can be read in again.',
    z.strictObject({ exhibition: id, ...inConfidence, ...wishes }),
    made,
  ),
  'sheet.hangList': procedure(
    'long',
    'Makes the hang list of a show as a workbook: room by room, wall by wall, from left to right.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.hardware': procedure(
    'long',
    'Makes the hardware list of a show as a workbook and as PDF: in total, a box for each wall, drill bits.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.hangingOrder': procedure(
    'long',
    'Makes the order up and down and the days of the teams as a workbook and as PDF, and tags for the backs.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.patchList': procedure(
    'long',
    'Makes the list of holes to fill as a workbook and as PDF, wall by wall.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.locks': procedure(
    'long',
    'Makes the register of locks as a workbook and as PDF: where each is, what opens it, whether it is shut.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.movements': procedure(
    'long',
    'Makes the sheet of movements between two moments as a workbook and as PDF: what is planned, to tick; what was recorded.',
    z.strictObject({ from: moment, to: moment, ...wishes }),
    made,
  ),
  'sheet.outgoing': procedure(
    'long',
    'Makes the outgoing list of a show as a workbook and as PDF: how each work comes down, its crate, what is missing.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.insured': procedure(
    'long',
    'Makes what works are worth together as a workbook and as PDF: sums of a day against limits, its works, each day.',
    z.strictObject({
      day,
      exhibition: id.optional(),
      currency: currency.optional(),
      first: day.optional(),
      last: day.optional(),
      ...wishes,
    }),
    made,
  ),
  'sheet.climate': procedure(
    'long',
    'Makes the air of a room as a workbook and as PDF: drawn over time with its limits, what was beyond them, days, files; left out, the period is all that was read.',
    z.strictObject({ room: id, from: moment.optional(), until: moment.optional(), ...wishes }),
    made,
  ),
  'sheet.objectFile': procedure(
    'long',
    'Makes the whole file of one work as a workbook and as PDF: facts, numbers, loans, places, condition, damage, light, changes.',
    z.strictObject({ work: id, ...wholeOrCopy, ...wishes }),
    made,
  ),
  'sheet.damage': procedure(
    'long',
    'Makes a record of damage as a workbook and as PDF: what was found, who was told, what was done, its condition.',
    z.strictObject({ damage: id, ...wishes }),
    made,
  ),
  'sheet.condition': procedure(
    'long',
    'Prints a condition report as PDF: the work drawn on, to scale, its findings, photographs and signatures.',
    z.strictObject({ report: id, ...wishes }),
    made,
  ),
  'sheet.compared': procedure(
    'long',
    'Prints two condition reports of one work against one another as PDF: both drawn, every finding in one line.',
    z.strictObject({ before: id, after: id, ...wishes }),
    made,
  ),
  'sheet.loanFile': procedure(
    'long',
    'Makes the whole file of a loan as a workbook and as PDF: agreement, works and values, receipts, places, condition.',
    z.strictObject({ loan: id, ...wholeOrCopy, ...wishes }),
    made,
  ),
  'sheet.receipt': procedure(
    'long',
    'Prints a receipt of a loan as PDF: its works, their condition and crates, and lines to sign for both sides.',
    z.strictObject({ receipt: id, ...wishes }),
    made,
  ),
  'sheet.labels': procedure(
    'long',
    'Makes the label list of a show as a workbook: words, lines, size, side, distance, height, how far each is made.',
    z.strictObject({ exhibition: id, ...wishes }),
    made,
  ),
  'sheet.template': procedure(
    'long',
    'Draws the marks of a work on a wall at full size as PDF, cut over sheets that overlap.',
    z.strictObject({
      placement: id,
      /** A work that is a part of the set that stands there: that part alone. */
      part: id.optional(),
      /** The strip with the marks, or the whole work with its edges; the marks where left out. */
      area: z.enum(['marks', 'work']).optional(),
      ...wishes,
    }),
    made.extend({
      /** Names of its sheets in the order of its pages: rows by letter from the top, columns by number. */
      sheets: z.array(z.string()),
    }),
  ),
  'sheet.plan': procedure(
    'long',
    'Takes a storey out: PDF and SVG at a scale, DXF at full size; with a show, records which revision it is.',
    z.strictObject({
      /** With this show’s partitions and works, as its next revision; null for the building alone, which counts none. */
      exhibition: id.nullable(),
      storey,
      formats: z
        .array(z.enum(['pdf', 'svg', 'dxf']))
        .min(1)
        .max(3),
      /** One to so many; left out, the largest usual one that fits. */
      scale: planScale.optional(),
      ...wishes,
    }),
    made.extend({ scale: z.int() }),
  ),
  'sheet.set': procedure(
    'long',
    'Makes the whole set: every wall that has works, numbered through; the plan of each storey, checklist, hang list.',
    z.strictObject({ exhibition: id, ...inConfidence, ...wishes }),
    made,
  ),
  'sheet.state': procedure(
    'read',
    'Tells for every face with works or prints, and every storey, which revision is printed, up to date, void.',
    z.strictObject({ exhibition: id }),
    z.strictObject({
      faces: z.array(
        z.strictObject({
          face: id,
          name: z.string(),
          works: z.int(),
          ...standing,
        }),
      ),
      /** Storey by storey; one without rooms has no plan. */
      plans: z.array(z.strictObject({ storey: z.string(), rooms: z.int(), ...standing })),
    }),
  ),
  'sheet.preview': procedure(
    'long',
    'Draws the wall sheet of a face as shapes, as it would be printed now; records nothing.',
    z.strictObject({ exhibition: id, face: id, ...wishes }),
    z.strictObject({
      title: z.string(),
      /** The revision that printing would give it. */
      revision: z.int(),
      upToDate: z.boolean(),
      pages,
      findings: z.array(finding).readonly(),
    }),
  ),
  'sheet.previewPaper': procedure(
    'long',
    'Draws a paper of the record as shapes, as it would be printed now: a report, a whole file, movements, the air.',
    z.strictObject({ of: recordPaper, ...wishes }),
    z.strictObject({ title: z.string(), pages }),
  ),
  'sheet.previewPlan': procedure(
    'long',
    'Draws the plan of a storey as shapes, as it would be printed now; records nothing.',
    z.strictObject({ exhibition: id.nullable(), storey, scale: planScale.optional(), ...wishes }),
    z.strictObject({
      title: z.string(),
      /** The revision that printing would give it; null for the building alone, which counts none. */
      revision: z.int().nullable(),
      upToDate: z.boolean(),
      scale: z.int(),
      pages,
    }),
  ),
} as const
