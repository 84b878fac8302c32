/** The back as it was measured, turned to how it is seen from behind; worked by hand. */
import { expect, test } from 'vitest'
import { behindOf } from '../../../../src/record/condition/behind.ts'

const face = { width: 600, height: 400 }
const rings = { left: { inset: 40, drop: 90 }, right: { inset: 60, drop: 90 } }

test('what was measured from behind stands as it was measured, from the front it changes sides', () => {
  const back = { method: 'd-rings', seenFrom: 'back', data: rings } as const
  const behind = behindOf(back, face)
  const xs = (of: typeof behind) => of.rings.map(({ x }) => x).sort((a, b) => a - b)
  expect(xs(behind)).toEqual([40, 540])
  expect(xs(behindOf({ ...back, seenFrom: 'front' }, face))).toEqual([60, 560])
  expect(behind.rings.every(({ y }) => y >= 0 && y <= face.height)).toBe(true)
})
