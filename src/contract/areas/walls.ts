/**
 * Works on walls. `wall.elevation` gives the facts of one face in one show; what follows from them (marks, chains,
 * findings) is computed by src/hang and src/layout wherever it is shown, so that screen and paper cannot differ.
 */
import * as z from 'zod'
import { fixingShapes } from '../../hang/fixing-shapes.ts'
import { hangRules } from '../../hang/marks-shape.ts'
import { labelFacts, labelRulesShape } from '../../layout/labels-shape.ts'
import { procedure } from '../procedure.ts'
import {
  changes,
  clash,
  done,
  finding,
  id,
  lengthUnit,
  longText,
  lux,
  made,
  millimetres,
  name,
  share,
  shortText,
  size,
  updated,
} from '../shared.ts'
import { fixingRow } from './fixings-shape.ts'
import { madeMark } from './marks.ts'
import { wallRow, wallType } from './rooms.ts'
import { placedSet } from './sets.ts'
import { colour, glazing, hangingMethod, hangingSize, seenFrom, sensitivity } from './works-shape.ts'

export const heightRule = z.enum(['centre', 'top', 'bottom', 'eye'])
/** A placement follows its face's rule, another rule, or stands where a hand put its centre. */
export const placementRule = z.enum(['face', 'centre', 'top', 'bottom', 'eye', 'hand'])
export const placementState = z.enum(['planned', 'hung', 'level', 'locked', 'checked'])
export const labelSide = z.enum(['', 'left', 'right', 'below'])
export const viewer = z.strictObject({ kind: z.enum(['standing', 'seated', 'wheelchair', 'child']), share })

export const facePlan = z.strictObject({
  /** The height that the face's rule hangs to, above the floor at x = 0, and whether it is the house rule. */
  centreLine: z.number(),
  /** As it was set: above the floor at the point that the wall's `datumBy` names. Along a ramp, both are that. */
  centreLineSet: z.number(),
  centreLineFrom: z.enum(['house rule', 'this wall']),
  /** The floor that the line follows along a ramp, as the wall's; empty where the line is level. */
  ramp: z.array(z.tuple([z.number(), z.number()])),
  rule: heightRule,
  eyeFraction: z.number(),
  plannedLux: z.number().nullable(),
  visitorOrder: z.number().nullable(),
  viewingDistance: z.number().nullable(),
  viewers: z.array(viewer),
  colour: z.string(),
  note: z.string(),
})

/** What a kind of fixing holds in a show, and whether anything anywhere still needs it. */
const fixingUse = z.strictObject({
  fixing: id,
  /** Null where nobody has counted. */
  inStock: z.int().nullable(),
  /** Works that hang on it or are kept by it, and holes made for it, over all shows: none, and it may be removed. */
  works: z.int(),
  holes: z.int(),
  /** In the show that was asked for, wall by wall. */
  here: z.array(
    z.strictObject({
      placement: id,
      work: id,
      title: z.string(),
      face: id,
      room: z.string(),
      wall: z.string(),
      wallType,
      /** It carries the work, or keeps it: a lock, a plate’s screw. */
      does: z.enum(['holds', 'keeps']),
    }),
  ),
})

export const placedWork = z.strictObject({
  placement: id,
  entry: id,
  work: id,
  running: z.string(),
  number: z.string(),
  title: z.string(),
  maker: z.string(),
  dateText: z.string(),
  medium: z.string(),
  size: hangingSize.nullable(),
  mass: z.number().nullable(),
  glazing,
  sensitivity,
  lightLimit: z.number().nullable(),
  picture: z.string().nullable(),
  back: z.strictObject({ method: hangingMethod, data: z.record(z.string(), z.json()), seenFrom }).nullable(),
  fixing: fixingRow.nullable(),
  /** What keeps it besides: a lock, a plate’s screw. */
  keeper: fixingRow.nullable(),
  /** What opens the lock. */
  lockTool: z.string(),
  hooksApart: z.number().nullable(),
  /** Centre of the work along the wall. */
  x: z.number(),
  rule: placementRule,
  /** Height that its own rule hangs to (centre, top, bottom, eye or the centre by hand); null where it follows the face. */
  y: z.number().nullable(),
  /** The height of its centre that follows, above the floor at x = 0. */
  centreY: z.number(),
  held: z.boolean(),
  state: placementState,
  labelSide,
  label: labelFacts,
  /** How its parts stand, where it is a set; its size and mass are those of the whole. */
  set: placedSet.nullable(),
  note: z.string(),
})
export type PlacedWork = z.output<typeof placedWork>

