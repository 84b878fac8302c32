/**
 * Loads by another route: every node of a hung work written as two equations of force, the frame as three, and all of
 * them solved together by least squares. No formula of the program is used; where fixings are more than statics can
 * tell, least squares takes the smallest forces that balance. Lean is held against least energy.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { loadsOf, sharesByMoments } from '../../../src/hang/loads.ts'
import { newtons } from '../../../src/hang/physics.ts'
import { pullOut } from '../../../src/hang/pull-out.ts'
import { leanOf, padForPlumb, twoLegs } from '../../../src/hang/rail.ts'
import { solveWire } from '../../../src/hang/wire.ts'

type Row = { readonly of: Readonly<Record<string, number>>; readonly is: number }

/** Least squares of smallest norm by conjugate gradients from zero; each unknown by its name. */
function balance(rows: readonly Row[]): (name: string) => number {
  const names = [...new Set(rows.flatMap(row => Object.keys(row.of)))]
  const a = rows.map(row => names.map(name => row.of[name] ?? 0))
  const dot = (u: readonly number[], v: readonly number[]) => u.reduce((sum, one, i) => sum + one * (v[i] ?? 0), 0)
  const times = (x: readonly number[]) => a.map(row => dot(row, x))
  const back = (y: readonly number[]) =>
    names.map((_, j) => a.reduce((sum, row, i) => sum + (row[j] ?? 0) * (y[i] ?? 0), 0))
  let x = names.map(() => 0)
  let rest = rows.map(row => row.is)
  let s = back(rest)
  let p = s
  for (let i = 0; i < 400 && dot(s, s) > 1e-26; i += 1) {
    const q = times(p)
    const step = dot(s, s) / dot(q, q)
    x = x.map((one, j) => one + step * (p[j] ?? 0))
    rest = rest.map((one, j) => one - step * (q[j] ?? 0))
    const next = back(rest)
    const turn = dot(next, next) / dot(s, s)
    p = next.map((one, j) => one + turn * (p[j] ?? 0))
    s = next
  }
  // A frame that no forces balance would leave a rest.
  expect(Math.sqrt(dot(rest, rest))).toBeLessThan(1e-6)
  return name => {
    const at = names.indexOf(name)
    const value = x[at]
    if (value === undefined) throw new Error(`no ${name}`)
    return value
  }
}

/** Both equations of a node: what pulls it along `to − at`, and its own forces by name, x then y. */
function node(
  at: readonly [number, number],
  pulls: readonly { readonly name: string; readonly to: readonly [number, number] }[],
  own: readonly [string, string],
): readonly Row[] {
  const along = (axis: 0 | 1) =>
    Object.fromEntries(
      pulls.map(({ name, to }) => [name, (to[axis] - at[axis]) / Math.hypot(to[0] - at[0], to[1] - at[1])]),
    )
  return [
    { of: { ...along(0), [own[0]]: 1 }, is: 0 },
    { of: { ...along(1), [own[1]]: 1 }, is: 0 },
  ]
}

/** Depth of the rings under the hooks by bisection on the wire's length. */
function sag(rings: number, hooks: number, length: number): number {
  let [low, high] = [0, length]
  for (let i = 0; i < 200; i += 1) {
    const middle = (low + high) / 2
    if (hooks + 2 * Math.hypot((rings - hooks) / 2, middle) > length) high = middle
    else low = middle
  }
  return low
}

