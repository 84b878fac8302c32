/** Random backs for every method: whole millimetres on a work that can hold them, so that nothing is refused. */
import fc from 'fast-check'
import type { MarksQuestion } from '../../../src/hang/marks-shape.ts'
import type { Fixing } from '../../../src/hang/method.ts'
import type { MethodKey } from '../../../src/hang/method-keys.ts'
import { plainWall, question } from './sample.ts'

type Data = MarksQuestion['back']['data']
type Size = { readonly height: number; readonly width: number }

const mm = (min: number, max: number) =>
  fc.integer({ min: Math.ceil(min), max: Math.max(Math.ceil(min), Math.floor(max)) })
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined })

function pair({ height, width }: Size) {
  const side = fc.record({ drop: mm(60, height / 2), inset: mm(0, width / 3) })
  return fc.record({ left: side, right: side })
}

const plate = ({ height }: Size) => ({
  upper: fc.record({ out: mm(8, 40), drop: mm(20, height / 2) }),
  lower: fc.record({ out: mm(8, 40), up: mm(20, height / 2) }),
})

function base({ height, width }: Size) {
  return {
    base: fc.record({ height: mm(300, 1200), width: mm(width, width + 400), depth: mm(300, 900), mass: mm(5, 80) }),
    massUp: maybe(mm(10, height)),
    ballast: maybe(mm(5, 100)),
    floor: maybe(mm(100, 2000)),
  }
}

/** Data of a method for a work of that size. What is undefined is left out, as a form leaves it. */
export function dataFor(method: MethodKey, size: Size): fc.Arbitrary<Data> {
  return byMethod(method, size).map(data => JSON.parse(JSON.stringify(data)))
}

function byMethod(method: MethodKey, size: Size): fc.Arbitrary<object> {
  const { height, width } = size
  switch (method) {
    case 'd-rings':
      return pair(size)
    case 'wire':
      // The wire rises less than its rings lie below the top, on one hook and so on two.
      return fc
        .record({
          inset: mm(0, width / 5),
          rise: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
          drop: mm(height / 3, height / 2),
        })
        .map(({ inset, rise, drop }) => ({
          left: { drop, inset },
          right: { drop, inset },
          wire: { by: 'length', length: 2 * Math.hypot((width - 2 * inset) / 2, drop * rise) },
        }))
    case 'stretcher-bar':
      return fc.record({
        left: fc.record({ bar: mm(20, 80) }),
        right: fc.record({ bar: mm(20, 80) }),
        ranges: fc.constant([
          { from: Math.floor(width / 3) - 5, to: Math.floor(width / 3) + 20 },
          { from: Math.floor((2 * width) / 3), to: Math.floor((2 * width) / 3) + 30 },
        ]),
        clearance: maybe(mm(12, 40)),
      })
    case 'cleat':
      return fc.record({
        drop: mm(30, height / 3),
        length: mm(width / 2, width),
        depth: mm(6, 20),
        holes: maybe(mm(50, 60)),
      })
    case 'keyhole-plates':
      return fc
        .tuple(pair(size), fc.record({ slot: mm(4, 6), entry: mm(9, 12), thickness: mm(1, 3), recess: mm(6, 12) }))
        .map(([hangers, rest]) => ({ ...hangers, ...rest }))
    case 'strap-plates':
      return fc.record({
        carry: fc.oneof(
          pair(size).map(hangers => ({ by: 'rings', ...hangers })),
          fc.record({
            by: fc.constant('ledge'),
            left: fc.record({ inset: mm(1, width / 3) }),
            right: fc.record({ inset: mm(1, width / 3) }),
          }),
          fc.constant({ by: 'plates' }),
        ),
        left: fc.record({ upper: plate(size).upper, lower: maybe(plate(size).lower) }),
        right: fc.record({ upper: plate(size).upper, lower: maybe(plate(size).lower) }),
        bottom: maybe(
          fc.record({
            left: maybe(fc.record({ out: mm(8, 30), inset: mm(0, width) })),
            middle: maybe(fc.record({ out: mm(8, 30) })),
          }),
        ),
        block: maybe(mm(0, 20)),
      })
    case 'security-hangers':
      return fc
        .tuple(
          pair(size),
          fc.record({
            lock: fc.record({ up: mm(5, height / 4), left: maybe(mm(0, width)) }),
            head: fc.constantFrom('upright', 'level'),
            tool: fc.constantFrom('flat-key', 'hex-key', 'pin-key', 'socket-key'),
            toolFrom: fc.constantFrom('below', 'left', 'right'),
            toolLength: maybe(mm(50, 300)),
            depth: maybe(mm(5, 20)),
          }),
        )
        .map(([hangers, rest]) => ({ ...hangers, ...rest }))
    case 'transit-plates': {
      const side = fc.record({ drop: mm(20, height / 2), out: mm(8, 40), lower: maybe(plate(size).lower) })
      return fc.record({ version: fc.constantFrom('hanging', 'travel'), left: side, right: side })
    }
    case 'picture-rail':
      return fc
        .tuple(
          pair(size),
          fc.constantFrom('upright', 'one-point', 'loop'),
          fc.oneof(
            fc.record({ with: fc.constantFrom('cable', 'rod'), hook: maybe(mm(0, 60)) }),
            fc.record({ with: fc.constant('chain'), pitch: mm(10, 40), adjuster: fc.constantFrom('both', 'longer') }),
          ),
        )
        .map(([hangers, way, by]) => ({ ...hangers, way, by, off: 15 }))
    case 'sheet':
      return fc.record({
        hold: fc.constantFrom('magnets', 'corners'),
        inset: maybe(mm(5, 40)),
        paper: maybe(mm(80, 600)),
        pull: maybe(mm(1, 30)),
        touch: fc.constantFrom('not-asked', 'margins', 'nowhere'),
      })
    case 'shelf':
      return fc.record({
        width: mm(width, width + 400),
        depth: mm(100, 400),
        mass: maybe(mm(1, 10)),
        left: fc.record({ inset: mm(0, width / 3) }),
        right: fc.record({ inset: mm(0, width / 3) }),
        screw: mm(10, 60),
        apart: maybe(mm(40, 200)),
      })
    case 'plinth':
      return fc.record(base(size))
    case 'case':
      return fc.record({
        ...base(size),
        bonnet: fc.record({
          height: mm(height + 1, height + 400),
          width: mm(width + 1, width + 400),
          depth: mm(101, 900),
          mass: maybe(mm(2, 40)),
        }),
      })
  }
}

