/**
 * A wall that stands between two rooms is one body with a face in each. Moved or turned, both faces go with it as they
 * lie to one another, so that its thickness stays: by so much outwards for one room is as much inwards for the next, and
 * turned about a point of one face the other turns about the same point. Millimetres, degrees, building coordinates.
 */
import type { Point } from '../drawing/room-plan.ts'
import { askew, sharedBounds } from './back-to-back.ts'
import { type BendWall, type Bent, bendable, bentWalls, type Drawn } from './bend.ts'
import { crossing } from './outline-shape.ts'
import { shiftWall } from './shift-wall.ts'
import { type Pivot, pivotOf, turnWall } from './turn-wall.ts'

export type Deed =
  | { readonly is: 'shift'; readonly by: number }
  | { readonly is: 'turn'; readonly about: Pivot | number; readonly by: number }

/** A room seen from one of its walls. */
export interface Side<W extends Drawn = Drawn> {
  readonly walls: readonly W[]
  readonly index: number
  /** It stands in the building, so that how its walls lie to the next room's is known. */
  readonly placed: boolean
}

/** One room alone; refused too where its outline would cross itself. */
export function bendSide({ walls, index }: Side, deed: Deed): Bent {
  const plain: readonly BendWall[] = bendable(walls)
  const bent = deed.is === 'shift' ? shiftWall(plain, index, deed.by) : turnWall(plain, index, deed.about, deed.by)
  if (!bent.ok) return bent
  const cross = crossing(bentWalls(walls, index, bent).map(({ from }) => from))
  const [a, b] = (cross ?? []).map(at => walls[at]?.name ?? '')
  // A room whose measures cross already is told of by its survey, and may be mended by hand.
  if (cross === null || crossing(walls.map(({ from }) => from)) !== null) return bent
  return { ok: false, problem: `${a} would cross ${b}. Move it less far.` }
}

export type OtherDeed = { readonly ok: true; readonly deed: Deed } | { readonly ok: false; readonly problem: string }

/** What a deed on one face is for the other. */
export function otherDeed(own: Side, other: Side, deed: Deed): OtherDeed {
  if (deed.is === 'shift') return { ok: true, deed: { is: 'shift', by: -deed.by || 0 } }
  const [here, there] = [own.walls[own.index], other.walls[other.index]]
  if (here === undefined || there === undefined || !own.placed || !other.placed)
    return { ok: false, problem: 'How its two sides lie to one another is not known while a room has no place.' }
  const [u, v] = [unit(here), unit(there)]
  if (u[0] * v[0] + u[1] * v[1] > -Math.cos((askew * Math.PI) / 180))
    return { ok: false, problem: 'Its two sides do not lie back to back where the rooms stand on the plan.' }
  const p = pivotOf(here.length, deed.about)
  const from: Point = [here.from[0] + u[0] * p - there.from[0], here.from[1] + u[1] * p - there.from[1]]
  const along = from[0] * v[0] + from[1] * v[1]
  // How far the pivot lies to the right of the other face; the turned face cuts the old one at along + h tan(by / 2).
  const h = from[1] * v[0] - from[0] * v[1]
  const about = along + h * Math.tan((deed.by * Math.PI) / 360)
  return { ok: true, deed: { is: 'turn', about, by: deed.by } }
}

/** What the wall is once one face alone has gone. */
export type Alone =
  | { readonly is: 'shared'; readonly thickness: number | null }
  /** No longer one wall: too far apart, or its faces no longer parallel. */
  | { readonly is: 'parted'; readonly why: 'far' | 'askew' }
  /** The face would come through the other one, or leave next to nothing. */
  | { readonly is: 'through'; readonly left: number }

/**
 * @param thickness as it was measured; null where nobody did
 * @param apart between the faces as they are drawn, where that is known
 */
export function sideAlone(length: number, thickness: number | null, apart: number | null, deed: Deed): Alone {
  if (deed.is === 'turn' && Math.abs(deed.by) > askew) return { is: 'parted', why: 'askew' }
  // A turned face comes in, or goes out, at its middle.
  const out =
    deed.is === 'shift' ? deed.by : (pivotOf(length, deed.about) - length / 2) * Math.sin((deed.by * Math.PI) / 180)
  const deep = thickness ?? apart
  if (deep !== null && deep - out < sharedBounds.thinnest) return { is: 'through', left: deep - out }
  if (deep !== null && deep - out > sharedBounds.thickest) return { is: 'parted', why: 'far' }
  return { is: 'shared', thickness: thickness === null ? null : Math.round((thickness - out) * 10) / 10 }
}

/** A face with a place along it, mm from its left end. */
interface On {
  readonly wall: Pick<Drawn, 'from' | 'to'>
  readonly at: number
}

/** How far a place of the other face lies beyond one of this face, along this face. */
function beyond(mine: On, theirs: On): number {
  const [u, v] = [unit(mine.wall), unit(theirs.wall)]
  const [x, y] = [theirs.wall.from[0] - mine.wall.from[0], theirs.wall.from[1] - mine.wall.from[1]]
  return x * u[0] + y * u[1] + (u[0] * v[0] + u[1] * v[1]) * theirs.at - mine.at
}

/** How far along its own face their hole goes, so that it is again where it was to ours: they are one hole. */
export function followed(before: readonly [mine: On, theirs: On], after: readonly [mine: On, theirs: On]): number {
  const [u, v] = [unit(after[0].wall), unit(after[1].wall)]
  return (beyond(...before) - beyond(...after)) / (u[0] * v[0] + u[1] * v[1])
}

function unit({ from, to }: Pick<Drawn, 'from' | 'to'>): Point {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return [(to[0] - from[0]) / run, (to[1] - from[1]) / run]
}
