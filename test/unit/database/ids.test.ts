/** Keys come in the order they were made, and none comes twice, through many a millisecond. */
import { expect, test } from 'vitest'
import { newId } from '../../../main/database/ids.ts'

test('each key is greater than the one before, of 20 figures and letters', () => {
  const from = Date.now()
  let before = ''
  for (let i = 0; i < 300_000; i++) {
    const id = newId()
    if (!/^[0-9a-z]{20}$/.test(id)) expect(id).toMatch(/^[0-9a-z]{20}$/)
    if (id <= before) expect(`${id} after ${before}`).toBe('greater')
    before = id
  }
  const time = Number.parseInt(before.slice(0, 9), 36)
  expect(time).toBeGreaterThanOrEqual(from)
  expect(time).toBeLessThanOrEqual(Date.now())
})

test('each millisecond begins at chance', async () => {
  const begins = new Set<string>()
  for (let i = 0; i < 50; i++) {
    await new Promise(resolve => setTimeout(resolve, 2))
    begins.add(newId().slice(9, 13))
  }
  // 50 of 36^4: two alike come once in 1,400 runs, five alike never.
  expect(begins.size).toBeGreaterThan(45)
})
