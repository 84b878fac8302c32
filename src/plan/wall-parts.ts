/**
 * A wall in two parts and back: what is known along it is cut where the wall is cut, and every height is told from the
 * floor at the left end of its part, since that is where each wall has its zero. Joined again, the heights are as before.
 */
import { clean } from '../geometry/clean.ts'
import { floorAt, heightAlong, type Profile, studsBetween } from '../hang/wall.ts'

export interface PartFacts {
  readonly length: number
  readonly height: number
  readonly wallType: string
  readonly thickness: number | null
  readonly skirting: number | null
  readonly backingFrom: number | null
  readonly backingTo: number | null
  readonly studFirst: number | null
  readonly studSpacing: number | null
  readonly railKgPerMetre: number | null
  readonly studs: readonly number[]
  readonly joints: readonly number[]
  readonly floor: Profile
  readonly ceiling: Profile
  readonly rail: Profile
}

/** Nearer than this two heights or places are one, mm. */
const SAME = 1e-5

const lowered = (of: number | null, by: number) => (of === null ? null : clean(of - by))

/**
 * @param at mm from the left end, within the wall.
 * @returns both parts, and by how much the floor at the cut is above the floor at the left end: heights on the right
 *   part are less by it.
 */
export function splitFacts(whole: PartFacts, at: number): { left: PartFacts; right: PartFacts; rise: number } {
  const wall = { ...whole, floor: fromNothing(whole.floor) }
  const rise = clean(floorAt(wall.floor, at))
  const left = {
    ...wall,
    length: at,
    studs: wall.studs.filter(x => x < at),
    joints: wall.joints.filter(x => x < at),
    floor: before(wall.floor, at, rise),
    ceiling: before(wall.ceiling, at, heightAlong(wall.ceiling, at)),
    rail: before(wall.rail, at, heightAlong(wall.rail, at)),
  }
  const right = {
    ...wall,
    length: clean(wall.length - at),
    height: clean(wall.height - rise),
    backingFrom: lowered(wall.backingFrom, rise),
    backingTo: lowered(wall.backingTo, rise),
    studFirst: combFrom(wall, at),
    studs: wall.studs.filter(x => x >= at).map(x => clean(x - at)),
    joints: wall.joints.filter(x => x >= at).map(x => clean(x - at)),
    floor: after(wall.floor, at, rise, rise),
    ceiling: after(wall.ceiling, at, heightAlong(wall.ceiling, at), rise),
    rail: after(wall.rail, at, heightAlong(wall.rail, at), rise),
  }
  return { left, right, rise }
}

/** A floor whose left end was measured as something else than 0 tells the same against its left end. */
function fromNothing(floor: Profile): Profile {
  const zero = floor.some(([x]) => x <= 0) ? (heightAlong(floor, 0) ?? 0) : 0
  return zero === 0 ? floor : floor.map(([x, y]) => [x, y - zero] as const)
}

function before(profile: Profile, at: number, there: number | null): Profile {
  if (there === null || profile.length === 0) return profile
  return [...profile.filter(([x]) => x < at), [at, clean(there)]]
}

function after(profile: Profile, at: number, there: number | null, rise: number): Profile {
  if (there === null || profile.length === 0) return profile
  return [
    [0, clean(there - rise)],
    ...profile.filter(([x]) => x > at).map(([x, y]) => [clean(x - at), clean(y - rise)] as const),
  ]
}

/** The first tooth of the comb from x on; the comb goes on through the cut. */
function combFrom({ studFirst, studSpacing }: PartFacts, at: number): number | null {
  if (studFirst === null || studSpacing === null || studSpacing <= 0) return studFirst
  const teeth = Math.max(0, Math.ceil((at - studFirst) / studSpacing - SAME))
  return clean(studFirst + teeth * studSpacing - at)
}

export type Unlike = 'height' | 'built of' | 'thickness' | 'skirting' | 'backing' | 'picture rail'

