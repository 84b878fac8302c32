/**
 * Rooms and partitions as they are cut through. Figures by hand: a room of 5000 × 4000 at 0, 0 with walls 200 thick, so
 * that its outer edge lies from −200 to 5200 and −200 to 4200; lines are read back from their paths.
 */
import { describe, expect, test } from 'vitest'
import { linesOf, onFace, partitionShapes, shapesOf, UNMEASURED } from '../../../src/plan/poche.ts'
import { facesOf, standLines } from '../../../src/plan/stands-drawn.ts'
import { openingAt, partitionOf, roomOf, thingOf } from './plan-rooms.ts'

/** The points of a path, piece by piece; an arc by its end. */
const pieces = (path: string) =>
  path
    .split('M')
    .filter(piece => piece !== '')
    .map(piece =>
      piece
        .replace('Z', '')
        .split(/[LA]/)
        .map(point => point.split(' ').map(Number).slice(-2)),
    )
/** Twice the area of the pieces, by the shoelace formula. */
const areaOf = (path: string) =>
  pieces(path).reduce((sum, points) => {
    const twice = points.reduce((all, [x = 0, y = 0], at) => {
      const [nx = 0, ny = 0] = points[(at + 1) % points.length] ?? []
      return all + x * ny - nx * y
    }, 0)
    return sum + Math.abs(twice) / 2
  }, 0)

describe('a room', () => {
  test('has bands as thick as they were measured, mitred at the corners', () => {
    const lines = linesOf(roomOf('one', [0, 0], 5000, 4000, {}, 200))
    expect(areaOf(lines.floor)).toBe(5000 * 4000)
    // The outer rectangle less the floor.
    expect(areaOf(lines.measured)).toBe(5400 * 4400 - 5000 * 4000)
    expect(lines.unmeasured).toBe('')
    expect(lines.box).toEqual({ left: -200, top: -200, right: 5200, bottom: 4200 })
  })

  test('has a band of the drawing alone where nobody measured, apart from the measured ones', () => {
    const lines = linesOf(roomOf('one', [0, 0], 5000, 4000))
    expect(lines.measured).toBe('')
    const out = 2 * UNMEASURED
    expect(areaOf(lines.unmeasured)).toBe((5000 + out) * (4000 + out) - 5000 * 4000)
  })

  test('is cut at what goes through: jambs of a passage, panes of a window, the depth of a niche', () => {
    const lines = linesOf(
      roomOf(
        'one',
        [0, 0],
        5000,
        4000,
        {
          north: [openingAt('p', 'passage', 1000, 1200), openingAt('w', 'window', 3000, 1000)],
          south: [{ ...openingAt('n', 'niche', 1000, 800), depth: 150 }],
        },
        200,
      ),
    )
    // Behind the niche 50 of the wall are left.
    expect(areaOf(lines.measured)).toBe(5400 * 4400 - 5000 * 4000 - 200 * (1200 + 1000 + 800) + 50 * 800)
    // A passage is free from face to face.
    expect(pieces(lines.dashed)).toEqual([
      [
        [1000, 0],
        [2200, 0],
      ],
      [
        [1000, -200],
        [2200, -200],
      ],
    ])
    // The back of the niche lies 150 into the south wall, whose way runs from right to left.
    expect(pieces(lines.thin)).toContainEqual([
      [4000, 4000],
      [4000, 4150],
      [3200, 4150],
      [3200, 4000],
    ])
  })
})

describe('doors of a north wall, from 1000 to 1900', () => {
  const door = (swing: string) => {
    const { leaves, swings } = linesOf(
      roomOf('one', [0, 0], 5000, 4000, { north: [{ ...openingAt('d', 'door', 1000, 900), swing }] }, 200),
    )
    return { leaves: pieces(leaves), swings: pieces(swings) }
  }

  test.each([
    [
      'in left',
      [
        [1000, 0],
        [1000, 900],
      ],
      [
        [1000, 900],
        [1900, 0],
      ],
    ],
    [
      'in right',
      [
        [1900, 0],
        [1900, 900],
      ],
      [
        [1900, 900],
        [1000, 0],
      ],
    ],
    [
      'out left',
      [
        [1000, -200],
        [1000, -1100],
      ],
      [
        [1000, -1100],
        [1900, -200],
      ],
    ],
    [
      'out right',
      [
        [1900, -200],
        [1900, -1100],
      ],
      [
        [1900, -1100],
        [1000, -200],
      ],
    ],
  ] as const)('%s: hung on its own side of the wall, a leaf open at a right angle', (swing, leaf, arc) => {
    expect(door(swing)).toEqual({ leaves: [leaf], swings: [arc] })
  })

  test('of two leaves meet in the middle', () => {
    expect(door('both in')).toEqual({
      leaves: [
        [
          [1000, 0],
          [1000, 450],
        ],
        [
          [1900, 0],
          [1900, 450],
        ],
      ],
      swings: [
        [
          [1000, 450],
          [1450, 0],
        ],
        [
          [1900, 450],
          [1450, 0],
        ],
      ],
    })
  })

  test('that slide lie beside their opening, before the inner face', () => {
    expect(door('sliding').leaves).toEqual([
      [
        [1900, 60],
        [2800, 60],
      ],
    ])
  })

  test('of which nobody said how they turn have a threshold and no leaf', () => {
    expect(door('')).toEqual({ leaves: [], swings: [] })
  })

  test('the arc bends about its hinge', () => {
    const { swings } = linesOf(
      roomOf('one', [0, 0], 5000, 4000, { north: [{ ...openingAt('d', 'door', 1000, 900), swing: 'in left' }] }, 200),
    )
    // From the tip below the hinge to the jamb on its right: against the clock on a page with y down.
    expect(swings).toBe('M1000 900A900 900 0 0 0 1900 0')
  })
})

