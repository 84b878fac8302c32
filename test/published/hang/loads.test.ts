/**
 * Heights, wire tension and loads against values printed elsewhere. Pounds stand for kilograms where a table is in
 * pounds: the formulas are proportional.
 */
import { describe, expect, test } from 'vitest'
import { loadsOf, sharesByMoments, tilt } from '../../../src/hang/loads.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import { POUND, radians } from '../../../src/hang/physics.ts'
import { printedText } from '../../../src/hang/printing.ts'
import { solveWire, wireForces } from '../../../src/hang/wire.ts'
import { plainWall, question } from '../../unit/hang/sample.ts'

const IN = 25.4

describe('hook height = centre + height/2 − drop', () => {
  const hang = (height: number, drop: number, centre = 57) => {
    const side = { drop: drop * IN, inset: 2 * IN }
    const answer = marksFor(
      question({
        work: { height: height * IN, width: 30 * IN },
        back: { method: 'd-rings', seenFrom: 'front', data: { left: side, right: side } },
        centre: { x: 1000, y: centre * IN },
        wall: { ...plainWall, datum: centre * IN },
        height: { rule: 'centre' },
      }),
    )
    return { text: printedText(answer.marks[0]?.printed.fromFloor ?? { mm: 0, inches: 0 }, 'in'), answer }
  }

  // beecham.ca/how_to_hang_your_painting.html
  test('57 in, 20 in high, drop 2 in: 65 in', () => expect(hang(20, 2).text).toBe('65'))
  // markhamartcollective.com/2014/11/how-to-hang-painting.html
  test('57 in, 30 in high, drop 1 in: 71 in', () => expect(hang(30, 1).text).toBe('71'))

  // A museum's own worked case, common practice: C 58, H 40, d 8; from 36 to the edge, inset 2, rings 26 apart.
  test('58 in, 40 in high, drop 8 in: 70 in, marks at 38 and 64 in', () => {
    const answer = marksFor(
      question({
        work: { height: 40 * IN, width: 30 * IN },
        back: {
          method: 'd-rings',
          seenFrom: 'front',
          data: { left: { drop: 8 * IN, inset: 2 * IN }, right: { drop: 8 * IN, inset: 2 * IN }, spacing: 26 * IN },
        },
        centre: { x: (36 + 15) * IN, y: 58 * IN },
        wall: { ...plainWall, datum: 58 * IN },
        height: { rule: 'centre' },
      }),
    )
    expect(answer.edges.top / IN).toBeCloseTo(78, 9)
    expect(answer.marks.map(mark => printedText(mark.printed.x, 'in'))).toEqual(['38', '64'])
    expect(printedText(answer.marks[0]?.printed.fromFloor ?? { mm: 0, inches: 0 }, 'in')).toBe('70')
    const bearing = answer.working.find(line => line.key === 'bearing')
    expect(bearing?.in).toEqual({ expression: '58 + 40 / 2 − 8', value: '70' })
  })
})

