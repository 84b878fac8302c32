/**
 * The composite lifting index against its manual: Waters, Putz-Anderson and Garg, DHHS (NIOSH) 94-110, rev. 9/2021,
 * pp. 26 to 28; and against what must hold of any sum of that form.
 */
import { describe, expect, test } from 'vitest'
import { compositeIndex, type JobLift } from '../../../src/crew/composite.ts'
import { frequencyMultiplier } from '../../../src/crew/niosh.ts'
import { randomFrom } from '../../unit/database/random-edits.ts'

const lift = (load: number, limit: number, perMinute: number, verticalAtOrigin = 30): JobLift => ({
  load,
  limit,
  perMinute,
  verticalAtOrigin,
})

describe('the three tasks of section 2.4.5, p. 28 (loads, limits and frequencies from memory; FM is table 5)', () => {
  const three = [lift(10, 15, 4), lift(30, 20, 1), lift(20, 20, 2)]
  const { lifts, index } = compositeIndex(three, 'short', 'us')

  test('are ranked by their own index: 1.60, 1.10, .79', () => {
    expect(lifts.map(each => each.at)).toEqual([1, 2, 0])
    expect(lifts.map(each => each.ownIndex.toFixed(2))).toEqual(['1.60', '1.10', '0.79'])
    expect(lifts.map(each => each.strengthIndex.toFixed(2))).toEqual(['1.50', '1.00', '0.67'])
  })

  test('1.60 + 1.0 (1/.88 − 1/.94) + .67 (1/.70 − 1/.88) = 1.87, printed as 1.9', () => {
    expect(lifts.map(each => each.adds.toFixed(2))).toEqual(['1.60', '0.07', '0.19'])
    expect(index).toBeCloseTo(30 / 20 / 0.94 + (1 / 0.88 - 1 / 0.94) + (10 / 15) * (1 / 0.7 - 1 / 0.88), 12)
    expect(index?.toFixed(1)).toBe('1.9')
  })
})

test('one lift is its own index; none is none', () => {
  expect(compositeIndex([lift(26, 40, 3)], 'short', 'us').index).toBeCloseTo(26 / (40 * 0.88), 12)
  expect(compositeIndex([], 'long', 'metric')).toEqual({ lifts: [], index: null })
})

test('of two alike the more frequent comes first (p. 57)', () => {
  // FM .94 at 1 and .91 at 2 lifts a minute: both have an index of 1.
  const { lifts } = compositeIndex([lift(18.8, 20, 1), lift(18.2, 20, 2)], 'short', 'us')
  expect(lifts.map(each => each.at)).toEqual([1, 0])
})

test('oftener together than anybody lifts there is no index', () => {
  expect(compositeIndex([lift(5, 50, 8), lift(5, 50, 8)], 'short', 'us').index).toBe(null)
})

test('lifts that begin low take the stricter column for all', () => {
  const high = compositeIndex([lift(20, 40, 5), lift(10, 40, 5)], 'long', 'us')
  const low = compositeIndex([lift(20, 40, 5), lift(10, 40, 5, 20)], 'long', 'us')
  // Ten a minute, 2 to 8 h: .13 from 30 in up, no lift below (table 5).
  expect(high.index).toBeCloseTo(20 / 40 / 0.35 + (10 / 40) * (1 / 0.13 - 1 / 0.35), 12)
  expect(low.index).toBe(null)
})

test('500 random jobs: a lift parted into equal ones is itself, order counts nothing, each lift adds and none takes away', () => {
  const random = randomFrom(28)
  const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
  for (let round = 0; round < 500; round++) {
    const duration = (['short', 'moderate', 'long'] as const)[whole(0, 2)] ?? 'short'
    const one = lift(whole(1, 60), whole(10, 51), whole(1, 8), whole(5, 60))
    const parts = whole(1, 5)
    const parted = Array.from({ length: parts }, () => ({ ...one, perMinute: one.perMinute / parts }))
    const fm = frequencyMultiplier('us', one.perMinute, duration, one.verticalAtOrigin)
    const sum = compositeIndex(parted, duration, 'us').index
    if (fm === 0) expect(sum).toBe(null)
    else expect(sum).toBeCloseTo(one.load / (one.limit * fm), 9)
    const job = Array.from({ length: whole(1, 6) }, () =>
      lift(whole(1, 60), whole(10, 51), whole(1, 4) / 4, whole(5, 60)),
    )
    const made = compositeIndex(job, duration, 'us')
    const turned = compositeIndex([...job].reverse(), duration, 'us')
    if (made.index === null || turned.index === null) expect(made.index).toBe(turned.index)
    else {
      expect(made.index).toBeCloseTo(turned.index, 9)
      expect(made.index).toBeGreaterThanOrEqual(Math.max(...made.lifts.map(each => each.ownIndex)) - 1e-9)
      for (const each of made.lifts) expect(each.adds).toBeGreaterThanOrEqual(-1e-12)
    }
  }
})
