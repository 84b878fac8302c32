/**
 * Strap plates at the edge of a frame, each with its hole OUTSIDE the frame: they keep the work where it hangs while
 * rings or a ledge carry it. Alone they carry only by a loud caution: the screw then holds by its plate's bend.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { numberAt } from './back.ts'
import { choiceField, measureField, pairFields, spacingField } from './back-fields.ts'
import { pairDrawing, plateAt, small } from './drawing-pieces.ts'
import {
  bare,
  carries,
  checkDrop,
  checkUp,
  hangerSide,
  keeps,
  measured,
  measuredOrZero,
  placePair,
  spacingFinding,
  unevenFinding,
} from './measures.ts'
import type { BackField, Bearing, Fixing, HangQuestion, PlainFinding, WorkSize } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'
import { platePlaces, strapSection } from './strap-drawing.ts'

const ledgeSide = z.strictObject({ inset: measuredOrZero.nullable().optional() })
const edgeSide = z
  .strictObject({
    upper: z.strictObject({ out: measured, drop: measured }).optional(),
    lower: z.strictObject({ out: measured, up: measured }).optional(),
  })
  .optional()
const underSide = z.strictObject({ out: measured, inset: measuredOrZero }).optional()

const data = z.strictObject({
  /** What carries the work. */
  carry: z.discriminatedUnion('by', [
    z.strictObject({
      by: z.literal('rings'),
      left: hangerSide,
      right: hangerSide,
      spacing: measured.nullable().optional(),
    }),
    z.strictObject({
      by: z.literal('ledge'),
      left: ledgeSide.optional(),
      right: ledgeSide.optional(),
      spacing: measured.nullable().optional(),
    }),
    z.strictObject({ by: z.literal('plates') }),
  ]),
  /** Plates at the sides: the upper from the top edge, the lower from the bottom edge. */
  left: edgeSide,
  right: edgeSide,
  /** Plates under the bottom edge, each from its side; one alone stands in the middle. */
  bottom: z
    .strictObject({ left: underSide, right: underSide, middle: z.strictObject({ out: measured }).optional() })
    .optional(),
  /** How far the plate's back stands off the wall: the wood block behind it is as thick. */
  block: measuredOrZero.nullable().optional(),
  thickness: measured.nullable().optional(),
  diagonals,
})

type Data = z.output<typeof data>

/** A screw wants so much of itself in the wall. From memory; the packet decides. */
const LEAST_IN_WALL = 25
const USUAL_PLATE = 2

