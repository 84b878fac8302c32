import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { type KeyRoom, keyPlaces } from '../../../src/plan/key-plan.ts'

const corners: readonly Point[] = [
  [0, 0],
  [6000, 0],
  [6000, 4000],
  [0, 4000],
]
const room = (over: Partial<KeyRoom> = {}): KeyRoom => ({ place: null, storey: '', corners, ...over })
const drawn = (rooms: readonly KeyRoom[]) =>
  keyPlaces(rooms, 600).map((put, at) => rooms[at]?.corners.map(corner => [...put(corner)]) ?? [])

describe('the key plan', () => {
  test('rooms without a place stand under one another from the left edge', () => {
    const [first, second] = drawn([room({ corners: corners.map(([x, y]) => [x - 700, y + 90]) }), room()])
    expect(first).toEqual([
      [0, 0],
      [6000, 0],
      [6000, 4000],
      [0, 4000],
    ])
    expect(second?.[0]).toEqual([0, 4600])
  })

  test('placed ones stand as they do in the building, turned; the others below them', () => {
    const [a, b, c] = drawn([
      room({ place: { at: [1000, 2000], turn: 0 } }),
      room({ place: { at: [11_200, 2000], turn: 90 } }),
      room(),
    ])
    expect(a?.[0]).toEqual([0, 0])
    // Turned by a quarter its 6000 mm run down the page from its corner, its 4000 to the left of it.
    expect(b).toEqual([
      [10_200, 0],
      [10_200, 6000],
      [6200, 6000],
      [6200, 0],
    ])
    expect(c?.[0]).toEqual([0, 6600])
  })

  test('storeys never lie over one another', () => {
    const [ground, upper] = drawn([
      room({ place: { at: [0, 0], turn: 0 }, storey: 'ground' }),
      room({ place: { at: [0, 0], turn: 0 }, storey: 'upper' }),
    ])
    expect(ground?.[0]).toEqual([0, 0])
    expect(upper?.[0]).toEqual([0, 4600])
  })

  test('no rooms, no places', () => {
    expect(keyPlaces([], 600)).toEqual([])
  })
})
