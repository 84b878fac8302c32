/**
 * The worked scenarios 2, 3 and 5 of the trade notes (invented data, numbers computed by an independent script there),
 * to the digit. Inches and millimetres are each checked for themselves.
 */
import { describe, expect, test } from 'vitest'
import { marksFor } from '../../../src/hang/marks.ts'
import { printedText } from '../../../src/hang/printing.ts'
import { floorAt } from '../../../src/hang/wall.ts'
import { solveWire } from '../../../src/hang/wire.ts'
import { plainWall, question } from '../../unit/hang/sample.ts'

const SIX = [
  { key: 'A', height: 620, width: 480, drop: 95, inset: 40, left: 900, bears: 1695 },
  { key: 'B', height: 910, width: 710, drop: 140, inset: 55, left: 2012, bears: 1795 },
  { key: 'C', height: 540, width: 540, drop: 70, inset: 35, left: 3354, bears: 1680 },
  { key: 'D', height: 1220, width: 960, drop: 210, inset: 60, left: 4526, bears: 1880 },
  { key: 'E', height: 620, width: 480, drop: 95, inset: 40, left: 6118, bears: 1695 },
  { key: 'F', height: 760, width: 1010, drop: 130, inset: 50, left: 7230, bears: 1730 },
] as const

function ask(work: (typeof SIX)[number]) {
  const side = { drop: work.drop, inset: work.inset }
  return marksFor(
    question({
      work: { height: work.height, width: work.width, mass: 9.5 },
      back: { method: 'd-rings', seenFrom: 'front', data: { left: side, right: side } },
      centre: { x: work.left + work.width / 2, y: 1480 },
      height: { rule: 'centre' },
    }),
  )
}

describe('scenario 2: a wall of six on D-rings', () => {
  test.each(SIX)('$key bears at $bears', work => {
    const answer = ask(work)
    expect(answer.marks.map(mark => mark.bearing.y)).toEqual([work.bears, work.bears])
    expect(answer.marks[0]?.printed.fromFloor.mm).toBe(work.bears)
    expect(answer.marks[0]?.bearing.x).toBe(work.left + work.inset)
    expect(answer.secondRoute.every(route => route.agrees)).toBe(true)
  })

  test('D has its rings at 4 586 and 5 426', () => {
    expect(ask(SIX[3]).marks.map(mark => mark.printed.x.mm)).toEqual([4586, 5426])
  })

  test('B in inches: 70 11/16 up, 81 3/8 and 105 along', () => {
    const { marks, printed } = ask(SIX[1])
    expect(marks.map(mark => printedText(mark.printed.fromFloor, 'in'))).toEqual(['70 11/16', '70 11/16'])
    expect(marks.map(mark => printedText(mark.printed.x, 'in'))).toEqual(['81 3/8', '105'])
    expect(printedText(printed.datum, 'in')).toBe('58 1/4')
    expect(marks[0]?.printed.fromLine).toEqual({ mm: 315, inches: 12.4375 })
    const first = ask(SIX[0]).printed
    expect(printedText({ mm: 0, inches: printed.leftEdge.inches - first.rightEdge.inches }, 'in')).toBe('24 7/8')
  })

  test('the working reads as on the wall sheet', () => {
    const lines = new Map(ask(SIX[1]).working.map(line => [line.key, line]))
    expect(lines.get('bearing')?.mm).toEqual({ expression: '1\u2009480 + 910 / 2 − 140', value: '1\u2009795' })
    expect(lines.get('from-below')?.mm).toEqual({ expression: '1\u2009025 + 770', value: '1\u2009795' })
    expect(lines.get('hole')?.mm).toEqual({ expression: '1\u2009795 + 14', value: '1\u2009809' })
    expect(lines.get('x-right')?.mm).toEqual({ expression: '2\u2009067 + 600', value: '2\u2009667' })
  })

  test('a hook of 13.6 kg fails for 9.5 kg at the house factor 4, one of 22.7 kg holds', () => {
    const weak = marksFor(question({ fixings: [{ name: 'Hook', kind: 'hook', holeOffset: 14, ratedKg: 13.6 }] }))
    expect(weak.loads?.holds).toBe(false)
    expect(weak.findings.find(found => found.code === 'load-exceeds')?.severity).toBe('stop')
    const strong = marksFor(question({}))
    expect(strong.loads?.holds).toBe(true)
    expect(strong.loads?.shares[0]?.shareKg).toBe(4.75)
    expect(strong.loads?.oneGone).toEqual({ wholeKg: 9.5, leftKg: 22.6796185, holds: true })
  })
})

