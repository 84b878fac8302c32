/**
 * The wire by another route: the frame kept level hangs as low as its wire lets it (least energy), found by search over
 * where its rings can be, without the formulas of the solver. The pull in the wire is the weight times how fast the
 * frame sinks when the wire is let out (virtual work).
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { newtons } from '../../../src/hang/physics.ts'
import { solveWire } from '../../../src/hang/wire.ts'

/** Depth of the rings below the hooks when the frame is moved `u` sideways, by bisection on the length of the wire. */
function depthAt(u: number, rings: number, hooks: number, length: number): number {
  const half = (rings - hooks) / 2
  const used = (v: number) => Math.hypot(half + u, v) + hooks + Math.hypot(half - u, v)
  if (used(0) > length) return Number.NEGATIVE_INFINITY
  let [low, high] = [0, length]
  for (let i = 0; i < 200; i += 1) {
    const middle = (low + high) / 2
    if (used(middle) > length) high = middle
    else low = middle
  }
  return (low + high) / 2
}

/** Golden section over the sideways place: the lowest the frame can hang. */
function lowest(rings: number, hooks: number, length: number): number {
  const golden = (Math.sqrt(5) - 1) / 2
  const reach = (length - rings) / 2
  let [a, b] = [-reach, reach]
  for (let i = 0; i < 80; i += 1) {
    const c = b - golden * (b - a)
    const d = a + golden * (b - a)
    if (depthAt(c, rings, hooks, length) > depthAt(d, rings, hooks, length)) b = d
    else a = c
  }
  return depthAt((a + b) / 2, rings, hooks, length)
}

const wires = fc
  .record({
    rings: fc.double({ min: 100, max: 1500, noNaN: true }),
    slack: fc.double({ min: 0.02, max: 0.5, noNaN: true }),
    apart: fc.double({ min: 0, max: 0.9, noNaN: true }),
    mass: fc.double({ min: 0.5, max: 60, noNaN: true }),
  })
  .map(({ rings, slack, apart, mass }) => ({ rings, length: rings * (1 + slack), hooks: rings * apart, mass }))

describe('least energy agrees with the solver', () => {
  test('rise', () => {
    fc.assert(
      fc.property(wires, ({ rings, length, hooks }) => {
        const answer = solveWire({ rings, ringDrop: 3000, wire: { by: 'length', length }, hooks })
        expect(answer.rise).toBeCloseTo(lowest(rings, hooks, length), 4)
      }),
      { numRuns: 60 },
    )
  })

  test('tension', () => {
    fc.assert(
      fc.property(wires, ({ rings, length, hooks, mass }) => {
        const answer = solveWire({ rings, ringDrop: 3000, wire: { by: 'length', length }, hooks, mass })
        const step = length * 1e-4
        const sinks = (lowest(rings, hooks, length + step) - lowest(rings, hooks, length - step)) / (2 * step)
        const pull = newtons(mass) * sinks
        expect(Math.abs((answer.forces?.tensionN ?? 0) / pull - 1)).toBeLessThan(2e-3)
      }),
      { numRuns: 40 },
    )
  })
})

describe('properties', () => {
  test('the length comes back from the drop that it gives, at any fingers', () => {
    fc.assert(
      fc.property(wires, ({ rings, length, hooks }) => {
        const ringDrop = 3000
        const { drop } = solveWire({ rings, ringDrop, wire: { by: 'length', length }, hooks })
        const again = solveWire({ rings, ringDrop, wire: { by: 'drop', drop, apart: hooks }, hooks })
        expect(again.length).toBeCloseTo(length, 6)
        expect(again.plainSubtraction?.tooHigh).toBeCloseTo(0, 6)
      }),
    )
  })

  test('hooks set for an angle give that angle', () => {
    fc.assert(
      fc.property(wires, fc.integer({ min: 5, max: 80 }), ({ rings, length }, leastAngle) => {
        const wire = { by: 'length', length } as const
        const { hooksForLeastAngle } = solveWire({ rings, ringDrop: 3000, wire, hooks: 0, leastAngle })
        const set = solveWire({ rings, ringDrop: 3000, wire, hooks: hooksForLeastAngle, leastAngle })
        expect(set.angle).toBeGreaterThan(leastAngle - 1e-6)
        if (hooksForLeastAngle > 0) expect(set.angle).toBeCloseTo(leastAngle, 6)
      }),
    )
  })

  test('forces on a hook balance: level run and leg give its resultant', () => {
    fc.assert(
      fc.property(wires, ({ rings, length, hooks, mass }) => {
        const { forces, angle } = solveWire({
          rings,
          ringDrop: 3000,
          wire: { by: 'length', length },
          hooks: hooks + 1e-3,
          mass,
        })
        if (forces === null) throw new Error('forces expected')
        const t = (angle * Math.PI) / 180
        const down = forces.tensionN * Math.sin(t)
        const inwards = forces.tensionN - forces.tensionN * Math.cos(t)
        expect(forces.hookDownN).toBeCloseTo(down, 6)
        expect(forces.hookSidewaysN).toBeCloseTo(inwards, 6)
        expect(forces.hookResultantN).toBeCloseTo(2 * forces.tensionN * Math.sin(t / 2), 6)
      }),
    )
  })
})
