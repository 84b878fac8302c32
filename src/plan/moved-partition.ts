/** A room with one partition somewhere else: what that would change is asked before anybody carries it. */
import type { PlanRoomRow } from '../contract/areas/plan.ts'
import { within } from './outline-shape.ts'
import { besideOf, type Ends, lengthOf, movedBy } from './partition.ts'

export type MoveWay = 'towards its right end' | 'towards its left end' | 'towards side a' | 'towards side b'
export const moveWays: readonly MoveWay[] = [
  'towards its right end',
  'towards its left end',
  'towards side a',
  'towards side b',
]

/** Moved by so many mm; null where an end of it would stand outside the walls of the room. */
export function withPartitionMoved(room: PlanRoomRow, id: string, way: MoveWay, by: number): PlanRoomRow | null {
  const outline = room.walls.map(wall => wall.from)
  const partitions = room.partitions.map(partition => {
    if (partition.id !== id) return partition
    const [from, to] = moved([partition.from, partition.to], way, by)
    return { ...partition, from: [...from], to: [...to] } satisfies typeof partition
  })
  const inside = partitions.every(({ id: own, from, to }) => own !== id || [from, to].every(at => within(outline, at)))
  return inside ? { ...room, partitions } : null
}

function moved(ends: Ends, way: MoveWay, by: number): Ends {
  if (way === 'towards side a') return besideOf(ends, 'a', by)
  if (way === 'towards side b') return besideOf(ends, 'a', -by)
  const [[ax, ay], [bx, end]] = ends
  const share = (way === 'towards its right end' ? by : -by) / (lengthOf(ends) || 1)
  return movedBy(ends, (bx - ax) * share, (end - ay) * share)
}
