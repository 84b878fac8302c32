/** How sensitive works of a set count; common practice, no source. */
import { expect, test } from 'vitest'
import { type Sensitivity, sensitivityOf } from '../../../src/light/budget.ts'

const all: readonly Sensitivity[] = ['high', 'medium', 'low', 'none', '']

test('what is said of the work itself holds, whatever its parts are', () => {
  for (const own of all) for (const other of all) expect(sensitivityOf(own || 'low', [other])).toBe(own || 'low')
})

test('where nobody said, the most sensitive of its set does, in whatever order they are told', () => {
  expect(sensitivityOf('', ['low', '', 'high', 'medium'])).toBe('high')
  expect(sensitivityOf('', ['none', 'low', ''])).toBe('low')
  expect(sensitivityOf('', ['', 'none'])).toBe('none')
  expect([sensitivityOf('', ['']), sensitivityOf('', [])]).toEqual(['', ''])
})
