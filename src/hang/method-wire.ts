/**
 * Wire on two hooks, or on one with a loud caution. What is measured: the two rings, and either the taut length of the
 * wire or its drop pulled up at one or two points. The drop on the wall follows from the spacing of the hooks.
 */
import * as z from 'zod'
import { Refusal } from '../contract/refusal.ts'
import type { Point } from '../geometry/rect.ts'
import { numberAt } from './back.ts'
import { choiceField, measureField, pairFields, ringScrewField } from './back-fields.ts'
import { measure, pairDrawing } from './drawing-pieces.ts'
import { carries, measured, measuredOrZero, pairOn, pairShape, spacingFinding } from './measures.ts'
import type { HangQuestion, PlainFigure, PlainFinding } from './method.ts'
import { defineMethod } from './method.ts'
import { ringScrewFinding } from './method-d-rings.ts'
import { pullOutFigure } from './pull-out.ts'
import { STAND_OFF, wireSection } from './section.ts'
import { diagonalFields, diagonals, squareFindings } from './square.ts'
import type { WireAnswer } from './wire.ts'
import { hooksForRise, solveWire, wireRise } from './wire.ts'

const data = z.strictObject({
  ...pairShape,
  wire: z.discriminatedUnion('by', [
    z.strictObject({ by: z.literal('length'), length: measured }),
    z.strictObject({ by: z.literal('drop'), drop: measured, apart: measuredOrZero }),
  ]),
  /** Length of the screws that hold the rings on the frame. */
  ringScrew: measured.nullable().optional(),
  diagonals,
})

/** A spacing that a person sets: whole steps of this, mm. */
const HOOK_STEP = 5
/** Framing trade, common practice: a wire breaks at no less than 3 (coated) or 4 (galvanised) times the work. */
const WIRE_STRENGTH = 4

