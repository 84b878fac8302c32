/** Rooms in lines: of houses that are made up here, so that each room's area, thickness and doors are known. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { outlineOf } from '../../../src/model/outline.ts'
import { outlinesOf, usualOutlineRules as usual } from '../../../src/plan/outlines-from-lines.ts'
import { toBuilding } from '../../../src/plan/place.ts'
import { namesWithin, roomFromOutline } from '../../../src/plan/room-from-outline.ts'

type Line = readonly [number, number, number, number]

const box = (x: number, y: number, w: number, h: number): Line[] => [
  [x, y, x + w, y],
  [x + w, y, x + w, y + h],
  [x + w, y + h, x, y + h],
  [x, y + h, x, y],
]

/** Rooms in a row within one outer line, walls `thick` between and about them, a door between each two at `door` mm. */
function row(widths: readonly number[], deep: number, thick: number, door: { at: number; wide: number }): Line[] {
  const whole = widths.reduce((sum, width) => sum + width, 0) + thick * (widths.length - 1)
  const lines = box(-thick, -thick, whole + 2 * thick, deep + 2 * thick)
  let x = 0
  for (const [index, width] of widths.entries()) {
    lines.push([x, 0, x + width, 0], [x, deep, x + width, deep])
    for (const [side, at] of [x, x + width].entries()) {
      if ((index === 0 && side === 0) || (index === widths.length - 1 && side === 1)) lines.push([at, 0, at, deep])
      else lines.push([at, 0, at, door.at], [at, door.at + door.wide, at, deep])
    }
    if (index < widths.length - 1) {
      for (const y of [door.at, door.at + door.wide]) lines.push([x + width, y, x + width + thick, y])
    }
    x += width + thick
  }
  return lines
}

const areas = (lines: readonly Line[], rules = usual) => outlinesOf(lines.flat(), rules).map(found => found.area)

test('a wall drawn as two lines gives the room within the inner ones, as thick as they are apart', () => {
  const found = outlinesOf([...box(0, 0, 5000, 4000), ...box(-200, -200, 5400, 4400)].flat(), usual)
  expect(found).toHaveLength(1)
  expect(found[0]?.area).toBeCloseTo(20, 9)
  expect(found[0]?.walls.map(wall => wall.thickness)).toEqual([200, 200, 200, 200])
})

test('a border about the house is told apart from its rooms; a pier and a table within change nothing', () => {
  const house = [...box(0, 0, 5000, 4000), ...box(-200, -200, 5400, 4400), ...box(2000, 2000, 400, 400)]
  const found = outlinesOf([...house, ...box(-3000, -3000, 12_000, 10_000)].flat(), usual)
  expect(found.map(({ area, about }) => [Math.round(area), about])).toEqual([
    [120, true],
    [20, false],
  ])
})

test('a corridor between two blocks is not closed where their corners look at one another', () => {
  // Two single-line rooms, 1.5 m apart, their long sides in line.
  expect(areas([...box(0, 0, 5000, 4000), ...box(6500, 0, 5000, 4000)])).toHaveLength(2)
})

test('without bridges a door makes two rooms one', () => {
  const lines = row([4000, 5000], 4000, 200, { at: 1000, wide: 900 })
  expect(areas(lines)).toHaveLength(2)
  expect(areas(lines, { ...usual, widest: 0 })).toHaveLength(1)
})

test('lines that cross, overlap, or enclose nothing are no trouble', () => {
  expect(areas([])).toEqual([])
  expect(
    areas([
      [0, 0, 5000, 0],
      [0, 0, 5000, 0],
      [2000, -1000, 2000, 1000],
    ]),
  ).toEqual([])
  // A square cut by a diagonal: two triangles.
  expect(areas([...box(0, 0, 4000, 4000), [0, 0, 4000, 4000]]).map(area => Math.round(area))).toEqual([8, 8])
  // Ends that miss one another by less than the joining distance.
  expect(
    areas([
      [0, 0, 4996, 3],
      [5000, 0, 5003, 4000],
      [5000, 4004, 0, 4000],
      [4, 3996, 0, -4],
    ]),
  ).toHaveLength(1)
})