/** House rules that an elevation is checked against. */
export const wallRules = z.strictObject({
  centreLine: z.number(),
  minimumGap: z.number(),
  minimumMargin: z.number(),
  liftOn: z.number(),
  sheetStepMm: z.number(),
  /** Room for the tools of locks and screws. */
  tools: z.strictObject({ lockRoom: z.number(), handRoom: z.number(), driverRoom: z.number() }),
  /** What its marks are computed and judged by. */
  hang: hangRules,
  labels: labelRulesShape,
  /** Sections whose works hang in stacks or grids: what they ask, and their works here, by placement. */
  stacks: z.array(
    z.strictObject({
      hang: z.enum(['stacks', 'grid']),
      gapDown: z.number(),
      gapAcross: z.number(),
      works: z.array(id),
    }),
  ),
})

export const elevation = z.strictObject({
  exhibition: id,
  exhibitionTitle: z.string(),
  closed: z.boolean(),
  /** `labelLine`: height that its labels hang to, above the floor; null where the house rule gives it. */
  room: z.strictObject({ id, name: z.string(), labelLine: z.number().nullable() }),
  wall: wallRow,
  plan: facePlan,
  rules: wallRules,
  works: z.array(placedWork),
  /** Marks that were made on this face for this show, and the holes that stayed. */
  made: z.array(madeMark),
  layouts: z.array(z.strictObject({ id, name: z.string(), at: z.string(), by: z.string(), works: z.int() })),
  settled: z.array(
    z.strictObject({
      id,
      code: z.string(),
      subject: z.string(),
      figures: z.string(),
      reason: z.string(),
      by: z.string(),
    }),
  ),
})
export type Elevation = z.output<typeof elevation>

/** Where a work shall stand. */
const place = z.strictObject({
  entry: id,
  face: id,
  x: millimetres,
  rule: placementRule,
  y: millimetres.nullable(),
  /** Where it stood when the change was begun; null when it was not placed. Another place now is a clash. */
  was: z.strictObject({ face: id, x: millimetres, rule: placementRule, y: millimetres.nullable() }).nullable(),
  /** How far its hooks are set apart with that, as they were and shall be: both go through or neither. */
  hooksApart: z.strictObject({ was: size.nullable(), to: size.nullable() }).optional(),
})

