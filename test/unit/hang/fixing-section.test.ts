import { describe, expect, test } from 'vitest'
import { fixingSection } from '../../../src/hang/fixing-section.ts'
import { fixingShapes } from '../../../src/hang/fixing-shapes.ts'

const all = (drawn: ReturnType<typeof fixingSection>) => drawn.parts.flatMap(part => part.points)

describe('a fixing alone, in section', () => {
  test.each(fixingShapes)('%s is drawn at its bearing point, inside the wall or out of it, in finite figures', kind => {
    const drawn = fixingSection({ kind, holeOffset: kind === 'hook' ? 14 : -11 })
    expect(drawn.bearing).toEqual({ x: 0, y: 0 })
    expect(drawn.parts.length).toBeGreaterThan(0)
    expect(all(drawn).every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true)
    expect(all(drawn).some(({ x }) => x > 0)).toBe(true)
    // A rail’s hook makes no hole; all else goes into the wall.
    expect(drawn.hole).toEqual(kind === 'rail-hook' ? null : { x: 0, y: kind === 'hook' ? 14 : -11 })
    expect(all(drawn).some(({ x }) => x < 0)).toBe(kind !== 'rail-hook')
  })

  test('a screw 4 × 40 with a head of 8 goes as deep as its length says, less what stands out for the work', () => {
    const drawn = fixingSection({ kind: 'screw', holeOffset: -2, length: 40, shank: 4, head: 8 })
    const xs = all(drawn).map(({ x }) => x)
    // A third of a short screw, at most 12 mm, stands out: 12 − 40 = −28.
    expect(Math.min(...xs)).toBe(-28)
    const [shank, head] = drawn.parts
    expect(
      Math.max(...(shank?.points.map(({ y }) => y) ?? [])) - Math.min(...(shank?.points.map(({ y }) => y) ?? [])),
    ).toBe(4)
    expect(
      Math.max(...(head?.points.map(({ y }) => y) ?? [])) - Math.min(...(head?.points.map(({ y }) => y) ?? [])),
    ).toBe(8)
    // The work bears on top of the shank: its middle, the hole, is one radius below.
    expect(Math.max(...(shank?.points.map(({ y }) => y) ?? []))).toBe(0)
    expect(drawn.dimensions.find(one => one.label === 'hole')?.value).toBe(2)
    expect(drawn.dimensions.find(one => one.label === 'length')).toMatchObject({
      value: 40,
      from: { x: -28 },
      to: { x: 12 },
    })
  })

  test('a length that nobody measured is drawn at its usual size and shows no figure', () => {
    const drawn = fixingSection({ kind: 'nail', holeOffset: -1.5 })
    expect(drawn.dimensions.find(one => one.label === 'length')?.value).toBeNull()
  })
})
