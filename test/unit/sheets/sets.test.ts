/** A grid on the wall sheet: what stands above one another is dimensioned once. By hand. */
import { expect, test } from 'vitest'
import { defaultSteps } from '../../../src/hang/printing.ts'
import { marksOfFace } from '../../../src/model/marks-of-face.ts'
import { wallSheetRows } from '../../../src/sheets/wall-rows.ts'
import { triptych } from '../model/triptych.ts'
import { sheetOf } from './made.ts'
import { placed, six, wallOf } from './wall.ts'

/** Six times Salt pans, 480 × 620, in two columns 19 mm apart: 979 wide, 3 · 620 + 2 · 19 = 1 898 high. */
function grid() {
  const { set, size, ...work } = triptych()
  const [part] = set?.parts ?? []
  if (set === null || part === undefined || size === null) throw new Error('no triptych')
  const parts = ['u', 'v', 'w', 'x', 'y', 'z'].map(id => ({ ...part, work: id, title: `Pans ${id}` }))
  return {
    ...work,
    size: { ...size, width: 979, height: 1898 },
    set: { ...set, form: 'grid' as const, columns: 2, gapX: 19, gapY: 19, parts },
  }
}

test('twelve marks in four places along the wall have four figures over the drawing, the table has all twelve', async () => {
  const { boxes } = await sheetOf(wallOf([grid()]))
  const texts = (boxes[0] ?? [])
    .filter(box => /^drawing .* mark$/.test(box.name))
    .map(box => box.text.replaceAll(/\s/g, ''))
  // From 4 000 − 489.5 = 3 510.5: rings 40 in on either side, the second column 499 along.
  // Printed from the rounded left edge 3 511: 3 551, 3 951, 4 050, 4 450.
  expect(texts).toHaveLength(4)
  const figures = texts.map(Number)
  for (const [index, exact] of [3550.5, 3950.5, 4049.5, 4449.5].entries()) {
    expect(Math.abs((figures[index] ?? 0) - exact)).toBeLessThanOrEqual(1)
  }
  const all = boxes.flat().filter(box => ['a', 'b', 'c', 'd', 'e', 'f'].some(letter => box.text === `12 ${letter}`))
  expect(new Set(all.map(box => box.text)).size).toBe(6)
})

test('rows of a set follow its own order, between what stands before and after it', () => {
  const [before, after] = [six[0], six[5]].map((given, index) => given && placed(given, 10 + index))
  if (before === undefined || after === undefined) throw new Error('the worked wall has six works')
  const wall = wallOf([after, grid(), before])
  const style = { unit: 'mm', steps: defaultSteps } as const
  expect(wallSheetRows(wall, marksOfFace(wall, style), style).map(row => row.called)).toEqual([
    ...['1', '12 a', '12 b', '12 c', '12 d', '12 e', '12 f', '6'],
  ])
})
