/**
 * A cleat: the bar on the work hooks over a level bar on the wall. The wall part's reference edge is the line that is
 * marked; its screws go into studs, or every few inches into backing.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { numberAt } from './back.ts'
import { measureField } from './back-fields.ts'
import { liftFinding } from './lift.ts'
import { carries, checkDrop, measured, measuredOrZero } from './measures.ts'
import type { CleatEdge, HangQuestion, PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { cleatSection } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'
import { isBacked, studsBetween } from './wall.ts'

const end = z.strictObject({ inset: measuredOrZero.nullable().optional() })

const data = z.strictObject({
  /** From the top edge down to the line where the cleat bears. */
  drop: measured,
  /** Length of the part on the work. */
  length: measured,
  left: end.optional(),
  right: end.optional(),
  /** Length of the part on the wall; shorter than the work's part where left out. */
  wallLength: measured.nullable().optional(),
  /** How thick the pair is: the spacer at the bottom is as thick. */
  depth: measured.nullable().optional(),
  /** Of a metal strip, from one hole to the next; the holes are centred on it. A wooden part has none. */
  holes: measured.nullable().optional(),
  diagonals,
})

/** The outer holes of a metal strip stand so far inside its ends at least. From memory. */
const EDGE_OF_STRIP = 10
/** A stud counts only this far inside the ends of the wall part. */
const END_CLEAR = 25
/** A hole of a metal strip hits a stud when it is so near its centre line: a stud's half less a screw. From memory. */
const HITS_STUD = 13
/** A work goes on over its wall part from so far above: 10 to 25 mm, common practice. */
const LIFT_ON = 25
/** A bevelled pair where nobody measured it. From memory. */
const USUAL_DEPTH = 18

