/** A partition moved to see what that would give: where its ends go, and when it stands outside. */
import { expect, test } from 'vitest'
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import { moveWays, withPartitionMoved } from '../../../src/plan/moved-partition.ts'

const room = {
  walls: [
    [0, 0],
    [4000, 0],
    [4000, 3000],
    [0, 3000],
  ].map(from => ({ from })),
  partitions: [
    { id: 'p', from: [1000, 1500], to: [3000, 1500] },
    { id: 'q', from: [10, 10], to: [20, 20] },
  ],
} as unknown as PlanRoomRow

test('along itself and to either side; side a looks down the page where its right end is to the right', () => {
  const ends = moveWays.map(way => withPartitionMoved(room, 'p', way, 400)?.partitions[0])
  expect(ends).toMatchObject([
    { from: [1400, 1500], to: [3400, 1500] },
    { from: [600, 1500], to: [2600, 1500] },
    { from: [1000, 1900], to: [3000, 1900] },
    { from: [1000, 1100], to: [3000, 1100] },
  ])
  expect(withPartitionMoved(room, 'p', 'towards side a', 400)?.partitions[1]).toBe(room.partitions[1])
})

test('not through a wall', () => {
  expect(withPartitionMoved(room, 'p', 'towards side a', 1600)).toBeNull()
  expect(withPartitionMoved(room, 'p', 'towards its right end', 1100)).toBeNull()
})
