import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseLux } from '../../../src/measure/lux.ts'

describe('a light level as typed', () => {
  test.each([
    ['50', 50],
    ['50 lx', 50],
    ['50lux', 50],
    [' 200 LX ', 200],
    ['1 000', 1000],
    ['1\u2009000 lx', 1000],
    ['7,5 lx', 7.5],
    ['0', 0],
  ])('%j is %d lx', (text, lux) => expect(parseLux(text)).toEqual({ ok: true, lux }))

  test.each([
    ['', 'empty'],
    ['bright', 'not-a-number'],
    ['-5', 'not-a-number'],
    ['1,000', 'ambiguous-number'],
    ['1.000 lx', 'ambiguous-number'],
    ['50 fx', 'left-over'],
    ['50 lx max', 'left-over'],
    ['9999999', 'out-of-range'],
  ])('%j is a problem: %s', (text, problem) => expect(parseLux(text)).toMatchObject({ ok: false, problem }))

  test.each(['5 fc', '5 ft-c', '5 footcandles'])('%j is 53.82 lx', text => {
    const read = parseLux(text)
    expect(read.ok && read.lux).toBeCloseTo(53.8196, 4)
  })

  test('no text makes it throw, and a level is never negative or endless', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), text => {
        const read = parseLux(text)
        if (read.ok) expect(read.lux >= 0 && Number.isFinite(read.lux)).toBe(true)
      }),
    )
  })
})