export const wallsArea = {
  'wall.elevation': procedure(
    'read',
    'Gives one face in one show: the wall, the works on it, what hangs them, the rules in force.',
    z.strictObject({ exhibition: id, face: id }),
    elevation,
  ),
  'wall.plan': procedure(
    'write',
    'Changes what a show plans for a face: centre line, height rule, light level, visitor’s order, viewers, distance.',
    z.strictObject({
      exhibition: id,
      face: id,
      changes: changes({
        centreLine: millimetres.nullable(),
        rule: heightRule,
        eyeFraction: share,
        plannedLux: lux.nullable(),
        visitorOrder: z.number().min(-1e6).max(1e6).nullable(),
        viewingDistance: size.nullable(),
        viewers: z.array(viewer).max(20),
        colour,
        note: longText,
      }),
    }),
    updated,
  ),
  'placement.put': procedure(
    'write',
    'Puts works on walls or moves them, all as one edit. A held or hung work that would move is refused.',
    z.strictObject({ exhibition: id, places: z.array(place).min(1).max(2000), label: z.string().max(200).optional() }),
    z.strictObject({ placements: z.array(id), clashes: z.array(clash) }),
  ),
  'placement.remove': procedure(
    'write',
    'Takes works off the wall; they stay in the show.',
    z.strictObject({ placements: z.array(id).min(1).max(2000) }),
    z.strictObject({ removed: z.int() }),
  ),
  'placement.update': procedure(
    'write',
    'Changes how placed works are held, fixed and labelled.',
    z.strictObject({
      id,
      changes: changes({
        held: z.boolean(),
        fixing: id.nullable(),
        keeper: id.nullable(),
        lockTool: shortText,
        hooksApart: size.nullable(),
        labelSide,
        note: longText,
      }),
    }),
    updated,
  ),
  'placement.hold': procedure(
    'write',
    'Holds placements where they are, or lets them go.',
    z.strictObject({ placements: z.array(id).min(1).max(2000), held: z.boolean() }),
    z.strictObject({ changed: z.int() }),
  ),
  'placement.setState': procedure(
    'write',
    'Says that works are planned, hung, level, locked or checked.',
    z.strictObject({ placements: z.array(id).min(1).max(2000), to: placementState }),
    z.strictObject({ changed: z.int() }),
  ),
  'placement.steps': procedure(
    'read',
    'Lists when each work of a wall was said to be hung, level, locked or checked, and by whom; the newest last.',
    z.strictObject({ exhibition: id, face: id }),
    z.strictObject({
      steps: z.array(z.strictObject({ placement: id, state: placementState, at: z.string(), by: z.string() })),
    }),
  ),
  'layout.keep': procedure(
    'write',
    'Keeps the present layout of a wall under a name.',
    z.strictObject({ exhibition: id, face: id, name }),
    made,
  ),
  'layout.compare': procedure(
    'read',
    'Compares a kept layout with the wall as it is: moved, added, gone, each with its figures.',
    z.strictObject({ id }),
    z.strictObject({
      name: z.string(),
      places: z.array(
        z.strictObject({
          entry: id,
          running: z.string(),
          title: z.string(),
          kept: z.strictObject({ x: z.number(), centreY: z.number() }).nullable(),
          now: z.strictObject({ x: z.number(), centreY: z.number(), here: z.boolean() }).nullable(),
          size: hangingSize.nullable(),
        }),
      ),
    }),
  ),
  'layout.take': procedure(
    'write',
    'Takes a kept layout back onto its wall, as one edit; held and hung works stay.',
    z.strictObject({ id }),
    z.strictObject({ moved: z.int(), added: z.int(), takenOff: z.int(), stayed: z.array(z.string()) }),
  ),
  'layout.remove': procedure('write', 'Forgets a kept layout.', z.strictObject({ id }), done),
  'fixing.list': procedure(
    'read',
    'Lists the kinds of fixing in the library.',
    z.strictObject({}),
    z.strictObject({ fixings: z.array(fixingRow) }),
  ),
  'fixing.add': procedure(
    'write',
    'Adds a kind of fixing, rated as its packet says.',
    z.strictObject({
      name,
      kind: z.enum(fixingShapes),
      holeOffset: z.number().min(-500).max(500),
      ratedKg: z.number().gt(0).max(10_000).nullable(),
      wallType: z.string().max(40).optional(),
      shank: size.nullable().optional(),
      length: size.nullable().optional(),
      head: size.nullable().optional(),
      bit: shortText.optional(),
      tool: shortText.optional(),
      source: shortText.optional(),
      note: longText.optional(),
    }),
    made,
  ),
  'fixing.addUsual': procedure(
    'write',
    'Adds the usual generic kinds that the library does not have yet, as one edit and without any rating.',
    z.strictObject({}),
    z.strictObject({ added: z.int() }),
  ),
  'fixing.update': procedure(
    'write',
    'Changes a kind of fixing.',
    z.strictObject({
      id,
      changes: changes({
        name,
        kind: z.enum(fixingShapes),
        holeOffset: z.number().min(-500).max(500),
        ratedKg: z.number().gt(0).max(10_000).nullable(),
        wallType: z.string().max(40),
        shank: size.nullable(),
        length: size.nullable(),
        head: size.nullable(),
        bit: shortText,
        tool: shortText,
        source: shortText,
        note: longText,
      }),
    }),
    updated,
  ),
  'fixing.rate': procedure(
    'write',
    'Writes down what a packet says a fixing is rated for in one type of wall; in place of what was there.',
    z.strictObject({
      id,
      wallType,
      /** Null where the packet says: not in this wall. */
      ratedKg: z.number().gt(0).max(10_000).nullable(),
      /** Where the figure stands. A rating without a source is nobody's. */
      source: z.string().trim().min(1).max(500),
      /** The rating that the change was based on, null for none; another one now is a clash. */
      was: z.number().nullable().optional(),
    }),
    updated,
  ),
  'fixing.unrate': procedure(
    'write',
    'Takes the rating for one type of wall back.',
    z.strictObject({ id, wallType }),
    done,
  ),
  'fixing.copy': procedure(
    'write',
    'Adds another kind of fixing with everything that is known of one, its ratings too, to be changed from there.',
    z.strictObject({ id, name }),
    made,
  ),
  'fixing.remove': procedure(
    'write',
    'Removes a kind of fixing from the library; refused while a work hangs on it or a hole was made for it, in any show.',
    z.strictObject({ id }),
    done,
  ),
  'fixing.uses': procedure(
    'read',
    'Says of each kind of fixing how many are in stock, what it holds in a show, and how often it is used in all shows.',
    z.strictObject({ exhibition: id.nullable() }),
    z.strictObject({ fixings: z.array(fixingUse) }),
  ),
  'finding.list': procedure(
    'read',
    'Lists every finding of the planning checks, of a show or of one face, in the unit asked for, else in that of the desk.',
    z.strictObject({ exhibition: id, face: id.optional(), unit: lengthUnit.optional() }),
    z.strictObject({ findings: z.array(finding) }),
  ),
  'finding.settle': procedure(
    'write',
    'Settles a finding, of one work or of several that a loan says it alike of, with a reason; it comes back when its figures change.',
    z.strictObject({
      code: z.string().max(60),
      subject: z.string().max(60),
      /** Others of the same code and figures, settled with it: works of which a loan says it alike. */
      also: z.array(z.string().max(60)).max(1000).optional(),
      figures: z.string().max(4000),
      reason: z.string().trim().min(1).max(500),
    }),
    made,
  ),
  'finding.unsettle': procedure(
    'write',
    'Takes a settlement back, and those that were made with it.',
    z.strictObject({ id, also: z.array(id).max(1000).optional() }),
    done,
  ),
} as const
