/** Sizes against each other, against the image and against the weight. Bounds: common practice, no source. */
import { describe, expect, test } from 'vitest'
import { checkSizes, checkStatement } from '../../../src/measure/checks.ts'
import { readDimensions } from '../../../src/measure/dimensions.ts'

const size = (height: number, width: number) => ({ height, width })
const codes = (work: Parameters<typeof checkSizes>[0]) => checkSizes(work).map(finding => finding.code)

describe('frame, work and sight', () => {
  test('a frame of 10 to 200 mm all round is fine, at both ends', () => {
    expect(codes({ framed: size(520, 720), unframed: size(500, 700) })).toEqual([])
    expect(codes({ framed: size(900, 1100), unframed: size(500, 700) })).toEqual([])
    expect(codes({ framed: size(519, 720), unframed: size(500, 700) })).toEqual(['frame-narrow'])
    expect(codes({ framed: size(900, 1102), unframed: size(500, 700) })).toEqual(['frame-wide'])
  })

  test('a frame that is smaller than its work, and a hint where one is turned', () => {
    const [finding] = checkSizes({ framed: size(600, 800), unframed: size(700, 500) })
    expect(finding).toMatchObject({ code: 'framed-smaller', figures: { framed: 600, unframed: 700 } })
    expect(finding?.text).toContain('may be swapped')
    expect(codes({ framed: size(499.5, 720), unframed: size(500, 700) })).toEqual(['frame-narrow'])
  })

  test('the sight size is at most that of the work; a floated sheet is a question', () => {
    expect(codes({ unframed: size(500, 700), sight: size(490, 690) })).toEqual([])
    expect(codes({ unframed: size(500, 700), sight: size(510, 690) })).toEqual(['sight-larger'])
    expect(codes({ framed: size(600, 800), sight: size(610, 690) })).toEqual(['sight-larger-than-frame'])
    const [finding] = checkSizes({ sheet: size(300, 400), sight: size(340, 390) })
    expect(finding?.code).toBe('sheet-smaller-than-sight')
    expect(finding?.text).toMatch(/\?$/)
  })
})

describe('image', () => {
  test('2 % is allowed, more is not', () => {
    expect(codes({ unframed: size(500, 700), imageAspect: 1.4 * 1.019 })).toEqual([])
    expect(codes({ unframed: size(500, 700), imageAspect: 1.4 * 1.025 })).toEqual(['aspect'])
    expect(checkSizes({ unframed: size(700, 500), imageAspect: 1.4 })[0]?.text).toContain('may be swapped')
  })
})

describe('weight', () => {
  test('a work of 1 m² weighs between 0.7 kg and 29.5 kg', () => {
    // Least 0.7 kg/m²; most 7.5 + 6 kg/m² and 4 kg/m on 4 m of frame.
    expect(codes({ framed: size(1000, 1000), massKg: 0.7 })).toEqual([])
    expect(codes({ framed: size(1000, 1000), massKg: 0.6 })).toEqual(['mass-light'])
    expect(codes({ framed: size(1000, 1000), massKg: 29.5 })).toEqual([])
    expect(checkSizes({ framed: size(1000, 1000), massKg: 40 })).toMatchObject([
      { code: 'mass-heavy', figures: { mass: 40, most: 29.5 } },
    ])
    expect(codes({ unframed: { height: 1000, width: 1000, depth: 400 }, massKg: 400 })).toEqual([])
  })
})

test('a statement that was read', () => {
  const read = readDimensions('framed 40 x 60 cm; unframed 50 x 70 cm; 140 kg')
  expect(checkStatement(read).map(finding => finding.code)).toEqual(['framed-smaller', 'framed-smaller', 'mass-heavy'])
})
