/** Prices of other places and what a wall loses, each by a second route: whole hangs, judged anew. */
import { describe, expect, test } from 'vitest'
import { allowed } from '../../../src/sequence/allowed.ts'
import { hangInOrder } from '../../../src/sequence/in-order.ts'
import { otherPlaces, pointsBetween } from '../../../src/sequence/next-best.ts'
import { dropsOn, fitsOn, lostOn, onBay, withoutWork } from '../../../src/sequence/on-wall.ts'
import { centresIn, type Hang, type Problem, terms } from '../../../src/sequence/problem.ts'
import { judge, scaleOf } from '../../../src/sequence/terms.ts'
import { everyHang, randomProblem } from './random-problem.ts'

const seeds = Array.from({ length: 60 }, (_, seed) => seed + 1)

/** Some hang that is allowed and leaves nothing out. */
function someHang(problem: Problem, seed: number): Hang | undefined {
  const all = [...everyHang(problem)]
  return all[(seed * 7919) % Math.max(1, all.length)]
}

/** Where everything is but one work, as text. */
const without = (hang: Hang, gone: readonly number[]) =>
  JSON.stringify(hang.map(works => works.filter(work => !gone.includes(work))))

/** Whether one hang comes of another by moving the work, or by its changing places with one other. */
function isOneStep(from: Hang, to: Hang, work: number): boolean {
  if (JSON.stringify(from) === JSON.stringify(to)) return false
  if (without(from, [work]) === without(to, [work])) return true
  const swapped = (other: number) =>
    from.map(row => row.map(one => (one === work ? other : one === other ? work : one)))
  return from.flat().some(other => other !== work && JSON.stringify(swapped(other)) === JSON.stringify(to))
}

test('what walls lose adds up to what today lacks where its works stand', () => {
  let compared = 0
  for (const seed of seeds) {
    const problem = randomProblem(seed, { works: 5, bays: 3, ruled: false })
    const hang = someHang(problem, seed)
    if (hang === undefined || hang.flat().length < problem.works.length) continue
    const scale = scaleOf(problem)
    const centres = hang.map((row, bay) => centresIn(problem, bay, row).map(x => x + 60))
    const faces = [...new Set(problem.bays.map(({ face }) => face))]
    const balance = faces.reduce((sum, face) => sum + lostOn(problem, hang, face, scale, centres).balance, 0)
    const full = { order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 }
    const { values } = judge(problem, hang, scale, centres)
    expect(balance).toBeCloseTo(pointsBetween(problem, full, values).balance, 9)
    for (const [bay, row] of hang.entries()) {
      const even = onBay(problem, hang, bay, scale)
      if (row.length > 0 && even.works.some(work => (problem.works[work]?.weight ?? 0) > 0))
        expect(onBay(problem, hang, bay, scale, centres).off).toBeCloseTo(even.off + 60, 6)
    }
    compared += 1
  }
  expect(compared).toBeGreaterThan(30)
})

