/** An object in a case: a base with a bonnet over it. Besides what a plinth says, whether the object fits inside. */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { numberAt } from './back.ts'
import { measureField } from './back-fields.ts'
import { bare, measured } from './measures.ts'
import type { BackField, HangQuestion, PlainFigure, PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import {
  corners,
  standingAnswer,
  standingDrawing,
  standingFields,
  standingSection,
  standingShape,
} from './standing-answer.ts'

const data = z.strictObject({
  ...standingShape,
  /** Inside measures. */
  bonnet: z.strictObject({
    height: measured,
    width: measured,
    depth: measured,
    mass: z.number().gt(0).max(1e5).nullable().optional(),
  }),
})

type Data = z.output<typeof data>

/** Free all round inside, so that hands and bonnet clear the object. From memory; a house rule. */
const LEAST_CLEAR = 50

export const showcase = defineMethod({
  key: 'case',
  name: 'Case',
  does: 'The object stands in a case: a base on the floor with a bonnet over it.',
  schema: data,
  fixings: [],
  keepers: [],
  minutes: [45, 90],
  accuracy: '±5 mm where it stands; level by its feet',
  adjust: ['Level: feet or wedges under the base.', 'Inside: only with the bonnet off.'],
  comesDown: [
    'Unscrew the bonnet; two people lift it straight up, clear of the object, and set it down on felt.',
    'Free the object from its mount, lift it out.',
    'Take the ballast out, then move the base empty.',
  ],
  section: (raw, work) => standingSection(raw, work, numberAt(raw, ['bonnet', 'height']) ?? work.height * 1.3),
  fields: [
    ...standingFields('case’s base'),
    ...(['height', 'width', 'depth'] as const).map(side => inside(side)),
    measureField(['bonnet', 'mass'], 'Weight of the bonnet', 'Two people or more lift it straight up.', {
      kind: 'mass',
    }),
  ],
  draw: standingDrawing,
  answer: (back, question) => {
    const { work, sayKg } = question
    const free = clearances(back, question)
    const { height, mass } = back.bonnet
    const answer = standingAnswer({
      back,
      question,
      // Most of an open-bottomed bonnet is its sides: its mass lies about the middle of its height.
      above: [{ mass: mass ?? null, up: back.base.height + height / 2, name: 'the bonnet' }],
      top: back.base.height + height,
    })
    return {
      ...bare,
      bearings: corners(back, work),
      carriers: [],
      figures: [...free.figures, ...answer.figures],
      findings: [...free.findings, ...answer.findings],
      needs: [
        { what: 'bonnet screw', count: 4, per: 'work' },
        { what: 'wedges or feet', count: 4, per: 'work' },
        { what: 'mount fixings', count: 1, per: 'work' },
      ],
      cautions: [
        ...(typeof mass === 'number' ? [`The bonnet weighs ${sayKg(mass)}: count the hands before it is lifted.`] : []),
        'Lift a bonnet straight up, clear of the object, and look from two sides while it rises.',
        'What is in the case stays in its air: no fresh paint, no untested wood or felt.',
        'Floor loads are the building’s to say: ask its engineer above what its papers allow.',
      ],
    }
  },
})

function inside(side: 'height' | 'width' | 'depth'): BackField {
  return measureField(['bonnet', side], `Inside ${side} of the bonnet`, 'Free inside, from face to face.', {
    required: true,
  })
}

/** Free room round the object. Refuses a bonnet that it does not fit into, naming the side. */
function clearances(
  back: Data,
  { work, say }: HangQuestion,
): { readonly figures: readonly PlainFigure[]; readonly findings: readonly PlainFinding[] } {
  const sides = [
    { side: 'height', object: work.height, inside: back.bonnet.height, both: false },
    { side: 'width', object: work.width, inside: back.bonnet.width, both: true },
    ...(typeof work.depth === 'number'
      ? [{ side: 'depth', object: work.depth, inside: back.bonnet.depth, both: true }]
      : []),
  ]
  for (const one of sides) {
    if (one.inside > one.object) continue
    throw new Refusal(
      'bonnet-too-small',
      `The object's ${one.side} of ${say(one.object)} does not go into ${say(one.inside)}. Measure both again, or take a larger bonnet.`,
      { field: `back.data.bonnet.${one.side}`, details: { object: one.object, inside: one.inside } },
    )
  }
  const free = sides.map(one => ({ ...one, free: (one.inside - one.object) / (one.both ? 2 : 1) }))
  return {
    figures: free.map(one => ({
      key: `free-${one.side}`,
      label:
        one.side === 'height'
          ? 'Free above the object'
          : one.side === 'width'
            ? 'Free at each side'
            : 'Free before and behind',
      value: one.free,
      unit: 'mm',
      working: one.both ? `(${say(one.inside)} − ${say(one.object)}) / 2` : `${say(one.inside)} − ${say(one.object)}`,
    })),
    findings: free
      .filter(one => one.free < LEAST_CLEAR)
      .map(one => ({
        severity: 'settle',
        code: 'bonnet-tight',
        text: `There are ${say(one.free)} free in its ${one.side}; the house rule is ${say(LEAST_CLEAR)}.`,
        figures: { side: one.side, free: one.free, least: LEAST_CLEAR },
      })),
  }
}
