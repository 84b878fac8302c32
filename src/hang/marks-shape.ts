/**
 * What marks are asked from and what they answer, as schemas of the contract. Types are read off them. Everything is
 * in millimetres, kilograms and degrees; each force is there twice, `…N` and `…Kg`; printed lengths carry both units.
 */
import * as z from 'zod'
import { finding } from '../contract/shared.ts'
import { houseRules } from '../model/house-rules.ts'
import { fixingShapes } from './fixing-shapes.ts'
import type { HangRuleKey } from './rules.ts'

const mm = z.number().min(-1e6).max(1e6)
const size = z.number().gt(0).max(1e5)
const list = <T extends z.ZodType>(item: T) => z.array(item).readonly()
const rectangle = {
  id: z.string(),
  kind: z.string(),
  x: mm,
  y: mm,
  width: z.number().min(0).max(1e6),
  height: z.number().min(0).max(1e6),
  label: z.string(),
} as const

const profile = z
  .array(z.tuple([mm, mm]).readonly())
  .max(1000)
  .readonly()

export const wallFacts = z.strictObject({
  length: size,
  height: size,
  wallType: z.string(),
  datum: mm.nullable(),
  ramp: z.boolean().optional(),
  floor: profile,
  skirting: mm.nullable(),
  studFirst: mm.nullable(),
  studSpacing: mm.nullable(),
  backingFrom: mm.nullable(),
  backingTo: mm.nullable(),
  openings: z.array(z.strictObject(rectangle)).max(1000).readonly(),
  keepClears: z
    .array(z.strictObject({ ...rectangle, margin: z.number().min(0).max(1e5), reason: z.string() }))
    .max(1000)
    .readonly(),
  rail: profile.nullable().optional(),
  railKgPerMetre: z.number().gt(0).max(1e5).nullable().optional(),
  ceiling: profile.nullable().optional(),
  joints: z.array(mm).max(1000).readonly().nullable().optional(),
  studs: z.array(mm).max(1000).readonly().nullable().optional(),
})

export const fixing = z.strictObject({
  name: z.string().min(1).max(200),
  kind: z.enum(fixingShapes),
  holeOffset: z.number().min(-500).max(500),
  ratedKg: z.number().gt(0).max(1e4).nullable(),
  wallType: z.string().optional(),
  shank: size.nullable().optional(),
  length: size.nullable().optional(),
  head: size.nullable().optional(),
})

/** A figure within the bounds of its house rule. */
const within = (key: HangRuleKey) => z.number().min(houseRules[key].least).max(houseRules[key].most)

export const hangRules = z.strictObject({
  houseFactor: within('houseFactor'),
  leastWireAngle: within('leastWireAngle'),
  hookHidden: within('hookHidden'),
  measureTolerance: within('measureTolerance'),
  dropTolerance: within('dropTolerance'),
  nailsIn: within('nailsIn'),
  clearOfBrace: within('clearOfBrace'),
  cleatShorter: within('cleatShorter'),
  screwsApart: within('screwsApart'),
  markFromEnd: within('markFromEnd'),
  besideService: within('besideService'),
  boardFace: within('boardFace'),
  plasterFace: within('plasterFace'),
  leastBehind: within('leastBehind'),
  onePersonKg: within('onePersonKg'),
  onePersonSize: within('onePersonSize'),
  liftingPlanKg: within('liftingPlanKg'),
})

export const steps = z.strictObject({
  mm: z.number().gt(0).max(10),
  fraction: z.union([z.literal(8), z.literal(16), z.literal(32)]),
})

export const lengthUnit = z.enum(['mm', 'cm', 'in'])

/**
 * `fixings`: one for all marks that carry, or one for each from left to right; `keeper`: what keeps the work besides, in
 * every mark that keeps. A method that needs no fixing, such as a plinth, is asked with none.
 */
