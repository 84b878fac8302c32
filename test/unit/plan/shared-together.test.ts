/** What becomes one wall when rooms are put together, by rooms laid out by hand. */
import { describe, expect, test } from 'vitest'
import type { PlanRoomRow } from '../../../src/contract/areas/plan.ts'
import { sharedTogether } from '../../../src/plan/shared-together.ts'
import { openingAt, roomOf } from './plan-rooms.ts'

const put = (room: string, x: number, y: number) => ({ room, place: { at: [x, y] as const, turn: 0 }, ties: [] })
/** Measured by itself, without a place. */
const loose = (room: PlanRoomRow): PlanRoomRow => ({ ...room, at: null })
const door = (id: string, x: number) => openingAt(id, 'door', x, 900)

const hall = (thickness: number | null) => roomOf('hall', [0, 0], 6000, 4000, { east: [door('h', 1000)] }, thickness)
// Its west wall runs up the page: the hall's door from 1000 to 1900 down is seen from 4000 − 1900 on.
const cabinet = (thickness: number | null) =>
  loose(roomOf('cabinet', [0, 0], 3000, 4000, { west: [door('c', 2100)] }, thickness))

describe('rooms put together', () => {
  test('share the wall between them with its thickness, and its doorway is one', () => {
    const { walls, doorways, not } = sharedTogether([hall(250), cabinet(null)], [put('cabinet', 6250, 0)], 10)
    expect(walls.map(({ a, b, ...rest }) => [a.id, b.id, rest])).toEqual([
      ['hall east', 'cabinet west', { thickness: 250, doorways: 1 }],
    ])
    expect(doorways).toEqual([['h', 'c']])
    expect(not).toEqual([])
  })
  test('share it unmeasured where nobody measured', () => {
    const { walls } = sharedTogether([hall(null), cabinet(null)], [put('cabinet', 6150, 0)], 10)
    expect(walls.map(({ thickness }) => thickness)).toEqual([null])
  })
  test('do not where the two say different thicknesses, or stand further apart than it is thick', () => {
    const differ = sharedTogether([hall(250), cabinet(300)], [put('cabinet', 6300, 0)], 10)
    expect(differ.not.map(({ why }) => why)).toEqual([{ kind: 'differ', thickness: [250, 300] }])
    expect([differ.walls, differ.doorways]).toEqual([[], []])
    // Two tapes may differ by so little.
    expect(sharedTogether([hall(250), cabinet(256)], [put('cabinet', 6256, 0)], 10).walls).toHaveLength(1)
    const apart = sharedTogether([hall(250), cabinet(null)], [put('cabinet', 6290, 0)], 10)
    expect(apart.not.map(({ why }) => why)).toEqual([{ kind: 'apart', apart: 290, thickness: 250 }])
  })
  test('a long wall that several rooms lie behind is no one’s other side; its doorways lead to each', () => {
    const long = roomOf('hall', [0, 0], 6000, 8000, { east: [door('h1', 1000), door('h2', 6000)] }, 200)
    const small = (name: string, hole: string, x: number) =>
      loose(roomOf(name, [0, 0], 3000, 3800, { west: [door(hole, x)] }, null))
    const answer = sharedTogether(
      [long, small('north', 'n', 3800 - 1900), small('south', 's', 3800 - (6900 - 4200))],
      [put('north', 6200, 0), put('south', 6200, 4200)],
      10,
    )
    expect(answer.not.map(({ b, why }) => [b.id, why.kind])).toContainEqual(['north west', 'several'])
    expect(answer.not.map(({ b, why }) => [b.id, why.kind])).toContainEqual(['south west', 'several'])
    expect(answer.doorways).toEqual([
      ['h1', 'n'],
      ['h2', 's'],
    ])
    // The two small rooms have the wall between them, which nobody measured.
    expect(answer.walls.map(({ a, b, thickness }) => [a.id, b.id, thickness])).toEqual([
      ['north south', 'south north', null],
    ])
  })
  test('leaves walls alone that stand already', () => {
    const standing = roomOf('store', [0, 4250], 6000, 3000, {}, 250)
    const { walls, not } = sharedTogether([hall(250), standing, cabinet(null)], [put('cabinet', 6250, 0)], 10)
    expect([...walls, ...not].flatMap(({ a, b }) => [a.id, b.id])).not.toContain('store north')
  })
})
