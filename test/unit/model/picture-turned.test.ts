/** Scenario 1, row 17 of the trade notes: `30 x 40` against an image that is taller than wide. Worked by hand. */
import { expect, test } from 'vitest'
import { defaultSteps } from '../../../src/hang/printing.ts'
import type { SizeFact } from '../../../src/model/in-force.ts'
import { type PictureShape, workFindings } from '../../../src/model/work-findings.ts'

function size(part: string, height: number, width: number): SizeFact {
  return { part, height, width, depth: null, diameter: null, kind: 'listed', at: '2031-03-01', chosen: false }
}

function codes(sizes: readonly SizeFact[], picture?: PictureShape): string[] {
  return workFindings('w', sizes, 3, { unit: 'mm', steps: defaultSteps }, picture).map(({ code }) => code)
}

test('a picture turned against every size is asked about, with both sides named', () => {
  const [finding] = workFindings(
    'w',
    [size('overall', 300, 400)],
    3,
    { unit: 'mm', steps: defaultSteps },
    { width: 900, height: 1200 },
  )
  expect(finding).toMatchObject({ code: 'picture-turned', severity: 'settle', figures: { height: 300, width: 400 } })
  expect(finding?.text).toContain('taller than wide')
})

test.each([
  ['the same way round', [size('overall', 400, 300)], { width: 900, height: 1200 }],
  ['no picture', [size('overall', 300, 400)], undefined],
  ['nearly square', [size('overall', 300, 304)], { width: 900, height: 1200 }],
  ['one part that agrees', [size('framed', 300, 400), size('sheet', 280, 200)], { width: 900, height: 1200 }],
])('nothing is said: %s', (_, sizes, picture) => {
  expect(codes(sizes, picture)).toEqual([])
})
