/** Where a wall of 6000 with a door from 1000 to 1900 is split by the hand; by hand. */
import { describe, expect, test } from 'vitest'
import { snapSplit } from '../../../src/plan/snap-split.ts'

const openings = [{ kind: 'door', x: 1000, width: 900, label: '' } as const]
const ask = (x: number, more: { readonly reach?: number; readonly length?: number } = {}) =>
  snapSplit({ length: 6000, openings, x, reach: 60, grid: 100, ...more })

describe('a place to split a wall at', () => {
  test('holds to the middle and to equal parts, told in words', () => {
    expect(ask(3040)).toEqual({ x: 3000, says: 'the middle', problem: '' })
    expect(ask(1970)).toMatchObject({ x: 2000, says: 'a third' })
    expect(ask(4530)).toMatchObject({ x: 4500, says: 'three quarters' })
  })

  test('holds beside an opening, else to round figures; without reach nothing holds', () => {
    expect(ask(980)).toEqual({ x: 1000, says: 'beside the door', problem: '' })
    expect(ask(1935)).toMatchObject({ x: 1900, says: 'beside the door' })
    expect(ask(3380)).toMatchObject({ x: 3400, says: '' })
    expect(ask(3043.217, { reach: 0 })).toMatchObject({ x: 3043.22, says: '' })
  })

  test('is refused within an opening, by its name, and at the ends', () => {
    expect(ask(1450).problem).toBe('the door is in the way; split beside it.')
    expect(ask(5, { reach: 0 }).problem).toBe('')
    expect(ask(0.4, { reach: 0 }).problem).toBe('A wall is split between its ends.')
    expect(ask(6000).problem).not.toBe('')
  })
})
