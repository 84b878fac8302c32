/** The sequence: whether a show fits its walls, and proposals of what hangs where. */
import * as z from 'zod'
import { sectionHangs, stackAligns } from '../../sequence/section-hang.ts'
import { procedure } from '../procedure.ts'
import { id, millimetres } from '../shared.ts'
import { hangFaces, termValues, termWeights, wallExplained, workExplained } from './sequence-explain.ts'
import { heightRule, placementRule, viewer } from './walls.ts'

/** One wall of the visitor's way, as small as it is drawn beside the others. */
export const sequenceWall = z.strictObject({
  face: id,
  room: z.string(),
  name: z.string(),
  length: z.number(),
  height: z.number(),
  /** What is proposed for it hangs by these; the line and the ramp that it follows are above the floor at x = 0. */
  rule: heightRule,
  centreLine: z.number(),
  eyeFraction: z.number(),
  ramp: z.array(z.tuple([z.number(), z.number()])),
  openings: z.array(z.strictObject({ x: z.number(), y: z.number(), width: z.number(), height: z.number() })),
  works: z.array(
    z.strictObject({
      entry: id,
      x: z.number(),
      /** Of its centre, above the floor. */
      y: z.number(),
      /** Held, hung or drilled: no proposal moves it. */
      stays: z.boolean(),
      /** The rule it hangs by and its own height, as a change must name them. */
      rule: placementRule,
      own: z.number().nullable(),
    }),
  ),
})

/** A centre line, whom it serves, and the share of those whom it serves least. mm above the floor, shares 0 to 1. */
const lineServes = z.strictObject({
  y: z.number(),
  least: z.number(),
  served: z.array(viewer),
})

