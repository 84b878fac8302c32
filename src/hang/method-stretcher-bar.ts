/**
 * An unframed canvas that sits with the top bar of its stretcher on nails or screws. What is measured: the depth of
 * the bar from the top edge to its lower inner edge at both places, and what the nails must keep clear of.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import { numberAt } from './back.ts'
import { measureField } from './back-fields.ts'
import { carries, checkDrop, measured, measuredOrZero, unevenFinding } from './measures.ts'
import type { Fixing, PlainFigure, PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import { pullOutFigure } from './pull-out.ts'
import { barSection } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'
import { nailWithdrawal } from './withdrawal.ts'

const side = z.strictObject({ bar: measured })

const data = z.strictObject({
  left: side,
  right: side,
  /** Braces, cross-bars, keys: stretches of the bar that a nail keeps clear of, from the left edge. */
  ranges: z
    .array(z.strictObject({ from: measuredOrZero, to: measured }))
    .max(20)
    .optional(),
  /** Free depth behind the bar, wall to canvas. */
  clearance: measured.nullable().optional(),
  diagonals,
})

/** A head keeps so far from the canvas, and a nail or screw so much of itself in the wall. House rules, from memory. */
const OFF_CANVAS = 5
const LEAST_IN_WALL = 25
/** Specific gravity of a light softwood, as studs are: from memory; the lower figure is the safer. */
const SOFTWOOD = 0.42

export const stretcherBar = defineMethod({
  key: 'stretcher-bar',
  name: 'Stretcher bar',
  does: 'The top bar of the stretcher sits on two nails or screws.',
  schema: data,
  fixings: ['nail', 'screw'],
  keepers: [],
  minutes: [12, 18],
  accuracy: '±2 mm level, free sideways',
  adjust: ['Sideways: slide it along.', 'Level: wrap tape round a screw, or a thin shim under the bar.'],
  comesDown: [
    'Take the bottom stops off, lift the canvas by its stretcher straight up off the nails; no fingers behind the canvas.',
    'Draw the nails, fill the holes.',
  ],
  section: (raw, work, fixing) =>
    barSection(numberAt(raw, ['left', 'bar']) ?? 45, numberAt(raw, ['clearance']), work, fixing),
  fields: [
    ...(['left', 'right'] as const).map(at =>
      measureField(
        [at, 'bar'],
        `Bar at the ${at} nail`,
        'From the top edge down to the lower inner edge of the top bar, where the nail will be.',
        { required: true },
      ),
    ),
    measureField(
      ['ranges'],
      'Braces, cross-bars and keys',
      'From where to where along the top bar, counted from the left edge.',
    ),
    measureField(
      ['clearance'],
      'Free depth behind the bar',
      'From the wall to the back of the canvas: a head must never touch it.',
    ),
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const leftBar = numberAt(raw, ['left', 'bar'])
    const rightBar = numberAt(raw, ['right', 'bar'])
    const usual = Math.min(work.height, work.width) / 15
    const left = { x: work.width / 3, y: leftBar ?? usual }
    const right = { x: (2 * work.width) / 3, y: rightBar ?? usual }
    const blocks: { readonly kind: 'brace'; readonly from: number; readonly to: number }[] = []
    for (let i = 0; i < 20; i += 1) {
      const from = numberAt(raw, ['ranges', i, 'from'])
      const to = numberAt(raw, ['ranges', i, 'to'])
      if (from !== null && to !== null) blocks.push({ kind: 'brace', from, to })
    }
    return {
      rings: [],
      lines: [
        {
          kind: 'bar',
          points: [{ x: 0, y: left.y }, left, right, { x: work.width, y: right.y }],
        },
      ],
      blocks,
      dimensions: [
        { path: ['left', 'bar'], from: { x: left.x, y: 0 }, to: left, value: leftBar },
        { path: ['right', 'bar'], from: { x: right.x, y: 0 }, to: right, value: rightBar },
      ],
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing, hooksApart } = question
    checkDrop(back.left.bar, work, 'back.data.left.bar')
    checkDrop(back.right.bar, work, 'back.data.right.bar')
    const ranges = back.ranges ?? []
    for (const [index, range] of ranges.entries()) {
      if (range.to <= range.from || range.to > work.width + 1e-9) {
        throw new Refusal('brace-off-the-work', 'A brace must end after it begins, and on the work.', {
          field: `back.data.ranges.${index}.to`,
          details: { ...range, width: work.width },
        })
      }
    }
    if (hooksApart !== null && !(hooksApart > 0 && hooksApart < work.width)) {
      throw new Refusal('nails-off-the-work', 'The two nails must be some way apart and under the bar.', {
        field: 'hooksApart',
        details: { hooksApart, width: work.width },
      })
    }
    const clear = rules.clearOfBrace + (fixing.shank ?? 0) / 2
    const wanted = hooksApart === null ? work.width * rules.nailsIn : (work.width - hooksApart) / 2
    const left = clearPlace(wanted, ranges, clear, 0, work.width / 2)
    const right = clearPlace(work.width - wanted, ranges, clear, work.width / 2, work.width)
    if (left === null || right === null) {
      throw new Refusal('no-place-for-a-nail', 'Braces and keys leave no place for a nail on one half of the bar.', {
        field: 'back.data.ranges',
      })
    }
    const findings: PlainFinding[] = [...unevenFinding(back.left.bar, back.right.bar, rules.dropTolerance, say)]
    for (const [name, from, to] of [
      ['left', wanted, left],
      ['right', work.width - wanted, right],
    ] as const) {
      if (Math.abs(to - from) > 1e-9) {
        findings.push({
          severity: 'fits',
          code: 'nail-moved-off-brace',
          text: `The ${name} nail stands ${say(Math.abs(to - from))} beside its usual place, clear of a brace.`,
          figures: { side: name, wanted: from, at: to },
        })
      }
    }
    const clearance = back.clearance ?? null
    if (clearance !== null && clearance <= OFF_CANVAS) {
      throw new Refusal(
        'no-depth-behind-the-bar',
        `Behind the bar are only ${say(clearance)}: no head fits without touching the canvas. Measure from the wall to the canvas again.`,
        {
          field: 'back.data.clearance',
          details: { clearance, least: OFF_CANVAS },
        },
      )
    }
    if (clearance !== null && fixing.length !== null && fixing.length !== undefined && fixing.length >= clearance) {
      findings.push({
        severity: 'settle',
        code: 'head-near-canvas',
        text: `The fixing is ${say(fixing.length)} long and there are ${say(clearance)} behind the bar: drive it in until less than that stands out.`,
        figures: { length: fixing.length, clearance },
      })
    }
    const inWall =
      clearance === null || typeof fixing.length !== 'number' ? null : fixing.length - clearance + OFF_CANVAS
    if (inWall !== null && clearance !== null && inWall < LEAST_IN_WALL) {
      findings.push({
        severity: 'settle',
        code: 'screw-too-short',
        text: `Standing out under the whole bar it has ${say(Math.max(0, inWall))} in the wall: take one ${say(clearance - OFF_CANVAS + LEAST_IN_WALL)} long or longer, or let less stand out.`,
        figures: { length: fixing.length ?? null, clearance, inWall, least: LEAST_IN_WALL },
      })
    }
    return {
      bearings: [carries('left', left, back.left.bar), carries('right', right, back.right.bar)],
      spacing: null,
      spacingFromInsets: null,
      wire: null,
      cleat: null,
      carriers: [left, right],
      sharing: 'moments',
      steps: [],
      figures: [
        ...(clearance === null
          ? []
          : [
              {
                key: 'stands-out',
                label: 'It stands out of the wall, head and all, at most',
                value: clearance - OFF_CANVAS,
                unit: 'mm' as const,
                working: `${say(clearance)} behind the bar less ${say(OFF_CANVAS)}`,
              },
            ]),
        ...pullOutFigure(question, Math.min(back.left.bar, back.right.bar), 0),
        ...nailFigure(fixing, inWall, say),
      ],
      findings: [...findings, ...squareFindings(back.diagonals, work, say)],
      needs: [
        { what: fixing.name, count: 2, per: 'wall' },
        { what: 'bottom pad or stop', count: 2, per: 'work' },
      ],
      cautions: [
        'Nothing may touch the back of the canvas: less stands out of the wall than the bar is deep.',
        'Bottom stops or pads: such works walk with vibration.',
        'A backing board covers the bar; then choose another method.',
      ],
    }
  },
})