describe('wire tension', () => {
  // Picture chart for 10 lb, thegrumble.com/threads/framing-wire-angles.7194/: printed in whole pounds.
  test.each([
    [60, 5.774, 6],
    [45, 7.071, 7],
    [30, 10, 10],
    [15, 19.319, 19],
    [10, 28.794, 29],
    [5, 57.369, 57],
    [2, 143.269, 143],
  ])('10 lb at %d°: %d', (angle, exact, printed) => {
    const { tensionKg } = wireForces(10, radians(angle), false)
    expect(tensionKg).toBeCloseTo(exact, 3)
    expect(Math.round(tensionKg)).toBe(printed)
  })

  // Sling load factors L/H, ashleysling.com/calculating-sling-angles/. Some are printed 0.002 off.
  test.each([
    [90, 1],
    [85, 1.004],
    [80, 1.015],
    [75, 1.035],
    [70, 1.064],
    [65, 1.104],
    [60, 1.155],
    [55, 1.221],
    [50, 1.305],
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the figure as the table prints it
    [45, 1.414],
    [40, 1.555],
    [35, 1.742],
    [30, 2],
  ])('load factor at %d°: %d', (angle, factor) => {
    expect(Math.abs(wireForces(2, radians(angle), false).tensionKg - factor)).toBeLessThan(0.002)
  })

  // Same page: 1200 lb on a leg 120 long over a height of 96 pulls 1500 lb.
  test('a leg of 120 over 96: 1.25 times its share', () => {
    const answer = solveWire({ rings: 144, ringDrop: 100, wire: { by: 'length', length: 240 }, hooks: 0, mass: 2400 })
    expect(answer.rise).toBeCloseTo(96, 9)
    expect(answer.forces?.tensionKg).toBeCloseTo(1500, 9)
  })

  // orcbs.msu.edu, hitch use: 30° and 60° from the vertical raise 1000 lb per leg to 1154 and 2000 lb.
  test('legs at 30° and 60° from the vertical', () => {
    expect(wireForces(2000, radians(60), false).tensionKg).toBeCloseTo(1154.7, 1)
    expect(wireForces(2000, radians(30), false).tensionKg).toBeCloseTo(2000, 6)
  })

  // 3-4-5 triangles: no published example of a whole wire was found.
  test('60 apart and 100 long rises 40 at 53.13°, 0.625 of the weight', () => {
    const answer = solveWire({ rings: 60, ringDrop: 50, wire: { by: 'length', length: 100 }, hooks: 0, mass: 1 })
    expect(answer.rise).toBeCloseTo(40, 12)
    expect(answer.drop).toBeCloseTo(10, 12)
    expect(answer.angle).toBeCloseTo(53.13, 2)
    expect(answer.forces?.tensionKg).toBeCloseTo(0.625, 12)
  })

  test('80 apart, 120 long, hooks 20 apart rises 40', () => {
    const answer = solveWire({ rings: 80, ringDrop: 50, wire: { by: 'length', length: 120 }, hooks: 20 })
    expect(answer.rise).toBeCloseTo(40, 12)
    expect(answer.forces).toBeNull()
  })
})

