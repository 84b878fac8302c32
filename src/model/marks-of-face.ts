/**
 * From a work on a wall to the question for its marks, in one place, so that screen, sheet and findings ask the same.
 * The rule it keeps: what is not known gives no marks and says in words what to do about it.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import { marksFor } from '../hang/marks.ts'
import type { MarksAnswer, MarksQuestion } from '../hang/marks-shape.ts'
import { methodOf } from '../hang/methods.ts'
import type { Steps } from '../hang/printing.ts'

/** What came of asking for a work's marks: the answer, or in words why there is none. */
export type MarksOrWhy = { readonly answer: MarksAnswer } | { readonly problem: string }

export interface MarksStyle {
  readonly unit: 'mm' | 'cm' | 'in'
  readonly steps: Steps
}

/** Height of the level line above the floor at x = 0: the wall's own, else the height that this face hangs to, mm. */
export function datumOf({ wall, plan }: Pick<Elevation, 'wall' | 'plan'>): number {
  return wall.datum ?? plan.centreLine
}

/**
 * Stands in where nobody has chosen a fixing: the bearing point is known then, the hole is not, and it carries no
 * rating, so that nothing passes by it.
 */
function standIn(method: string): MarksQuestion['fixings'][number] {
  const kind = methodOf(method).fixings[0] ?? 'hook'
  return { name: `a ${kind} that is not chosen yet`, kind, holeOffset: 0, ratedKg: null }
}

function fixingOf({ fixing, back }: PlacedWork): MarksQuestion['fixings'][number] {
  if (fixing === null) return standIn(back?.method ?? '')
  return plainFixing(fixing)
}

function plainFixing(fixing: NonNullable<PlacedWork['fixing']>): MarksQuestion['fixings'][number] {
  const { name, kind, holeOffset, ratedKg, wallType, shank, length } = fixing
  return { name, kind, holeOffset, ratedKg, wallType, shank, length }
}

/** The question for the marks of one placed work; in words, what is missing for it. */
export function marksQuestionOf(
  elevation: Elevation,
  placed: PlacedWork,
  style: MarksStyle,
): { readonly question: MarksQuestion } | { readonly problem: string } {
  const { wall, plan, rules } = elevation
  if (placed.size === null) return { problem: 'Its size is not known yet. Measure it with its frame.' }
  if (placed.back === null) {
    return { problem: 'Nobody has measured its back yet. Turn it over: how does it hang, and what are the drops?' }
  }
  return {
    question: {
      subject: { kind: 'placement', id: placed.placement },
      work: { height: placed.size.height, width: placed.size.width, depth: placed.size.depth, mass: placed.mass },
      back: placed.back,
      centre: { x: placed.x, y: placed.centreY },
      height: { rule: placed.rule === 'face' ? plan.rule : placed.rule, eyeFraction: plan.eyeFraction },
      wall: {
        length: wall.length,
        height: wall.height,
        wallType: wall.wallType,
        datum: wall.datum,
        floor: wall.floor,
        skirting: wall.skirting,
        studFirst: wall.studFirst,
        studSpacing: wall.studSpacing,
        backingFrom: wall.backingFrom,
        backingTo: wall.backingTo,
        openings: wall.openings,
        keepClears: wall.keepClears,
      },
      datum: datumOf(elevation),
      hooksApart: placed.hooksApart,
      fixings: [fixingOf(placed)],
      keeper: placed.keeper === null ? null : plainFixing(placed.keeper),
      rules: rules.hang,
      steps: style.steps,
      unit: style.unit,
    },
  }
}

/** Marks of one placed work. Never throws a refusal: its sentence is the answer then. */
export function marksOfPlaced(elevation: Elevation, placed: PlacedWork, style: MarksStyle): MarksOrWhy {
  try {
    const asked = marksQuestionOf(elevation, placed, style)
    return 'problem' in asked ? asked : { answer: marksFor(asked.question) }
  } catch (error) {
    if (error instanceof Refusal) return { problem: error.message }
    throw error
  }
}

/** Marks of every work of a face, by placement. */
export function marksOfFace(elevation: Elevation, style: MarksStyle): ReadonlyMap<string, MarksOrWhy> {
  return new Map(elevation.works.map(placed => [placed.placement, marksOfPlaced(elevation, placed, style)]))
}
