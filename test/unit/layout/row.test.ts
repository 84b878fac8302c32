/** Rows, stacks and grids: sums, held works, what does not fit and what would cure it. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { layGrid } from '../../../src/layout/grid.ts'
import type { RowQuestion, RowRule } from '../../../src/layout/layout-shape.ts'
import { rowAnswer } from '../../../src/layout/layout-shape.ts'
import { layRow } from '../../../src/layout/row.ts'
import { layStack } from '../../../src/layout/stack.ts'

const rules: fc.Arbitrary<RowRule> = fc.oneof(
  fc.constant<RowRule>({ rule: 'equal' }),
  fc.record({
    rule: fc.constant('margins' as const),
    left: fc.integer({ min: 0, max: 600 }),
    right: fc.integer({ min: 0, max: 600 }),
  }),
  fc.record({ rule: fc.constant('ends' as const), times: fc.double({ min: 0, max: 4, noNaN: true }) }),
  fc.record({ rule: fc.constant('gap' as const), gap: fc.integer({ min: 0, max: 300 }) }),
  fc.record({
    rule: fc.constant('by-size' as const),
    factor: fc.double({ min: 0, max: 1.5, noNaN: true }),
    least: fc.integer({ min: 0, max: 100 }),
    most: fc.integer({ min: 100, max: 400 }),
  }),
)

const widths = fc.array(fc.double({ min: 50, max: 1200, noNaN: true }), { minLength: 1, maxLength: 12 })

const questions: fc.Arbitrary<RowQuestion> = fc
  .record({
    widths,
    rule: rules,
    length: fc.integer({ min: 2000, max: 15_000 }),
    from: fc.integer({ min: 0, max: 500 }),
    hold: fc.nat(),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    held: fc.boolean(),
  })
  .map(({ widths, rule, length, from, hold, at, held }) => {
    const index = hold % widths.length
    const before = widths.slice(0, index).reduce((sum, width) => sum + width, 0)
    const after = widths.slice(index).reduce((sum, width) => sum + width, 0)
    const room = length - before - after
    const works = widths.map((width, i) => ({
      id: `w${i}`,
      width,
      heldAt: held && i === index && room > 0 ? from + before + room * at : null,
    }))
    return { from, to: from + length, works, rule }
  })

describe('rows', () => {
  test('gaps and widths add up to the stretch; nothing overlaps; held works keep their place', () => {
    fc.assert(
      fc.property(questions, question => {
        const answer = layRow(question)
        expect(rowAnswer.parse(answer)).toEqual(answer)
        if (!answer.fits) {
          expect(answer.shortBy).toBeGreaterThan(0)
          expect(answer.works).toEqual([])
          return
        }
        const total =
          answer.gaps.reduce((sum, gap) => sum + gap, 0) + question.works.reduce((sum, w) => sum + w.width, 0)
        expect(total).toBeCloseTo(question.to - question.from, 6)
        expect(answer.works.map(work => work.id)).toEqual(question.works.map(work => work.id))
        expect(answer.gaps.length).toBe(question.works.length + 1)
        let edge = question.from
        answer.works.forEach((work, index) => {
          expect(work.left - edge).toBeCloseTo(answer.gaps[index] ?? Number.NaN, 6)
          expect(answer.gaps[index] ?? 0).toBeGreaterThan(-1e-6)
          edge = work.right
          const heldAt = question.works[index]?.heldAt ?? null
          if (heldAt !== null) expect(work.left).toBe(heldAt)
        })
      }),
      { numRuns: 300 },
    )
  })

  test('a stretch longer by what is missing fits', () => {
    fc.assert(
      fc.property(widths, rules, fc.integer({ min: 300, max: 4000 }), (sizes, rule, length) => {
        const question = {
          from: 0,
          to: length,
          works: sizes.map((width, i) => ({ id: `w${i}`, width })),
          rule,
          leastGap: 20,
        }
        const answer = layRow(question)
        if (answer.fits) return
        expect(layRow({ ...question, to: length + answer.shortBy }).fits).toBe(true)
        expect(layRow({ ...question, to: length + answer.shortBy - 0.01 }).fits).toBe(false)
        expect(answer.cures.at(-1)).toEqual({ kind: 'longer', mm: answer.shortBy })
      }),
      { numRuns: 200 },
    )
  })

  const three = [
    { id: 'a', width: 400 },
    { id: 'b', width: 600 },
    { id: 'c', width: 500 },
  ]

  test('every rule on one wall', () => {
    const lefts = (rule: RowRule) => layRow({ from: 0, to: 3500, works: three, rule }).works.map(work => work.left)
    expect(lefts({ rule: 'equal' })).toEqual([500, 1400, 2500])
    expect(lefts({ rule: 'margins', left: 300, right: 700 })).toEqual([300, 1200, 2300])
    expect(lefts({ rule: 'ends', times: 1.5 })).toEqual([600, 1400, 2400])
    expect(lefts({ rule: 'gap', gap: 200 })).toEqual([800, 1400, 2200])
    expect(lefts({ rule: 'gap', gap: 200, axis: 1600 })).toEqual([650, 1250, 2050])
    expect(lefts({ rule: 'by-size', factor: 0.5, least: 260, most: 400 })).toEqual([732.5, 1392.5, 2267.5])
  })

  test('one work between margins is centred between them', () => {
    const answer = layRow({
      from: 0,
      to: 3000,
      works: [{ id: 'a', width: 800 }],
      rule: { rule: 'margins', left: 200, right: 600 },
    })
    expect(answer.works[0]?.left).toBe(900)
    expect(answer.gaps).toEqual([900, 1300])
  })

  test('one work with ends of no gap at all is centred', () => {
    const works = [{ id: 'a', width: 800 }]
    expect(layRow({ from: 0, to: 3000, works, rule: { rule: 'ends', times: 0 } }).gaps).toEqual([1100, 1100])
  })

  test('no works at all: one gap, the stretch', () => {
    expect(layRow({ from: 100, to: 900, works: [], rule: { rule: 'equal' } })).toMatchObject({
      fits: true,
      gaps: [800],
    })
  })

  test('a held work splits the wall', () => {
    const works = three.map(work => (work.id === 'b' ? { ...work, heldAt: 2000 } : work))
    const answer = layRow({ from: 0, to: 3500, works, rule: { rule: 'equal' } })
    expect(answer.works.map(work => work.left)).toEqual([800, 2000, 2800])
    expect(answer.gaps).toEqual([800, 800, 200, 200])
  })

  test('what does not fit says by how much, and what would cure it', () => {
    const answer = layRow({ from: 0, to: 1700, works: three, rule: { rule: 'gap', gap: 200 } })
    expect(answer.shortBy).toBe(200)
    expect(answer.cures).toEqual([
      { kind: 'gap', mm: 100 },
      { kind: 'leave-out', id: 'a', mm: 400 },
      { kind: 'longer', mm: 200 },
    ])
    const margins = layRow({
      from: 0,
      to: 1700,
      works: three,
      rule: { rule: 'margins', left: 150, right: 150 },
      leastGap: 25,
    })
    expect(margins.shortBy).toBe(150)
    expect(margins.cures[0]).toEqual({ kind: 'margins', mm: 75 })
    const held = layRow({
      from: 0,
      to: 2000,
      works: three.map(work => (work.id === 'b' ? { ...work, heldAt: 300 } : work)),
      rule: { rule: 'equal' },
    })
    expect(held.shortBy).toBe(100)
    expect(held.cures).toContainEqual({ kind: 'let-go', id: 'b', mm: 0 })
  })

  // F19 with a held neighbour: 0.5 × (400 + 800) / 2 = 300 beside it.
  test('a gap beside a held work follows both widths', () => {
    const works = [
      { id: 'a', width: 400 },
      { id: 'b', width: 800, heldAt: 2000 },
    ]
    const rule: RowRule = { rule: 'by-size', factor: 0.5, least: 50, most: 1000 }
    expect(layRow({ from: 0, to: 4000, works, rule }).works[0]?.left).toBe(2000 - 300 - 400)
  })

  test('one change of the rule’s own figures is offered, and tried', () => {
    const tight = { from: 0, to: 2000, works: three, leastGap: 50 }
    // 2000 − 1500 = 500; three gaps of 50 and ends of k × 50: k = (500 / 50 − 2) / 2 = 4.
    const ends = layRow({ ...tight, rule: { rule: 'ends', times: 9 } })
    expect(ends.cures[0]).toEqual({ kind: 'times', times: 4 })
    // Means of 500 and 550: 1 050 f = 500.
    const bySize = layRow({ ...tight, rule: { rule: 'by-size', factor: 0.9, least: 0, most: 2000 } })
    expect(bySize.cures[0]).toEqual({ kind: 'factor', times: 0.476 })
    // About 700 the row of 1 700 reaches 150 over the left end; about 850 it ends there.
    const axis = layRow({ ...tight, rule: { rule: 'gap', gap: 100, axis: 700 } })
    expect(axis.shortBy).toBe(150)
    expect(axis.cures).toContainEqual({ kind: 'axis', mm: 850 })
    for (const cure of axis.cures) {
      if (cure.kind === 'axis')
        expect(layRow({ ...tight, rule: { rule: 'gap', gap: 100, axis: cure.mm } }).fits).toBe(true)
    }
  })

  test('held works out of order are refused with their field', () => {
    const works = [
      { id: 'a', width: 400, heldAt: 1000 },
      { id: 'b', width: 400, heldAt: 1200 },
    ]
    expect(() => layRow({ from: 0, to: 3000, works, rule: { rule: 'equal' } })).toThrow(
      expect.objectContaining({ code: 'held-out-of-order', field: 'works.1.heldAt' }),
    )
    expect(() => layRow({ from: 10, to: 10, works: [], rule: { rule: 'equal' } })).toThrow(
      expect.objectContaining({ code: 'span-empty' }),
    )
  })
})

describe('stacks and grids', () => {
  test('a stack: total height about its centre, running dimensions rounded once', () => {
    const stack = layStack({
      works: [
        { id: 'a', height: 400.4 },
        { id: 'b', height: 300.4 },
        { id: 'c', height: 200.4 },
      ],
      gap: 50.4,
      line: 1500,
    })
    expect(stack.height).toBeCloseTo(1002, 9)
    expect(stack.top + stack.bottom).toBeCloseTo(3000, 9)
    expect(stack.works.map(work => work.printed.fromTop.mm)).toEqual([0, 451, 802])
    expect(stack.works.map(work => work.printed.toBottom.mm)).toEqual([400, 751, 1002])
    expect(stack.works[1]?.top).toBeCloseTo((stack.works[0]?.bottom ?? 0) - 50.4, 9)
  })

  // A 50 mm gap written as 2 in adds 0.8 mm at every step: trade notes, derived.
  test('a grid of 36: centred block, one datum for every line, and what a chain would drift', () => {
    const grid = layGrid({
      columns: 6,
      rows: 6,
      width: 254,
      height: 254,
      gapX: 50,
      gapY: 50,
      centre: { x: 3000, y: 1500 },
      drop: 25.4,
    })
    expect(grid.width).toBe(6 * 254 + 5 * 50)
    expect(grid.left + grid.width / 2).toBe(3000)
    expect(grid.columns.map(column => column.printedFromFirst.mm)).toEqual([0, 304, 608, 912, 1216, 1520])
    expect(grid.rows[0]?.bearing).toBeCloseTo(1500 + grid.height / 2 - 25.4, 9)
    expect(grid.cells.length).toBe(36)
    expect(grid.chainDrift.x.mm).toBe(0)
    const eighths = layGrid({
      columns: 6,
      rows: 6,
      width: 254,
      height: 254,
      gapX: 50,
      gapY: 50,
      centre: { x: 3000, y: 1500 },
      steps: { mm: 1, fraction: 8 },
    })
    // The last part stands 5 × 11.9685 = 59.84 in from the first, 59 7/8 in eighths; a chain of 12 in makes it 60.
    expect(eighths.columns[5]?.printedFromFirst.inches).toBe(59.875)
    expect(eighths.chainDrift.x.inches).toBe(1 / 8)
    for (const column of grid.columns) expect(Math.abs(column.printedLeft.mm - column.left)).toBeLessThanOrEqual(0.5)
  })
})
