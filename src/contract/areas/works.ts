/** One work of the catalogue: facts, sizes and masses with their sources, numbers, back, pictures, documents. */
import * as z from 'zod'
import { procedure } from '../procedure.ts'
import {
  changes,
  done,
  finding,
  handle,
  hash,
  id,
  kilograms,
  lengthUnit,
  longText,
  made,
  moment,
  origin,
  shortText,
  size,
  typed,
  updated,
} from '../shared.ts'
import { setFacts, setPart } from './sets.ts'
import {
  glazing,
  hangingMethod,
  hangingSize,
  numberKind,
  numberText,
  seenFrom,
  sensitivity,
  since,
  sizePart,
  workFields,
  workKind,
} from './works-shape.ts'

// A field that can be changed and is not given does not compile.
const facts = z.strictObject({
  title: z.string(),
  maker: z.string(),
  dateText: z.string(),
  medium: z.string(),
  creditLine: z.string(),
  lender: id.nullable(),
  kind: workKind,
  objectName: z.string(),
  titleTranslation: z.string(),
  titleLanguage: z.string(),
  inscriptions: z.string(),
  subject: z.string(),
  description: z.string(),
  placeOfOrigin: z.string(),
  distinguishing: z.string(),
  department: z.string(),
  sensitivity,
  lightLimit: z.number().nullable(),
  glazing,
  frameColour: z.string(),
  /** A hand's factor on how heavy it looks; null where nobody has said. */
  handWeight: z.number().nullable(),
  notBeside: z.string(),
  loanTerms: z.string(),
  handling: z.string(),
  note: z.string(),
} satisfies Readonly<Record<keyof typeof workFields, z.ZodType>>)

/** Where a fact comes from, and whether it is the one that counts. */
const sourced = {
  raw: z.string(),
  kind: origin,
  source: z.string(),
  by: z.string(),
  at: z.string(),
  approximate: z.boolean(),
  chosen: z.boolean(),
  inForce: z.boolean(),
} as const

export const sizeRow = z.strictObject({
  id,
  part: sizePart,
  label: z.string(),
  height: z.number().nullable(),
  width: z.number().nullable(),
  depth: z.number().nullable(),
  diameter: z.number().nullable(),
  count: z.int(),
  unit: z.string(),
  ...sourced,
})

const massRow = z.strictObject({
  id,
  kg: z.number(),
  ...sourced,
})

const backRow = z.strictObject({
  id,
  method: hangingMethod,
  /** As the method's own schema in src/hang says. */
  data: z.record(z.string(), z.json()),
  seenFrom,
  by: z.string(),
  at: z.string(),
  note: z.string(),
})

/** One part of a statement, as it was understood. */
const statedSize = z.strictObject({
  part: sizePart,
  label: shortText.optional(),
  count: z.int().min(1).max(500).optional(),
  height: size.nullable().optional(),
  width: size.nullable().optional(),
  depth: size.nullable().optional(),
  diameter: size.nullable().optional(),
  approximate: z.boolean().optional(),
})