/** A fixing of the first shape that suits each method; what stands needs none. */
export const fixingFor: Readonly<Record<MethodKey, readonly Fixing[]>> = {
  wire: [{ name: 'hook', kind: 'hook', holeOffset: 14, ratedKg: 20 }],
  'd-rings': [{ name: 'hook', kind: 'hook', holeOffset: 14, ratedKg: 20 }],
  'stretcher-bar': [{ name: 'nail', kind: 'nail', holeOffset: -1.5, ratedKg: 20, shank: 3 }],
  cleat: [{ name: 'cleat', kind: 'cleat', holeOffset: 12, ratedKg: 200 }],
  'keyhole-plates': [{ name: 'screw', kind: 'screw', holeOffset: -2, ratedKg: 20, shank: 4, head: 8 }],
  'strap-plates': [{ name: 'screw', kind: 'screw', holeOffset: -2, ratedKg: 20, shank: 4, length: 50 }],
  'security-hangers': [{ name: 'wall plate', kind: 'plate', holeOffset: 8, ratedKg: 40 }],
  'transit-plates': [{ name: 'screw', kind: 'screw', holeOffset: 0, ratedKg: 20 }],
  'picture-rail': [{ name: 'rail hook', kind: 'rail-hook', holeOffset: 0, ratedKg: 20 }],
  sheet: [{ name: 'steel point', kind: 'steel-point', holeOffset: 0, ratedKg: 5 }],
  shelf: [{ name: 'bracket', kind: 'bracket', holeOffset: 0, ratedKg: 80 }],
  plinth: [],
  case: [],
}

export const railWall = {
  ...plainWall,
  rail: [
    [0, 3300],
    [9140, 3290],
  ],
} as const

/** A random work with a random back for that method, seen from either side. */
export function hung(method: MethodKey): fc.Arbitrary<MarksQuestion> {
  return fc
    .record({
      height: mm(200, 1600),
      width: mm(200, 1600),
      mass: mm(1, 60),
      depth: mm(15, 100),
      x: fc.double({ min: 2000, max: 7000, noNaN: true }),
      y: fc.double({ min: 1200, max: 1800, noNaN: true }),
      seenFrom: fc.constantFrom('front', 'back'),
    })
    .chain(({ height, width, mass, depth, x, y, seenFrom }) =>
      dataFor(method, { height, width }).map(data =>
        question({
          work: { height, width, mass, depth },
          back: { method, seenFrom: seenFrom === 'front' ? 'front' : 'back', data },
          centre: { x, y },
          wall: railWall,
          fixings: fixingFor[method],
        }),
      ),
    )
}