test('what stands out of a face lies before it, in the room', () => {
  const [north] = roomOf('one', [0, 0], 5000, 4000).walls
  expect(north && onFace(north, 500, 300, 60)).toEqual([
    [500, 0],
    [800, 0],
    [800, 60],
    [500, 60],
  ])
  expect(shapesOf(north ? [north] : [])[0]).toMatchObject({ along: [1, 0], out: [0, -1], thick: UNMEASURED })
})

describe('a partition, 2400 to the right from 1000, 2000, 100 thick', () => {
  const door = { ...openingAt('d', 'door', 300, 900), swing: 'in left' }
  const screen = partitionOf('screen', [1000, 2000], [3400, 2000], 100, [door])

  test('is cut where something goes through it; its door turns as face a sees it', () => {
    const [shape] = partitionShapes([screen])
    expect(shape?.solid).toEqual([
      [
        [1000, 2050],
        [1300, 2050],
        [1300, 1950],
        [1000, 1950],
      ],
      [
        [2200, 2050],
        [3400, 2050],
        [3400, 1950],
        [2200, 1950],
      ],
    ])
    const room = { ...roomOf('one', [0, 0], 5000, 4000), partitions: [screen] }
    expect(pieces(linesOf(room).leaves)).toEqual([
      [
        [1300, 2050],
        [1300, 2950],
      ],
    ])
    expect(areaOf(standLines({ ...room, things: [], tracks: [] }).cut)).toBe(100 * (2400 - 900))
  })

  test('has two faces, half its thickness from the middle, each from its own left end', () => {
    const [a, b] = facesOf(screen)
    expect(a).toMatchObject({
      side: 'a',
      from: [1000, 2050],
      to: [3400, 2050],
      openings: [{ x: 300, swing: 'in left' }],
    })
    expect(b).toMatchObject({
      side: 'b',
      from: [3400, 1950],
      to: [1000, 1950],
      // 2400 − 300 − 900
      openings: [{ x: 1200, swing: 'out right' }],
    })
  })
})

describe('what stands on the floor', () => {
  const drawn = (over: Parameters<typeof thingOf>[0]) =>
    standLines({ partitions: [], tracks: [], things: [thingOf(over)] })

  test('columns are cut, barriers dashed, the rest outlined', () => {
    const at = { at: [1000, 1000], width: 400, depth: 200 } as const
    expect(areaOf(drawn({ ...at, kind: 'column' }).cut)).toBe(400 * 200)
    expect(areaOf(drawn({ ...at, kind: 'barrier' }).barriers)).toBe(400 * 200)
    const bench = drawn({ ...at, kind: 'bench', turn: 90 })
    expect(pieces(bench.things)).toEqual([
      [
        [1100, 800],
        [1100, 1200],
        [900, 1200],
        [900, 800],
      ],
    ])
    expect(bench.cut + bench.marks + bench.barriers + bench.tracks).toBe('')
  })

  test('a round column is drawn about its circle', () => {
    const { cut } = drawn({ kind: 'column', at: [1000, 1000], width: 400, depth: 400, round: true })
    const circle = Math.PI * 200 ** 2
    expect(areaOf(cut)).toBeGreaterThanOrEqual(circle)
    expect(areaOf(cut)).toBeLessThan(circle * 1.01)
  })

  test('a stair has its treads across the way up, and an arrow along it', () => {
    const { marks } = drawn({ kind: 'stair', at: [0, 0], width: 2800, depth: 1200 })
    const lines = pieces(marks)
    // Ten goings of 280 have nine treads between them, then the line of the way and its head.
    expect(lines).toHaveLength(9 + 2)
    expect(lines[0]).toEqual([
      [-1120, -600],
      [-1120, 600],
    ])
    expect(lines[9]).toEqual([
      [-1232, 0],
      [1232, 0],
    ])
  })

  test('a plinth has its cross, a case its panes, both only while they have corners', () => {
    const at = { at: [0, 0], width: 600, depth: 400 } as const
    expect(pieces(drawn({ ...at, kind: 'plinth' }).marks)).toHaveLength(2)
    expect(areaOf(drawn({ ...at, kind: 'case' }).marks)).toBe(520 * 320)
    expect(drawn({ ...at, kind: 'plinth', round: true }).marks).toBe('')
  })

  test('a ceiling track is a line from end to end', () => {
    const track = { id: 't', name: '', height: 3000, length: 2000, note: '' }
    const { tracks } = standLines({
      partitions: [],
      things: [],
      tracks: [{ ...track, from: [0, 500], to: [2000, 500] }],
    })
    expect(pieces(tracks)).toEqual([
      [
        [0, 500],
        [2000, 500],
      ],
    ])
  })
})
