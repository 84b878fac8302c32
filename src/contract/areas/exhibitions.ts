/** Exhibitions: made, copied, closed; sections and the order of the works; running numbers that change only when asked. */
import * as z from 'zod'
import { mostColumns, mostRows, sectionHangs, stackAligns } from '../../sequence/section-hang.ts'
import { procedure } from '../procedure.ts'
import { changes, day, done, id, longText, made, name, shortText, updated } from '../shared.ts'

export const exhibitionState = z.enum(['planning', 'installing', 'open', 'closing', 'closed'])
export const entryStatus = z.enum([
  'wanted',
  'asked for',
  'agreed',
  'on its way',
  'arrived',
  'unpacked',
  'checked in',
  'labelled',
  'lit',
  'signed',
  'checked out',
  'packed',
  'gone',
  'receipt back',
])

const exhibitionRow = z.strictObject({
  id,
  title: z.string(),
  venue: z.string(),
  opens: z.string(),
  closes: z.string(),
  state: exhibitionState,
  note: z.string(),
  works: z.int(),
  placed: z.int(),
})

const dayOrNothing = z.union([day, z.literal('')])

/** A work of the show as the frieze draws it. */
export const friezeWork = z.strictObject({
  entry: id,
  work: id,
  section: id.nullable(),
  running: z.string(),
  title: z.string(),
  height: z.number().nullable(),
  width: z.number().nullable(),
  picture: z.string().nullable(),
  face: id.nullable(),
  medium: z.string(),
  /** The lender's name; empty for works of the house. */
  lender: z.string(),
  /** Lux that it may receive; null where nobody said. */
  lightLimit: z.number().nullable(),
})

export const exhibitionsArea = {
  'exhibition.list': procedure(
    'read',
    'Lists the exhibitions of the catalogue.',
    z.strictObject({}),
    z.strictObject({ exhibitions: z.array(exhibitionRow) }),
  ),
  'exhibition.add': procedure(
    'write',
    'Makes an exhibition.',
    z.strictObject({
      title: name,
      venue: shortText.optional(),
      opens: dayOrNothing.optional(),
      closes: dayOrNothing.optional(),
    }),
    made,
  ),
  'exhibition.update': procedure(
    'write',
    'Renames an exhibition or changes its dates, venue or note.',
    z.strictObject({
      id,
      changes: changes({ title: name, venue: shortText, opens: dayOrNothing, closes: dayOrNothing, note: longText }),
    }),
    updated,
  ),
  'exhibition.setState': procedure(
    'write',
    'Moves an exhibition on: planning, installing, open, closing, closed. A closed one is read-only.',
    z.strictObject({ id, was: exhibitionState, to: exhibitionState }),
    done,
  ),
  'exhibition.copy': procedure(
    'write',
    'Copies an exhibition with its sections and order; with its wall plans and placements where asked.',
    z.strictObject({ id, title: name, placements: z.boolean() }),
    made,
  ),
  'exhibition.remove': procedure(
    'write',
    'Removes an exhibition; its works stay in the catalogue.',
    z.strictObject({ id }),
    done,
  ),
  'exhibition.frieze': procedure(
    'read',
    'Gives the works of a show in order with their sections, as the frieze draws them.',
    z.strictObject({ exhibition: id }),
    z.strictObject({
      sections: z.array(z.strictObject({ id, title: z.string() })),
      works: z.array(friezeWork),
    }),
  ),
  'exhibition.renumber': procedure(
    'write',
    'Gives the works running numbers in their present order; the number before is kept.',
    z.strictObject({ id, from: z.int().min(1).max(100_000).optional() }),
    z.strictObject({ changed: z.int() }),
  ),
  'section.add': procedure(
    'write',
    'Adds a section at the end.',
    z.strictObject({ exhibition: id, title: name }),
    made,
  ),
  'section.update': procedure(
    'write',
    'Renames a section, or changes how its works hang: in one row, in stacks or in grids.',
    z.strictObject({
      id,
      changes: changes({
        title: name,
        hang: z.enum(sectionHangs),
        rows: z.int().min(2).max(mostRows),
        columns: z.int().min(1).max(mostColumns),
        align: z.enum(stackAligns),
        gapDown: z.number().min(0).max(2000),
        gapAcross: z.number().min(0).max(2000),
        alike: z.number().min(0).max(5000),
        /** Edges of a stack or grid stay between these; null for the house’s. */
        lowest: z.number().min(0).max(10_000).nullable(),
        highest: z.number().min(0).max(20_000).nullable(),
      }),
    }),
    updated,
  ),
  'section.move': procedure(
    'write',
    'Moves a section before another, or to the end.',
    z.strictObject({ id, before: id.nullable() }),
    done,
  ),
  'section.remove': procedure(
    'write',
    'Removes a section; its works stay in the show without one.',
    z.strictObject({ id }),
    done,
  ),
  'entry.add': procedure(
    'write',
    'Puts works of the catalogue into a show, at the end of a section.',
    z.strictObject({ exhibition: id, works: z.array(id).min(1).max(5000), section: id.nullable().optional() }),
    z.strictObject({ entries: z.array(id), already: z.int() }),
  ),
  'entry.move': procedure(
    'write',
    'Moves works in the order of the show: into a section, before another work or to the section’s end.',
    z.strictObject({ entries: z.array(id).min(1).max(5000), section: id.nullable(), before: id.nullable() }),
    done,
  ),
  'entry.setRunning': procedure(
    'write',
    'Gives one work a running number by hand; the number before is kept.',
    z.strictObject({ id, was: z.string().max(30), to: z.string().trim().max(30) }),
    updated,
  ),
  'entry.setStatus': procedure(
    'write',
    'Says where works stand on their way into and out of the show.',
    z.strictObject({ entries: z.array(id).min(1).max(5000), to: entryStatus }),
    z.strictObject({ changed: z.int() }),
  ),
  'entry.remove': procedure(
    'write',
    'Takes works out of a show; they stay in the catalogue.',
    z.strictObject({ entries: z.array(id).min(1).max(5000) }),
    z.strictObject({ removed: z.int() }),
  ),
} as const
