/**
 * The other face of a partition. A partition is measured once, from its face a; whoever stands behind it sees its right
 * end at the left. What goes through it, what is in it and the floor, ceiling and rail along it are turned over here;
 * what is fixed on one face alone is not, and stays out.
 */
import { clean } from '../geometry/clean.ts'
import { floorAt, type Profile, type WallFacts } from '../hang/wall.ts'

/** What is turned over. Lengths in mm; x from the left end of the face that is looked at. */
export interface TwoFaced extends Pick<WallFacts, 'length' | 'floor' | 'datum' | 'studFirst' | 'studSpacing'> {
  readonly datumBy: string
  readonly studs: readonly number[]
  readonly joints: readonly number[]
  readonly ceiling: Profile
  readonly rail: Profile
  readonly openings: readonly { readonly x: number; readonly width: number; readonly swing: string }[]
}

type Turned<W extends TwoFaced> = Omit<W, keyof TwoFaced> & {
  [K in keyof TwoFaced]: K extends 'openings'
    ? W['openings'][number][]
    : TwoFaced[K] extends Profile
      ? [number, number][]
      : TwoFaced[K] extends readonly number[]
        ? number[]
        : W[K]
}

/** Where a stretch that begins at `x` begins as it is seen from the other side of a wall so long. */
export function beginsBehind(x: number, width: number, length: number): number {
  return clean(length - x - width)
}

/** What goes through a wall so long as it is seen from the other side, from left to right there. */
export function openingsBehind<O extends TwoFaced['openings'][number]>(openings: readonly O[], length: number): O[] {
  return openings
    .map(one => ({ ...one, x: beginsBehind(one.x, one.width, length), swing: swingBehind(one.swing) }))
    .sort((a, b) => a.x - b.x)
}

/** The wall as its other face sees it. Twice gives the wall again, but for floor points that say nothing new. */
export function seenFromBehind<W extends TwoFaced>(wall: W): Turned<W> {
  const { length, floor } = wall
  // Heights count from the floor at the left end, which is now the other one.
  const drop = floorAt(floor, length)
  const over = (profile: Profile): [number, number][] =>
    profile.map(([x, y]): [number, number] => [length - x, y - drop]).reverse()
  return {
    ...wall,
    floor: floorBehind(floor, length, drop),
    ceiling: over(wall.ceiling),
    rail: over(wall.rail),
    datum: wall.datum === null || wall.datumBy !== '' ? wall.datum : wall.datum - drop,
    studs: wall.studs.map(x => length - x).reverse(),
    joints: wall.joints.map(x => length - x).reverse(),
    studFirst: combBehind(wall),
    openings: openingsBehind(wall.openings, length),
  }
}

/** Level beyond the last measured point: both ends are written down, since 0 counts where the left end is not. */
function floorBehind(floor: Profile, length: number, drop: number): [number, number][] {
  if (floor.length === 0) return []
  const xs = [...new Set([0, ...floor.map(([x]) => x), length])].filter(x => x >= 0 && x <= length)
  return xs.sort((a, b) => b - a).map((x): [number, number] => [length - x, floorAt(floor, x) - drop])
}

/** The same comb, counted from the other end: its first stud is within one spacing of it. */
function combBehind({
  length,
  studFirst,
  studSpacing,
}: Pick<TwoFaced, 'length' | 'studFirst' | 'studSpacing'>): number | null {
  if (studFirst === null) return null
  const first = length - studFirst
  return studSpacing === null || !(studSpacing > 0) ? first : ((first % studSpacing) + studSpacing) % studSpacing
}

/** What turns into one side turns out of the other, and left is right. */
const turned: Readonly<Record<string, string>> = {
  'in left': 'out right',
  'in right': 'out left',
  'out left': 'in right',
  'out right': 'in left',
  'both in': 'both out',
  'both out': 'both in',
}

/**
 * How doors turn as their own room sees them: one that only the next room's survey tells of is seen from behind. Given
 * all openings among which a door's other side may be.
 */
export function swingsHere<S extends string>(
  all: readonly { readonly id: string; readonly swing: S }[],
): (opening: { readonly swing: S; readonly other: string | null }) => S {
  const known = new Map(all.map(({ id, swing }) => [id, swing]))
  return ({ swing, other }) => {
    const there = other === null ? undefined : known.get(other)
    return swing !== '' || there === undefined ? swing : (swingBehind(there) as S) // turned, it is a swing again
  }
}

/** How a door that turns so is seen from its other side. */
export function swingBehind(swing: string): string {
  return turned[swing] ?? swing
}