export const cleat = defineMethod({
  key: 'cleat',
  name: 'Cleat',
  does: 'A bar on the work hooks over a level bar on the wall.',
  schema: data,
  fixings: ['cleat'],
  keepers: [],
  minutes: [60, 120],
  accuracy: 'level within 1 mm in each metre, free sideways within its play',
  adjust: ['Sideways: slide it along.', 'Level and height: shims under one end of the wall part.'],
  comesDown: [
    'Take the end stops off, then lift the work straight up off the wall part: people on both sides.',
    'Unscrew the wall part, fill its holes; the pair stays together in the work’s box.',
  ],
  section: (raw, work, fixing) =>
    cleatSection(numberAt(raw, ['drop']) ?? work.height / 6, numberAt(raw, ['depth']), work, fixing),
  fields: [
    measureField(
      ['drop'],
      'Drop of the cleat',
      'From the top edge down to the line where the work’s part bears on the wall’s part.',
      { required: true },
    ),
    measureField(['length'], 'Length on the work', 'The whole bar on the work.', { required: true }),
    ...(['left', 'right'] as const).map(at =>
      measureField(
        [at, 'inset'],
        `Inset of the ${at} end`,
        `From the ${at} edge to the end of the bar; leave both out if it is centred.`,
      ),
    ),
    measureField(
      ['wallLength'],
      'Length on the wall',
      'Half an inch to an inch shorter than the work’s part, so that it can slide.',
    ),
    measureField(['depth'], 'Thickness', 'The spacer at the bottom is as thick.'),
    measureField(
      ['holes'],
      'Holes of a metal strip',
      'From the middle of one hole to the next, 100 to 150 mm; leave it out for a wooden part.',
    ),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const length = numberAt(raw, ['length']) ?? work.width * 0.7
    const inset = numberAt(raw, ['left', 'inset'])
    const rightInset = numberAt(raw, ['right', 'inset'])
    const from = inset ?? (rightInset === null ? (work.width - length) / 2 : work.width - rightInset - length)
    const y = numberAt(raw, ['drop']) ?? work.height / 6
    const left = { x: from, y }
    const right = { x: from + length, y }
    return {
      rings: [],
      lines: [{ kind: 'cleat', points: [left, right] }],
      blocks: [],
      dimensions: [
        {
          path: ['drop'],
          from: { x: work.width / 2, y: 0 },
          to: { x: work.width / 2, y },
          value: numberAt(raw, ['drop']),
        },
        { path: ['length'], from: left, to: right, value: numberAt(raw, ['length']) },
        { path: ['left', 'inset'], from: { x: 0, y }, to: left, value: inset },
        { path: ['right', 'inset'], from: right, to: { x: work.width, y }, value: rightInset },
      ],
    }
  },
  answer: (back, question) => {
    const { work, say, fixing, rules } = question
    checkDrop(back.drop, work, 'back.data.drop')
    if (back.length > work.width + 1e-9) {
      throw new Refusal('cleat-too-long', 'The bar is longer than the work is wide.', {
        field: 'back.data.length',
        details: { length: back.length, width: work.width },
      })
    }
    const leftInset = back.left?.inset ?? null
    const rightInset = back.right?.inset ?? null
    const from =
      leftInset ?? (rightInset === null ? (work.width - back.length) / 2 : work.width - rightInset - back.length)
    if (from < -1e-9 || from + back.length > work.width + 1e-9) {
      throw new Refusal('hangers-off-the-work', 'The bar would lie outside the work. Check its inset and length.', {
        field: 'back.data.left.inset',
      })
    }
    const shorter = rules.cleatShorter
    const wallLength = back.wallLength ?? (back.length > 2 * shorter ? back.length - shorter : back.length)
    if (wallLength > back.length + 1e-9) {
      throw new Refusal('cleat-wall-too-long', 'The part on the wall must not be longer than the part on the work.', {
        field: 'back.data.wallLength',
        details: { wallLength, length: back.length },
      })
    }
    const middle = from + back.length / 2
    const holes = back.holes ?? null
    if (holes !== null && holes > wallLength - 2 * EDGE_OF_STRIP) {
      throw new Refusal(
        'strip-holes-too-wide',
        'The strip would have one hole only. Measure from one hole to the next again.',
        {
          field: 'back.data.holes',
          details: { holes, wallLength },
        },
      )
    }
    const sidePlay = (back.length - wallLength) / 2
    const edge =
      holes === null
        ? edgeOf(question, middle, wallLength, sidePlay)
        : stripOf(question, middle, wallLength, sidePlay, holes)
    const xl = question.centre.x - work.width / 2
    const bothInsets = leftInset !== null && rightInset !== null
    return {
      bearings: [
        carries('left', middle - wallLength / 2, back.drop),
        carries('right', middle + wallLength / 2, back.drop),
      ],
      spacing: wallLength,
      spacingFromInsets: null,
      wire: null,
      cleat: edge,
      carriers: edge.screws.map(screw => screw.x - xl),
      sharing: 'moments',
      steps: [],
      figures: pullOutFigure(question, back.drop, back.depth ?? USUAL_DEPTH),
      findings: [
        ...liftFinding(question, LIFT_ON),
        ...squareFindings(back.diagonals, work, say),
        ...(holes === null ? [] : stripFindings(edge, holes, question)),
        ...(bothInsets ? lengthFinding(back.length, work.width - leftInset - rightInset, question) : []),
        ...screwFindings(edge, question, back.drop),
      ],
      needs: [
        { what: fixing.name, count: 1, per: 'wall' },
        { what: 'screw for the wall part', count: edge.screws.length, per: 'wall' },
        { what: back.depth ? `bottom spacer ${say(back.depth)} thick` : 'bottom spacer', count: 1, per: 'work' },
        { what: 'end stop', count: 2, per: 'wall' },
      ],
      cautions: [
        `The work lifts on from above: keep ${say(LIFT_ON)} free over its top edge.`,
        'Both ends of the wall part level within 1 mm in each metre, the right way up.',
        'A spacer as thick as the pair keeps the bottom plumb; end stops where the public comes near.',
      ],
    }
  },
})

