/** Printed parts of a chain add up to the printed whole, in each unit for itself. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { runningChain } from '../../../src/measure/chain.ts'
import { ONE_MM, SIXTEENTH, type Step, THIRTY_SECOND } from '../../../src/measure/rounding.ts'

test('a wall of six: left edges, widths and the two margins (practice scenario 2, computed by hand)', () => {
  const widths = [480, 710, 540, 960, 480, 1010]
  const lefts = [900, 2012, 3354, 4526, 6118, 7230]
  const chain = runningChain(
    0,
    9140,
    widths.map((size, index) => ({ at: lefts[index] ?? 0, size })),
    ONE_MM,
  )
  expect(chain.pieces.filter(piece => piece.kind === 'gap').map(piece => piece.size.count)).toEqual([
    900, 632, 632, 632, 632, 632, 900,
  ])
  expect(chain.pieces.at(-2)?.to.text).toBe('8\u2009240')
})

test('a gap takes up the rounding of its neighbours: thirds of a wall', () => {
  // 3 × 100 on 1000 with equal gaps of 175: moved by a third, the exact gaps are 175.33, 175.33, 174.33.
  const spans = [175.33, 450.67, 725].map(at => ({ at, size: 100 }))
  const sizes = runningChain(0, 1000, spans, ONE_MM).pieces.map(piece => piece.size.count)
  expect(sizes).toEqual([175, 100, 176, 100, 174, 100, 175])
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBe(1000)
})

test('inches print as fractions', () => {
  const chain = runningChain(0, 2540, [{ at: 622.3, size: 609.6 }], SIXTEENTH)
  expect(chain.pieces.map(piece => piece.size.text)).toEqual(['24 1/2', '24', '51 1/2'])
  expect(chain.whole.text).toBe('100')
})

test('parts add up and every position is rounded once, for any chain and step', () => {
  const span = fc.record({
    at: fc.double({ min: 0, max: 20_000, noNaN: true }),
    size: fc.double({ min: 1, max: 3000, noNaN: true }),
  })
  const steps: readonly Step[] = [ONE_MM, SIXTEENTH, THIRTY_SECOND, { unit: 'mm', size: 0.1 }]
  fc.assert(
    fc.property(
      fc.array(span, { maxLength: 12 }),
      fc.double({ min: 100, max: 30_000, noNaN: true }),
      fc.constantFrom(...steps),
      (spans, length, step) => {
        const chain = runningChain(0, length, spans, step)
        expect(chain.pieces.reduce((sum, piece) => sum + piece.size.count, 0)).toBe(chain.whole.count)
        const half = (step.unit === 'in' ? 25.4 / step.parts : step.size) / 2 + 1e-6
        for (const piece of chain.pieces) {
          if (piece.kind !== 'work') continue
          expect(Math.abs(piece.from.mm - (spans[piece.index]?.at ?? 0))).toBeLessThanOrEqual(half)
          expect(Math.abs(piece.size.mm - (spans[piece.index]?.size ?? 0))).toBeLessThanOrEqual(half)
        }
      },
    ),
  )
})