describe('scenario 3: wire', () => {
  const given = { rings: 500, ringDrop: 180, wire: { by: 'drop', drop: 78, apart: 0 }, mass: 11 } as const

  test('hooks 200 apart: drop 100.0, tension 11.7 kgf, resultant 5.67 kgf leaning 14.0°', () => {
    const wire = solveWire({ ...given, hooks: 200 })
    expect(wire.length).toBeCloseTo(540.0, 1)
    expect(wire.drop).toBeCloseTo(100.0, 1)
    expect(wire.angle).toBeCloseTo(28.1, 1)
    expect(wire.forces?.tensionKg).toBeCloseTo(11.7, 1)
    expect(wire.forces?.tensionN).toBeCloseTo(114.6, 1)
    expect(wire.forces?.ringInwardKg).toBeCloseTo(10.3, 1)
    expect(wire.forces?.ringInwardN).toBeCloseTo(101.1, 1)
    expect(wire.forces?.hookDownKg).toBeCloseTo(5.5, 10)
    expect(wire.forces?.hookResultantKg).toBeCloseTo(5.67, 2)
    expect(wire.forces?.hookResultantN).toBeCloseTo(55.6, 1)
    expect(wire.forces?.hookLean).toBeCloseTo(14.0, 1)
    expect(wire.hooksForLeastAngle).toBeCloseTo(241.3, 1)
    expect(wire.plainSubtraction?.tooHigh).toBeCloseTo(22.0, 1)
  })

  test('one hook: 22.2°, 14.6 kgf, 13.5 kgf inwards, and its number is 1 722', () => {
    const wire = solveWire({ ...given, hooks: 0 })
    expect(wire.drop).toBeCloseTo(78, 9)
    expect(wire.angle).toBeCloseTo(22.2, 1)
    expect(wire.forces?.tensionKg).toBeCloseTo(14.6, 1)
    expect(wire.forces?.tensionN).toBeCloseTo(142.8, 1)
    expect(wire.forces?.ringInwardKg).toBeCloseTo(13.5, 1)
    expect(wire.forces?.ringInwardN).toBeCloseTo(132.2, 1)
    expect(wire.forces?.hookDownKg).toBeCloseTo(11, 10)
  })

  test('other spacings of the same wire: 88.3 and 106.5', () => {
    expect(solveWire({ ...given, hooks: 100 }).drop).toBeCloseTo(88.3, 1)
    expect(solveWire({ ...given, hooks: 250 }).drop).toBeCloseTo(106.5, 1)
  })

  const hung = (hooksApart: number) =>
    marksFor(
      question({
        work: { height: 640, width: 600, mass: 11 },
        back: {
          method: 'wire',
          seenFrom: 'back',
          data: {
            left: { drop: 180, inset: 50 },
            right: { drop: 180, inset: 50 },
            wire: { by: 'drop', drop: 78, apart: 0 },
          },
        },
        hooksApart,
      }),
    )

  test('marks: 1 700 on two hooks, 1 722 and a loud caution on one', () => {
    const two = hung(200)
    expect(two.marks.map(mark => mark.printed.fromFloor.mm)).toEqual([1700, 1700])
    expect(two.marks.map(mark => mark.bearing.x)).toEqual([2267, 2467])
    expect(two.findings.find(found => found.code === 'wire-flat')?.text).toContain('Hooks 241.3 mm apart')
    expect(two.findings.find(found => found.code === 'wire-drop-solved')?.text).toContain('22 mm too high')
    const one = hung(0)
    expect(one.marks.map(mark => mark.printed.fromFloor.mm)).toEqual([1722])
    expect(one.findings.map(found => found.code)).toContain('one-hook')
    expect(one.cautions[0]).toMatch(/^ONE HOOK/)
    expect(one.loads?.oneGone).toBeNull()
  })
})

