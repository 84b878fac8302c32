/** What looks at walls in a room as its plan has it: who comes in by a doorway, who sits on a bench. */
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import { turnOf } from '../plan/place.ts'
import { facesOf } from '../plan/stands-drawn.ts'
import type { LooksAt } from './axes-of-face.ts'

type Point = readonly [number, number]
type Ends = readonly [Point, Point]
type Opening = PlanRoomRow['walls'][number]['openings'][number]

export interface LooksInRoom {
  /** The left and right end of the face that is looked at; null where the room has no such face. */
  readonly ends: Ends | null
  readonly looking: readonly LooksAt[]
  /** What nobody sees through: partitions, but for the one that is looked at. */
  readonly bars: readonly Ends[]
}

const goesThrough: ReadonlySet<string> = new Set(['door', 'passage'])

/** Doorways of its other walls and benches of the show, as they look; plan coordinates, mm. */
export function looksIn(room: PlanRoomRow | undefined, face: string): LooksInRoom {
  if (room === undefined) return { ends: null, looking: [], bars: [] }
  const sides = room.partitions.flatMap(partition => facesOf(partition))
  const seen = room.walls.find(wall => wall.face === face) ?? sides.find(side => side.face === face)
  const doorways = room.walls
    .filter(wall => wall.face !== face)
    .flatMap(wall => wall.openings.filter(isDoorway).map(opening => doorway(wall, opening)))
  return {
    ends: seen === undefined ? null : [seen.from, seen.to],
    looking: [...doorways, ...room.things.filter(thing => thing.kind === 'bench').flatMap(benchLooks)],
    bars: sides.filter(side => side.face !== face).map(side => [side.from, side.to]),
  }
}

function isDoorway(opening: Opening): boolean {
  return goesThrough.has(opening.kind)
}

function doorway(
  { from, to, name }: { from: Point; to: Point; name: string },
  { id, x, width, label }: Opening,
): LooksAt {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  const [ux, uy] = [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
  const middle = x + width / 2
  return {
    of: id,
    kind: 'doorway',
    label: label === '' ? `the doorway in ${name}` : label,
    at: [from[0] + ux * middle, from[1] + uy * middle],
    // The room lies to the right of the way along its walls.
    towards: [-uy, ux],
  }
}

/** A bench is sat on along its length, to either side. */
function benchLooks({ id, at, turn, width, depth, name }: PlanRoomRow['things'][number]): LooksAt[] {
  const [cos, sin] = turnOf(width >= depth ? turn : turn + 90)
  const label = name === '' ? 'the bench' : name
  return [1, -1].map(way => ({ of: id, kind: 'bench' as const, label, at, towards: [-sin * way, cos * way] as const }))
}
