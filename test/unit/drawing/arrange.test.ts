/** Bays, stacks, grids and salon hangs of works that are placed: hand-worked figures, held works, ramps. */
import { describe, expect, test } from 'vitest'
import type { Elevation, PlacedWork } from '../../../src/contract/areas/walls.ts'
import { inGrid, inRow, sized } from '../../../src/drawing/arrange.ts'
import { inSalon } from '../../../src/drawing/arrange-salon.ts'
import { inStacks } from '../../../src/drawing/arrange-stacks.ts'
import { clearDistance } from '../../../src/geometry/rect.ts'
import { baysOf } from '../../../src/layout/bays.ts'
import { wallWith, work } from '../model/sample-wall.ts'

function at(id: string, x: number, width: number, height: number, more: Partial<PlacedWork> = {}): PlacedWork {
  return {
    ...work,
    placement: id,
    work: `w${id}`,
    running: id,
    x,
    size: { height, width, depth: null, diameter: null, part: 'framed', kind: 'measured', at: '' },
    ...more,
  }
}

/** A wall of 6 000 × 3 000 without anything on it. */
function plain(changes: Partial<Elevation['wall']> = {}): Elevation {
  const elevation = wallWith([])
  return {
    ...elevation,
    wall: {
      ...elevation.wall,
      length: 6000,
      height: 3000,
      skirting: null,
      floor: [],
      ceiling: [],
      openings: [],
      keepClears: [],
      ...changes,
    },
  }
}

const ramp: Elevation['plan']['ramp'] = [
  [0, 0],
  [6000, 300],
]
const wish = { each: 2, gap: 100, between: 300, line: 1480, by: 'middle', axis: null, from: 0, to: 6000 } as const

describe('bays', () => {
  // A door from 2 000 to 3 000: 2 000 on its left, 3 000 on its right. Equal gaps: (2000 − 800) / 3 = 400, (3000 − 600) / 2 = 1 200.
  test('each by itself, with what is left over', () => {
    const openings = [{ id: 'o', kind: 'door', label: 'north door', x: 2000, y: 0, width: 1000, height: 2100 }]
    const bays = baysOf({ length: 6000, openings, keepClears: [] }, { bottom: 1200, top: 1800 })
    const works = sized([at('1', 300, 400, 600), at('2', 2100, 400, 600), at('3', 4000, 600, 600)])
    const { spots, leftOver, misfits } = inRow(works, { rule: 'equal' }, bays, 75)
    expect(misfits).toEqual([])
    expect([...spots].map(([id, { x }]) => [id, x])).toEqual([
      ['1', 600],
      ['2', 1400],
      ['3', 4500],
    ])
    expect(leftOver.map(({ works, mm }) => [works, mm])).toEqual([
      [2, 800],
      [1, 2400],
    ])
  })

  test('what does not fit is told by its bay', () => {
    const bays = baysOf(
      {
        length: 6000,
        openings: [{ id: 'o', kind: 'door', label: '', x: 900, y: 0, width: 1000, height: 2100 }],
        keepClears: [],
      },
      { bottom: 1200, top: 1800 },
    )
    const works = sized([at('1', 300, 500, 600), at('2', 600, 600, 600), at('3', 4000, 600, 600)])
    const { spots, misfits } = inRow(works, { rule: 'equal' }, bays, 0)
    expect(spots.size).toBe(0)
    expect(misfits).toMatchObject([{ shortBy: 200, way: 'longer', where: 'left end to door' }])
  })

  test('a held work outside of the stretch has no part in it', () => {
    const works = sized([at('1', 500, 400, 600, { held: true }), at('2', 2500, 400, 600), at('3', 3500, 400, 600)])
    const bay = { from: 2000, to: 4000, length: 2000, leftOf: 'end', rightOf: 'end' }
    const { spots } = inRow(works, { rule: 'equal' }, [bay], 0)
    // (2000 − 800) / 3 = 400.
    expect([...spots].map(([id, { x }]) => [id, x])).toEqual([
      ['2', 2600],
      ['3', 3400],
    ])
  })

  test('along a ramp what goes along climbs with the floor: 300 in 6 000, 50 in 1 000', () => {
    const works = sized([at('1', 1000, 400, 600, { centreY: 1530 })])
    const { spots } = inRow(
      works,
      { rule: 'margins', left: 1000, right: 0 },
      [{ from: 0, to: 6000, length: 6000, leftOf: 'end', rightOf: 'end' }],
      0,
      ramp,
    )
    // Centred between 1 000 and 6 000: 3 500, the floor there 175; it hung 1 480 above the floor and does again.
    expect(spots.get('1')).toEqual({ x: 3500, centreY: 1480 + 175 })
  })
})

