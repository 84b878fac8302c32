/** Text cut into records, beside csv-parse (an independent reader from npm) on texts made at random. */
import { parse } from 'csv-parse/sync'
import { describe, expect, test } from 'vitest'
import { makeRecordCutter } from '../../../main/files/tables/records.ts'

function cut(pieces: readonly string[], separator: string, longest = 1000) {
  const cutter = makeRecordCutter(separator, longest)
  const records: string[][] = []
  for (const [i, piece] of [...pieces, ''].entries()) {
    const given = cutter.cut(piece, i === pieces.length)
    records.push(...given.records)
    if (given.fault !== null) return { records, fault: given.fault }
  }
  return { records, fault: null }
}

function reference(text: string, separator: string) {
  try {
    return parse(text, {
      delimiter: separator,
      recordDelimiter: ['\r\n', '\n', '\r'],
      relaxQuotes: true,
      relaxColumnCount: true,
    })
  } catch {
    return 'refused'
  }
}

/** Numbers from 0 up to `below`, the same for one seed: a linear congruential sequence. */
function chance(seed: number): (below: number) => number {
  let state = seed
  return below => {
    state = (state * 1664525 + 1013904223) % 4294967296
    return Math.floor((state / 4294967296) * below)
  }
}

const signs = ['a', 'b', ' ', '"', '"', '""', ',', ';', '\t', '\n', '\r', '\r\n', 'é', '“', '🖼']

describe('records', () => {
  test.each([',', ';', '\t'])('are those of another reader, wherever the text is parted: %j', separator => {
    let refused = 0
    for (let seed = 1; seed <= 4000; seed++) {
      const next = chance(seed)
      const text = Array.from({ length: next(24) }, () => signs[next(signs.length)] ?? '').join('')
      const pieces: string[] = []
      for (let at = 0; at < text.length; ) {
        const to = at + 1 + next(6)
        pieces.push(text.slice(at, to))
        at = to
      }
      const ours = cut(pieces, separator)
      const theirs = reference(text, separator)
      if (theirs === 'refused') refused++
      expect([text, ours.fault === null ? ours.records : 'refused']).toEqual([text, theirs])
    }
    expect(refused).toBeGreaterThan(100)
    expect(refused).toBeLessThan(3000)
  })

  test('RFC 4180, its own examples', () => {
    const text = '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx\r\n"aaa","b""bb","ccc"'
    expect(cut([text], ',')).toEqual({
      records: [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
        ['aaa', 'b"bb', 'ccc'],
      ],
      fault: null,
    })
  })

  test('a cell that never ends is told before it fills the memory', () => {
    const { records, fault } = cut(['a,b\n"', ...Array.from({ length: 40 }, () => 'x'.repeat(100))], ',', 500)
    expect(records).toEqual([['a', 'b']])
    expect(fault).toBe('record-too-long')
    expect(cut(['a,b\n"cd'], ',')).toEqual({ records: [['a', 'b']], fault: 'quote-not-closed' })
  })
})
