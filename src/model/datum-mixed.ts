/**
 * A wall can't mix two datums: a height of a work's own is above the floor at the left end, and where the wall's line is
 * measured from another floor the two would stand on one sheet. It stops, and no sheet of that wall is printed.
 */
import type { Elevation, PlacedWork } from '../contract/areas/walls.ts'
import type { Finding } from '../contract/shared.ts'
import { sayIn } from '../hang/marks.ts'
import { defaultHangRules } from '../hang/rules.ts'
import { floorAt } from '../hang/wall.ts'
import { calledOn } from './called.ts'
import { levelLineOf, type MarksStyle } from './marks-of-face.ts'

/** Height of the floor that the line is measured from against the one that the work's own height is; 0 where it is one. */
function floorsApart(work: PlacedWork, elevation: Elevation): number {
  if (work.rule === 'face' || work.rule === 'hand' || work.y === null) return 0
  const line = levelLineOf(elevation)
  const there = line.ramp ? floorAt(elevation.wall.floor, work.x) : line.floorThere
  return Math.abs(there) <= defaultHangRules.dropTolerance ? 0 : there
}

function measuredFrom(elevation: Elevation, say: (mm: number) => string): string {
  const line = levelLineOf(elevation)
  return line.ramp ? 'from the floor along the ramp' : `above the floor at ${say(line.through ?? 0)}`
}

const ways = 'let it hang as the wall does, or by hand at the height where it is'

export function datumFindings(work: PlacedWork, elevation: Elevation, style: MarksStyle): Finding[] {
  const there = floorsApart(work, elevation)
  if (there === 0 || work.y === null) return []
  const say = sayIn(style.unit, style.steps)
  const line = levelLineOf(elevation)
  const text = `${calledOn(work)}: its own height of ${say(work.y)} is above the floor at the left end; this wall’s line is measured ${measuredFrom(elevation, say)}, which is ${say(Math.abs(there))} ${there < 0 ? 'lower' : 'higher'}. One sheet, one datum: ${ways}.`
  const figures = { own: work.y, floorThere: there, line: line.y, by: line.by }
  return [{ severity: 'stop', code: 'datum-mixed', subject: { kind: 'placement', id: work.placement }, text, figures }]
}

/** The works that mix the datums of a wall, and why no sheet of it is printed; null where it has one datum. */
export function mixedDatums(
  elevation: Elevation,
  style: MarksStyle,
): { readonly works: readonly PlacedWork[]; readonly text: string } | null {
  const works = elevation.works.filter(work => floorsApart(work, elevation) !== 0)
  if (works.length === 0) return null
  const say = sayIn(style.unit, style.steps)
  const names = works.map(calledOn)
  const listed = names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`
  const has = names.length === 1 ? 'has a height of its own' : 'have heights of their own'
  const text = `${elevation.room.name}, ${elevation.wall.name} mixes two datums, so its sheet is not printed: ${listed} ${has} above the floor at the left end, and this wall’s line is measured ${measuredFrom(elevation, say)}. For each of them: ${ways}.`
  return { works, text }
}
