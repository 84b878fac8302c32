import { describe, expect, test } from 'vitest'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { defaultHangRules } from '../../../src/hang/rules.ts'
import { defaultLabelRules } from '../../../src/layout/labels.ts'
import { calledOn, faceFindings, rectOf, unsettled } from '../../../src/model/face-findings.ts'

const work: PlacedWork = {
  placement: 'p1',
  entry: 'e1',
  work: 'w1',
  running: '4',
  number: 'L-2044.2',
  title: 'The long tide',
  maker: '',
  dateText: '',
  medium: '',
  size: { height: 1220, width: 960, depth: 60, diameter: null, part: 'framed', kind: 'measured', at: '' },
  mass: 14,
  glazing: '',
  sensitivity: 'high',
  lightLimit: 50,
  picture: null,
  back: {
    method: 'd-rings',
    seenFrom: 'back',
    data: { left: { drop: 210, inset: 60 }, right: { drop: 210, inset: 60 } },
  },
  fixing: {
    id: 'f1',
    name: 'two-nail hook',
    kind: 'hook',
    holeOffset: 14,
    ratedKg: 22.7,
    wallType: 'drywall',
    shank: null,
    length: null,
    head: null,
    bit: '',
    tool: '',
    source: '',
    note: '',
    ratings: [],
  },
  keeper: null,
  lockTool: '',
  hooksApart: null,
  x: 5006,
  rule: 'face',
  y: null,
  centreY: 1480,
  held: false,
  state: 'planned',
  labelSide: '',
  label: { text: '', suggestion: '', width: null, height: null, gap: null },
  note: '',
}

function wallWith(works: readonly PlacedWork[], plannedLux: number | null = null): Elevation {
  return {
    exhibition: 'x',
    exhibitionTitle: '',
    closed: false,
    room: { id: 'r', name: 'Room 2', labelLine: null },
    wall: {
      id: 'wall1',
      face: 'face1',
      name: 'east',
      length: 9140,
      lengthText: '',
      height: 3450,
      heightText: '',
      wallType: 'drywall',
      studFirst: null,
      studSpacing: null,
      backingFrom: null,
      backingTo: null,
      skirting: null,
      datum: null,
      floor: [],
      datumBy: '',
      studs: [],
      joints: [],
      ceiling: [],
      rail: [],
      railKgPerMetre: null,
      behindSeen: '',
      from: [0, 0],
      to: [9140, 0],
      angle: 90,
      openings: [],
      keepClears: [
        { id: 'k', kind: 'thermostat', x: 4300, y: 1400, width: 120, height: 120, margin: 150, label: '', reason: '' },
      ],
    },
    plan: {
      centreLine: 1480,
      centreLineSet: 1480,
      ramp: [],
      centreLineFrom: 'house rule',
      rule: 'centre',
      eyeFraction: 0.5,
      plannedLux,
      visitorOrder: null,
      viewingDistance: null,
      viewers: [],
      colour: '',
      note: '',
    },
    rules: {
      centreLine: 1480,
      minimumGap: 75,
      minimumMargin: 150,
      liftOn: 25,
      sheetStepMm: 1,
      hang: defaultHangRules,
      labels: defaultLabelRules,
    },
    works: [...works],
    made: [],
    layouts: [],
    settled: [],
  }
}

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
