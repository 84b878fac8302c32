/**
 * What a plinth and a case have in common: an object on a base that stands on the floor before the wall. Where the base
 * stands is marked on the floor; no hole is made. Its loads are what it puts on the floor and what tips it.
 */
import * as z from 'zod'
import { numberAt } from './back.ts'
import { measureField } from './back-fields.ts'
import { measure } from './drawing-pieces.ts'
import { keeps, measured, measuredOrZero } from './measures.ts'
import type {
  BackDrawing,
  BackField,
  Bearing,
  HangQuestion,
  PlainFigure,
  PlainFinding,
  SectionDrawing,
  WorkSize,
} from './method.ts'
import { box, dimension, type SectionWork } from './section.ts'
import { ballastFor, centreUp, floorLoad, massOf, type Piece, tippingAngle, tippingPush } from './standing.ts'
import { floorAt } from './wall.ts'

const mass = z.number().gt(0).max(1e5)

/** Measures of base and object that both methods take. */
export const standingShape = {
  base: z.strictObject({ height: measured, width: measured, depth: measured, mass: mass.nullable().optional() }),
  /** From under the object up to its own centre of mass. */
  massUp: measured.nullable().optional(),
  ballast: mass.nullable().optional(),
  /** From the floor up to the middle of the ballast. */
  ballastUp: measuredOrZero.nullable().optional(),
  /** kg/m² that the floor may carry. */
  floor: z.number().gt(0).max(1e6).nullable().optional(),
  /** From the wall to the back of the base. */
  off: measuredOrZero.nullable().optional(),
}

const shape = z.strictObject(standingShape)
export type Standing = z.output<typeof shape>

/** Bags of sand or shot in a base lie about so high. From memory. */
const BALLAST_UP = 50
/** A base that goes over at less than this wants ballast or an anchor. From memory; a house rule. */
export const LEAST_TIPPING = 10
const POUNDS_PER_FOOT = 4.88242763638305

export function standingFields(what: string): readonly BackField[] {
  return [
    measureField(['base', 'height'], `Height of the ${what}`, 'From the floor up to where the object stands.', {
      required: true,
    }),
    measureField(['base', 'width'], `Width of the ${what}`, 'Where it touches the floor, along the wall.', {
      required: true,
    }),
    measureField(['base', 'depth'], `Depth of the ${what}`, 'Where it touches the floor, out from the wall.', {
      required: true,
    }),
    measureField(['base', 'mass'], `Weight of the ${what}`, 'Empty, without object and ballast.', { kind: 'mass' }),
    measureField(
      ['massUp'],
      'Object’s centre of mass',
      'From under the object up to where it balances; half its height where nobody knows.',
    ),
    measureField(['ballast'], 'Ballast', 'Sand, shot or weights low in the base.', { kind: 'mass' }),
    measureField(['ballastUp'], 'Middle of the ballast', 'From the floor up; 50 mm is taken for bags on the bottom.'),
    measureField(['floor'], 'The floor may carry', 'As the building’s papers say, on each square metre.', {
      kind: 'number',
      unit: 'kg/m²',
    }),
    measureField(['off'], 'From the wall', 'From the wall to the back of the base.'),
  ]
}

/** Both front corners of the base, marked on the floor, measured from under the object. */
export function corners(back: Standing, work: WorkSize): readonly Bearing[] {
  const { width, height } = back.base
  return (['left', 'right'] as const).map(side => ({
    ...keeps(`${side} corner`, side, (work.width + (side === 'left' ? -width : width)) / 2, -height, work.height),
    does: 'carries',
    on: 'floor',
  }))
}

export interface StandingQuestion {
  readonly back: Standing
  readonly question: HangQuestion
  /** What stands above the base besides the object: a bonnet. Null mass where nobody weighed it. */
  readonly above: readonly { readonly mass: number | null; readonly up: number; readonly name: string }[]
  /** Its highest point above the floor: there a push tips it soonest. */
  readonly top: number
}

