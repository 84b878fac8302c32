/** The two sides of one wall as they lie, by rooms laid out by hand. */
import { describe, expect, test } from 'vitest'
import { lieSaid, sharedLie } from '../../../src/plan/shared-lie.ts'
import { roomOf } from './plan-rooms.ts'

const side = (room: ReturnType<typeof roomOf>, at: number) => {
  const wall = room.walls[at]
  if (wall === undefined) throw new Error('a room has four walls')
  return wall
}
const west = side(roomOf('West', [0, 0], 6000, 4000, {}, 300), 1)
const east = (x: number) => side(roomOf('East', [x, 0], 5000, 4000, {}, 300), 3)
const say = (mm: number) => `${Math.round(mm)} mm`

describe('the two sides of one wall', () => {
  test('lie well where they are as far apart as it is thick, within what tapes may differ by', () => {
    expect(sharedLie(west, east(6300), 10)).toEqual({ is: 'well' })
    expect(sharedLie(west, east(6309), 10)).toEqual({ is: 'well' })
    expect(sharedLie({ ...west, thickness: null }, east(6700), 10)).toEqual({ is: 'well' })
  })
  test('are told with how far apart they lie, and where the room would lie against the other', () => {
    const apart = sharedLie(west, east(6340), 10)
    expect(apart).toEqual({ is: 'apart', apart: 340, thickness: 300, by: [40, 0] })
    expect(lieSaid(apart, say)).toBe('its two sides lie 340 mm apart on the plan, and it was measured 300 mm thick')
    // Seen from the other room it is that one that goes the other way.
    expect(sharedLie(east(6340), west, 10)).toMatchObject({ by: [-40, 0] })
    expect(sharedLie(west, east(6200), 10)).toMatchObject({ apart: 200, by: [-100, 0] })
  })
  test('are no longer back to back where a room is far off', () => {
    const far = sharedLie(west, east(20_000), 10)
    expect(far).toEqual({ is: 'elsewhere' })
    expect(lieSaid(far, say)).toBe('its two sides do not lie back to back on the plan')
  })
})
