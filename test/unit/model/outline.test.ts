import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { closingLine, halfTyped, outlineOf } from '../../../src/model/outline.ts'

const rectangle = (a: number, b: number) => [
  { length: a, angle: 90 },
  { length: b, angle: 90 },
  { length: a, angle: 90 },
  { length: b, angle: 90 },
]

describe('an outline from measured walls', () => {
  test('of a rectangle closes, with its area, to the right from 0, 0 and down the page', () => {
    const { corners, closes, gap, area } = outlineOf(rectangle(9140, 5200), 20)
    expect(closes).toBe(true)
    expect(gap).toBeCloseTo(0, 6)
    expect(area).toBeCloseTo(47.528, 9)
    expect(corners.map(([x, y]) => [Math.round(x), Math.round(y)])).toEqual([
      [0, 0],
      [9140, 0],
      [9140, 5200],
      [0, 5200],
    ])
  })

  test('of an L has the area of its two rectangles', () => {
    const walls = [
      [6000, 90],
      [2000, 90],
      [3000, 270],
      [2000, 90],
      [3000, 90],
      [4000, 90],
    ].map(([length = 0, angle = 0]) => ({ length, angle }))
    const { closes, area } = outlineOf(walls, 20)
    expect(closes).toBe(true)
    expect(area).toBeCloseTo(6 * 2 + 3 * 2, 9)
  })

  test('of an equilateral triangle has the area of the formula √3/4 a²', () => {
    const { closes, area } = outlineOf(
      [1, 2, 3].map(() => ({ length: 3000, angle: 60 })),
      20,
    )
    expect(closes).toBe(true)
    expect(area).toBeCloseTo((Math.sqrt(3) / 4) * 9, 6)
  })

  test('tells the gap of a wall that was read 120 long, names the two along it, and shares it out', () => {
    const [a, b, , d] = rectangle(4000, 3000)
    if (!a || !b || !d) throw new Error('a rectangle has four walls')
    const { closes, gap, note, corners } = outlineOf([a, b, { length: 4120, angle: 90 }, d], 20)
    expect(closes).toBe(false)
    expect(gap).toBeCloseTo(120, 6)
    expect(note).toBe('The walls fail to close by 120 mm. Measure walls 1 and 3 again first; they run along the gap.')
    // The compass rule: each corner moves against the gap by its share of the way walked. 4 000 of 14 120, times 120.
    expect(corners[1]?.[0]).toBeCloseTo(4000 + (120 * 4000) / 14_120, 6)
  })

  test('names its walls by their names where each has its own, and writes the gap in the unit asked for', () => {
    const [a, b, , d] = rectangle(4000, 3000)
    if (!a || !b || !d) throw new Error('a rectangle has four walls')
    const named = (...names: string[]) =>
      [a, b, { length: 4120, angle: 90 }, d].map((wall, index) => ({ ...wall, name: names[index] }))
    const inches = (mm: number) => `${(mm / 25.4).toFixed(2)} in`
    expect(outlineOf(named('street', 'gable', 'yard', 'party wall'), 20, inches).note).toBe(
      'The walls fail to close by 4.72 in. Measure street and yard again first; they run along the gap.',
    )
    expect(outlineOf(named('long', 'short', 'long', 'short'), 20).note).toContain('Measure walls 1 and 3 again')
    expect(outlineOf(named('street', 'gable', '', 'party wall'), 20).note).toContain('Measure walls 1 and 3 again')
    expect(outlineOf(named('street', 'gable', 'yard', 'party wall'), 150, inches).note).toBe(
      'The walls close within 4.72 in.',
    )
    const hair = [...rectangle(4000, 3000).slice(0, 3), { length: 3000.3, angle: 90 }]
    expect(outlineOf(hair, 20, mm => `${Math.round(mm)} mm`).note).toBe('The walls close exactly.')
  })

  test('looks at the corners first where they cannot go round, by the angle sum of a polygon', () => {
    // Euclid, Elements I.32 and its corollary: the angles of a pentagon make three straight angles, 540°.
    const five = (last: number | null) =>
      [90, 90, 120, 90, last].map((angle, index) => ({ length: 3000 + index * 400, angle }))
    expect(outlineOf(five(90), 20).note).toMatch(
      /^The walls fail to close by \d+ mm\. The corners of 5 walls make 540° together, and these make 480°\./,
    )
    expect(outlineOf(five(151), 20).note).toMatch(/Measure walls? .* again first/)
    expect(outlineOf(five(null), 20).note).not.toContain('The corners')
  })

  test('is the same room whichever wall it begins with, where its angles add up to (n − 2) × 180°', () => {
    const wall = fc.record({ length: fc.integer({ min: 100, max: 20_000 }), share: fc.integer({ min: 20, max: 100 }) })
    fc.assert(
      fc.property(fc.array(wall, { minLength: 3, maxLength: 9 }), fc.nat(8), (drawn, by) => {
        const total = drawn.reduce((sum, one) => sum + one.share, 0)
        const walls = drawn.map(one => ({
          length: one.length,
          angle: (one.share / total) * (drawn.length - 2) * 180,
        }))
        const at = by % walls.length
        const turned = outlineOf([...walls.slice(at), ...walls.slice(0, at)], 20)
        const plain = outlineOf(walls, 20)
        expect(turned.gap).toBeCloseTo(plain.gap, 4)
        expect(turned.closes).toBe(plain.closes)
        const sides = (corners: readonly (readonly [number, number])[]) =>
          corners.map(([x, y], index) => {
            const [nextX, nextY] = corners[(index + 1) % corners.length] ?? [0, 0]
            return Math.hypot(nextX - x, nextY - y)
          })
        const drawnSides = sides(plain.corners)
        const turnedSides = sides(turned.corners)
        drawnSides.forEach((side, index) => {
          expect(turnedSides[(index - at + walls.length) % walls.length]).toBeCloseTo(side, 3)
        })
      }),
    )
  })

  test('takes an angle that nobody measured from what the others leave', () => {
    const [a, b, c, d] = rectangle(4000, 3000)
    if (!a || !b || !c || !d) throw new Error('a rectangle has four walls')
    expect(outlineOf([a, { ...b, angle: null }, c, { ...d, angle: null }], 20).gap).toBeCloseTo(0, 6)
  })

  test('stays open with one wall or two', () => {
    expect(outlineOf([{ length: 4000, angle: 90 }], 20)).toMatchObject({ closed: false, closes: false, area: 0 })
    expect(outlineOf(rectangle(4000, 3000).slice(0, 2), 20).corners).toHaveLength(3)
  })

  test('always ends where it began once the gap is shared, and walls keep their lengths where it is nothing', () => {
    const wall = fc.record({ length: fc.integer({ min: 100, max: 20_000 }), angle: fc.integer({ min: 20, max: 340 }) })
    fc.assert(
      fc.property(fc.array(wall, { minLength: 3, maxLength: 12 }), walls => {
        const { corners, gap } = outlineOf(walls, 20)
        expect(corners).toHaveLength(walls.length)
        const [lastX, lastY] = corners.at(-1) ?? [0, 0]
        const last = walls.at(-1)?.length ?? 0
        // The closing side differs from its measured length by its share of the gap at most.
        expect(Math.abs(Math.hypot(lastX, lastY) - last)).toBeLessThanOrEqual(gap + 1e-6)
      }),
    )
  })
})

describe('a room that is typed as far as this', () => {
  const sides = rectangle(9140, 5200)

  test('keeps its walls as they are and says what is still to close: the fourth wall of a rectangle', () => {
    const corners = halfTyped(sides.slice(0, 3))
    // Three sides of a rectangle by hand: right, down, back.
    expect(corners?.map(([x, y]) => [Math.round(x), Math.round(y)])).toEqual([
      [0, 0],
      [9140, 0],
      [9140, 5200],
      [0, 5200],
    ])
    const [from, to] = closingLine(corners ?? [])
    expect(Math.hypot(from[0] - to[0], from[1] - to[1])).toBeCloseTo(5200, 6)
  })

  test('is none once the walls come round, be it 120 mm short', () => {
    expect(halfTyped(sides)).toBeNull()
    expect(halfTyped(sides.map((side, at) => (at === 2 ? { ...side, length: side.length + 120 } : side)))).toBeNull()
    expect(halfTyped(sides.slice(0, 1))).toBeNull()
  })
})