describe('a wire over two hooks', () => {
  const wires = fc.record({
    rings: fc.double({ min: 0.2, max: 1.5, noNaN: true }),
    slack: fc.double({ min: 0.03, max: 0.4, noNaN: true }),
    apart: fc.double({ min: 0.1, max: 0.8, noNaN: true }),
    mass: fc.double({ min: 1, max: 50, noNaN: true }),
  })

  test('pull, ring and hook forces', () => {
    fc.assert(
      fc.property(wires, ({ rings, slack, apart, mass }) => {
        const [length, hooks] = [rings * (1 + slack), rings * apart]
        const v = sag(rings, hooks, length)
        const [hl, hr] = [
          [-hooks / 2, 0],
          [hooks / 2, 0],
        ] as const
        const [rl, rr] = [
          [-rings / 2, -v],
          [rings / 2, -v],
        ] as const
        const force = balance([
          // The wire slides: one pull all along.
          { of: { legL: 1, run: -1 }, is: 0 },
          { of: { legR: 1, run: -1 }, is: 0 },
          ...node(
            hl,
            [
              { name: 'legL', to: rl },
              { name: 'run', to: hr },
            ],
            ['hookLx', 'hookLy'],
          ),
          ...node(
            hr,
            [
              { name: 'legR', to: rr },
              { name: 'run', to: hl },
            ],
            ['hookRx', 'hookRy'],
          ),
          ...node(rl, [{ name: 'legL', to: hl }], ['ringLx', 'ringLy']),
          ...node(rr, [{ name: 'legR', to: hr }], ['ringRx', 'ringRy']),
          // The frame hangs still: its rings pull down on the wire as much as it weighs, without turning it.
          { of: { ringLx: 1, ringRx: 1 }, is: 0 },
          { of: { ringLy: 1, ringRy: 1 }, is: -newtons(mass) },
          { of: { ringLy: -rings / 2, ringRy: rings / 2, ringLx: v, ringRx: v }, is: 0 },
        ])
        const wire = { by: 'length', length: length * 1000 } as const
        const { forces, rise } = solveWire({ rings: rings * 1000, ringDrop: 3000, wire, hooks: hooks * 1000, mass })
        if (forces === null) throw new Error('forces expected')
        expect(rise / 1000).toBeCloseTo(v, 6)
        const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-4 * newtons(mass))
        near(forces.tensionN, force('run'))
        near(forces.ringInwardN, -force('ringLx'))
        near(forces.ringUpN, -force('ringLy'))
        // What the wall pushes back with at a hook is the hook's load.
        near(forces.hookDownN, force('hookLy'))
        near(forces.hookSidewaysN, -force('hookLx'))
        near(forces.hookResultantN, Math.hypot(force('hookLx'), force('hookLy')))
        expect(forces.hookLean).toBeCloseTo((Math.atan2(-force('hookLx'), force('hookLy')) * 180) / Math.PI, 2)
      }),
      { numRuns: 60 },
    )
  })
})

describe('fixings along a line', () => {
  const at = fc.uniqueArray(fc.integer({ min: 0, max: 2000 }), { minLength: 2, maxLength: 7 })

  test('two by the lever rule, more by the smallest forces that balance', () => {
    fc.assert(
      fc.property(at, fc.double({ min: 0, max: 2000, noNaN: true }), (xs, massAt) => {
        const name = (i: number) => `r${i}`
        const ones = Object.fromEntries(xs.map((_, i) => [name(i), 1]))
        // Metres about the first fixing keep the equations of one size.
        const arms = Object.fromEntries(xs.map((x, i) => [name(i), (x - (xs[0] ?? 0)) / 1000]))
        const force = balance([
          { of: ones, is: 1 },
          { of: arms, is: (massAt - (xs[0] ?? 0)) / 1000 },
        ])
        sharesByMoments(xs, massAt).forEach((share, i) => {
          expect(Math.abs(share - force(name(i)))).toBeLessThan(1e-5 * (1 + Math.abs(share)))
        })
      }),
      { numRuns: 80 },
    )
  })

  test('two D-rings with the mass off the middle, in newtons', () => {
    const force = balance([
      { of: { left: 1, right: 1 }, is: newtons(12) },
      { of: { left: 0.1, right: 0.7 }, is: newtons(12) * 0.25 },
    ])
    const loads = loadsOf({
      mass: 12,
      at: [100, 700],
      massAt: 250,
      sharing: 'moments',
      ratedKg: [40, 40],
      houseFactor: 4,
    })
    expect(loads?.shares[0]?.shareN).toBeCloseTo(force('left'), 6)
    expect(loads?.shares[1]?.shareN).toBeCloseTo(force('right'), 6)
  })
})

