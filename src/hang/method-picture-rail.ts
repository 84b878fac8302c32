/**
 * A picture rail: cables, rods or chain hang from hooks over the rail and hold the work by its rings. Rails are rarely
 * level, so each hanger has its own length from the rail's height over its own ring. Nothing is drilled.
 */
import * as z from 'zod'
import type { Point } from '../geometry/rect.ts'
import { choiceField, measureField, pairFields, spacingField } from './back-fields.ts'
import { pairDrawing } from './drawing-pieces.ts'
import {
  bare,
  type HangerPair,
  measured,
  measuredOrZero,
  pairOn,
  pairShape,
  spacingFinding,
  unevenFinding,
} from './measures.ts'
import type { Bearing, Hanger, HangQuestion, PlainStep } from './method.ts'
import { defineMethod } from './method.ts'
import { railFigures, railFindings } from './rail-answers.ts'
import { railSection } from './rail-section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'
import { heightAlong } from './wall.ts'

const data = z.strictObject({
  ...pairShape,
  /** Two upright hangers, two that meet at one hook, or one cord through both rings over two hooks. */
  way: z.enum(['upright', 'one-point', 'loop']),
  by: z.discriminatedUnion('with', [
    z.strictObject({ with: z.literal('cable'), hook: measuredOrZero.nullable().optional() }),
    z.strictObject({ with: z.literal('rod'), hook: measuredOrZero.nullable().optional() }),
    z.strictObject({
      with: z.literal('chain'),
      hook: measuredOrZero.nullable().optional(),
      pitch: measured,
      adjuster: z.enum(['both', 'longer']),
      reach: measured.nullable().optional(),
    }),
  ]),
  /** From the wall to the hanger at the rail. */
  off: measuredOrZero.nullable().optional(),
  diagonals,
})

export type RailBack = z.output<typeof data>

export const pictureRail = defineMethod({
  key: 'picture-rail',
  name: 'Picture rail',
  does: 'Cables, rods or chain hang from hooks over a rail and hold the work by its rings.',
  schema: data,
  fixings: ['rail-hook'],
  keepers: [],
  minutes: [10, 20],
  accuracy: '±5 mm',
  adjust: ['Height: the adjusters, or another link.', 'Sideways: slide the hooks along the rail.'],
  comesDown: [
    'Two people: hold the work, take its weight, free the rings one after the other.',
    'Take hooks and hangers off the rail, tie each pair together with the work’s number.',
  ],
  section: (raw, work, fixing) => railSection(raw, work, fixing),
  fields: [
    ...pairFields('ring', 'From the top edge down to the inside top of the ring, pulled up as it will hang.'),
    spacingField('ring'),
    choiceField(['way'], 'The hangers go', 'Upright ones keep the work level and still.', [
      { value: 'upright', label: 'straight up from each ring' },
      { value: 'one-point', label: 'to one hook' },
      { value: 'loop', label: 'as one cord through both rings, over two hooks' },
    ]),
    choiceField(['by', 'with'], 'It hangs by', 'Cord stretches: take cable, rod or chain where height matters.', [
      { value: 'cable', label: 'cable' },
      { value: 'rod', label: 'rod' },
      { value: 'chain', label: 'chain' },
    ]),
    measureField(['by', 'hook'], 'Depth of the rail hook', 'From the rail’s edge down to where the hanger begins.'),
    measureField(['by', 'pitch'], 'Pitch of the chain', 'From one link to the next: measure ten and divide.', {
      required: true,
    }),
    choiceField(['by', 'adjuster'], 'The adjuster', 'What it can do with the part of a link that is left over.', [
      { value: 'both', label: 'lengthens and shortens' },
      { value: 'longer', label: 'only lengthens' },
    ]),
    measureField(['by', 'reach'], 'Reach of the adjuster', 'The most that it takes up.'),
    measureField(['off'], 'Rail off the wall', 'From the wall to the hanger, at the rail.'),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const { left, right, dimensions } = pairDrawing(raw, work, [], work.height / 5)
    return {
      rings: [left, right],
      lines: [left, right].map(ring => ({ kind: 'wire' as const, points: [{ x: ring.x, y: 0 }, ring] })),
      blocks: [],
      dimensions,
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing } = question
    const pair = pairOn(back, work)
    const hooks = hooksOf(back, pair, question)
    const hangers = hangersOf(back, pair, question)
    const one = back.way === 'one-point'
    return {
      ...bare,
      bearings: [onRail('left', pair.left, back.left.drop), onRail('right', pair.right, back.right.drop)],
      spacing: pair.measured,
      spacingFromInsets: pair.fromInsets,
      carriers: hooks,
      sharing: back.way === 'loop' ? 'even' : 'moments',
      steps: stepsOf(back, hangers, question),
      figures: hangers.length === 0 ? [] : railFigures(back, pair, hangers, question),
      hangers,
      findings: [
        ...railFindings(back, pair, hangers, question),
        ...spacingFinding(pair, rules.measureTolerance, say),
        ...unevenFinding(back.left.drop, back.right.drop, rules.dropTolerance, say),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        { what: fixing.name, count: one ? 1 : 2, per: 'wall' },
        {
          what: back.way === 'loop' ? 'cord for a loop' : back.by.with,
          count: back.way === 'loop' ? 1 : 2,
          per: 'wall',
        },
        ...(back.way === 'loop' ? [] : [{ what: 'adjuster', count: 2, per: 'wall' as const }]),
        { what: 'bottom pad', count: 2, per: 'work' },
      ],
      cautions: [
        ...(one ? ['ONE HOOK on the rail carries everything: nothing holds this work if it comes off.'] : []),
        ...(back.way === 'loop'
          ? ['A loop slides through its rings until it is held: tie it off when the work is level.']
          : []),
        'Read the rail’s height over each ring: a rail is rarely level.',
        'Rings high and pads at the bottom corners keep it from leaning; cord stretches in its first days.',
        'Hooks can jump off a rail when the building shakes or somebody pushes the work up.',
      ],
    }
  },
})

