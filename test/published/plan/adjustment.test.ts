/**
 * The adjustment against a least-squares routine that knows nothing of it: ml-levenberg-marquardt from npm, with
 * numeric slopes and a start of its own. The six lines of the first room are a braced quadrilateral printed in a textbook
 * of higher surveying (trilateration, worked example 3.3; the book shifts its angles, so only its lines are taken); the
 * second is a room with angles.
 */
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { describe, expect, test } from 'vitest'
import { adjust } from '../../../src/plan/adjust.ts'
import { deviationOf, type Measure, type Point } from '../../../src/plan/survey.ts'
import { between, measure, rules } from '../../unit/plan/lettered.ts'

/** Corners by the other routine, each measure over its deviation: unknowns x1, x2, y2, x3, y3 …; angles by the law of cosines, not by headings. */
function independent(count: number, measures: readonly Measure[], start: readonly Point[]) {
  const pointsOf = (p: readonly number[]): Point[] => [
    [0, 0],
    [p[0] ?? 0, 0],
    ...Array.from({ length: count - 2 }, (_, at): Point => [p[1 + 2 * at] ?? 0, p[2 + 2 * at] ?? 0]),
  ]
  const valueOn = ({ kind, from, to }: Measure, points: readonly Point[]): number => {
    const at = (corner: number) => points[(corner + count) % count] ?? [0, 0]
    if (kind !== 'angle') return between(at(from), at(to))
    const [a, b, c] = [
      between(at(from), at(from - 1)),
      between(at(from), at(from + 1)),
      between(at(from - 1), at(from + 1)),
    ]
    return (Math.acos((a * a + b * b - c * c) / (2 * a * b)) * 180) / Math.PI
  }
  const [, second = [0, 0], ...rest] = start
  const found = levenbergMarquardt(
    { x: measures.map((_, at) => at), y: measures.map(one => one.value / deviationOf(one, rules)) },
    parameters => at => {
      const one = measures[at]
      return one === undefined ? 0 : valueOn(one, pointsOf(parameters)) / deviationOf(one, rules)
    },
    {
      initialValues: [second[0], ...rest.flat()],
      damping: 1e-3,
      gradientDifference: 1e-3,
      centralDifference: true,
      maxIterations: 500,
      errorTolerance: 1e-14,
      improvementThreshold: 1e-12,
    },
  )
  const corners = pointsOf(found.parameterValues)
  return { corners, values: measures.map(one => valueOn(one, corners)) }
}

function weightedSquares(measures: readonly Measure[], values: readonly number[]): number {
  return measures.reduce((sum, one, at) => sum + ((one.value - (values[at] ?? 0)) / deviationOf(one, rules)) ** 2, 0)
}

const textbook = [
  ['AB', 1525.456],
  ['BC', 2176.945],
  ['CD', 1697.435],
  ['DA', 2401.435],
  ['AC', 3073.845],
  ['BD', 2483.115],
] as const

const rooms: readonly { readonly name: string; readonly count: number; readonly measures: readonly Measure[] }[] = [
  {
    name: 'a textbook’s braced quadrilateral, all lines alike',
    count: 4,
    measures: textbook.map(([letters, metres]) => ({ ...measure(letters, 4, metres * 1000), deviation: 10 })),
  },
  {
    name: 'a five-cornered room by tape and angle gauge',
    count: 5,
    measures: (
      [
        ['AB', 6012],
        ['BC', 3496],
        ['CD', 3310],
        ['DE', 3297],
        ['EA', 3507],
        ['AC', 6959],
        ['BD', 5840],
        ['CE', 6005],
        ['A', 91.5],
        ['C', 118],
        ['E', 119.5],
      ] as const
    ).map(([letters, value]) => measure(letters, 5, value)),
  },
]

describe.each(rooms)('$name', ({ count, measures }) => {
  const ours = adjust(count, measures, rules)
  // Begun well off ours, so that it has to find its own way.
  const theirs = independent(
    count,
    measures,
    ours.corners.map(([x, y], at): Point => [x * (1 + 0.004 * at), y * (1 - 0.003 * at)]),
  )

  test('has the corners that the independent routine finds', () => {
    for (const [at, [x, y]] of ours.corners.entries()) {
      expect(Math.abs(x - (theirs.corners[at]?.[0] ?? 0))).toBeLessThan(0.01)
      expect(Math.abs(y - (theirs.corners[at]?.[1] ?? 0))).toBeLessThan(0.01)
    }
  })

  test('has its residuals, and a sum of squares no greater than any other routine’s', () => {
    for (const [at, { fitted, residual }] of ours.fitted.entries()) {
      expect(fitted).toBeCloseTo(theirs.values[at] ?? 0, 2)
      expect(residual).toBeCloseTo((measures[at]?.value ?? 0) - fitted, 9)
    }
    const own = weightedSquares(
      measures,
      ours.fitted.map(({ fitted }) => fitted),
    )
    expect(own).toBeLessThanOrEqual(weightedSquares(measures, theirs.values) + 1e-9)
    expect(ours.spread).toBeCloseTo(Math.sqrt(own / ours.redundancy), 6)
  })

  test('leaves out a measure as the independent routine does without it', () => {
    const at = 2
    const rest = measures.filter((_, index) => index !== at)
    const without = independent(count, rest, ours.corners)
    const left = measures[at]
    const one = ours.fitted[at]
    if (left === undefined || one === undefined) throw new Error('the room has three measures and more')
    const cornerOf = (corner: number): Point => without.corners[corner] ?? [0, 0]
    // Residual over redundancy is what leaving out gives, to the first order: a hundredth of the figure.
    expect(one.residual / one.checked / (left.value - between(cornerOf(left.from), cornerOf(left.to)))).toBeCloseTo(
      1,
      1,
    )
  })
})
