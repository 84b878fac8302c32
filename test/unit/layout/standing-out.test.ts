/** What stands out of a wall further than a work, or less: by hand, mm. A work of 600 × 800 at 1000, 1000, 40 deep. */
import { describe, expect, test } from 'vitest'
import type { KeepClear } from '../../../src/hang/wall.ts'
import { type HungRect, wallFindings } from '../../../src/layout/findings.ts'
import { plainWall } from '../hang/sample.ts'

const rules = { minimumGap: 75, minimumMargin: 150, liftOn: 25 }
const work: HungRect = { id: 'p', name: '7', x: 1000, y: 1000, width: 600, height: 800, depth: 40 }
/** Its left edge so far to the right of the work; level with it. */
const grille = (apart: number, over: Partial<KeepClear> = {}): KeepClear => ({
  ...{ id: 'g', kind: 'grille', x: 1600 + apart, y: 1200, width: 300, height: 200, label: '' },
  ...{ margin: 0, reason: '', depth: 120, ...over },
})
const found = (item: KeepClear, hung = work) =>
  wallFindings({ ...plainWall, length: 6000, height: 3000, keepClears: [item] }, [hung], rules)

describe('a thing beside a work', () => {
  test('that stands out 80 further is 80 away or told, with both depths', () => {
    const [finding, ...more] = found(grille(30))
    expect(more).toEqual([])
    expect(finding).toMatchObject({
      severity: 'settle',
      code: 'beside-deeper',
      subject: { kind: 'placement', id: 'p' },
      figures: { keepClear: 'g', depth: 120, workDepth: 40, apart: 30, want: 80 },
    })
    expect(finding?.text).toBe(
      'The grille 30 mm beside 7 stands out 120 mm, 80 mm further than the work, and hides its edge from the side. Keep 80 mm between them.',
    )
    expect(found(grille(79.9))).toHaveLength(1)
    expect(found(grille(80))).toEqual([])
  })

  test('says nothing where a depth is not known, or the work stands out as far', () => {
    expect(found(grille(30, { depth: null }))).toEqual([])
    expect(found(grille(30), { ...work, depth: null })).toEqual([])
    expect(found(grille(30), { ...work, depth: 120 })).toEqual([])
  })

  test('that must stay reachable is as far away as the work stands out further', () => {
    const deep = { ...work, depth: 180 }
    expect(found(grille(50), deep)).toEqual([])
    const [finding] = found(grille(50, { reachable: true, kind: 'call point' }), deep)
    expect(finding).toMatchObject({ severity: 'settle', code: 'beside-reachable', figures: { apart: 50, want: 60 } })
    expect(finding?.text).toContain('the call point 50 mm beside it, which must stay reachable')
    expect(found(grille(60, { reachable: true }), deep)).toEqual([])
  })
})

test('a work over a thing is told how far that stands out, and how much further than the work', () => {
  const [finding] = found(grille(-100))
  expect(finding).toMatchObject({ code: 'covers-keep-clear', severity: 'stop', figures: { depth: 120, workDepth: 40 } })
  expect(finding?.text).toMatch(/^7 covers the grille, which stands out 120 mm, 80 mm further than the work/)
  // As it was said, and settled, before anybody measured.
  const [plain] = found(grille(-100, { depth: null }))
  expect(plain?.figures).not.toHaveProperty('depth')
  expect(plain?.text).toMatch(/^7 covers the grille[.:]/)
})

test('a work in a niche is told how deep that is', () => {
  const niche = { id: 'n', kind: 'niche', x: 1500, y: 900, width: 500, height: 1200, label: '', depth: 200 }
  const wall = { ...plainWall, length: 6000, height: 3000, openings: [niche] }
  const [finding] = wallFindings(wall, [work], rules)
  expect(finding).toMatchObject({ code: 'in-opening', figures: { by: 100, depth: 200 } })
  expect(finding?.text).toMatch(/^7 stands 100 mm in the niche, which is 200 mm deep\./)
})