describe('stacks', () => {
  // Heights 500 and 300, gap 100: 900 in all, from 1 480 + 450 = 1 930 down to 1 030.
  test('one above the other about the line, on the axis of where they are', () => {
    const pair = sized([at('1', 1000, 400, 500, { centreY: 1800 }), at('2', 3000, 400, 300)])
    const { spots } = inStacks(pair, wish, plain())
    expect(spots.get('1')).toEqual({ x: 2000, centreY: 1930 - 250 })
    expect(spots.get('2')).toEqual({ x: 2000, centreY: 1030 + 150 })
  })

  test('by a common top and a common bottom', () => {
    const pair = sized([at('1', 1000, 400, 500, { centreY: 1800 }), at('2', 1000, 400, 300)])
    expect(inStacks(pair, { ...wish, by: 'top', line: 2000 }, plain()).spots.get('1')?.centreY).toBe(1750)
    expect(inStacks(pair, { ...wish, by: 'bottom', line: 1000 }, plain()).spots.get('2')?.centreY).toBe(1150)
  })

  // Two stacks as wide as 600 and 400 with 300 between: 1 300, from 2 350; axes at 2 650 and 3 450.
  test('pairs in a row, each on the axis of its widest', () => {
    const four = sized([
      at('1', 500, 600, 500, { centreY: 1800 }),
      at('2', 600, 200, 300),
      at('3', 2000, 300, 400, { centreY: 1900 }),
      at('4', 2100, 400, 400),
    ])
    const { spots, misfits } = inStacks(four, wish, plain())
    expect(misfits).toEqual([])
    expect(['1', '2', '3', '4'].map(id => spots.get(id)?.x)).toEqual([2650, 2650, 3450, 3450])
    expect(spots.get('3')?.centreY).toBe(1480 + 450 - 200)
  })

  test('a held work keeps its place and the others stand off it', () => {
    const three = sized([
      at('1', 1000, 400, 300, { centreY: 2200 }),
      at('2', 1500, 500, 600, { centreY: 1600, held: true }),
      at('3', 1200, 400, 300, { centreY: 1000 }),
    ])
    const { spots } = inStacks(three, { ...wish, each: 3 }, plain())
    expect(spots.has('2')).toBe(false)
    // The held one is from 1 300 to 1 900.
    expect(spots.get('1')).toEqual({ x: 1500, centreY: 1900 + 100 + 150 })
    expect(spots.get('3')).toEqual({ x: 1500, centreY: 1300 - 100 - 150 })
  })

  test('two held works on different axes cannot be one stack', () => {
    const two = sized([at('1', 1000, 400, 300, { held: true }), at('2', 1500, 500, 600, { held: true })])
    expect(() => inStacks(two, wish, plain())).toThrow(expect.objectContaining({ code: 'stack-held-apart' }))
  })

  // 1 500 + 1 400 + 100 = 3 000; under a ceiling of 3 000 less 25 to lift on, the room is 2 975.
  test('what is too high says by how much, and what alone would do', () => {
    const pair = sized([at('1', 1000, 400, 1500, { centreY: 1800 }), at('2', 1000, 400, 1400)])
    const { spots, misfits } = inStacks(pair, { ...wish, line: 1500 }, plain())
    expect(spots.size).toBe(0)
    expect(misfits).toMatchObject([{ shortBy: 25, way: 'higher' }])
    // About 1 500 there are 1 475 above: 2 × 1475 − 2900 = 50 of gap.
    expect(misfits[0]?.cures[0]).toEqual({ kind: 'gap', mm: 50 })
  })

  test('along a ramp each stack stands above its own floor', () => {
    const pair = sized([at('1', 3000, 400, 500, { centreY: 1800 }), at('2', 3000, 400, 300)])
    expect(inStacks(pair, wish, plain(), ramp).spots.get('1')?.centreY).toBe(1680 + 150)
  })
})

describe('grids and salon hangs', () => {
  test('what stays has no cell', () => {
    const works = sized([at('1', 500, 400, 400), at('2', 1500, 400, 400, { held: true }), at('3', 2500, 400, 400)])
    const { spots } = inGrid(works, 2, 100, 100, { x: 3000, centreY: 1480 })
    expect([...spots]).toEqual([
      ['1', { x: 2750, centreY: 1480 }],
      ['3', { x: 3250, centreY: 1480 }],
    ])
  })

  test('a salon hang keeps its distance to works that are no part of it, and clear of a door', () => {
    const wall = plain({
      openings: [
        {
          id: 'o',
          kind: 'door',
          label: '',
          x: 2500,
          y: 0,
          width: 900,
          height: 2100,
          swing: '',
          leadsTo: null,
          other: null,
          depth: null,
        },
      ],
    })
    const works = sized([
      at('1', 500, 700, 500),
      at('2', 900, 400, 600),
      at('3', 1500, 500, 300),
      at('4', 1800, 300, 300),
    ])
    const others = [{ x: 4000, y: 1000, width: 500, height: 900 }]
    const asked = { gap: 80, from: 150, to: 5850, bottom: 300, top: 2800, axis: 3700, line: 1600 }
    const { spots, salon } = inSalon(works, asked, wall, others)
    expect(salon.fits).toBe(true)
    const rects = works.map(({ work: { placement }, width, height }) => {
      const spot = spots.get(placement)
      return { x: (spot?.x ?? 0) - width / 2, y: (spot?.centreY ?? 0) - height / 2, width, height }
    })
    for (const rect of rects) {
      for (const other of [...others, ...rects.filter(each => each !== rect)]) {
        expect(clearDistance(rect, other)).toBeGreaterThanOrEqual(80 - 1e-6)
      }
      for (const door of wall.wall.openings) {
        expect(rect.x >= 3400 - 1e-6 || rect.x + rect.width <= 2500 + 1e-6 || rect.y >= door.height - 1e-6).toBe(true)
      }
    }
  })
})
