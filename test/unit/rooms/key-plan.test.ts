/** The key plan as lines: closed rooms close, and one typed by half stands open with a dashed side to close. */
import { describe, expect, test } from 'vitest'
import { planDrawing } from '../../../renderer/shell/plan-lines.ts'
import type { Output } from '../../../src/contract/contract.ts'

type Rooms = Output<'room.plan'>['rooms']
type Point = [number, number]

function room(id: string, ...corners: readonly Point[]): Rooms[number] {
  const walls = corners.slice(1).map((to, at) => ({
    id: `${id}${at}`,
    face: `f${id}${at}`,
    name: `wall ${at + 1}`,
    from: corners[at] ?? to,
    to,
    partition: false,
    length: Math.hypot(to[0] - (corners[at]?.[0] ?? 0), to[1] - (corners[at]?.[1] ?? 0)),
    openings: [],
    works: 0,
    filled: 0,
    settle: 0,
    stop: 0,
    order: null,
  }))
  return { id, name: id, number: '', walls }
}

describe('a room on the key plan', () => {
  test('that closes has no side to close', () => {
    const { rooms } = planDrawing([room('a', [0, 0], [6000, 0], [6000, 4000], [0, 4000], [0, 0])])
    expect(rooms[0]?.closing).toBeNull()
  })

  test('typed by half keeps its lengths, lies on the sheet whole and shows the side that is missing', () => {
    const { rooms, width, height } = planDrawing([room('a', [0, 0], [6000, 0], [6000, 4000], [1000, 4000])])
    const [one] = rooms
    expect(one?.walls.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1]))).toEqual([6000, 4000, 5000])
    expect(one?.closing).toEqual([
      [1000, 4000],
      [0, 0],
    ])
    expect([width, height]).toEqual([6000, 4000])
  })

  test('of two walls is on the sheet to its last end; one wall alone has nothing to close', () => {
    const two = planDrawing([room('a', [0, 0], [6000, 0], [6000, 4000])])
    expect([two.width, two.height]).toEqual([6000, 4000])
    expect(two.rooms[0]?.closing).toEqual([
      [6000, 4000],
      [0, 0],
    ])
    expect(planDrawing([room('a', [0, 0], [6000, 0])]).rooms[0]?.closing).toBeNull()
  })
})