export const wire = defineMethod({
  key: 'wire',
  name: 'Wire',
  does: 'A wire between two rings rests on two hooks; on one only for the smallest works.',
  schema: data,
  fixings: ['hook'],
  keepers: [],
  minutes: [12, 18],
  accuracy: '±3 to 6 mm in height',
  adjust: [
    'Level: slide the wire on its hooks.',
    'Height: set the hooks closer or wider, or take up the wire; it stretches in its first day.',
  ],
  comesDown: [
    'Lift it straight up until the wire is free of both hooks, then away from the wall.',
    'Look at the wire before it hangs anywhere again; draw the hooks, fill the holes.',
  ],
  section: (raw, work, fixing) =>
    wireSection(
      numberAt(raw, ['wire', 'drop']) ?? (numberAt(raw, ['left', 'drop']) ?? work.height / 3) / 2,
      work,
      fixing,
    ),
  fields: [
    ...pairFields('ring', 'From the top edge down to the ring that holds the wire.'),
    measureField(['spacing'], 'Between the rings', 'From the middle of one ring to the middle of the other.'),
    choiceField(
      ['wire', 'by'],
      'The wire was measured',
      'Its drop pulled taut with one finger or two, or its whole length between the rings.',
      [
        { value: 'drop', label: 'by its drop, pulled taut' },
        { value: 'length', label: 'by its length' },
      ],
    ),
    measureField(
      ['wire', 'drop'],
      'Drop of the wire, pulled up',
      'From the top edge down to the wire where it is pulled up, as hard as the work will pull.',
    ),
    measureField(['wire', 'apart'], 'Between the two fingers', '0 for one finger in the middle.'),
    measureField(['wire', 'length'], 'Length of the wire', 'Taut, from ring to ring.'),
    ringScrewField,
    ...diagonalFields,
  ],
  draw: (raw, work) => {
    const { left, right, dimensions } = pairDrawing(raw, work, [], work.height / 3)
    const length = numberAt(raw, ['wire', 'length'])
    const rings = right.x - left.x
    const apart = Math.min(numberAt(raw, ['wire', 'apart']) ?? 0, rings)
    const risen = length !== null && length > rings ? wireRise(rings, length, apart) : left.y / 2
    const pulled = numberAt(raw, ['wire', 'drop']) ?? Math.max(0, left.y - risen)
    const middle = (left.x + right.x) / 2
    const a: Point = { x: middle - apart / 2, y: pulled }
    const b: Point = { x: middle + apart / 2, y: pulled }
    return {
      rings: [left, right],
      lines: [{ kind: 'wire', points: [left, a, b, right] }],
      blocks: [],
      dimensions: [
        ...dimensions,
        measure(raw, ['wire', 'drop'], { x: middle, y: 0 }, { x: middle, y: pulled }),
        measure(raw, ['wire', 'apart'], a, b),
        measure(raw, ['wire', 'length'], left, right),
      ],
    }
  },
  answer: (back, question) => {
    const { work, rules, say, fixing } = question
    const pair = pairOn(back, work)
    const rings = pair.right - pair.left
    const hooks = question.hooksApart ?? usualHooks(rings)
    const solved = namingFields(() =>
      solveWire({
        rings,
        ringDrop: (back.left.drop + back.right.drop) / 2,
        wire: back.wire,
        hooks,
        mass: work.mass,
        leastAngle: rules.leastWireAngle,
      }),
    )
    const middle = (pair.left + pair.right) / 2
    const one = hooks === 0
    const carriers = one ? [middle] : [middle - hooks / 2, middle + hooks / 2]
    const half = { mm: rings - hooks, over: 2 }
    return {
      bearings: one
        ? [carries('middle', middle, solved.drop)]
        : [carries('left', middle - hooks / 2, solved.drop), carries('right', middle + hooks / 2, solved.drop)],
      spacing: one ? null : hooks,
      spacingFromInsets: null,
      wire: solved,
      cleat: null,
      carriers,
      sharing: 'even',
      steps: [
        {
          key: 'wire-drop',
          label: one
            ? 'drop on one hook: rings less the rise'
            : `drop on hooks ${say(hooks)} apart: rings less the rise`,
          terms: [
            { op: '+', mm: solved.ringDrop },
            { op: '−', mm: solved.rise },
          ],
          value: solved.drop,
        },
        {
          key: 'wire-run',
          label: one ? 'from the middle to a ring' : 'from a hook to its ring, sideways',
          terms: [{ op: '+', ...half }],
          value: half.mm / 2,
        },
      ],
      figures: [...wireFigures(solved, question), ...pullOutFigure(question, solved.drop, STAND_OFF)],
      findings: [
        ...spacingFinding(pair, rules.measureTolerance, say),
        ...ringFinding(back.left.drop, back.right.drop, rules.dropTolerance, say),
        ...wireFindings(solved, question, middle),
        ...ringScrewFinding(back.ringScrew ?? null, question),
        ...squareFindings(back.diagonals, work, say),
      ],
      needs: [
        { what: fixing.name, count: one ? 1 : 2, per: 'wall' },
        { what: 'bottom pad', count: 2, per: 'work' },
      ],
      cautions: [
        ...(one ? ['ONE HOOK: nothing holds this work if the hook fails. Use two unless the work is very small.'] : []),
        'Look at wire and rings first: replace what is rusted, crimped or frayed; never a nail instead of a hook.',
        'Turn the rings towards the pull of the wire, not square to the frame.',
      ],
    }
  },
})

/** The solver's refusals name its own question; here they name the measure of the back, or the hooks as asked. */
function namingFields(solve: () => WireAnswer): WireAnswer {
  try {
    return solve()
  } catch (no) {
    if (!(no instanceof Refusal)) throw no
    const { field = '', details } = no
    const named = field === 'hooks' ? 'hooksApart' : field === 'rings' ? 'back.data.spacing' : `back.data.${field}`
    throw new Refusal(no.code, no.message, { field: named, details })
  }
}

/** Half as far apart as the rings, a usual place; the person moves them. Common practice: half the width, or thirds. */
function usualHooks(rings: number): number {
  return Math.round(rings / 2 / 10) * 10 < rings ? Math.round(rings / 2 / 10) * 10 : rings / 2
}

/**
 * The closest hooks that give the least angle and hide behind the top edge, in whole steps; null where none does. mm.
 */
export function bestHooks(wire: WireAnswer, hidden: number): number | null {
  const rise = wire.ringDrop - hidden
  if (!(rise > 0)) return null
  const hides = wireRise(wire.rings, wire.length, 0) <= rise ? 0 : hooksForRise(wire.rings, wire.length, rise)
  if (hides === null) return null
  const least = Math.max(wire.hooksForLeastAngle, hides, HOOK_STEP)
  const best = Math.ceil(least / HOOK_STEP - 1e-9) * HOOK_STEP
  return best < wire.rings ? best : null
}