export const strapPlates = defineMethod({
  key: 'strap-plates',
  name: 'Strap plates',
  does: 'Rings or a ledge carry the work; plates at its edges, screwed to the wall beside it, keep it there.',
  schema: data,
  fixings: ['hook', 'screw', 'nail', 'bracket'],
  keepers: ['screw', 'lock'],
  minutes: [25, 40],
  accuracy: '±1 mm; slotted plates ±3 mm',
  adjust: ['Hold it up, level it, mark through the holes: then nothing but the ±3 mm of slotted plates.'],
  comesDown: [
    'Find which driver turns the screws; it is in the lock register if they are special.',
    'One person holds the work, the other takes the screws out, from the bottom up.',
    'Lift it off what carries it; take the plates off the frame if the lender wants it so, fill the holes.',
  ],
  section: (raw, work, fixing) => strapSection(raw, work, fixing),
  fields: [
    choiceField(
      ['carry', 'by'],
      'The work is carried by',
      'Plates keep a work in its place; something else should carry it.',
      [
        { value: 'rings', label: 'rings on hooks or screws' },
        { value: 'ledge', label: 'a ledge or brackets under it' },
        { value: 'plates', label: 'the plates alone' },
      ],
    ),
    ...pairFields('ring', 'From the top edge down to the inside top of the ring.', ['carry']).map(field =>
      // A ledge has insets too: its brackets.
      field.path.includes('inset') ? { ...field, label: field.label.replace('ring', 'ring or bracket') } : field,
    ),
    spacingField('ring or bracket', ['carry']),
    ...(['left', 'right'] as const).flatMap(side => sidePlateFields(side)),
    ...(['left', 'right'] as const).flatMap(side => underFields(side)),
    measureField(
      ['bottom', 'middle', 'out'],
      'Middle plate under the work',
      'From the bottom edge down to its hole; in the middle of the width.',
    ),
    measureField(
      ['block'],
      'Plates off the wall',
      'From the back of the plates to the wall: a block as thick goes behind each.',
    ),
    measureField(['thickness'], 'Thickness of a plate', 'For the length of its screw.'),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const rings = pairDrawing(raw, work, ['carry'], work.height / 3)
    const places = platePlaces(raw, work)
    return {
      rings: numberAt(raw, ['carry', 'left', 'drop']) === null ? [] : [rings.left, rings.right],
      lines: places.map(({ hole }) => plateAt(hole, small(work) * 1.4, small(work) * 1.4)),
      blocks: [],
      dimensions: [...rings.dimensions, ...places.flatMap(place => place.dimensions)],
    }
  },
  answer: (back, question) => {
    const { work, say, fixing, keeper, rules } = question
    const alone = back.carry.by === 'plates'
    const plates = platesOf(back, work, alone)
    if (plates.length === 0) {
      throw new Refusal(
        'no-plate',
        'Measure one plate at least: how far its hole stands outside the edge, and where.',
        {
          field: 'back.data.left.upper.out',
        },
      )
    }
    const { bearings, findings } = carriersOf(back, question)
    const screw = alone ? fixing : keeper
    const block = back.block ?? null
    // A ledge does not pull; what keeps the work on it does.
    const pulled = back.carry.by === 'rings' ? bearings : plates
    const top = Math.min(...pulled.map(one => one.drop))
    return {
      ...bare,
      ...spacingsOf(back, work),
      bearings: [...bearings, ...plates],
      carriers: (alone ? plates : bearings).map(bearing => bearing.fromLeft),
      figures: top < work.height ? pullOutFigure(question, top, block ?? 0) : [],
      findings: [
        ...findings,
        ...(alone ? aloneFindings(plates) : []),
        ...screwFindings(screw, block, back.thickness ?? null, say),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        ...(alone ? [] : [{ what: fixing.name, count: bearings.length, per: 'wall' as const }]),
        { what: screw?.name ?? 'screw for a plate', count: plates.length, per: 'wall' },
        { what: 'strap plate', count: plates.length, per: 'work' },
        { what: 'frame screw for a plate', count: 2 * plates.length, per: 'work' },
        ...(block !== null && block > rules.measureTolerance
          ? [{ what: `block ${say(block)} thick`, count: plates.length, per: 'wall' as const }]
          : []),
        { what: 'touch-up paint for the plates', count: 1, per: 'team' },
      ],
      cautions: [
        ...(alone
          ? [
              'PLATES ALONE: nothing carries this work but thin bent plates. Hang it on rings or set it on a ledge, and let the plates only keep it.',
            ]
          : []),
        'A plate lies flush on its block or on the wall: else it twists, and pulls at the frame.',
        'Screws that show are special ones or filled: whoever takes it down must know which driver fits.',
        'No plate where the label goes.',
      ],
    }
  },
})

function sidePlateFields(side: 'left' | 'right'): readonly BackField[] {
  const out = `From the ${side} edge of the frame outwards to the hole.`
  return [
    measureField([side, 'upper', 'out'], `Upper ${side} plate, outwards`, out),
    measureField([side, 'upper', 'drop'], `Upper ${side} plate, down`, 'From the top edge down to its hole.'),
    measureField([side, 'lower', 'out'], `Lower ${side} plate, outwards`, out),
    measureField([side, 'lower', 'up'], `Lower ${side} plate, up`, 'From the bottom edge up to its hole.'),
  ]
}

function underFields(side: 'left' | 'right'): readonly BackField[] {
  return [
    measureField(['bottom', side, 'out'], `Plate under the ${side} end`, 'From the bottom edge down to its hole.'),
    measureField(['bottom', side, 'inset'], `Plate under the ${side} end, along`, `From the ${side} edge to its hole.`),
  ]
}

