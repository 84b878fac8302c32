import { describe, expect, test } from 'vitest'
import type { Elevation } from '../../../src/contract/areas/walls.ts'
import { calledOn, faceFindings, unsettled } from '../../../src/model/face-findings.ts'
import { rectOf } from '../../../src/model/hung-rect.ts'
import { wallWith, work } from './sample-wall.ts'

const codes = (elevation: Elevation) => faceFindings(elevation).map(finding => `${finding.severity} ${finding.code}`)

describe('findings of a face', () => {
  test('name the thermostat’s margin with the worked figure of 44 mm', () => {
    // Wall of six, D-rings: D's left edge at 4 526 is 106 from a thermostat that ends at 4 420, margin 150.
    const found = faceFindings(wallWith([work])).find(finding => finding.code === 'in-keep-clear')
    expect(found).toMatchObject({ severity: 'settle', subject: { kind: 'placement', id: 'p1' } })
    expect(found?.text).toContain('44')
  })

  test('stop where the planned light is above the work’s limit, and only there', () => {
    expect(codes(wallWith([work], 200))).toContain('stop light-over-limit')
    expect(codes(wallWith([work], 50))).not.toContain('stop light-over-limit')
    expect(codes(wallWith([{ ...work, lightLimit: null }], 200))).not.toContain('stop light-over-limit')
  })

  test('say what is missing for marks instead of guessing it', () => {
    for (const lacking of [{ size: null }, { back: null }]) {
      expect(codes(wallWith([{ ...work, ...lacking }]))).toContain('settle no-marks')
    }
    expect(codes(wallWith([{ ...work, fixing: null }]))).toContain('settle no-fixing')
    expect(codes(wallWith([work]))).not.toContain('settle no-fixing')
  })

  test('never pass a fixing whose rating nobody knows', () => {
    const unknown = { ...work, fixing: work.fixing && { ...work.fixing, ratedKg: null } }
    const found = faceFindings(wallWith([unknown]))
    expect(found.some(finding => finding.severity === 'fits' && finding.code === 'load-holds')).toBe(false)
    expect(found.some(finding => finding.severity === 'settle' && /rat/.test(finding.code))).toBe(true)
  })
})

test('a settlement lapses when its figures change', () => {
  const [finding] = faceFindings(wallWith([work], 200)).filter(each => each.code === 'light-over-limit')
  if (finding === undefined) throw new Error('the light finding is there')
  const settled = { code: finding.code, subject: finding.subject.id, figures: JSON.stringify(finding.figures) }
  expect(unsettled([finding], [settled])).toEqual([])
  expect(unsettled([{ ...finding, figures: { ...finding.figures, planned: 300 } }], [settled])).toHaveLength(1)
})

test('a work is called by its running number, else its number, else its title', () => {
  expect(calledOn(work)).toBe('4')
  expect(calledOn({ ...work, running: '' })).toBe('L-2044.2')
  expect(calledOn({ ...work, running: '', number: '' })).toBe('The long tide')
})

test('a work’s rectangle stands about its centre', () => {
  expect(rectOf(work)).toMatchObject({ x: 4526, y: 870, width: 960, height: 1220 })
  expect(rectOf({ ...work, size: null })).toBeUndefined()
})