describe('common practice, no source', () => {
  const at = { x: 100 * IN, y: 60 * IN }
  const wall = { ...plainWall, datum: 60 * IN }
  const xs = (answer: ReturnType<typeof marksFor>) => answer.marks.map(mark => printedText(mark.printed.x, 'in'))

  test('D-rings 23 1/2 in apart: marks 11 3/4 in each side of the centre', () => {
    const answer = marksFor(
      question({
        work: { height: 30 * IN, width: 26 * IN },
        back: {
          method: 'd-rings',
          seenFrom: 'back',
          data: { left: { drop: 100 }, right: { drop: 100 }, spacing: 23.5 * IN },
        },
        centre: at,
        wall,
      }),
    )
    expect(answer.marks.map(mark => (mark.bearing.x - at.x) / IN)).toEqual([
      expect.closeTo(-11.75, 9),
      expect.closeTo(11.75, 9),
    ])
    expect(xs(answer)).toEqual(['88 1/4', '111 3/4'])
  })

  test('hooks 12 in apart: 6 in each side; a wire drop of 5 in bears 5 in below the top', () => {
    const top = 72 * IN
    const answer = marksFor(
      question({
        work: { height: 24 * IN, width: 30 * IN },
        back: {
          method: 'wire',
          seenFrom: 'back',
          data: {
            left: { drop: 8 * IN, inset: 3 * IN },
            right: { drop: 8 * IN, inset: 3 * IN },
            wire: { by: 'drop', drop: 5 * IN, apart: 12 * IN },
          },
        },
        centre: { x: at.x, y: top - 12 * IN },
        height: { rule: 'top' },
        hooksApart: 12 * IN,
        wall,
      }),
    )
    expect(xs(answer)).toEqual(['94', '106'])
    for (const mark of answer.marks) expect(top - mark.bearing.y).toBeCloseTo(5 * IN, 9)
    expect(answer.wire?.plainSubtraction?.tooHigh).toBeCloseTo(0, 9)
  })

  test('a stretcher bar of 3/4 in: nails bear 3/4 in below the top, a third of the way in, clear of braces', () => {
    const back = (ranges: readonly { readonly from: number; readonly to: number }[]) => ({
      method: 'stretcher-bar',
      seenFrom: 'front' as const,
      data: { left: { bar: 0.75 * IN }, right: { bar: 0.75 * IN }, ranges: ranges.map(range => ({ ...range })) },
    })
    const nail = { name: 'Nail', kind: 'nail', holeOffset: -1.5, ratedKg: 10, shank: 3 } as const
    const plain = marksFor(
      question({ work: { height: 900, width: 1200 }, back: back([]), centre: at, wall, fixings: [nail] }),
    )
    for (const mark of plain.marks) {
      expect(plain.edges.top - mark.bearing.y).toBeCloseTo(0.75 * IN, 9)
      expect(mark.bearing.y - mark.hole.y).toBeCloseTo(1.5, 9)
    }
    expect(plain.marks.map(mark => mark.fromLeft)).toEqual([expect.closeTo(400, 9), expect.closeTo(800, 9)])
    const braced = marksFor(
      question({
        work: { height: 900, width: 1200 },
        back: back([{ from: 380, to: 440 }]),
        centre: at,
        wall,
        fixings: [nail],
      }),
    )
    expect(braced.marks[0]?.fromLeft).toBeCloseTo(380 - 10 - 1.5, 9)
    expect(braced.marks[1]?.fromLeft).toBeCloseTo(800, 9)
    expect(braced.findings.map(found => found.code)).toContain('nail-moved-off-brace')
  })

  test('two hooks of 30 lb are ample up to 15 lb, and either alone holds it', () => {
    const holds = (pounds: number) =>
      loadsOf({
        mass: pounds * POUND,
        at: [0, 300],
        massAt: 150,
        sharing: 'even',
        ratedKg: [30 * POUND, 30 * POUND],
        houseFactor: 4,
      })
    expect(holds(15)?.holds).toBe(true)
    expect(holds(15)?.oneGone).toMatchObject({ holds: true })
    expect(holds(15.01)?.holds).toBe(false)
    expect(holds(15.01)?.oneGone?.holds).toBe(true)
  })
})

describe('loads by moments', () => {
  test('two fixings: the lever rule', () => {
    const [left, right] = sharesByMoments([100, 500], 200)
    expect(left).toBeCloseTo((500 - 200) / 400, 12)
    expect(right).toBeCloseTo((200 - 100) / 400, 12)
  })

  test('many fixings: forces and moments balance', () => {
    const at = [0, 130, 260, 610]
    const shares = sharesByMoments(at, 333)
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12)
    expect(shares.reduce((sum, share, i) => sum + share * (at[i] ?? 0), 0)).toBeCloseTo(333, 9)
  })

  test('an unknown rating is never a pass, a single fixing leaves nothing', () => {
    const one = { at: [0], massAt: 0, sharing: 'even', houseFactor: 4 } as const
    expect(loadsOf({ ...one, mass: 2, ratedKg: [null] })?.holds).toBeNull()
    expect(loadsOf({ ...one, mass: 2, ratedKg: [10] })?.oneGone).toBeNull()
    expect(loadsOf({ ...one, mass: null, ratedKg: [10] })).toBeNull()
  })

  test('marks 600 apart and 3 mm out tilt a work 900 wide by 0.286°, 4.5 mm at its corners', () => {
    const tilted = tilt(3, 600, 900)
    expect(tilted.degrees).toBeCloseTo((Math.atan(0.005) * 180) / Math.PI, 12)
    expect(tilted.corners).toBeCloseTo(4.5, 12)
  })
})
