/**
 * Findings while a hand moves works: what does not change by the move stands, and only the moved works are checked
 * again. The rule it keeps: what is said of them is what the check of the whole wall would say.
 */
import type { Finding } from '../contract/shared.ts'
import type { LengthUnit } from '../hang/marks-shape.ts'
import type { WallFacts } from '../hang/wall.ts'
import { type HungRect, type WallCheckRules, wallFindings } from './findings.ts'

const ofPlaces =
  /^(overlap|gap-small|off-wall|near-end|in-opening|in-niche|near-niche-|in-keep-clear|covers-keep-clear|beside-|no-room-to-lift-on|on-skirting|too-|tool-room-|label-)/

/** Whether the finding is about one of these placements, alone or with another. */
export function concerns(found: Finding, ids: ReadonlySet<string>): boolean {
  return ids.has(found.subject.id) || ids.has(String(found.figures.with ?? ''))
}

/** Two that move together stay as far apart as they were. */
function withinMoved(found: Finding, ids: ReadonlySet<string>): boolean {
  return found.figures.with !== undefined && ids.has(found.subject.id) && ids.has(String(found.figures.with))
}

/** Of the findings at rest those that hold wherever `ids` are moved to. */
export function findingsThatStand(resting: readonly Finding[], ids: ReadonlySet<string>): readonly Finding[] {
  return resting.filter(
    found => !concerns(found, ids) || withinMoved(found, ids) || !('x' in found.figures || ofPlaces.test(found.code)),
  )
}

/** Findings of the moved works where they are now; `rects` are all works of the wall, the moved ones moved. mm. */
export function findingsOfMoved(
  wall: WallFacts,
  rects: readonly HungRect[],
  ids: ReadonlySet<string>,
  rules: WallCheckRules,
  unit: LengthUnit,
): readonly Finding[] {
  return wallFindings(wall, rects, rules, unit, ids).filter(found => !withinMoved(found, ids))
}