export const worksArea = {
  'work.get': procedure(
    'read',
    'Gives everything about one work; its findings speak in the unit asked for, else in that of the desk.',
    z.strictObject({ id, unit: lengthUnit.optional() }),
    z.strictObject({
      id,
      facts,
      lenderName: z.string(),
      numbers: z.array(
        z.strictObject({
          id,
          kind: numberKind,
          text: z.string(),
          /** A day, a month or a year; empty where nobody said. */
          since: z.string(),
          by: z.string(),
          note: z.string(),
        }),
      ),
      sizes: z.array(sizeRow),
      masses: z.array(massRow),
      backs: z.array(backRow),
      pictures: z.array(
        z.strictObject({ id, hash, name: z.string(), widthPx: z.int().nullable(), heightPx: z.int().nullable() }),
      ),
      documents: z.array(z.strictObject({ id, hash, name: z.string(), mime: z.string(), bytes: z.int(), at: moment })),
      size: hangingSize.nullable(),
      mass: z.number().nullable(),
      entries: z.array(
        z.strictObject({ id, exhibition: id, exhibitionTitle: z.string(), running: z.string(), where: z.string() }),
      ),
      /** What was written at marks made for it, the newest first. */
      markNotes: z.array(
        z.strictObject({
          mark: id,
          exhibitionTitle: z.string(),
          where: z.string(),
          slot: z.string(),
          note: z.string(),
          /** When the mark was made or drilled last, and by whom. */
          at: moment,
          by: z.string(),
        }),
      ),
      /** How its parts stand and which they are, where it is a set. */
      set: z.strictObject({ ...setFacts.shape, parts: z.array(setPart) }).nullable(),
      /** The set that it is part of, which part from 1, of how many. */
      partOf: z.strictObject({ id, title: z.string(), order: z.int(), parts: z.int() }).nullable(),
      questions: z.int(),
      findings: z.array(finding),
    }),
  ),
  'work.add': procedure(
    'write',
    'Adds a work, into an exhibition where one is named.',
    z.strictObject({
      title: shortText,
      maker: shortText.optional(),
      dateText: shortText.optional(),
      medium: shortText.optional(),
      creditLine: shortText.optional(),
      kind: workKind.optional(),
      lender: id.nullable().optional(),
      number: z.strictObject({ kind: numberKind, text: numberText }).optional(),
      exhibition: id.optional(),
      section: id.nullable().optional(),
    }),
    z.strictObject({ id, entry: id.nullable() }),
  ),
  'work.update': procedure(
    'write',
    'Changes fields of one work; each change names the value it was based on.',
    z.strictObject({ id, changes: changes(workFields) }),
    updated,
  ),
  'work.duplicate': procedure(
    'write',
    'Makes a second work with the same facts, sizes and back, without numbers and pictures.',
    z.strictObject({ id, exhibition: id.optional() }),
    z.strictObject({ id, entry: id.nullable() }),
  ),
  'work.remove': procedure(
    'write',
    'Removes a work from the catalogue; refused while it stands in a show.',
    z.strictObject({ id }),
    done,
  ),
  'work.addNumber': procedure(
    'write',
    'Gives a work one more number.',
    z.strictObject({
      work: id,
      kind: numberKind,
      text: numberText,
      since: since.optional(),
      by: shortText.optional(),
      note: shortText.optional(),
    }),
    made,
  ),
  'work.changeNumber': procedure(
    'write',
    'Corrects a number of a work, what kind it is, or what is said about it.',
    z.strictObject({
      id,
      changes: changes({ kind: numberKind, text: numberText, since, by: shortText, note: shortText }),
    }),
    updated,
  ),
  'work.removeNumber': procedure('write', 'Takes a number off a work.', z.strictObject({ id }), done),
  'work.addSize': procedure(
    'write',
    'Adds a size as a dated row, from figures or from a statement as typed; nothing older is overwritten.',
    z.strictObject({
      work: id,
      part: sizePart,
      height: size.nullable().optional(),
      width: size.nullable().optional(),
      depth: size.nullable().optional(),
      diameter: size.nullable().optional(),
      raw: typed,
      kind: origin,
      source: shortText.optional(),
      approximate: z.boolean().optional(),
    }),
    z.strictObject({ id, hanging: hangingSize.nullable() }),
  ),
  'work.addStatement': procedure(
    'write',
    'Adds all that one statement says, each part as a dated row and its weight too, as one edit.',
    z.strictObject({
      work: id,
      raw: typed,
      /** The part meant where the statement names none. */
      part: sizePart,
      kind: origin,
      source: shortText.optional(),
      approximate: z.boolean().optional(),
      /** What the statement was read as once its questions were answered; left out, it is read here. */
      sizes: z.array(statedSize).max(40).optional(),
      mass: z.strictObject({ kg: kilograms, raw: typed, approximate: z.boolean().optional() }).optional(),
    }),
    z.strictObject({ sizes: z.array(id), mass: id.nullable(), hanging: hangingSize.nullable() }),
  ),
  'work.chooseSize': procedure(
    'write',
    'Overrules which size of a part is in force, or lets the rule choose again.',
    z.strictObject({ id, chosen: z.boolean() }),
    z.strictObject({ hanging: hangingSize.nullable() }),
  ),
  'work.addMass': procedure(
    'write',
    'Adds a mass as a dated row.',
    z.strictObject({
      work: id,
      kg: kilograms,
      raw: typed,
      kind: origin,
      source: shortText.optional(),
      approximate: z.boolean().optional(),
    }),
    made,
  ),
  'work.chooseMass': procedure(
    'write',
    'Overrules which mass is in force, or lets the rule choose again.',
    z.strictObject({ id, chosen: z.boolean() }),
    done,
  ),
  'work.setBack': procedure(
    'write',
    'Records how a work hangs and what was measured on its back.',
    z.strictObject({
      work: id,
      method: hangingMethod,
      data: z.record(z.string(), z.json()),
      seenFrom,
      note: longText.optional(),
    }),
    made,
  ),
  'work.addPicture': procedure(
    'long',
    'Adds an uploaded picture to a work and makes its thumbnails.',
    z.strictObject({ work: id, handle }),
    z.strictObject({ id, hash, widthPx: z.int().nullable(), heightPx: z.int().nullable() }),
  ),
  'work.removePicture': procedure('write', 'Takes a picture off a work; its file stays.', z.strictObject({ id }), done),
  'work.addDocument': procedure(
    'long',
    'Attaches an uploaded document to a work.',
    z.strictObject({ work: id, handle }),
    z.strictObject({ id, hash }),
  ),
  'work.removeDocument': procedure(
    'write',
    'Takes a document off a work; its file stays.',
    z.strictObject({ id }),
    done,
  ),
  'file.take': procedure(
    'desk',
    'Makes a handle under which a stored picture or document can be taken away.',
    z.strictObject({ hash, name: z.string().max(200) }),
    z.strictObject({ handle, name: z.string() }),
  ),
} as const
