import { describe, expect, test } from 'vitest'
import { highPoint, levelLine, lineAt, lineSaid } from '../../../src/hang/datum.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import { plainWall, question } from './sample.ts'

// Scenario "sloping floor": it falls 38 mm in 6 000 (invented data, numbers computed by script).
const falls = {
  length: 6000,
  floor: [
    [0, 0],
    [6000, -38],
  ],
} as const
const say = (mm: number) => `${mm} mm`

describe('which floor the line is measured from', () => {
  test('the high point is the left end here: 1 480 above it', () => {
    expect(highPoint(falls)).toBe(0)
    expect(levelLine(falls, 'high', 1480)).toMatchObject({ through: 0, floorThere: 0, y: 1480 })
  })

  test('the middle is 19 lower', () => {
    const line = levelLine(falls, 'middle', 1480)
    expect(line).toMatchObject({ through: 3000, floorThere: -19, y: 1461 })
    expect(lineSaid(line, say)).toBe(
      'The line is level, 1480 mm above the floor in the middle of the wall, 3000 mm from the left end. At the left end that is 1461 mm above the floor.',
    )
  })

  test('along the ramp it is 1 480 above the floor everywhere', () => {
    const line = levelLine(falls, 'ramp', 1480)
    expect(lineAt(line, falls.floor, 0)).toBe(1480)
    expect(lineAt(line, falls.floor, 5200).toFixed(1)).toBe('1447.1')
    expect(lineSaid(line, say)).toContain('along the ramp')
  })

  test('a floor that rises to a bump: its top, and the leftmost of two', () => {
    const floor = [
      [1000, 5],
      [2000, 12],
      [3000, 12],
      [9000, 40],
    ] as const
    // The bump beyond the wall's end counts only as far as the wall goes: 26.
    expect(highPoint({ floor, length: 6000 })).toBe(6000)
    expect(levelLine({ floor, length: 6000 }, 'high', 1480).y).toBeCloseTo(1506, 9)
    expect(highPoint({ floor, length: 3000 })).toBe(2000)
  })
})

describe('marks from a line along a ramp', () => {
  // J of the scenario: H 500, d 60, centre at 5 200 (floor −32.93), hung along the ramp: centre 1 447.07.
  const wall = { ...plainWall, ...falls, ramp: true }
  const answer = marksFor(
    question({
      wall,
      work: { height: 500, width: 400 },
      back: { method: 'd-rings', seenFrom: 'front', data: { left: { drop: 60 }, right: { drop: 60 }, spacing: 300 } },
      centre: { x: 5200, y: 1480 - (38 * 5200) / 6000 },
    }),
  )

  test('each mark is measured from the line where it is', () => {
    // Floor −31.98 at 5 050 and −33.88 at 5 350; the level marks are 0.95 off the line's slope each way.
    expect(answer.marks.map(mark => mark.fromLine.toFixed(2))).toEqual(['189.05', '190.95'])
    expect(answer.marks.map(mark => mark.fromFloor.toFixed(2))).toEqual(['1669.05', '1670.95'])
    expect(answer.marks.map(mark => mark.printed.fromLine.mm)).toEqual([189, 191])
    expect(answer.marks.map(mark => mark.printed.fromFloor.mm)).toEqual([1669, 1671])
    expect(answer.printed.lineAtCentre.mm).toBe(1480)
    expect(answer.printed.bearingAtCentre.mm).toBe(1670)
  })

  test('the working subtracts the line where the mark is, and no floor is found to slope', () => {
    const line = answer.working.find(step => step.key === 'from-line')
    expect(line?.mm.value).toBe('189.1')
    expect(answer.findings.map(one => one.code)).not.toContain('floor-slopes')
  })
})
