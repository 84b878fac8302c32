/**
 * An unframed sheet held to the wall by magnets on steel points, or by clear corners. Magnets hold by friction alone, so
 * the pull through the sheet must be many times its weight. The sheet is measured, not the image.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { numberAt } from './back.ts'
import { choiceField, measureField } from './back-fields.ts'
import { measure, plateAt, small } from './drawing-pieces.ts'
import { bare, carries, keeps, measured } from './measures.ts'
import type { Bearing, Fixing, HangQuestion, PlainFigure, PlainFinding, SectionDrawing, WorkSize } from './method.ts'
import { defineMethod } from './method.ts'
import { newtons } from './physics.ts'
import { box, dimension, dropAndHole, type SectionWork, stroke } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'

const data = z.strictObject({
  hold: z.enum(['magnets', 'corners']),
  /** From each edge in to the points; about an inch where nobody says otherwise. */
  inset: measured.nullable().optional(),
  /** g/m² of the paper. */
  paper: z.number().gt(0).max(5000).nullable().optional(),
  /** Newtons of one magnet, pulled off straight, with this sheet between. */
  pull: z.number().gt(0).max(1000).nullable().optional(),
  /** Between sheet and magnet, tested; 0.2 where nobody tested. */
  friction: z.number().gt(0).max(2).nullable().optional(),
  touch: z.enum(['not-asked', 'margins', 'nowhere']),
  diagonals,
})

type Data = z.output<typeof data>

/** About an inch in from each corner: common practice, no source. */
const USUAL_INSET = 25
/** Paper on a painted wall, nobody having tested: derived rule of the design, so that 4 × becomes 20 × the weight. */
const FRICTION = 0.2
/** A free edge longer than this gets a point in its middle. From memory; a house rule. */
const LONG_EDGE = 700

