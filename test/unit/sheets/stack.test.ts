/** A stack on the wall sheet: its rows from the top down, and the order in which it hangs among the notes. */
import { describe, expect, test } from 'vitest'
import { marksOfFace } from '../../../src/model/marks-of-face.ts'
import { sheetOrder } from '../../../src/sheets/wall-rows.ts'
import { wallSheetContent } from '../../../src/sheets/wall-sheet.ts'
import { placed, six, wallOf } from './wall.ts'

const steps = { mm: 1, fraction: 16 } as const
const [a, b, c] = six
if (a === undefined || b === undefined || c === undefined) throw new Error('the worked wall has six works')
/** 540 wide over 710 wide on one axis, and a work beside them. */
const low = placed(b, 1, { x: 2000, centreY: 900, rule: 'hand', y: 900 })
const high = placed(c, 2, { x: 2000, centreY: 1900, rule: 'hand', y: 1900 })
const beside = placed(a, 0, { x: 3500 })

function contentOf(works: Parameters<typeof wallOf>[0]) {
  const elevation = wallOf(works)
  const marks = marksOfFace(elevation, { unit: 'mm', steps })
  return JSON.parse(wallSheetContent({ elevation, marks, datum: 1480, findings: [], steps, unit: 'mm' }))
}

describe('a stack on its sheet', () => {
  test('stands from the top down, though the lower is wider and begins farther left', () => {
    expect(sheetOrder([low, beside, high]).map(work => work.running)).toEqual(['3', '2', '1'])
    // Also where the upper begins farther right than the lower and ends beyond it.
    const across = placed(a, 0, { x: 2500, centreY: 1900, rule: 'hand', y: 1900 })
    expect(sheetOrder([across, low, beside]).map(work => work.x)).toEqual([2500, 2000, 3500])
  })

  test('is told in the order in which it hangs; a wall without one says nothing', () => {
    expect(contentOf([low, high, beside]).order).toEqual(['Hang in this order: 3, 2.'])
    expect('order' in contentOf([low, beside])).toBe(false)
  })
})
