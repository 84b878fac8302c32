/** Checked against the rotation matrix of plane geometry in y-down axes, written out by hand beside each figure. */
import { describe, expect, test } from 'vitest'
import { boxOf, standAside, toBuilding, toRoom, turnedAbout, wholeTurn } from '../../../src/plan/place.ts'

describe('a room’s place', () => {
  test('a quarter turn clockwise on the page takes right to down, and down to left, exactly', () => {
    const place = { at: [10_000, 500], turn: 90 } as const
    expect(toBuilding(place, [9140, 0])).toEqual([10_000, 9640])
    expect(toBuilding(place, [0, 5200])).toEqual([4800, 500])
  })

  test('thirty degrees: cos 30° = √3/2, sin 30° = 1/2', () => {
    const [x, y] = toBuilding({ at: [100, 200], turn: 30 }, [1000, 400])
    expect(x).toBeCloseTo(100 + 1000 * (Math.sqrt(3) / 2) - 400 / 2, 5)
    expect(y).toBeCloseTo(200 + 1000 / 2 + 400 * (Math.sqrt(3) / 2), 5)
  })

  test('there and back is the same point, whatever the turn', () => {
    for (let turn = 0; turn < 360; turn += 7.3) {
      const place = { at: [-31_400.5, 27_182.25], turn } as const
      const [x, y] = toRoom(place, toBuilding(place, [1234.5, -678.25]))
      expect(x).toBeCloseTo(1234.5, 4)
      expect(y).toBeCloseTo(-678.25, 4)
    }
  })

  test('turned about a point, that point of the room stays where it was', () => {
    const place = { at: [2000, 3000], turn: 350 } as const
    const about = toBuilding(place, [4570, 2600])
    const turned = turnedAbout(place, about, 25)
    expect(turned.turn).toBe(15)
    const [x, y] = toBuilding(turned, [4570, 2600])
    expect(x).toBeCloseTo(about[0], 4)
    expect(y).toBeCloseTo(about[1], 4)
  })

  test('angles come round from 0 up to 360', () => {
    expect([-90, 360, 725.5, -1e-9].map(wholeTurn)).toEqual([270, 0, 5.5, 0])
  })
})

describe('rooms that stand aside', () => {
  const room = { left: 0, top: -400, right: 5000, bottom: 3000 }

  test('stand below the building, none over another, and break into rows', () => {
    const building = { left: 1000, top: 0, right: 13_000, bottom: 8000 }
    const at = standAside([room, room, room], building, 12_000)
    const boxes = at.map(([x, y]) => ({ left: x, top: y - 400, right: x + 5000, bottom: y + 3000 }))
    for (const box of boxes) expect(box.top).toBeGreaterThan(building.bottom)
    for (const [i, a] of boxes.entries())
      for (const b of boxes.slice(i + 1)) {
        const apart = a.right < b.left || b.right < a.left || a.bottom < b.top || b.bottom < a.top
        expect(apart).toBe(true)
      }
    expect(boxes[2]?.left).toBe(building.left)
  })

  test('without a building they begin at its 0, 0', () => {
    expect(standAside([room], null, 12_000)).toEqual([[0, 400]])
    expect(boxOf([])).toBeNull()
  })
})
