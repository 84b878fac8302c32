/** How strokes of a pen are kept, and when a drawn signature is one: by hand, with a rule's sums. */
import { describe, expect, test } from 'vitest'
import { drawnTo, isDot, isSlip, lifted } from '../../../../src/record/condition/pen.ts'

describe('a slip of the pen', () => {
  test('is a dot, nothing at all, and strokes that are short together', () => {
    expect(isSlip([])).toBe(true)
    expect(isSlip([[500, 160]])).toBe(true)
    // 3, 4 and 5 twice: ten in all.
    expect(
      isSlip([
        [0, 0, 3, 4],
        [10, 10, 13, 14],
      ]),
    ).toBe(true)
    // The way from one stroke to the next is not drawn.
    expect(
      isSlip([
        [0, 0, 3, 4],
        [900, 0, 903, 4],
      ]),
    ).toBe(true)
  })

  test('is no line of 50, in one stroke or in several', () => {
    expect(isSlip([[0, 0, 30, 40]])).toBe(false)
    expect(isSlip([[0, 0, 49, 0]])).toBe(true)
    expect(
      isSlip([
        [0, 0, 15, 20],
        [40, 0, 55, 20],
      ]),
    ).toBe(false)
  })
})

describe('a stroke', () => {
  test('goes on by points that lie apart', () => {
    expect(drawnTo([], 10, 20)).toEqual([10, 20])
    expect(drawnTo([10, 20], 11, 21)).toEqual([10, 20])
    expect(drawnTo([10, 20], 12, 20)).toEqual([10, 20, 12, 20])
  })

  test('is kept from its beginning to its end however long it is, within what the contract takes', () => {
    let stroke: readonly number[] = []
    for (let turn = 0; turn < 5000; turn += 1) stroke = drawnTo(stroke, turn % 2 === 0 ? 0 : 900, turn % 320)
    expect(stroke.length).toBeLessThanOrEqual(2000)
    expect(stroke.length).toBeGreaterThan(900)
    expect(stroke.slice(0, 2)).toEqual([0, 0])
    // The last turn is 4999: odd, and 4999 − 15 · 320 = 199.
    expect(stroke.slice(-2)).toEqual([900, 199])
  })

  test('that never moved is a dot of two points', () => {
    expect(lifted([500, 160])).toEqual([500, 160, 500, 160])
    expect(lifted([500, 160, 510, 160])).toEqual([500, 160, 510, 160])
    expect([isDot([500, 160, 500, 160]), isDot([500, 160, 510, 160])]).toEqual([true, false])
  })
})
