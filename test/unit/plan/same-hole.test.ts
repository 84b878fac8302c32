/**
 * Which hole of the next room an opening is. Figures by hand: a room of 5000 × 4000 stands at 0, 0; the next begins
 * 200 mm to the right of it. A door from 1000 to 1900 down the east wall of the first is, seen from the second, whose
 * west wall runs up the page from its lower end, one from 4000 − 1900 = 2100 to 3000.
 */
import { describe, expect, test } from 'vitest'
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import { sameHoles } from '../../../src/plan/same-hole.ts'
import { openingAt, roomOf } from './plan-rooms.ts'

const door = (id: string, x: number, other: string | null = null) => ({ ...openingAt(id, 'door', x, 900), other })
const first = (other: string | null = null) =>
  roomOf('first', [0, 0], 5000, 4000, { east: [door('mine', 1000, other)] })
const second = (x: number, other: string | null = null): PlanRoomRow =>
  roomOf('second', [5200, 0], 3000, 4000, { west: [door('their', x, other)] })
const east = 'first east'

describe('the doors of two walls back to back', () => {
  test('are offered as one hole, with how far apart their jambs were measured', () => {
    expect(sameHoles([first(), second(2100)], east)).toMatchObject([
      { opening: { id: 'mine' }, there: { room: 'second', wall: 'west', opening: { id: 'their' } }, off: 0 },
    ])
    expect(sameHoles([first(), second(2112)], east)).toMatchObject([{ off: 12 }])
    // The same seen from the other room.
    expect(sameHoles([first(), second(2112)], 'second west')).toMatchObject([
      { opening: { id: 'their' }, there: { room: 'first', opening: { id: 'mine' } }, off: 12 },
    ])
  })

  test('are told as one where somebody said so, wherever the rooms stand', () => {
    const said = [first('their'), second(700, 'mine')]
    expect(sameHoles(said, east)).toMatchObject([{ there: { opening: { id: 'their' } }, off: null }])
    const apart = said.map(room => ({ ...room, at: null }))
    expect(sameHoles(apart, east)).toMatchObject([{ there: { opening: { id: 'their' } }, off: null }])
  })

  test('are nothing to offer where they do not face, on another storey, without a place, or already one', () => {
    expect(sameHoles([first(), second(600)], east)).toEqual([])
    expect(sameHoles([first(), { ...second(2100), storey: 'upper' }], east)).toEqual([])
    expect(sameHoles([first(), { ...second(2100), at: null }], east)).toEqual([])
    expect(sameHoles([{ ...first(), at: null }, second(2100)], east)).toEqual([])
    expect(sameHoles([first(), second(2100, 'elsewhere')], east)).toEqual([])
    expect(sameHoles([first(), second(2100)], 'gone')).toEqual([])
  })
})
