/**
 * A closed traverse worked in public, balanced by the compass rule: Purdue University, ASM 215 Surveying, "Traverse
 * calculations" (engineering.purdue.edu/~asm215/topics/travcalc.html). Bearings N 26°10′ E 285.10, S 75°25′ E 610.45,
 * S 15°30′ W 720.48, N 1°42′ W 203.00, N 53°06′ W 647.02; misclosure −0.71 in latitude and +0.53 in departure, 0.89
 * together, 1 in 2 771; balanced coordinates as below. Feet; a unit means nothing to the rule.
 */
import { expect, test } from 'vitest'
import { outlineOf } from '../../../src/model/outline.ts'

const azimuths = [26 + 10 / 60, 104 + 35 / 60, 195 + 30 / 60, 358 + 18 / 60, 306 + 54 / 60]
const lengths = [285.1, 610.45, 720.48, 203, 647.02]
/** North and east of A, which is 10 000, 10 000. */
const balanced = [
  [0, 0],
  [255.96, 125.66],
  [102.44, 716.31],
  [-591.63, 523.62],
  [-388.66, 517.55],
]

test('a published traverse fails to close by 0.89 and is balanced to the published corners', () => {
  const walls = lengths.map((length, at) => {
    const turn = (azimuths[(at + 1) % 5] ?? 0) - (azimuths[at] ?? 0)
    return { length, angle: (((180 - turn) % 360) + 360) % 360 }
  })
  const { corners, gap } = outlineOf(walls, 1)
  // Published of figures that were rounded to 0.01 before.
  expect(Math.abs(gap - 0.89)).toBeLessThan(0.01)
  expect(lengths.reduce((sum, one) => sum + one, 0) / gap / 2771).toBeCloseTo(1, 1)
  const first = ((azimuths[0] ?? 0) * Math.PI) / 180
  for (const [at, [north = 0, east = 0]] of balanced.entries()) {
    const [x, y] = corners[at] ?? [0, 0]
    // The first wall lies along x; its azimuth turns it back. Published to 0.01, each figure rounded by itself.
    expect(Math.abs(x * Math.cos(first) - y * Math.sin(first) - north)).toBeLessThan(0.025)
    expect(Math.abs(x * Math.sin(first) + y * Math.cos(first) - east)).toBeLessThan(0.025)
  }
})
