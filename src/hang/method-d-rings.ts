/**
 * D-rings on hooks, nails or screws: two drops to the inside top of the rings, held as they will hang, and where the
 * rings are. The rings fix the work sideways too, so spacing counts to the millimetre.
 */
import * as z from 'zod'
import { numberAt } from './back.ts'
import { pairFields, ringScrewField, spacingField } from './back-fields.ts'
import { pairDrawing } from './drawing-pieces.ts'
import { bare, carries, measured, pairOn, pairShape, spacingFinding, unevenFinding } from './measures.ts'
import type { HangQuestion, PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { ringSection, STAND_OFF } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'

const data = z.strictObject({
  ...pairShape,
  /** Length of the screws that hold the rings on the frame. */
  ringScrew: measured.nullable().optional(),
  diagonals,
})

export const dRings = defineMethod({
  key: 'd-rings',
  name: 'D-rings',
  does: 'Two rings screwed to the frame hang on two hooks, nails or screws.',
  schema: data,
  fixings: ['hook', 'screw', 'nail'],
  keepers: [],
  minutes: [15, 20],
  accuracy: '±1 mm between the marks on screws, ±1.5 mm level',
  adjust: [
    'Height: bend the hook a little, pack the screw with tape, or turn it.',
    'Sideways: almost nothing; a wrong spacing is drilled again.',
  ],
  comesDown: [
    'Two people: one lifts, one looks behind and frees the rings.',
    'Draw the fixings, fill the holes; the rings stay on the work unless the lender wants his own back.',
  ],
  section: (raw, work, fixing) => ringSection(numberAt(raw, ['left', 'drop']) ?? work.height / 3, work, fixing),
  fields: [
    ...pairFields('ring', 'From the top edge down to the inside top of the ring, pulled up as it will hang.'),
    spacingField('ring'),
    ringScrewField,
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const { left, right, dimensions } = pairDrawing(raw, work, [], work.height / 3)
    return { rings: [left, right], lines: [], blocks: [], dimensions }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing } = question
    const pair = pairOn(back, work)
    return {
      ...bare,
      bearings: [carries('left', pair.left, back.left.drop), carries('right', pair.right, back.right.drop)],
      spacing: pair.measured,
      spacingFromInsets: pair.fromInsets,
      carriers: [pair.left, pair.right],
      figures: pullOutFigure(question, Math.min(back.left.drop, back.right.drop), STAND_OFF),
      findings: [
        ...spacingFinding(pair, rules.measureTolerance, say),
        ...unevenFinding(back.left.drop, back.right.drop, rules.dropTolerance, say),
        ...ringScrewFinding(back.ringScrew ?? null, question),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        { what: fixing.name, count: 2, per: 'wall' },
        { what: 'bottom pad', count: 2, per: 'work' },
      ],
      cautions: [
        ...(pair.centred ? ['The rings are taken to be centred: no inset was measured.'] : []),
        'Measure the drop to the inside top of the ring, not to its screw.',
        'Somebody must look behind while a large frame is lowered: two people.',
      ],
    }
  },
})

/** A ring's screw as long as the frame is deep comes out at its face, or meets the glass. Only from measured figures. */
export function ringScrewFinding(
  screw: number | null,
  { work, say }: Pick<HangQuestion, 'work' | 'say'>,
): readonly PlainFinding[] {
  const depth = work.depth ?? null
  if (screw === null || depth === null || screw < depth) return []
  return [
    {
      severity: 'stop',
      code: 'ring-screw-too-long',
      text: `The rings' screws are ${say(screw)} long and the frame is ${say(depth)} deep: they would come through. Take shorter ones.`,
      figures: { screw, depth },
    },
  ]
}
