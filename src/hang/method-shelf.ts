/**
 * A shelf on two brackets with the object on it. The shelf's depth turns weight into a moment, and the moment pulls the
 * upper screws straight out of the wall: that, not the weight, is what fails.
 */
import * as z from 'zod'
import { numberAt } from './back.ts'
import { measureField } from './back-fields.ts'
import { measure } from './drawing-pieces.ts'
import { sharesByMoments } from './loads.ts'
import { bare, carries, keeps, measured, measuredOrZero, placePair, spacingFinding } from './measures.ts'
import type { Fixing, HangQuestion, PlainFigure, PlainFinding, SectionDrawing } from './method.ts'
import { defineMethod } from './method.ts'
import { newtons } from './physics.ts'
import { box, dimension, fixingInWall, type SectionWork, stroke } from './section.ts'
import { tippingAngle } from './standing.ts'

const side = z.strictObject({ inset: measuredOrZero.nullable().optional() })

const data = z.strictObject({
  width: measured,
  depth: measured,
  thickness: measured.nullable().optional(),
  mass: z.number().gt(0).max(1e5).nullable().optional(),
  /** From the shelf's ends to its brackets. */
  left: side.optional(),
  right: side.optional(),
  spacing: measured.nullable().optional(),
  /** From the top of the shelf down to the upper screw, and from there to the lower one. */
  screw: measured,
  apart: measured.nullable().optional(),
  /** From the wall to the back of the object. */
  off: measuredOrZero.nullable().optional(),
  /** From under the object up to its centre of mass. */
  massUp: measured.nullable().optional(),
})

type Data = z.output<typeof data>

/** Brackets a fifth of the length in from each end: usual, from memory. */
const USUAL_IN = 1 / 5

export const shelf = defineMethod({
  key: 'shelf',
  name: 'Shelf',
  does: 'The object stands on a shelf that two brackets hold on the wall.',
  schema: data,
  fixings: ['bracket', 'screw'],
  keepers: ['screw'],
  minutes: [40, 60],
  accuracy: '±1 mm level along and out from the wall',
  adjust: ['Level: shims behind a bracket or under the shelf.', 'The object: slide it along the shelf.'],
  comesDown: [
    'Free the object from wax or pins; lift it off before anybody touches the shelf.',
    'Take the shelf off its brackets, then the brackets off the wall; fill the holes.',
  ],
  section: (raw, work, fixing) => shelfSection(raw, work, fixing),
  fields: [
    measureField(['width'], 'Length of the shelf', 'Along the wall.', { required: true }),
    measureField(['depth'], 'Depth of the shelf', 'From the wall out to its front edge.', { required: true }),
    measureField(['thickness'], 'Thickness of the shelf', 'For the drawing.'),
    measureField(['mass'], 'Weight of the shelf', 'With its brackets.', { kind: 'mass' }),
    ...(['left', 'right'] as const).map(at =>
      measureField(
        [at, 'inset'],
        `Bracket from the ${at} end`,
        `From the ${at} end of the shelf to the bracket’s screws; a fifth of the length is taken.`,
      ),
    ),
    measureField(['spacing'], 'Between the brackets', 'From the screws of one bracket to those of the other.'),
    measureField(['screw'], 'Upper screw', 'From the top of the shelf down to the upper screw of a bracket.', {
      required: true,
    }),
    measureField(['apart'], 'Between the screws', 'From the upper screw of a bracket down to its lower one.'),
    measureField(['off'], 'Object from the wall', 'From the wall to the back of the object.'),
    measureField(['massUp'], 'Object’s centre of mass', 'From under the object up to where it balances.'),
  ],
  draw: (raw, work) => {
    const width = numberAt(raw, ['width']) ?? work.width * 1.1
    const [from, y] = [(work.width - width) / 2, work.height]
    const in_ = (at: 'left' | 'right') => numberAt(raw, [at, 'inset']) ?? width * USUAL_IN
    const screw = y + (numberAt(raw, ['screw']) ?? 30)
    const left = { x: from + in_('left'), y: screw }
    const right = { x: from + width - in_('right'), y: screw }
    return {
      rings: [left, right],
      lines: [
        {
          kind: 'shelf',
          points: [
            { x: from, y },
            { x: from + width, y },
          ],
        },
      ],
      blocks: [],
      dimensions: [
        measure(raw, ['width'], { x: from, y }, { x: from + width, y }),
        measure(raw, ['screw'], { x: left.x, y }, left),
        measure(raw, ['left', 'inset'], { x: from, y: screw }, left),
        measure(raw, ['right', 'inset'], right, { x: from + width, y: screw }),
        measure(raw, ['spacing'], left, right),
      ],
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing, keeper } = question
    const usual = back.left?.inset == null && back.right?.inset == null && back.spacing == null
    const inset = (given: number | null | undefined) => given ?? (usual ? back.width * USUAL_IN : null)
    const pair = placePair(
      back.width,
      inset(back.left?.inset),
      inset(back.right?.inset),
      back.spacing,
      'back.data.spacing',
    )
    const from = (work.width - back.width) / 2
    const [left, right] = [from + pair.left, from + pair.right]
    const drop = work.height + back.screw
    const apart = back.apart ?? null
    const load = carriedBy(back, question)
    return {
      ...bare,
      bearings: [
        { ...carries('left', left, drop), from: 'bottom' },
        { ...carries('right', right, drop), from: 'bottom' },
        ...(apart === null
          ? []
          : [
              keeps('left lower screw', 'left', left, -back.screw - apart, work.height),
              keeps('right lower screw', 'right', right, -back.screw - apart, work.height),
            ]),
      ],
      spacing: pair.measured,
      spacingFromInsets: pair.measured === null ? null : pair.fromInsets,
      carriers: [left, right],
      carried: load,
      figures: figuresOf(back, [left, right], load, question),
      findings: [...spacingFinding(pair, rules.measureTolerance, say), ...shelfFindings(back, question)],
      needs: [
        { what: fixing.name, count: 2, per: 'wall' },
        ...(apart === null
          ? []
          : [{ what: keeper?.name ?? 'lower screw for a bracket', count: 2, per: 'wall' as const }]),
        { what: 'shelf', count: 1, per: 'work' },
        { what: 'wax or mount fixings', count: 1, per: 'work' },
      ],
      cautions: [
        'A rated load in shear says nothing of pulling straight out: look for that figure on the packet, or screw into studs or backing.',
        'A shelf must not be reached by somebody who leans on it: then it carries a person.',
        'Fix the object on its shelf: wax, pins or a lip.',
      ],
    }
  },
})