/** The wall part on the wall: its ends, and screws on every stud it covers, two each, or spread along backing. */
function edgeOf(
  { work, centre, wall, rules }: HangQuestion,
  middle: number,
  length: number,
  sidePlay: number,
): CleatEdge {
  const xl = centre.x - work.width / 2
  const from = xl + middle - length / 2
  const to = from + length
  const studs = studsBetween(wall, from + END_CLEAR, to - END_CLEAR)
  if (studs.length >= 2) {
    return {
      from,
      to,
      sidePlay,
      screws: studs.flatMap(x => [
        { x, onStud: true },
        { x, onStud: true },
      ]),
    }
  }
  const inner = Math.max(0, length - 2 * END_CLEAR)
  const count = Math.max(2, Math.ceil(inner / rules.screwsApart) + 1)
  const screws = Array.from({ length: count }, (_, i) => {
    const x = from + (length - inner) / 2 + (inner * i) / (count - 1)
    return { x, onStud: studs.some(stud => Math.abs(stud - x) < 12) }
  })
  return { from, to, sidePlay, screws }
}

/** A metal strip takes screws in its own holes alone: on studs where holes hit them, else in every hole. */
function stripOf(
  { work, centre, wall }: HangQuestion,
  middle: number,
  length: number,
  sidePlay: number,
  every: number,
): CleatEdge {
  const centreX = centre.x - work.width / 2 + middle
  const from = centreX - length / 2
  const to = centreX + length / 2
  const count = Math.floor((length - 2 * EDGE_OF_STRIP) / every + 1e-9) + 1
  const at = Array.from({ length: count }, (_, i) => centreX + (i - (count - 1) / 2) * every)
  const studs = studsBetween(wall, from, to)
  const holes = at.map(x => ({ x, onStud: studs.some(stud => Math.abs(stud - x) <= HITS_STUD) }))
  const hits = holes.filter(hole => hole.onStud)
  return { from, to, sidePlay, screws: hits.length >= 2 ? hits : holes }
}

/** A stud under the strip that no hole meets wants a hole of its own. */
function stripFindings(edge: CleatEdge, every: number, { wall, say }: HangQuestion): readonly PlainFinding[] {
  const studs = studsBetween(wall, edge.from + END_CLEAR, edge.to - END_CLEAR)
  const missed = studs.filter(stud => !edge.screws.some(screw => Math.abs(screw.x - stud) <= HITS_STUD))
  if (missed.length === 0) return []
  return [
    {
      severity: 'settle',
      code: 'stud-between-holes',
      text: `${missed.length === 1 ? 'One stud' : `${missed.length} studs`} under the strip, at ${missed.map(say).join(', ')}, lie${missed.length === 1 ? 's' : ''} between its holes: slide the strip, or drill it there.`,
      figures: { missed: missed.length, first: missed[0] ?? null, every },
    },
  ]
}

function lengthFinding(length: number, fromInsets: number, { rules, say }: HangQuestion): readonly PlainFinding[] {
  const difference = Math.abs(length - fromInsets)
  if (difference <= rules.measureTolerance + 1e-9) return []
  return [
    {
      severity: 'settle',
      code: 'spacing-differs',
      text: `The bar measures ${say(length)}, but ${say(fromInsets)} follows from its insets. Measure again.`,
      figures: { measured: length, fromInsets, difference },
    },
  ]
}

function screwFindings(
  edge: { readonly screws: readonly { readonly x: number; readonly onStud: boolean }[] },
  { wall, work, centre, say }: HangQuestion,
  drop: number,
): readonly PlainFinding[] {
  const y = centre.y + work.height / 2 - drop
  const studs = new Set(edge.screws.filter(screw => screw.onStud).map(screw => screw.x)).size
  if (studs >= 2) {
    return [
      {
        severity: 'fits',
        code: 'cleat-on-studs',
        text: `The wall part covers ${studs} studs: ${edge.screws.length > studs ? 'two screws' : 'a screw'} into each.`,
        figures: { studs, screws: edge.screws.length },
      },
    ]
  }
  if (isBacked(wall, y) === true) return []
  if (wall.wallType !== 'drywall' && wall.wallType !== 'plaster') return []
  return [
    {
      severity: 'settle',
      code: 'cleat-off-studs',
      text: `The wall part covers ${studs === 1 ? 'one stud' : 'no stud that is known'} and there is no backing at ${say(y)}: spread it over two studs or more.`,
      figures: { studs, y },
    },
  ]
}
