/**
 * Rooms put together from their doorways. The check is a house that is known beforehand: a grid of rooms with walls of
 * one thickness and doors cut through them, each room then measured by itself and its place forgotten.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Point } from '../../../src/drawing/room-plan.ts'
import type { LooseRoom } from '../../../src/plan/door-pairs.ts'
import { overlap } from '../../../src/plan/overlap.ts'
import { type Place, toBuilding, toRoom, wholeTurn } from '../../../src/plan/place.ts'
import { putTogether } from '../../../src/plan/put-together.ts'

type Opening = LooseRoom['walls'][number]['openings'][number]

interface House {
  readonly rooms: readonly LooseRoom[]
  readonly places: ReadonlyMap<string, Place>
}

/** A grid of rooms with their true places; the rooms as measured, each from a corner and in a direction of its own. */
function houseOf(widths: readonly number[], depths: readonly number[], thick: number, turns: readonly number[]): House {
  const lefts = widths.map((_, i) => widths.slice(0, i).reduce((sum, each) => sum + each + thick, 0))
  const tops = depths.map((_, i) => depths.slice(0, i).reduce((sum, each) => sum + each + thick, 0))
  const places = new Map<string, Place>()
  const rooms = depths.flatMap((depth, row) =>
    widths.map((width, column): LooseRoom => {
      const [x, y] = [lefts[column] ?? 0, tops[row] ?? 0]
      const id = `${row} ${column}`
      const place: Place = { at: [x, y], turn: wholeTurn(turns[(row * widths.length + column) % turns.length] ?? 0) }
      places.set(id, place)
      const corners: Point[] = [
        [x, y],
        [x + width, y],
        [x + width, y + depth],
        [x, y + depth],
      ]
      const beyond = [`${row - 1} ${column}`, `${row} ${column + 1}`, `${row + 1} ${column}`, `${row} ${column - 1}`]
      const there = [row > 0, column + 1 < widths.length, row + 1 < depths.length, column > 0]
      const walls = corners.map((from, side) => {
        const to = corners[(side + 1) % 4] ?? from
        const length = side % 2 === 0 ? width : depth
        const leadsTo = beyond[side] ?? ''
        // Each door has a place and a width of its own, seen from the left of either room.
        const upper = side === 0 || side === 3 ? leadsTo : id
        const wide = 800 + ((Number(upper.split(' ')[0]) * 7 + Number(upper.split(' ')[1]) * 3) % 5) * 10
        const far = 300
        const x = side === 0 || side === 1 ? far : length - far - wide
        const door: Opening = { id: `${id} ${side}`, kind: 'door', x, width: wide, leadsTo, other: null }
        return {
          id: `${id} wall ${side}`,
          name: `wall ${side + 1}`,
          from: [...toRoom(place, from)] as [number, number],
          to: [...toRoom(place, to)] as [number, number],
          length,
          thickness: thick,
          openings: there[side] === true ? [door] : [],
        }
      })
      return { id, name: id, at: null, turn: 0, walls }
    }),
  )
  return { rooms, places }
}

/** As it is in the building, which is how a room with a place is told. */
function placed(room: LooseRoom, place: Place): LooseRoom {
  const put = (point: Point): [number, number] => [...toBuilding(place, point)]
  const walls = room.walls.map(wall => ({ ...wall, from: put(wall.from), to: put(wall.to) }))
  return { ...room, at: [...place.at] as [number, number], turn: place.turn, walls }
}

const size = fc.integer({ min: 2500, max: 9000 })
const sizes = fc.array(size, { minLength: 1, maxLength: 4 })
const turns = fc.array(
  fc.integer({ min: 0, max: 3599 }).map(each => each / 10),
  { minLength: 1, maxLength: 5 },
)

describe('a house whose rooms were measured one by one', () => {
  test('stands again as it stood, each door through both walls, from any room that has its place', () => {
    fc.assert(
      fc.property(
        sizes,
        sizes,
        fc.integer({ min: 80, max: 500 }),
        turns,
        fc.nat(),
        (widths, depths, thick, own, pick) => {
          const { rooms, places } = houseOf(widths, depths, thick, own)
          const anchor = rooms[pick % rooms.length]
          const given = rooms.map(room => {
            const place = places.get(room.id)
            return room === anchor && place !== undefined ? placed(room, place) : room
          })
          const { put, left } = putTogether(given)
          expect(left).toEqual([])
          expect(put).toHaveLength(rooms.length - 1)
          for (const { room, place, ties } of put) {
            const walls = rooms.find(one => one.id === room)?.walls ?? []
            const truth = places.get(room) ?? place
            for (const { from } of walls) {
              const [x, y] = toBuilding(place, from)
              const [trueX, trueY] = toBuilding(truth, from)
              // Places are kept to 0.1 mm, and each room may hand its rounding on to the next.
              expect(Math.hypot(x - trueX, y - trueY)).toBeLessThan(2)
            }
            expect(ties.length).toBeGreaterThan(0)
            for (const tie of ties) expect([tie.fits, tie.misses < 2, tie.thickness]).toEqual([true, true, thick])
          }
        },
      ),
      { numRuns: 60 },
    )
  })

  test('begins with the room that most doors lead to where none has a place', () => {
    const { rooms } = houseOf([4000, 5000, 4000], [3000, 3000, 3000], 200, [0])
    const { put, left } = putTogether(rooms)
    expect(put[0]).toEqual({ room: '1 1', place: { at: [0, 0], turn: 0 }, ties: [] })
    expect([put.length, left]).toEqual([9, []])
  })

  test('a room that is left out is not put, and what only it leads to stays apart', () => {
    const { rooms, places } = houseOf([4000, 5000, 4000], [3000], 200, [0])
    const given = rooms.map((room, at) =>
      at === 0 ? placed(room, places.get(room.id) ?? { at: [0, 0], turn: 0 }) : room,
    )
    expect(putTogether(given, new Set(['0 1']))).toEqual({ put: [], left: [{ room: '0 2', why: { kind: 'apart' } }] })
  })
})