/** What keeps two walls in line from being one: a figure that a single wall has once. */
export function unlike(left: PartFacts, right: PartFacts): readonly Unlike[] {
  const rise = floorAt(left.floor, left.length)
  const differs = (a: number | null, b: number | null) => (a === null || b === null ? a !== b : Math.abs(a - b) > 0.05)
  const found: Unlike[] = []
  if (differs(left.height, right.height + rise)) found.push('height')
  if (left.wallType !== right.wallType) found.push('built of')
  if (differs(left.thickness, right.thickness)) found.push('thickness')
  if (differs(left.skirting, right.skirting)) found.push('skirting')
  const raised = (of: number | null) => (of === null ? null : of + rise)
  if (differs(left.backingFrom, raised(right.backingFrom)) || differs(left.backingTo, raised(right.backingTo)))
    found.push('backing')
  if (left.rail.length > 0 !== right.rail.length > 0 || differs(left.railKgPerMetre, right.railKgPerMetre))
    found.push('picture rail')
  return found
}

/** One wall of two that are alike; `rise` is added to every height of the right one. */
export function joinFacts(first: PartFacts, second: PartFacts): { joined: PartFacts; rise: number } {
  const left = { ...first, floor: fromNothing(first.floor) }
  const right = { ...second, floor: fromNothing(second.floor) }
  const { length } = left
  const rise = clean(floorAt(left.floor, length))
  const joined = {
    ...left,
    length: clean(length + right.length),
    ...studsOf(left, right),
    joints: [...left.joints, ...right.joints.map(x => clean(x + length))],
    floor: together(left.floor, right.floor, length, rise, true),
    ceiling: together(
      known(left.ceiling, right.ceiling, left.height),
      known(right.ceiling, left.ceiling, right.height),
      length,
      rise,
      false,
    ),
    rail: together(left.rail, right.rail, length, rise, false),
  }
  return { joined, rise }
}

/** Where only the other part's ceiling was measured, this one's is level at its height. */
function known(own: Profile, other: Profile, height: number): Profile {
  return own.length === 0 && other.length > 0 ? [[0, height]] : own
}

/** The comb goes on where both have the same; else the studs are told one by one, each part by its own. */
function studsOf(left: PartFacts, right: PartFacts): Pick<PartFacts, 'studFirst' | 'studSpacing' | 'studs'> {
  const { studFirst, studSpacing, length } = left
  const found = [...left.studs, ...right.studs.map(x => clean(x + length))]
  const asked = left.studs.length === 0 && right.studs.length === 0
  const goesOn =
    studSpacing === right.studSpacing &&
    (combFrom(left, length) === right.studFirst ||
      Math.abs((combFrom(left, length) ?? 0) - (right.studFirst ?? Number.POSITIVE_INFINITY)) < SAME)
  const bothFound = left.studs.length > 0 && right.studs.length > 0
  if (goesOn && (asked || bothFound)) return { studFirst, studSpacing, studs: found }
  const own = (wall: PartFacts) => studsBetween(wall, 0, wall.length)
  return { studFirst, studSpacing, studs: [...own(left), ...own(right).map(x => x + length)] }
}

/** @param isFloor nobody need have measured its left end, which is 0 then. */
function together(left: Profile, right: Profile, length: number, rise: number, isFloor: boolean): Profile {
  if (left.length === 0 && right.length === 0) return []
  const ended = (part: Profile): Profile => (isFloor && !part.some(([x]) => x <= SAME) ? [[0, 0], ...part] : part)
  const first = ended(left)
  const atSeam = first.find(([x]) => x >= length - SAME)
  const all = [
    ...first.filter(([x]) => x < length - SAME),
    ...(atSeam === undefined ? [] : [atSeam]),
    ...ended(right)
      .map(([x, y]) => [clean(x + length), clean(y + rise)] as const)
      .filter(([x]) => atSeam === undefined || x > length + SAME),
  ]
  const seam = all.findIndex(([x]) => Math.abs(x - length) <= SAME)
  const kept = seam >= 0 && needless(all, seam) ? all.filter((_, index) => index !== seam) : all
  return first === left ? kept : kept.slice(1)
}

/** A point that the line through its neighbours, or the level beyond the last one, has anyway. */
function needless(points: Profile, index: number): boolean {
  const [here, one, other] = [points[index], points[index - 1], points[index + 1]]
  if (here === undefined || (one === undefined && other === undefined)) return false
  if (one === undefined || other === undefined) return Math.abs(here[1] - (one ?? other ?? here)[1]) < SAME
  const line = one[1] + ((other[1] - one[1]) * (here[0] - one[0])) / (other[0] - one[0])
  return Math.abs(line - here[1]) < SAME
}
