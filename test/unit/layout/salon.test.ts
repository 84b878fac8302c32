/**
 * Salon hangs against routines of their own: distances from corners and edges counted anew, a raster of the wall, and
 * small hangs that are worked out by hand.
 */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { gapsOf, laySalon } from '../../../src/layout/salon.ts'
import { type SalonQuestion, salonAnswer } from '../../../src/layout/salon-shape.ts'

interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** The clear distance of two rectangles by their corners: nearest point of one to each corner of the other, both ways. */
function apart(a: Box, b: Box): number {
  const corners = ({ x, y, width, height }: Box) => [
    [x, y],
    [x + width, y],
    [x, y + height],
    [x + width, y + height],
  ]
  const toBox = ([px = 0, py = 0]: number[], { x, y, width, height }: Box) => {
    const nearX = Math.min(Math.max(px, x), x + width)
    const nearY = Math.min(Math.max(py, y), y + height)
    return Math.hypot(px - nearX, py - nearY)
  }
  // Edges that cross without a corner inside: a cross of two bars.
  const crosses = a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
  if (crosses) return 0
  return Math.min(...corners(a).map(point => toBox(point, b)), ...corners(b).map(point => toBox(point, a)))
}

const question: fc.Arbitrary<SalonQuestion> = fc
  .record({
    sizes: fc.array(fc.tuple(fc.integer({ min: 120, max: 1100 }), fc.integer({ min: 120, max: 1100 })), {
      minLength: 1,
      maxLength: 14,
    }),
    length: fc.integer({ min: 1500, max: 8000 }),
    gap: fc.integer({ min: 0, max: 150 }),
    held: fc.boolean(),
    at: fc.tuple(fc.integer({ min: 0, max: 1500 }), fc.integer({ min: 300, max: 1800 })),
    thing: fc.option(fc.tuple(fc.integer({ min: 0, max: 6000 }), fc.integer({ min: 300, max: 2500 })), { nil: null }),
  })
  .map(({ sizes, length, gap, held, at, thing }) => ({
    from: 200,
    to: 200 + length,
    bottom: 300,
    top: 3100,
    gap,
    centre: { x: 200 + length / 2, y: 1550 },
    works: sizes.map(([width, height], index) => ({
      id: `w${index}`,
      width,
      height,
      heldAt: held && index === 0 ? { x: at[0], y: at[1] } : null,
    })),
    keeps: thing === null ? [] : [{ x: thing[0], y: thing[1], width: 120, height: 90, margin: 100 }],
  }))

function placed(asked: SalonQuestion, answer: ReturnType<typeof laySalon>): (Box & { id: string; held: boolean })[] {
  return answer.works.map(({ id, x, y }) => {
    const work = asked.works.find(each => each.id === id)
    return { id, x, y, width: work?.width ?? 0, height: work?.height ?? 0, held: (work?.heldAt ?? null) !== null }
  })
}

