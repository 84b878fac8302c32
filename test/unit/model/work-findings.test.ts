/** What one work's records leave to settle, in the reader's unit. Expected figures by the exact inch of 25.4 mm. */
import { expect, test } from 'vitest'
import type { SizeFact } from '../../../src/model/in-force.ts'
import { type Reader, workFindings } from '../../../src/model/work-findings.ts'

const inMm: Reader = { unit: 'mm', steps: { mm: 1, fraction: 16 } }
const inInches: Reader = { unit: 'in', steps: { mm: 1, fraction: 16 } }

function size(kind: SizeFact['kind'], part: string, height: number | null, width: number | null): SizeFact {
  return {
    part,
    kind,
    height,
    width,
    depth: null,
    diameter: null,
    at: `2031-03-0${kind === 'listed' ? 1 : 2}T08:00:00.000Z`,
    chosen: false,
  }
}

const widened = [size('listed', 'framed', 640, 900), size('measured', 'framed', 641, 952)]

test('a wider frame is told in the unit of whoever reads, its figure in millimetres either way', () => {
  const [mm] = workFindings('w1', widened, 3, inMm)
  const [inches] = workFindings('w1', widened, 3, inInches)
  expect(mm?.text).toBe('Measured 52 mm wider than listed. The measured size hangs; its wall may want a new sheet.')
  // 52 mm are 2.047 in; the nearest sixteenth is 2 1/16 in (52.39 mm), 2 in would be 50.8 mm.
  expect(inches?.text).toContain('Measured 2 1/16 in wider than listed.')
  expect(mm?.figures).toEqual({ width: 52 })
  expect(inches?.figures).toEqual(mm?.figures)
})

test('only what is over the house rule is told, and both where both are', () => {
  expect(workFindings('w1', widened, 52, inMm)).toEqual([])
  const lower = [size('listed', 'framed', 640, 900), size('measured', 'framed', 614.6, 850)]
  const [found] = workFindings('w1', lower, 3, inInches)
  // 25.4 mm are one inch; 50 mm are 31.496 sixteenths, so 1 15/16 in.
  expect(found?.text).toMatch(/^Measured 1 15\/16 in narrower and 1 in lower than listed\./)
  expect(found?.figures).toEqual({ width: -50, height: expect.closeTo(-25.4, 9) })
})

test('no size, and a sight size alone, are told without figures of a frame', () => {
  expect(workFindings('w1', [], 3, inMm).map(found => found.code)).toEqual(['no-size'])
  const [sight] = workFindings('w1', [size('listed', 'sight', 300, 400)], 3, inInches)
  expect([sight?.code, sight?.figures]).toEqual(['sight-only', { height: 300, width: 400 }])
})
