/** What a press on the plan means: a work before a wall, a wall before a room, a partition's nearer side. By hand. */
import { describe, expect, test } from 'vitest'
import { drawRooms } from '../../../src/plan/drawn-room.ts'
import { FLAT, hitOn, workOn } from '../../../src/plan/hit.ts'
import { UNMEASURED } from '../../../src/plan/poche.ts'
import { openingAt, partitionOf, roomOf } from './plan-rooms.ts'

const work = { placement: 'p', work: 'w', number: '7', title: 'Tide', x: 2000, width: 800, depth: 120, niche: null }

/** 6000 × 4000 at 0, 0 with a work on its north wall and a partition 200 thick; the next room 300 to the right. */
function rooms() {
  const hall = roomOf('Hall', [0, 0], 6000, 4000, {}, 300)
  const partition = partitionOf('Screen', [3000, 1500], [3000, 3500], 200)
  const [north, ...others] = hall.walls
  if (north === undefined) throw new Error('a room has walls')
  const hung = { ...hall, walls: [{ ...north, works: [work] }, ...others], partitions: [partition] }
  return drawRooms([hung, roomOf('Annex', [6300, 0], 3000, 4000)], new Map())
}

const said = (at: readonly [number, number], reach = 50) => {
  const hit = hitOn(rooms(), at, reach)
  return hit === null ? null : [hit.room.name, hit.wall?.name ?? hit.face?.face ?? null, hit.work?.work ?? null]
}

describe('a press on the plan', () => {
  test('on a work means the work and its wall, as far out as the work is deep', () => {
    // From 1600 to 2400 along the wall, 120 into the room.
    expect(said([2000, 110])).toEqual(['Hall', 'north', 'w'])
    expect(said([1610, 60])).toEqual(['Hall', 'north', 'w'])
    expect(said([2000, 130])).toEqual(['Hall', null, null])
    expect(said([2500, 30])).toEqual(['Hall', 'north', null])
  })

  test('near a face means the wall, the nearest of two at a corner; on the floor, the room', () => {
    expect(said([40, 2000])).toEqual(['Hall', 'west', null])
    expect(said([30, 10])).toEqual(['Hall', 'north', null])
    expect(said([10, 30])).toEqual(['Hall', 'west', null])
    expect(said([1000, 2000])).toEqual(['Hall', null, null])
    expect(said([20_000, 2000])).toBeNull()
  })

  test('behind a face the whole thickness is the wall, and the nearer of two rooms has it', () => {
    // East of the hall 300 were measured; the annex begins at 6300 and nobody measured its wall.
    expect(said([6100, 2000])).toEqual(['Hall', 'east', null])
    expect(said([6260, 2000])).toEqual(['Annex', 'west', null])
    expect(said([3000, -290])).toEqual(['Hall', 'north', null])
    expect(said([3000, -320], 10)).toBeNull()
    const beyond = 9300 + UNMEASURED / 2
    expect(said([beyond, 2000], UNMEASURED)).toEqual(['Annex', 'east', null])
  })

  test('on a partition means the side that is nearer, and never the floor beneath it', () => {
    const left = said([2920, 2500])
    const right = said([3080, 2500])
    expect([left?.[1], right?.[1]].sort()).toEqual(['Screen a', 'Screen b'])
    expect(said([2500, 2500])).toEqual(['Hall', null, null])
  })

  const wall: Parameters<typeof workOn>[0] = {
    ...{ from: [0, 0], to: [6000, 0], length: 6000, thickness: 300 },
    openings: [{ ...openingAt('n', 'niche', 1500, 1000), depth: 200 }],
  }

  test('a work in a niche stands at its back: behind the wall, out of it by what it is deeper', () => {
    const deep = (depth: number, over: Partial<typeof wall> = {}) =>
      workOn({ ...wall, ...over }, { ...work, depth, niche: 'n' }).map(([, y]) => y)
    // The room lies below the wall: 200 behind it is −200.
    expect(deep(120)).toEqual([-200, -200, -80, -80])
    expect(deep(260)).toEqual([-200, -200, 60, 60])
    // Half the wall where nobody measured the niche, and never through it.
    const unmeasured = wall.openings.map(each => ({ ...each, depth: null }))
    expect(deep(120, { openings: unmeasured })[0]).toBe(-150)
    expect(deep(120, { thickness: 150 })[0]).toBe(-150)
    expect(deep(120, { openings: unmeasured, thickness: null })[0]).toBe(-UNMEASURED / 2)
  })

  test('a work that nobody measured is drawn flat, and can be pressed', () => {
    const depths = workOn(wall, { ...work, width: null, depth: null })
    const ys = depths.map(([, y]) => y)
    const xs = depths.map(([x]) => x)
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(FLAT, 9)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(300, 9)
  })
})
