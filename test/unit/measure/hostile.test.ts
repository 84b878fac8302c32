/** No text makes the reader of statements throw, run long, or give a value that is no size. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { statement as statementSchema } from '../../../src/contract/areas/computations.ts'
import { checkStatement } from '../../../src/measure/checks.ts'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import { formatLength } from '../../../src/measure/format.ts'
import type { ReadOptions } from '../../../src/measure/statement.ts'

const VALID = [
  'framed: 31 7/8 x 48 1/16; sight 24 x 40',
  '30 x 40 in. (76.2 x 106.1 cm)',
  'approx 120x80x4cm, 14kg',
  '50 x 70 cm, 14 kg, 20 kg',
  '4 panels, each 60 × 110 cm',
  'H. 120 cm ; L. 90 cm ; P. 4 cm (sans cadre)',
  '5\'4 1/2" x 3\'4"',
  'Blatt 50 x 70 cm, gerahmt 60 x 80 cm, Ø 3 cm',
  '120 (H) x 90 (W) x 4 (D) cm, 22 lbs 8 oz',
]

const options: fc.Arbitrary<ReadOptions> = fc.record(
  {
    defaultUnit: fc.constantFrom('mm', 'cm', 'm', 'in', 'ft'),
    language: fc.constantFrom('en', 'fr', 'de'),
    imageAspect: fc.oneof(fc.double(), fc.double({ min: 0.2, max: 5, noNaN: true })),
    neighboursUnit: fc.constantFrom('mm', 'cm', 'm', 'in', 'ft'),
  },
  { requiredKeys: [] },
)

/** A valid statement with pieces of it cut, doubled, swapped or replaced. */
const mutated = fc
  .tuple(
    fc.constantFrom(...VALID),
    fc.constantFrom(...VALID),
    fc.array(
      fc.tuple(
        fc.nat(80),
        fc.nat(12),
        fc.oneof(
          fc.string({ unit: 'binary', maxLength: 4 }),
          fc.constantFrom('(', ')', 'x', '/', '-', '1/', ' ', '\n', 'cm', 'kg', 'H', ''),
        ),
      ),
      {
        maxLength: 6,
      },
    ),
  )
  .map(([first, second, edits]) =>
    edits.reduce((text, [at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut), `${first} ${second}`),
  )

const pieces = fc.constantFrom(
  '12',
  '1/2',
  '½',
  ' ',
  'x',
  '(',
  ')',
  'H',
  'B',
  'L',
  'cm',
  'in',
  "'",
  '"',
  ',',
  ';',
  '\n',
  '-',
  'framed',
  'each',
  'kg',
  'Ø',
  'h x w',
  'ca.',
  '2-Jan',
  '.',
  ':',
  '4 panels',
  '/',
)

test('any text gives plain data: sizes are more than nothing, questions are sentences, indexes exist', () => {
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 200 }),
    mutated,
    fc.array(pieces, { maxLength: 40 }).map(all => all.join('')),
  )
  fc.assert(
    fc.property(text, options, (statement, given) => {
      const read = readDimensions(statement, given)
      expect(JSON.parse(JSON.stringify(read))).toEqual(read)
      expect(statementSchema.parse(read)).toEqual(read)
      expect(read.parts.length + read.questions.length).toBeGreaterThan(0)
      for (const part of read.parts) {
        for (const value of [part.height, part.width, part.depth, part.diameter]) {
          if (value !== undefined) expect(value > 0 && value <= 1e5).toBe(true)
        }
        expect(statement).toContain(part.raw)
      }
      for (const question of read.questions) {
        expect(question.text.length).toBeGreaterThan(10)
        if (question.index !== undefined) expect(read.parts[question.index]).toBeDefined()
        for (const option of question.options) expect(option.label).not.toBe('')
      }
      if (read.hanging) expect(read.parts[read.hanging.index]?.part).toBe(read.hanging.part)
      for (const finding of checkStatement(read, given.imageAspect))
        expect(Object.values(finding.figures).every(Number.isFinite)).toBe(true)
    }),
    { numRuns: 4000 },
  )
})

test.each([
  '1',
  '1 ',
  '1 111',
  '/',
  '1/',
  '(',
  'H 1',
  '1 H ',
  'x',
  '-',
  '1-',
  '.',
  "1'",
  'a',
  'é ',
  'each ',
  '0',
  '1x',
  '½',
  '\n',
  'L 1 B ',
  '(1',
  '[(',
  '.,',
])('2,000 characters of %j are read in a bounded time', unit => {
  const text = unit.repeat(2000).slice(0, 2000)
  const start = performance.now()
  readDimensions(text)
  expect(performance.now() - start).toBeLessThan(500)
})

test('what is printed is read back: every unit, to 1/32 in', () => {
  const size = fc.integer({ min: 32, max: 32 * 300 })
  fc.assert(
    fc.property(size, size, fc.constantFrom('in', 'ft-in', 'cm', 'mm', 'm'), (high, wide, unit) => {
      const imperial = unit === 'in' || unit === 'ft-in'
      const [height, width] = [high, wide].map(count => (imperial ? (count * 127) / 160 : count))
      if (height === undefined || width === undefined) return
      const print = (mm: number) => formatLength(mm, { unit, fraction: 32, decimals: 4 })
      const read = readDimensions(`${print(height)} × ${print(width)}`)
      expect(read.questions).toEqual([])
      expect(read.parts).toMatchObject([{ height, width }])
    }),
    { numRuns: 1000 },
  )
})
