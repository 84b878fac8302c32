/** What a hand does to a door or a sensor: moved whole, or stretched by the edge or corner that it holds. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { dragged, fixturesOf, type Grip, grips, type Place, samePlace, whole } from '../../../renderer/rooms/fixture.ts'

const wall = { length: 5400, height: 3200 }
const door: Place = { x: 1000, y: 0, width: 900, height: 2100 }
const pane: Place = { x: 2000, y: 900, width: 1100, height: 1400 }
const by = (sides: Partial<Grip>): Grip => ({ ...whole, ...sides })

describe('by its edges', () => {
  test('there are eight points, each once, and none of them is the middle', () => {
    const names = grips.map(grip =>
      Object.entries(grip)
        .flatMap(([side, held]) => (held ? [side] : []))
        .join(' '),
    )
    expect([...names].sort()).toEqual(
      ['bottom', 'left', 'left bottom', 'left top', 'right', 'right bottom', 'right top', 'top'].sort(),
    )
  })

  test.each([
    ['right', by({ right: true }), 120, 50, { ...pane, width: 1220 }],
    ['left', by({ left: true }), 120, 50, { ...pane, x: 2120, width: 980 }],
    ['top', by({ top: true }), 120, 50, { ...pane, height: 1450 }],
    ['bottom', by({ bottom: true }), 120, 50, { ...pane, y: 950, height: 1350 }],
    ['top and right', by({ top: true, right: true }), 120, 50, { ...pane, width: 1220, height: 1450 }],
    ['bottom and left', by({ bottom: true, left: true }), -120, -50, { x: 1880, y: 850, width: 1220, height: 1450 }],
    ['the whole', whole, 120, 50, { ...pane, x: 2120, y: 950 }],
  ] as const)('%s', (_, grip, dx, dy, place) => expect(dragged(pane, grip, dx, dy, wall, 1)).toEqual(place))

  test('it stops at the ends, the floor and the top of the wall', () => {
    expect(dragged(pane, by({ right: true }), 9000, 0, wall, 1)).toEqual({ ...pane, width: 3400 })
    expect(dragged(pane, by({ left: true }), -9000, 0, wall, 1)).toEqual({ ...pane, x: 0, width: 3100 })
    expect(dragged(pane, by({ top: true }), 0, 9000, wall, 1)).toEqual({ ...pane, height: 2300 })
    expect(dragged(pane, by({ bottom: true }), 0, -9000, wall, 1)).toEqual({ ...pane, y: 0, height: 2300 })
    expect(dragged(door, whole, 9000, -50, wall, 1)).toEqual({ ...door, x: 4500 })
  })

  test('it never turns inside out', () => {
    expect(dragged(pane, by({ right: true }), -5000, 0, wall, 1)).toEqual({ ...pane, width: 10 })
    expect(dragged(pane, by({ bottom: true }), 0, 5000, wall, 1)).toEqual({ ...pane, y: 2290, height: 10 })
  })

  test('what lies beyond the wall already is not pulled back by a stretch of its other side', () => {
    const over: Place = { x: 5000, y: 0, width: 900, height: 2100 }
    expect(dragged(over, by({ left: true }), -100, 0, wall, 1)).toEqual({ ...over, x: 4900, width: 1000 })
    expect(dragged(over, by({ top: true }), 0, 40, wall, 1)).toEqual({ ...over, height: 2140 })
  })

  test('the edge that is held comes to whole steps, sixteenths of an inch too', () => {
    const odd: Place = { x: 100.3, y: 0, width: 900.4, height: 2100 }
    expect(dragged(odd, by({ left: true }), 10, 0, wall, 1).x).toBe(110)
    const sixteenth = 25.4 / 16
    const right = dragged(odd, by({ right: true }), 10, 0, wall, sixteenth)
    expect((right.x + right.width) / sixteenth).toBeCloseTo(Math.round((right.x + right.width) / sixteenth), 9)
    expect(dragged(odd, by({ right: true }), 0, 30, wall, 1)).toEqual(odd)
  })

  test('from anywhere by anything, the sides that are not held stay and the rest stays on the wall', () => {
    const place = fc.record({
      x: fc.integer({ min: 0, max: 3000 }),
      y: fc.integer({ min: 0, max: 1500 }),
      width: fc.integer({ min: 10, max: 2400 }),
      height: fc.integer({ min: 10, max: 1700 }),
    })
    const way = fc.integer({ min: -6000, max: 6000 })
    fc.assert(
      fc.property(place, fc.constantFrom(...grips, whole), way, way, (from, grip, dx, dy) => {
        const to = dragged(from, grip, dx, dy, wall, 1)
        if (grip !== whole) {
          if (!grip.left) expect(to.x).toBe(from.x)
          if (!grip.right) expect(to.x + to.width).toBe(from.x + from.width)
          if (!grip.bottom) expect(to.y).toBe(from.y)
          if (!grip.top) expect(to.y + to.height).toBe(from.y + from.height)
        } else expect([to.width, to.height]).toEqual([from.width, from.height])
        expect(to.width).toBeGreaterThanOrEqual(10)
        expect(to.height).toBeGreaterThanOrEqual(10)
        expect(to.x).toBeGreaterThanOrEqual(0)
        expect(to.y).toBeGreaterThanOrEqual(0)
        expect(to.x + to.width).toBeLessThanOrEqual(wall.length)
        expect(to.y + to.height).toBeLessThanOrEqual(wall.height)
      }),
    )
  })
})

test('openings and what to keep clear of are listed alike, each with its own family', () => {
  const spot = { x: 10, y: 20, width: 30, height: 40, label: '' }
  const list = fixturesOf({
    side: 'b',
    openings: [{ ...spot, id: 'a', kind: 'door', swing: '', leadsTo: null, other: null, depth: null }],
    keepClears: [{ ...spot, id: 'b', kind: 'switch', margin: 50, reason: 'cable', depth: 30, reachable: false }],
  })
  expect(list.map(({ id, family }) => [id, family])).toEqual([
    ['a', 'opening'],
    ['b', 'keepClear'],
  ])
  // What goes through is said from the face that it is seen on.
  expect(list[0]).toMatchObject({ side: 'b' })
})

test('a place is the same only in all four of its measures', () => {
  expect(samePlace(pane, { ...pane })).toBe(true)
  for (const side of ['x', 'y', 'width', 'height'] as const) expect(samePlace(pane, { ...pane, [side]: 7 })).toBe(false)
})
