/** A work at the back of a niche: figures by hand, and shifts against every millimetre tried. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { moved } from '../../../src/geometry/rect.ts'
import { nicheOf } from '../../../src/hang/niche.ts'
import { type HungRect, wallFindings } from '../../../src/layout/findings.ts'
import { smallestShift } from '../../../src/layout/shifts.ts'
import { plainWall } from '../hang/sample.ts'

const rules = { minimumGap: 75, minimumMargin: 150, liftOn: 25 }
const niche = { id: 'n', kind: 'niche', label: '', x: 2000, y: 900, width: 1000, height: 1400, depth: 200 }
const wall = { ...plainWall, length: 6000, height: 3000, openings: [niche] }
const work = (x: number, y: number, over: Partial<HungRect> = {}): HungRect => ({
  ...{ id: '7', name: '7', x, y, width: 600, height: 800, depth: 40 },
  ...over,
})
const found = (one: HungRect, changes: Partial<typeof wall> = {}) => wallFindings({ ...wall, ...changes }, [one], rules)

describe('a work in a niche', () => {
  test('wholly within it, with room for a hand, is fine, and its depth is told', () => {
    const all = found(work(2200, 1200))
    expect(all.map(({ severity, code }) => [severity, code])).toEqual([['fits', 'in-niche']])
    expect(all[0]?.text).toBe('7 hangs at the back of the niche, 200 mm deep, and stays 160 mm behind the wall.')
    expect(all[0]?.figures).toEqual({ opening: 'n', depth: 200, workDepth: 40 })
  })
  test('told as it is where it stands out, is flush, or nobody measured', () => {
    const said = (depth: number | null, own: number | null) =>
      found(work(2200, 1200, { depth: own }), { openings: [{ ...niche, depth: depth as number }] })[0]?.text
    expect(said(200, 260)).toContain('200 mm deep, and stands 60 mm out of it.')
    expect(said(200, 200)).toContain('200 mm deep, and is flush with the wall.')
    expect(said(200, null)).toBe('7 hangs at the back of the niche, 200 mm deep.')
    expect(said(null, 40)).toContain('; how deep that is nobody has measured.')
  })
  test('too near to a side, or without room to be lifted, is to settle', () => {
    const [side] = found(work(2030, 1200))
    expect(side).toMatchObject({ severity: 'settle', code: 'near-niche-side', figures: { side: 'left', margin: 30 } })
    expect(side?.text).toBe('7 is 30 mm from the left side of the niche; a hand wants 75 mm, as between two works.')
    const [lift] = found(work(2200, 1490))
    expect(lift).toMatchObject({ severity: 'settle', code: 'no-room-to-lift-on', figures: { free: 10, liftOn: 25 } })
  })
  test('partly over its edge is a stop still, and so is a work over a door', () => {
    for (const [x, y] of [
      [1900, 1200],
      [2500, 1200],
      [2200, 800],
      [2200, 1600],
    ] as const)
      expect(found(work(x, y))[0]).toMatchObject({ severity: 'stop', code: 'in-opening' })
    expect(found(work(2200, 1200), { openings: [{ ...niche, kind: 'window' }] })[0]).toMatchObject({ severity: 'stop' })
  })
  test('an offered shift never takes it over the niche’s edge, and is the least that clears the thing beside it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 1000 }), (at, thing) => {
        const item = {
          ...{ id: 'k', kind: 'grille', label: '', reason: '', margin: 0 },
          x: 2000 + thing,
          y: 1200,
          width: 60,
          height: 60,
        }
        const rect = work(2000 + at, 1150, { height: 1000 })
        const ground = { ...wall, keepClears: [item] }
        const shift = smallestShift(rect, ground, [])
        if (shift !== null) expect(nicheOf(moved(rect, shift.dx, shift.dy), ground)).not.toBeNull()
        // Every millimetre along and up, by hand.
        const clear = (dx: number, dy: number) => {
          const to = moved(rect, dx, dy)
          const inside = to.x >= 2000 && to.x + 600 <= 3000 && to.y >= 900 && to.y + 1000 <= 2300
          const beside = to.x + 600 <= item.x || to.x >= item.x + 60 || to.y + 1000 <= 1200 || to.y >= 1260
          return inside && beside
        }
        let least: number | null = null
        for (let mm = 0; mm <= 1000 && least === null; mm += 1)
          if (clear(mm, 0) || clear(-mm, 0) || clear(0, mm) || clear(0, -mm)) least = mm
        expect(shift === null ? null : Math.abs(shift.dx) + Math.abs(shift.dy)).toBe(least)
      }),
      { numRuns: 200 },
    )
  })
})
