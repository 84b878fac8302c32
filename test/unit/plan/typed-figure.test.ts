/** Figures of a wall's dimension strings: which one is pressed, and what typing it anew changes. Sums by hand. */
import { describe, expect, test } from 'vitest'
import type { PlanWallRow } from '../../../src/contract/areas/plan.ts'
import { figureAt, stringsOf } from '../../../src/plan/dimension-strings.ts'
import { figureChange, figureName } from '../../../src/plan/typed-figure.ts'

function opening(id: string, x: number, width: number): PlanWallRow['openings'][number] {
  const rest = { y: 0, height: 2100, swing: '', depth: null, leadsTo: null, other: null }
  return { id, kind: 'door', label: '', x, width, ...rest }
}

const wall: PlanWallRow = {
  id: 'w',
  face: 'f',
  name: 'north wall',
  length: 9000,
  height: 4000,
  angle: 90,
  wallType: 'drywall',
  thickness: null,
  backs: null,
  from: [0, 0],
  to: [9000, 0],
  openings: [opening('a', 1000, 900), opening('b', 4000, 1200)],
  fixtures: [],
  works: [],
}
const say = (mm: number) => String(mm)

describe('a figure typed anew', () => {
  test('the whole of a wall is its length', () => {
    expect(figureChange(wall, { from: 0, to: 9000 }, 9100)).toEqual({ ok: true, of: 'wall', to: 9100 })
    expect(figureName(wall, { from: 0, to: 9000 })).toBe('length of north wall')
  })

  test('a stretch that is an opening is its width', () => {
    const change = figureChange(wall, { from: 1000, to: 1900 }, 1000)
    expect(change).toEqual({ ok: true, of: 'opening', id: 'a', field: 'width', was: 900, to: 1000 })
  })

  test('before an opening it moves that opening; behind the last it moves the last, from the right end', () => {
    const first = { ok: true, of: 'opening', id: 'a', field: 'x', was: 1000 }
    expect(figureChange(wall, { from: 0, to: 1000 }, 1250)).toEqual({ ...first, to: 1250 })
    // 1000 + 900 + 2000.
    const second = { ok: true, of: 'opening', id: 'b', field: 'x', was: 4000 }
    expect(figureChange(wall, { from: 1900, to: 4000 }, 2000)).toEqual({ ...second, to: 3900 })
    // 9000 − 3000 − 1200.
    expect(figureChange(wall, { from: 5200, to: 9000 }, 3000)).toEqual({ ...second, to: 4800 })
  })

  test('nothing, and what would leave the wall, is refused by name', () => {
    expect(figureChange(wall, { from: 0, to: 9000 }, 0)).toMatchObject({ ok: false })
    const beyond = 'The door would reach beyond the end of north wall.'
    expect(figureChange(wall, { from: 4000, to: 5200 }, 5001)).toEqual({ ok: false, problem: beyond })
    expect(figureChange(wall, { from: 5200, to: 9000 }, 7801)).toEqual({ ok: false, problem: beyond })
    const across = { ...wall, openings: [opening('a', 1000, 900), opening('b', 1500, 900)] }
    expect(figureChange(across, { from: 1500, to: 1900 }, 500)).toMatchObject({ ok: false })
  })
})

describe('the figure under the pointer', () => {
  test('is found in its box, turned as it is read', () => {
    const { texts } = stringsOf([wall], 0.1, say)
    const whole = texts.find(text => text.whole)
    expect(whole).toMatchObject({ from: 0, to: 9000 })
    const [x, y] = whole?.at ?? [0, 0]
    expect(figureAt(texts, [x + 10, y - 4], say)).toBe(whole)
    expect(figureAt(texts, [x + 40, y - 4], say)).toBeNull()
    const upright = stringsOf([{ ...wall, from: [9000, 0], to: [9000, 9000] }], 0.1, say).texts
    const turned = upright.find(text => text.whole)
    const [u, v] = turned?.at ?? [0, 0]
    expect(figureAt(upright, [u, v + 10], say) ?? figureAt(upright, [u, v - 10], say)).toBe(turned)
    expect(figureAt(upright, [u + 40, v], say)).toBeNull()
  })

  test('tells each stretch where it lies', () => {
    const { texts } = stringsOf([wall], 0.1, say)
    expect(texts.filter(text => !text.whole).map(({ from, to }) => [from, to])).toEqual([
      [0, 1000],
      [1000, 1900],
      [1900, 4000],
      [4000, 5200],
      [5200, 9000],
    ])
  })
})