export const marksQuestion = z.strictObject({
  subject: finding.shape.subject.optional(),
  work: z.strictObject({
    height: size,
    width: size,
    depth: size.nullable().optional(),
    mass: z.number().gt(0).max(1e5).nullable().optional(),
    massFromLeft: mm.nullable().optional(),
  }),
  back: z.strictObject({
    method: z.string(),
    seenFrom: z.enum(['front', 'back']),
    data: z.record(z.string(), z.json()),
  }),
  centre: z.strictObject({ x: mm, y: mm }),
  /** Which rule gave the height of the centre; the working follows it. By hand where left out. */
  height: z
    .strictObject({
      rule: z.enum(['centre', 'top', 'bottom', 'eye', 'hand']),
      eyeFraction: z.number().min(0).max(1).nullable().optional(),
    })
    .optional(),
  wall: wallFacts,
  /** Where its places along the wall are measured from: the left edge of its set. The wall’s left end where left out. */
  origin: mm.optional(),
  /** Height of the level line where the wall has none of its own. */
  datum: mm.optional(),
  hooksApart: z.number().min(0).max(1e5).nullable().optional(),
  fixings: z.array(fixing).max(50).readonly(),
  keeper: fixing.nullable().optional(),
  rules: hangRules.partial().optional(),
  steps: steps.optional(),
  /** The unit that sentences speak. */
  unit: lengthUnit.optional(),
})

const point = z.strictObject({ x: z.number(), y: z.number() })
export const printed = z.strictObject({ mm: z.number(), inches: z.number() })
const line = z.strictObject({ expression: z.string(), value: z.string() })

/** One line of working, written out in each unit: `1 480 + 910 / 2 − 140` and `1 795`. */
export const workingLine = z.strictObject({ key: z.string(), label: z.string(), mm: line, in: line })

export const mark = z.strictObject({
  side: z.enum(['left', 'middle', 'right']),
  /** It carries the work, or only keeps it: a lock, a plate’s screw. */
  does: z.enum(['carries', 'keeps']),
  /** Its own name, such as `lock`; null for the ordinary left, right or middle mark. */
  name: z.string().nullable(),
  on: z.enum(['wall', 'rail', 'floor']),
  from: z.enum(['top', 'bottom']),
  fixing: z.strictObject({
    name: z.string(),
    kind: z.string(),
    holeOffset: z.number(),
    ratedKg: z.number().nullable(),
  }),
  /** From the work’s left edge, and below its top edge. */
  fromLeft: z.number(),
  drop: z.number(),
  bearing: point,
  hole: point,
  /** Height of the floor under the mark against the floor at x = 0. */
  floorHere: z.number(),
  fromLine: z.number(),
  fromFloor: z.number(),
  holeFromLine: z.number(),
  holeFromFloor: z.number(),
  toStud: z.number().nullable(),
  onStud: z.boolean().nullable(),
  backed: z.boolean().nullable(),
  printed: z.strictObject({
    x: printed,
    fromLine: printed,
    fromFloor: printed,
    holeOffset: printed,
    holeFromLine: printed,
    holeFromFloor: printed,
  }),
})

const force = { tensionN: z.number(), tensionKg: z.number() } as const
export const wireAnswer = z.strictObject({
  rings: z.number(),
  ringDrop: z.number(),
  hooks: z.number(),
  length: z.number(),
  rise: z.number(),
  drop: z.number(),
  angle: z.number(),
  tensionFactor: z.number(),
  forces: z
    .strictObject({
      ...force,
      ringInwardN: z.number(),
      ringInwardKg: z.number(),
      ringUpN: z.number(),
      ringUpKg: z.number(),
      hookDownN: z.number(),
      hookDownKg: z.number(),
      hookResultantN: z.number(),
      hookResultantKg: z.number(),
      hookLean: z.number(),
      hookSidewaysN: z.number(),
      hookSidewaysKg: z.number(),
      hookGrippedN: z.number(),
      hookGrippedKg: z.number(),
    })
    .nullable(),
  leastAngle: z.number(),
  steepEnough: z.boolean(),
  hooksForLeastAngle: z.number(),
  plainSubtraction: z.strictObject({ drop: z.number(), apart: z.number(), tooHigh: z.number() }).nullable(),
})

