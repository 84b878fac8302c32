/** The back of a work: mirrored in one place, refused with the name of the measure, drawn from half-typed data. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { hangingMethod } from '../../../src/contract/areas/works-shape.ts'
import { Refusal } from '../../../src/contract/refusal.ts'
import { mirrorBack } from '../../../src/hang/back.ts'
import { marksFor } from '../../../src/hang/marks.ts'
import { marksAnswer, marksQuestion } from '../../../src/hang/marks-shape.ts'
import { methodKeys } from '../../../src/hang/method-keys.ts'
import { methods } from '../../../src/hang/methods.ts'
import { hook, plainWall, question, screw } from './sample.ts'

function refusal(act: () => unknown): { readonly code: string; readonly field: string | undefined } {
  try {
    act()
  } catch (error) {
    if (error instanceof Refusal) return { code: error.code, field: error.field }
    throw error
  }
  throw new Error('not refused')
}

const length = fc.double({ min: 0, max: 2000, noNaN: true })

describe('mirroring', () => {
  test('twice is the same', () => {
    const back = fc.record({
      left: fc.record({ drop: length, inset: length }),
      right: fc.record({ drop: length, inset: length }),
      spacing: length,
      ranges: fc.array(fc.record({ from: fc.integer({ min: 0, max: 500 }), to: fc.integer({ min: 500, max: 900 }) })),
    })
    fc.assert(
      fc.property(back, data => {
        expect(mirrorBack(mirrorBack(data, 1000), 1000)).toEqual(data)
      }),
    )
  })

  test('an inset on the left of the back is on the right of the front', () => {
    const back = { method: 'd-rings', data: { left: { drop: 100, inset: 30 }, right: { drop: 120, inset: 70 } } }
    const front = marksFor(question({ back: { ...back, seenFrom: 'front' } }))
    const behind = marksFor(question({ back: { ...back, seenFrom: 'back' } }))
    expect(front.marks.map(mark => [mark.fromLeft, mark.drop])).toEqual([
      [30, 100],
      [640, 120],
    ])
    expect(behind.marks.map(mark => [mark.fromLeft, mark.drop])).toEqual([
      [70, 120],
      [680, 100],
    ])
  })

  test('a brace counted from the left of the back is counted from the right of the front', () => {
    const data = { left: { bar: 20 }, right: { bar: 30 }, ranges: [{ from: 380, to: 440 }] }
    const ask = (seenFrom: 'front' | 'back') =>
      marksFor(
        question({
          work: { height: 900, width: 1200 },
          back: { method: 'stretcher-bar', seenFrom, data },
          fixings: [screw],
        }),
      ).marks
    const [left, right] = ask('back')
    expect(left?.fromLeft).toBeCloseTo(400, 9)
    expect(left?.drop).toBe(30)
    expect(right?.fromLeft).toBeCloseTo(1200 - 380 + 10 + 2.25, 9)
    expect(right?.drop).toBe(20)
  })
})

describe('refusals name the measure', () => {
  const refuse = (changes: Parameters<typeof question>[0]) => refusal(() => marksFor(question(changes)))
  const dRings = (data: Record<string, never> | object) => ({
    method: 'd-rings',
    seenFrom: 'front' as const,
    // JSON by construction: the literals below hold numbers and objects only.
    data: data as Record<string, never>,
  })

  test('unknown method', () =>
    expect(refuse({ back: { method: 'glue', seenFrom: 'front', data: {} } })).toEqual({
      code: 'method-unknown',
      field: 'back.method',
    }))
  test('a drop is missing', () =>
    expect(refuse({ back: dRings({ left: { drop: 100 }, right: {} }) })).toEqual({
      code: 'back-invalid',
      field: 'back.data.right.drop',
    }))
  test('nothing places the rings', () =>
    expect(refuse({ back: dRings({ left: { drop: 100 }, right: { drop: 100 } }) }).code).toBe('hangers-not-placed'))
  test('rings wider than the work', () =>
    expect(refuse({ back: dRings({ left: { drop: 100 }, right: { drop: 100 }, spacing: 800 }) }).code).toBe(
      'hangers-off-the-work',
    ))
  test('a drop longer than the work', () =>
    expect(refuse({ back: dRings({ left: { drop: 950, inset: 10 }, right: { drop: 100, inset: 10 } }) })).toEqual({
      code: 'drop-below-the-work',
      field: 'back.data.left.drop',
    }))
  test('no level line', () => expect(refuse({ wall: { ...plainWall, datum: null } }).code).toBe('datum-unknown'))
  test('three fixings for two marks', () =>
    expect(refuse({ fixings: [hook, hook, hook] })).toEqual({ code: 'fixings-do-not-match', field: 'fixings' }))

  const wire = (data: object, hooksApart: number) => ({
    // JSON by construction.
    back: { method: 'wire', seenFrom: 'front' as const, data: data as Record<string, never> },
    hooksApart,
  })
  const rings = { left: { drop: 150, inset: 105 }, right: { drop: 150, inset: 105 } }
  test('hooks wider than the rings', () =>
    expect(refuse(wire({ ...rings, wire: { by: 'length', length: 550 } }, 500))).toEqual({
      code: 'wire-hooks-too-wide',
      field: 'hooksApart',
    }))
  test('a wire shorter than its rings', () =>
    expect(refuse(wire({ ...rings, wire: { by: 'length', length: 500 } }, 100)).code).toBe('wire-too-short'))
  test('a wire pulled below its rings', () =>
    expect(refuse(wire({ ...rings, wire: { by: 'drop', drop: 160, apart: 0 } }, 100)).code).toBe('wire-below-rings'))
  test('fingers wider than the rings', () =>
    expect(refuse(wire({ ...rings, wire: { by: 'drop', drop: 60, apart: 600 } }, 100)).code).toBe(
      'wire-fingers-too-wide',
    ))
  test('a wire that would stand above the top edge', () =>
    expect(refuse(wire({ ...rings, wire: { by: 'length', length: 700 } }, 0)).code).toBe('wire-above-top'))
})

describe('every method', () => {
  test('the contract knows exactly the methods of the registry', () => {
    expect(hangingMethod.options).toEqual(methodKeys)
  })

  test.each(methods.map(method => [method.key, method] as const))(
    '%s draws an empty form and names its fields',
    (_, method) => {
      const drawing = method.draw({}, { height: 900, width: 700 })
      expect(drawing.dimensions.length).toBeGreaterThan(0)
      expect(new Set(drawing.dimensions.map(one => one.path.join('.'))).size).toBe(drawing.dimensions.length)
      for (const dimension of drawing.dimensions) {
        expect(dimension.value).toBeNull()
        // On the work, or a little outside its edge where plates stand out.
        for (const end of [dimension.from, dimension.to]) {
          expect(end.x).toBeGreaterThanOrEqual(-60)
          expect(end.x).toBeLessThanOrEqual(760)
          expect(end.y).toBeGreaterThanOrEqual(-60)
          expect(end.y).toBeLessThanOrEqual(960)
        }
        const known = method.fields.some(field => field.path.join('.') === dimension.path.join('.'))
        expect(known, dimension.path.join('.')).toBe(true)
      }
      expect(new Set(methods.map(other => other.key)).size).toBe(methods.length)
    },
  )

  test('answers fit the contract’s schema and survive JSON', () => {
    const backs = [
      { method: 'd-rings', data: { left: { drop: 140, inset: 55 }, right: { drop: 141, inset: 55 }, spacing: 602 } },
      {
        method: 'wire',
        data: {
          left: { drop: 180, inset: 50 },
          right: { drop: 180, inset: 50 },
          wire: { by: 'drop', drop: 78, apart: 0 },
        },
      },
      { method: 'stretcher-bar', data: { left: { bar: 19 }, right: { bar: 19 }, clearance: 18 } },
      { method: 'cleat', data: { drop: 60, length: 500, depth: 8 } },
    ] as const
    for (const back of backs) {
      const asked = question({ back: { ...back, seenFrom: 'back', data: { ...back.data } } })
      expect(marksQuestion.parse(asked)).toEqual(asked)
      const answer = marksFor(asked)
      expect(marksAnswer.parse(answer)).toEqual(answer)
      expect(JSON.parse(JSON.stringify(answer))).toEqual(answer)
    }
  })
})
