/**
 * Doorways of two rooms that may be one hole, told by where they lead and how wide they are; where the rooms stand does
 * not matter, so it holds for rooms that have no place yet.
 */
import type { PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'

export type LooseRoom = Pick<PlanRoomRow, 'id' | 'name' | 'at' | 'turn'> & {
  readonly walls: readonly LooseWall[]
}
export type LooseWall = Pick<PlanWallRow, 'id' | 'name' | 'from' | 'to' | 'length' | 'thickness'> & {
  readonly openings: readonly LooseOpening[]
}
type LooseOpening = Pick<PlanWallRow['openings'][number], 'id' | 'kind' | 'x' | 'width' | 'leadsTo' | 'other'>

export interface Hole {
  readonly room: string
  readonly wall: LooseWall
  readonly opening: LooseOpening
}

export interface DoorPair {
  readonly here: Hole
  readonly there: Hole
}

/** A doorway measured from its two sides differs by less, mm. From memory. */
export const sameWidth = 60

export interface DoorPairs {
  readonly pairs: readonly DoorPair[]
  /** Doorways that lead to a room in which nothing is as wide. */
  readonly alone: readonly { readonly here: Hole; readonly to: string }[]
}

/**
 * Each doorway that leads to another of the rooms, with what it may be there: what leads back, or else the only one of
 * its width that leads nowhere. Two alike give a pair each; the rooms' places decide between them.
 */
export function doorPairs(rooms: readonly LooseRoom[]): DoorPairs {
  const holes = new Map(rooms.map(room => [room.id, holesOf(room)]))
  const pairs: DoorPair[] = []
  const alone: { here: Hole; to: string }[] = []
  for (const here of [...holes.values()].flat()) {
    const { leadsTo, other, width } = here.opening
    const next = leadsTo === null ? undefined : holes.get(leadsTo)
    if (leadsTo === null || next === undefined || leadsTo === here.room) continue
    const told = other === null ? [] : next.filter(({ opening }) => opening.id === other)
    const wide = next.filter(
      ({ opening }) => opening.other === null && Math.abs(opening.width - width) <= sameWidth && other === null,
    )
    const back = wide.filter(({ opening }) => opening.leadsTo === here.room)
    const free = wide.filter(({ opening }) => opening.leadsTo === null)
    const may = told.length > 0 ? told : back.length > 0 ? back : free.length === 1 ? free : []
    if (may.length === 0) alone.push({ here, to: leadsTo })
    pairs.push(...may.map(there => ({ here, there })))
  }
  return { pairs, alone }
}

function holesOf({ id, walls }: LooseRoom): readonly Hole[] {
  return walls.flatMap(wall =>
    wall.openings.flatMap(opening =>
      opening.kind === 'door' || opening.kind === 'passage' ? [{ room: id, wall, opening }] : [],
    ),
  )
}
