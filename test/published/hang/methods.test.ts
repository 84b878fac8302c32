/** Methods besides wire and rings against values that stand elsewhere, each with its source beside it. */
import { describe, expect, test } from 'vitest'
import { bestHooks } from '../../../src/hang/method-wire.ts'
import { POUND } from '../../../src/hang/physics.ts'
import { pullOut } from '../../../src/hang/pull-out.ts'
import { floorLoad } from '../../../src/hang/standing.ts'
import { solveWire } from '../../../src/hang/wire.ts'
import { nailWithdrawal } from '../../../src/hang/withdrawal.ts'
import { ask, codes, figure } from '../../unit/hang/ask.ts'
import { plainWall } from '../../unit/hang/sample.ts'

const IN = 25.4
const FOOT = 12 * IN

// Common practice, no source: a large museum warns of 600 lb in a base 18 in square on a floor for 200 lb/ft².
test('600 lb in a base 18 in square: 267 lb/ft², more than 200', () => {
  const perFoot = floorLoad(600 * POUND, 18 * IN, 18 * IN) * ((FOOT / 1000) ** 2 / POUND)
  expect(perFoot).toBeCloseTo(266.67, 2)
  const square = (1 / POUND) * (FOOT / 1000) ** 2
  const answer = ask(
    'plinth',
    { base: { height: 900, width: 18 * IN, depth: 18 * IN, mass: 100 * POUND }, floor: 200 / square },
    { work: { height: 400, width: 300, mass: 500 * POUND }, centre: { x: 3000, y: 1100 } },
  )
  expect(figure(answer, 'floor-load') * square).toBeCloseTo(266.67, 2)
  expect(codes(answer)).toContain('floor-overloaded')
  expect(answer.figures.find(one => one.key === 'floor-load')?.working).toContain('267 lb/ft²')
})

describe('nails pulled straight out of wood', () => {
  const pounds = (gravity: number, inches: number, deep: number) =>
    nailWithdrawal({ gravity, diameter: inches * IN, into: deep * IN }).allowableKg / POUND

  // engineeringtoolbox.com/nails-spikes-withdrawal-load-d_1814.html, table for G 0.5 over the whole length, pounds. Diameters are the wire gauges of those nails.
  test.each([
    ['2d', 0.072, 1, 17.6],
    ['3d', 0.083, 1.25, 25.3],
    ['4d', 0.109, 1.5, 39.9],
    ['6d', 0.12, 2, 58.5],
    ['8d', 0.134, 2.5, 81.7],
    ['10d', 0.148, 3, 108],
    ['16d', 0.165, 3.5, 141],
    ['20d', 0.203, 4, 198],
  ])('%s', (_, diameter, long, printed) => {
    expect(Math.abs(pounds(0.5, diameter, long) - printed)).toBeLessThan(printed > 100 ? 0.5 : 0.05)
  })

  test('two nails of 3 mm, 25 mm deep behind a stretcher bar', () => {
    const bars = { left: { bar: 40 }, right: { bar: 40 }, clearance: 18 }
    const nail = { name: 'nail', kind: 'nail', holeOffset: -1.5, ratedKg: 20, shank: 3, length: 38 } as const
    const answer = ask('stretcher-bar', bars, { fixings: [nail] })
    expect(figure(answer, 'nails-hold')).toBeCloseTo(
      2 * nailWithdrawal({ gravity: 0.42, diameter: 3, into: 25 }).allowableN,
      9,
    )
  })
})

// Worked example of the trade notes (derived there): 86 kg, e 67 mm, v 1 510 mm gives 3.8 kgf.
test('86 kg, 67 mm out and 1 510 mm up: 3.8 kgf', () => {
  expect(pullOut(86, 67, 1510) / 9.80665).toBeCloseTo(3.8, 1)
})

// Worked example of the trade notes: 1.0 × 0.7 m at 300 g/m² is 0.21 kg, the magnets pull 20 times that.
test('a sheet of 300 g/m²', () => {
  const sheet = { hold: 'magnets', touch: 'margins', paper: 300 }
  const answer = ask('sheet', sheet, { work: { height: 700, width: 1000 } })
  expect(figure(answer, 'sheet-weight')).toBeCloseTo(0.21, 12)
  expect(figure(answer, 'needed-pull') / 9.80665).toBeCloseTo(4.2, 9)
})

// Slings under 30° from the horizontal are not to be used: ashleysling.com/calculating-sling-angles/, usnetting.com
// (safety tips), both citing OSHA 1910.184 and ASME B30.9. The same least angle serves a picture's wire.
describe('the spacing that a wire is given', () => {
  const wire = { by: 'drop', drop: 78, apart: 0 } as const

  test('scenario 3: 30° needs 241.3, so 245 is offered', () => {
    const solved = solveWire({ rings: 500, ringDrop: 180, wire, hooks: 200 })
    expect(solved.hooksForLeastAngle).toBeCloseTo(241.3, 1)
    expect(bestHooks(solved, 50.8)).toBe(245)
    const there = solveWire({ rings: 500, ringDrop: 180, wire, hooks: 245 })
    expect(there.angle).toBeGreaterThanOrEqual(30)
    expect(there.tensionFactor).toBeLessThanOrEqual(1)
  })

  // 2 in of drop hide the hook: common practice, no source.
  test('a long wire is held wide enough to hide its hooks', () => {
    const solved = solveWire({ rings: 500, ringDrop: 180, wire: { by: 'drop', drop: 10, apart: 0 }, hooks: 300 })
    const best = bestHooks(solved, 50.8)
    if (best === null) throw new Error('a spacing expected')
    const at = (hooks: number) =>
      solveWire({ rings: 500, ringDrop: 180, wire: { by: 'length', length: solved.length }, hooks })
    expect(at(best).drop).toBeGreaterThanOrEqual(50.8)
    expect(at(best - 5).drop).toBeLessThan(50.8)
  })

  test('rings too near the top hide no hook', () => {
    const solved = solveWire({ rings: 500, ringDrop: 50, wire: { by: 'length', length: 505 }, hooks: 250 })
    expect(bestHooks(solved, 50.8)).toBeNull()
  })
})

// 3-4-5: no published example of a work on one rail hook was found. Legs at 53.13° pull 0.625 of the weight each.
test('one rail hook over rings 60 apart, 40 above them: legs of 50', () => {
  const back = { left: { drop: 50 }, right: { drop: 50 }, spacing: 60, way: 'one-point', by: { with: 'cable' } }
  const work = { height: 200, width: 100, mass: 1 }
  const answer = ask('picture-rail', back, {
    work,
    centre: { x: 1000, y: 1000 },
    wall: { ...plainWall, rail: [[0, 1090]] },
  })
  expect(answer.hangers.map(one => one.length)).toEqual([50, 50])
  expect(figure(answer, 'pull-left') / 9.80665).toBeCloseTo(0.625, 9)
})