/** What two nails hold of being pulled straight out of wood. Only from measured figures; a screw's packet says its own. */
function nailFigure(fixing: Fixing, inWall: number | null, say: (mm: number) => string): readonly PlainFigure[] {
  if (fixing.kind !== 'nail' || typeof fixing.shank !== 'number' || inWall === null || inWall <= 0) return []
  return [
    {
      key: 'nails-hold',
      label: 'Two nails in a stud or backing may be pulled straight out with',
      value: 2 * nailWithdrawal({ gravity: SOFTWOOD, diameter: fixing.shank, into: inWall }).allowableN,
      unit: 'N',
      working: `${say(fixing.shank)} thick, ${say(inWall)} deep in softwood of specific gravity ${SOFTWOOD}; next to nothing in bare board`,
    },
  ]
}

/** The place nearest to `wanted` between `from` and `to` that keeps `clear` of every range; null where there is none. */
export function clearPlace(
  wanted: number,
  ranges: readonly { readonly from: number; readonly to: number }[],
  clear: number,
  from: number,
  to: number,
): number | null {
  const candidates = [wanted, ...ranges.flatMap(range => [range.from - clear, range.to + clear])]
  const free = candidates.filter(
    x => x > from && x < to && ranges.every(range => x <= range.from - clear + 1e-9 || x >= range.to + clear - 1e-9),
  )
  let best: number | null = null
  for (const x of free) if (best === null || Math.abs(x - wanted) < Math.abs(best - wanted)) best = x
  return best
}
