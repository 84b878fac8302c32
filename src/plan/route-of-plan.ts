/** The rooms of a plan as a visitor meets them: faces to stand before, doorways to go through, what is in the way. */
import type { PlanPartitionRow, PlanRoomRow } from '../contract/areas/plan.ts'
import { footprintOf, solidBands } from './footprint.ts'
import { besideOf } from './partition.ts'
import type { RouteFace, RouteRoom } from './route.ts'

/** Nobody walks under what hangs lower than this above the floor, mm. Common practice, no source. */
const headroom = 2100
/** What a visitor goes over, not round. */
const walkable = new Set(['stair', 'ramp', 'platform'])

/** Rooms that have a place in the building, or all of them where none has. */
export function routeRooms(rooms: readonly PlanRoomRow[]): readonly RouteRoom[] {
  const placed = rooms.filter(room => room.at !== null)
  return (placed.length > 0 ? placed : rooms.slice(0, 1)).map(room => ({
    id: room.id,
    name: room.name,
    walls: room.walls.map(({ face, from, to, length, openings }) => ({ face, from, to, length, openings })),
    free: room.partitions.flatMap(facesOfPartition),
    footprints: [
      ...room.partitions.flatMap(solidBands),
      ...room.things.filter(bars).map(thing => footprintOf({ ...thing, x: thing.at[0], y: thing.at[1] })),
    ],
  }))
}

/** Its two surfaces, each from left to right as seen by who stands before it; its openings belong to neither's route. */
function facesOfPartition(partition: PlanPartitionRow): readonly RouteFace[] {
  return partition.sides.map(({ side, face }) => {
    const [from, to] = besideOf([partition.from, partition.to], side, partition.thickness / 2)
    return { face, from, to, length: partition.length, openings: [] }
  })
}

type Thing = PlanRoomRow['things'][number]

function bars({ kind, bottom }: Thing): boolean {
  return !walkable.has(kind) && bottom < headroom
}