describe('out from the wall', () => {
  test('the top fixings are pulled out as the bottom edge is pushed', () => {
    const numbers = fc.record({
      mass: fc.double({ min: 1, max: 200, noNaN: true }),
      e: fc.double({ min: 0.005, max: 0.3, noNaN: true }),
      v: fc.double({ min: 0.1, max: 2, noNaN: true }),
    })
    fc.assert(
      fc.property(numbers, ({ mass, e, v }) => {
        // Moments about the top fixings on the wall's face; the wall pushes at the bottom, the fixings pull and carry.
        const force = balance([
          { of: { pull: -1, push: 1 }, is: 0 },
          { of: { carry: 1 }, is: newtons(mass) },
          { of: { push: v }, is: newtons(mass) * e },
        ])
        expect(Math.abs(pullOut(mass, e * 1000, v * 1000) - force('pull'))).toBeLessThan(1e-5 * newtons(mass))
      }),
      { numRuns: 60 },
    )
  })
})

describe('a picture rail', () => {
  test('two hangers to one hook', () => {
    const legs = fc.record({
      left: fc.double({ min: 0.05, max: 1, noNaN: true }),
      right: fc.double({ min: 0.05, max: 1, noNaN: true }),
      downL: fc.double({ min: 0.1, max: 2, noNaN: true }),
      downR: fc.double({ min: 0.1, max: 2, noNaN: true }),
    })
    fc.assert(
      fc.property(legs, ({ left, right, downL, downR }) => {
        const [hl, hr] = [Math.hypot(left, downL), Math.hypot(right, downR)]
        const force = balance([
          { of: { l: left / hl, r: -right / hr }, is: 0 },
          { of: { l: downL / hl, r: downR / hr }, is: 1 },
        ])
        const [l, r] = twoLegs({ down: downL, aside: left }, { down: downR, aside: right })
        expect(l).toBeCloseTo(force('l'), 5)
        expect(r).toBeCloseTo(force('r'), 5)
      }),
      { numRuns: 60 },
    )
  })

  const leaning = fc.record({
    off: fc.double({ min: 0, max: 40, noNaN: true }),
    hanger: fc.double({ min: 300, max: 2500, noNaN: true }),
    height: fc.double({ min: 300, max: 1500, noNaN: true }),
    drop: fc.double({ min: 0.05, max: 0.3, noNaN: true }),
    depth: fc.double({ min: 10, max: 80, noNaN: true }),
    pad: fc.double({ min: 0, max: 30, noNaN: true }),
  })

  test('the lean is where the mass lies lowest, its bottom edge on the pad', () => {
    fc.assert(
      fc.property(leaning, ({ off, hanger, height, drop, depth, pad }) => {
        const v = height * (1 - drop)
        const [c, u] = [depth / 2, height / 2 - height * drop]
        // Height of the mass for a lean: the ring on its hanger's circle, the bottom edge held on the pad.
        const massAt = (lean: number) => {
          const out = pad + v * Math.sin(lean) - off
          if (Math.abs(out) > hanger) return Number.POSITIVE_INFINITY
          return -Math.sqrt(hanger ** 2 - out ** 2) - u * Math.cos(lean) - c * Math.sin(lean)
        }
        let [a, b] = [-0.8, 0.8]
        const golden = (Math.sqrt(5) - 1) / 2
        for (let i = 0; i < 90; i += 1) {
          const [x, y] = [b - golden * (b - a), a + golden * (b - a)]
          if (massAt(x) < massAt(y)) b = y
          else a = x
        }
        const lean = ((a + b) / 2) * (180 / Math.PI)
        const answer = leanOf({ off, hanger, ringUp: v, massOut: c, massDown: u, pad })
        // Past hanging free the bottom edge leaves its pad; there is no least energy on the pad to compare with.
        const free = (Math.atan2(c, u) * 180) / Math.PI
        if (lean < free - 1e-3) expect(answer).toBeCloseTo(lean, 2)
        else expect(answer).toBeLessThanOrEqual(free + 1e-6)
      }),
      { numRuns: 80 },
    )
  })

  test('the pads that it names make it hang plumb', () => {
    fc.assert(
      fc.property(leaning, ({ off, hanger, height, drop, depth }) => {
        const asked = { off, hanger, ringUp: height * (1 - drop), massOut: depth / 2 }
        const pad = padForPlumb(asked)
        expect(leanOf({ ...asked, massDown: height / 2 - height * drop, pad })).toBeCloseTo(0, 6)
      }),
      { numRuns: 60 },
    )
  })
})
