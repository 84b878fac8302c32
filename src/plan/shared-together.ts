/**
 * Rooms that are put together stand back to back, so their walls there are one wall and its doorways one hole each. What
 * becomes one is told with the proposal, and what does not with its reason; nothing else is taken. Millimetres.
 */
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import { type BackToBack, backToBack } from './back-to-back.ts'
import { placeOf, roomAt } from './drawn-room.ts'
import { sharedOf } from './one-wall.ts'
import type { PutRoom } from './put-together.ts'

export interface WouldShare {
  readonly a: BackToBack['a']
  readonly b: BackToBack['b']
  /** Null where nobody measured it; the rooms stand by an assumed one then. */
  readonly thickness: number | null
  readonly doorways: number
}

export type NotShared = Pick<WouldShare, 'a' | 'b'> & {
  readonly why:
    | { readonly kind: 'several' }
    | { readonly kind: 'differ'; readonly thickness: readonly [number, number] }
    | { readonly kind: 'apart'; readonly apart: number; readonly thickness: number }
}

export interface SharedTogether {
  readonly walls: readonly WouldShare[]
  /** Pairs of openings that are one hole, in walls that become one or that several rooms lie behind. */
  readonly doorways: readonly (readonly [string, string])[]
  readonly not: readonly NotShared[]
}

/**
 * @param rooms of one storey, as they are
 * @param put where some of them would be put
 * @param within mm that tapes of two rooms may differ by
 */
export function sharedTogether(rooms: readonly PlanRoomRow[], put: readonly PutRoom[], within: number): SharedTogether {
  const places = new Map(put.map(({ room, place }) => [room, place]))
  const stood = rooms.map(room => {
    const place = places.get(room.id)
    if (place === undefined) return room
    return { ...roomAt(room, placeOf(room), place), at: [...place.at] as [number, number], turn: place.turn }
  })
  const moved = new Set(stood.flatMap(room => (places.has(room.id) ? room.walls.map(({ id }) => id) : [])))
  const pairs = backToBack(stood).filter(({ a, b }) => moved.has(a.id) || moved.has(b.id))
  const one = new Set(sharedOf(pairs).walls)
  const told = pairs.map(pair => ({ pair, is: one.has(pair) ? thickOf(pair, within) : ({ kind: 'several' } as const) }))
  const walls = told.flatMap(({ pair: { a, b, through }, is }) =>
    'kind' in is ? [] : [{ a, b, thickness: is.thickness, doorways: through.length }],
  )
  const not = told.flatMap(({ pair: { a, b }, is }) => ('kind' in is ? [{ a, b, why: is }] : []))
  // A wall that is not as thick here as there has a doorway that nobody can be sure of.
  const sure = told.filter(({ is }) => !('kind' in is) || is.kind === 'several').map(({ pair }) => pair)
  return { walls, doorways: sharedOf(sure).doorways, not }
}

function thickOf({ a, b, apart }: BackToBack, within: number): NotShared['why'] | Pick<WouldShare, 'thickness'> {
  const [mine, theirs] = [a.thickness, b.thickness]
  if (mine !== null && theirs !== null && Math.abs(mine - theirs) > within)
    return { kind: 'differ', thickness: [mine, theirs] }
  const thickness = theirs ?? mine
  if (thickness !== null && Math.abs(apart - thickness) > within) return { kind: 'apart', apart, thickness }
  return { thickness }
}
