/** When a drawn signature is one: by hand, with a rule's sums. */
import { describe, expect, test } from 'vitest'
import { isSlip } from '../../../../src/record/condition/pen.ts'

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
