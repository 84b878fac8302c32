/** What of a storey goes out of the house, by its layers. Figures by hand: millimetres, y down the page. */
import { describe, expect, test } from 'vitest'
import { type Figure, figuresOf, type PlanLayer } from '../../../src/plan/figures.ts'
import { openingAt, partitionOf, roomOf, thingOf } from './plan-rooms.ts'

const work = { placement: 'p', work: 'w', number: '7', title: 'Tide', x: 1500, width: 600, depth: 50, niche: null }
const socket = {
  ...{ id: 's', kind: 'outlet' as const, label: '', x: 200, y: 300, width: 80, height: 80, margin: 0 },
  ...{ depth: null, reachable: false },
}

type Room = ReturnType<typeof roomOf>

function pointsOn(layer: PlanLayer, room: Room): readonly (readonly (readonly [number, number])[])[] {
  const lines = figuresOf([room], '', String).figures.filter(
    (figure): figure is Figure & { kind: 'line' } => figure.kind === 'line' && figure.layer === layer,
  )
  return lines.map(({ points }) => points)
}

describe('on paper', () => {
  const niche = { ...openingAt('n', 'niche', 1000, 1000), depth: 150 }

  test('a niche is cut to its back, with the wall behind it, and its work stands there', () => {
    const hall = roomOf('Hall', [0, 0], 5000, 4000, { north: [niche] }, 200)
    const [north, ...others] = hall.walls
    const room = north ? { ...hall, walls: [{ ...north, works: [{ ...work, niche: 'n' }] }, ...others] } : hall
    expect(pointsOn('OPENINGS', room)).toEqual([
      [
        [1000, 0],
        [2000, 0],
        [2000, -150],
        [1000, -150],
      ],
    ])
    expect(pointsOn('WALLS', room)).toContainEqual([
      [1000, -150],
      [2000, -150],
      [2000, -200],
      [1000, -200],
    ])
    expect(pointsOn('WORKS', room)).toEqual([
      [
        [1200, -150],
        [1800, -150],
        [1800, -100],
        [1200, -100],
      ],
    ])
  })

  test('a window has its glass in the middle of the wall', () => {
    const [, ...glass] = pointsOn(
      'OPENINGS',
      roomOf('Hall', [0, 0], 5000, 4000, { north: [openingAt('w', 'window', 1000, 800)] }, 200),
    )
    expect(glass.map(([a, b]) => [a?.[0], b?.[0], Math.round(a?.[1] ?? 0)])).toEqual([
      [1000, 1800, -84],
      [1000, 1800, -116],
    ])
  })

  test('what is on both sides of a partition is there, each from its own left end', () => {
    const screen = partitionOf('Screen', [1000, 2000], [4000, 2000], 100)
    const sides = screen.sides.map(each => ({ ...each, works: [work], fixtures: [socket] }))
    const room = { ...roomOf('Hall', [0, 0], 5000, 4000), partitions: [{ ...screen, sides }] }
    const [a = [], b = []] = pointsOn('WORKS', room)
    // 1500 from 1000 with 50 before the face at 2050; 1500 back from 4000 before the one at 1950.
    expect([a[0], a[2]]).toEqual([
      [2200, 2050],
      [2800, 2100],
    ])
    expect([b[0], b[2]]).toEqual([
      [2800, 1950],
      [2200, 1900],
    ])
    expect(pointsOn('FIXTURES', room)).toHaveLength(2)
  })

  test('what stands in a room without a place is drawn where the room is', () => {
    const bench = thingOf({ at: [2000, 1000], kind: 'plinth', width: 600, depth: 400, name: 'Bench' })
    const screen = partitionOf('Screen', [1000, 2000], [4000, 2000], 100)
    const stands = { things: [bench], partitions: [screen] }
    const waiting = { ...roomOf('Attic', [0, 0], 5000, 4000), ...stands, at: null }
    const hall = roomOf('Hall', [10_000, 10_000], 5000, 4000)
    const { figures } = figuresOf([hall, waiting], '', String)
    const corners = (layer: PlanLayer) =>
      figures.flatMap(figure => (figure.kind === 'line' && figure.layer === layer ? [figure.points[0] ?? [0, 0]] : []))
    const [, attic = [0, 0]] = corners('ROOMS')
    const [thing = [0, 0], ...cross] = corners('STANDING')
    expect([thing[0] - attic[0], thing[1] - attic[1]]).toEqual([1700, 800])
    expect(cross).toHaveLength(2)
    const [band = [0, 0]] = corners('PARTITIONS')
    expect([band[0] - attic[0], band[1] - attic[1]]).toEqual([1000, 2050])
  })
})
