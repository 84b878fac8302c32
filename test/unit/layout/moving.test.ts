/** While works move, what is said of them is what the check of the whole wall says once they stand there. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { moved } from '../../../src/geometry/rect.ts'
import { wallFindings } from '../../../src/layout/findings.ts'
import { concerns, findingsOfMoved, findingsThatStand } from '../../../src/layout/moving.ts'
import { plainWall } from '../hang/sample.ts'

const rules = { minimumGap: 75, minimumMargin: 150, liftOn: 25 }
const wall = {
  ...plainWall,
  length: 6000,
  height: 3000,
  skirting: 90,
  openings: [{ id: 'door', kind: 'door' as const, label: '', x: 2600, y: 0, width: 900, height: 2100 }],
  keepClears: [
    { id: 'vent', kind: 'vent', label: 'vent', x: 4300, y: 1200, width: 300, height: 300, margin: 200, reason: '' },
    { id: 'box', kind: 'switch', label: '', x: 900, y: 1000, width: 90, height: 90, margin: 60, reason: '' },
  ],
}
const works = fc
  .array(
    fc.record({
      x: fc.integer({ min: -200, max: 5900 }),
      y: fc.integer({ min: -50, max: 2600 }),
      width: fc.integer({ min: 100, max: 1500 }),
      height: fc.integer({ min: 100, max: 1500 }),
    }),
    { minLength: 1, maxLength: 10 },
  )
  .map(rects => rects.map((rect, at) => ({ ...rect, id: `w${at}`, name: `${at + 1}` })))

test('the same sentences and figures as the whole check, for any works and any move', () => {
  let met = 0
  fc.assert(
    fc.property(
      works,
      fc.array(fc.nat(9), { minLength: 1, maxLength: 4 }),
      fc.integer({ min: -3000, max: 3000 }),
      fc.integer({ min: -900, max: 900 }),
      (before, picked, dx, dy) => {
        const ids = new Set(picked.map(at => `w${at % before.length}`))
        const after = before.map(work => (ids.has(work.id) ? { ...work, ...moved(work, dx, dy) } : work))
        const stand = findingsThatStand(wallFindings(wall, before, rules), ids)
        const now = [...stand, ...findingsOfMoved(wall, after, ids, rules, 'mm')]
        const mine = now.filter(found => concerns(found, ids)).map(found => found.text)
        const whole = wallFindings(wall, after, rules).filter(found => concerns(found, ids))
        expect([...mine].sort()).toEqual(whole.map(found => found.text).sort())
        met += whole.length
      },
    ),
    { numRuns: 400 },
  )
  expect(met).toBeGreaterThan(400)
})

test('what is said of works that stay is not asked again', () => {
  const at = (id: string, x: number) => ({ id, name: id, x, y: 1000, width: 600, height: 800 })
  const resting = wallFindings(
    { ...plainWall, length: 6000, height: 3000 },
    [at('a', 500), at('b', 1070), at('c', 4000)],
    rules,
  )
  expect(findingsThatStand(resting, new Set(['c']))).toEqual(resting)
  expect(findingsThatStand(resting, new Set(['a']))).toEqual([])
})