describe('scenario 5: a floor that falls 38 mm in 6 000', () => {
  const wall = {
    ...plainWall,
    length: 6000,
    floor: [
      [0, 0],
      [6000, -38],
    ],
  } as const
  const rings = (spacing: number, drop: number) => ({
    method: 'd-rings',
    seenFrom: 'front' as const,
    data: { left: { drop }, right: { drop }, spacing },
  })

  test('G: +260 from the line, 1 749.5 above the floor at its mark', () => {
    const answer = marksFor(
      question({ wall, work: { height: 700, width: 600 }, back: rings(400, 90), centre: { x: 1700, y: 1480 } }),
    )
    expect(answer.marks[0]?.bearing.x).toBe(1500)
    expect(answer.marks[0]?.fromLine).toBe(260)
    expect(answer.marks[0]?.fromFloor).toBeCloseTo(1749.5, 9)
  })

  test('J: +190, 1 702.9 under its centre, 1 702.0 and 1 703.9 at its marks, 33 mm low from the floor', () => {
    const answer = marksFor(
      question({ wall, work: { height: 500, width: 400 }, back: rings(300, 60), centre: { x: 5200, y: 1480 } }),
    )
    expect(answer.marks.map(mark => mark.bearing.x)).toEqual([5050, 5350])
    expect(answer.marks.map(mark => mark.fromLine)).toEqual([190, 190])
    expect(answer.marks.map(mark => mark.fromFloor.toFixed(1))).toEqual(['1702.0', '1703.9'])
    expect((1670 - floorAt(wall.floor, 5200)).toFixed(1)).toBe('1702.9')
    expect(answer.printed.bearingAtCentre.mm).toBe(1703)
    expect(answer.marks.map(mark => mark.printed.fromFloor.mm)).toEqual([1702, 1704])
    expect(answer.findings.find(found => found.code === 'floor-slopes')?.text).toContain('33 mm low')
  })

  describe('J on two hangers from a rail +1 420 and +1 415 above the line', () => {
    const rail = {
      ...wall,
      rail: [
        [0, 1480 + 1420],
        [6000, 1480 + 1415],
      ],
    } as const
    const hung = (by: { with: 'cable' } | { with: 'chain'; pitch: number; adjuster: 'both' | 'longer' }) =>
      marksFor(
        question({
          wall: rail,
          work: { height: 500, width: 400, mass: 6 },
          back: {
            method: 'picture-rail',
            seenFrom: 'front',
            data: { left: { drop: 60 }, right: { drop: 60 }, spacing: 300, way: 'upright', by },
          },
          centre: { x: 5200, y: 1480 },
          fixings: [{ name: 'rail hook', kind: 'rail-hook', holeOffset: 0, ratedKg: 15 }],
        }),
      )

    test('cables 1 225.8 and 1 225.5 long', () => {
      const answer = hung({ with: 'cable' })
      expect(answer.hangers.map(one => one.length.toFixed(1))).toEqual(['1225.8', '1225.5'])
      expect(answer.hangers.map(one => one.from.x)).toEqual([5050, 5350])
      expect(answer.marks.map(mark => mark.fromLine)).toEqual([190, 190])
      const line = answer.working.find(one => one.key === 'hanger-left')
      expect(line?.mm).toEqual({ expression: '2\u2009895.8 − 1\u2009670', value: '1\u2009225.8' })
    })

    test('21 mm chain: 58 links leave 7.8 and 7.5 for the adjuster, both ways or only longer', () => {
      for (const adjuster of ['both', 'longer'] as const) {
        const figures = new Map(hung({ with: 'chain', pitch: 21, adjuster }).figures.map(one => [one.key, one.value]))
        expect([figures.get('links-left'), figures.get('links-right')]).toEqual([58, 58])
        expect([figures.get('rest-left')?.toFixed(1), figures.get('rest-right')?.toFixed(1)]).toEqual(['7.8', '7.5'])
      }
    })
  })
})
