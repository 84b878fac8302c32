/**
 * Plans from drawings of others. What is read is a proposal: a person says which layers are walls and in which unit,
 * sees the outlines found, and takes some of them as rooms in one edit; reading writes nothing.
 */
import * as z from 'zod'
import { drawingUnits } from '../../plan/drawing-units.ts'
import { procedure } from '../procedure.ts'
import { handle, id, name, size } from '../shared.ts'
import { wallType } from './rooms.ts'

const point = z.tuple([z.number(), z.number()])
const unit = z.enum(drawingUnits)

const asked = {
  handle,
  /** Left out, the drawing's own, if it says one. */
  unit: unit.optional(),
  /** Layers whose lines are walls; left out, those that are called so. */
  layers: z.array(z.string().max(255)).max(1000).optional(),
  /** Ends closer than this are one point, mm. */
  join: z.number().gt(0).max(100).optional(),
  /** The thickest wall, mm: what is narrower is no room. */
  thickest: z.number().min(20).max(3000).optional(),
  /** The widest opening that lines are carried on over, mm; 0 for none. */
  widest: z.number().min(0).max(10_000).optional(),
} as const

export const foundOutline = z.strictObject({
  /** Its name in this reading. */
  key: z.string(),
  /** From the words within; '' where none is a name. */
  name: z.string(),
  number: z.string(),
  area: z.number().meta({ description: 'square metres' }),
  /** It lies about others: a border of the sheet, or the ground about the house. */
  about: z.boolean(),
  /** More walls than a room can have, or a measure no room has: it can’t be taken. */
  refused: z.string(),
  walls: z.array(
    z.strictObject({
      from: point,
      to: point,
      length: z.number(),
      angle: z.number(),
      thickness: z.number().nullable(),
      openings: z.array(z.strictObject({ x: z.number(), width: z.number() })),
    }),
  ),
})
export type FoundOutlineRow = z.output<typeof foundOutline>

export const drawingArea = {
  'drawing.read': procedure(
    'long',
    'Reads a DXF as a proposal: its layers, its unit, the outlines that the lines of walls enclose. Writes nothing.',
    z.strictObject(asked),
    z.strictObject({
      name: z.string(),
      version: z.string(),
      /** What the drawing says of its unit; null where it says nothing. */
      statedUnit: unit.nullable(),
      /** What was taken; null where a person must say it. */
      unit: unit.nullable(),
      /** How large the whole would be in each unit, mm; what would make a house first. */
      sizes: z.array(z.strictObject({ unit, width: z.number(), height: z.number(), house: z.boolean() })),
      layers: z.array(
        z.strictObject({
          name: z.string(),
          lines: z.int(),
          /** Millimetres; null while the unit is not known. */
          length: z.number().nullable(),
          words: z.int(),
          off: z.boolean(),
          chosen: z.boolean(),
        }),
      ),
      /** Where outlines and lines are: millimetres, or the drawing's units while theirs is not known; y down the page. */
      box: z.tuple([z.number(), z.number(), z.number(), z.number()]),
      /** x1, y1, x2, y2 of the longest lines of each layer that has some, by the layer's place in the list. */
      lines: z.array(z.strictObject({ layer: z.int(), ends: z.array(z.number()) })),
      /** Shorter lines that are not among them. */
      notDrawn: z.int(),
      outlines: z.array(foundOutline),
      /** What a person must say next: the unit, which layers, or fewer of them; '' where nothing. */
      ask: z.enum(['unit', 'layers', 'fewer layers', '']),
      remarks: z.array(z.string()),
    }),
  ),
  'drawing.take': procedure(
    'long',
    'Takes outlines found in a DXF as rooms, as one edit: lengths, angles and places as drawn, walls and doors shared.',
    z.strictObject({
      ...asked,
      rooms: z
        .array(z.strictObject({ outline: z.string().max(20), name, number: z.string().max(20).optional() }))
        .min(1)
        .max(500),
      /** Of the walls: a plan does not say it. */
      height: size,
      wallType: wallType.optional(),
      storey: z.string().trim().max(60).optional(),
      /** Gaps in the walls become openings of this kind and height; left out, they are closed. */
      openings: z.strictObject({ kind: z.enum(['door', 'passage']), height: size }).optional(),
    }),
    z.strictObject({
      rooms: z.array(z.strictObject({ id, name: z.string() })),
      openings: z.int(),
      /** Of them, two are one hole each: they lead from room to room. */
      doorways: z.int(),
    }),
  ),
} as const
