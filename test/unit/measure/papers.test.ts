/**
 * Sizes written as the name of a paper, and sizes parted by slashes. Papers: ISO 216:2007 tables of the A and B series
 * (trimmed sizes, mm); ANSI/ASME Y14.1 A and B (8 1/2 × 11 in, 11 × 17 in). Slashed statements: styles of German and
 * French lists, common practice, no source; figures invented.
 */
import { describe, expect, test } from 'vitest'
import { readDimensions } from '../../../src/measure/dimensions.ts'
import { crossSlashes } from '../../../src/measure/slashes.ts'

function one(text: string) {
  const { parts, questions } = readDimensions(text)
  expect([text, questions, parts.length]).toEqual([text, [], 1])
  const [part] = parts
  return [part?.height, part?.width, ...(part?.depth === undefined ? [] : [part.depth])]
}

describe('papers by name', () => {
  test.each([
    ['A0', 1189, 841],
    ['A1', 841, 594],
    ['A2', 594, 420],
    ['A3', 420, 297],
    ['A4', 297, 210],
    ['A5', 210, 148],
    ['A6', 148, 105],
    ['DIN B1', 1000, 707],
    ['ISO B2', 707, 500],
    ['DIN B4', 353, 250],
  ] as const)('%s stands %i high and %i wide (ISO 216)', (name, height, width) => {
    expect(one(name)).toEqual([height, width])
    expect(one(`${name} landscape`)).toEqual([width, height])
    expect(one(`${name} quer`)).toEqual([width, height])
    expect(one(`${name} Hochformat`)).toEqual([height, width])
  })

  test('each paper of the A series is half of the one before, within a millimetre (ISO 216, 4.2)', () => {
    for (let at = 0; at < 10; at++) {
      const [[height = 0, width = 0], [half = 0, same = 0]] = [one(`A${at}`), one(`A${at + 1}`)]
      expect([half, Math.floor(height / 2) - same]).toEqual([width, 0])
    }
  })

  test('American papers, in inches', () => {
    expect(one('Letter')).toEqual([279.4, 215.9])
    expect(one('tabloid landscape')).toEqual([279.4, 431.8])
    expect(one('Legal size')).toEqual([355.6, 215.9])
    // A letter may be the work.
    expect(one('letter, 20 x 30 cm')).toEqual([200, 300])
  })

  test('what a name was read as is said, and a way that nobody wrote is a warning', () => {
    const [upright] = readDimensions('A4').parts
    expect(upright?.notes).toEqual(['read as A4 by ISO 216'])
    expect(upright?.warnings.map(({ code }) => code)).toEqual(['paper-way'])
    expect(readDimensions('A4 landscape').parts[0]?.warnings).toEqual([])
    expect(readDimensions('Letter').parts[0]?.notes).toEqual(['read as Letter, the American paper'])
  })

  test('the name takes its part from the words beside it', () => {
    const parts = (text: string) => readDimensions(text).parts.map(({ part, height, width }) => [part, height, width])
    expect(parts('Blatt A2, gerahmt 60 x 80 cm')).toEqual([
      ['sheet', 594, 420],
      ['framed', 600, 800],
    ])
    expect(parts('A4 sheet')).toEqual([['sheet', 297, 210]])
    expect(parts('framed A3 landscape')).toEqual([['framed', 297, 420]])
  })

  test('figures beside the name say which way it lies, and are held against it', () => {
    expect(one('A4 (21 x 29.7 cm)')).toEqual([210, 297])
    expect(one('A4 (29.7 x 21 cm)')).toEqual([297, 210])
    expect(readDimensions('A4 (21 x 29.7 cm)').parts[0]?.warnings).toEqual([])
    expect(readDimensions('A4 (20 x 31 cm)').questions[0]?.code).toBe('mismatch')
  })
})

describe('slashes between letters and figures', () => {
  test.each([
    ['H/B/T 61/91,5/4 cm', 610, 915, 40],
    ['H/B/T: 61 / 91,5 / 4 cm', 610, 915, 40],
    ['HxBxT 61/91,5/4 cm', 610, 915, 40],
    ['61/91,5/4 cm (H/B/T)', 610, 915, 40],
    ['H/L/P 61/91,5/4 cm', 610, 915, 40],
    ['B/H/T 91,5/61/4 cm', 610, 915, 40],
    ['h/w/d: 24/36/2 in', 609.6, 914.4, 50.8],
    ['H/B/T 610 mm/915 mm/40 mm', 610, 915, 40],
  ] as const)('%s', (text, height, width, depth) => expect(one(text)).toEqual([height, width, depth]))

  test('two of them, and with a part', () => {
    expect(one('H/B 61/91,5 cm')).toEqual([610, 915])
    expect(readDimensions('Rahmen H/B/T 70/100/5 cm').parts).toMatchObject([
      { part: 'framed', height: 700, width: 1000, depth: 50 },
    ])
  })

  test('fractions stay fractions, and what came back is as long as what went in', () => {
    for (const text of ['h x w: 3/4 x 5/8 in', '24 3/4 x 36 1/2 in', 'h x w 3/4 in', '24 x 36 in / 61 x 91.4 cm']) {
      expect(crossSlashes(text)).toBe(text)
    }
    expect(crossSlashes('H/B/T 61/91,5/4 cm')).toBe('H×B×T 61×91,5×4 cm')
    // As many letters as figures, or nothing is turned.
    expect(crossSlashes('H/B/T 61/91,5 cm')).toBe('H/B/T 61/91,5 cm')
  })

  test('a long row of slashes is read in no time', () => {
    for (const piece of ['H/B/', '1/', 'h x w ', '61/91,5 (', ' ']) {
      const from = performance.now()
      readDimensions(piece.repeat(2000 / piece.length))
      expect(performance.now() - from).toBeLessThan(1000)
    }
  })
})
