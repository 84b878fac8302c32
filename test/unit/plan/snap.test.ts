/** What holds a corner while a room is drawn, and a room while it is carried. Positions by plane geometry, by hand. */
import { describe, expect, test } from 'vitest'
import type { PlanWallRow } from '../../../src/contract/areas/plan.ts'
import type { Point } from '../../../src/drawing/room-plan.ts'
import { addCorner, type Draft, emptyDraft } from '../../../src/plan/draft.ts'
import { snapDraft } from '../../../src/plan/snap-draft.ts'
import { snapRoom } from '../../../src/plan/snap-rooms.ts'

function drawn(...points: readonly Point[]): Draft {
  return points.reduce((draft, at) => {
    const step = addCorner(draft, at)
    return step.ok ? step.draft : draft
  }, emptyDraft)
}

const wall = { called: 'Hall, north wall', from: [10_000, 0], to: [16_000, 0] } as const
const ask = (draft: Draft, pointer: Point, more: { readonly heading?: number; readonly reach?: number } = {}) =>
  snapDraft({ draft, pointer, walls: [wall], reach: 100, grid: 100, ...more })

describe('a corner that is drawn', () => {
  test('goes to ends and middles of walls, told in words', () => {
    expect(ask(emptyDraft, [10_040, -30])).toMatchObject({ at: [10_000, 0], says: ['end of Hall, north wall'] })
    expect(ask(emptyDraft, [13_050, 60])).toMatchObject({ at: [13_000, 0], says: ['middle of Hall, north wall'] })
  })

  test('goes along the axes, at a right angle, to the length of another side', () => {
    const first = drawn([0, 5000])
    expect(ask(first, [4030, 5060])).toMatchObject({ at: [4000, 5000], says: ['level on the page'] })
    const slanted = drawn([0, 5000], [3000, 9000])
    // A right angle to (3, 4)/5 is (−4, 3)/5; 5000 is as long as the first side: (3000 − 4000, 9000 + 3000).
    const held = ask(slanted, [-1020, 12_060])
    expect(held.at[0]).toBeCloseTo(-1000, 1)
    expect(held.at[1]).toBeCloseTo(12_000, 1)
    expect(held.says).toEqual(['at a right angle', 'as long as side 1'])
  })

  test('goes to the crossing of two lines: square with the first corner, in line with a wall', () => {
    const side = drawn([0, 3000], [5000, 3000], [5000, 6050])
    expect(ask(side, [60, 6030])).toMatchObject({
      at: [0, 6050],
      says: ['at a right angle', 'square with the first corner'],
    })
  })

  test('comes back to the first corner and says that it closes', () => {
    const side = drawn([0, 3000], [5000, 3000], [5000, 6000])
    expect(ask(side, [70, 2950])).toMatchObject({ at: [0, 3000], closes: true })
  })

  test('lies on a typed direction whatever the pointer says; without reach nothing holds', () => {
    // 210° on the page: (−√3/2, −1/2).
    const held = ask(drawn([0, 0], [5000, 0]), [3000, -300], { heading: 210, reach: 0 })
    const run = Math.hypot(held.at[0] - 5000, held.at[1])
    expect((held.at[0] - 5000) / run).toBeCloseTo(-Math.sqrt(3) / 2, 4)
    expect(held.at[1] / run).toBeCloseTo(-0.5, 4)
    expect(ask(emptyDraft, [10_040, -30], { reach: 0 })).toMatchObject({ at: [10_040, -30], says: [] })
  })
})

function room(name: string, at: Point, width: number, depth: number, thickness: number | null = null) {
  const [x, y] = at
  const corners: Point[] = [
    [x, y],
    [x + width, y],
    [x + width, y + depth],
    [x, y + depth],
  ]
  const walls = corners.map((from, index): PlanWallRow => {
    const to = corners[(index + 1) % 4] ?? from
    const names = ['north', 'east', 'south', 'west']
    return {
      id: `${name}${index}`,
      face: `${name}f${index}`,
      name: names[index] ?? '',
      length: index % 2 === 0 ? width : depth,
      height: 3000,
      angle: 90,
      wallType: 'other',
      thickness,
      backs: null,
      from: [...from],
      to: [...to],
      openings: [],
      fixtures: [],
      works: [],
    }
  })
  return { name, walls }
}

describe('a room that is carried', () => {
  const say = (mm: number) => `${mm} mm`

  test('goes back to back with the measured thickness between, and level at a corner', () => {
    const hall = room('Hall', [0, 0], 6000, 5000, 300)
    const store = room('Store', [20_000, 0], 4000, 5000)
    // By hand it would stand 340 from the hall and 30 too low.
    const held = snapRoom(store, [-13_660, 30], [hall], 120, say)
    expect(held.by).toEqual([-13_700, 0])
    expect(held.holds.map(hold => hold.kind)).toContain('back to back')
    expect(held.holds[0]?.says).toBe('back to back with Hall, east, 300 mm between')
  })

  test('says so where nobody measured the wall between', () => {
    const held = snapRoom(room('Store', [6150, 0], 4000, 3000), [0, 400], [room('Hall', [0, 0], 6000, 5000)], 60, say)
    expect(held.holds[0]?.says).toBe('back to back with Hall, east, thickness not measured')
  })

  test('is not held beyond the reach, nor with none', () => {
    const hall = room('Hall', [0, 0], 6000, 5000, 300)
    const store = room('Store', [20_000, 0], 4000, 5000)
    expect(snapRoom(store, [-12_000, 777], [hall], 120, say)).toEqual({ by: [-12_000, 777], holds: [] })
    expect(snapRoom(store, [-13_660, 30], [hall], 0, say)).toEqual({ by: [-13_660, 30], holds: [] })
  })
})
