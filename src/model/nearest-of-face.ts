/** The nearest move that clears the marks of one work on a face, among the works that stand there. */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import { Refusal } from '../contract/refusal.ts'
import { nearestMoves } from '../hang/nearest.ts'
import type { Offers } from '../hang/nearest-shape.ts'
import { rectOf } from './hung-rect.ts'
import { type MarksStyle, marksQuestionOf } from './marks-of-face.ts'

/** Offers, or in words why there are no marks to clear. Never throws a refusal: its sentence is the answer then. mm. */
export function nearestOfPlaced(
  elevation: Elevation,
  placed: PlacedWork,
  style: MarksStyle,
): Offers | { readonly problem: string } {
  if (placed.set !== null) return { problem: 'A set moves as one object, and its parts stay where the set puts them.' }
  try {
    const asked = marksQuestionOf(elevation, placed, style)
    if ('problem' in asked) return asked
    const others = elevation.works
      .filter(work => work.placement !== placed.placement)
      .flatMap(work => rectOf(work) ?? [])
    return nearestMoves(asked.question, others)
  } catch (error) {
    if (error instanceof Refusal) return { problem: error.message }
    throw error
  }
}