export const sequenceArea = {
  'sequence.walls': procedure(
    'read',
    'Gives the walls of a show in the visitor’s order, then others that works hang on, each with what hangs there.',
    z.strictObject({ exhibition: id }),
    z.strictObject({
      walls: z.array(sequenceWall),
      /** False where nobody has said the order: then all walls stand here, room by room. */
      ordered: z.boolean(),
    }),
  ),
  'sequence.take': procedure(
    'write',
    'Hangs walls as proposals have them, all as one edit: on each of them stands what is given and what stays; other works of theirs come off the wall, unless they are let stay. Works that are held, hung or drilled are refused.',
    z.strictObject({
      exhibition: id,
      faces: z
        .array(
          z.strictObject({
            face: id,
            /** What becomes of other works that hang there and could be moved; they come off where left out. */
            others: z.enum(['off', 'stay']).optional(),
            works: z
              .array(
                z.strictObject({
                  entry: id,
                  x: millimetres,
                  /** Height of its middle above the floor, of a work in a stack or grid or on a base; others follow their wall. */
                  y: millimetres.nullable().optional(),
                  /** The wall where it stood when the proposal was asked for; null for none. Another one now is refused. */
                  was: id.nullable(),
                }),
              )
              .max(2000),
          }),
        )
        .min(1)
        .max(2000),
    }),
    z.strictObject({ placed: z.int(), off: z.int() }),
  ),
  'sequence.sections': procedure(
    'read',
    'Gives how the works of each section hang, in one row, in stacks or in grids, and how they would be formed into these.',
    z.strictObject({ exhibition: id }),
    z.strictObject({
      sections: z.array(
        z.strictObject({
          section: id,
          title: z.string(),
          works: z.int(),
          hang: z.enum(sectionHangs),
          rows: z.int(),
          columns: z.int(),
          align: z.enum(stackAligns),
          gapDown: z.number(),
          gapAcross: z.number(),
          alike: z.number(),
          /** Its own; null where the house’s holds, which stand beside. */
          lowest: z.number().nullable(),
          highest: z.number().nullable(),
          house: z.strictObject({ lowest: z.number(), highest: z.number() }),
          /** Stacks and grids, with their outer size; what hangs by itself is not among them. */
          units: z.array(z.strictObject({ works: z.array(id), width: z.number(), height: z.number() })),
          /** Running length that it wants so, and in one row. */
          wants: z.number(),
          inRow: z.number(),
          /** Works of its stacks and grids, as they hang, whose edges are outside the heights. */
          outside: z.array(z.strictObject({ entry: id, edge: z.enum(['low', 'high']), at: z.number() })),
        }),
      ),
    }),
  ),
  'sequence.capacity': procedure(
    'read',
    'Tells whether the works of a show that are still to be placed fit its walls, section by section, in running millimetres.',
    z.strictObject({ exhibition: id }),
    z.strictObject({
      /** On the walls, their ends and what is in the way taken off; and what the works want with what stays free. */
      there: z.number(),
      needed: z.number(),
      short: z.number(),
      /** Free at least between two works, for hands or for a label. */
      gap: z.number(),
      labels: z.int(),
      /** Works that hang in stacks and grids, each of which is counted once, with the columns of labels beside it. */
      stacked: z.int(),
      panels: z.int(),
      stretches: z.int(),
      sections: z.array(
        z.strictObject({
          section: id.nullable(),
          title: z.string(),
          works: z.int(),
          unsized: z.int(),
          needed: z.number(),
          from: z.number(),
          short: z.number(),
        }),
      ),
      /** Wider than every free stretch. */
      tooWide: z.array(z.strictObject({ entry: id, title: z.string(), width: z.number() })),
      /** In one sentence. */
      says: z.string(),
    }),
  ),
  'sequence.propose': procedure(
    'long',
    'Proposes which works hang on which wall, in which order and where; two or three ways, each with its terms and the bound. Nothing is changed. Works that are held, hung or drilled stay.',
    z.strictObject({
      exhibition: id,
      /** The same seed and steps give the same proposals. */
      seed: z.int().min(0).max(1e9).optional(),
      steps: z.int().min(0).max(2_000_000).optional(),
      weights: termWeights.optional(),
    }),
    z.strictObject({
      works: z.int(),
      stays: z.int(),
      stretches: z.int(),
      /** Not planned with: nobody has said how large they are. */
      unsized: z.array(id),
      /** No hang that leaves out no more works than the best of these does is better than this. */
      bound: z.strictObject({ quality: z.number(), terms: termValues }),
      /** What hangs now by the same terms, where it really stands; null for nothing. */
      today: z.strictObject({ quality: z.number(), terms: termValues, works: z.int() }).nullable(),
      proposals: z.array(
        z.strictObject({
          way: z.enum(['in order', 'freer', 'another']),
          quality: z.number(),
          /** 100 × (bound − quality). */
          gap: z.number(),
          proved: z.boolean(),
          terms: termValues,
          faces: hangFaces,
          /** Walls that hang by their centre: whom their line serves with these works, and the line that serves best. */
          lines: z.array(z.strictObject({ face: id, now: lineServes, best: lineServes })),
          /** What becomes of each rule in force where it is taken whole. */
          keeps: z.array(
            z.strictObject({ rule: z.string(), says: z.string(), state: z.enum(['held', 'broken', 'open']) }),
          ),
          /** Works that found no place. */
          out: z.array(id),
          /** The fewest works without which all others are met in the order of the checklist, as rules want it. */
          outOfOrder: z.array(id),
        }),
      ),
    }),
  ),
  'sequence.explain': procedure(
    'long',
    'Explains a hang: of a work why it hangs there and what its next best place would cost, of a wall what it loses and what would help. Nothing is changed.',
    z.strictObject({
      exhibition: id,
      /** The hang, as a proposal gives it; what hangs today where left out. */
      faces: hangFaces.max(2000).optional(),
      weights: termWeights.optional(),
      of: z.union([z.strictObject({ entry: id }), z.strictObject({ face: id })]),
    }),
    z.strictObject({
      quality: z.number(),
      /** Works that are hung in it, those that stay not counted. */
      works: z.int(),
      work: workExplained.nullable(),
      wall: wallExplained.nullable(),
    }),
  ),
}
