/**
 * Small hinged plates on the stretcher or frame, turned outwards and screwed to the wall through the hole beyond the
 * edge. Only the version with a ring or a full plate for hanging may carry; the one for travel holds a work in its crate.
 */
import * as z from 'zod'
import { numberAt } from './back.ts'
import { choiceField, measureField } from './back-fields.ts'
import { measure, plateAt, small } from './drawing-pieces.ts'
import { bare, carries, checkDrop, checkUp, keeps, measured, spacingFinding, unevenFinding } from './measures.ts'
import type { BackField, Bearing, Fixing, PlainFinding, SectionDrawing, WorkSize } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { box, dimension, dropAndHole, fixingInWall, framedWork, type SectionWork } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'

const upper = z.strictObject({
  drop: measured,
  /** From the side edge outwards to the hole, the plate turned out. */
  out: measured,
  lower: z.strictObject({ out: measured, up: measured }).optional(),
})

const data = z.strictObject({
  version: z.enum(['hanging', 'travel']),
  left: upper,
  right: upper,
  /** Between the two upper holes, plates turned out. */
  spacing: measured.nullable().optional(),
  thickness: measured.nullable().optional(),
  diagonals,
})

type Data = z.output<typeof data>

const USUAL_THICKNESS = 3

export const transitPlates = defineMethod({
  key: 'transit-plates',
  name: 'Transit plates',
  does: 'Hinged plates turn out from the edge of the work and are screwed to the wall through their outer holes.',
  schema: data,
  fixings: ['screw', 'hook'],
  keepers: ['screw'],
  minutes: [20, 30],
  accuracy: '±1 mm',
  adjust: ['Level: hold the work up, mark through the holes, then screw; nothing afterwards.'],
  comesDown: [
    'Two people: one holds the work, the other takes the lower screws out first, then the upper ones.',
    'Turn every plate back behind the edge at once: an open plate catches hands and neighbours.',
    'Fill the holes; the plates stay on for the journey.',
  ],
  section: (raw, work, fixing) => transitSection(raw, work, fixing),
  fields: [
    choiceField(
      ['version'],
      'The plates are',
      'Plates made for travel only hold a work in its crate: they don’t carry it on a wall.',
      [
        { value: 'hanging', label: 'the hanging version, with a ring or full plate' },
        { value: 'travel', label: 'for travel only' },
      ],
    ),
    ...(['left', 'right'] as const).flatMap(side => sideOf(side)),
    measureField(['spacing'], 'Between the upper holes', 'From hole to hole across the work, both plates turned out.'),
    measureField(['thickness'], 'Thickness of a plate', 'With its hinge: it holds the work so far off the wall.'),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const places = (['left', 'right'] as const).flatMap(side => placesOf(raw, side, work))
    const uppers = (['left', 'right'] as const).map(side => placesOf(raw, side, work)[0]?.hole ?? { x: 0, y: 0 })
    const [left, right] = uppers
    return {
      rings: uppers,
      lines: places.map(({ hole }) => plateAt(hole, small(work) * 1.6, small(work))),
      blocks: [],
      dimensions: [
        ...places.flatMap(place => place.dimensions),
        ...(left === undefined || right === undefined ? [] : [measure(raw, ['spacing'], left, right)]),
      ],
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing, keeper } = question
    checkDrop(back.left.drop, work, 'back.data.left.drop')
    checkDrop(back.right.drop, work, 'back.data.right.drop')
    const fromInsets = work.width + back.left.out + back.right.out
    const measuredOne = back.spacing ?? null
    const pair = {
      left: -back.left.out,
      right: work.width + back.right.out,
      measured: measuredOne,
      fromInsets,
      centred: false,
    }
    const lower = lowerPlates(back, work)
    const thickness = back.thickness ?? null
    const plates = 2 + lower.length
    return {
      ...bare,
      bearings: [carries('left', pair.left, back.left.drop), carries('right', pair.right, back.right.drop), ...lower],
      spacing: measuredOne,
      spacingFromInsets: measuredOne === null ? null : fromInsets,
      carriers: [pair.left, pair.right],
      figures: pullOutFigure(question, Math.min(back.left.drop, back.right.drop), thickness ?? 0),
      findings: [
        ...travelFinding(back.version),
        ...spacingFinding(pair, rules.measureTolerance, say),
        ...unevenFinding(back.left.drop, back.right.drop, rules.dropTolerance, say),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        { what: fixing.name, count: 2, per: 'wall' },
        ...(lower.length > 0
          ? [{ what: keeper?.name ?? 'screw for a plate', count: lower.length, per: 'wall' as const }]
          : []),
        { what: 'hinged plate with its screws', count: plates, per: 'work' },
      ],
      cautions: [
        'A plate made for travel only must not carry a work on the wall.',
        'Measure with the plates turned right out, as they will be screwed.',
        'No plate stays open beyond a corner where people pass.',
      ],
    }
  },
})

