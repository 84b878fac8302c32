import fc from 'fast-check'
import { expect, test } from 'vitest'
import { numberSortKey } from '../../../src/checklist/numbers.ts'
import { nextPartNumber, partLetter, partsSaid, wholeOfParts } from '../../../src/checklist/part-numbers.ts'

test('offers the first free letter, written as the others are', () => {
  expect(nextPartNumber('1995.5.2', [])).toBe('1995.5.2a')
  expect(nextPartNumber('1995.5.2', ['1995.5.2a', '1995.5.2c'])).toBe('1995.5.2b')
  expect(nextPartNumber('1995.5.2', ['1995.5.2 A', '1995.5.2 B'])).toBe('1995.5.2 C')
  expect(nextPartNumber('1995.5.2', ['1995.5.20', '1995.52a', '1995.5.2.1'])).toBe('1995.5.2a')
  expect(nextPartNumber('WBT 7B', [])).toBe('WBT 7B a')
})

test('a part is its whole with a letter, nothing else', () => {
  expect(partLetter('1995.5.2', '1995.5.2 A')).toBe('a')
  expect(partLetter('1995.5.2', '1995.5.2aa')).toBe('aa')
  expect(partLetter('1995.5.2', '1995.5.22a')).toBeNull()
  expect(partLetter('1995.5.2', '1995.5.2')).toBeNull()
  expect(partLetter('', 'a')).toBeNull()
})

test('says the parts as a range, with its gaps', () => {
  expect(partsSaid('1995.5.2', ['1995.5.2a', '1995.5.2c', '1995.5.2b'])).toBe('1995.5.2 a–c')
  expect(partsSaid('1995.5.2', ['1995.5.2a', '1995.5.2b', '1995.5.2d'])).toBe('1995.5.2 a, b, d')
  expect(partsSaid('1995.5.2', [])).toBe('1995.5.2')
})

test('knows the whole that all parts have in common', () => {
  expect(wholeOfParts(['CTC 1954.7a', 'ctc 1954.7 B'])).toBe('CTC 1954.7')
  expect(wholeOfParts(['1954.7a', '1954.8b'])).toBeNull()
  expect(wholeOfParts(['1954.7a', '1954.8'])).toBeNull()
  expect(wholeOfParts([])).toBeNull()
})

test('numbers sixty parts one after the other, each once, sorted behind their whole', () => {
  fc.assert(
    fc.property(fc.constantFrom('1995.5.2', 'CTC 1954.7', 'L-2031.7.4'), whole => {
      const parts: string[] = []
      while (parts.length < 60) parts.push(nextPartNumber(whole, parts))
      expect(new Set(parts).size).toBe(60)
      expect([parts[25], parts[26], parts[59]]).toEqual([`${whole}z`, `${whole}aa`, `${whole}bh`])
      const all = [whole, ...parts]
      expect(all.toReversed().sort((a, b) => (numberSortKey(a) < numberSortKey(b) ? -1 : 1))).toEqual(all)
      expect(partsSaid(whole, parts)).toBe(`${whole} a–bh`)
    }),
  )
})
