/** The rooms of a plan as a visitor meets them: faces to stand before, doorways to go through, what is in the way. */
import type { PlanPartitionRow, PlanRoomRow } from '../contract/areas/plan.ts'
import { move, type Point } from '../drawing/room-plan.ts'
import { pointAlong, solidStretches } from '../drawing/stretches.ts'
import { bandOf, footprintOf } from './footprint.ts'
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
      ...room.partitions.flatMap(solidOfPartition),
      ...room.things.filter(bars).map(thing => footprintOf({ ...thing, x: thing.at[0], y: thing.at[1] })),
    ],
  }))
}

/** Its two surfaces, each from left to right as seen by who stands before it; its openings belong to neither's route. */
function facesOfPartition(partition: PlanPartitionRow): readonly RouteFace[] {
  return partition.sides.map(({ side, face }) => {
    const [from, to] = side === 'a' ? [partition.from, partition.to] : [partition.to, partition.from]
    const out = rightOf(from, to)
    const by = partition.thickness / 2
    return { face, from: move(from, out, by), to: move(to, out, by), length: partition.length, openings: [] }
  })
}

/** To the right of the way from left to right, where who looks at a face stands. */
function rightOf(from: Point, to: Point): Point {
  const run = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
  return [-(to[1] - from[1]) / run, (to[0] - from[0]) / run]
}

/** The stretches between its openings, four corners each, clockwise on the page. */
function solidOfPartition(partition: PlanPartitionRow): readonly (readonly Point[])[] {
  return solidStretches(partition.length, partition.openings).map(([from, to]) =>
    bandOf([pointAlong(partition, from), pointAlong(partition, to)], partition.thickness),
  )
}

type Thing = PlanRoomRow['things'][number]

function bars({ kind, bottom }: Thing): boolean {
  return !walkable.has(kind) && bottom < headroom
}
