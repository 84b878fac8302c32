/**
 * Keyhole plates let into the back: the head of a screw goes in at the round entry and its shank rests in the upper end
 * of the narrow slot. Nothing can be put right afterwards, so every measure of slot and screw is held against the other.
 */
import * as z from 'zod'
import { numberAt } from './back.ts'
import { measureField, pairFields, spacingField } from './back-fields.ts'
import { pairDrawing, plateAt, small } from './drawing-pieces.ts'
import { liftFinding } from './lift.ts'
import { bare, carries, measured, pairOn, pairShape, spacingFinding, unevenFinding } from './measures.ts'
import type { Fixing, PlainFinding, SectionDrawing } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { box, dimension, dropAndHole, framedWork, type SectionWork } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'

const data = z.strictObject({
  ...pairShape,
  /** Width of the narrow slot, and of the round entry below it. */
  slot: measured.nullable().optional(),
  entry: measured.nullable().optional(),
  /** From the middle of the entry up to the upper end of the slot: the way the work drops when it engages. */
  slide: measured.nullable().optional(),
  /** Of the plate, and of the free space behind its face. */
  thickness: measured.nullable().optional(),
  recess: measured.nullable().optional(),
  diagonals,
})

type Data = z.output<typeof data>

/** A head stands so much further out than the plate is thick, to slide in. From memory; a house rule. */
const PLAY = 0.5
/** A pressed plate where nobody measured it. From memory. */
const USUAL_THICKNESS = 1.5

export const keyholePlates = defineMethod({
  key: 'keyhole-plates',
  name: 'Keyhole plates',
  does: 'Two slotted plates in the back of the frame slide down over two screw heads.',
  schema: data,
  fixings: ['screw', 'nail'],
  keepers: [],
  minutes: [20, 30],
  accuracy: '±0.5 to 1 mm; best by a template of the two slots',
  adjust: ['How far the screw stands out, by turning it; nothing else without a new hole.'],
  comesDown: [
    'Lift it straight up by the length of the slot until the heads stand in the round entries, then away from the wall.',
    'Draw the screws, fill the holes.',
  ],
  section: (raw, work, fixing) => plateSection(raw, work, fixing),
  fields: [
    ...pairFields('slot', 'From the top edge down to the upper end of the narrow slot, where the shank will rest.'),
    spacingField('slot'),
    measureField(['slot'], 'Width of the slot', 'The narrow part: the shank must pass, the head must not.'),
    measureField(['entry'], 'Width of the entry', 'The round part: the head must pass.'),
    measureField(['slide'], 'Way down the slot', 'From the middle of the entry up to the upper end of the slot.'),
    measureField(
      ['thickness'],
      'Thickness of the plate',
      'The head stands out of the wall by so much and a little more.',
    ),
    measureField(
      ['recess'],
      'Depth behind the plate’s face',
      'From the face of the plate into the frame: head and plate find room there.',
    ),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const { left, right, dimensions } = pairDrawing(raw, work, [], Math.min(60, work.height / 6))
    const size = small(work)
    return {
      rings: [left, right],
      lines: [left, right].map(({ x, y }) => plateAt({ x, y: y + size * 0.6 }, size, size * 2.2)),
      blocks: [],
      dimensions,
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing } = question
    const pair = pairOn(back, work)
    const thickness = back.thickness ?? null
    return {
      bearings: [carries('left', pair.left, back.left.drop), carries('right', pair.right, back.right.drop)],
      ...bare,
      spacing: pair.measured,
      spacingFromInsets: pair.fromInsets,
      carriers: [pair.left, pair.right],
      figures: [
        ...(thickness === null
          ? []
          : [
              {
                key: 'stands-out',
                label: 'From the wall to the inner face of the head',
                value: thickness + PLAY,
                unit: 'mm' as const,
                working: `${say(thickness)} + ${say(PLAY)} of play`,
              },
            ]),
        ...pullOutFigure(question, Math.min(back.left.drop, back.right.drop), 0),
      ],
      findings: [
        ...spacingFinding(pair, rules.measureTolerance, say),
        ...unevenFinding(back.left.drop, back.right.drop, rules.dropTolerance, say),
        ...headFindings(back, fixing, say),
        ...(typeof back.slide === 'number' ? liftFinding(question, back.slide) : []),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        { what: fixing.name, count: 2, per: 'wall' },
        { what: 'template of the two slots', count: 1, per: 'work' },
      ],
      cautions: [
        ...(pair.centred ? ['The slots are taken to be centred: no inset was measured.'] : []),
        'Rub or tape the two slots on a strip and carry it to the wall: the marks must agree with it.',
        'Look that neither plate is upside down: the narrow end is up.',
      ],
    }
  },
})

