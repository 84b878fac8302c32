/** What holds a wall that is moved or turned: positions and words by plane geometry, by hand. */
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { bendable } from '../../../src/plan/bend.ts'
import { snapShift, snapTurn } from '../../../src/plan/snap-wall.ts'

const points: readonly Point[] = [
  [0, 0],
  [6000, 0],
  [6000, 4000],
  [0, 4000],
]
const walls = points.map((from, at) => {
  const to = points[(at + 1) % 4] ?? from
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return { name: `side ${at + 1}`, from, to, length, angle: 90, thickness: null }
})
const [north, east, south] = walls
if (north === undefined || east === undefined || south === undefined) throw new Error('there are four')
const say = (mm: number) => `${mm} mm`
const other = { called: 'Hall, west', sameRoom: false, thickness: null }
const shift = { others: [], walls: bendable(walls), index: 1, wall: east, reach: 80, grid: 250, say }

describe('a wall that is moved', () => {
  test('holds in one line with a wall that runs the same way, back to back with one that runs against it', () => {
    const front = { ...other, from: [6300, 9000], to: [6300, 12_000] } as const
    expect(snapShift({ ...shift, others: [front], by: 340 })).toMatchObject({
      by: 300,
      says: 'in line with Hall, west',
    })
    const back = { ...other, from: [6500, 3000], to: [6500, 1000], thickness: 150 } as const
    expect(snapShift({ ...shift, others: [back], by: 390 })).toMatchObject({
      by: 350,
      says: 'back to back with Hall, west, 150 mm between',
    })
    expect(snapShift({ ...shift, others: [{ ...back, sameRoom: true }], by: 390 })).toBeNull()
  })

  test('makes a neighbour as long as another wall, else a round length; without reach nothing holds', () => {
    const uneven = walls.map((wall, at) => ({ ...wall, length: at === 0 ? 6120 : wall.length }))
    const question = { ...shift, walls: bendable(uneven) }
    expect(snapShift({ ...question, by: -100 })).toMatchObject({ by: -120, says: 'side 1 as long as side 3' })
    expect(snapShift({ ...shift, by: 520 })).toMatchObject({ by: 500, says: 'side 1 6500 mm long' })
    expect(snapShift({ ...shift, by: 520, reach: 0 })).toBeNull()
    expect(snapShift({ ...shift, by: 620, reach: 50, grid: 500 })).toBeNull()
  })
})

describe('a wall that is turned', () => {
  test('holds at a right angle, in the direction of another wall, level and upright', () => {
    const slanted = walls.map((wall, at) => ({ ...wall, angle: at === 0 ? 92 : at === 1 ? 88.6 : 90 }))
    const turn = { wall: east, others: [], walls: bendable(slanted), index: 1, reach: 1 }
    // Its own line is upright; the corner with side 1 is 2° too wide, so 2° clockwise makes it square.
    expect(snapTurn({ ...turn, by: 2.4 })).toMatchObject({ by: 2, says: 'at a right angle with side 1' })
    expect(snapTurn({ ...turn, by: 1.2 })).toMatchObject({ by: 1.4, says: 'at a right angle with side 3' })
    expect(snapTurn({ ...turn, by: 0.3 })).toMatchObject({ by: 0, says: 'upright on the page' })
    // (3, 4) lies 53.13° on the page; the wall runs at 90°.
    const hall = { ...other, from: [0, 0], to: [3000, 4000] } as const
    const held = snapTurn({ ...turn, others: [hall], by: -37.4 })
    expect(held?.by).toBeCloseTo(-36.87, 2)
    expect(held?.says).toBe('in the direction of Hall, west')
    expect(snapTurn({ ...turn, others: [hall], by: -37.4, reach: 0 })).toBeNull()
    expect(snapTurn({ ...turn, by: 20 })).toBeNull()
  })
})
