/** Through doors and into lifts: worked by hand, and against a reading of every way to lay a box. */
import { describe, expect, test } from 'vitest'
import { bestFit, fitsDoorway, fitsLift } from '../../../src/record/fit.ts'
import { aroundWords, insideItself, placesAround } from '../../../src/record/nested.ts'
import { randomFrom } from '../database/random-edits.ts'

const door = { width: 1000, height: 2100 }

describe('a box through a doorway', () => {
  test.each([
    ['on edge, its thickness across', { width: 1800, height: 2050, depth: 150 }, 'upright'],
    ['exactly as large as the doorway', { width: 1000, height: 2100, depth: 1500 }, 'upright'],
    ['a millimetre too high, yet it lies', { width: 900, height: 2101, depth: 300 }, 'tipped'],
    ['too thick whichever side is foremost', { width: 1600, height: 2300, depth: 1050 }, 'no'],
  ] as const)('%s', (_, box, fit) => {
    expect(fitsDoorway(box, door)).toBe(fit)
  })

  test('says no exactly where none of the six ways to hold it passes', () => {
    const random = randomFrom(11)
    const side = () => Math.round(200 + random() * 2600)
    for (let count = 0; count < 2000; count++) {
      const box = { width: side(), height: side(), depth: side() }
      const { width: w, height: h, depth: d } = box
      const foremost = [w, h, d].flatMap((a, i) => [w, h, d].flatMap((b, j) => (i === j ? [] : [[a, b] as const])))
      const passes = foremost.some(([across, up]) => across <= door.width && up <= door.height)
      expect(fitsDoorway(box, door) !== 'no', JSON.stringify(box)).toBe(passes)
    }
  })
})

test('a crate stands in a lift turned on its floor, or lies in it, or does not go in', () => {
  const cabin = { width: 1400, height: 2200, depth: 2600 }
  expect(fitsLift({ width: 2500, height: 2000, depth: 400 }, cabin)).toBe('upright')
  expect(fitsLift({ width: 400, height: 2500, depth: 1200 }, cabin)).toBe('tipped')
  expect(fitsLift({ width: 1500, height: 2500, depth: 1450 }, cabin)).toBe('no')
  expect(
    bestFit([door, { width: 1600, height: 2400 }], way => fitsDoorway({ width: 1500, height: 2300, depth: 1200 }, way))
      ?.fit,
  ).toBe('upright')
  expect(bestFit([], () => 'no')).toBeNull()
})

test('places around, through crates, and no ring without an end', () => {
  const standing = new Map([
    ['crate', { place: 'van' }],
    ['van', { place: 'yard' }],
  ])
  expect(placesAround('crate', standing)).toEqual(['crate', 'van', 'yard'])
  expect(aroundWords(['Crate 5', 'Van 1', 'Yard'], words => words)).toBe('Crate 5, in Van 1, at Yard')
  expect(insideItself('van', 'crate', standing)).toBe(true)
  expect(insideItself('crate', 'yard', standing)).toBe(false)
  expect(
    placesAround(
      'a',
      new Map([
        ['a', { place: 'b' }],
        ['b', { place: 'a' }],
      ]),
    ),
  ).toEqual(['a', 'b'])
})
