/** A wall cut anywhere and joined again is the wall it was; what is along it keeps its place and height. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ceilingAt, floorAt, heightAlong, studsBetween } from '../../../src/hang/wall.ts'
import { joinFacts, type PartFacts, splitFacts, unlike } from '../../../src/plan/wall-parts.ts'

const plain: PartFacts = {
  length: 9000,
  height: 3200,
  wallType: 'drywall',
  thickness: 120,
  skirting: 140,
  backingFrom: 1219,
  backingTo: 2900,
  studFirst: 285,
  studSpacing: 406,
  railKgPerMetre: null,
  studs: [],
  joints: [1200, 2400],
  floor: [],
  ceiling: [],
  rail: [],
}
const profile = (low: number, high: number) =>
  fc
    .uniqueArray(fc.record({ x: fc.integer({ min: 0, max: 9000 }), y: fc.integer({ min: low, max: high }) }), {
      maxLength: 5,
      selector: point => point.x,
    })
    .map(points => points.sort((a, b) => a.x - b.x).map(({ x, y }) => [x, y] as const))
const places = fc
  .uniqueArray(fc.integer({ min: 0, max: 9000 }), { maxLength: 5 })
  .map(list => list.sort((a, b) => a - b))
const anyWall = fc.record({
  floor: profile(-60, 60),
  ceiling: profile(2900, 3400),
  rail: profile(2500, 2800),
  studs: places,
  joints: places,
  studFirst: fc.option(fc.integer({ min: 0, max: 600 })),
  studSpacing: fc.option(fc.constantFrom(406, 610)),
})

describe('a wall in two parts', () => {
  test('has its heights from the floor at the left end of each, by hand on a floor that falls 38 in 6 000', () => {
    // At 3 000 the floor is 19 lower; a ceiling 3 200 above the left end is 3 219 above the floor there.
    const wall = {
      ...plain,
      length: 6000,
      floor: [
        [0, 0],
        [6000, -38],
      ] as const,
    }
    const { left, right, rise } = splitFacts(wall, 3000)
    expect(rise).toBe(-19)
    expect([left.length, right.length, right.height, right.backingFrom]).toEqual([3000, 3000, 3219, 1238])
    expect([left.floor, right.floor]).toEqual([
      [
        [0, 0],
        [3000, -19],
      ],
      [
        [0, 0],
        [3000, -19],
      ],
    ])
    // 285 + 7 × 406 = 3 127 is the first stud beyond the cut.
    expect(right.studFirst).toBe(127)
    expect(joinFacts(left, right).joined).toEqual(wall)
  })

  test('keeps every height, stud and joint at its place on the building', () => {
    fc.assert(
      fc.property(anyWall, fc.integer({ min: 1, max: 8999 }), fc.nat(9000), (some, at, x) => {
        const wall = { ...plain, ...some }
        const { left, right, rise } = splitFacts(wall, at)
        const [part, local, up] = x < at ? ([left, x, 0] as const) : ([right, x - at, rise] as const)
        expect(floorAt(part.floor, local) + up).toBeCloseTo(floorAt(wall.floor, x), 4)
        expect(ceilingAt(part, local) + up).toBeCloseTo(ceilingAt(wall, x), 4)
        const rail = heightAlong(part.rail, local)
        expect(rail === null).toBe(wall.rail.length === 0)
        expect((rail ?? 0) + up).toBeCloseTo(heightAlong(wall.rail, x) ?? up, 4)
        const all = (one: PartFacts) => studsBetween(one, 0, one.length)
        if (wall.studs.length === 0) {
          const both = [...all(left).filter(stud => stud < at), ...all(right).map(stud => stud + at)]
          const whole = all(wall)
          expect(both.length).toBe(whole.length)
          for (const [index, stud] of both.entries()) expect(stud).toBeCloseTo(whole[index] ?? -1, 4)
        }
      }),
    )
  })

  test('joined again is what it was', () => {
    fc.assert(
      fc.property(anyWall, fc.integer({ min: 1, max: 8999 }), fc.nat(9000), (some, at, x) => {
        const wall = { ...plain, ...some }
        const { left, right } = splitFacts(wall, at)
        expect(unlike(left, right)).toEqual([])
        const { joined } = joinFacts(left, right)
        expect(joined.length).toBe(wall.length)
        expect(floorAt(joined.floor, x)).toBeCloseTo(floorAt(wall.floor, x), 4)
        expect(ceilingAt(joined, x)).toBeCloseTo(ceilingAt(wall, x), 4)
        expect(joined.joints).toEqual(wall.joints)
        if (!wall.studs.some(stud => stud < at) === !wall.studs.some(stud => stud >= at)) {
          expect([joined.studs, joined.studFirst, joined.studSpacing]).toEqual([
            wall.studs,
            wall.studFirst,
            wall.studSpacing,
          ])
        }
        // No point that was not measured is left at the seam.
        const points = (of: PartFacts) => of.floor.length + of.ceiling.length + of.rail.length
        expect(points(joined)).toBeLessThanOrEqual(points(wall))
      }),
    )
  })

  test('names what two walls in line do not share', () => {
    const { left, right } = splitFacts(plain, 4000)
    expect(unlike(left, { ...right, wallType: 'brick', skirting: null })).toEqual(['built of', 'skirting'])
    expect(unlike(left, { ...right, height: 3000, rail: [[0, 2500]] })).toEqual(['height', 'picture rail'])
  })

  test('with another comb tells the studs of each part one by one', () => {
    const { left, right } = splitFacts({ ...plain, length: 2000 }, 1000)
    const { joined } = joinFacts(left, { ...right, studFirst: 100, studSpacing: 600 })
    expect(joined.studs).toEqual([285, 691, 1100, 1700])
  })
})
