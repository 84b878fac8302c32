/** What holds for every method and any work: two routes to each mark, the mirror, the contract's shape, whole loads. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mirrorBack } from '../../../src/hang/back.ts'
import { backAlone } from '../../../src/hang/back-alone.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import { marksAnswer, marksQuestion } from '../../../src/hang/marks-shape.ts'
import { methodKeys } from '../../../src/hang/method-keys.ts'
import { methods } from '../../../src/hang/methods.ts'
import { fixingFor, hung } from './backs.ts'

const runs = { numRuns: 60 }

test('the keys are those of the methods, in their order', () => {
  expect(methods.map(method => method.key)).toEqual(methodKeys)
})

describe.each(methodKeys)('%s', key => {
  const method = methods.find(one => one.key === key)
  if (method === undefined) throw new Error('no method')

  test('two routes agree, up and along, and holes keep their offset', () => {
    fc.assert(
      fc.property(hung(key), asked => {
        const { marks, edges, secondRoute } = marksFor(asked)
        expect(marks.length).toBeGreaterThan(0)
        expect(secondRoute).toHaveLength(marks.length)
        expect(secondRoute.every(route => route.agrees)).toBe(true)
        for (const mark of marks) {
          const fromRight = edges.right - (asked.work.width - mark.fromLeft)
          expect(Math.abs(mark.bearing.x - fromRight)).toBeLessThan(1e-6)
          const offset = mark.on === 'wall' ? mark.fixing.holeOffset : 0
          expect(mark.hole.y - mark.bearing.y).toBeCloseTo(offset, 6)
          expect(mark.fromFloor - mark.fromLine).toBeCloseTo(1480, 6)
        }
      }),
      runs,
    )
  })

  test('mirroring twice is the same, and a mirrored back gives the same marks', () => {
    fc.assert(
      fc.property(hung(key), asked => {
        const { width } = asked.work
        const { data, seenFrom } = asked.back
        const turned = mirrorBack(data, width)
        expect(mirrorBack(turned, width)).toEqual(data)
        const other = marksFor({
          ...asked,
          back: {
            ...asked.back,
            seenFrom: seenFrom === 'front' ? 'back' : 'front',
            // Mirrored JSON is JSON.
            data: turned as typeof data,
          },
        })
        expect(other.marks).toEqual(marksFor(asked).marks)
      }),
      runs,
    )
  })

  test('turned round, the marks stand mirrored', () => {
    fc.assert(
      fc.property(hung(key), asked => {
        const { width } = asked.work
        const places = (seenFrom: 'front' | 'back') =>
          marksFor({ ...asked, back: { ...asked.back, seenFrom } }).marks.map(mark => [
            Math.round(mark.fromLeft * 1e6) / 1e6,
            mark.drop,
          ])
        const front = places('front').map(([x, drop]) => [Math.round((width - (x ?? 0)) * 1e6) / 1e6, drop])
        const order = (a: readonly (number | undefined)[], b: readonly (number | undefined)[]) =>
          (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0)
        expect(places('back').sort(order)).toEqual(front.sort(order))
      }),
      runs,
    )
  })

  test('question and answer fit the contract and survive JSON', () => {
    fc.assert(
      fc.property(hung(key), asked => {
        expect(marksQuestion.parse(asked)).toEqual(asked)
        const answer = marksFor(asked)
        expect(marksAnswer.parse(answer)).toEqual(answer)
        expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
      }),
      { numRuns: 20 },
    )
  })

  test('the shares of the load are the whole of it, and nothing is a number that is none', () => {
    fc.assert(
      fc.property(hung(key), asked => {
        const { loads, figures, hangers, marks } = marksFor(asked)
        for (const figure of figures) expect(Number.isFinite(figure.value), figure.key).toBe(true)
        for (const hanger of hangers) expect(hanger.length).toBeGreaterThan(0)
        expect(new Set(figures.map(figure => figure.key)).size).toBe(figures.length)
        if (marks.every(mark => mark.on === 'floor')) expect(loads).toBeNull()
        if (loads === null) return
        expect(loads.shares.reduce((sum, share) => sum + share.shareKg, 0)).toBeCloseTo(loads.massKg, 6)
      }),
      runs,
    )
  })

  test('the back alone says nothing of a wall', () => {
    fc.assert(
      fc.property(hung(key), asked => {
        const { data, seenFrom } = asked.back
        const { findings, bearings } = backAlone({ method: key, data, seenFrom, work: asked.work })
        expect(bearings.length).toBeGreaterThan(0)
        const walls = ['rail-unknown', 'rail-rating-unknown', 'does-not-stand', 'lock-not-chosen', 'tool-no-room']
        expect(findings.map(found => found.code).filter(code => walls.includes(code))).toEqual([])
      }),
      { numRuns: 20 },
    )
  })

  test('it says how it is done, what it needs and how it comes down', () => {
    expect(method.does).toMatch(/\.$/)
    expect(method.comesDown.length).toBeGreaterThan(1)
    expect(method.adjust.length).toBeGreaterThan(0)
    expect(method.accuracy).not.toBe('')
    expect(method.minutes[0]).toBeLessThanOrEqual(method.minutes[1])
    fc.assert(
      fc.property(hung(key), asked => {
        const { needs, cautions } = marksFor(asked)
        expect(needs.length).toBeGreaterThan(0)
        expect(needs.every(need => need.count > 0)).toBe(true)
        expect(cautions.at(-1)).toContain('Local codes')
      }),
      { numRuns: 10 },
    )
  })

  test('it draws a back and a section from nothing and from everything', () => {
    const standIn = fixingFor[key][0] ?? { name: 'x', kind: 'screw', holeOffset: 0, ratedKg: null }
    const empty = method.section({}, { height: 900, width: 700 }, standIn)
    expect(empty.parts.length).toBeGreaterThan(1)
    fc.assert(
      fc.property(hung(key), ({ back, work }) => {
        const size = { height: work.height, width: work.width, depth: work.depth ?? null }
        const section = method.section(back.data, size, standIn)
        const drawing = method.draw(back.data, size)
        const points = [
          ...section.parts.flatMap(part => part.points),
          ...drawing.lines.flatMap(line => line.points),
          ...drawing.rings,
        ]
        for (const { x, y } of points) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true)
        for (const one of drawing.dimensions) {
          if (one.value === null) continue
          // A shown figure is the one that was typed.
          let here: unknown = back.data
          for (const step of one.path) here = Reflect.get(Object(here), step)
          expect(one.value).toBe(here)
        }
      }),
      { numRuns: 20 },
    )
  })
})
