/**
 * From a work on a wall to the question for its marks, in one place, so that screen, sheet and findings ask the same.
 * The rule it keeps: what is not known gives no marks and says in words what to do about it.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import { type LevelLine, levelLine } from '../hang/datum.ts'
import { marksFor } from '../hang/marks.ts'
import type { MarksAnswer, MarksQuestion } from '../hang/marks-shape.ts'
import { methodOf } from '../hang/methods.ts'
import type { Steps } from '../hang/printing.ts'
import { ratingToAsk } from '../hang/rating.ts'
import { standIn } from '../hang/stand-in.ts'
import { joinParts, type PartMarks, withRunning } from './marks-of-set.ts'
import { partAsPlaced, placesOfParts } from './parts-of-set.ts'

/** What came of asking for a work's marks: the answer, or in words why there is none. */
export type MarksOrWhy = ({ readonly answer: MarksAnswer } | { readonly problem: string }) & {
  /** Of a set: each part with its own marks. */
  readonly parts?: readonly PartMarks[]
}

export interface MarksStyle {
  readonly unit: 'mm' | 'cm' | 'in'
  readonly steps: Steps
}

/**
 * The one line that everything on a face is measured from: the wall's own, else the height that this face hangs to;
 * above the floor that the wall's `datumBy` names.
 */
export function levelLineOf({ wall, plan }: Pick<Elevation, 'wall' | 'plan'>): LevelLine {
  return levelLine(wall, wall.datumBy, wall.datum ?? plan.centreLineSet)
}

/** Height of that line above the floor at x = 0; along a ramp, above the floor everywhere. mm. */
export function datumOf(elevation: Pick<Elevation, 'wall' | 'plan'>): number {
  return levelLineOf(elevation).y
}

function fixingOf({ fixing, back }: PlacedWork, wall: string): MarksQuestion['fixings'][number] {
  if (fixing === null) return standIn(methodOf(back?.method ?? '').fixings[0] ?? 'hook')
  return plainFixing(fixing, wall)
}

/** With the rating that counts on a wall of this type, else one for another wall, named as that. */
function plainFixing(fixing: NonNullable<PlacedWork['fixing']>, wall: string): MarksQuestion['fixings'][number] {
  const { name, kind, holeOffset, shank, length, head } = fixing
  return { name, kind, holeOffset, ...ratingToAsk(fixing, wall), shank, length, head }
}

/** The wall as marks and labels are asked with it: with the line that everything on the face is measured from. */
export function wallOfMarks(elevation: Pick<Elevation, 'wall' | 'plan'>): MarksQuestion['wall'] {
  const { wall } = elevation
  const line = levelLineOf(elevation)
  return {
    length: wall.length,
    height: wall.height,
    wallType: wall.wallType,
    datum: wall.datum === null ? null : line.y,
    ramp: line.ramp,
    floor: wall.floor,
    skirting: wall.skirting,
    studFirst: wall.studFirst,
    studSpacing: wall.studSpacing,
    backingFrom: wall.backingFrom,
    backingTo: wall.backingTo,
    openings: wall.openings,
    keepClears: wall.keepClears,
    rail: wall.rail,
    railKgPerMetre: wall.railKgPerMetre,
    ceiling: wall.ceiling,
    joints: wall.joints,
    studs: wall.studs,
  }
}

/** The question for the marks of one placed work; in words, what is missing for it. */
export function marksQuestionOf(
  elevation: Elevation,
  placed: PlacedWork,
  style: MarksStyle,
  origin?: number,
): { readonly question: MarksQuestion } | { readonly problem: string } {
  const { wall, plan, rules } = elevation
  const line = levelLineOf(elevation)
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
      wall: wallOfMarks(elevation),
      ...(origin === undefined ? {} : { origin }),
      datum: line.y,
      hooksApart: placed.hooksApart,
      fixings: [fixingOf(placed, wall.wallType)],
      keeper: placed.keeper === null ? null : plainFixing(placed.keeper, wall.wallType),
      rules: rules.hang,
      steps: style.steps,
      unit: style.unit,
    },
  }
}

/** Marks of one placed work. Never throws a refusal: its sentence is the answer then. */
export function marksOfPlaced(elevation: Elevation, placed: PlacedWork, style: MarksStyle): MarksOrWhy {
  return placed.set === null ? marksOfOne(elevation, placed, style) : marksOfSet(elevation, placed, style)
}

function marksOfSet(elevation: Elevation, set: PlacedWork, style: MarksStyle): MarksOrWhy {
  const places = placesOfParts(set, style.steps)
  if ('problem' in places) return { problem: places.problem, parts: [] }
  const left = set.x - (set.size?.width ?? 0) / 2
  const parts = places.map((place): PartMarks => {
    const placed = partAsPlaced(set, place)
    const marks = marksOfOne(elevation, placed, style, left)
    return {
      letter: place.letter,
      placed,
      marks: 'answer' in marks ? { answer: withRunning(marks.answer, set, place, places, style.steps) } : marks,
    }
  })
  return joinParts(elevation, set, parts, style.steps)
}

function marksOfOne(elevation: Elevation, placed: PlacedWork, style: MarksStyle, origin?: number): MarksOrWhy {
  try {
    const asked = marksQuestionOf(elevation, placed, style, origin)
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
