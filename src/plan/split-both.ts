/**
 * A wall that stands between two rooms is one body: cut or joined, both its sides are, at the same place. The other
 * side ends where its own room does, so a cut beyond its ends leaves it whole. Millimetres from the left end of a side.
 */
import type { PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'
import { clean } from '../geometry/clean.ts'
import { type HoleInTheWay, inTheWay } from './cut-place.ts'
import { sharedLie } from './shared-lie.ts'

export type Part = 'left' | 'right'

interface OfRoom {
  readonly room: PlanRoomRow
  readonly wall: PlanWallRow
}

export type OtherCut = OfRoom & {
  /** The part of the wall that the other side stays with while it is whole: where more of it lies. */
  readonly keeps: Part
} & (
    | { readonly is: 'cut'; readonly at: number }
    /** It ends before the cut. */
    | { readonly is: 'whole' }
    | { readonly is: 'hole'; readonly at: number; readonly hole: HoleInTheWay }
    /** Where it lies is not known. */
    | { readonly is: 'unknown'; readonly why: 'no place' | 'elsewhere' }
  )

export type OtherJoin =
  /** Both its parts, the left one first as seen from their room. */
  | (OfRoom & { readonly is: 'joined'; readonly right: PlanWallRow })
  /** The two walls are sides of two that cannot be one; the second is parted where the join is of this side alone. */
  | (OfRoom & { readonly is: 'several'; readonly right: PlanWallRow; readonly rightRoom: PlanRoomRow })

const wallIn = (rooms: readonly PlanRoomRow[], id: string | null): OfRoom | null => {
  for (const room of rooms) for (const wall of room.walls) if (wall.id === id) return { room, wall }
  return null
}

/** How near an end a wall is not cut. */
export const LEAST_PART = 1

/** What the cut of a wall is for its other side; null where it stands by itself. */
export function otherCut(rooms: readonly PlanRoomRow[], id: string, x: number): OtherCut | null {
  const own = wallIn(rooms, id)
  const other = wallIn(rooms, own?.wall.backs ?? null)
  if (own === null || other === null) return null
  if (own.room.at === null || other.room.at === null) return { ...other, keeps: 'left', is: 'unknown', why: 'no place' }
  const [here, there] = [own.wall, other.wall]
  const stands = own.room.storey === other.room.storey && sharedLie(here, there, Number.POSITIVE_INFINITY).is === 'well'
  if (!stands) return { ...other, keeps: 'left', is: 'unknown', why: 'elsewhere' }
  const run = ({ from, to }: PlanWallRow) => Math.hypot(to[0] - from[0], to[1] - from[1])
  const [mine, their] = [run(here), run(there)]
  const along = (wall: PlanWallRow, length: number, point: readonly [number, number]) =>
    ((point[0] - wall.from[0]) * (wall.to[0] - wall.from[0]) +
      (point[1] - wall.from[1]) * (wall.to[1] - wall.from[1])) /
    length
  // Where the other side begins and ends along this one; its left end is at this one's right.
  const [begins, ends] = [along(here, mine, there.to), along(here, mine, there.from)]
  const cut = (x * mine) / here.length
  const onLeft = Math.min(cut, ends) - Math.max(0, begins)
  const onRight = Math.min(mine, ends) - Math.max(cut, begins)
  const keeps = onLeft >= onRight ? 'left' : 'right'
  const share = cut / mine
  const point = [
    here.from[0] + (here.to[0] - here.from[0]) * share,
    here.from[1] + (here.to[1] - here.from[1]) * share,
  ] as const
  const at = clean(Math.round(((along(there, their, point) * there.length) / their) * 100) / 100)
  if (at < LEAST_PART || at > there.length - LEAST_PART) return { ...other, keeps, is: 'whole' }
  const hole = inTheWay(there.openings, at)
  return hole === null ? { ...other, keeps, is: 'cut', at } : { ...other, keeps, is: 'hole', at, hole }
}

/** What joining a wall with the next of its room is for their other sides; null where at most one of them has one. */
export function otherJoin(rooms: readonly PlanRoomRow[], id: string): OtherJoin | null {
  const own = wallIn(rooms, id)
  if (own === null) return null
  const { walls } = own.room
  const next = walls[(walls.findIndex(wall => wall.id === id) + 1) % walls.length]
  const [ofLeft, ofRight] = [wallIn(rooms, own.wall.backs), wallIn(rooms, next?.backs ?? null)]
  if (ofLeft === null || ofRight === null) return null
  // Seen from the other room, what is behind the right part comes first.
  const after = ofRight.room.walls[(ofRight.room.walls.indexOf(ofRight.wall) + 1) % ofRight.room.walls.length]
  if (after === ofLeft.wall) return { ...ofRight, is: 'joined', right: ofLeft.wall }
  return { ...ofLeft, is: 'several', right: ofRight.wall, rightRoom: ofRight.room }
}

type Say = (mm: number) => string

/** What is told before a wall with another side is cut. `both` is empty where both cannot be cut there. */
export function cutSaid(
  cut: OtherCut,
  say: Say,
): { readonly both: string; readonly not: string; readonly alone: string } {
  const called = `${cut.room.name}’s side, ${cut.wall.name},`
  const alone = `By itself, ${called} stays whole, and is then the other side of the ${cut.keeps} part alone.`
  if (cut.is === 'cut') return { both: `${called} is split with it, ${say(cut.at)} from its left end.`, not: '', alone }
  if (cut.is === 'hole') {
    const { called: hole, from, to } = cut.hole
    const not = `${called} cannot be split with it: ${hole} is there, from ${say(from)} to ${say(to)}.`
    return { both: '', not, alone }
  }
  if (cut.is === 'whole') {
    const both = `${called} ends before that place: it stays whole and is then the other side of the ${cut.keeps} part.`
    return { both, not: '', alone: '' }
  }
  const why =
    cut.why === 'no place'
      ? 'how its two sides lie to one another is not known while a room has no place'
      : 'its two sides do not lie back to back where the rooms stand on the plan'
  return { both: '', not: `${called} cannot be split with it: ${why}.`, alone }
}

/** What is told before two walls with other sides are joined. */
export function joinSaid(join: OtherJoin): { readonly both: string; readonly not: string; readonly alone: string } {
  const { room, wall, right } = join
  if (join.is === 'joined') {
    const both = `${room.name}’s side is joined with it: ${wall.name} and ${right.name} become one.`
    return {
      both,
      not: '',
      alone: `By itself it is the other side of ${right.name} alone; ${wall.name} is parted from it.`,
    }
  }
  const [first, second] = [`${room.name}, ${wall.name}`, `${join.rightRoom.name}, ${right.name}`]
  return {
    both: '',
    not: `They are the other sides of two walls, ${first} and ${second}, which cannot be one.`,
    alone: `By itself it is the other side of ${first} alone; ${second} is parted from it.`,
  }
}