test('whatever is said of the doors, no room is put on another, each by a door that meets, and none is forgotten', () => {
  const room = fc.record({
    wide: size,
    deep: size,
    doors: fc.array(fc.tuple(fc.nat(3), fc.nat(4), fc.nat(2)), { maxLength: 4 }),
  })
  fc.assert(
    fc.property(fc.array(room, { minLength: 2, maxLength: 5 }), made => {
      const rooms = made.map(({ wide, deep, doors }, index): LooseRoom => {
        const corners: Point[] = [
          [0, 0],
          [wide, 0],
          [wide, deep],
          [0, deep],
        ]
        const walls = corners.map((from, side) => ({
          id: `${index} ${side}`,
          name: '',
          from: [...from] as [number, number],
          to: [...(corners[(side + 1) % 4] ?? from)] as [number, number],
          length: side % 2 === 0 ? wide : deep,
          thickness: null,
          openings: doors.flatMap(([on, to, width], at): Opening[] =>
            on === side && to !== index && to < made.length
              ? [
                  {
                    id: `${index} ${at}`,
                    kind: 'passage',
                    x: 200 + at * 100,
                    width: 900 + width * 40,
                    leadsTo: `${to}`,
                    other: null,
                  },
                ]
              : [],
          ),
        }))
        return { id: `${index}`, name: `${index}`, at: null, turn: 0, walls }
      })
      const { put, left } = putTogether(rooms)
      expect([...put, ...left].map(each => each.room).sort()).toEqual(rooms.map(each => each.id).sort())
      const stands = put.map(({ room: id, place }) =>
        (rooms[Number(id)]?.walls ?? []).map(wall => toBuilding(place, wall.from)),
      )
      for (const [at, one] of stands.entries()) {
        for (const other of stands.slice(at + 1)) expect(overlap(one, other)).toBe(false)
      }
      for (const { ties } of put.slice(1)) expect(ties.some(tie => tie.fits)).toBe(true)
    }),
    { numRuns: 150 },
  )
})

describe('what does not fit is told', () => {
  const { rooms, places } = houseOf([4000, 5000], [3000, 3000], 200, [0])
  const anchored = rooms.map((room, at) =>
    at === 0 ? placed(room, places.get(room.id) ?? { at: [0, 0], turn: 0 }) : room,
  )
  const change = (id: string, by: (room: LooseRoom) => LooseRoom) =>
    anchored.map(room => (room.id === id ? by(room) : room))
  const everyDoor =
    (by: (door: Opening) => Opening) =>
    (room: LooseRoom): LooseRoom => ({
      ...room,
      walls: room.walls.map(wall => ({ ...wall, openings: wall.openings.map(by) })),
    })

  test('doors of other widths', () => {
    const { left } = putTogether(
      change(
        '0 1',
        everyDoor(door => ({ ...door, width: 1400 })),
      ),
    )
    expect(left).toContainEqual({ room: '0 1', why: { kind: 'none as wide', to: '1 1', width: 1400 } })
  })

  test('walls that are said to be of two thicknesses, and walls that nobody measured', () => {
    const thick = (thickness: number | null) => (room: LooseRoom) => ({
      ...room,
      walls: room.walls.map(wall => ({ ...wall, thickness })),
    })
    const tie = (of: readonly LooseRoom[]) => putTogether(of).put.find(each => each.room === '0 1')?.ties[0]
    expect(tie(change('0 1', thick(250)))).toMatchObject({ thickness: 200, differ: [250, 200], assumed: false })
    expect(tie(anchored.map(thick(null)))).toMatchObject({ assumed: true, differ: null, fits: true })
  })

  test('a second doorway that misses by 400 mm, with how far', () => {
    const moved = change('1 1', room => ({
      ...room,
      walls: room.walls.map((wall, side) => ({
        ...wall,
        openings: wall.openings.map(door => ({ ...door, x: side === 3 ? door.x - 400 : door.x })),
      })),
    }))
    const ties = putTogether(moved).put.flatMap(each => each.ties)
    const off = ties.filter(tie => !tie.fits)
    expect(off.map(tie => Math.round(tie.misses))).toEqual([400])
  })

  test('a room that would stand where another stands', () => {
    const away = placed(rooms[3] ?? (houseOf([1], [1], 1, [0]).rooms[0] as LooseRoom), { at: [4500, 500], turn: 0 })
    const only = [anchored[0], anchored[1], { ...away, walls: away.walls.map(wall => ({ ...wall, openings: [] })) }]
    const { put, left } = putTogether(only.flatMap(room => room ?? []))
    expect(put).toEqual([])
    expect(left).toEqual([{ room: '0 1', why: { kind: 'in the way', of: '1 1' } }])
  })
})