function sideOf(side: 'left' | 'right'): readonly BackField[] {
  const out = `From the ${side} edge outwards to the hole, the plate turned out.`
  return [
    measureField([side, 'drop'], `Drop of the ${side} plate`, 'From the top edge down to its hole.', {
      required: true,
    }),
    measureField([side, 'out'], `${side === 'left' ? 'Left' : 'Right'} plate, outwards`, out, { required: true }),
    measureField([side, 'lower', 'out'], `Lower ${side} plate, outwards`, out),
    measureField([side, 'lower', 'up'], `Lower ${side} plate, up`, 'From the bottom edge up to its hole.'),
  ]
}

function lowerPlates(back: Data, work: WorkSize): readonly Bearing[] {
  return (['left', 'right'] as const).flatMap(side => {
    const plate = back[side].lower
    if (plate === undefined) return []
    checkUp(plate.up, work, `back.data.${side}.lower.up`)
    const x = side === 'left' ? -plate.out : work.width + plate.out
    return [keeps(`lower ${side} plate`, side, x, plate.up, work.height)]
  })
}

function travelFinding(version: Data['version']): readonly PlainFinding[] {
  if (version === 'hanging') return []
  return [
    {
      severity: 'stop',
      code: 'travel-plates-carry',
      text: 'These plates are for travel only and don’t carry a work on a wall. Fit the hanging version, or rings.',
      figures: { version },
    },
  ]
}

function placesOf(raw: unknown, side: 'left' | 'right', work: WorkSize) {
  const edge = side === 'left' ? 0 : work.width
  const at = (path: readonly string[], usual: number) => numberAt(raw, path) ?? usual
  const out = (path: readonly string[]) => (side === 'left' ? -at(path, 20) : work.width + at(path, 20))
  const top = { x: out([side, 'out']), y: at([side, 'drop'], work.height / 5) }
  const lower = { x: out([side, 'lower', 'out']), y: work.height - at([side, 'lower', 'up'], work.height / 5) }
  return [
    {
      hole: top,
      dimensions: [
        measure(raw, [side, 'drop'], { x: top.x, y: 0 }, top),
        measure(raw, [side, 'out'], { x: edge, y: top.y }, top),
      ],
    },
    ...(numberAt(raw, [side, 'lower', 'out']) === null
      ? []
      : [
          {
            hole: lower,
            dimensions: [
              measure(raw, [side, 'lower', 'up'], { x: lower.x, y: work.height }, lower),
              measure(raw, [side, 'lower', 'out'], { x: edge, y: lower.y }, lower),
            ],
          },
        ]),
  ]
}

/** The plate lies between frame and wall; seen from the side its screw stands before the frame's edge. */
function transitSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const { parts, hole } = fixingInWall(fixing)
  const drop = numberAt(raw, ['left', 'drop']) ?? work.height / 5
  const thickness = numberAt(raw, ['thickness'])
  const off = thickness ?? USUAL_THICKNESS
  return {
    bearing: { x: 0, y: 0 },
    hole,
    parts: [...framedWork(work, drop, off), box('hanger', 0, -14, off, 28), ...parts],
    dimensions: [
      ...dropAndHole(drop, work, off, hole),
      dimension('plate', { x: 0, y: -20 }, { x: off, y: -20 }, thickness),
    ],
  }
}
