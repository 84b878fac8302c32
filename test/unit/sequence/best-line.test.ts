/** The best line of a wall against every millimetre, and by hand. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bestLine, type LineQuestion, servedAt } from '../../../src/sequence/best-line.ts'
import { leastServed, type ViewerKind } from '../../../src/sequence/sight.ts'

const sight = { line: -10, inner: 15, outer: 30 }
const kinds: readonly ViewerKind[] = ['standing', 'seated', 'wheelchair', 'child']

describe('the line that serves the least served best', () => {
  test('no whole millimetre is better, on 150 walls', () => {
    const question = fc.record({
      heights: fc.array(fc.integer({ min: 150, max: 1800 }), { minLength: 1, maxLength: 5 }),
      kinds: fc.subarray([...kinds], { minLength: 1 }),
      distance: fc.integer({ min: 800, max: 4000 }),
      sight: fc.record({
        line: fc.integer({ min: -20, max: 5 }),
        inner: fc.integer({ min: 3, max: 20 }),
        outer: fc.integer({ min: 15, max: 40 }),
      }),
      bottom: fc.integer({ min: 0, max: 200 }),
      top: fc.integer({ min: 2200, max: 4000 }),
    })
    fc.assert(
      fc.property(question, fc.integer({ min: 900, max: 2000 }), (asked: LineQuestion, wished) => {
        const found = bestLine(asked, wished)
        const tallest = Math.max(...asked.heights)
        let most = Number.NEGATIVE_INFINITY
        for (let y = Math.ceil(asked.bottom + tallest / 2); y <= Math.floor(asked.top - tallest / 2); y += 1)
          most = Math.max(most, servedAt(y, asked).least)
        if (most === Number.NEGATIVE_INFINITY) expect(found).toBeNull()
        else expect(found?.least).toBeGreaterThan(most - 1e-8)
      }),
      { numRuns: 150 },
    )
  })

  // One group with one distribution: wheelchair eyes about 1,192.5. A small work is served where its middle lies within
  // an inner cone of 3 degrees about a line of sight 10 below level; the best line has their mean in the middle of that:
  // 1,192.5 - 2,000 (tan 7° + tan 13°) / 2 = 838.8.
  test('one group: its mean eye lies in the middle of what is served', () => {
    const narrow = { ...sight, inner: 3 }
    const one: LineQuestion = {
      heights: [100],
      kinds: ['wheelchair'],
      distance: 2000,
      sight: narrow,
      bottom: 0,
      top: 3500,
    }
    expect(bestLine(one, 1500)?.y).toBe(839)
  })

  test('where all heights serve alike, the wished one stays; it keeps clear of skirting and ceiling', () => {
    const none: LineQuestion = { heights: [400], kinds: [], distance: 2000, sight, bottom: 100, top: 2500 }
    expect(bestLine(none, 1480)).toMatchObject({ y: 1480, least: 1 })
    expect(bestLine(none, 2600)?.y).toBe(2300)
    expect(bestLine(none, 10)?.y).toBe(300)
    expect(bestLine({ ...none, heights: [2500] }, 1480)).toBeNull()
    expect(bestLine({ ...none, heights: [] }, 1480)).toBeNull()
  })

  test('a single work is served as the planner counts it', () => {
    const asked: LineQuestion = { heights: [800], kinds, distance: 2500, sight, bottom: 0, top: 3500 }
    expect(servedAt(1450, asked).least).toBeCloseTo(leastServed(kinds, { centre: 1450, height: 800 }, 2500, sight), 12)
  })
})