function wireFigures(solved: WireAnswer, { work, rules, say, sayKg }: HangQuestion): readonly PlainFigure[] {
  const best = bestHooks(solved, rules.hookHidden)
  const mass = work.mass ?? null
  const found: PlainFigure[] = []
  if (best !== null) {
    const wire = { by: 'length', length: solved.length } as const
    const there = solveWire({ rings: solved.rings, ringDrop: solved.ringDrop, wire, hooks: best })
    found.push({
      key: 'best-hooks',
      label: 'Best between the hooks',
      value: best,
      unit: 'mm',
      working: `the closest with ${rules.leastWireAngle}° at least and hidden: the wire then stands at ${there.angle.toFixed(1)}°, its drop is ${say(there.drop)}`,
    })
  }
  if (mass !== null) {
    found.push({
      key: 'wire-strength',
      label: 'The wire breaks at no less than',
      value: mass * WIRE_STRENGTH,
      unit: 'kg',
      working: `${WIRE_STRENGTH} × ${sayKg(mass)}, galvanised; 3 × if coated (framing trade, common practice)`,
    })
  }
  return found
}

function ringFinding(left: number, right: number, tolerance: number, say: (mm: number) => string): PlainFinding[] {
  const difference = Math.abs(left - right)
  if (difference <= tolerance + 1e-9) return []
  return [
    {
      severity: 'settle',
      code: 'rings-uneven',
      text: `The rings are ${say(difference)} apart in height: slide the wire until the work is level, and check the height then.`,
      figures: { left, right, difference },
    },
  ]
}

function wireFindings(solved: WireAnswer, { work, say, rules }: HangQuestion, middle: number): readonly PlainFinding[] {
  const found: PlainFinding[] = []
  const degree = (angle: number) => `${angle.toFixed(1)}°`
  if (!solved.steepEnough) {
    found.push({
      severity: 'settle',
      code: 'wire-flat',
      text: `The wire stands at ${degree(solved.angle)} and pulls ${solved.tensionFactor.toFixed(2)} times the weight at each ring. Hooks ${say(solved.hooksForLeastAngle)} apart give ${degree(rules.leastWireAngle)}.`,
      figures: {
        angle: solved.angle,
        least: rules.leastWireAngle,
        tensionFactor: solved.tensionFactor,
        hooks: solved.hooks,
        hooksForLeastAngle: solved.hooksForLeastAngle,
      },
    })
  }
  const plain = solved.plainSubtraction
  if (plain !== null && Math.abs(plain.tooHigh) > rules.measureTolerance) {
    const way = plain.tooHigh > 0 ? 'too high' : 'too low'
    found.push({
      severity: 'fits',
      code: 'wire-drop-solved',
      text: `The drop of ${say(plain.drop)} as measured would have hung it ${say(Math.abs(plain.tooHigh))} ${way}; the marks use ${say(solved.drop)}.`,
      figures: { measured: plain.drop, apart: plain.apart, drop: solved.drop, tooHigh: plain.tooHigh },
    })
  }
  if (solved.drop < rules.hookHidden) {
    found.push({
      severity: 'settle',
      code: 'hook-shows',
      text: `The wire comes within ${say(solved.drop)} of the top edge: the hooks may show.`,
      figures: { drop: solved.drop, hidden: rules.hookHidden },
    })
  }
  if (solved.hooks === 0) {
    // Without friction a frame on one hook stays level only if its mass lies low enough: (A/2)² / rise below the rings.
    const needed = (solved.rings / 2) ** 2 / solved.rise
    const below = work.height / 2 - solved.ringDrop
    found.push({
      severity: 'settle',
      code: 'one-hook',
      text: `One hook carries everything, and only friction keeps the work level. Two hooks are safer.`,
      figures: { needed, below, stable: below > needed },
    })
  }
  if (work.massFromLeft !== null && work.massFromLeft !== undefined) {
    const off = work.massFromLeft - middle
    if (Math.abs(off) > work.width / 50) {
      found.push({
        severity: 'settle',
        code: 'mass-off-centre',
        text: `The weight lies ${say(Math.abs(off))} beside the middle of the rings: the work will slide on its wire until it hangs out of level.`,
        figures: { off },
      })
    }
  }
  return found
}
