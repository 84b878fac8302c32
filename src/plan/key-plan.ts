/**
 * Where each room is drawn on the key plan: storeys under one another, on each its rooms as they stand in the building,
 * and below them, one under another, the rooms that have no place yet. Millimetres.
 */
import type { Point } from '../drawing/room-plan.ts'
import { boxOf, type Place, toBuilding } from './place.ts'

export interface KeyRoom {
  /** Null while the room has no place in the building. */
  readonly place: Place | null
  readonly storey: string
  /** As measured, room-local. */
  readonly corners: readonly Point[]
}

/** For each room, what brings a point of it onto the key plan; between what stands apart lie `apart` millimetres. */
export function keyPlaces(rooms: readonly KeyRoom[], apart: number): readonly ((point: Point) => Point)[] {
  const storeys = [...new Set(rooms.flatMap(room => (room.place === null ? [] : [room.storey])))]
  const shifts = new Map<string, Point>()
  let below = 0
  for (const storey of storeys) {
    const box = boxOf(
      rooms.flatMap(({ place, storey: own, corners }) =>
        place === null || own !== storey ? [] : corners.map(corner => toBuilding(place, corner)),
      ),
    )
    if (box === null) continue
    shifts.set(storey, [-box.left, below - box.top])
    below += box.bottom - box.top + apart
  }
  return rooms.map(({ place, storey, corners }) => {
    if (place !== null) {
      const [dx, dy] = shifts.get(storey) ?? [0, 0]
      return point => {
        const [x, y] = toBuilding(place, point)
        return [x + dx, y + dy]
      }
    }
    const box = boxOf(corners) ?? { left: 0, top: 0, right: 0, bottom: 0 }
    const [dx, dy] = [-box.left, below - box.top]
    below += box.bottom - box.top + apart
    return ([x, y]) => [x + dx, y + dy]
  })
}
