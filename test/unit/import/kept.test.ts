/** Rows of a preview that are scrolled to are those that reading the list anew gives, and never those of another state. */
import { expect, test } from 'vitest'
import { heightsOf } from '../../../renderer/import/heights.ts'
import { openDesk } from './desk.ts'

test('kept rows are what a new reading gives, until an answer or the catalogue changes', async () => {
  const desk = openDesk()
  try {
    const rows = Array.from({ length: 300 }, (_, i) => `K ${i},Study ${i},${i % 3 === 0 ? '61 x 91.5' : '20 x 30 cm'}`)
    const handle = desk.give('list.csv', ['Loan no.,Title,Dimensions', ...rows].join('\n'))
    const first = await desk.call('import.preview', { handle, limit: 50 })
    expect(first).toMatchObject({ total: 300, counts: { questions: 100 } })
    // Without a limit below the list's length nothing is kept, so this is read anew from a handle of its own.
    const anew = desk.give('list.csv', ['Loan no.,Title,Dimensions', ...rows].join('\n'))
    const whole = await desk.call('import.preview', { handle: anew, limit: 500 })
    const page = await desk.call('import.preview', { handle, offset: 120, limit: 50 })
    expect(page).toEqual({ ...whole, offset: 120, rows: whole.rows.slice(120, 170) })
    const asked = await desk.call('import.preview', { handle, show: 'questions', offset: 90, limit: 50 })
    expect(asked.total).toBe(100)
    expect(asked.rows.map(({ row }) => row)).toEqual(
      whole.rows.flatMap(({ row, questions }) => (questions.length > 0 ? [row] : [])).slice(90),
    )
    const answers = [{ row: 2, field: 'size', answer: '1' }]
    const answered = await desk.call('import.preview', { handle, answers, limit: 50 })
    expect(answered.counts.questions).toBe(99)
    await desk.call('import.accept', { handle })
    const after = await desk.call('import.preview', { handle, answers, limit: 50 })
    expect(after.counts.add).toBe(0)
  } finally {
    await desk.close()
  }
}, 180_000)

test('rows of many heights lie one under the other', () => {
  const measured = new Map([
    [7, 90],
    [2, 10],
    [40, 500],
  ])
  const heights = heightsOf(20, measured, 30)
  let sum = 0
  for (let index = 0; index < 20; index++) {
    expect(heights.top(index)).toBe(sum)
    const height = measured.get(index) ?? 30
    expect(heights.at(sum)).toBe(index)
    expect(heights.at(sum + height - 1)).toBe(index)
    sum += height
  }
  expect(heights.total).toBe(sum)
})
