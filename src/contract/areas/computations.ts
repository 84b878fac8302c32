/** Pure computations that can be asked without a catalogue: measures, marks, the wire, rows, stacks and grids. */
import * as z from 'zod'
import { marksAnswer, marksQuestion, wireAnswer, wireQuestion } from '../../hang/marks-shape.ts'
import { nearestQuestion, offers } from '../../hang/nearest-shape.ts'
import { labelsAnswer, labelsQuestion } from '../../layout/labels-shape.ts'
import {
  gridAnswer,
  gridQuestion,
  rowAnswer,
  rowQuestion,
  stackAnswer,
  stackQuestion,
} from '../../layout/layout-shape.ts'
import { salonAnswer, salonQuestion } from '../../layout/salon-shape.ts'
import { setAnswer, setQuestion } from '../../layout/set-shape.ts'
import { procedure } from '../procedure.ts'
import { sizePart } from './works-shape.ts'

const unit = z.enum(['mm', 'cm', 'm', 'in', 'ft'])
const language = z.enum(['en', 'fr', 'de'])
const part = z.enum([...sizePart.options, 'unnamed'])
const sizes = {
  height: z.number().optional(),
  width: z.number().optional(),
  depth: z.number().optional(),
  diameter: z.number().optional(),
} as const
const remark = z.strictObject({ code: z.string(), text: z.string() })

/** What a dimension statement says once it is read; the form of `Statement` in src/measure. */
export const statement = z.strictObject({
  parts: z
    .array(
      z.strictObject({
        part,
        label: z.string(),
        count: z.number(),
        unit: unit.nullable(),
        unitStated: z.boolean(),
        approximate: z.boolean(),
        raw: z.string(),
        warnings: z.array(remark).readonly(),
        notes: z.array(z.string()).readonly(),
        ...sizes,
      }),
    )
    .readonly(),
  mass: z.strictObject({ kg: z.number(), raw: z.string(), approximate: z.boolean() }).optional(),
  questions: z
    .array(
      z.strictObject({
        code: z.string(),
        text: z.string(),
        piece: z.string(),
        index: z.int().optional(),
        options: z
          .array(
            z.strictObject({
              label: z.string(),
              values: z.strictObject(sizes).optional(),
              unit: unit.optional(),
              part: part.optional(),
              count: z.number().optional(),
              kg: z.number().optional(),
              text: z.string().optional(),
            }),
          )
          .readonly(),
      }),
    )
    .readonly(),
  warnings: z.array(remark).readonly(),
  hanging: z.strictObject({ index: z.int(), part, caution: z.string().optional() }).nullable(),
})

export const computationsArea = {
  'measure.length': procedure(
    'pure',
    'Reads one length as typed and writes it out in millimetres and inches.',
    z.strictObject({ text: z.string().max(200), defaultUnit: unit.optional() }),
    z.strictObject({
      mm: z.number(),
      unit,
      inferred: z.boolean(),
      written: z.strictObject({ mm: z.string(), in: z.string() }),
    }),
  ),
  'measure.dimensions': procedure(
    'pure',
    'Reads a dimension statement: parts with their sizes, a mass, warnings, and a question for what it does not say.',
    z.strictObject({
      text: z.string().max(20_000),
      defaultUnit: unit.optional(),
      language: language.optional(),
      imageAspect: z.number().gt(0).max(1000).optional(),
      neighboursUnit: unit.optional(),
    }),
    statement,
  ),
  'hang.marks': procedure(
    'pure',
    'Turns the back of a work and its place on a wall into bearing points, holes, working, loads and findings.',
    marksQuestion,
    marksAnswer,
  ),
  'hang.nearest': procedure(
    'pure',
    'Offers the nearest move along the wall, or of the hooks, that clears every mark of a work, with its cost.',
    nearestQuestion,
    offers,
  ),
  'hang.withdrawal': procedure(
    'pure',
    'Computes what it takes to draw a plain nail straight out of wood. Information, not a rating.',
    z.strictObject({
      gravity: z.number().min(0.2).max(1.2),
      diameter: z.number().gt(0).max(20),
      into: z.number().gt(0).max(500),
    }),
    z.strictObject({
      allowableN: z.number(),
      allowableKg: z.number(),
      ultimateN: z.number(),
      ultimateKg: z.number(),
      says: z.string(),
    }),
  ),
  'hang.wire': procedure(
    'pure',
    'Solves a wire: drop, rise, angle, tension, pull on the rings, load on each hook.',
    wireQuestion,
    wireAnswer,
  ),
  'layout.row': procedure(
    'pure',
    'Lays works in a row by a rule, or says by how much they do not fit.',
    rowQuestion,
    rowAnswer,
  ),
  'layout.stack': procedure(
    'pure',
    'Lays works in a stack about a height, or from a common top or bottom, with running dimensions.',
    stackQuestion,
    stackAnswer,
  ),
  'layout.grid': procedure(
    'pure',
    'Lays a grid about a point, with running dimensions in both units.',
    gridQuestion,
    gridAnswer,
  ),
  'layout.salon': procedure(
    'pure',
    'Lays a salon hang: works close together about a point, no two nearer than one distance; held works stay.',
    salonQuestion,
    salonAnswer,
  ),
  'layout.set': procedure(
    'pure',
    'Lays the parts of a set as one object: its size, each part’s place from its left and top edge, gaps and centres.',
    setQuestion,
    setAnswer,
  ),
  'layout.labels': procedure(
    'pure',
    'Lays the labels of a wall: size from their words, place by their works, and what is in their way.',
    labelsQuestion,
    labelsAnswer,
  ),
} as const
