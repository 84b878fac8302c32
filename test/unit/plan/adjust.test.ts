/** The adjustment by rooms whose true shape is known: made to fit, made wrong by a known amount, or made of nonsense. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { adjust } from '../../../src/plan/adjust.ts'
import { areaOf } from '../../../src/plan/outline-shape.ts'
import type { Measure } from '../../../src/plan/survey.ts'
import { nextSaid, surveyNote } from '../../../src/plan/survey-said.ts'
import { between, measure, rules, starRoom, taped } from './lettered.ts'

const walls = ['north', 'east', 'south', 'west']
const diagonal = Math.hypot(9140, 5200)
const sides = [
  ['AB', 9140],
  ['BC', 5200],
  ['CD', 9140],
  ['DA', 5200],
] as const
/** A room of 9 140 × 5 200 whose corners are taken as square, with what else was measured. */
const oblong = (...more: readonly (readonly [string, number])[]): Measure[] => [
  ...[...sides, ...more].map(([letters, value]) => measure(letters, 4, value)),
  ...['A', 'B', 'C', 'D'].map(letter => measure(letter, 4, 90, 'taken')),
]
const said = (measures: readonly Measure[]) => surveyNote({ ...adjust(4, measures, rules), measures, walls })

describe('an oblong room by its four sides', () => {
  test('is not fixed: a diagonal is to be measured next, then the other checks it', () => {
    const none = adjust(4, oblong(), rules)
    expect([none.open, none.redundancy]).toEqual([1, 0])
    expect(nextSaid(none.next, none.open)).toBe('Measure A–C next; it fixes the outline.')
    const one = adjust(4, oblong(['AC', diagonal]), rules)
    expect([one.open, one.redundancy, one.spread]).toEqual([0, 0, null])
    expect(nextSaid(one.next, one.open)).toBe('Measure B–D next; it checks what nothing checks yet.')
    expect(said(oblong(['AC', diagonal]))).toBe('The measures just fix the outline; nothing checks them yet.')
    const both = adjust(4, oblong(['AC', diagonal], ['BD', diagonal]), rules)
    expect([both.open, both.redundancy, both.suspects]).toEqual([0, 1, []])
    expect(both.gap).toBeCloseTo(0, 6)
    expect(both.next).toBeNull()
  })

  test('names the diagonal that was read 340 mm long, since the corners would be square without it', () => {
    const { suspects, bySquare, gap, closes } = adjust(4, oblong(['AC', diagonal], ['BD', diagonal + 340]), rules)
    expect([suspects[0]?.key, bySquare, closes]).toEqual(['BD', true, false])
    expect(suspects[0]?.over).toBeCloseTo(340, 4)
    expect(gap).toBeCloseTo(340, 4)
    expect(said(oblong(['AC', diagonal], ['BD', diagonal + 340]))).toMatch(
      /^The measures fail to close by 340 mm\. B–D was read 340 mm long, if the corners nobody measured are square; measure it again first\./,
    )
  })

  test('is honest where one figure too many cannot say which of six is wrong', () => {
    const measures = oblong(['AC', diagonal], ['BD', diagonal + 34])
    const { suspects, bySquare } = adjust(4, measures, rules)
    expect(bySquare).toBe(false)
    // By hand: with one measure more than needed every one of them could be what is wrong.
    expect(suspects.map(({ key }) => key).sort()).toEqual(['AB', 'AC', 'BC', 'BD', 'CD', 'DA'])
    expect(said(measures)).toMatch(
      /^The measures fail to close by 34 mm\. One of these was misread, and the measures cannot tell which: B–D, A–C/,
    )
  })

  test('shares a misclosure by the rules’ deviations: what lies across takes its part, nothing else moves', () => {
    const { fitted, redundancy } = adjust(4, oblong(['AC', diagonal + 10], ['BD', diagonal]), rules)
    // The redundancy numbers of all measures add up to the redundancy (Baarda).
    expect(fitted.reduce((sum, { checked }) => sum + checked, 0)).toBeCloseTo(redundancy, 9)
    // A square room’s two diagonals share what is over alike.
    const [ac, bd] = ['AC', 'BD'].map(key => fitted.find(one => one.key === key)?.residual ?? 0)
    expect(ac).toBeCloseTo(bd ?? 0, 1)
  })
})

