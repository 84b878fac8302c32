/** What a back says by itself, before it has a wall: bearings from the work's own edges, and refusals at the measure typed. */
import { describe, expect, test } from 'vitest'
import { Refusal } from '../../../src/contract/refusal.ts'
import { type BackQuestion, backAlone } from '../../../src/hang/back-alone.ts'

const work = { height: 640, width: 900, mass: 6 }

function ask(question: Pick<BackQuestion, 'method' | 'data'> & Partial<BackQuestion>) {
  return backAlone({ seenFrom: 'front', work, ...question })
}

/** From the left edge and below the top edge, as a person reads it. */
function places(question: Parameters<typeof ask>[0]) {
  return ask(question).bearings.map(({ fromLeft, drop }) => [fromLeft, drop])
}

function refused(question: Parameters<typeof ask>[0]): string | undefined {
  try {
    ask(question)
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown.field
    throw thrown
  }
  throw new Error('it was answered')
}

describe('D-rings', () => {
  const data = { left: { drop: 90, inset: 100 }, right: { drop: 88.9, inset: 70 } }

  test('bear where they are, and left and right change places from the back', () => {
    expect(places({ method: 'd-rings', data })).toEqual([
      [100, 90],
      [900 - 70, 88.9],
    ])
    expect(places({ method: 'd-rings', data, seenFrom: 'back' })).toEqual([
      [70, 88.9],
      [900 - 100, 90],
    ])
  })

  test('23 1/2 in apart bear 11 3/4 in each side of the middle (common practice, no source)', () => {
    const inset = (900 - 23.5 * 25.4) / 2
    const ring = { drop: 90, inset }
    const bearings = ask({ method: 'd-rings', data: { left: ring, right: ring } }).bearings
    expect(bearings.map(({ fromLeft }) => Math.abs(fromLeft - 450) / 25.4)).toEqual([
      expect.closeTo(11.75, 9),
      expect.closeTo(11.75, 9),
    ])
  })

  test('a drop longer than the work is refused at the ring as typed, from either side', () => {
    const wrong = { left: { drop: 700, inset: 100 }, right: { drop: 90, inset: 70 } }
    for (const seenFrom of ['front', 'back'] as const) {
      expect([seenFrom, refused({ method: 'd-rings', data: wrong, seenFrom })]).toEqual([
        seenFrom,
        'back.data.left.drop',
      ])
    }
  })
})

describe('a stretcher bar on nails', () => {
  const bar = (ranges: readonly { from: number; to: number }[]) => ({ left: { bar: 45 }, right: { bar: 45 }, ranges })

  test('nails stand a third of the way in, and clear of a brace (common practice, no source)', () => {
    expect(places({ method: 'stretcher-bar', data: bar([]) })).toEqual([
      [300, 45],
      [600, 45],
    ])
    // A brace from 280 to 330 and 10 mm clear of it: the nearest free places are 270 and 340; 270 is nearer to 300.
    const [left, right] = places({ method: 'stretcher-bar', data: bar([{ from: 280, to: 330 }]) })
    expect(left?.[0]).toBeCloseTo(270, 9)
    expect(right?.[0]).toBeCloseTo(600, 9)
    // Counted from the left of the back it stands on the right of the front: 570 to 620, so 630 or 560 is free.
    const [, turned] = places({ method: 'stretcher-bar', data: bar([{ from: 280, to: 330 }]), seenFrom: 'back' })
    expect(turned?.[0]).toBeCloseTo(630, 9)
  })

  test('a brace that ends before it begins is refused at its own line, from either side', () => {
    const data = bar([
      { from: 100, to: 140 },
      { from: 400, to: 380 },
      { from: 700, to: 740 },
    ])
    for (const seenFrom of ['front', 'back'] as const) {
      const field = refused({ method: 'stretcher-bar', data, seenFrom })
      expect([seenFrom, field]).toEqual([seenFrom, 'back.data.ranges.1.to'])
    }
    const first = bar([
      { from: 140, to: 100 },
      { from: 700, to: 740 },
    ])
    expect(refused({ method: 'stretcher-bar', data: first, seenFrom: 'back' })).toBe('back.data.ranges.0.to')
  })

  test('a brace that ends past the work, which is 900 wide, is told in words, not as its form says it', () => {
    const data = bar([{ from: 880, to: 950 }])
    expect(() => ask({ method: 'stretcher-bar', data, seenFrom: 'back' })).toThrow(
      'Braces, cross-bars and keys: it can’t be less than 0. Measure it again. From where to where along the top bar',
    )
  })
})

test('a wire of 540 between rings 500 apart and 180 down hangs 100 below the top on hooks 200 apart', () => {
  // rise(200) = sqrt(170² − 150²) = 80, drop = 180 − 80 (the design's formula for a wire on two hooks).
  const data = { left: { drop: 180 }, right: { drop: 180 }, spacing: 500, wire: { by: 'length', length: 540 } }
  const answer = ask({ method: 'wire', data, hooksApart: 200 })
  expect(answer.bearings.map(({ fromLeft, drop }) => [fromLeft, drop])).toEqual([
    [350, expect.closeTo(100, 9)],
    [550, expect.closeTo(100, 9)],
  ])
  expect(answer.wire?.length).toBeCloseTo(540, 9)
})

test('half-typed measures are refused by name, and a method nobody has by its name', () => {
  expect(refused({ method: 'd-rings', data: { left: { drop: 90, inset: 100 } } })).toMatch(/^back\.data\.right/)
  expect(() => ask({ method: 'string', data: {} })).toThrow(Refusal)
})
