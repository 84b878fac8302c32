import { describe, expect, test } from 'vitest'
import { readCorner } from '../../../src/model/corner.ts'
import { readRoom } from '../../../src/model/typed-room.ts'

const lengths = (text: string, unit: 'mm' | 'in' = 'mm') => readRoom(text, unit).walls?.map(wall => wall.length)

describe('a room as typed', () => {
  test('is a wall a line, in whatever unit each was read off', () => {
    // 17 ft 0 3/4 in is 204.75 in × 25.4.
    expect(lengths('9140\n5,2 m\n\n  9.14m \n17\' 0 3/4"\n')?.map(mm => Number(mm.toFixed(6)))).toEqual([
      9140, 5200, 9140, 5200.65,
    ])
    expect(lengths('360\n17 ft', 'in')?.map(mm => Number(mm.toFixed(6)))).toEqual([9144, 5181.6])
  })

  test('is a rectangle where one line has two lengths', () => {
    expect(lengths('9 140 × 5 200')).toEqual([9140, 5200, 9140, 5200])
    expect(lengths("30' x 17'")?.map(mm => Number(mm.toFixed(6)))).toEqual([9144, 5181.6, 9144, 5181.6])
  })

  test('keeps what was typed, and the angle after @', () => {
    expect(readRoom('4 m @ 92,5°\n3000@88\n10 ft', 'mm').walls).toEqual([
      { length: 4000, lengthText: '4 m', angle: 92.5 },
      { length: 3000, lengthText: '3000', angle: 88 },
      { length: 3048, lengthText: '10 ft', angle: 90 },
    ])
  })

  test('without a line is a room without walls', () => {
    expect(readRoom(' \n ', 'mm')).toEqual({ walls: [], problem: null })
  })

  test.each([
    ['9140\n\nabout five\n9140', /^Line 3, “about five”: /],
    ['9140\n0', /^Line 2: a wall is longer than nothing\.$/],
    ['9140\n5200 @ 360', /^Line 2: “360”: the angle of a corner lies between 1° and 359°\.$/],
    ['9140 @ square', /^Line 1: “square” is no angle in degrees\.$/],
    ['9140 @', /^Line 1: “” is no angle in degrees\.$/],
    ['@ 90', /^Line 1, “@ 90”: /],
    ['9140 × wide', /^Line 1, “wide”: /],
  ])('says in which line and why “%s” is none', (text, problem) => {
    const read = readRoom(text, 'mm')
    expect(read.walls).toBeNull()
    expect(read.problem).toMatch(problem)
  })
})

test.each([
  ['90', 90],
  [' 92,5 ° ', 92.5],
  ['88.25 deg', 88.25],
  ['270 degrees', 270],
])('the corner “%s” is read', (text, degrees) => expect(readCorner(text)).toEqual({ ok: true, degrees }))

test.each(['', 'straight', '1e2', '0x5a', '-90', '9,0,0', '1', '359', '0'])('the corner “%s” is refused', text => {
  const read = readCorner(text)
  expect(read.ok).toBe(false)
  expect(read.ok ? '' : read.message).toContain(`“${text}”`)
})
