import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { hangingSize, inForce, measuredAgainstListed, type SizeFact } from '../../../src/model/in-force.ts'

const fact = (kind: 'listed' | 'measured', at: string, chosen = false) => ({ kind, at, chosen })

const size = (
  part: string,
  kind: 'listed' | 'measured',
  height: number | null,
  width: number | null,
  more: Partial<SizeFact> = {},
): SizeFact => ({
  part,
  kind,
  at: '2031-03-01',
  chosen: false,
  height,
  width,
  depth: null,
  diameter: null,
  ...more,
})

describe('the fact in force', () => {
  test('is the measured one, however old', () => {
    const measured = fact('measured', '2030-01-01')
    expect(inForce([measured, fact('listed', '2031-01-01')])).toBe(measured)
  })
  test('is the newer of two of a kind', () => {
    const newer = fact('listed', '2031-01-02')
    expect(inForce([newer, fact('listed', '2031-01-01')])).toBe(newer)
  })
  test('is the one that a person chose, whatever else', () => {
    const chosen = fact('listed', '2020-01-01', true)
    expect(inForce([fact('measured', '2031-01-01'), chosen])).toBe(chosen)
  })
  test('does not depend on the order they come in, but for ties', () => {
    const one = fc.record({
      kind: fc.constantFrom('listed' as const, 'measured' as const),
      at: fc
        .uniqueArray(fc.integer({ min: 0, max: 99 }), { minLength: 1, maxLength: 1 })
        .map(([n]) => String(n).padStart(2, '0')),
      chosen: fc.boolean(),
    })
    fc.assert(
      fc.property(fc.uniqueArray(one, { selector: f => `${f.kind}${f.at}${f.chosen}`, minLength: 1 }), facts => {
        expect(inForce(facts)).toEqual(inForce([...facts].reverse()))
      }),
    )
  })
  test('is none of none', () => expect(inForce([])).toBeUndefined())
})

describe('the size that hangs', () => {
  test('is the frame, else what surrounds the work most', () => {
    const framed = size('framed', 'listed', 900, 700)
    const sheet = size('sheet', 'measured', 600, 400)
    expect(hangingSize([sheet, framed])).toMatchObject({ part: 'framed', height: 900 })
    expect(hangingSize([sheet, size('sight', 'measured', 500, 300)])).toMatchObject({ part: 'sheet' })
    expect(hangingSize([size('sight', 'measured', 500, 300)])).toMatchObject({ part: 'sight' })
  })
  test('of a round work is its outer square', () => {
    expect(hangingSize([size('overall', 'measured', null, null, { diameter: 450 })])).toMatchObject({
      height: 450,
      width: 450,
      diameter: 450,
    })
  })
  test('is unknown while a side is missing', () => {
    expect(hangingSize([size('framed', 'measured', 900, null)])).toBeUndefined()
  })
})

describe('measured against listed', () => {
  test('says by how much, of the part that hangs', () => {
    expect(
      measuredAgainstListed([size('framed', 'listed', 1220, 960), size('framed', 'measured', 1248, 1012)]),
    ).toEqual({ height: 28, width: 52 })
  })
  test('has nothing to say of other parts or of lists alone', () => {
    expect(
      measuredAgainstListed([size('sheet', 'listed', 600, 400), size('framed', 'measured', 900, 700)]),
    ).toBeUndefined()
    expect(measuredAgainstListed([size('framed', 'listed', 900, 700)])).toBeUndefined()
  })
})