export const sheet = defineMethod({
  key: 'sheet',
  name: 'Unframed sheet',
  does: 'Magnets on steel points, or clear corners, hold an unframed sheet flat on the wall.',
  schema: data,
  fixings: ['steel-point', 'screw', 'nail'],
  keepers: [],
  minutes: [15, 25],
  accuracy: '±2 mm; the sheet is slid level under its magnets',
  adjust: ['Level and sideways: slide the sheet under its magnets, one eased at a time.'],
  comesDown: [
    'Two people with clean hands: one holds the sheet, the other slides each magnet off to the side over its film, the lowest first.',
    'Never prize a magnet up off the paper; count them into their box.',
    'Draw the points, fill the holes.',
  ],
  section: (raw, work, fixing) => sheetSection(raw, work, fixing),
  fields: [
    choiceField(
      ['hold'],
      'The sheet is held by',
      'Corners need nothing on the face but show; magnets touch the face.',
      [
        { value: 'magnets', label: 'magnets on steel points' },
        { value: 'corners', label: 'clear corners' },
      ],
    ),
    measureField(
      ['inset'],
      'Points in from the edge',
      'From the edges of the sheet in to the middle of the points; 25 mm is usual.',
    ),
    measureField(['paper'], 'Weight of the paper', 'In grams on each square metre; 200 to 300 for a stout print.', {
      kind: 'number',
      unit: 'g/m²',
    }),
    measureField(
      ['pull'],
      'Pull of one magnet',
      'In newtons, pulled straight off its point with this sheet between, by a spring balance: 1 kg is 9.8 N.',
      { kind: 'number', unit: 'N' },
    ),
    measureField(['friction'], 'Friction', 'Only from a test with such paper; 0.2 is taken without.', {
      kind: 'number',
      unit: '',
    }),
    choiceField(['touch'], 'It may be touched', 'The conservator says so for this work; write down who.', [
      { value: 'not-asked', label: 'nobody has asked' },
      { value: 'margins', label: 'at its margins' },
      { value: 'nowhere', label: 'nowhere' },
    ]),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const inset = Math.min(numberAt(raw, ['inset']) ?? USUAL_INSET, Math.min(work.width, work.height) / 2)
    const points = pointsOf(work, inset).map(({ fromLeft, drop }) => ({ x: fromLeft, y: drop }))
    const first = points[0] ?? { x: 0, y: 0 }
    return {
      rings: points,
      lines: points.map(point => plateAt(point, small(work) / 2, small(work) / 2)),
      blocks: [],
      dimensions: [measure(raw, ['inset'], { x: 0, y: first.y }, first)],
    }
  },
  answer: (back, question) => {
    const { work, say, fixing } = question
    const inset = back.inset ?? USUAL_INSET
    if (inset * 2 >= Math.min(work.width, work.height)) {
      throw new Refusal(
        'points-cross',
        'The points would meet in the middle of the sheet. Measure from its edges again.',
        {
          field: 'back.data.inset',
          details: { inset, height: work.height, width: work.width },
        },
      )
    }
    const corners = back.hold === 'corners'
    const points = pointsOf(work, inset)
    const bearings = corners ? points.filter(isCorner).map(point => inCorner(point)) : points
    const carrying = bearings.filter(bearing => bearing.does === 'carries')
    const kg = work.mass ?? weightOf(back, work)
    const count = bearings.length
    return {
      ...bare,
      bearings,
      carriers: carrying.map(bearing => bearing.fromLeft),
      sharing: corners ? 'moments' : 'even',
      carried: { mass: kg, massAt: work.width / 2 },
      figures: figuresOf(back, kg, count, question),
      findings: [
        ...touchFindings(back),
        ...(corners ? [] : slideFindings(back, kg, count, question)),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: corners
        ? [
            { what: 'clear corner', count, per: 'wall' },
            { what: fixing.name, count, per: 'wall' },
          ]
        : [
            { what: fixing.name, count, per: 'wall' },
            { what: 'magnet in its case', count, per: 'work' },
            { what: 'isolating film', count, per: 'work' },
            { what: 'spare magnet in its case', count: 1, per: 'work' },
          ],
      cautions: [
        'Measure the sheet, not the image.',
        ...(corners
          ? ['No corner may press: the sheet moves with the air’s moisture.']
          : [
              'Magnets encased or on film, never bare on paper, never loose near the work: they snap together over it.',
              'Mark which side faces the wall before: a magnet the wrong way round must be prized off.',
              'Look for dents and rust under the magnets at every check.',
            ]),
        'Light and touch: unframed paper wants a barrier or a guard.',
      ],
    }
  },
})

/** Points in the corners; of a long edge one in its middle too. Upper ones from the top, lower ones from the bottom. */
function pointsOf(work: WorkSize, inset: number): readonly Bearing[] {
  const { width, height } = work
  const across = width > LONG_EDGE ? [carries('middle', width / 2, inset)] : []
  const upright = height > LONG_EDGE
  const lower = (name: string, side: Bearing['side'], x: number): Bearing => ({
    ...keeps(name, side, x, inset, height),
    does: 'carries',
  })
  return [
    carries('left', inset, inset),
    ...across,
    carries('right', width - inset, inset),
    ...(upright
      ? [
          { ...carries('left', inset, height / 2), name: 'left middle point' },
          { ...carries('right', width - inset, height / 2), name: 'right middle point' },
        ]
      : []),
    lower('lower left point', 'left', inset),
    lower('lower right point', 'right', width - inset),
  ]
}

function isCorner(point: Bearing): boolean {
  return point.side !== 'middle' && !(point.name ?? '').includes('middle')
}

/** In clear corners the lower two carry the sheet and the upper two keep it. */
function inCorner(point: Bearing): Bearing {
  return point.from === 'top' ? { ...point, does: 'keeps', name: `upper ${point.side} point` } : point
}

/** kg of the sheet: area × g/m²; null where nobody said what paper it is. */
function weightOf(back: Data, work: WorkSize): number | null {
  const paper = back.paper ?? null
  return paper === null ? null : (work.height * work.width * paper) / 1e9
}

function slideOf(back: Data, kg: number, count: number, factor: number) {
  const friction = back.friction ?? FRICTION
  const pull = back.pull ?? null
  const needed = newtons(kg) * factor
  return { friction, needed, neededPull: needed / friction, holds: pull === null ? null : pull * count * friction }
}

function figuresOf(
  back: Data,
  kg: number | null,
  count: number,
  { work, rules }: HangQuestion,
): readonly PlainFigure[] {
  if (kg === null) return []
  const weight: PlainFigure = {
    key: 'sheet-weight',
    label: 'Weight of the sheet',
    value: kg,
    unit: 'kg',
    working:
      work.mass === kg ? 'as weighed' : `${((work.height * work.width) / 1e6).toFixed(3)} m² × ${back.paper ?? 0} g/m²`,
  }
  if (back.hold === 'corners') return [weight]
  const { friction, needed, neededPull, holds } = slideOf(back, kg, count, rules.houseFactor)
  return [
    weight,
    {
      key: 'needed-pull',
      label: 'Pull of all magnets together, at least',
      value: neededPull,
      unit: 'N',
      working: `${rules.houseFactor} × the weight ${newtons(kg).toFixed(2)} N / friction ${friction}`,
    },
    {
      key: 'needed-pull-each',
      label: 'Pull of each magnet, at least',
      value: neededPull / count,
      unit: 'N',
      working: `${neededPull.toFixed(1)} N / ${count}`,
    },
    ...(holds === null
      ? []
      : [
          {
            key: 'slides-at',
            label: 'The sheet slides at',
            value: holds,
            unit: 'N' as const,
            working: `${count} × ${back.pull ?? 0} N × ${friction}; ${needed.toFixed(1)} N are wanted`,
          },
        ]),
  ]
}

function touchFindings(back: Data): readonly PlainFinding[] {
  if (back.touch === 'margins') return []
  return back.touch === 'nowhere'
    ? [
        {
          severity: 'stop',
          code: 'touch-forbidden',
          text: 'This sheet may be touched nowhere: it needs a frame or a mount, not points on its face.',
          figures: { touch: back.touch },
        },
      ]
    : [
        {
          severity: 'settle',
          code: 'touch-not-asked',
          text: 'Nobody has asked the conservator where this sheet may be touched.',
          figures: { touch: back.touch },
        },
      ]
}

function slideFindings(back: Data, kg: number | null, count: number, { rules }: HangQuestion): readonly PlainFinding[] {
  if (kg === null) return []
  const { neededPull, needed, holds, friction } = slideOf(back, kg, count, rules.houseFactor)
  const figures = { count, needed, neededPull, holds, friction, factor: rules.houseFactor }
  const each = (neededPull / count).toFixed(1)
  if (holds === null) {
    return [
      {
        severity: 'settle',
        code: 'pull-unknown',
        text: `Nobody has measured how hard a magnet pulls through this sheet: each of the ${count} must pull ${each} N at least.`,
        figures,
      },
    ]
  }
  if (holds < needed * (1 - 1e-9)) {
    return [
      {
        severity: 'stop',
        code: 'sheet-slides',
        text: `The sheet would slide at ${holds.toFixed(1)} N; with the house factor ${rules.houseFactor} it must hold ${needed.toFixed(1)} N. Take magnets of ${each} N each, or more of them.`,
        figures,
      },
    ]
  }
  return [
    {
      severity: 'fits',
      code: 'sheet-held',
      text: `The magnets hold ${holds.toFixed(1)} N against sliding; ${needed.toFixed(1)} N are wanted.`,
      figures,
    },
  ]
}

function sheetSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const inset = numberAt(raw, ['inset'])
  const drop = inset ?? USUAL_INSET
  const head = (fixing.head ?? 10) / 2
  const long = fixing.length ?? 25
  return {
    bearing: { x: 2, y: 0 },
    hole: { x: 0, y: 0 },
    parts: [
      box('fixing', 0, -head, 2, head * 2),
      box('fixing', -long, -1.5, long, 3),
      stroke('work', { x: 2.5, y: drop }, { x: 2.5, y: drop - work.height }),
      box('hanger', 3, -head, 4, head * 2),
    ],
    dimensions: [
      ...dropAndHole(drop, work, 2, null).filter(one => one.label !== 'drop'),
      dimension('in from the edge', { x: 14, y: drop }, { x: 14, y: 0 }, inset),
    ],
  }
}
