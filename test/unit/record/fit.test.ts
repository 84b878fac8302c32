/** Through doors and into lifts: worked by hand, and against a reading of every way to lay a box. */
import { describe, expect, test } from 'vitest'
import { fitsDoorway, fitsLift, liesWithin, overDoorway, overLift } from '../../../src/record/fit.ts'
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

  test('says how much its least face lacks, held straight; by the diagonal it may yet pass', () => {
    expect(overDoorway({ width: 1600, height: 2300, depth: 1050 }, door)).toBe(50)
    expect(overDoorway({ width: 900, height: 2101, depth: 300 }, door)).toBe(0)
    // 2 250 by 100 in 2 100 by 1 000, whose diagonal is 2 326.
    expect(fitsDoorway({ width: 2400, height: 2250, depth: 100 }, door)).toBe('leaning')
    expect(overDoorway({ width: 2400, height: 2250, depth: 100 }, door)).toBe(150)
  })

  test('straight it passes exactly where one of the six ways to hold it does', () => {
    const random = randomFrom(11)
    const side = () => Math.round(200 + random() * 2600)
    for (let count = 0; count < 2000; count++) {
      const box = { width: side(), height: side(), depth: side() }
      const { width: w, height: h, depth: d } = box
      const foremost = [w, h, d].flatMap((a, i) => [w, h, d].flatMap((b, j) => (i === j ? [] : [[a, b] as const])))
      const passes = foremost.some(([across, up]) => across <= door.width && up <= door.height)
      expect(['upright', 'tipped'].includes(fitsDoorway(box, door)), JSON.stringify(box)).toBe(passes)
      expect(overDoorway(box, door) === 0, JSON.stringify(box)).toBe(passes)
    }
  })
})

test('a rectangle lies within another turned exactly where some angle of many shows it', () => {
  const random = randomFrom(23)
  const side = () => 1 + random() * 99
  const seen = { yes: 0, no: 0, turned: 0 }
  for (let count = 0; count < 4000; count++) {
    const [p, q, a, b] = [side(), side(), side(), side()] as const
    // How far it stands out at the best of all angles, in steps of a fortieth of a degree.
    let least = Number.POSITIVE_INFINITY
    for (let step = 0; step <= 3600; step++) {
      const angle = (step * Math.PI) / 7200
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      least = Math.min(least, Math.max(p * cos + q * sin - a, p * sin + q * cos - b))
    }
    // Between two steps it turns by less than this.
    if (Math.abs(least) < 0.05) continue
    expect(liesWithin(p, q, a, b), JSON.stringify({ p, q, a, b })).toBe(least < 0)
    seen[least < 0 ? 'yes' : 'no']++
    if (least < 0 && Math.max(p, q) > Math.max(a, b)) seen.turned++
  }
  expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(500)
  expect(seen.turned).toBeGreaterThan(10)
})

test('a crate stands in a lift turned on its floor, or lies in it, or does not go in', () => {
  const cabin = { width: 1400, height: 2200, depth: 2600 }
  expect(fitsLift({ width: 2500, height: 2000, depth: 400 }, cabin)).toBe('upright')
  expect(fitsLift({ width: 400, height: 2500, depth: 1200 }, cabin)).toBe('tipped')
  expect(fitsLift({ width: 1500, height: 2500, depth: 1450 }, cabin)).toBe('no')
  expect(overLift({ width: 1500, height: 2500, depth: 1450 }, cabin)).toBe(50)
  // On the floor of 1 400 by 2 600, whose diagonal is 2 953; a panel of 3 200 leans in 2 200 by 2 600, diagonal 3 406.
  expect(fitsLift({ width: 2800, height: 2000, depth: 120 }, cabin)).toBe('turned')
  expect(fitsLift({ width: 3200, height: 1300, depth: 60 }, cabin)).toBe('leaning')
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