function onRail(side: 'left' | 'right', fromLeft: number, drop: number): Bearing {
  return { side, does: 'carries', name: null, on: 'rail', fromLeft, drop, from: 'top' }
}

/** x of the rail hooks from the work's left edge. One hook stands over the mass, so that the work hangs level. */
function hooksOf(back: RailBack, pair: HangerPair, { work }: HangQuestion): readonly number[] {
  if (back.way !== 'one-point') return [pair.left, pair.right]
  return [work.massFromLeft ?? (pair.left + pair.right) / 2]
}

/** From rail hook to ring on the wall, exact; none where the rail's height is not known. */
function hangersOf(back: RailBack, pair: HangerPair, question: HangQuestion): readonly Hanger[] {
  const { work, centre, wall } = question
  const xl = centre.x - work.width / 2
  const top = centre.y + work.height / 2
  const [oneHook] = hooksOf(back, pair, question)
  return (['left', 'right'] as const).flatMap(side => {
    const ring: Point = { x: xl + pair[side], y: top - back[side].drop }
    const x = back.way === 'one-point' && oneHook !== undefined ? xl + oneHook : ring.x
    const rail = heightAlong(wall.rail, x)
    if (rail === null) return []
    const from = { x, y: rail - (back.by.hook ?? 0) }
    return [{ from, to: ring, length: Math.hypot(from.x - ring.x, from.y - ring.y) }]
  })
}

/** Upright hangers as a sum on paper: rail less hook less ring. */
function stepsOf(back: RailBack, hangers: readonly Hanger[], { say }: HangQuestion): readonly PlainStep[] {
  if (back.way === 'one-point') return []
  const hook = back.by.hook ?? 0
  return hangers.map((hanger, index) => ({
    key: `hanger-${index === 0 ? 'left' : 'right'}`,
    label: `${index === 0 ? 'left' : 'right'} ${back.by.with}: rail less ring${hook > 0 ? ` less ${say(hook)} of hook` : ''}`,
    terms: [
      { op: '+', mm: hanger.from.y + hook },
      { op: '−', mm: hanger.to.y },
      ...(hook > 0 ? [{ op: '−' as const, mm: hook }] : []),
    ],
    value: hanger.length,
  }))
}
