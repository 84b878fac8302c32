/** The view transform, the tape, and notes and figures that never cover each other. */
import { describe, expect, it } from 'vitest'
import { chainFigures, lineLabel, numbersShown } from '../../../src/drawing/labels.ts'
import { headAndWays, placeNotes, unbroken, wrap } from '../../../src/drawing/notes.ts'
import { rulerTicks } from '../../../src/drawing/ruler.ts'
import { fitView, panned, toScreen, toWall, zoomAt } from '../../../src/drawing/view.ts'
import { overlap } from '../../../src/geometry/rect.ts'
import { wallChain } from '../../../src/layout/chains.ts'

const wall = { length: 9140, height: 3450 }
const box = { width: 900, height: 520 }

describe('the view', () => {
  it('shows the whole wall, in proportion', () => {
    const view = fitView(wall, box)
    const low = toScreen(view, { x: 0, y: 0 })
    const high = toScreen(view, { x: wall.length, y: wall.height })
    expect(low.x).toBeGreaterThanOrEqual(0)
    expect(high.x).toBeLessThanOrEqual(box.width)
    expect(high.y).toBeGreaterThanOrEqual(0)
    expect((high.x - low.x) / (low.y - high.y)).toBeCloseTo(wall.length / wall.height, 9)
  })

  it('goes there and back, and zooming keeps the point under the hand', () => {
    const view = fitView(wall, box)
    const hand = { x: 333, y: 222 }
    const before = toWall(view, hand)
    const after = toWall(zoomAt(view, hand, 3), hand)
    expect(after.x).toBeCloseTo(before.x, 9)
    expect(after.y).toBeCloseTo(before.y, 9)
    expect(toScreen(view, before).x).toBeCloseTo(hand.x, 9)
  })

  it('never loses the wall', () => {
    const gone = panned(fitView(wall, box), 1e6, 1e6, wall, box)
    expect(gone.left).toBeLessThan(box.width)
    expect(gone.floor - wall.height * gone.scale).toBeLessThan(box.height)
  })
})

describe('the tape', () => {
  it('is numbered in metres from afar, to scale', () => {
    const view = fitView(wall, box)
    const long = rulerTicks(view, wall.length, box.width, 'mm').filter(tick => tick.label !== '')
    expect(long.map(tick => tick.label)).toEqual(['0 m', '1 m', '2 m', '3 m', '4 m', '5 m', '6 m', '7 m', '8 m', '9 m'])
    expect((long[9]?.x ?? 0) - (long[0]?.x ?? 0)).toBeCloseTo(9000 * view.scale, 6)
  })

  it('is numbered in feet or inches where inches are the unit of the day', () => {
    const view = fitView(wall, box)
    expect(
      rulerTicks(view, wall.length, box.width, 'in').find(tick => tick.label !== '' && tick.x > view.left)?.label,
    ).toBe('3 ft')
    const near = zoomAt(view, { x: view.left, y: 0 }, 40)
    const tick = rulerTicks(near, wall.length, box.width, 'in').find(
      each => each.label === '3 in' || each.label === '1 in',
    )
    expect(tick).toBeDefined()
  })
})

describe('figures and notes', () => {
  it('drops figures rather than laying one over another', () => {
    const works = Array.from({ length: 300 }, (_, index) => ({ id: String(index), left: 10 + index * 30, width: 20 }))
    const view = fitView(wall, box)
    const wanted = wallChain(wall.length, works).pieces.map(piece => ({
      piece,
      text: String(piece.printed.size.mm),
      width: 14,
    }))
    expect(chainFigures(wanted, view, box.width, new Set())).toEqual([])
    const few = chainFigures(wanted, view, box.width, new Set(['150']))
    expect(few.map(figure => figure.piece.printed.size.mm)).toEqual([10, 20, 10])
    for (const [index, figure] of few.entries()) {
      const next = few[index + 1]
      if (next !== undefined) expect(next.middle - figure.middle).toBeGreaterThanOrEqual(14)
    }
  })

  it('places notes clear of works and of each other, or not at all', () => {
    const works = Array.from({ length: 6 }, (_, index) => ({ x: 60 + index * 130, y: 150, width: 90, height: 90 }))
    const wanted = works.map((about, index) => ({ key: String(index), about, width: 200, height: 45 }))
    const field = { x: 0, y: 20, width: 860, height: 330 }
    const placed = placeNotes(wanted, works, field)
    expect(placed.length).toBeGreaterThanOrEqual(4)
    const blocks = placed.map(({ x, y, width, height }) => ({ x, y, width, height }))
    for (const block of blocks) {
      for (const work of works) expect(overlap(block, work)).toBe(false)
      for (const other of blocks) if (other !== block) expect(overlap(block, other)).toBe(false)
    }
  })

  it('keeps numbers, units and fractions in one line', () => {
    const width = (text: string) => text.length
    const lines = wrap(unbroken('It stands 1\u2009044 mm inside, at 70 11/16 in'), 12, width)
    expect(lines.some(line => line.includes('mm') && /\d/.test(line))).toBe(true)
    expect(lines.some(line => line.includes('70\u00a011/16\u00a0in'))).toBe(true)
    expect(headAndWays('4 stands 44 mm inside: move it left, or up.')).toEqual({
      head: '4 stands 44 mm inside',
      ways: 'move it left, or up',
    })
  })

  it('keeps the line’s label off every work', () => {
    const works = [{ x: 500, y: 100, width: 380, height: 200 }]
    const x = lineLabel(200, { width: 80, height: 16 }, works, { x: 0, y: 0, width: 890, height: 400 }, 900)
    expect(overlap({ x, y: 184, width: 80, height: 32 }, works[0] ?? { x: 0, y: 0, width: 0, height: 0 })).toBe(false)
  })

  it('shows a number only where it covers no work and no other number', () => {
    const shown = numbersShown([
      { id: 'upper', rect: { x: 0, y: 0, width: 50, height: 50 }, width: 12 },
      { id: 'lower', rect: { x: 0, y: 55, width: 50, height: 50 }, width: 12 },
    ])
    expect([...shown]).toEqual(['lower'])
  })
})
