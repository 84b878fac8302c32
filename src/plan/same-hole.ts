/**
 * The holes of a wall as the next room has them: said to be one, or offered because both lie back to back. Nothing is
 * paired silently: jambs measured from two rooms may be a hand apart, and two doors may stand near one another.
 */
import type { PlanRoomRow, PlanWallRow } from '../contract/areas/plan.ts'
import { facing } from './back-to-back.ts'

type Opening = PlanWallRow['openings'][number]

export interface SameHole {
  readonly opening: Opening
  readonly there: { readonly room: string; readonly wall: string; readonly opening: Opening }
  /** How far apart their jambs were measured, mm; null where they are one already. */
  readonly off: number | null
}

/** @param wall of one of the rooms, which are where they stand in the building */
export function sameHoles(rooms: readonly PlanRoomRow[], wall: string): readonly SameHole[] {
  const own = rooms.find(room => room.walls.some(({ id }) => id === wall))
  const here = own?.walls.find(({ id }) => id === wall)
  if (own === undefined || here === undefined) return []
  const others = rooms.filter(room => room !== own).flatMap(room => room.walls.map(each => ({ room, wall: each })))
  const one = here.openings.flatMap(opening =>
    others.flatMap(({ room, wall: each }) =>
      each.openings
        .filter(({ id }) => id === opening.other)
        .map(there => ({ opening, there: { room: room.name, wall: each.name, opening: there }, off: null })),
    ),
  )
  if (own.at === null) return one
  const offered = others
    .filter(({ room }) => room.at !== null && room.storey === own.storey)
    .flatMap(({ room, wall: each }) => {
      const { through, jambs } = facing(here, each) ?? { through: [], jambs: [] }
      return through.flatMap(([mine, their], at) => {
        const opening = here.openings.find(({ id }) => id === mine)
        const there = each.openings.find(({ id }) => id === their)
        if (opening === undefined || there === undefined) return []
        return [{ opening, there: { room: room.name, wall: each.name, opening: there }, off: jambs[at] ?? 0 }]
      })
    })
  return [...one, ...offered].sort((a, b) => a.opening.x - b.opening.x)
}