describe('a room that is measured through and through', () => {
  const fully = (corners: Parameters<typeof taped>[0]) => taped(corners, () => true)

  test('of any shape comes back as it is, in whatever order its lengths were typed', () => {
    fc.assert(
      fc.property(starRoom(4, 9), fc.array(fc.nat(), { minLength: 40, maxLength: 40 }), (corners, keys) => {
        const measures = fully(corners)
        const order = measures
          .map((one, at) => ({ one, key: keys[at % keys.length] ?? 0 }))
          .sort((a, b) => a.key - b.key)
        const {
          corners: found,
          gap,
          suspects,
          open,
          problems,
        } = adjust(
          corners.length,
          order.map(({ one }) => one),
          rules,
        )
        expect([open, suspects, problems]).toEqual([0, [], []])
        expect(gap).toBeLessThan(1e-3)
        for (const { from, to, value } of measures) {
          expect(between(found[from] ?? [0, 0], found[to] ?? [0, 0])).toBeCloseTo(value, 3)
        }
        expect(areaOf(found)).toBeCloseTo(areaOf(corners), -1)
        expect(found[0]).toEqual([0, 0])
        expect(found[1]?.[1]).toBeCloseTo(0, 9)
      }),
      { numRuns: 60 },
    )
  })

  test('names the one length that was misread, by how much and which way', () => {
    const wrong = fc.oneof(fc.integer({ min: 200, max: 1500 }), fc.integer({ min: -600, max: -200 }))
    fc.assert(
      fc.property(starRoom(5, 8), fc.nat(), wrong, (corners, which, by) => {
        const measures = fully(corners)
        const at = which % measures.length
        const misread = measures.map((one, index) => (index === at ? { ...one, value: one.value + by } : one))
        const { suspects, closes, gap } = adjust(corners.length, misread, rules)
        expect(closes).toBe(false)
        const found = suspects.find(({ key }) => key === measures[at]?.key)
        expect(found?.over).toBeCloseTo(by, 2)
        expect(found?.should).toBeCloseTo(measures[at]?.value ?? 0, 2)
        expect(gap).toBeLessThanOrEqual(Math.abs(by) + 1e-3)
      }),
      { numRuns: 60 },
    )
  })

  test('tells two figures apart as soon as they can be: five corners, every diagonal, one wrong', () => {
    const corners = [
      [0, 0],
      [6000, 0],
      [7200, 3300],
      [4500, 5600],
      [-400, 3500],
    ] as const
    const measures = fully(corners).map(one => (one.key === '1 3' ? { ...one, value: one.value + 340 } : one))
    const { suspects, bySquare } = adjust(5, measures, rules)
    expect(suspects.map(({ key }) => key)).toEqual(['1 3'])
    expect(bySquare).toBe(false)
    expect(surveyNote({ ...adjust(5, measures, rules), measures, walls: [] })).toBe(
      'The measures fail to close by 340 mm. B–D was read 340 mm long; measure it again.',
    )
  })
})

describe('what to measure next', () => {
  test('closes every room: lengths are proposed until none of its corners can move', () => {
    fc.assert(
      fc.property(starRoom(4, 10), corners => {
        let measures = taped(corners, () => false)
        let { open, next } = adjust(corners.length, measures, rules)
        expect(open).toBe(corners.length - 3)
        // A length that runs nearly along what is known already decides little: then one more is asked for.
        let most = open + 2
        while (open > 0) {
          expect(most).toBeGreaterThan(0)
          most -= 1
          if (next === null) throw new Error('nothing was proposed')
          const { kind, from, to } = next
          const value =
            kind === 'angle' ? angleAt(corners, from) : between(corners[from] ?? [0, 0], corners[to] ?? [0, 0])
          measures = [...measures, { key: `${from} ${to}`, kind, from, to, value, standing: 'measured' }]
          const now = adjust(corners.length, measures, rules)
          expect(now.open === open || now.open === open - 1).toBe(true)
          open = now.open
          next = now.next
        }
      }),
      { numRuns: 40, endOnFailure: true },
    )
  })

  function angleAt(corners: readonly (readonly [number, number])[], at: number): number {
    const count = corners.length
    const [here, before, after] = [at, at + count - 1, at + 1].map(one => corners[one % count])
    if (here === undefined || before === undefined || after === undefined) return 0
    const heading = (a: readonly [number, number], b: readonly [number, number]) => Math.atan2(b[1] - a[1], b[0] - a[0])
    const inside = 180 - ((heading(here, after) - heading(before, here)) * 180) / Math.PI
    return ((inside % 360) + 360) % 360
  }
})

describe('nonsense', () => {
  test('never throws and always gives corners of finite numbers', () => {
    const value = fc.oneof(
      fc.double({ min: -1e4, max: 1e6 }),
      fc.constantFrom(0, Number.NaN, Number.POSITIVE_INFINITY, 1e-9, 359.9, 1e300),
    )
    const kind = fc.constantFrom('side' as const, 'diagonal' as const, 'angle' as const)
    const standing = fc.constantFrom('measured' as const, 'taken' as const, 'straight' as const)
    const corner = fc.integer({ min: -1, max: 7 })
    const any = fc.record({ kind, from: corner, to: corner, value, standing })
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 7 }), fc.array(any, { maxLength: 25 }), (count, drawn) => {
        const measures = drawn.map((one, key) => ({ ...one, key: String(key) }))
        const { corners, fitted, gap, spread } = adjust(count, measures, rules)
        expect(corners).toHaveLength(count)
        const figures = [...corners.flat(), gap, spread ?? 0]
        for (const one of fitted) figures.push(one.fitted, one.residual, one.standardised ?? 0, one.checked)
        expect(figures.filter(figure => !Number.isFinite(figure))).toEqual([])
        expect(surveyNote({ ...adjust(count, measures, rules), measures, walls: [] })).not.toContain('NaN')
      }),
      { numRuns: 150 },
    )
  })

  test('is told by name: no length, no such corner, longer than the way round, walls that cross', () => {
    expect(said(oblong(['AC', 0]))).toContain('A–C has no length that a room can have; it is left out.')
    expect(said(oblong(['AC', 20_000]))).toMatch(
      /A–C is 5660 mm longer than .–. and .–. together, which no room can have\./,
    )
    const crossed = adjust(
      4,
      [
        ...taped(
          [
            [0, 0],
            [6000, 4000],
            [6000, 0],
            [0, 4000],
          ],
          () => true,
        ),
      ],
      rules,
    )
    expect(crossed.problems).toEqual([{ code: 'crosses', sides: [0, 2] }])
    expect(surveyNote({ ...crossed, measures: [], walls })).toContain('Drawn by these measures north crosses south.')
  })
})
