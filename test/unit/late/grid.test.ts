/**
 * A second route to the cheapest way out: every place on a grid for every work of a small row, priced by counting again
 * from scratch. Nothing on the grid may be cheaper than what is offered first. The count below shares no code with the
 * one under test. Walls are invented.
 */
import { describe, expect, test } from 'vitest'
import { lateOffers } from '../../../src/late/late.ts'
import type { DrilledHole, LateQuestion, LateWork } from '../../../src/late/late-shape.ts'

const STEP = 13
const REACH = 6

const prices = {
  hungMoved: 1000,
  newHole: 30,
  deadHole: 20,
  moved: 10,
  label: 5,
  gapSpreadPerMm: 0.2,
  endsPerMm: 0.1,
  offLinePerMm: 0.5,
}

function random(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 1664525 + 1013904223) % 4294967296
    return state / 4294967296
  }
}

function wallOf(seed: number): LateQuestion {
  const next = random(seed)
  const works: LateWork[] = []
  const drilled: DrilledHole[] = []
  let left = 300
  for (let i = 0; i < 4; i += 1) {
    const width = 300 + STEP * Math.floor(next() * 20)
    const x = left + width / 2
    const standing = next() < 0.5 ? 'drilled' : 'free'
    const holes = [
      { slot: 'left', dx: 52 - width / 2, dy: 200 },
      { slot: 'right', dx: width / 2 - 52, dy: 200 },
    ]
    works.push({
      id: `w${i}`,
      name: `W${i}`,
      width,
      height: 600,
      x,
      stands: { rule: 'centre', y: 1480 },
      standing,
      held: false,
      holes,
      labelled: i % 2 === 0,
    })
    if (standing === 'drilled')
      drilled.push(...holes.map(hole => ({ id: `${i}${hole.slot}`, x: x + hole.dx, y: 1680 })))
    left += width + 130 + STEP * Math.floor(next() * 5)
  }
  const id = `w${Math.floor(next() * 4)}`
  const width = (works.find(work => work.id === id)?.width ?? 0) + 4 * STEP
  return {
    wall: { length: left + 170, height: 3000, floor: [], ceiling: [], skirting: null, openings: [], keepClears: [] },
    works,
    drilled,
    change: {
      kind: 'different',
      id,
      width,
      height: 600,
      holes: [
        { slot: 'left', dx: 52 - width / 2, dy: 200 },
        { slot: 'right', dx: width / 2 - 52, dy: 200 },
      ],
    },
    leastGap: 75,
    leastMargin: 150,
    prices,
    sameHole: 1,
    say: mm => `${mm} mm`,
    stops: () => '',
  }
}

/** Counts again, plainly: positions in, price out; null where it does not fit. */
function priced(question: LateQuestion, xs: readonly number[]): number | null {
  const { works, drilled, change, wall, leastGap, leastMargin } = question
  if (change.kind !== 'different') throw new Error('only a different frame is counted here')
  const now = works.map((work, i) => {
    const { width, holes } = work.id === change.id ? change : work
    return { ...work, width, holes, at: xs[i] ?? 0 }
  })
  const edges = now.map(work => [work.at - work.width / 2, work.at + work.width / 2] as const)
  const gaps = edges.slice(1).map(([left], i) => left - (edges[i]?.[1] ?? 0))
  const [first, last] = [edges[0]?.[0] ?? 0, edges.at(-1)?.[1] ?? 0]
  if (gaps.some(gap => gap < leastGap - 1e-6)) return null
  if (first < leastMargin - 1e-6 || last > wall.length - leastMargin + 1e-6) return null
  const needs = (list: readonly { readonly at: number; readonly holes: readonly { readonly dx: number }[] }[]) =>
    list.flatMap(work => work.holes.map(hole => work.at + hole.dx))
  const count = (wanted: readonly number[]) => {
    const free = drilled.map(hole => hole.x)
    let missing = 0
    for (const x of wanted) {
      const k = free.findIndex(hole => Math.abs(hole - x) <= 1)
      if (k === -1) missing += 1
      else free.splice(k, 1)
    }
    return { missing, dead: free.length }
  }
  const old = count(needs(works.map(work => ({ at: work.x, holes: work.holes }))))
  const is = count(needs(now))
  const moved = works.filter((work, i) => Math.abs(work.x - (xs[i] ?? 0)) > 0.05)
  const firstWas = (works[0]?.x ?? 0) - (works[0]?.width ?? 0) / 2
  const lastWas = (works[3]?.x ?? 0) + (works[3]?.width ?? 0) / 2
  return (
    30 * (is.missing - old.missing) +
    20 * (is.dead - old.dead) +
    10 * moved.length +
    5 * moved.filter(work => work.labelled).length +
    0.2 * (Math.max(...gaps) - Math.min(...gaps)) +
    0.1 * (Math.abs(first - firstWas) + Math.abs(last - lastWas))
  )
}

function* places(question: LateQuestion): Generator<readonly number[]> {
  const steps = Array.from({ length: 2 * REACH + 1 }, (_, i) => (i - REACH) * STEP)
  const [a, b, c, d] = question.works.map(work => work.x)
  for (const i of steps)
    for (const j of steps)
      for (const k of steps) for (const l of steps) yield [(a ?? 0) + i, (b ?? 0) + j, (c ?? 0) + k, (d ?? 0) + l]
}

describe('the cheapest offer', () => {
  test('is as cheap as anything on a grid of places, and its price is the one counted again', () => {
    let compared = 0
    for (let seed = 1; seed <= 24; seed += 1) {
      const question = wallOf(seed)
      const [best] = lateOffers(question).offers
      let cheapest = Number.POSITIVE_INFINITY
      for (const xs of places(question)) {
        const price = priced(question, xs)
        if (price !== null && price < cheapest) cheapest = price
      }
      if (best === undefined) {
        expect(cheapest).toBe(Number.POSITIVE_INFINITY)
        continue
      }
      compared += 1
      const xs = question.works.map(work => best.moves.find(move => move.id === work.id)?.x ?? work.x)
      expect(priced(question, xs)).toBeCloseTo(best.price, 6)
      expect(best.price).toBeLessThanOrEqual(cheapest + 1e-6)
    }
    expect(compared).toBeGreaterThan(15)
  })
})