/** Object and shelf together, and where their common mass lies from the work's left edge. */
function carriedBy(back: Data, { work }: HangQuestion) {
  if (typeof work.mass !== 'number') return { mass: null, massAt: work.width / 2 }
  const own = back.mass ?? 0
  const at = work.massFromLeft ?? work.width / 2
  return { mass: work.mass + own, massAt: (work.mass * at + (own * work.width) / 2) / (work.mass + own) }
}

/** `M = m g e` of object and shelf about the wall; the upper screws share it over the height between the screws. */
function figuresOf(
  back: Data,
  at: readonly number[],
  load: { readonly mass: number | null; readonly massAt: number },
  { work, say, sayKg }: HangQuestion,
): readonly PlainFigure[] {
  const found: PlainFigure[] = []
  const up = back.massUp ?? null
  const deep = work.depth ?? null
  if (up !== null && deep !== null) {
    found.push({
      key: 'tips-at',
      label: 'The object tips off when it leans',
      value: tippingAngle(deep, up),
      unit: '°',
      working: `atan(${say(deep / 2)} / ${say(up)})`,
    })
  }
  if (load.mass === null || typeof work.mass !== 'number') return found
  const out = deep === null ? back.depth / 2 : (back.off ?? 0) + deep / 2
  const moment = (newtons(work.mass) * out + (newtons(back.mass ?? 0) * back.depth) / 2) / 1000
  found.push({
    key: 'moment',
    label: 'Moment on the brackets, together',
    value: moment,
    unit: 'Nm',
    working: `${sayKg(work.mass)} × ${say(out)}${typeof back.mass === 'number' ? ` + ${sayKg(back.mass)} × ${say(back.depth / 2)}` : ''}`,
  })
  const apart = back.apart ?? null
  if (apart === null) return found
  const most = Math.max(...sharesByMoments(at, load.massAt))
  found.push({
    key: 'pull-out',
    label: 'An upper screw pulled straight out, at most',
    value: (moment * 1000 * most) / apart,
    unit: 'N',
    working: `${(most * 100).toFixed(0)} % of ${moment.toFixed(2)} Nm / ${say(apart)}`,
  })
  return found
}

function shelfFindings(back: Data, { work, say }: HangQuestion): readonly PlainFinding[] {
  const found: PlainFinding[] = []
  const reach = typeof work.depth === 'number' ? (back.off ?? 0) + work.depth : null
  if (reach !== null && reach > back.depth) {
    found.push({
      severity: 'stop',
      code: 'overhangs',
      text: `The object reaches ${say(reach)} out from the wall and the shelf ${say(back.depth)}: take a deeper shelf.`,
      figures: { reach, depth: back.depth },
    })
  }
  if (work.width > back.width) {
    found.push({
      severity: 'settle',
      code: 'overhangs',
      text: `The object is ${say(work.width)} wide and the shelf ${say(back.width)} long: it stands over at the ends.`,
      figures: { width: work.width, shelf: back.width },
    })
  }
  if (typeof back.mass !== 'number') {
    found.push({
      severity: 'settle',
      code: 'shelf-mass-unknown',
      text: 'Nobody has weighed the shelf: its own weight is left out of every load.',
      figures: {},
    })
  }
  if (back.apart === null || back.apart === undefined) {
    found.push({
      severity: 'settle',
      code: 'pull-out-unknown',
      text: 'Measure how far apart the screws of a bracket are: how hard the upper one is pulled out is not known.',
      figures: {},
    })
  }
  return found
}

/** Bracket and shelf from the side; y from the upper screw. */
function shelfSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const { parts, hole } = fixingInWall(fixing)
  const screw = numberAt(raw, ['screw'])
  const depth = numberAt(raw, ['depth'])
  const apart = numberAt(raw, ['apart'])
  const thickness = numberAt(raw, ['thickness']) ?? 18
  const off = numberAt(raw, ['off']) ?? 0
  const [top, deep, down] = [screw ?? 30, depth ?? 200, apart ?? 100]
  const under = top - thickness
  return {
    bearing: { x: 0, y: 0 },
    hole,
    parts: [
      box('shelf', 0, under, deep, thickness),
      stroke(
        'hanger',
        { x: deep * 0.8, y: under },
        { x: 2, y: under },
        { x: 2, y: -down - 15 },
        { x: deep * 0.8, y: under },
      ),
      box('work', off, top, work.depth ?? deep / 2, work.height),
      ...parts,
      stroke('fixing', { x: 3, y: -down }, { x: -(fixing.length ?? 35), y: -down }),
    ],
    dimensions: [
      dimension('screw', { x: -20, y: top }, { x: -20, y: 0 }, screw),
      dimension('apart', { x: -20, y: 0 }, { x: -20, y: -down }, apart),
      dimension('depth', { x: 0, y: top + 12 }, { x: deep, y: top + 12 }, depth),
    ],
  }
}
