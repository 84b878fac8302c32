/** Room for tools: what of the wall they need, what takes it, and the order that follows. Figures by hand. */
import { describe, expect, test } from 'vitest'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { orderOfWall, orderSaid } from '../../../src/crew/order-of-wall.ts'
import { faceFindings } from '../../../src/model/face-findings.ts'
import { marksOfFace } from '../../../src/model/marks-of-face.ts'
import { wallWith, work } from '../model/sample-wall.ts'

const style = { unit: 'mm', steps: { mm: 1, fraction: 16 } } as const
const size = (width: number, height: number) =>
  ({ height, width, depth: 40, diameter: null, part: 'framed', kind: 'measured', at: '' }) as const

/** 600 × 800 at x 2 000, its lock 20 above the lower edge in the middle, the tool 140 long: 120 reach out below. */
function locked(id: string, more: Partial<PlacedWork> = {}, data: Record<string, unknown> = {}): PlacedWork {
  return {
    ...work,
    placement: id,
    work: `w${id}`,
    running: id,
    x: 2000,
    centreY: 1900,
    rule: 'hand',
    y: 1900,
    size: size(600, 800),
    back: {
      method: 'security-hangers',
      seenFrom: 'front',
      data: {
        left: { drop: 40, inset: 60 },
        right: { drop: 40, inset: 60 },
        lock: { up: 20 },
        head: 'upright',
        tool: 'hex-key',
        toolFrom: 'below',
        toolLength: 140,
        ...data,
      },
    },
    ...more,
  }
}

function neighbour(id: string, x: number, centreY: number, more: Partial<PlacedWork> = {}): PlacedWork {
  return {
    ...work,
    placement: id,
    work: `w${id}`,
    running: id,
    x,
    centreY,
    rule: 'hand',
    y: centreY,
    size: size(500, 400),
    ...more,
  }
}

function on(works: readonly PlacedWork[], changes: Partial<Elevation['wall']> = {}): Elevation {
  const elevation = wallWith([...works])
  return { ...elevation, wall: { ...elevation.wall, length: 6000, openings: [], keepClears: [], ...changes } }
}

const tools = (elevation: Elevation) => faceFindings(elevation).filter(({ code }) => code.startsWith('tool-room'))

describe('a lock turned from below', () => {
  // It ends at 1 500; the other is from 1 040 to 1 440, so 60 are free of the 120 that the tool needs.
  test('a work hung close below takes the tool’s room, with what is short and the way out', () => {
    const [found, ...others] = tools(on([locked('1'), neighbour('2', 2000, 1240)]))
    expect(others).toEqual([])
    expect(found).toMatchObject({
      severity: 'settle',
      code: 'tool-room-taken',
      subject: { id: '1' },
      figures: { with: '2', room: 120, free: 60, short: 60, mutual: false },
    })
    expect(found?.text).toBe(
      'The tool for the lock of 1 needs 120 mm below it and 2 leaves 60 mm: hang 1 first and lock it, or move 2 60 mm down.',
    )
  })

  test('a work beside the hand leaves it free: the hand is 100 wide, 1 950 to 2 050', () => {
    expect(tools(on([locked('1'), neighbour('2', 1700, 1240)]))).toEqual([])
    expect(tools(on([locked('1'), neighbour('2', 1701, 1240)]))).toHaveLength(1)
  })

  test('with 120 free nothing is said', () => {
    expect(tools(on([locked('1'), neighbour('2', 2000, 1180)]))).toEqual([])
  })

  test('nobody measured the tool: the house’s 300 count, and so do the floor and a thing on the wall', () => {
    const low = { centreY: 600, y: 600 }
    const [floor] = tools(on([locked('1', low, { toolLength: null })]))
    expect(floor).toMatchObject({ code: 'tool-room-short', figures: { end: 'floor', room: 300, free: 200 } })
    const thing = {
      id: 'k',
      kind: 'outlet' as const,
      label: '',
      x: 1960,
      y: 1300,
      width: 80,
      height: 80,
      margin: 0,
      reason: '',
      depth: null,
      reachable: false,
    }
    const [barred] = tools(on([locked('1', {}, { toolLength: null })], { keepClears: [thing] }))
    expect(barred).toMatchObject({ code: 'tool-room-barred', figures: { keepClear: 'k', room: 300, free: 120 } })
  })
})

describe('at the sides', () => {
  // Both 600 wide with their edges 50 apart; each tool reaches 160 − 300 < 0 in: measured from the edge 100 in, 60 out.
  test('two that bar each other cannot hang so', () => {
    const side = (from: 'left' | 'right') => ({ toolFrom: from, toolLength: 160, lock: { up: 20, [from]: 100 } })
    const left = locked('1', { x: 2000 }, side('right'))
    const right = locked('2', { x: 2650 }, side('left'))
    const found = tools(on([left, right]))
    expect(found.map(({ severity, figures }) => [severity, figures.free, figures.short, figures.mutual])).toEqual([
      ['stop', 50, 10, true],
      ['stop', 50, 10, true],
    ])
    const order = orderOfWall(on([left, right]), marksOfFace(on([left, right]), style))
    expect(order.against).toHaveLength(1)
  })

  // The plate's hole is 20 outside the edge at 2 300; a neighbour from 2 340 on is 20 from it, 25 are wanted.
  test('a screw beside the frame needs the driver’s room', () => {
    const data = { carry: { by: 'ledge' }, right: { lower: { out: 20, up: 100 } } }
    const plated = locked('1', { back: { method: 'strap-plates', seenFrom: 'front', data } })
    const [found] = tools(on([plated, neighbour('2', 2590, 1600)]))
    expect(found).toMatchObject({ code: 'tool-room-taken', figures: { from: 'round', room: 25, free: 20, short: 5 } })
  })
})

describe('the order in which a stack hangs', () => {
  test('is told for what hangs above each other, with the reason that must be kept', () => {
    const elevation = on([neighbour('2', 2000, 1240), locked('1'), neighbour('3', 4000, 1500)])
    const order = orderOfWall(elevation, marksOfFace(elevation, style))
    expect(order.order.indexOf('1')).toBeLessThan(order.order.indexOf('2'))
    expect(orderSaid(order, elevation.works, mm => `${mm} mm`)).toEqual([
      'Hang in this order: 1, 2.',
      '1 before 2: the tool of its lock needs the 60 mm between them.',
    ])
    expect(orderSaid(order, elevation.works, mm => `${mm} mm`, new Set(['3']))).toEqual([])
  })
})
