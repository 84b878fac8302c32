/** The checks of a whole wall: each finding with its subject and figures, and the shift that cures it. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { moved } from '../../../src/geometry/rect.ts'
import type { HungRect } from '../../../src/layout/findings.ts'
import { wallFindings } from '../../../src/layout/findings.ts'
import {
  forbiddenAlong,
  forbiddenUp,
  insideMargin,
  nearestFree,
  smallestGroupShift,
} from '../../../src/layout/shifts.ts'
import { plainWall } from '../hang/sample.ts'

const rules = { minimumGap: 75, minimumMargin: 150, liftOn: 25 }
const wall = { ...plainWall, length: 6000, height: 3000 }

function work(id: string, x: number, y: number, width = 600, height = 800): HungRect {
  return { id, name: id, x, y, width, height }
}

function found(works: readonly HungRect[], changes: Partial<typeof wall> = {}) {
  return wallFindings({ ...wall, ...changes }, works, rules)
}

describe('one finding for one trouble', () => {
  test('a good wall has none', () => expect(found([work('1', 500, 1000), work('2', 1500, 1000)])).toEqual([]))

  test('overlap, with the smaller way out', () => {
    const [overlap] = found([work('1', 500, 1000), work('2', 1070, 1000)])
    expect(overlap).toMatchObject({ severity: 'stop', code: 'overlap', subject: { kind: 'placement', id: '2' } })
    expect(overlap?.text).toBe('1 and 2 overlap by 30 mm.')
    expect(overlap?.figures).toMatchObject({ with: '1', by: 30 })
  })

  test('a small gap is measured from edge to edge, or from corner to corner', () => {
    expect(found([work('1', 500, 1000), work('2', 1160, 1000)])[0]).toMatchObject({
      code: 'gap-small',
      figures: { gap: 60, least: 75 },
    })
    const corner = found([work('1', 500, 1000), work('2', 1130, 1840)])[0]
    expect(corner).toMatchObject({ code: 'gap-small', figures: { gap: 50 } })
    expect(found([work('1', 500, 1000), work('2', 1160, 1860)])).toEqual([])
  })

  test('off the wall, near its end, under the ceiling, over the skirting', () => {
    expect(found([work('1', -20, 1000)])[0]).toMatchObject({
      severity: 'stop',
      code: 'off-wall',
      figures: { side: 'left end', by: 20 },
    })
    expect(found([work('1', 5410, 1000)])[0]).toMatchObject({
      code: 'off-wall',
      figures: { side: 'right end', by: 10 },
    })
    expect(found([work('1', 100, 1000)])[0]).toMatchObject({
      severity: 'settle',
      code: 'near-end',
      figures: { margin: 100 },
    })
    expect(found([work('1', 500, 2190)])[0]).toMatchObject({ code: 'no-room-to-lift-on', figures: { free: 10 } })
    expect(found([work('1', 500, 60)], { skirting: 100 })[0]).toMatchObject({
      code: 'on-skirting',
      figures: { bottom: 60 },
    })
    expect(found([work('1', 500, -5)])[0]).toMatchObject({ code: 'off-wall', figures: { side: 'floor', by: 5 } })
  })

  test('the floor is taken where the work stands', () => {
    const floor = [
      [0, 0],
      [6000, 60],
    ] as const
    expect(found([work('1', 4400, 40)], { floor })[0]).toMatchObject({
      code: 'off-wall',
      figures: { side: 'floor', by: 10 },
    })
  })

  test('a work larger than the wall, and a row longer than it', () => {
    expect(found([work('1', 0, 100, 6100, 800)]).map(each => each.code)).toContain('too-wide')
    expect(found([work('1', 500, 0, 600, 3100)]).map(each => each.code)).toContain('too-high')
    const crowd = [0, 1, 2].map(i => work(`${i}`, i * 1900, 1000, 2200, 500))
    const fit = found(crowd).find(each => each.code === 'does-not-fit')
    expect(fit).toMatchObject({ severity: 'stop', subject: { kind: 'wall' }, figures: { shortBy: 600, works: 3 } })
    // Two rows may be longer together than the wall.
    const rows = [work('1', 200, 500, 3500, 600), work('2', 2000, 1500, 3500, 600)]
    expect(found(rows)).toEqual([])
  })

  test('in an opening, with the shift out of it', () => {
    const openings = [{ id: 'o', kind: 'door', label: 'north door', x: 2000, y: 0, width: 900, height: 2100 }]
    const [finding] = found([work('1', 1450, 1000)], { openings })
    expect(finding).toMatchObject({ severity: 'stop', code: 'in-opening', figures: { by: 50, shiftX: -50, shiftY: 0 } })
    expect(finding?.text).toBe('1 stands 50 mm in the north door. Move it 50 mm left.')
  })

  test('covering a switch is a stop, its margin is to settle', () => {
    const item = {
      id: 'k',
      kind: 'switch',
      label: '',
      x: 1000,
      y: 1100,
      width: 80,
      height: 80,
      margin: 100,
      reason: '',
    }
    expect(found([work('1', 500, 1000)], { keepClears: [item] })[0]).toMatchObject({
      severity: 'stop',
      code: 'covers-keep-clear',
    })
    const near = found([work('1', 370, 1000)], { keepClears: [item] })[0]
    expect(near).toMatchObject({
      severity: 'settle',
      code: 'in-keep-clear',
      figures: { inside: 70, distance: 30, shiftX: -70 },
    })
    expect(near?.text).toBe(
      '1 stands 70 mm inside the switch’s margin: move it 70 mm left, or take a margin of 30 mm with a reason.',
    )
  })

  test('what must stay reachable is said so, and no smaller margin is offered for it', () => {
    const item = {
      id: 'k',
      kind: 'extinguisher',
      label: '',
      x: 700,
      y: 1200,
      width: 80,
      height: 80,
      margin: 100,
      reason: '',
      reachable: true,
    }
    const [covers] = found([work('1', 500, 1000)], { keepClears: [item] })
    expect(covers?.severity).toBe('stop')
    expect(covers?.text).toMatch(/^1 covers the extinguisher, which must stay reachable: move it /)
    const [near] = found([work('1', 70, 1000)], { keepClears: [item] }).filter(({ code }) => code === 'in-keep-clear')
    expect(near?.text).toMatch(/inside the extinguisher’s margin, which must stay reachable: move it /)
    expect(near?.text).not.toContain('with a reason')
  })

  test('a shift into another trouble is not offered', () => {
    const item = {
      id: 'k',
      kind: 'switch',
      label: '',
      x: 1000,
      y: 1100,
      width: 80,
      height: 80,
      margin: 100,
      reason: '',
    }
    const left = work('2', 160, 1000, 190)
    const [near] = found([work('1', 370, 1000, 600), left], { keepClears: [item] }).filter(
      each => each.code === 'in-keep-clear',
    )
    expect(near?.figures.shiftX).not.toBe(-70)
  })
})

describe('shifts', () => {
  const box = fc.record({
    x: fc.integer({ min: 0, max: 3000 }),
    y: fc.integer({ min: 0, max: 2000 }),
    width: fc.integer({ min: 50, max: 900 }),
    height: fc.integer({ min: 50, max: 900 }),
  })
  test('each end of what is forbidden along and up brings the work just to the margin', () => {
    fc.assert(
      fc.property(box, box, fc.integer({ min: 0, max: 300 }), (rect, thing, margin) => {
        const item = { ...thing, id: 'k', kind: 'sign', label: '', margin, reason: '' }
        if (insideMargin(rect, item) <= 0) return
        const shifts = [
          ...forbiddenAlong(rect, item).flatMap(({ from, to }) => [from, to].map(dx => ({ dx, dy: 0 }))),
          ...forbiddenUp(rect, item).flatMap(({ from, to }) => [from, to].map(dy => ({ dx: 0, dy }))),
        ]
        expect(shifts).toHaveLength(4)
        for (const shift of shifts) {
          expect(insideMargin(moved(rect, shift.dx, shift.dy), item)).toBeLessThan(1e-6)
          const less = moved(rect, shift.dx - Math.sign(shift.dx) * 0.01, shift.dy - Math.sign(shift.dy) * 0.01)
          expect(insideMargin(less, item)).toBeGreaterThan(0)
        }
      }),
      { numRuns: 300 },
    )
  })

  test('the nearest free shift: nothing nearer is free', () => {
    const stretch = fc
      .tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: 1, max: 200 }))
      .map(([from, length]) => ({ from, to: from + length }))
    fc.assert(
      fc.property(fc.array(stretch, { maxLength: 8 }), stretches => {
        const isFree = (shift: number) =>
          Math.abs(shift) <= 400 && stretches.every(each => shift <= each.from || shift >= each.to)
        const shifts = Array.from({ length: 801 }, (_, i) => i - 400).filter(isFree)
        const least = Math.min(...shifts.map(Math.abs))
        const found = nearestFree(stretches, -400, 400)
        if (shifts.length === 0) expect(found).toBeNull()
        else expect(Math.abs(found ?? Number.NaN)).toBe(least)
      }),
      { numRuns: 300 },
    )
  })

  test('300 works and 20 conflicts are checked within a frame or two', () => {
    const keepClears = Array.from({ length: 20 }, (_, i) => ({
      id: `k${i}`,
      kind: 'switch',
      label: '',
      x: i * 2000,
      y: 1100,
      width: 80,
      height: 80,
      margin: 100,
      reason: '',
    }))
    const works = Array.from({ length: 300 }, (_, i) => work(`${i}`, 200 + i * 120, 1000 + (i % 3) * 100, 90, 300))
    const long = { ...wall, length: 40_000, keepClears }
    wallFindings(long, works, rules)
    const start = performance.now()
    const count = wallFindings(long, works, rules).length
    expect(count).toBeGreaterThan(20)
    // Measured about 20 ms on two shared cores; the bound only catches a step back to seconds.
    expect(performance.now() - start).toBeLessThan(500)
  })

  test('a group shift leaves no conflict, or there is none', () => {
    const thing = { id: 'k', kind: 'sign', label: '', x: 1000, y: 1100, width: 80, height: 80, margin: 100, reason: '' }
    const works = [work('1', 400, 1000), work('2', 1200, 1000)]
    const shift = smallestGroupShift(works, { ...wall, keepClears: [thing] })
    expect(shift).toBe(780)
    expect(smallestGroupShift(works, { ...wall, length: 2000, keepClears: [thing] })).toBeNull()
  })
})