export const wireQuestion = z.strictObject({
  rings: size,
  ringDrop: size,
  wire: z.discriminatedUnion('by', [
    z.strictObject({ by: z.literal('length'), length: size }),
    z.strictObject({ by: z.literal('drop'), drop: size, apart: z.number().min(0).max(1e5) }),
  ]),
  hooks: z.number().min(0).max(1e5),
  mass: z.number().gt(0).max(1e5).nullable().optional(),
  leastAngle: z.number().min(1).max(89).optional(),
})

export const loads = z.strictObject({
  massKg: z.number(),
  massN: z.number(),
  houseFactor: z.number(),
  rule: z.string(),
  shares: list(
    z.strictObject({
      shareN: z.number(),
      shareKg: z.number(),
      neededKg: z.number(),
      ratedKg: z.number().nullable(),
      holds: z.boolean().nullable(),
    }),
  ),
  oneGone: z
    .strictObject({ wholeKg: z.number(), leftKg: z.number().nullable(), holds: z.boolean().nullable() })
    .nullable(),
  holds: z.boolean().nullable(),
})

export const marksAnswer = z.strictObject({
  method: z.string(),
  methodName: z.string(),
  /** Edges of the work on the wall. */
  edges: z.strictObject({ left: z.number(), right: z.number(), top: z.number(), bottom: z.number() }),
  datum: z.number(),
  /** Floor under the work’s centre against the floor at x = 0. */
  floorAtCentre: z.number(),
  marks: list(mark),
  printed: z.strictObject({
    datum: printed,
    leftEdge: printed,
    width: printed,
    rightEdge: printed,
    height: printed,
    top: printed,
    bottom: printed,
    /** The line’s height above the floor under the work’s centre, and the bearing point’s. */
    lineAtCentre: printed,
    bearingAtCentre: printed,
    /** Between the outer marks, as measured; null with one mark. */
    between: printed.nullable(),
  }),
  working: list(workingLine),
  secondRoute: list(
    z.strictObject({
      side: z.string(),
      fromTop: z.number(),
      fromBottom: z.number(),
      difference: z.number(),
      agrees: z.boolean(),
    }),
  ),
  spacing: z
    .strictObject({ measured: z.number(), fromInsets: z.number(), difference: z.number(), agrees: z.boolean() })
    .nullable(),
  /** How far the printed marks alone would tilt the work. */
  level: z.strictObject({ apart: z.number(), error: z.number(), degrees: z.number(), corners: z.number() }).nullable(),
  wire: wireAnswer.nullable(),
  cleat: z
    .strictObject({
      from: z.number(),
      to: z.number(),
      sidePlay: z.number(),
      screws: list(z.strictObject({ x: z.number(), onStud: z.boolean(), printed })),
    })
    .nullable(),
  /** What else the method works out, each with its unit: a cable’s length, a tipping angle. */
  figures: list(
    z.strictObject({
      key: z.string(),
      label: z.string(),
      value: z.number(),
      unit: z.enum(['mm', 'kg', 'N', 'Nm', '°', 'kg/m', 'kg/m²', '']),
      working: z.string(),
    }),
  ),
  /** Cables, rods or chains on the wall, from what they hang on to the work. */
  hangers: list(z.strictObject({ from: point, to: point, length: z.number() })),
  /** What a lock register keeps: each lock's place on the wall, what it is and the tool that turns it. */
  locks: list(
    z.strictObject({
      name: z.string(),
      at: point,
      type: z.string(),
      tool: z.string(),
      /** The side that the tool comes in from, and what it needs free there; null where nobody measured it. */
      from: z.enum(['below', 'left', 'right']),
      room: z.number().nullable(),
    }),
  ),
  loads: loads.nullable(),
  findings: list(finding),
  cautions: list(z.string()),
  needs: list(z.strictObject({ what: z.string(), count: z.int(), per: z.enum(['wall', 'work', 'team']) })),
  adjust: list(z.string()),
  comesDown: list(z.string()),
  accuracy: z.string(),
})

export type MarksQuestion = z.output<typeof marksQuestion>
export type MarksAnswer = z.output<typeof marksAnswer>
export type Mark = z.output<typeof mark>
export type WorkingLine = z.output<typeof workingLine>
export type LengthUnit = z.output<typeof lengthUnit>
