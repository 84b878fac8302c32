/**
 * Condition in against condition out: worked by hand; properties over drawn reports (no finding lost, the same both ways
 * round); the clear distance against a plain reading of many points.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Compared, compareReports } from '../../../../src/record/condition/compare.ts'
import { severities } from '../../../../src/record/condition/report.ts'
import { distanceBetween, extentOf, type Shape, thirdOf } from '../../../../src/record/condition/shape.ts'

const rules = { near: 20, grown: 3 }
const blank: Compared = {
  id: 'a',
  side: 'front',
  number: 1,
  term: 'frame.open-joint',
  word: 'open joint',
  form: 'mark',
  points: [{ x: 100, y: 100 }],
  across: 2,
  age: 'old',
  severity: 'slight',
  follows: null,
}
const line = (...points: (readonly [number, number])[]): Pick<Shape, 'form' | 'points' | 'across'> => ({
  form: 'outline',
  points: points.map(([x, y]) => ({ x, y })),
  across: null,
})
const around = (
  left: number,
  top: number,
  width: number,
  height: number,
): Pick<Shape, 'form' | 'points' | 'across'> => ({
  form: 'area',
  points: [
    { x: left, y: top },
    { x: left + width, y: top },
    { x: left + width, y: top + height },
    { x: left, y: top + height },
  ],
  across: null,
})
const told = (before: readonly Compared[], after: readonly Compared[]) =>
  compareReports(before, after, rules).map(each => [
    each.outcome,
    each.before?.number ?? null,
    each.after?.number ?? null,
    ...each.remarks,
  ])

describe('measures of a finding, worked by hand', () => {
  test('a tear of 30 and 40 at a right angle is 70 long and reaches 50', () => {
    expect(extentOf({ ...blank, ...line([0, 0], [30, 0], [30, 40]) })).toEqual({ reach: 50, along: 70, area: 0 })
  })
  test('a stain of 30 by 40', () => {
    expect(extentOf({ ...blank, ...around(5, 5, 30, 40) })).toEqual({ reach: 50, along: 140, area: 1200 })
  })
  test('a mark is as large as a rule said', () => {
    expect(extentOf({ ...blank, across: null }).reach).toBeNull()
    expect(extentOf(blank).reach).toBe(2)
  })
  test.each([
    ['centre', 300, 300],
    ['upper left', 10, 10],
    ['middle right', 590, 300],
    ['lower middle', 300, 590],
  ])('%s', (words, x, y) => {
    expect(thirdOf({ points: [{ x, y }] }, { width: 600, height: 600 })).toBe(words)
  })
})

describe('compared, worked by hand', () => {
  test('scenario 11: two old abrasions are the same, the opened joint is new', () => {
    const one = { ...blank, id: 'a', term: 'painting.abrasion', word: 'abrasion' }
    const two = { ...one, id: 'b', number: 2, points: [{ x: 400, y: 210 }] }
    const again = { ...one, id: 'c', points: [{ x: 104, y: 97 }] }
    const also = { ...two, id: 'd', number: 2, points: [{ x: 400, y: 222 }] }
    const joint = { ...blank, id: 'e', number: 3, age: 'new' as const }
    expect(told([one, two], [again, also, joint])).toEqual([
      ['same', 1, 1],
      ['same', 2, 2],
      ['new', null, 3],
    ])
  })
  test('just within 20 mm it is one, a little beyond it is another', () => {
    const at = (x: number) => ({ ...blank, id: 'b', points: [{ x, y: 100 }] })
    expect(told([blank], [at(120)])).toEqual([['same', 1, 1]])
    expect(told([blank], [at(120.5)])).toEqual([
      ['new', null, 1],
      ['not seen', 1, null],
    ])
  })
  test('another word at the same spot is another finding, unless a person says it goes on', () => {
    const crack = { ...blank, id: 'b', term: 'frame.crack' }
    expect(told([blank], [crack]).map(([outcome]) => outcome)).toEqual(['new', 'not seen'])
    const lines = compareReports([blank], [{ ...crack, follows: 'a' }], rules)
    expect(lines.map(({ outcome, by }) => [outcome, by])).toEqual([['same', 'said']])
  })
  test('what lies on the back is not what lies at the same spot of the front, unless somebody says so', () => {
    const behind = { ...blank, id: 'b', side: 'back' as const }
    expect(told([blank], [behind]).map(([outcome]) => outcome)).toEqual(['new', 'not seen'])
    expect(told([behind], [{ ...behind, id: 'c' }])).toEqual([['same', 1, 1]])
    expect(compareReports([blank], [{ ...behind, follows: 'a' }], rules).map(({ by }) => by)).toEqual(['said'])
  })
  test('the nearest two are one; what is left over is told', () => {
    const near = { ...blank, id: 'b', number: 2, points: [{ x: 110, y: 100 }] }
    const found = { ...blank, id: 'c', points: [{ x: 109, y: 100 }] }
    expect(told([blank, near], [found])).toEqual([
      ['same', 2, 1],
      ['not seen', 1, null],
    ])
  })
  test('a crack 3 mm longer is the same, 4 mm longer has grown, shorter is said', () => {
    const crack = { ...blank, ...line([0, 0], [40, 0]) }
    const long = (x: number) => ({ ...crack, id: 'b', ...line([0, 0], [x, 0]) })
    expect(told([crack], [long(43)])).toEqual([['same', 1, 1]])
    expect(told([crack], [long(44)])).toEqual([['grown', 1, 1, 'larger']])
    expect(told([long(44)], [crack])).toEqual([['same', 1, 1, 'smaller']])
  })
  test('a stain that is wider but reaches no farther has grown', () => {
    // 30 by 40 reaches 50; 35.36 square reaches 50 too, and is 50 mm² larger: less than 140 · 3 / 2. 42 by 42 is more.
    const stain = { ...blank, ...around(0, 0, 30, 40) }
    const wider = { ...blank, id: 'b', ...around(0, 0, 35.3, 35.3) }
    expect(told([stain], [wider])).toEqual([['same', 1, 1]])
    const thin = { ...blank, ...around(0, 0, 5, 100) }
    const thick = { ...blank, id: 'b', ...around(0, 0, 10, 100) }
    expect(told([thin], [thick])).toEqual([['grown', 1, 1, 'larger']])
  })
  test('as large but more serious has grown; a size nobody took and a word of new are said', () => {
    const worse = { ...blank, id: 'b', severity: 'severe' as const }
    expect(told([blank], [worse])).toEqual([['grown', 1, 1, 'more serious']])
    const untaken = { ...blank, id: 'b', across: null, age: 'new' as const }
    expect(told([blank], [untaken])).toEqual([['same', 1, 1, 'called new', 'size not taken']])
  })
})

const spot = fc.record({ x: fc.integer({ min: 0, max: 120 }), y: fc.integer({ min: 0, max: 120 }) })
const shape: fc.Arbitrary<Shape> = fc.oneof(
  fc.record({ form: fc.constant('mark' as const), points: fc.tuple(spot), across: fc.option(fc.nat(20)) }),
  fc.record({
    form: fc.constant('outline' as const),
    points: fc.array(spot, { minLength: 2, maxLength: 5 }),
    across: fc.constant(null),
  }),
  fc.record({
    form: fc.constant('area' as const),
    points: fc.array(spot, { minLength: 3, maxLength: 5 }),
    across: fc.constant(null),
  }),
)
const report = (prefix: string, other: string): fc.Arbitrary<Compared[]> =>
  fc
    .array(
      fc.record({
        shape,
        term: fc.constantFrom('painting.loss', 'painting.tear', 'frame.chip'),
        severity: fc.constantFrom(...severities),
        side: fc.constantFrom('front' as const, 'back' as const),
        follows: fc.option(fc.nat(7), { freq: 4 }),
      }),
      { maxLength: 7 },
    )
    .map(all =>
      all.map(({ shape, follows, ...rest }, index) => ({
        ...rest,
        ...shape,
        id: `${prefix}${index}`,
        number: index + 1,
        word: rest.term,
        age: 'old' as const,
        follows: follows === null ? null : `${other}${follows}`,
      })),
    )

describe('of any two reports', () => {
  const both = fc.tuple(report('a', 'none'), report('b', 'a'))

  test('every finding of either stands in one line and in one only', () => {
    fc.assert(
      fc.property(both, ([before, after]) => {
        const lines = compareReports(before, after, rules)
        const stands = (side: 'before' | 'after') => lines.flatMap(each => each[side]?.id ?? []).sort()
        expect(stands('before')).toEqual(before.map(({ id }) => id))
        expect(stands('after')).toEqual(after.map(({ id }) => id))
        for (const { outcome, before: one, after: other } of lines) {
          expect(outcome === 'new').toBe(one === null)
          expect(outcome === 'not seen').toBe(other === null)
        }
      }),
      { numRuns: 400 },
    )
  })

  test('turned round the pairs are the same, new is not seen, and no measure has grown both ways', () => {
    fc.assert(
      fc.property(both, ([before, after]) => {
        const there = compareReports(before, after, rules)
        const back = compareReports(after, before, rules)
        const pairs = (lines: typeof there, turned: boolean) =>
          lines
            .map(each => [each.before?.id ?? '', each.after?.id ?? ''])
            .map(pair => (turned ? pair.toReversed() : pair).join(' '))
            .sort()
        expect(pairs(there, false)).toEqual(pairs(back, true))
        for (const line of there) {
          const other = back.find(each => each.before === line.after && each.after === line.before)
          if (line.outcome === 'new') expect(other?.outcome).toBe('not seen')
          const bothWays = (remark: 'larger' | 'more serious') =>
            line.remarks.includes(remark) && other?.remarks.includes(remark) === true
          expect(bothWays('more serious')).toBe(false)
          // Of two areas one may reach farther while the other encloses more: either is told as larger.
          if (bothWays('larger')) expect([line.before?.form, line.after?.form]).toEqual(['area', 'area'])
        }
      }),
      { numRuns: 400 },
    )
  })

  test('a report against itself is the same throughout', () => {
    fc.assert(
      fc.property(report('a', 'none'), all => {
        for (const line of compareReports(all, all, rules)) expect(line.outcome).toBe('same')
      }),
    )
  })
})

/** Points every twentieth of each edge: no nearer than the clear distance, and nearly as near. */
function sampled({ form, points }: Shape) {
  const ends = form === 'area' ? [...points, ...points.slice(0, 1)] : points
  if (ends.length === 1) return [...ends]
  return ends.slice(1).flatMap((b, index) => {
    const a = ends[index] ?? b
    return Array.from({ length: 21 }, (_, n) => ({ x: a.x + ((b.x - a.x) * n) / 20, y: a.y + ((b.y - a.y) * n) / 20 }))
  })
}

test('the clear distance is never more than between any two points of the edges, and the same both ways', () => {
  fc.assert(
    fc.property(shape, shape, (one, other) => {
      const distance = distanceBetween(one, other)
      expect(distanceBetween(other, one)).toBe(distance)
      const least = Math.min(...sampled(one).flatMap(p => sampled(other).map(q => Math.hypot(p.x - q.x, p.y - q.y))))
      expect(distance).toBeLessThanOrEqual(least + 1e-9)
      // Between two samples of an edge of 170 mm at most there are 8.5 mm.
      if (distance > 0) expect(least - distance).toBeLessThan(9)
    }),
    { numRuns: 300 },
  )
})
