import { describe, expect, test } from 'vitest'
import { bearingOf, compassNames, windOf } from '../../../src/plan/compass.ts'

type Ends = readonly [readonly [number, number], readonly [number, number]]
const wall = (id: string, [from, to]: Ends) => ({ id, from, to, length: Math.hypot(to[0] - from[0], to[1] - from[1]) })

/** A room of 6 × 4 m as drawn, top wall first, clockwise. */
const room = [
  wall('top', [
    [0, 0],
    [6000, 0],
  ]),
  wall('right', [
    [6000, 0],
    [6000, 4000],
  ]),
  wall('bottom', [
    [6000, 4000],
    [0, 4000],
  ]),
  wall('left', [
    [0, 4000],
    [0, 0],
  ]),
] as const

describe('names by the compass', () => {
  test('the wall at the top of a page with north up is the north wall, seen by who looks north', () => {
    expect(room.map(one => bearingOf(one, 0))).toEqual([0, 90, 180, 270])
    expect([...compassNames(room, 0).values()]).toEqual(['north wall', 'east wall', 'south wall', 'west wall'])
  })

  test('north to the right of the page turns the names by a quarter', () => {
    expect(compassNames(room, 90).get('right')).toBe('north wall')
    expect(compassNames(room, 90).get('top')).toBe('west wall')
  })

  // The eight principal winds are 45 degrees wide each, north from 337.5 to 22.5: geometry of the compass rose.
  test.each([
    [0, 'north'],
    [22.4, 'north'],
    [22.6, 'north-east'],
    [67.4, 'north-east'],
    [180, 'south'],
    [337.4, 'north-west'],
    [337.6, 'north'],
    [359.9999, 'north'],
  ])('%d° is %s', (bearing, wind) => {
    expect(windOf(bearing)).toBe(wind)
  })

  test('two that look one way are told apart from left to right as seen', () => {
    // A room like an L: its south side has two walls, one further back.
    const l = [
      wall('n', [
        [0, 0],
        [8000, 0],
      ]),
      wall('e', [
        [8000, 0],
        [8000, 3000],
      ]),
      wall('s-east', [
        [8000, 3000],
        [4000, 3000],
      ]),
      wall('e-inner', [
        [4000, 3000],
        [4000, 6000],
      ]),
      wall('s-west', [
        [4000, 6000],
        [0, 6000],
      ]),
      wall('w', [
        [0, 6000],
        [0, 0],
      ]),
    ]
    const names = compassNames(l, 0)
    // Who looks south has the east at the left hand.
    expect([names.get('s-east'), names.get('s-west')]).toEqual(['south wall, left', 'south wall, right'])
    expect([names.get('e-inner'), names.get('e')]).toEqual(['east wall, right', 'east wall, left'])
    expect(new Set(names.values()).size).toBe(6)
  })
})
