import { describe, expect, test } from 'vitest'
import { cornerAt, cornerLetter } from '../../../src/plan/survey.ts'
import { readEnds, readValue } from '../../../src/plan/typed-measure.ts'

describe('a measure as it is typed', () => {
  test.each([
    ['AC', 0, 2, ''],
    ['ac 10516', 0, 2, '10516'],
    ['B-D 4,2 m', 1, 3, '4,2 m'],
    ['d – b  13\' 9 1/2"', 3, 1, '13\' 9 1/2"'],
    ['A C 10516', 0, 2, '10516'],
    ['ac four', 0, 2, 'four'],
    ['C', 2, null, ''],
    ['c 91,5°', 2, null, '91,5°'],
  ] as const)('%s is from %s to %s', (text, from, to, rest) => {
    expect(readEnds(text, 4)).toEqual({ ok: true, ends: { from, to }, rest })
  })

  test.each([
    ['', 'Name the corners by their letters, A to D.'],
    ['12', '“12”: Name the corners by their letters, A to D.'],
    ['AE', '“E”: The corners of this room are A to D.'],
    ['AA', '“AA”: A length runs between two corners.'],
    ['ACD', '“ACD”: The corners of this room are A to D.'],
  ])('%s is refused by name', (text, message) => {
    expect(readEnds(text, 4)).toEqual({ ok: false, message })
  })

  test('of a room with more than 26 corners wants the dash', () => {
    expect(readEnds('AA-C 3 m', 30)).toEqual({ ok: true, ends: { from: 26, to: 2 }, rest: '3 m' })
    expect(readEnds('AA 91', 30)).toEqual({ ok: true, ends: { from: 26, to: null }, rest: '91' })
  })

  test('has a length between two corners and an angle at one', () => {
    expect(readValue('4,2 m', { from: 0, to: 2 }, 'mm')).toEqual({ ok: true, value: 4200 })
    expect(readValue('91,5', { from: 0, to: null }, 'mm')).toEqual({ ok: true, value: 91.5 })
    expect(readValue('0', { from: 0, to: 2 }, 'mm')).toEqual({ ok: false, message: 'A length is more than nothing.' })
    expect(readValue('four', { from: 0, to: 2 }, 'mm').ok).toBe(false)
  })

  test('letters go A to Z, AA, AB and back', () => {
    for (let at = 0; at < 120; at += 1) expect(cornerAt(cornerLetter(at))).toBe(at)
    expect([cornerLetter(25), cornerLetter(26), cornerLetter(53)]).toEqual(['Z', 'AA', 'BB'])
    expect(cornerAt('4')).toBeNull()
  })
})