/** Every plate as a mark. Those at the sides are measured from the edge they are nearer to. */
function platesOf(back: Data, work: WorkSize, alone: boolean): readonly Bearing[] {
  const found: Bearing[] = []
  const does = alone ? 'carries' : 'keeps'
  for (const side of ['left', 'right'] as const) {
    const { upper, lower } = back[side] ?? {}
    const at = (out: number) => (side === 'left' ? -out : work.width + out)
    if (upper !== undefined) {
      checkDrop(upper.drop, work, `back.data.${side}.upper.drop`)
      found.push({ ...carries(side, at(upper.out), upper.drop), does, name: `upper ${side} plate` })
    }
    if (lower !== undefined) {
      checkUp(lower.up, work, `back.data.${side}.lower.up`)
      found.push({ ...keeps(`lower ${side} plate`, side, at(lower.out), lower.up, work.height), does })
    }
  }
  for (const side of ['left', 'right'] as const) {
    const plate = back.bottom?.[side]
    if (plate === undefined) continue
    if (plate.inset > work.width) {
      throw new Refusal(
        'hangers-off-the-work',
        'The plate would stand beside the work. Measure it from its own side.',
        {
          field: `back.data.bottom.${side}.inset`,
          details: { inset: plate.inset, width: work.width },
        },
      )
    }
    const fromLeft = side === 'left' ? plate.inset : work.width - plate.inset
    found.push({ ...keeps(`bottom ${side} plate`, side, fromLeft, -plate.out, work.height), does })
  }
  const middle = back.bottom?.middle
  if (middle !== undefined) {
    found.push({ ...keeps('bottom plate', 'middle', work.width / 2, -middle.out, work.height), does })
  }
  return found
}

function pairOf(back: Data, work: WorkSize) {
  if (back.carry.by === 'plates') return null
  const { left, right, spacing } = back.carry
  // A ledge whose brackets nobody placed stands on the fifths: usual, from memory.
  const usual = back.carry.by === 'ledge' && !left?.inset && !right?.inset && !spacing ? work.width / 5 : null
  return placePair(work.width, left?.inset ?? usual, right?.inset ?? usual, spacing, 'back.data.carry.spacing')
}

function spacingsOf(back: Data, work: WorkSize) {
  const pair = pairOf(back, work)
  return { spacing: pair?.measured ?? null, spacingFromInsets: pair?.measured == null ? null : pair.fromInsets }
}

function carriersOf(
  back: Data,
  { work, rules, say }: HangQuestion,
): { readonly bearings: readonly Bearing[]; readonly findings: readonly PlainFinding[] } {
  const pair = pairOf(back, work)
  if (pair === null || back.carry.by === 'plates') return { bearings: [], findings: [] }
  const spacing = spacingFinding(pair, rules.measureTolerance, say)
  if (back.carry.by === 'ledge') {
    const under = (side: 'left' | 'right', x: number): Bearing => ({
      ...carries(side, x, work.height),
      from: 'bottom',
    })
    return { bearings: [under('left', pair.left), under('right', pair.right)], findings: spacing }
  }
  const { left, right } = back.carry
  checkDrop(left.drop, work, 'back.data.carry.left.drop')
  checkDrop(right.drop, work, 'back.data.carry.right.drop')
  return {
    bearings: [carries('left', pair.left, left.drop), carries('right', pair.right, right.drop)],
    findings: [...spacing, ...unevenFinding(left.drop, right.drop, rules.dropTolerance, say)],
  }
}

function aloneFindings(plates: readonly Bearing[]): readonly PlainFinding[] {
  const above = plates.filter(plate => plate.from === 'top').length
  const figures = { plates: plates.length, above }
  return [
    {
      severity: 'settle',
      code: 'plates-carry',
      text: 'The plates alone carry this work: they are made to keep, not to carry. Say who agreed to it, or hang it on rings.',
      figures,
    },
    ...(above < 2
      ? [
          {
            severity: 'stop' as const,
            code: 'plates-too-few',
            text: 'A work on plates alone needs two upper plates at least, one on each side: else it turns or tips off the wall.',
            figures,
          },
        ]
      : []),
  ]
}

/** What the screw has left for the wall behind plate and block. Only where its length is known. */
function screwFindings(
  screw: Fixing | null,
  block: number | null,
  thickness: number | null,
  say: (mm: number) => string,
): readonly PlainFinding[] {
  const length = screw?.length ?? null
  if (screw === null || length === null) return []
  const inWall = length - (block ?? 0) - (thickness ?? USUAL_PLATE)
  if (inWall >= LEAST_IN_WALL) return []
  return [
    {
      severity: 'settle',
      code: 'screw-too-short',
      text: `${screw.name} is ${say(length)} long: behind plate and block ${say(Math.max(0, inWall))} of it reach the wall. Take one ${say(length + LEAST_IN_WALL - inWall)} long or longer.`,
      figures: { length, block, thickness, inWall, least: LEAST_IN_WALL },
    },
  ]
}