describe('the next best place', () => {
  test('is the best of all single moves and exchanges, found by looking at every hang there is', () => {
    let compared = 0
    for (const seed of seeds) {
      const problem = randomProblem(seed, { works: 5, bays: 3, ruled: seed % 2 === 0 })
      const hang = someHang(problem, seed)
      if (hang === undefined) continue
      const work = seed % 5
      const here = hang.findIndex(works => works.includes(work))
      const steps = [...everyHang(problem)].filter(other => isOneStep(hang, other, work))
      const best = (list: readonly Hang[]) => Math.max(...list.map(one => judge(problem, one).quality))
      const faceOf = (bay: number) => problem.bays[bay]?.face
      const away = steps.filter(one => faceOf(one.findIndex(works => works.includes(work))) !== faceOf(here))
      const found = otherPlaces(problem, hang, work)
      if (steps.length === 0) expect(found?.next).toBeNull()
      else expect(judge(problem, found?.next?.hang ?? []).quality, `seed ${seed}`).toBeCloseTo(best(steps), 10)
      if (away.length === 0) expect(found?.elsewhere).toBeNull()
      else expect(judge(problem, found?.elsewhere?.hang ?? []).quality, `seed ${seed}`).toBeCloseTo(best(away), 10)
      compared += 1
    }
    expect(compared).toBeGreaterThan(40)
  })

  test('its price is the difference of both hangs judged whole, and the terms’ shares add up to it', () => {
    let compared = 0
    for (const seed of seeds) {
      const problem = randomProblem(seed, { works: 8, bays: 4, ruled: false })
      const { hang } = hangInOrder(problem, [...problem.works.keys()])
      const work = hang.flat()[seed % Math.max(1, hang.flat().length)]
      if (work === undefined) continue
      for (const place of [otherPlaces(problem, hang, work)?.next, otherPlaces(problem, hang, work)?.elsewhere]) {
        if (place === undefined || place === null) continue
        const price = 100 * (judge(problem, hang).quality - judge(problem, place.hang).quality)
        expect(place.price).toBeCloseTo(price, 10)
        expect(terms.reduce((sum, term) => sum + place.lost[term], 0)).toBeCloseTo(price, 10)
        const row = place.hang[place.bay] ?? []
        expect(place.x).toBe(centresIn(problem, place.bay, row)[row.indexOf(work)])
        expect(allowed(problem, place.hang)).toBe(true)
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(60)
  })

  test('where works stand in uneven gaps, the price is against that, and only bays that change are spread anew', () => {
    let compared = 0
    for (const seed of seeds) {
      const problem = randomProblem(seed, { works: 5, bays: 3, ruled: false })
      const hang = someHang(problem, seed)
      if (hang === undefined) continue
      const work = seed % 5
      const scale = scaleOf(problem)
      // Each row stands some way to the left of its even places.
      const centres = hang.map((row, bay) => centresIn(problem, bay, row).map(x => x - 40 * (bay + 1)))
      const standing = (other: Hang) =>
        other.map((row, bay) =>
          JSON.stringify(row) === JSON.stringify(hang[bay]) ? (centres[bay] ?? []) : centresIn(problem, bay, row),
        )
      const worth = (other: Hang) => judge(problem, other, scale, standing(other)).quality
      const steps = [...everyHang(problem)].filter(other => isOneStep(hang, other, work))
      if (steps.length === 0) continue
      const found = otherPlaces(problem, hang, work, scale, centres)?.next
      const now = judge(problem, hang, scale, centres).quality
      expect(found?.price, `seed ${seed}`).toBeCloseTo(100 * (now - Math.max(...steps.map(worth))), 8)
      compared += 1
    }
    expect(compared).toBeGreaterThan(40)
  })

  test('a work that hangs nowhere has none', () => {
    const problem = randomProblem(1, { works: 3, bays: 2, ruled: false })
    expect(otherPlaces(problem, [[0], [1]], 2)).toBeNull()
  })
})

describe('what walls lose', () => {
  test('adds up, over all walls, to what the hang lacks to be perfect', () => {
    for (const seed of seeds) {
      const problem = randomProblem(seed, { works: 5, bays: 3, ruled: false })
      const hang = someHang(problem, seed)
      if (hang === undefined) continue
      const { values } = judge(problem, hang)
      const full = { order: 1, balance: 1, evenness: 1, light: 1, sight: 1, rhythm: 1 }
      const lacks = pointsBetween(problem, full, values)
      const faces = [...new Set(problem.bays.map(bay => bay.face))]
      for (const term of terms) {
        const sum = faces.reduce((all, face) => all + lostOn(problem, hang, face)[term], 0)
        expect(sum, `${term} of seed ${seed}`).toBeCloseTo(lacks[term], 9)
      }
    }
  })

  test('balance and works on axes of a bay are what its centres say', () => {
    const problem = randomProblem(5, { works: 4, bays: 2, ruled: false })
    const axed = { ...problem, bays: problem.bays.map(bay => ({ ...bay, axes: [(bay.from + bay.to) / 2] })) }
    const hang = [[0, 1, 2], [3]]
    const told = onBay(axed, hang, 0)
    const centres = centresIn(axed, 0, [0, 1, 2])
    const weights = [0, 1, 2].map(work => axed.works[work]?.weight ?? 0)
    const all = weights.reduce((sum, weight) => sum + weight, 0)
    const middle = (axed.bays[0]?.to ?? 0) / 2
    const centre = weights.reduce((sum, weight, index) => sum + weight * (centres[index] ?? 0), 0) / all
    expect(told.off).toBeCloseTo(centre - middle, 9)
    const on = [0, 1, 2].find(work => Math.abs((centres[work] ?? 0) - middle) <= (axed.works[work]?.width ?? 0) / 2)
    expect(told.axes).toEqual([{ x: middle, work: on ?? null }])
  })
})

describe('what would make it better', () => {
  test('leaving a work out is worth what the smaller show is judged at', () => {
    for (const seed of seeds.slice(0, 20)) {
      const problem = randomProblem(seed, { works: 5, bays: 3, ruled: false })
      const hang = someHang(problem, seed)
      if (hang === undefined) continue
      for (const face of new Set(problem.bays.map(bay => bay.face))) {
        for (const { work, gain } of dropsOn(problem, hang, face)) {
          // A second route: the same show built without the work from the start.
          const works = problem.works.filter((_, index) => index !== work)
          const ids = hang.map(row => row.flatMap(index => (index === work ? [] : [problem.works[index]?.id ?? ''])))
          const places = ids.map(row => row.map(id => works.findIndex(one => one.id === id)))
          const less = { ...problem, works, rules: withoutWork(problem, hang, work).problem.rules }
          const whole = 100 * (judge(less, places, scaleOf(less)).quality - judge(problem, hang).quality)
          expect(gain).toBeCloseTo(whole, 10)
        }
      }
    }
  })

  test('a longer wall takes what it could not take before, and never what may not hang there', () => {
    const problem = randomProblem(2, { works: 4, bays: 1, ruled: false })
    const wide = problem.works.map(work => ({ ...work, width: 600, served: [1] }))
    // Margins of 150 and gaps of 75: two of 600 want 1,575, three 2,250.
    const long = (to: number, works: Problem['works'] = wide) => ({
      ...problem,
      works,
      bays: problem.bays.map(bay => ({ ...bay, to })),
    })
    expect(fitsOn(long(2249), [[0, 1]], 'f0', 2)).toBe(false)
    expect(fitsOn(long(2250), [[0, 1]], 'f0', 2)).toBe(true)
    expect(fitsOn(long(2250), [[0, 1]], 'none', 2)).toBe(false)
    const barred = wide.map((work, index) => (index === 2 ? { ...work, served: [null] } : work))
    expect(fitsOn(long(2250, barred), [[0, 1]], 'f0', 2)).toBe(false)
  })
})
