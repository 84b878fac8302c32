/** Dragging, lining up, spreading out, bays, chains: pure functions of where things stood. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { right } from '../../../src/geometry/rect.ts'
import { align, distribute } from '../../../src/layout/align.ts'
import { baysOf } from '../../../src/layout/bays.ts'
import { wallChain } from '../../../src/layout/chains.ts'
import { carriedBy, snap } from '../../../src/layout/snap.ts'

const rect = fc.record({
  x: fc.integer({ min: 0, max: 8000 }),
  y: fc.integer({ min: 500, max: 1800 }),
  width: fc.integer({ min: 100, max: 1200 }),
  height: fc.integer({ min: 100, max: 1200 }),
})
const others = fc.array(rect, { maxLength: 12 }).map(rects => rects.map((each, i) => ({ ...each, id: `o${i}` })))

describe('snapping', () => {
  test('never moves by more than the threshold, and every line it tells is exact', () => {
    fc.assert(
      fc.property(
        rect,
        others,
        fc.integer({ min: -900, max: 900 }),
        fc.integer({ min: -400, max: 400 }),
        fc.integer({ min: 0, max: 60 }),
        (dragged, rest, dx, dy, threshold) => {
          const question = { dragged: [dragged], dx, dy, others: rest, wallLength: 9140, centreLine: 1480, threshold }
          const answer = snap(question)
          expect(Math.abs(answer.dx - dx)).toBeLessThanOrEqual(threshold)
          expect(Math.abs(answer.dy - dy)).toBeLessThanOrEqual(threshold)
          const at = { ...dragged, x: dragged.x + answer.dx, y: dragged.y + answer.dy }
          for (const line of answer.lines) {
            const mine = {
              'wall middle': at.x + at.width / 2,
              'centres along': at.x + at.width / 2,
              lefts: at.x,
              rights: right(at),
              'equal margins': at.x,
              'equal gaps': at.x,
              'same gap': at.x,
              'centre line': at.y + at.height / 2,
              centres: at.y + at.height / 2,
              tops: at.y + at.height,
              bottoms: at.y,
            }[line.kind]
            expect(mine).toBeCloseTo(line.at, 5)
            for (const stretch of line.stretches)
              expect(stretch.to - stretch.from).toBeCloseTo(line.gap ?? Number.NaN, 5)
          }
          // From where it has snapped to, it stays: nothing creeps.
          const again = snap({ ...question, dx: answer.dx, dy: answer.dy })
          if (answer.snappedX && answer.snappedY)
            expect([again.dx, again.dy]).toEqual([expect.closeTo(answer.dx, 5), expect.closeTo(answer.dy, 5)])
        },
      ),
      { numRuns: 300 },
    )
  })

  const wall = { wallLength: 5000, centreLine: 1480, threshold: 12 }
  const a = { id: 'a', x: 500, y: 1280, width: 400, height: 400 }
  const b = { id: 'b', x: 2500, y: 1230, width: 500, height: 500 }
  const dragged = { x: 4000, y: 1000, width: 600, height: 300 }

  test('between two neighbours: equal gaps, on the centre line', () => {
    const answer = snap({ ...wall, dragged: [dragged], others: [a, b], dx: -2594, dy: 335 })
    expect([answer.dx, answer.dy]).toEqual([-2600, 330])
    expect(answer.lines.map(line => [line.kind, line.gap])).toEqual([
      ['equal gaps', 500],
      ['centre line', null],
      ['centres', null],
      ['centres', null],
    ])
  })

  // A floor that rises 300 in 6 000: 150 under x 3 000, so the line is 1 480 + 150 there.
  test('along a ramp the line is as high above the floor where the work is', () => {
    const ramp = [
      [0, 0],
      [6000, 300],
    ] as const
    const own = { x: 2700, y: 1440, width: 600, height: 400 }
    const asked = { wallLength: 6000, centreLine: 1480, ramp, threshold: 12, dragged: [own], dx: 0, dy: 0 }
    const answer = snap({ ...asked, others: [] })
    expect([answer.dx, answer.dy]).toEqual([0, -10])
    expect(answer.lines.map(line => [line.kind, line.at])).toEqual([
      ['wall middle', 3000],
      ['centre line', 1630],
    ])
    // Its neighbour's middle is over 4 000, on a floor 50 higher: a bottom at 1 485 there is 1 435 here.
    const beside = { id: 'o', x: 3900, y: 1485, width: 200, height: 700 }
    const bottoms = snap({ ...asked, centreLine: null, others: [beside] }).lines.find(line => line.kind === 'bottoms')
    expect(bottoms?.at).toBe(1435)
    // Drawn to the middle of the wall from 8 beside it, it comes to the line there, not to that of where it was.
    const drawn = snap({ ...asked, others: [], dx: -8, dy: -8 })
    expect(drawn.dx).toBe(0)
    expect(own.y + drawn.dy + 200).toBe(1630)
  })

  // The same floor: from x 1 000 to x 4 000 it rises 150, so a work on the line stays on it without the hand rising.
  test('along a ramp a hand that goes level carries works as high above the floor as they were', () => {
    const ramp = [
      [0, 0],
      [6000, 300],
    ] as const
    const own = { x: 700, y: 1330, width: 600, height: 400 }
    const answer = snap({
      wallLength: 6000,
      centreLine: 1480,
      ramp,
      threshold: 5,
      dragged: [own],
      dx: 3000,
      dy: 0,
      others: [],
    })
    expect([answer.dx, answer.dy]).toEqual([3000, 0])
    expect(answer.lines.map(line => [line.kind, line.at])).toEqual([['centre line', 1680]])
    expect(carriedBy(own, 3000, 0, ramp)).toEqual({ x: 3700, y: 1480, width: 600, height: 400 })
    // Two beside each other climb each with its own floor: to the knee of this one only the first does.
    const knee = [
      [0, 0],
      [2000, 100],
    ] as const
    const [first, second] = [own, { ...own, x: 1700 }].map(rect => carriedBy(rect, 1000, 0, knee).y)
    expect([first, second]).toEqual([1380, 1330])
  })

  test('beside a neighbour: the gap beyond it again', () => {
    const c = { id: 'c', x: 1200, y: 1280, width: 300, height: 400 }
    const answer = snap({ ...wall, dragged: [dragged], others: [a, c], dx: -2205, dy: 330 })
    expect(answer.dx).toBe(-2200)
    expect(answer.lines.find(line => line.kind === 'same gap')).toMatchObject({ gap: 300, ids: ['a', 'c'] })
  })

  test('equal margins at both ends, and the middle of the wall', () => {
    const answer = snap({ ...wall, dragged: [dragged], others: [a], dx: -95, dy: 0 })
    expect(answer.dx).toBe(-100)
    expect(answer.lines.find(line => line.kind === 'equal margins')?.gap).toBe(500)
    const middle = snap({ ...wall, dragged: [dragged], others: [], dx: -1805, dy: 0 })
    expect(middle.dx).toBe(-1800)
    expect(middle.lines.map(line => line.kind)).toEqual(['wall middle'])
  })

  test('no threshold, no snapping; nothing dragged, nothing done', () => {
    expect(snap({ ...wall, threshold: 0, dragged: [dragged], others: [a, b], dx: -2594, dy: 335 })).toMatchObject({
      dx: -2594,
      dy: 335,
    })
    expect(snap({ ...wall, dragged: [], others: [a], dx: 3, dy: 4 })).toMatchObject({ dx: 3, dy: 4, lines: [] })
  })
})

describe('lining up and spreading out', () => {
  const works = [
    { id: 'a', x: 0, y: 1000, width: 400, height: 600, held: false },
    { id: 'b', x: 700, y: 1200, width: 200, height: 300, held: false },
    { id: 'c', x: 2000, y: 900, width: 300, height: 900, held: false },
  ]

  test('each edge and middle', () => {
    const ys = (to: Parameters<typeof align>[1]) => align(works, to).map(place => place.y)
    const xs = (to: Parameters<typeof align>[1]) => align(works, to).map(place => place.x)
    expect(ys('tops')).toEqual([1200, 1500, 900])
    expect(ys('bottoms')).toEqual([900, 900, 900])
    expect(ys('middles')).toEqual([1050, 1200, 900])
    expect(xs('lefts')).toEqual([0, 0, 0])
    expect(xs('rights')).toEqual([1900, 2100, 2000])
    expect(xs('centres along')).toEqual([950, 1050, 1000])
  })

  test('a held work stays and the others come to it', () => {
    const held = works.map(work => ({ ...work, held: work.id === 'b' }))
    expect(align(held, 'tops').map(place => place.y)).toEqual([900, 1200, 600])
  })

  test('equal gaps and equal centres between the outermost', () => {
    expect(distribute(works, 'gaps').map(place => place.x)).toEqual([0, 1100, 2000])
    expect(distribute(works, 'centres').map(place => place.x)).toEqual([0, 1075, 2000])
  })

  test('held works divide the spread and never move; order is kept', () => {
    const many = fc.array(fc.tuple(rect, fc.boolean()), { minLength: 1, maxLength: 10 })
    fc.assert(
      fc.property(many, fc.constantFrom('gaps', 'centres' as const), (list, by) => {
        const all = list.map(([each, held], i) => ({ ...each, held, id: `w${i}` }))
        const placed = distribute(all, by)
        expect(placed.map(place => place.id)).toEqual(all.map(work => work.id))
        all.forEach((work, i) => {
          if (work.held) expect(placed[i]?.x).toBe(work.x)
          expect(placed[i]?.y).toBe(work.y)
        })
        const again = distribute(
          all.map((work, i) => ({ ...work, x: placed[i]?.x ?? 0 })),
          'centres',
        )
        for (const [i, place] of again.entries()) {
          if (by === 'centres') expect(place.x).toBeCloseTo(placed[i]?.x ?? Number.NaN, 5)
        }
      }),
    )
  })
})

describe('bays and chains', () => {
  const item = { kind: 'thermostat', label: '', reason: '', id: 't' }
  test('openings and margins cut the wall, where they reach into the band', () => {
    const wall = {
      length: 9000,
      openings: [{ id: 'd', kind: 'door', label: 'north door', x: 5000, y: 0, width: 1000, height: 2100 }],
      keepClears: [{ ...item, x: 2000, y: 1400, width: 120, height: 120, margin: 150 }],
    }
    expect(baysOf(wall, { bottom: 1000, top: 2000 })).toEqual([
      { from: 0, to: 1850, length: 1850, leftOf: 'end', rightOf: 'thermostat' },
      { from: 2270, to: 5000, length: 2730, leftOf: 'thermostat', rightOf: 'north door' },
      { from: 6000, to: 9000, length: 3000, leftOf: 'north door', rightOf: 'end' },
    ])
    expect(baysOf(wall, { bottom: 2200, top: 3000 })).toHaveLength(1)
    expect(baysOf(wall, { bottom: 1000, top: 2000 }, 2000).map(bay => bay.from)).toEqual([2270, 6000])
  })

  test('a printed chain adds up to the wall in each unit, and only gaps differ from what they are', () => {
    const row = fc.array(
      fc.tuple(fc.double({ min: 0, max: 900, noNaN: true }), fc.double({ min: 50, max: 900, noNaN: true })),
      { maxLength: 10 },
    )
    fc.assert(
      fc.property(
        row,
        fc.double({ min: 0, max: 900, noNaN: true }),
        fc.constantFrom(8, 16, 32 as const),
        (list, rest, fraction) => {
          let x = 0
          const works = list.map(([gap, width], i) => {
            const left = x + gap
            x = left + width
            return { id: `w${i}`, left, width }
          })
          const chain = wallChain(x + rest, works, { mm: 1, fraction })
          for (const unit of ['mm', 'inches'] as const) {
            expect(chain.pieces.reduce((sum, piece) => sum + piece.printed.size[unit], 0)).toBe(chain.length[unit])
            const step = unit === 'mm' ? 1 : 1 / fraction
            const size = unit === 'mm' ? 1 : 25.4
            for (const piece of chain.pieces) {
              const error = Math.abs(piece.printed.size[unit] - (piece.to - piece.from) / size)
              expect(error).toBeLessThanOrEqual((piece.kind === 'work' ? 0.5 : 1.5) * step + 1e-6)
            }
          }
          expect(chain.running.map(each => each.id)).toEqual(works.map(work => work.id))
        },
      ),
    )
  })
})
