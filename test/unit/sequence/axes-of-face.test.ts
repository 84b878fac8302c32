import { describe, expect, test } from 'vitest'
import { axesOfFace, type LooksAt, meets } from '../../../src/sequence/axes-of-face.ts'

const wall = { length: 8000, openings: [], keepClears: [] }
const band = { bottom: 1000, top: 2000 }
/** The top wall of a room on the page, seen from below: left end at x 1000. */
const ends = [
  [1000, 0],
  [9000, 0],
] as const

function doorway(x: number, label = 'the south door'): LooksAt {
  return { of: 'd', kind: 'doorway', label, at: [x, 6000], towards: [0, -1] }
}

describe('axes of a face', () => {
  test('its middle comes first, and is the only one of a bare wall nobody looks at', () => {
    expect(axesOfFace(wall, band, ends, [], [])).toEqual([{ kind: 'middle', label: '', x: 4000, from: 0, to: 8000 }])
  })

  test('a door of its own parts it into stretches with middles of their own', () => {
    const door = { id: 'd', kind: 'door', label: 'the yard door', x: 5000, y: 0, width: 1000, height: 2100 }
    const found = axesOfFace({ ...wall, openings: [door] }, band, ends, [], [])
    expect(found.slice(1)).toEqual([
      { kind: 'stretch', label: 'the end to the yard door', x: 2500, from: 0, to: 5000 },
      { kind: 'stretch', label: 'the yard door to the end', x: 7000, from: 6000, to: 8000 },
    ])
  })

  test('a doorway across the room gives its axis, from the left end of the face', () => {
    expect(axesOfFace(wall, band, ends, [doorway(3500)], [])[1]).toMatchObject({ kind: 'doorway', x: 2500 })
  })

  test('what looks past the ends, away or against a partition is none', () => {
    const away: LooksAt = { ...doorway(3500), towards: [0, 1] }
    expect(axesOfFace(wall, band, ends, [doorway(500), doorway(9500), away], [])).toHaveLength(1)
    const screen = [
      [3000, 3000],
      [4000, 3000],
    ] as const
    expect(axesOfFace(wall, band, ends, [doorway(3500)], [screen])).toHaveLength(1)
    expect(axesOfFace(wall, band, ends, [doorway(4500)], [screen])).toHaveLength(2)
  })

  test('a screen behind the face bars nothing', () => {
    const behind = [
      [0, -500],
      [9000, -500],
    ] as const
    expect(axesOfFace(wall, band, ends, [doorway(3500)], [behind])).toHaveLength(2)
  })

  test('a slanting look meets where it does', () => {
    // From (2000, 4000) one to the right for each two up: at y 0 two thousand further right.
    expect(meets([2000, 4000], [1, -2], ends)).toBeCloseTo(3000, 9)
    expect(meets([2000, 4000], [1, 0], ends)).toBeNull()
  })
})