/** Head and shank against slot and entry. What nobody measured is asked for; what cannot hold stops. */
function headFindings(back: Data, fixing: Fixing, say: (mm: number) => string): readonly PlainFinding[] {
  const [head, shank] = [fixing.head ?? null, fixing.shank ?? null]
  const [slot, entry] = [back.slot ?? null, back.entry ?? null]
  const found: PlainFinding[] = []
  const figures = { head, shank, slot, entry }
  const say1 = (severity: PlainFinding['severity'], code: string, text: string) =>
    found.push({ severity, code, text, figures })
  if (slot !== null && entry !== null && entry <= slot) {
    say1(
      'settle',
      'entry-not-wider',
      `The entry of ${say(entry)} is not wider than the slot of ${say(slot)}. Measure both again.`,
    )
  }
  if (head === null || slot === null || entry === null) {
    const missing = [
      ...(head === null ? [`the head of ${fixing.name}`] : []),
      ...(slot === null ? ['the slot’s width'] : []),
      ...(entry === null ? ['the entry’s width'] : []),
    ]
    say1(
      'settle',
      'head-not-checked',
      `Nobody has measured ${missing.join(' and ')}: the head must be wider than the slot and go through the entry.`,
    )
  }
  if (head !== null && slot !== null && head <= slot) {
    say1(
      'stop',
      'head-through-slot',
      `The head is ${say(head)} wide and the slot ${say(slot)}: it would slip out. Take a wider head.`,
    )
  }
  if (head !== null && entry !== null && head >= entry) {
    say1(
      'stop',
      'head-too-wide',
      `The head is ${say(head)} wide and the entry ${say(entry)}: it does not go in. Take a smaller head.`,
    )
  }
  if (shank !== null && slot !== null && shank >= slot) {
    say1(
      'stop',
      'shank-too-thick',
      `The shank is ${say(shank)} thick and the slot ${say(slot)} wide: it does not slide in.`,
    )
  }
  if (head !== null && slot !== null && entry !== null && head > slot && head < entry) {
    say1(
      'fits',
      'head-holds',
      `The head of ${say(head)} goes through the entry of ${say(entry)} and is held by the slot of ${say(slot)}.`,
    )
  }
  const [recess, thickness] = [back.recess ?? null, back.thickness ?? null]
  if (recess !== null && thickness !== null && recess <= thickness + PLAY) {
    found.push({
      severity: 'stop',
      code: 'recess-too-shallow',
      text: `The recess is ${say(recess)} deep and the plate alone takes ${say(thickness)}: there is no room for a head. Deepen the recess or set the plate on.`,
      figures: { recess, thickness },
    })
  }
  return found
}

/** The plate flush with the frame's back, the head behind it, the shank in the slot's upper end. */
function plateSection(raw: unknown, work: SectionWork, fixing: Fixing): SectionDrawing {
  const drop = numberAt(raw, ['left', 'drop']) ?? Math.min(60, work.height / 6)
  const thickness = numberAt(raw, ['thickness'])
  const plate = thickness ?? USUAL_THICKNESS
  const recess = numberAt(raw, ['recess']) ?? plate + 6
  const long = fixing.length ?? 35
  const shank = (fixing.shank ?? 4) / 2
  const head = (fixing.head ?? 8) / 2
  const y = fixing.holeOffset
  const out = plate + PLAY
  return {
    bearing: { x: 0, y: 0 },
    hole: { x: 0, y },
    parts: [
      ...framedWork(work, drop, 0),
      box('spacer', 0, -24, recess, 30),
      box('hanger', 0, 0, plate, 8),
      box('hanger', 0, -30, plate, 12),
      box('fixing', out - long, y - shank, long, shank * 2),
      box('fixing', out, y - head, Math.max(1.5, shank), head * 2),
    ],
    dimensions: [
      ...dropAndHole(drop, work, 0, { x: 0, y }),
      dimension('plate', { x: 0, y: 14 }, { x: plate, y: 14 }, thickness),
      dimension('recess', { x: 0, y: -32 }, { x: recess, y: -32 }, numberAt(raw, ['recess'])),
    ],
  }
}
