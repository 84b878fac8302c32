/** Marks: printed numbers that add up, two routes to one height, what stands behind a mark, and what each finding says. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { centreFromRule, ruleFromCentre } from '../../../src/hang/height.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import { printedText } from '../../../src/hang/printing.ts'
import { floorAt, studsBetween, toNearestStud } from '../../../src/hang/wall.ts'
import { hook, plainWall, question, screw } from './sample.ts'

const hung = fc.record({
  height: fc.double({ min: 100, max: 2000, noNaN: true }),
  width: fc.double({ min: 100, max: 2000, noNaN: true }),
  dropL: fc.double({ min: 0.01, max: 0.9, noNaN: true }),
  dropR: fc.double({ min: 0.01, max: 0.9, noNaN: true }),
  insetL: fc.double({ min: 0, max: 0.4, noNaN: true }),
  insetR: fc.double({ min: 0, max: 0.4, noNaN: true }),
  x: fc.double({ min: 1000, max: 8000, noNaN: true }),
  y: fc.double({ min: 1000, max: 2000, noNaN: true }),
  datum: fc.double({ min: 900, max: 1800, noNaN: true }),
  k: fc.double({ min: -10, max: 30, noNaN: true }),
})

function ask(w: typeof hung extends fc.Arbitrary<infer T> ? T : never) {
  return marksFor(
    question({
      work: { height: w.height, width: w.width, mass: 5 },
      back: {
        method: 'd-rings',
        seenFrom: 'back',
        data: {
          left: { drop: w.dropL * w.height, inset: w.insetL * w.width },
          right: { drop: w.dropR * w.height, inset: w.insetR * w.width },
        },
      },
      centre: { x: w.x, y: w.y },
      wall: { ...plainWall, datum: w.datum },
      fixings: [{ ...hook, holeOffset: w.k }],
    }),
  )
}

describe('properties', () => {
  test('printed numbers add up in each unit and stay near the exact ones', () => {
    fc.assert(
      fc.property(hung, w => {
        const { marks, printed } = ask(w)
        for (const unit of ['mm', 'inches'] as const) {
          const size = unit === 'mm' ? 1 : 25.4
          const step = unit === 'mm' ? 0.5 : 25.4 / 32
          expect(printed.rightEdge[unit]).toBe(printed.leftEdge[unit] + printed.width[unit])
          expect(printed.top[unit]).toBe(printed.bottom[unit] + printed.height[unit])
          expect(marks[1]?.printed.x[unit]).toBe((marks[0]?.printed.x[unit] ?? 0) + (printed.between?.[unit] ?? 0))
          for (const mark of marks) {
            expect(mark.printed.fromFloor[unit]).toBe(printed.datum[unit] + mark.printed.fromLine[unit])
            expect(mark.printed.holeFromFloor[unit]).toBe(mark.printed.fromFloor[unit] + mark.printed.holeOffset[unit])
            // One rounding each for heights, since the line itself is set up at its printed number.
            expect(Math.abs(mark.printed.fromFloor[unit] * size - mark.bearing.y)).toBeLessThan(step + 1e-6)
            expect(Math.abs(mark.printed.x[unit] * size - mark.bearing.x)).toBeLessThan(2 * step + 1e-6)
          }
        }
      }),
    )
  })

  test('the second route agrees, and the hole is its own offset from the bearing point', () => {
    fc.assert(
      fc.property(hung, w => {
        const { marks, secondRoute } = ask(w)
        expect(secondRoute.every(route => route.agrees)).toBe(true)
        for (const mark of marks) {
          expect(mark.hole.y - mark.bearing.y).toBeCloseTo(w.k, 6)
          expect(mark.hole.x).toBe(mark.bearing.x)
        }
      }),
    )
  })

  test('a height rule goes both ways', () => {
    const rules = fc.constantFrom('centre', 'top', 'bottom', 'eye', 'hand' as const)
    const number = fc.double({ min: 1, max: 3000, noNaN: true })
    fc.assert(
      fc.property(rules, number, number, fc.double({ min: 0, max: 1, noNaN: true }), (rule, y, height, f) => {
        const back = centreFromRule(ruleFromCentre(rule, y, height, f), height)
        expect(back).toBeCloseTo(y, 6)
      }),
    )
  })
})

describe('heights', () => {
  test('eye a third of the way down: E + f H − drop', () => {
    const centre = centreFromRule({ rule: 'eye', y: 1550, eyeFraction: 1 / 3 }, 900)
    const answer = marksFor(
      question({
        work: { height: 900, width: 710 },
        centre: { x: 2000, y: centre },
        height: { rule: 'eye', eyeFraction: 1 / 3 },
      }),
    )
    expect(answer.marks[0]?.bearing.y).toBeCloseTo(1550 + 300 - 140, 9)
    expect(answer.working.find(line => line.key === 'bearing')?.mm.expression).toBe('1\u2009550 + 0.3333 × 900 − 140')
  })

  test('top and bottom rules write their own working', () => {
    const working = (rule: 'top' | 'bottom') =>
      marksFor(question({ height: { rule } })).working.find(line => line.key === 'bearing')?.mm
    expect(working('top')).toEqual({ expression: '1\u2009935 − 140', value: '1\u2009795' })
    expect(working('bottom')).toEqual({ expression: '1\u2009025 + 910 − 140', value: '1\u2009795' })
  })
})

describe('the wall behind and under a mark', () => {
  test('floor: linear between points, level beyond, 0 at the left end', () => {
    expect(floorAt([], 100)).toBe(0)
    expect(floorAt([[6000, -38]], 3000)).toBe(-19)
    expect(
      floorAt(
        [
          [4000, 10],
          [2000, -10],
        ],
        3000,
      ),
    ).toBe(0)
    expect(
      floorAt(
        [
          [0, 5],
          [1000, 15],
        ],
        9000,
      ),
    ).toBe(10)
  })

  test('studs', () => {
    const wall = { studFirst: 200, studSpacing: 400, length: 2000 }
    expect(studsBetween(wall, 500, 1500)).toEqual([600, 1000, 1400])
    expect(toNearestStud(wall, 1150)).toBe(-150)
    expect(toNearestStud({ ...wall, studSpacing: null }, 1150)).toBeNull()
  })

  test('each mark says whether it is on a stud or backed', () => {
    const answer = marksFor(
      question({ wall: { ...plainWall, studFirst: 67, studSpacing: 400, backingFrom: 1220, backingTo: 1800 } }),
    )
    expect(answer.marks.map(mark => mark.onStud)).toEqual([true, false])
    // The holes are at 1 809, above the backing.
    expect(answer.marks.map(mark => mark.backed)).toEqual([false, false])
  })

  test('an unrated screw off stud and backing is to settle, a rated one is not', () => {
    const wall = { ...plainWall, studFirst: 0, studSpacing: 600 }
    const codes = (ratedKg: number | null) =>
      marksFor(question({ wall, fixings: [{ ...screw, ratedKg }] })).findings.map(found => found.code)
    expect(codes(null)).toContain('mark-off-backing')
    expect(codes(null)).toContain('rating-unknown')
    expect(codes(25)).not.toContain('mark-off-backing')
  })

  test('keep-clears, openings and services', () => {
    const box = { id: 'k', label: '', width: 80, height: 80, reason: '', margin: 100 }
    const codes = (kind: string, x: number, y: number) =>
      marksFor(question({ wall: { ...plainWall, keepClears: [{ ...box, kind, x, y }] } }))
        .findings.filter(found => found.figures.keepClear === 'k')
        .map(found => [found.severity, found.code])
    expect(codes('grille', 2030, 1780)).toEqual([['stop', 'mark-on-keep-clear']])
    expect(codes('grille', 2100, 1780)).toEqual([['settle', 'mark-in-margin']])
    expect(codes('outlet', 2030, 300)).toEqual([['settle', 'mark-in-line-with-services']])
    expect(codes('grille', 2030, 300)).toEqual([])
    const door = { id: 'o', kind: 'door', label: '', x: 2600, y: 0, width: 900, height: 2100 }
    const found = marksFor(question({ wall: { ...plainWall, openings: [door] } })).findings
    expect(found.filter(finding => finding.code === 'mark-in-opening').map(finding => finding.severity)).toEqual([
      'stop',
    ])
  })

  test('at the back of a niche that holds the whole work they are right, with what nobody knows told', () => {
    const { work, centre } = question({})
    const around = (margin: number) => ({
      ...{ id: 'n', kind: 'niche', label: '' },
      x: centre.x - work.width / 2 - margin,
      y: centre.y - work.height / 2 - margin,
      width: work.width + 2 * margin,
      height: work.height + 2 * margin,
    })
    const codes = (margin: number) =>
      marksFor(question({ wall: { ...plainWall, openings: [around(margin)] } })).findings.map(({ code }) => code)
    expect(codes(100)).toContain('marks-in-niche')
    expect(codes(100)).not.toContain('mark-in-opening')
    // Its frame over the edge: the marks fall into a hole.
    expect(codes(-20)).toContain('mark-in-opening')
    expect(codes(-20)).not.toContain('marks-in-niche')
  })

  test('too near the end, and off the wall', () => {
    const codes = (x: number) => marksFor(question({ centre: { x, y: 1480 } })).findings.map(found => found.code)
    expect(codes(310)).toContain('mark-near-end')
    expect(codes(200)).toContain('mark-off-wall')
  })
})

describe('findings and figures', () => {
  test('spacing against insets: 1 mm is let pass, more is measured again', () => {
    const ask2 = (spacing: number) =>
      marksFor(
        question({
          back: {
            method: 'd-rings',
            seenFrom: 'front',
            data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 }, spacing },
          },
        }),
      )
    expect(ask2(601).spacing?.agrees).toBe(true)
    const off = ask2(603)
    expect(off.spacing).toEqual({ measured: 603, fromInsets: 600, difference: 3, agrees: false })
    expect(off.findings.find(found => found.code === 'spacing-differs')?.severity).toBe('settle')
    expect(off.marks[1]?.printed.x.mm).toBe(2670)
  })

  test('two drops give two heights and say so', () => {
    const answer = marksFor(
      question({
        back: {
          method: 'd-rings',
          seenFrom: 'front',
          data: { left: { drop: 140, inset: 55 }, right: { drop: 146, inset: 55 } },
        },
      }),
    )
    expect(answer.marks.map(mark => mark.printed.fromFloor.mm)).toEqual([1795, 1789])
    expect(answer.findings.find(found => found.code === 'drops-differ')?.figures).toMatchObject({ difference: 6 })
    expect(answer.working.map(line => line.key)).toEqual(
      expect.arrayContaining(['bearing-left', 'bearing-right', 'from-below-left', 'from-below-right']),
    )
    expect(answer.level?.error).toBe(0)
  })

  test('off-centre mass: the heavier side decides', () => {
    const answer = marksFor(question({ work: { height: 910, width: 710, mass: 9.5, massFromLeft: 205 } }))
    expect(answer.loads?.shares.map(share => share.shareKg)).toEqual([
      expect.closeTo((9.5 * 450) / 600, 9),
      expect.closeTo((9.5 * 150) / 600, 9),
    ])
    expect(answer.loads?.holds).toBe(false)
  })

  test('a mass beside both fixings lifts one of them off', () => {
    const answer = marksFor(question({ work: { height: 910, width: 710, mass: 2, massFromLeft: 20 } }))
    expect(answer.findings.find(found => found.code === 'mass-outside-fixings')?.severity).toBe('stop')
  })

  test('each fixing has its own offset', () => {
    const answer = marksFor(question({ fixings: [hook, { ...hook, name: 'Small hook', holeOffset: 10 }] }))
    expect(answer.marks.map(mark => mark.printed.holeFromFloor.mm)).toEqual([1809, 1805])
    expect(answer.marks.map(mark => mark.printed.fromFloor.mm)).toEqual([1795, 1795])
    const holes = answer.working.filter(line => line.key.startsWith('hole'))
    expect(holes.map(line => line.mm.expression)).toEqual(['1\u2009795 + 14', '1\u2009795 + 10'])
  })

  test('a cleat: its edge, its side play, screws on studs, its rating spread over them', () => {
    const answer = marksFor(
      question({
        work: { height: 800, width: 1400, mass: 40 },
        back: { method: 'cleat', seenFrom: 'back', data: { drop: 60, length: 1200, wallLength: 1180 } },
        centre: { x: 2000, y: 1480 },
        wall: { ...plainWall, studFirst: 0, studSpacing: 400 },
        fixings: [{ name: 'Cleat', kind: 'cleat', holeOffset: 12, ratedKg: 200 }],
      }),
    )
    expect(answer.marks.map(mark => mark.bearing)).toEqual([
      { x: 1410, y: 1820 },
      { x: 2590, y: 1820 },
    ])
    expect(answer.marks.map(mark => mark.printed.holeFromFloor.mm)).toEqual([1832, 1832])
    expect(answer.cleat?.sidePlay).toBe(10)
    expect(answer.cleat?.screws.map(each => each.x)).toEqual([1600, 1600, 2000, 2000, 2400, 2400])
    expect(answer.loads?.shares.map(share => share.shareKg)).toEqual(
      Array.from({ length: 6 }, () => expect.closeTo(40 / 6, 9)),
    )
    expect(answer.loads?.oneGone?.leftKg).toBeCloseTo(200 - 200 / 6, 9)
    expect(answer.loads?.holds).toBe(true)
    expect(answer.cautions.some(text => text.startsWith('Two people'))).toBe(true)
  })

  test('sentences speak the reader’s unit', () => {
    const off = question({
      unit: 'in',
      back: {
        method: 'd-rings',
        seenFrom: 'front',
        data: { left: { drop: 140, inset: 55 }, right: { drop: 140, inset: 55 }, spacing: 609.6 },
      },
    })
    const text = marksFor(off).findings.find(found => found.code === 'spacing-differs')?.text
    expect(text).toContain('Measured 24 in')
    expect(printedText({ mm: 1795, inches: 70.6875 }, 'cm')).toBe('179.5')
  })
})
