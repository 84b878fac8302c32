/** Sets: several works as one object with locked gaps. Figures were computed by hand. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Refusal } from '../../../src/contract/refusal.ts'
import { laySet } from '../../../src/layout/set.ts'
import { type SetQuestion, setAnswer } from '../../../src/layout/set-shape.ts'

const sized = (...sizes: readonly (readonly [number, number])[]) =>
  sizes.map(([width, height], index) => ({ id: `p${index}`, width, height }))

describe('a row', () => {
  const row: SetQuestion = { form: 'row', gapX: 20, gapY: 0, parts: sized([400, 500], [402, 500], [398, 480]) }

  test('kept gaps: each part begins a gap after the last', () => {
    const set = laySet({ ...row, keeps: 'gaps' })
    expect(set.parts.map(part => part.left)).toEqual([0, 420, 842])
    // 400 + 20 + 402 + 20 + 398
    expect(set.width).toBe(1240)
    expect(set.gapsX).toEqual({ least: 20, most: 20 })
    expect(set.centresX).toEqual({ least: 420, most: 421 })
    expect(set.differ).toBe(true)
  })

  test('kept centres: 401 + 20 apart, so that the closest two keep the gap', () => {
    const set = laySet({ ...row, keeps: 'centres' })
    expect(set.parts.map(part => (part.left + part.right) / 2)).toEqual([200, 621, 1042])
    expect(set.gapsX).toEqual({ least: 20, most: 21 })
    expect(set.width).toBe(1241)
  })

  test('the centres of a row are on one level line', () => {
    const set = laySet(row)
    expect(set.height).toBe(500)
    expect(set.parts.map(part => [part.top, part.bottom])).toEqual([
      [0, 500],
      [0, 500],
      [10, 490],
    ])
  })

  test('of two parts there is one gap, so nothing is asked', () => {
    expect(laySet({ ...row, parts: sized([400, 500], [380, 470]) }).differ).toBe(false)
  })

  test('in inches: six parts of 12 1/4 in, 2 in apart', () => {
    const parts = Array.from({ length: 6 }, (_, index) => ({ id: `${index}`, width: 12.25 * 25.4, height: 254 }))
    const set = laySet({ form: 'row', gapX: 2 * 25.4, gapY: 0, parts })
    expect(set.parts.map(part => part.printed.left.inches)).toEqual([0, 14.25, 28.5, 42.75, 57, 71.25])
    expect(set.width / 25.4).toBeCloseTo(83.5, 9)
  })

  test('running dimensions do not add the rounding of a gap: 50 mm is no 2 in', () => {
    // 9 × (304.8 + 50) = 3 193.2 mm = 125.7165 in, to the sixteenth 125 11/16; a chain of 14 in gives 126.
    const parts = Array.from({ length: 10 }, (_, index) => ({ id: `${index}`, width: 304.8, height: 304.8 }))
    const last = laySet({ form: 'row', gapX: 50, gapY: 0, parts }).parts.at(-1)
    expect(last?.printed.left).toEqual({ mm: 3193, inches: 125.6875 })
  })
})

test('a column goes down, its centres on one plumb line', () => {
  const set = laySet({ form: 'column', gapX: 0, gapY: 30, parts: sized([300, 400], [260, 200]) })
  expect(set.parts.map(part => [part.left, part.top])).toEqual([
    [0, 0],
    [20, 430],
  ])
  expect([set.width, set.height]).toEqual([300, 630])
})

describe('a grid', () => {
  const parts = sized([300, 400], [310, 400], [300, 420], [300, 400])
  const grid: SetQuestion = { form: 'grid', columns: 2, gapX: 30, gapY: 40, parts }

  test('columns as wide as their widest part, rows as tall as their tallest, centres on the lines', () => {
    const set = laySet(grid)
    expect(set.parts.map(part => [part.row, part.column, part.left, part.top])).toEqual([
      [0, 0, 0, 0],
      [0, 1, 330, 0],
      [1, 0, 0, 440],
      [1, 1, 335, 450],
    ])
    expect([set.width, set.height, set.rows, set.columns]).toEqual([640, 860, 2, 2])
  })

  test('kept centres: one distance for all columns and one for all rows', () => {
    const set = laySet({ ...grid, columns: 3, keeps: 'centres', parts: sized([300, 400], [320, 400], [280, 400]) })
    // (300 + 320) / 2 + 30 = 340 apart
    expect(set.parts.map(part => (part.left + part.right) / 2)).toEqual([150, 490, 830])
    expect(set.gapsX).toEqual({ least: 30, most: 40 })
  })

  test('the last row may be short', () => {
    const set = laySet({ ...grid, parts: parts.slice(0, 3) })
    expect(set.parts[2]).toMatchObject({ row: 1, column: 0 })
    expect(set.width).toBe(640)
  })
})

const code = (question: SetQuestion) => {
  try {
    laySet(question)
  } catch (error) {
    if (error instanceof Refusal) return [error.code, error.field]
    throw error
  }
  return null
}

test('what is no set is refused, with the field', () => {
  const row: SetQuestion = { form: 'row', gapX: 20, gapY: 0, parts: sized([400, 500], [402, 500]) }
  expect(code({ ...row, parts: [] })).toEqual(['set-empty', 'parts'])
  expect(code({ ...row, gapX: -1 })).toEqual(['gap-negative', 'gapX'])
  expect(code({ ...row, gapY: Number.NaN })).toEqual(['gap-negative', 'gapY'])
  expect(code({ ...row, form: 'grid' })).toEqual(['grid-without-columns', 'columns'])
  expect(code({ ...row, parts: [{ id: 'a', width: 400, height: null }] })).toEqual(['part-without-size', 'parts.0'])
  const twice = [...sized([400, 500]), ...sized([300, 300])]
  expect(code({ ...row, parts: twice })).toEqual(['part-twice', 'parts.1'])
})

const length = fc.double({ min: 20, max: 1500, noNaN: true })
const questions: fc.Arbitrary<SetQuestion> = fc.record({
  form: fc.constantFrom('row', 'column', 'grid'),
  columns: fc.integer({ min: 1, max: 7 }),
  gapX: fc.double({ min: 0, max: 200, noNaN: true }),
  gapY: fc.double({ min: 0, max: 200, noNaN: true }),
  keeps: fc.constantFrom('gaps', 'centres'),
  parts: fc
    .array(fc.tuple(length, length), { minLength: 1, maxLength: 36 })
    .map(sizes => sizes.map(([width, height], index) => ({ id: `${index}`, width, height }))),
  steps: fc.constantFrom(
    { mm: 1, fraction: 16 as const },
    { mm: 0.5, fraction: 32 as const },
    { mm: 5, fraction: 8 as const },
  ),
})

test('no running dimension is more than one rounding away, wherever it stands in the set', () => {
  fc.assert(
    fc.property(questions, question => {
      const set = laySet(question)
      expect(setAnswer.parse(set)).toEqual(set)
      const steps = question.steps ?? { mm: 1, fraction: 16 }
      for (const part of set.parts) {
        for (const edge of ['left', 'right', 'top', 'bottom'] as const) {
          expect(Math.abs(part.printed[edge].mm - part[edge])).toBeLessThanOrEqual(steps.mm / 2 + 1e-6)
          const inches = Math.abs(part.printed[edge].inches - part[edge] / 25.4)
          expect(inches).toBeLessThanOrEqual(0.5 / steps.fraction + 1e-9)
        }
      }
    }),
  )
})

test('parts never overlap, never come closer than the gap, and fill their set to its edges', () => {
  fc.assert(
    fc.property(questions, question => {
      const { parts, width, height, gapsX, gapsY } = laySet(question)
      expect(Math.min(...parts.map(part => part.left))).toBeCloseTo(0, 6)
      expect(Math.max(...parts.map(part => part.right))).toBeCloseTo(width, 6)
      expect(Math.max(...parts.map(part => part.bottom))).toBeCloseTo(height, 6)
      if (gapsX !== null) expect(gapsX.least).toBeGreaterThanOrEqual(question.gapX - 1e-6)
      if (gapsY !== null) expect(gapsY.least).toBeGreaterThanOrEqual(question.gapY - 1e-6)
    }),
  )
})

test('in a row of kept gaps, what stands before a part and what stands after it make the whole: two routes', () => {
  fc.assert(
    fc.property(questions, question => {
      const { parts, gapX } = question
      const set = laySet({ ...question, form: 'row', keeps: 'gaps' })
      set.parts.forEach((part, index) => {
        const after = parts.slice(index).reduce((sum, one) => sum + (one.width ?? 0) + gapX, -gapX)
        expect(part.left).toBeCloseTo(set.width - after, 6)
      })
    }),
  )
})
