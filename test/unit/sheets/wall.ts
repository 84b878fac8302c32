/**
 * Walls for the tests of the sheets. Six works as in the worked scenario “wall of six, D-rings” (invented data,
 * numbers computed by an independent script): wall 9 140, centre 1 480, margins 900.
 */
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { defaultHangRules } from '../../../src/hang/rules.ts'
import { defaultLabelRules } from '../../../src/layout/labels.ts'

interface Given {
  readonly running: string
  readonly title: string
  readonly height: number
  readonly width: number
  readonly drop: number
  readonly inset: number
  readonly left: number
  readonly mass: number | null
}

export const six: readonly Given[] = [
  { running: '1', title: 'Salt pans, evening', height: 620, width: 480, drop: 95, inset: 40, left: 900, mass: 5.5 },
  {
    running: '2',
    title: 'Causeway, second state',
    height: 910,
    width: 710,
    drop: 140,
    inset: 55,
    left: 2012,
    mass: 9.5,
  },
  { running: '3', title: 'Raking, Harrow Point', height: 540, width: 540, drop: 70, inset: 35, left: 3354, mass: 4.2 },
  { running: '4', title: 'The Long Tide', height: 1220, width: 960, drop: 210, inset: 60, left: 4526, mass: 31 },
  { running: '5', title: 'Salt pans, morning', height: 620, width: 480, drop: 95, inset: 40, left: 6118, mass: 5.5 },
  { running: '6', title: 'Tide cloth', height: 760, width: 1010, drop: 130, inset: 50, left: 7230, mass: null },
]

export function placed(given: Given, index: number, more: Partial<PlacedWork> = {}): PlacedWork {
  const { height, width } = given
  return {
    placement: `p${index}`,
    entry: `e${index}`,
    work: `w${index}`,
    running: given.running,
    number: `L-2031.7.${given.running}`,
    title: given.title,
    maker: 'Ines Harrowgate',
    dateText: '1931',
    medium: 'oil on canvas',
    size: { height, width, depth: 60, diameter: null, part: 'framed', kind: 'measured', at: '2031-03-01T09:00:00Z' },
    mass: given.mass,
    glazing: 'none',
    sensitivity: '',
    lightLimit: null,
    picture: null,
    back: {
      method: 'd-rings',
      data: {
        left: { drop: given.drop, inset: given.inset },
        right: { drop: given.drop, inset: given.inset },
      },
      seenFrom: 'front',
    },
    fixing: {
      id: 'f1',
      name: 'nail hook',
      kind: 'hook',
      holeOffset: 14,
      ratedKg: 22.7,
      wallType: 'drywall on ply',
      shank: 2,
      length: 40,
      head: null,
      bit: '',
      tool: '',
      source: 'packet',
      note: '',
      ratings: [],
    },
    keeper: null,
    lockTool: '',
    hooksApart: null,
    x: given.left + width / 2,
    rule: 'face',
    y: null,
    centreY: 1480,
    held: false,
    state: 'planned',
    labelSide: '',
    set: null,
    label: { text: '', suggestion: '', width: null, height: null, gap: null },
    note: '',
    ...more,
  }
}

export function wallOf(works: readonly PlacedWork[], length = 9140, more: Partial<Elevation['wall']> = {}): Elevation {
  return {
    exhibition: 'x1',
    exhibitionTitle: 'Salt and Thread',
    closed: false,
    room: { id: 'r2', name: 'Room 2', labelLine: null },
    wall: {
      id: 'wall1',
      face: 'face1',
      name: 'east wall',
      length,
      lengthText: '',
      height: 3450,
      heightText: '',
      wallType: 'drywall on ply',
      studFirst: null,
      studSpacing: null,
      backingFrom: 1220,
      backingTo: 3660,
      skirting: 100,
      datum: 1480,
      floor: [],
      datumBy: '',
      studs: [],
      joints: [],
      ceiling: [],
      rail: [],
      railKgPerMetre: null,
      behindSeen: '',
      side: 'a',
      exhibition: null,
      thickness: null,
      from: [0, 0],
      to: [length, 0],
      angle: 90,
      openings: [],
      keepClears: [
        {
          id: 'k1',
          kind: 'thermostat',
          x: 4300,
          y: 1400,
          width: 120,
          height: 120,
          margin: 150,
          label: '',
          reason: '',
          depth: null,
          reachable: false,
        },
      ],
      ...more,
    },
    plan: {
      centreLine: 1480,
      centreLineSet: 1480,
      ramp: [],
      centreLineFrom: 'house rule',
      rule: 'centre',
      eyeFraction: 0.5,
      plannedLux: null,
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
      tools: { lockRoom: 300, handRoom: 100, driverRoom: 25 },
      hang: defaultHangRules,
      labels: defaultLabelRules,
      stacks: [],
    },
    works: [...works],
    made: [],
    layouts: [],
    settled: [],
  }
}

/** `count` works in one row with gaps of 200, each a little different, their tops not all alike. */
export function rowOfWorks(count: number): Elevation {
  let at = 400
  const works = Array.from({ length: count }, (_, index) => {
    const width = 300 + ((index * 137) % 400)
    const height = 320 + ((index * 211) % 560)
    const given = {
      running: String(index + 1),
      title: `Study ${index + 1} of a shore, with a title that is long enough to need two lines`,
      height,
      width,
      drop: 60 + (index % 7) * 9.3,
      inset: 31.7,
      left: at + 0.37 * index,
      mass: 3 + (index % 5),
    }
    at += width + 200
    return placed(given, index)
  })
  return wallOf(works, at + 200, { keepClears: [] })
}