export function standingAnswer({ back, question, above, top }: StandingQuestion): {
  readonly figures: readonly PlainFigure[]
  readonly findings: readonly PlainFinding[]
} {
  const { work, say, sayKg } = question
  const { base } = back
  const unknown = [
    ...(typeof work.mass === 'number' ? [] : ['the object']),
    ...(typeof base.mass === 'number' ? [] : ['its base']),
    ...above.filter(one => one.mass === null).map(one => one.name),
  ]
  const findings = [...standsFinding(back, question)]
  if (unknown.length > 0) {
    findings.push({
      severity: 'settle',
      code: 'mass-unknown',
      text: `Nobody has weighed ${unknown.join(' and ')}: whether it tips, and what the floor carries, is not known.`,
      figures: {},
    })
    return { figures: [], findings }
  }
  const pieces: readonly Piece[] = [
    { mass: work.mass ?? 0, up: base.height + (back.massUp ?? work.height / 2) },
    { mass: base.mass ?? 0, up: base.height / 2 },
    ...above.map(one => ({ mass: one.mass ?? 0, up: one.up })),
  ]
  const ballastUp = back.ballastUp ?? BALLAST_UP
  const all = [...pieces, ...(typeof back.ballast === 'number' ? [{ mass: back.ballast, up: ballastUp }] : [])]
  const total = massOf(all)
  const across = Math.min(base.width, base.depth)
  const up = centreUp(all)
  const angle = tippingAngle(across, up)
  const load = floorLoad(total, base.width, base.depth)
  const figures: PlainFigure[] = [
    {
      key: 'whole-mass',
      label: 'All together',
      value: total,
      unit: 'kg',
      working: all.map(one => sayKg(one.mass)).join(' + '),
    },
    {
      key: 'centre-up',
      label: 'Centre of mass above the floor',
      value: up,
      unit: 'mm',
      working: 'each mass times its height, over all of it',
    },
    {
      key: 'tips-at',
      label: 'Tips when it leans',
      value: angle,
      unit: '°',
      working: `atan(${say(across / 2)} / ${say(up)})`,
    },
    {
      key: 'tips-push',
      label: 'Push at its top that tips it',
      value: tippingPush(total, across, top),
      unit: 'N',
      working: `${sayKg(total)} × ${say(across / 2)} / ${say(top)}`,
    },
    {
      key: 'floor-load',
      label: 'Load on the floor',
      value: load,
      unit: 'kg/m²',
      working: `${sayKg(total)} / (${say(base.width)} × ${say(base.depth)}) = ${(load / POUNDS_PER_FOOT).toFixed(0)} lb/ft²`,
    },
  ]
  if (angle < LEAST_TIPPING) {
    const needed = ballastFor(pieces, across, LEAST_TIPPING, ballastUp)
    if (needed !== null) {
      figures.push({
        key: 'ballast',
        label: `Ballast that lets it lean to ${LEAST_TIPPING}°`,
        value: needed,
        unit: 'kg',
        working: `its middle ${say(ballastUp)} above the floor`,
      })
    }
    findings.push({
      severity: 'settle',
      code: 'tips-easily',
      text: `It goes over when it leans by ${angle.toFixed(1)}°; the house rule is ${LEAST_TIPPING}°. ${needed === null ? 'No ballast is enough: take a wider base, or anchor it.' : `${sayKg(needed)} of ballast in all, a wider base, or an anchor.`}`,
      figures: { angle, least: LEAST_TIPPING, ballast: needed },
    })
  } else {
    findings.push({
      severity: 'fits',
      code: 'stands-firm',
      text: `It leans to ${angle.toFixed(1)}° before it goes over.`,
      figures: { angle, least: LEAST_TIPPING },
    })
  }
  return { figures, findings: [...findings, ...floorFindings(load, back.floor ?? null, question)] }
}

/** The object's bottom edge and the top of its base are one height; the placement says the one, the tape the other. */
function standsFinding(back: Standing, { work, centre, wall, placed, rules, say }: HangQuestion): PlainFinding[] {
  if (!placed) return []
  const bottom = centre.y - work.height / 2
  const top = floorAt(wall.floor, centre.x) + back.base.height
  const off = bottom - top
  if (Math.abs(off) <= rules.dropTolerance) return []
  return [
    {
      severity: 'settle',
      code: 'does-not-stand',
      text: `The object is placed with its bottom ${say(Math.round(Math.abs(off) * 10) / 10)} ${off > 0 ? 'above' : 'below'} the top of its base: set it to ${say(top + work.height / 2)}, or take another base.`,
      figures: { bottom, top, off, centreY: top + work.height / 2 },
    },
  ]
}

function floorFindings(load: number, rated: number | null, { sayKg }: HangQuestion): readonly PlainFinding[] {
  const figures = { load, rated }
  if (rated === null) {
    return [
      {
        severity: 'settle',
        code: 'floor-rating-unknown',
        text: `Nobody has said what the floor may carry: ask the building. It must be ${sayKg(load)} on each square metre at least.`,
        figures,
      },
    ]
  }
  return load > rated * (1 + 1e-9)
    ? [
        {
          severity: 'stop',
          code: 'floor-overloaded',
          text: `It puts ${sayKg(load)} on each square metre and the floor may carry ${sayKg(rated)}: spread it on a wider base or plate.`,
          figures,
        },
      ]
    : [
        {
          severity: 'fits',
          code: 'floor-holds',
          text: `The floor carries ${sayKg(rated)} on each square metre and has ${sayKg(load)}.`,
          figures,
        },
      ]
}

/** The object with the top of its base under it, and where its mass is. */
export function standingDrawing(raw: unknown, work: WorkSize): BackDrawing {
  const width = numberAt(raw, ['base', 'width'])
  const half = (width ?? work.width * 1.1) / 2
  const middle = work.width / 2
  const under = work.height
  const left = { x: middle - half, y: under }
  const right = { x: middle + half, y: under }
  const up = { x: middle, y: under - (numberAt(raw, ['massUp']) ?? work.height / 2) }
  return {
    rings: [up],
    lines: [{ kind: 'shelf', points: [left, right] }],
    blocks: [],
    dimensions: [measure(raw, ['base', 'width'], left, right), measure(raw, ['massUp'], { x: middle, y: under }, up)],
  }
}

/** Wall, base and object from the side; `y` from where the base stands. */
export function standingSection(raw: unknown, work: SectionWork, bonnet: number | null): SectionDrawing {
  const height = numberAt(raw, ['base', 'height'])
  const depth = numberAt(raw, ['base', 'depth'])
  const off = numberAt(raw, ['off'])
  const [h, d, x] = [height ?? 1000, depth ?? 450, off ?? 100]
  const thick = work.depth ?? d / 2
  return {
    bearing: { x, y: 0 },
    hole: null,
    parts: [
      box('shelf', x, 0, d, h),
      ...(bonnet === null ? [] : [box('frame' as const, x, h, d, bonnet)]),
      box('work', x + (d - thick) / 2, h, thick, work.height),
    ],
    dimensions: [
      dimension('base', { x: x + d, y: 0 }, { x: x + d, y: h }, height),
      dimension('depth', { x, y: -20 }, { x: x + d, y: -20 }, depth),
      dimension('from the wall', { x: 0, y: -90 }, { x, y: -90 }, off),
    ],
  }
}
