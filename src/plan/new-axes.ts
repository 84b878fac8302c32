/**
 * A room's axes begin at its first wall and run along it. Once another wall is the first, they lie elsewhere in the
 * room; what stands in it is then told from the new ones, and the room's place with them, so that nothing moves in the
 * building. The room is held where a wall is that was there before and after.
 */
import { clean } from '../geometry/clean.ts'
import { angleOf, type Ends } from './partition.ts'
import { type Place, toBuilding, toRoom, wholeTurn } from './place.ts'

/** Where the new axes lie in the old ones, by a wall as it was drawn and as it is drawn now. Room-local mm, degrees. */
export function axesBy(was: Ends, now: Ends): Place {
  const turn = wholeTurn(angleOf(was) - angleOf(now))
  const [x, y] = toBuilding({ at: [0, 0], turn }, now[0])
  return { at: [clean(was[0][0] - x), clean(was[0][1] - y)], turn }
}

/** The room's place in the building, told of its new axes. */
export function placeByAxes(place: Place, axes: Place): Place {
  return { at: toBuilding(place, axes.at), turn: wholeTurn(place.turn + axes.turn) }
}

/** A point of the room, and which way something in it is turned, told from its new axes. */
export const pointByAxes = (axes: Place, point: Ends[0]) => toRoom(axes, point)
export const turnByAxes = (axes: Place, turn: number) => wholeTurn(turn - axes.turn)