describe('made-up houses', () => {
  const house = fc.record({
    widths: fc.array(fc.integer({ min: 2500, max: 9000 }), { minLength: 1, maxLength: 5 }),
    deep: fc.integer({ min: 4000, max: 9000 }),
    thick: fc.integer({ min: 60, max: 500 }),
    door: fc.record({ at: fc.integer({ min: 700, max: 1200 }), wide: fc.integer({ min: 700, max: 2000 }) }),
    turn: fc.double({ min: 0, max: 360, noNaN: true }),
    seed: fc.integer(),
  })

  test('every room is found with its area, thickness and doors, however the house is turned and its lines are ordered', () => {
    fc.assert(
      fc.property(house, ({ widths, deep, thick, door, turn, seed }) => {
        const place = { at: [12_345.6, -789.1] as const, turn }
        const lines = row(widths, deep, thick, door).map(([x1, y1, x2, y2], index): Line => {
          const [a, b] = [toBuilding(place, [x1, y1]), toBuilding(place, [x2, y2])]
          return ((seed >> (index % 31)) & 1) === 0 ? [...a, ...b] : [...b, ...a]
        })
        const shift = Math.abs(seed) % lines.length
        const found = outlinesOf([...lines.slice(shift), ...lines.slice(0, shift)].flat(), usual)
        const sorted = (all: readonly number[]) => [...all].sort((a, b) => a - b)
        const wanted = sorted(widths.map(width => (width * deep) / 1e6))
        const got = sorted(found.map(({ area }) => area))
        expect(got).toHaveLength(wanted.length)
        for (const [index, area] of wanted.entries()) expect(got[index]).toBeCloseTo(area, 4)
        const walls = found.flatMap(each => each.walls)
        for (const wall of walls) expect(wall.thickness).toBeCloseTo(thick, 0)
        const openings = walls.flatMap(wall => wall.openings)
        expect(openings).toHaveLength(2 * (widths.length - 1))
        for (const { width } of openings) expect(width).toBeCloseTo(door.wide, 3)
      }),
      { numRuns: 150 },
    )
  })

  test('as a room it closes, and stands where it was drawn', () => {
    fc.assert(
      fc.property(house, ({ widths, deep, thick, door, turn }) => {
        const place = { at: [500, 700] as const, turn }
        const lines = row(widths, deep, thick, door).map(
          ([x1, y1, x2, y2]): Line => [...toBuilding(place, [x1, y1]), ...toBuilding(place, [x2, y2])],
        )
        for (const found of outlinesOf(lines.flat(), usual)) {
          const room = roomFromOutline(found)
          const { corners, closes, gap } = outlineOf(room.walls, 5)
          expect(closes).toBe(true)
          expect(gap).toBeLessThan(0.5)
          for (const [index, corner] of corners.entries()) {
            const [x, y] = toBuilding(room, corner)
            const [wantedX, wantedY] = room.walls[index]?.from ?? [0, 0]
            expect(Math.hypot(x - wantedX, y - wantedY)).toBeLessThan(0.6)
          }
        }
      }),
      { numRuns: 100 },
    )
  })
})

test('a room is called by the words within, not by its area', () => {
  const [found] = outlinesOf(box(0, 0, 5000, 4000).flat(), usual)
  if (found === undefined) throw new Error('no room')
  const words = [
    { text: '20.0 m²', x: 2000, y: 800 },
    { text: 'East Cabinet', x: 2000, y: 1200 },
    { text: '104', x: 2000, y: 1600 },
    { text: 'Hall', x: 9000, y: 1200 },
  ]
  expect(namesWithin(found, words)).toEqual({ name: 'East Cabinet', number: '104' })
})
