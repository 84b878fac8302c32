/** Works put on a wall: rows find room behind the last, before it, or nowhere; what stands wrong is told. */
import { describe, expect, test } from 'vitest'
import { faultsOn, keptOn, roomFor } from '../../../src/sequence/room-on-wall.ts'

describe('a row that comes to a wall', () => {
  test('stands behind the last work', () => {
    expect(roomFor(1000, 6000, 200, [{ from: 500, to: 2000 }], [])).toBe(2200)
  })
  test('on an empty wall keeps off its end, as far as it can', () => {
    expect(roomFor(1000, 6000, 200, [], [])).toBe(200)
    expect(roomFor(5900, 6000, 200, [], [])).toBe(100)
  })
  test('stands behind a door where the stretch before it is too short', () => {
    expect(roomFor(1500, 6000, 200, [{ from: 500, to: 2000 }], [{ from: 3000, to: 4000 }])).toBe(4200)
  })
  test('stands before the last work where there is no room behind it', () => {
    expect(roomFor(2000, 6000, 200, [{ from: 3000, to: 5500 }], [])).toBe(200)
  })
  test('where no stretch takes it, stands at the right end of the wall, never beyond', () => {
    expect(roomFor(3000, 6000, 200, [{ from: 2500, to: 5500 }], [])).toBe(3000)
    expect(roomFor(7000, 6000, 200, [], [])).toBe(0)
  })
  test('is kept on the wall', () => {
    expect([keptOn(-300, 1000, 6000), keptOn(5500, 1000, 6000), keptOn(700, 1000, 6000)]).toEqual([0, 5000, 700])
  })
})

describe('what stands wrong', () => {
  const work = (entry: string, x: number, y = 1500) => ({ entry, x, y, width: 600, height: 800 })
  test('beyond an end, in another, over the edge of an opening', () => {
    const works = [work('a', 200), work('b', 1500), work('c', 1900), work('d', 3000), work('e', 5800)]
    const door = { x: 3100, y: 0, width: 900, height: 2100 }
    expect(faultsOn(works, 6000, [door])).toEqual({ outside: ['a', 'e'], within: ['b', 'c'], opening: ['d'] })
  })
  test('nothing of works that touch, hang above one another, or hang wholly within a niche', () => {
    const niche = { x: 3000, y: 900, width: 1200, height: 1400 }
    const works = [work('a', 300), work('b', 900), work('c', 1500, 1000), work('d', 1500, 1900), work('e', 3600)]
    expect(faultsOn(works, 6000, [niche])).toEqual({ outside: [], within: [], opening: [] })
  })
})