describe('salon hang', () => {
  test('no pair nearer than asked, all within the stretch, held works untouched, things kept clear of', () => {
    let fitted = 0
    fc.assert(
      fc.property(question, asked => {
        const answer = laySalon(asked)
        expect(salonAnswer.parse(answer)).toEqual(answer)
        if (!answer.fits) {
          expect(answer.shortBy).toBeGreaterThan(0)
          expect(answer.works).toEqual([])
          return
        }
        fitted += 1
        const boxes = placed(asked, answer)
        expect(boxes.map(box => box.id)).toEqual(asked.works.map(work => work.id))
        boxes.forEach((a, index) => {
          const { heldAt } = asked.works[index] ?? {}
          if (heldAt !== null && heldAt !== undefined) {
            expect({ x: a.x, y: a.y }).toEqual(heldAt)
            return
          }
          expect(a.x).toBeGreaterThanOrEqual(asked.from - 1e-5)
          expect(a.x + a.width).toBeLessThanOrEqual(asked.to + 1e-5)
          expect(a.y).toBeGreaterThanOrEqual(asked.bottom - 1e-5)
          expect(a.y + a.height).toBeLessThanOrEqual(asked.top + 1e-5)
          for (const b of boxes) if (b !== a) expect(apart(a, b)).toBeGreaterThanOrEqual(asked.gap - 1e-5)
          for (const keep of asked.keeps ?? []) expect(apart(a, keep)).toBeGreaterThanOrEqual(keep.margin - 1e-5)
        })
        if (answer.nearest !== null) {
          const all = boxes.flatMap((a, i) => boxes.slice(i + 1).map(b => apart(a, b)))
          expect(answer.nearest.gap).toBeCloseTo(Math.min(...all), 6)
        }
      }),
      { numRuns: 120 },
    )
    expect(fitted).toBeGreaterThan(60)
  })

  test('the same works give the same hang', () => {
    fc.assert(
      fc.property(question, asked => {
        expect(laySalon(structuredClone(asked))).toEqual(laySalon(asked))
      }),
      { numRuns: 20 },
    )
  })

  test('no square centimetre belongs to two works of a hang of 25', () => {
    let state = 7
    const random = () => {
      state = (state * 16_807) % 2_147_483_647
      return state / 2_147_483_647
    }
    const works = Array.from({ length: 25 }, (_, index) => ({
      id: `w${index}`,
      width: Math.round(20 + random() ** 2 * 90) * 10,
      height: Math.round(20 + random() ** 2 * 90) * 10,
    }))
    const asked: SalonQuestion = {
      from: 0,
      to: 9000,
      bottom: 300,
      top: 3200,
      works,
      gap: 60,
      centre: { x: 4500, y: 1700 },
    }
    const answer = laySalon(asked)
    expect(answer.fits).toBe(true)
    const taken = new Map<string, string>()
    for (const box of placed(asked, answer)) {
      // Middles of centimetres, so that a shared edge is nobody's.
      for (let x = Math.ceil(box.x / 10); x * 10 + 5 < box.x + box.width; x += 1) {
        for (let y = Math.ceil(box.y / 10); y * 10 + 5 < box.y + box.height; y += 1) {
          const key = `${x} ${y}`
          expect(taken.get(key) ?? box.id).toBe(box.id)
          taken.set(key, box.id)
        }
      }
    }
    // The whole is centred, and the largest work is nearer to the middle than half of the others.
    const { box } = answer
    expect((box?.x ?? 0) + (box?.width ?? 0) / 2).toBeCloseTo(4500, 6)
    expect((box?.y ?? 0) + (box?.height ?? 0) / 2).toBeCloseTo(1700, 6)
    const far = placed(asked, answer)
      .map(each => ({
        area: each.width * each.height,
        off: Math.hypot(each.x + each.width / 2 - 4500, each.y + each.height / 2 - 1700),
      }))
      .sort((a, b) => b.area - a.area)
    const sorted = far.map(each => each.off).sort((a, b) => a - b)
    expect(far[0]?.off).toBeLessThan(sorted[12] ?? 0)
  })

  // By hand: two squares of 400 and a gap of 50 are 850 wide, side by side about 2 000.
  test('two equal squares stand side by side about the middle', () => {
    const works = ['a', 'b'].map(id => ({ id, width: 400, height: 400 }))
    const answer = laySalon({ from: 0, to: 4000, bottom: 0, top: 3000, works, gap: 50, centre: { x: 2000, y: 1500 } })
    expect(answer.box).toEqual({ x: 1575, y: 1300, width: 850, height: 400 })
    expect(answer.nearest).toEqual({ gap: 50, a: 'a', b: 'b' })
    expect(answer.mean).toBe(50)
  })

  // By hand: three of 500 in a row 450 high, gap 50: 1 600; the stretch has 1 500, so 100 are missing, or gaps of 0.
  test('what does not fit says by how much, and what alone would do', () => {
    const works = ['a', 'b', 'c'].map(id => ({ id, width: 500, height: 400 }))
    const asked = { from: 0, to: 1500, bottom: 1000, top: 1450, works, gap: 50, centre: { x: 750, y: 1225 } }
    const answer = laySalon(asked)
    expect(answer).toMatchObject({ fits: false, shortBy: 100, way: 'longer', works: [], nearest: null })
    // 100 lower than its squares: no length helps, and no gap below nothing is offered.
    const low = laySalon({ ...asked, top: asked.bottom + 300, gap: 10.5 })
    expect(low).toMatchObject({ fits: false, shortBy: 100, way: 'higher', cures: [] })
    expect(answer.cures).toEqual([
      { kind: 'gap', mm: 0 },
      { kind: 'leave-out', id: 'a', mm: 500 },
      { kind: 'longer', mm: 100 },
    ])
    expect(laySalon({ ...asked, from: -50, to: 1550 }).fits).toBe(true)
  })

  test('a held work that bars the only place is the one to let go', () => {
    const works = [
      { id: 'a', width: 900, height: 400 },
      { id: 'b', width: 300, height: 300, heldAt: { x: 500, y: 1050 } },
    ]
    const answer = laySalon({ from: 0, to: 1300, bottom: 1000, top: 1450, works, gap: 50, centre: { x: 650, y: 1225 } })
    expect(answer.fits).toBe(false)
    expect(answer.cures).toContainEqual({ kind: 'let-go', id: 'b', mm: 0 })
  })

  test('gaps are told with their pair: 3-4-5 across a corner', () => {
    const hung = [
      { id: 'a', x: 0, y: 0, width: 100, height: 100 },
      { id: 'b', x: 130, y: 140, width: 100, height: 100 },
      { id: 'c', x: 130, y: 330, width: 100, height: 100 },
    ]
    expect(gapsOf(hung)).toEqual({
      nearest: { gap: 50, a: 'a', b: 'b' },
      widest: { gap: 90, a: 'c', b: 'b' },
      mean: (50 + 50 + 90) / 3,
    })
    expect(gapsOf(hung.slice(0, 1))).toEqual({ nearest: null, widest: null, mean: null })
  })

  test('a stretch without extent is refused by its field', () => {
    const works = [{ id: 'a', width: 10, height: 10 }]
    const asked = { from: 0, to: 100, bottom: 50, top: 50, works, gap: 0, centre: { x: 50, y: 50 } }
    expect(() => laySalon(asked)).toThrow(expect.objectContaining({ code: 'span-empty', field: 'top' }))
    expect(() => laySalon({ ...asked, to: 0 })).toThrow(expect.objectContaining({ code: 'span-empty', field: 'to' }))
  })
})
