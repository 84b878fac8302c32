/** An object on a plinth before the wall: where the plinth stands, when it tips, what the floor carries. No hole. */
import * as z from 'zod'
import { bare } from './measures.ts'
import type { PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import {
  corners,
  standingAnswer,
  standingDrawing,
  standingFields,
  standingSection,
  standingShape,
} from './standing-answer.ts'

const data = z.strictObject(standingShape)

export const plinth = defineMethod({
  key: 'plinth',
  name: 'Plinth',
  does: 'The object stands on a plinth on the floor; nothing is fixed to the wall.',
  schema: data,
  fixings: [],
  keepers: [],
  minutes: [20, 40],
  accuracy: '±5 mm where it stands; level by wedges',
  adjust: ['Level: wedges under the plinth.', 'Place: lift the object off first, then move the plinth.'],
  comesDown: [
    'Free the object from wax, pins or mount; two people lift it off before the plinth is touched.',
    'Take the ballast out, then move the plinth empty.',
  ],
  section: (raw, work) => standingSection(raw, work, null),
  fields: standingFields('plinth'),
  draw: standingDrawing,
  answer: (back, question) => {
    const { work } = question
    const answer = standingAnswer({ back, question, above: [], top: back.base.height + work.height })
    return {
      ...bare,
      bearings: corners(back, work),
      carriers: [],
      figures: answer.figures,
      findings: [...answer.findings, ...overhang(back.base.width, work.width)],
      needs: [
        { what: 'wedges', count: 4, per: 'work' },
        { what: 'wax or mount fixings', count: 1, per: 'work' },
        ...(typeof back.ballast === 'number' ? [{ what: 'ballast, in bags', count: 1, per: 'work' as const }] : []),
      ],
      cautions: [
        'A plinth stands still on its floor before the object goes on: push it, wedge it, anchor it where people press by.',
        'Never move a plinth with its object on it.',
        'Floor loads are the building’s to say: ask its engineer above what its papers allow.',
      ],
    }
  },
})

function overhang(base: number, width: number): readonly PlainFinding[] {
  if (width <= base) return []
  return [
    {
      severity: 'settle',
      code: 'overhangs',
      text: 'The object is wider than its plinth: it stands over at the sides, where people brush by.',
      figures: { base, width },
    },
  ]
}
